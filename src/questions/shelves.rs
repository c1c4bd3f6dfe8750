//! What lies on the shop's shelves, and what it has written down for all jobs, read once for all questions.

use crate::catalogue::{Catalogue, Entry, Part, PartKind};
use crate::faults::{OwnRows, Table};
use crate::gearing::{FinalDrive, Gearbox};
use crate::speedometer::SpeedoGear;

/// A part of the catalogue and what its texts say.
#[derive(Clone, Debug, PartialEq)]
pub struct Known<P> {
    /// As it stands in the catalogue.
    pub entry: Entry,
    /// What it says.
    pub part: P,
}

/// The parts of a catalogue that can be read, in the order of [`Catalogue::entries`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OnShelf {
    speedometer_gears: Vec<SpeedoGear>,
    /// Every gear set that is known, hidden ones first.
    gear_sets: Vec<Known<Gearbox>>,
    /// How many of them are hidden.
    hidden: usize,
    axles: Vec<Known<FinalDrive>>,
    /// The case families whose sizes can be read.
    cases: Vec<Known<Part>>,
    /// The tables of faults with the shop's own rows, where it has any text for them.
    own_rows: Option<OwnRows>,
    /// All of the shop's own entries, whatever they say.
    own: Vec<Entry>,
}

/// What lies on the shop's shelves; nothing by default.
#[derive(Clone, Copy, Debug, Default)]
pub struct Shelves<'a> {
    /// The speedometer gears.
    pub speedometer_gears: &'a [SpeedoGear],
    /// The gear sets that are proposed.
    pub gear_sets: &'a [Known<Gearbox>],
    /// Those that are only known by name too: what a job already uses is looked up here, and nothing is proposed from it.
    pub known_sets: &'a [Known<Gearbox>],
    /// The rings and pinions.
    pub axles: &'a [Known<FinalDrive>],
    /// The case families whose sizes can be read.
    pub cases: &'a [Known<Part>],
    /// The tables of faults with the shop's own rows, where it has any text for them.
    pub own_rows: Option<&'a OwnRows>,
    /// All of the shop's own entries, whatever they say.
    pub own: &'a [Entry],
}

impl<'a> Shelves<'a> {
    /// The tables of faults, the shop's own rows behind those that are built in.
    pub fn faults(self) -> &'a Table {
        match self.own_rows {
            Some(own) => &own.table,
            None => Table::built_in(),
        }
    }
}

impl OnShelf {
    /// Reads a catalogue, and the shop's own rows about faults.
    pub fn with_own_rows(catalogue: &Catalogue, rows: &str) -> Self {
        Self { own_rows: (!rows.trim().is_empty()).then(|| OwnRows::read(rows)), ..Self::of(catalogue) }
    }

    /// Reads a catalogue.
    pub fn of(catalogue: &Catalogue) -> Self {
        let gear_sets = read(catalogue.known(PartKind::GearSet), Entry::gearbox);
        let hidden = gear_sets.iter().take_while(|known| catalogue.hides(&known.entry)).count();
        Self {
            speedometer_gears: catalogue.speedometer_gears(),
            gear_sets,
            hidden,
            axles: read(catalogue.entries(PartKind::RingAndPinion), Entry::final_drive),
            cases: read(catalogue.entries(PartKind::CaseFamily), |entry| entry.part().ok()),
            own_rows: None,
            own: catalogue.all_own().to_vec(),
        }
    }

    /// All of it.
    pub fn shelves(&self) -> Shelves<'_> {
        let offered = self.gear_sets.get(self.hidden..).unwrap_or_default();
        Shelves {
            speedometer_gears: &self.speedometer_gears,
            gear_sets: offered,
            known_sets: &self.gear_sets,
            axles: &self.axles,
            cases: &self.cases,
            own_rows: self.own_rows.as_ref(),
            own: &self.own,
        }
    }
}

fn read<'a, P>(entries: impl Iterator<Item = &'a Entry>, read: fn(&Entry) -> Option<P>) -> Vec<Known<P>> {
    entries.filter_map(|entry| Some(Known { part: read(entry)?, entry: entry.clone() })).collect()
}
