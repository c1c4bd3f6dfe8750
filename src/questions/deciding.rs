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

/// Those of some rows whose key begins with one of `keys`, in the order of the keys; no more than [`MOST`], and none that says nothing.
pub fn chosen(rows: Vec<Row>, keys: &[&str]) -> Vec<Row> {
    let mut chosen: Vec<(usize, Row)> = Vec::new();
    for row in rows {
        chosen.extend(keys.iter().position(|key| row.key.starts_with(key)).map(|at| (at, row)));
    }
    crate::order::by_key(&mut chosen, |(at, _)| *at);
    few(chosen.into_iter().map(|(_, row)| row).collect(), None)
}
