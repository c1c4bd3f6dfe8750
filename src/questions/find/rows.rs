//! Find a setup: what the customer wishes for, and how the setups on the sheet meet it.

use crate::finder::{Given, Wish};
use crate::questions::find::{Asked, evaluate, words};
use crate::questions::{Analysis, Source, Station, needs};
use crate::sheet::{Cell, Figure, Piece, Row};

/// How many wishes each setup meets.
pub fn station(source: Source<'_>) -> Station {
    let (given, asked) = Asked::of_source(source);
    let met = |analysis: &Analysis, wish: &Wish| {
        evaluate::on_sheet(source, analysis, wish, &given).is_some_and(|value| words::shortfall(wish, value, source.reader.units).is_none())
    };
    let many = asked.rows.len();
    let count = |analysis: &Analysis| {
        Some(asked.wishes.iter().take(many).filter(|wish| met(analysis, wish)).count().to_string()).filter(|_| many > 0)
    };
    Station::of(source, format!("wishes met, of {many}"), count)
}

/// The rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let (given, asked) = Asked::of_source(source);
    let row = |(wish, row): (&Wish, &usize)| {
        let number = row + 1;
        let label = format!("{number}. {}, {}", words::name(wish.measure, source.reader.units), words::range(wish, source.reader.units));
        source.row(format!("wish-{number}"), label, |analysis| cell(source, analysis, (number, wish), &given))
    };
    let rows: Vec<Row> = asked.wishes.iter().zip(&asked.rows).map(row).collect();
    rows
}

fn cell(source: Source<'_>, analysis: &Analysis, (number, wish): (usize, &Wish), given: &Given) -> Cell {
    let units = source.reader.units;
    let Some(value) = evaluate::on_sheet(source, analysis, wish, given) else { return Cell::needed(absent(analysis, wish)) };
    if wish.measure.is_flag() {
        let short = words::shortfall(wish, value, units);
        return Cell::line([short.map_or_else(|| Piece::good("as wished"), Piece::words)]);
    }
    let (shown, decimals, unit) = words::in_unit(wish.measure, value, units);
    let mut figure = Figure::number(format!("wish_{number}.is{}", suffix(&unit)), shown, decimals);
    unit.trim().clone_into(&mut figure.unit);
    match words::shortfall(wish, value, units) {
        None => Cell::line([figure.into(), Piece::good("as wished")]),
        Some(short) => Cell::line([figure.into(), Piece::words(short)]),
    }
}

fn absent(analysis: &Analysis, wish: &Wish) -> String {
    use crate::finder::Measure;
    match wish.measure {
        Measure::ToOrder => "the catalogue says what is in stock".into(),
        Measure::Speedometer => "needs its drive and driven gears".into(),
        _ => needs(analysis),
    }
}

/// The unit as the end of a figure's key: `_rpm`, `_percent`, `_kmh`.
fn suffix(unit: &str) -> String {
    match unit.trim() {
        "" => String::new(),
        "%" => "_percent".into(),
        unit => format!("_{}", unit.replace('/', "")),
    }
}
