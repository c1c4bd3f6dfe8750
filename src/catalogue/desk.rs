//! The catalogue as it is worked on: any kind as lines of cells, an entry of the shop's own put there, copied and taken away.
//!
//! Whoever works on the catalogue need not know which kind it is; every change answers a new catalogue and leaves the old one.

use super::entry::Entry;
use super::export;
use super::import::Refused;
use super::{Catalogue, FileError, Kind, Missing, Shelf};

/// One entry, as a line of cells in the order of [`Kind::columns`].
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Line {
    /// The entry's id.
    pub id: String,
    /// What it is called.
    pub label: String,
    /// Its cells.
    pub cells: Vec<String>,
    /// Whether it is the shop's own.
    pub own: bool,
}

/// Why an entry was not put there; what was typed is still with whoever asked.
#[derive(Clone, Debug, PartialEq)]
pub enum NotPut {
    /// The cells make no entry.
    Refused(Refused),
    /// The file that the cells make cannot be read.
    File(FileError),
    /// The entry to be changed is not one of the shop's own.
    Missing(Missing),
}

impl NotPut {
    /// What is wrong and what to do, a sentence each.
    pub fn sentences(&self) -> Vec<String> {
        use crate::problem::{Explain, capital};
        let said = |why: &dyn Explain| format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()));
        match self {
            Self::Refused(refused) => refused.problems.iter().map(crate::problem::Problem::sentence).collect(),
            Self::File(FileError::Empty) => vec!["Nothing is typed yet. Fill in the name and the counts, then keep it.".into()],
            Self::File(why) => vec![said(why)],
            Self::Missing(why) => vec![said(why)],
        }
    }
}

/// Calls a function that is generic over the kind of entry with the shelf of that kind.
macro_rules! on_shelf {
    ($catalogue:expr, $kind:expr, $shelf:ident => $act:expr) => {
        match $kind {
            Kind::GearSets => {
                let $shelf = &$catalogue.gear_sets;
                $act
            }
            Kind::Axles => {
                let $shelf = &$catalogue.axles;
                $act
            }
            Kind::Tyres => {
                let $shelf = &$catalogue.tyres;
                $act
            }
            Kind::SpeedometerGears => {
                let $shelf = &$catalogue.speedometer_gears;
                $act
            }
        }
    };
}

/// Puts the shelf a change answers into a copy of the catalogue.
macro_rules! with_shelf {
    ($catalogue:expr, $kind:expr, $shelf:ident => $change:expr) => {{
        let mut after = $catalogue.clone();
        match $kind {
            Kind::GearSets => {
                let $shelf = &$catalogue.gear_sets;
                after.gear_sets = $change;
            }
            Kind::Axles => {
                let $shelf = &$catalogue.axles;
                after.axles = $change;
            }
            Kind::Tyres => {
                let $shelf = &$catalogue.tyres;
                after.tyres = $change;
            }
            Kind::SpeedometerGears => {
                let $shelf = &$catalogue.speedometer_gears;
                after.speedometer_gears = $change;
            }
        }
        after
    }};
}

fn lines<T: Entry>(shelf: &Shelf<T>) -> Vec<Line> {
    let line = |entry: &T| Line { id: entry.id().to_owned(), label: entry.label().to_owned(), cells: entry.cells(), own: entry.own() };
    shelf.own().iter().chain(shelf.all().filter(|entry| !entry.own())).map(line).collect()
}

/// The entry that cells make, read as an imported line is.
fn entry<T: Entry>(cells: &[String]) -> Result<T, NotPut> {
    let text = export::of_cells(T::KIND, cells);
    let plan = super::import::plan(&text, &Shelf::<T>::empty()).map_err(NotPut::File)?;
    match (plan.new.into_iter().next(), plan.refused.into_iter().next()) {
        (Some(planned), _) => Ok(planned.entry),
        (None, Some(refused)) => Err(NotPut::Refused(refused)),
        (None, None) => Err(NotPut::File(FileError::Empty)),
    }
}

fn put<T: Entry>(shelf: &Shelf<T>, id: Option<&str>, cells: &[String]) -> Result<Shelf<T>, NotPut> {
    let entry = entry::<T>(cells)?;
    match id {
        Some(id) => shelf.edit(id, entry).map_err(NotPut::Missing),
        None => Ok(shelf.add(entry).0),
    }
}

impl Catalogue {
    /// Every entry of a kind as a line of cells, the shop's own first.
    pub fn lines(&self, kind: Kind) -> Vec<Line> {
        on_shelf!(self, kind, shelf => lines(shelf))
    }

    /// The catalogue with an entry of the shop's own: a new one, or one changed. The cell `id` is given by the shelf.
    ///
    /// # Errors
    /// When the cells make no entry, or the entry to be changed is not one of the shop's own.
    pub fn put(&self, kind: Kind, id: Option<&str>, cells: &[String]) -> Result<Self, NotPut> {
        Ok(with_shelf!(self, kind, shelf => put(shelf, id, cells)?))
    }

    /// The catalogue with a copy of an entry as one of the shop's own.
    ///
    /// # Errors
    /// When there is no such entry.
    pub fn copied(&self, kind: Kind, id: &str) -> Result<Self, Missing> {
        Ok(with_shelf!(self, kind, shelf => shelf.copy(id)?.0))
    }

    /// The catalogue without an entry of the shop's own.
    ///
    /// # Errors
    /// When it is not one of the shop's own.
    pub fn without(&self, kind: Kind, id: &str) -> Result<Self, Missing> {
        Ok(with_shelf!(self, kind, shelf => shelf.delete(id)?))
    }
}
