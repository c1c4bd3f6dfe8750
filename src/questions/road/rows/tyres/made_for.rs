//! The speed and the load the tyre is made for, against those of the car.

use crate::gearing::Step;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::sheet::{Cell, Figure, Piece};
use crate::tyre::service;
use crate::units::{Mass, Measured, Velocity, number, show, unit};

/// Where the sum of four tyres comes from.
const FOUR: &str = "common practice, no published source; the car’s plate decides";

/// The speed symbol as a speed, and whether the car passes it.
pub(super) fn speed_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(tyre) = &analysis.setup.tyre else { return Cell::needed("needs the tyre") };
    let Some((symbol, limit)) = tyre.speed_limit() else {
        let is_z = tyre.size().and_then(crate::tyre::Size::speed_symbol) == Some('Z');
        return Cell::absent(if is_z { "Z alone only says above 240 km/h: ask the tyre’s maker" } else { "no speed symbol given" });
    };
    let unit = Velocity::usual(source.reader.units);
    let filled = format!("{symbol} = {}", show(&limit, kmh(), 0));
    let figure = Figure::quantity("tyre.speed_limit", &limit, unit, 0).by("speed of the symbol, by the table", filled, service::SOURCE);
    let cell = Cell::line([figure.into(), Piece::words(format!("by its symbol {symbol}"))]);
    let Some(fastest) = analysis.tyres().fastest else { return cell };
    let gear = analysis.setup.steps.get(fastest.step).map(Step::name).unwrap_or_default();
    let how = if fastest.is_top_speed { format!("the top speed, in {gear},") } else { format!("{gear} at the shift rpm") };
    if fastest.speed > limit {
        let over = number::show((unit.take)(&(fastest.speed - limit)), 0);
        let text = format!("{how} is {over} {} faster: fit a tyre of a higher symbol, or keep below it", unit.symbol);
        return cell.and([Piece::caution(text)]);
    }
    let figure = Figure::quantity("tyre.fastest", &fastest.speed, unit, 0).small();
    let of = if fastest.is_top_speed { "thrust meets road load, or the rev limit" } else { "the fastest gear at the shift rpm" };
    let figure =
        figure.by("the fastest the car goes", of, if fastest.is_top_speed { "see Pull at the wheels" } else { "see the gears above" });
    cell.and([figure.into(), Piece::words(if fastest.is_top_speed { "is the car’s top speed".into() } else { format!("is {how}") })])
}

fn kmh() -> &'static crate::units::Unit<Velocity> {
    &unit::KM_H
}

/// The load index as a load, and whether four such tyres carry the car.
pub(super) fn load_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(tyre) = &analysis.setup.tyre else { return Cell::needed("needs the tyre") };
    let unit = Mass::usual(source.reader.units);
    let figure = |key: &str, (index, load): (u16, Mass)| {
        let filled = format!("{index} = {}", show(&load, &unit::KG, 0));
        Figure::quantity(key, &load, unit, 0).by("load of the index, by the table", filled, service::SOURCE)
    };
    let Some(single) = tyre.load_limit() else {
        let index = tyre.size().and_then(|size| size.service.load_index);
        return Cell::absent(index.map_or_else(|| "no load index given".into(), |index| format!("load index {index} is not in the table")));
    };
    let cell = Cell::line([figure("tyre.load_limit", single).into(), Piece::words(format!("each, by its index {}", single.0))]);
    let cell = match tyre.pair_load_limit() {
        Some(pair) => {
            cell.and([figure("tyre.pair_load_limit", pair).small().into(), Piece::words(format!("each of a pair, index {}", pair.0))])
        }
        None => cell,
    };
    against_car(source, analysis, single.1, cell)
}

/// What four tyres carry beside the car with driver and load.
fn against_car(source: Source<'_>, analysis: &Analysis, single: Mass, cell: Cell) -> Cell {
    let (Some(four), Some(car)) = (analysis.tyres().four_carry, analysis.tyres().car) else { return cell };
    let unit = Mass::usual(source.reader.units);
    let filled = format!("4 × {} = {}", show(&single, unit, 0), show(&four, unit, 0));
    let figure = Figure::quantity("tyre.four_carry", &four, unit, 0).small().by("four tyres carry 4 × one", filled, FOUR);
    let cell = cell.and([figure.into(), Piece::words(format!("on four, for a car of {}; its plate decides", show(&car, unit, 0)))]);
    cell.and_maybe(analysis.tyres().overload().map(|over| {
        let text = format!(
            "the car is {} heavier than four such tyres may carry: fit a higher load index, or load less; its plate decides",
            show(&over, unit, 0)
        );
        [Piece::caution(text)]
    }))
}
