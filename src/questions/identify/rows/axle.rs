//! The axles that the turns leave: of the shelf, and by tooth pairs.

use super::super::answer::axle::axle;
use super::super::read::Evidence;
use super::said::doubt_of_axle;
use super::{LISTED, interval_cell, more_row, pairs_row};
use crate::gearing::identify::reading::Interval;
use crate::questions::Source;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::number;

/// The ratio, the axles of the shelf that fit, the tooth pairs.
pub(super) fn rows(source: Source<'_>, evidence: &Evidence, interval: Interval) -> Vec<Row> {
    let found = axle(interval, evidence.axle_turned(), source.shelves.axles);
    let mut rows = vec![Row::of_one("axle-ratio", "Axle ratio by turns", interval_cell("identify.axle", interval))];
    rows.extend(doubt_of_axle(&found).map(|doubt| Row::of_one("axle-doubt", "Read right?", Cell::line([Piece::caution(doubt)]))));
    let fitting = found.ranked.ranked.iter().filter(|found| found.fits()).take(LISTED);
    rows.extend(fitting.enumerate().filter_map(|(at, found)| {
        let known = source.shelves.axles.get(found.candidate)?;
        let figure = Figure::ratio(format!("identify.axle_{}.ratio", at + 1), known.part.ratio(), 3);
        let off = number::show(found.off_centre * 100.0, 1);
        let cell = Cell::line([figure.into(), Piece::good(format!("{off} % from the middle of the reading"))]);
        Some(Row::of_one(format!("axle-{}", at + 1), known.entry.title(), cell.offering(known.entry.clone())))
    }));
    rows.extend(more_row("axles-more", found.ranked.fitting().count()));
    rows.push(pairs_row("axle-pairs", &found.pairs));
    rows
}
