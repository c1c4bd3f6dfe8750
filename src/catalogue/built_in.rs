//! The built-in entries: invented demo data in plain files, read once when first asked for.
//!
//! A line that cannot be used is left out here without a word; that there is none is proved by the tests.

use std::sync::OnceLock;

use super::axle::Axle;
use super::entry::{Entry, Kind};
use super::gear_set::GearSet;
use super::speedo::SpeedoEntry;
use super::table;
use super::tyre::TyreEntry;

/// The text of the built-in file of a kind.
pub fn text(kind: Kind) -> &'static str {
    match kind {
        Kind::GearSets => include_str!("data/gear_sets.csv"),
        Kind::Axles => include_str!("data/final_drives.csv"),
        Kind::Tyres => include_str!("data/tyres.csv"),
        Kind::SpeedometerGears => include_str!("data/speedometer_gears.csv"),
    }
}

fn entries<T: Entry>() -> Vec<T> {
    let Ok(table) = table::read(text(T::KIND), T::KIND) else { return Vec::new() };
    table.lines().filter_map(|line| T::from_row(&line.row.ok()?).ok()).collect()
}

pub(super) fn gear_sets() -> &'static [GearSet] {
    static ENTRIES: OnceLock<Vec<GearSet>> = OnceLock::new();
    ENTRIES.get_or_init(entries)
}

pub(super) fn axles() -> &'static [Axle] {
    static ENTRIES: OnceLock<Vec<Axle>> = OnceLock::new();
    ENTRIES.get_or_init(entries)
}

pub(super) fn tyres() -> &'static [TyreEntry] {
    static ENTRIES: OnceLock<Vec<TyreEntry>> = OnceLock::new();
    ENTRIES.get_or_init(entries)
}

pub(super) fn speedometer_gears() -> &'static [SpeedoEntry] {
    static ENTRIES: OnceLock<Vec<SpeedoEntry>> = OnceLock::new();
    ENTRIES.get_or_init(entries)
}
