//! The built-in entries: invented demo data in plain files, read once when first asked for.
//!
//! They are written as the catalogue takes them, so that nothing is checked anew at every visit; the tests prove it of every line.

use std::sync::OnceLock;

use super::csv_file::CsvFile;
use super::{Entry, PartKind};

/// The built-in entries of every kind.
pub(super) fn entries() -> &'static [Entry] {
    static ENTRIES: OnceLock<Vec<Entry>> = OnceLock::new();
    ENTRIES.get_or_init(|| PartKind::ALL.into_iter().filter_map(|kind| CsvFile::of(kind.demo()).ok()).flat_map(|file| of(&file)).collect())
}

fn of(file: &CsvFile<'_>) -> Vec<Entry> {
    file.table.lines.iter().filter_map(|(_, line)| Some(file.entry(&file.cells(line).ok()?, None))).collect()
}
