//! The rows that decide: those that say something, in the order of their weight, and as few as fit on a screen.

use crate::sheet::Row;

/// No question shows more rows before anything is opened, but for Gears, which has a row a gear.
pub const MOST: usize = 8;

/// The first rows that say something, and behind them what is missing: together no more than [`MOST`].
pub fn few(rows: Vec<Row>, missing: Option<Row>) -> Vec<Row> {
    few_of(rows, missing, MOST)
}

/// As [`few`], for so many rows.
pub fn few_of(rows: Vec<Row>, missing: Option<Row>, most: usize) -> Vec<Row> {
    let room = most.saturating_sub(missing.iter().len());
    rows.into_iter().filter(Row::says_something).take(room).chain(missing).collect()
}
