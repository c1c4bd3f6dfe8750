//! The catalogue: gear sets, rings and pinions, tyres and speedometer gears, built in as invented demo data, and the shop's own
//! beside them.
//!
//! Things first: an [`Entry`] is a record of texts, one for each [`Column`] of its [`PartKind`], kept as typed; [`Part`] is what
//! these texts say in the terms of the trade. A kind is a row in `kind.rs`, a column one in `column.rs`: files, forms, search and
//! checks go by them. Questions asked of a [`Catalogue`]: [`own`] finds and changes the shop's own entries, [`demo`] tells whether the
//! invented ones are offered beside them, [`case`] whether a gear set goes into the case of another, [`import`] reads files,
//! [`exchange`] hands a shelf to another shop, [`saved`] keeps the shop's own between visits. What a part does in a car is not answered here.

mod built_in;
pub mod case;
mod check;
mod column;
mod csv_file;
pub mod demo;
mod entry;
mod error;
pub mod exchange;
pub mod file;
pub mod import;
mod join;
mod kind;
mod layout;
pub mod money;
pub mod own;
mod part;
pub mod saved;
pub mod search;
pub mod stock;

pub use check::problem_at;
pub use column::{Choices, Column, ColumnRow, Holds};
pub use csv_file::{write, write_example};
pub use demo::DemoParts;
pub use entry::Entry;
pub use error::LineError;
pub use file::FileError;
pub use import::ImportPlan;
pub use kind::PartKind;
pub use own::Missing;
pub use part::Part;

use std::sync::Arc;

use crate::speedometer::SpeedoGear;

/// Everything that can be chosen: what is built in, and the shop's own. Every change answers a new catalogue and leaves the old
/// one as it was, so that it can be undone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Catalogue {
    built_in: &'static [Entry],
    own: Arc<Vec<Entry>>,
    /// Whether what is built in is known, but not offered.
    hides_built_in: bool,
}

impl Catalogue {
    /// The built-in entries alone.
    pub fn built_in() -> Self {
        Self { built_in: built_in::entries(), own: Arc::default(), hides_built_in: false }
    }

    /// Nothing at all.
    pub fn empty() -> Self {
        Self { built_in: &[], own: Arc::default(), hides_built_in: false }
    }

    /// Whether what is built in is among it.
    pub fn has_built_in(&self) -> bool {
        !self.built_in.is_empty()
    }

    /// Whether the shop has any entry of its own.
    pub fn has_own(&self) -> bool {
        !self.own.is_empty()
    }

    /// The same catalogue, of which the built-in entries are offered or not. Hidden ones are still known by name: a job that was made
    /// with one keeps it.
    #[must_use]
    pub fn offering(&self, built_in: bool) -> Self {
        Self { hides_built_in: !built_in, ..self.clone() }
    }

    /// Every entry of a kind that is offered, the built-in ones first.
    pub fn entries(&self, kind: PartKind) -> impl Iterator<Item = &Entry> {
        self.known(kind).skip_while(|entry| self.hides(entry))
    }

    /// Whether an entry is known and not offered.
    pub fn hides(&self, entry: &Entry) -> bool {
        self.hides_built_in && !entry.own
    }

    /// Every entry of a kind, hidden ones too, the built-in ones first.
    pub fn known(&self, kind: PartKind) -> impl Iterator<Item = &Entry> {
        self.all().filter(move |entry| entry.kind == kind)
    }

    /// All of the shop's own entries.
    pub fn all_own(&self) -> &[Entry] {
        &self.own
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
        self.known(kind).find(|entry| entry.id == id)
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

    /// Every entry of one kind that is offered as a file, the built-in ones first.
    pub fn whole_file(&self, kind: PartKind) -> String {
        write(kind, self.entries(kind))
    }

    fn all(&self) -> impl Iterator<Item = &Entry> {
        self.built_in.iter().chain(self.own.iter())
    }
}
