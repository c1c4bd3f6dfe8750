//! The built-in entries: invented demo data in plain files, read once when first asked for.
//!
//! A line that cannot be used is left out here without a word; that there is none is proved by the tests.

use std::sync::OnceLock;

use super::csv_file::CsvFile;
use super::{Entry, PartKind};

/// The built-in entries of every kind.
pub(super) fn entries() -> &'static [Entry] {
    static ENTRIES: OnceLock<Vec<Entry>> = OnceLock::new();
    ENTRIES.get_or_init(|| PartKind::ALL.into_iter().filter_map(|kind| CsvFile::of(kind.demo()).ok()).flat_map(|file| of(&file)).collect())
}

fn of(file: &CsvFile<'_>) -> Vec<Entry> {
    let entry = |line: &str| file.entry(&file.cells(line).ok()?, None).checked().ok();
    file.table.lines.iter().filter_map(|(_, line)| entry(line)).collect()
}
