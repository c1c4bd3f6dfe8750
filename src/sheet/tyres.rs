//! The tyre's rows of Road speed: what it rolls and how that was got, its dimensions, its wear, the speed it is made for.

use super::typed::entry;
use super::{Cell, Figure, Piece, Row, Source, ordinal};
use crate::analysis::Analysis;
use crate::job::SetupField;
use crate::tyre::{Measure, Rolling};
use crate::units::common::in_millimetres;
use crate::units::{Length, Measured, System, TurnsPerDistance, Velocity, number};

/// The rows.
pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    vec![
        source.row("rolls", "One tyre turn", |analysis| rolls_cell(source, analysis)),
        source.row("tyre", "Tyre, new", |analysis| dimensions_cell(source, analysis)),
        source.row("tread-lost", "Tread worn off", |analysis| wear_cell(source, analysis)),
        source.row("tyre-speed", "Tyre made for", |analysis| limit_cell(source, analysis)),
    ]
}

fn decimals(source: Source<'_>) -> usize {
    if source.reader.units == System::Inch { 2 } else { 0 }
}

fn rolls_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let (Some(rolling), Some(tyre)) = (&analysis.setup.rolling, &analysis.setup.tyre) else { return Cell::absent("needs the tyre") };
    let figure = Figure::quantity("rolling_circumference", &rolling.circumference, Length::usual(source.reader.units), decimals(source));
    let figure = figure.by("what the tyre rolls at each turn, under load", rolling.working.clone(), rolling.how.source());
    let turns = Figure::quantity("wheel_turns", &rolling.turns(), TurnsPerDistance::usual(source.reader.units), 0).small();
    let cell = Cell::line([figure.into(), turns.into()]).and([Piece::words(format!("{}, {}", rolling.how.words(), rolling.basis.word()))]);
    let others = tyre.alternatives();
    if others.is_empty() { cell } else { cell.and([Piece::words(others_text(rolling, &others))]) }
}

/// `diagonal, 2.99 × diameter: −2.0 %; free of the road, π × diameter: +3.0 %`.
fn others_text(rolling: &Rolling, others: &[Rolling]) -> String {
    let used = in_millimetres(rolling.circumference);
    let one = |other: &Rolling| {
        let share = (in_millimetres(other.circumference) / used - 1.0) * 100.0;
        let sign = if share > 0.0 { "+" } else { "" };
        format!("{}: {sign}{} %", other.how.words(), number::show(share, 1))
    };
    format!("else {}", others.iter().take(2).map(one).collect::<Vec<_>>().join("; "))
}

fn dimensions_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(tyre) = &analysis.setup.tyre else { return Cell::absent("needs the tyre") };
    let Some(diameter) = tyre.diameter() else { return Cell::absent("measured rolling, no size given") };
    let figure = |key: &str, measure: &Measure| {
        let figure = Figure::quantity(
            key,
            &measure.value,
            Length::usual(source.reader.units),
            if source.reader.units == System::Inch { 2 } else { 0 },
        );
        figure.by("from the size", measure.working.clone(), measure.source)
    };
    let mut line: Vec<Piece> = vec![figure("tyre.diameter", &diameter).into(), Piece::words(format!("across, {}", diameter.basis.word()))];
    if let (Some(width), Some(wall)) = (tyre.section_width(), tyre.sidewall()) {
        line.extend([
            figure("tyre.width", width).small().into(),
            Piece::words("wide"),
            figure("tyre.sidewall", wall).small().into(),
            Piece::words("sidewall"),
        ]);
    }
    let cell = Cell::line(line);
    match tyre.dimensions().and_then(|dimensions| dimensions.omitted_aspect) {
        Some(aspect) => cell.and([Piece::words(format!("taken as {aspect} series: the size leaves it out"))]),
        None => cell,
    }
}

fn wear_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let new = analysis.setup.tyre.as_ref().map(crate::tyre::Tyre::rolling);
    let cell = match (new, &analysis.setup.rolling) {
        (Some(new), Some(worn)) if worn.circumference < new.circumference => {
            let share = 1.0 - in_millimetres(worn.circumference) / in_millimetres(new.circumference);
            let filled = format!(
                "1 − {} ÷ {}",
                number::show(in_millimetres(worn.circumference), 1),
                number::show(in_millimetres(new.circumference), 1)
            );
            let figure = Figure::percent("tyre.worn", share, 2).by("share = 1 − worn ÷ new circumference", filled, "geometry");
            Cell::line([figure.into(), Piece::words("off every road speed; the speedometer reads that much higher")])
        }
        _ => Cell::line([Piece::words("none: as new")]),
    };
    entry(source, analysis, cell, SetupField::TreadLost, "depth of tread worn off")
}

fn limit_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(tyre) = &analysis.setup.tyre else { return Cell::absent("needs the tyre") };
    let Some((symbol, limit)) = tyre.speed_limit() else { return Cell::absent("no speed symbol given") };
    let unit = Velocity::usual(source.reader.units);
    let figure = Figure::quantity("tyre.speed_limit", &limit, unit, 0).by(
        "speed symbol",
        format!("{symbol}"),
        "UN R30 speed symbols, part from memory",
    );
    let cell = Cell::line([figure.into(), Piece::words(format!("by its symbol {symbol}"))]);
    let fastest = analysis.road.gears.iter().enumerate().filter_map(|(gear, in_gear)| Some((gear, in_gear.at_shift?)));
    match fastest.max_by(|(_, a), (_, b)| a.value.total_cmp(&b.value)) {
        Some((gear, speed)) if speed > limit => {
            let over = number::show((unit.take)(&(speed - limit)), 0);
            cell.and([Piece::caution(format!(
                "{} at the shift rpm is {over} {} faster: fit a tyre of a higher symbol, or keep below it",
                ordinal(gear),
                unit.symbol
            ))])
        }
        _ => cell,
    }
}
