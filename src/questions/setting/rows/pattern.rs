//! The rows of the contact pattern: what paint shows on either side of the ring gear's teeth, and what that asks for.

use crate::fits::ring_pinion::{Pattern, asked};
use crate::job::Setting;
use crate::job::choice::Options as _;
use crate::sheet::{Cell, Piece, Row};

/// A row a side that was read, and one for both together.
pub(super) fn rows(setting: &Setting) -> Vec<Row> {
    let [drive, coast] = [setting.pattern_drive.value(), setting.pattern_coast.value()];
    let sides = [("pattern-drive", "Pattern, drive side", drive), ("pattern-coast", "Pattern, coast side", coast)];
    let side = |(key, label, pattern): (&'static str, &'static str, Option<Pattern>)| {
        Some(Row::of_one(key, label, Cell::line([Piece::words(pattern?.says())])))
    };
    let mut rows: Vec<Row> = sides.into_iter().filter_map(side).collect();
    let is_good = [drive, coast].into_iter().flatten().all(|pattern| pattern == Pattern::Good);
    let verdict = |asks| if is_good { Piece::good(asks) } else { Piece::caution(asks) };
    rows.extend(asked(drive, coast).map(|asks| Row::of_one("pattern", "By the pattern", Cell::line([verdict(asks)]))));
    rows
}
