//! What the parts on the bench can be: what the turns leave, the gear sets and axles that fit, the teeth that print so.

pub mod axle;
pub mod mates;
pub mod printed;
pub mod said;
pub mod sets;
pub mod tag;
pub mod teeth;

use super::answer;
use super::read::Evidence;
use crate::gearing::Mesh;
use crate::gearing::identify::reading::Interval;
use crate::gearing::identify::tooth_pairs::Pairs;
use crate::questions::Source;
use crate::questions::bench::unusable;
use crate::sheet::{Cell, Figure, Piece, Row};

/// How many of what was found are listed.
const LISTED: usize = 8;
/// How many rows decide.
const DECIDING: usize = 8;
/// How many tooth pairs are named.
const PAIRS: usize = 12;

/// The first rows: what cannot be read, what the turns leave, what fits best.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut rows = rows(source);
    rows.truncate(DECIDING);
    rows
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let evidence = Evidence::of(&source.job.bench);
    let mut rows = unusable(&evidence.problems);
    rows.extend(evidence.turned.map(|turned| Row::of_one("ratio", "Ratio by turns", interval_cell("identify.ratio", turned.interval))));
    rows.extend(printed::rows(&evidence));
    rows.extend(said::doubt_of_box(&evidence).map(|doubt| Row::of_one("ratio-doubt", "Read right?", Cell::line([Piece::caution(doubt)]))));
    rows.extend(mates::rows(source, &evidence));
    if let Some(sets) = answer::sets(&evidence, source.shelves.gear_sets) {
        rows.extend(sets::rows(source, &evidence, &sets));
    }
    rows.extend(answer::pairs(&evidence).map(|pairs| pairs_row("pairs", &pairs)));
    rows.extend(teeth::rows(source, &evidence));
    rows.extend(tag::rows(source, &evidence));
    rows.extend(evidence.axle.map(|interval| axle::rows(source, &evidence, interval)).unwrap_or_default());
    rows
}

/// The least and the greatest ratio that a reading leaves.
fn interval_cell(key: &str, interval: Interval) -> Cell {
    let least = Figure::ratio(format!("{key}_least"), interval.least, 3);
    let greatest = Figure::ratio(format!("{key}_greatest"), interval.greatest, 3);
    Cell::line([least.into(), Piece::words("to"), greatest.into()])
}

/// The tooth pairs that a reading leaves.
fn pairs_row(key: &str, pairs: &Pairs) -> Row {
    let pair = |mesh: &Mesh| format!("{}/{}", mesh.driven, mesh.driver);
    let named: Vec<String> = pairs.inside.iter().take(PAIRS).map(pair).collect();
    let more = if pairs.inside.len() > PAIRS { " …" } else { "" };
    let said = match (&pairs.nearest, named.is_empty()) {
        (Some(nearest), true) => format!("none; the nearest is {}", pair(nearest)),
        (None, true) => "none".into(),
        _ => format!("{}{more}", named.join("  ")),
    };
    Row::of_one(key, "Tooth pairs inside, smallest first", Cell::line([Piece::words(said)]))
}

/// `and 12 more`, where a list was cut.
fn more_row(key: &str, many: usize) -> Option<Row> {
    let more = many.checked_sub(LISTED).filter(|more| *more > 0)?;
    Some(Row::of_one(key, "And more", Cell::line([Piece::words(format!("{more} more fit"))])))
}
