//! The catalogue: gear sets, axles, tyres and speedometer gears, built in as invented demo data, and the shop's own beside them.
//!
//! Things first: [`GearSet`], [`Axle`], [`TyreEntry`], [`SpeedoEntry`], each an [`Entry`]; a [`Shelf`] holds the entries of one
//! kind, and [`Catalogue`] the shelves. [`built_in`] reads the files of the `data` folder, [`import`] and [`export`] the shop's,
//! and [`saved`] keeps the shop's own between visits. What a part does in a car is not answered here: an entry keeps what was
//! typed, and [`crate::gearing`], [`crate::tyre`] and [`crate::speedometer`] read it.

mod any;
mod axle;
pub mod built_in;
pub mod desk;
mod entry;
pub mod export;
pub mod file;
mod gear_set;
mod guard;
pub mod import;
mod join;
mod line;
pub mod saved;
mod shelf;
mod speedo;
mod table;
mod tyre;
pub mod whole;

pub use any::AnyEntry;
pub use axle::Axle;
pub use entry::{Entry, Kind};
pub use file::FileError;
pub use gear_set::GearSet;
pub use import::Plan;
pub use line::LineError;
pub use shelf::{Missing, Shelf};
pub use speedo::{SpeedoEntry, SpeedoLineError};
pub use table::Row;
pub use tyre::TyreEntry;
pub use whole::{AnyPlan, Summary};

/// Everything that can be chosen: what is built in, and the shop's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Catalogue {
    /// Gear sets.
    pub gear_sets: Shelf<GearSet>,
    /// Final drives.
    pub axles: Shelf<Axle>,
    /// Tyre sizes.
    pub tyres: Shelf<TyreEntry>,
    /// Speedometer gears and adapters.
    pub speedometer_gears: Shelf<SpeedoEntry>,
}

impl Catalogue {
    /// The built-in entries alone.
    pub fn built_in() -> Self {
        Self { gear_sets: Shelf::built_in(), axles: Shelf::built_in(), tyres: Shelf::built_in(), speedometer_gears: Shelf::built_in() }
    }
}
