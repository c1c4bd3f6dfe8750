//! The catalogue: gear sets, rings and pinions, tyres and speedometer gears, built in as invented demo data, and the shop's own
//! beside them.
//!
//! Things first: an [`Entry`] is a record of texts, one for each [`Column`] of its [`PartKind`], kept as typed; [`Part`] is what
//! these texts say in the terms of the trade. A kind is a row in `kind.rs`, a column one in `column.rs`: files, forms, search and
//! checks go by them. Questions asked of a [`Catalogue`]: [`own`] finds and changes the shop's own entries, [`case`] tells whether a gear set
//! goes into the case of another, [`import`] reads files,
//! [`saved`] keeps the shop's own between visits. What a part does in a car is not answered here.

mod built_in;
pub mod case;
mod check;
mod column;
mod csv_file;
mod entry;
mod error;
pub mod file;
pub mod import;
mod join;
mod kind;
pub mod own;
mod part;
pub mod saved;

pub use check::problem_at;
pub use column::{Choices, Column, ColumnRow, Holds};
pub use csv_file::write;
pub use entry::Entry;
pub use error::LineError;
pub use file::FileError;
pub use import::ImportPlan;
pub use kind::PartKind;
pub use own::Missing;
pub use part::Part;

use crate::speedometer::SpeedoGear;

/// Everything that can be chosen: what is built in, and the shop's own. Every change answers a new catalogue and leaves the old
/// one as it was, so that it can be undone.
#[derive(Clone, Debug, PartialEq)]
pub struct Catalogue {
    built_in: &'static [Entry],
    own: Vec<Entry>,
}

impl Catalogue {
    /// The built-in entries alone.
    pub fn built_in() -> Self {
        Self { built_in: built_in::entries(), own: Vec::new() }
    }

    /// Nothing at all.
    pub fn empty() -> Self {
        Self { built_in: &[], own: Vec::new() }
    }

    /// Whether what is built in is among it.
    pub fn has_built_in(&self) -> bool {
        !self.built_in.is_empty()
    }

    /// Every entry of a kind, the built-in ones first.
    pub fn entries(&self, kind: PartKind) -> impl Iterator<Item = &Entry> {
        self.all().filter(move |entry| entry.kind == kind)
    }

    /// The shop's own entries of a kind.
    pub fn own(&self, kind: PartKind) -> impl Iterator<Item = &Entry> {
        self.own.iter().filter(move |entry| entry.kind == kind)
    }

    /// The entry of that id.
    ///
    /// ```
    /// use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
    /// let axle = Entry::new(PartKind::RingAndPinion).with(Column::Drive, "43/11").with(Column::Place, "rack 3");
    /// let (catalogue, id) = Catalogue::empty().add(axle);
    /// let kept = catalogue.get(PartKind::RingAndPinion, &id);
    /// assert_eq!(kept.map(|entry| entry.text(Column::Place)), Some("rack 3"));
    /// assert_eq!(catalogue.get(PartKind::Tyre, &id), None);
    /// ```
    pub fn get(&self, kind: PartKind, id: &str) -> Option<&Entry> {
        self.entries(kind).find(|entry| entry.id == id)
    }

    /// The speedometer gears that can be read, in the order of [`Catalogue::entries`].
    pub fn speedometer_gears(&self) -> Vec<SpeedoGear> {
        let gear = |entry: &Entry| match entry.part() {
            Ok(Part::SpeedometerGear(gear)) => Some(gear),
            _ => None,
        };
        self.entries(PartKind::SpeedometerGear).filter_map(gear).collect()
    }

    /// The shop's own entries of one kind as a file.
    pub fn own_file(&self, kind: PartKind) -> String {
        write(kind, self.own(kind))
    }

    /// Every entry of one kind as a file, the built-in ones first.
    pub fn whole_file(&self, kind: PartKind) -> String {
        write(kind, self.entries(kind))
    }

    fn all(&self) -> impl Iterator<Item = &Entry> {
        self.built_in.iter().chain(&self.own)
    }
}
