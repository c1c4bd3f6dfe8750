//! In short: what decides between the setups, and how each differs from A.

use super::{gears, road};
use crate::gearing::teeth::decimal;
use crate::questions::Analysis;
use crate::questions::{Source, needs};
use crate::sheet::{Cell, Figure, Piece, Row, Section};
use crate::units::common::in_rpm;
use crate::units::{Measured, Velocity, number};

/// The row under the heads.
pub fn row(source: Source<'_>, sections: &[Section]) -> Row {
    let mut row = source.row("short", "In short", |analysis| cell(source, analysis));
    for (column, cell) in row.cells.iter_mut().enumerate() {
        cell.lines.push(vec![cautions(sections, column)]);
    }
    row
}

/// How many cautions a column has, and in which sections they stand.
fn cautions(sections: &[Section], column: usize) -> Piece {
    let many = |section: &Section| section.cautions().filter(|(at, _, _)| *at == Some(column)).count();
    let found: Vec<(&str, usize)> =
        sections.iter().map(|section| (section.title.as_str(), many(section))).filter(|(_, many)| *many > 0).collect();
    let titles = found.iter().map(|(title, _)| *title).collect::<Vec<_>>().join(", ");
    match found.iter().map(|(_, many)| many).sum::<usize>() {
        0 => Piece::good("no cautions"),
        1 => Piece::caution(format!("1 caution: {titles}")),
        many => Piece::caution(format!("{many} cautions: {titles}")),
    }
}

fn cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let first = source.setups.first().filter(|first| first.setup.id != analysis.setup.id);
    let mut lines: Vec<Vec<Piece>> = Vec::new();
    lines.extend(launch(analysis, first));
    lines.extend(cruise(source, analysis, first));
    lines.extend(drop(analysis));
    lines.extend(speedometer(source, analysis));
    if lines.is_empty() { Cell::needed(needs(analysis)) } else { Cell { lines, ..Cell::default() } }
}

fn launch(analysis: &Analysis, first: Option<&Analysis>) -> Option<Vec<Piece>> {
    let of = |analysis: &Analysis| analysis.gears().first_overall().map(decimal);
    let figure = gears::rows::first_overall(analysis, "short.first_overall")?.against(first.and_then(of), 2);
    Some(vec![figure.into(), Piece::words("1st gear, overall")])
}

fn cruise(source: Source<'_>, analysis: &Analysis, first: Option<&Analysis>) -> Option<Vec<Piece>> {
    let of = |analysis: &Analysis| analysis.road().cruise_in_top().map(in_rpm);
    let figure = road::rows::cruise_figure(source, analysis, "short.cruise_rpm")?.against(first.and_then(of), 0).in_unit("");
    Some(vec![figure.into(), Piece::words(format!("rpm at {}", cruise_text(source)))])
}

fn drop(analysis: &Analysis) -> Option<Vec<Piece>> {
    let (gear, _) = analysis.gears().deepest_drop()?;
    let words = format!("biggest drop: {gear} to {}", gear.next());
    Some(vec![gears::rows::drop_figure(analysis, gear, "short.deepest_drop")?.into(), Piece::words(words)])
}

fn speedometer(source: Source<'_>, analysis: &Analysis) -> Option<Vec<Piece>> {
    let error = analysis.speedo().error(source.conditions.speedo.check)?;
    let words = if error < 0.0 { "speedometer reads low" } else { "speedometer reads high" };
    Some(vec![Figure::percent("short.speedometer_error", error.abs(), 1).into(), Piece::words(words)])
}

/// The cruise speed in the reader's unit: `70 mph`, `112.7 km/h`.
pub fn cruise_text(source: Source<'_>) -> String {
    let unit = Velocity::usual(source.reader.units);
    let Some(cruise) = source.conditions.cruise else { return "the cruise speed".into() };
    let value = (unit.take)(&cruise);
    let decimals = usize::from((value - value.round()).abs() >= 0.05);
    format!("{} {}", number::show(value, decimals), unit.symbol)
}
