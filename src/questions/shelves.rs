//! What lies on the shop's shelves, read once for all questions that propose from it.

use crate::catalogue::{Catalogue, Entry, PartKind};
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
    gear_sets: Vec<Known<Gearbox>>,
    axles: Vec<Known<FinalDrive>>,
}

/// What lies on the shop's shelves and is proposed from; nothing by default.
#[derive(Clone, Copy, Debug, Default)]
pub struct Shelves<'a> {
    /// The speedometer gears.
    pub speedometer_gears: &'a [SpeedoGear],
    /// The gear sets.
    pub gear_sets: &'a [Known<Gearbox>],
    /// The rings and pinions.
    pub axles: &'a [Known<FinalDrive>],
}

impl OnShelf {
    /// Reads a catalogue.
    pub fn of(catalogue: &Catalogue) -> Self {
        Self {
            speedometer_gears: catalogue.speedometer_gears(),
            gear_sets: known(catalogue, PartKind::GearSet, Entry::gearbox),
            axles: known(catalogue, PartKind::RingAndPinion, Entry::final_drive),
        }
    }

    /// All of it.
    pub fn shelves(&self) -> Shelves<'_> {
        Shelves { speedometer_gears: &self.speedometer_gears, gear_sets: &self.gear_sets, axles: &self.axles }
    }
}

fn known<P>(catalogue: &Catalogue, kind: PartKind, read: fn(&Entry) -> Option<P>) -> Vec<Known<P>> {
    let known = |entry: &Entry| Some(Known { part: read(entry)?, entry: entry.clone() });
    catalogue.entries(kind).filter_map(known).collect()
}
