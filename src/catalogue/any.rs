//! An entry of any kind, for whoever lists, copies and deletes entries without asking which kind they are.

use super::{Axle, Entry, GearSet, Kind, SpeedoEntry, TyreEntry};

/// An entry of one of the four kinds.
#[derive(Clone, Debug, PartialEq)]
pub enum AnyEntry {
    /// A gear set.
    GearSet(GearSet),
    /// A final drive.
    Axle(Axle),
    /// A tyre size.
    Tyre(TyreEntry),
    /// A speedometer gear or adapter.
    SpeedometerGear(SpeedoEntry),
}

/// Does the same with the entry inside, whichever kind it is.
macro_rules! inside {
    ($any:expr, $entry:ident => $act:expr) => {
        match $any {
            AnyEntry::GearSet($entry) => $act,
            AnyEntry::Axle($entry) => $act,
            AnyEntry::Tyre($entry) => $act,
            AnyEntry::SpeedometerGear($entry) => $act,
        }
    };
}

impl AnyEntry {
    /// Which kind it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::GearSet(_) => Kind::GearSets,
            Self::Axle(_) => Kind::Axles,
            Self::Tyre(_) => Kind::Tyres,
            Self::SpeedometerGear(_) => Kind::SpeedometerGears,
        }
    }

    /// The id, which stays when the entry is edited.
    pub fn id(&self) -> &str {
        inside!(self, entry => entry.id())
    }

    /// Whether it is the shop's own, not built in.
    pub fn own(&self) -> bool {
        inside!(self, entry => entry.own())
    }

    /// Whether one is on the shelf.
    pub fn in_stock(&self) -> bool {
        inside!(self, entry => entry.in_stock())
    }

    /// The cells of its line, in the order of [`Kind::columns`].
    pub fn cells(&self) -> Vec<String> {
        inside!(self, entry => entry.cells())
    }
}

impl From<GearSet> for AnyEntry {
    fn from(entry: GearSet) -> Self {
        Self::GearSet(entry)
    }
}

impl From<Axle> for AnyEntry {
    fn from(entry: Axle) -> Self {
        Self::Axle(entry)
    }
}

impl From<TyreEntry> for AnyEntry {
    fn from(entry: TyreEntry) -> Self {
        Self::Tyre(entry)
    }
}

impl From<SpeedoEntry> for AnyEntry {
    fn from(entry: SpeedoEntry) -> Self {
        Self::SpeedometerGear(entry)
    }
}
