//! The catalogue as it is worked on: entries found, an entry of the shop's own put there, copied, taken away and put back.
//!
//! Whoever works on the catalogue need not know which kind it is; every change answers a new catalogue and leaves the old one.

use super::entry::Entry;
use super::export;
use super::import::Refused;
use super::{AnyEntry, Axle, Catalogue, FileError, GearSet, Kind, Missing, Shelf, SpeedoEntry, TyreEntry};
use crate::problem::{Explain, Problem};

/// The entries of a kind that hold every word sought.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The first of them, the shop's own before the built-in ones.
    pub entries: Vec<AnyEntry>,
    /// How many fit.
    pub many: usize,
    /// How many there are of the kind.
    pub of: usize,
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
    /// Everything that is wrong, each at its column where it has one.
    pub fn problems(self) -> Vec<Problem> {
        match self {
            Self::Refused(refused) => refused.problems,
            Self::File(FileError::Empty) => vec![Problem::stop("line", &NothingTyped)],
            Self::File(why) => vec![Problem::stop("line", &why)],
            Self::Missing(why) => vec![Problem::stop("line", &why)],
        }
    }
}

/// Every cell is blank.
struct NothingTyped;

impl Explain for NothingTyped {
    fn what(&self) -> String {
        "nothing is typed yet".into()
    }

    fn what_to_do(&self) -> String {
        "fill in the name and the counts, then keep it".into()
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

fn found<T: Entry + Into<AnyEntry>>(shelf: &Shelf<T>, sought: &[String], most: usize, kept: Option<&str>) -> Found {
    let fits = |entry: &&T| {
        if sought.is_empty() || kept == Some(entry.id()) {
            return true;
        }
        let cells = entry.cells().join(" ").to_lowercase();
        sought.iter().all(|word| cells.contains(word.as_str()))
    };
    let in_order = shelf.own().iter().chain(shelf.all().filter(|entry| !entry.own()));
    let (mut entries, mut many) = (Vec::new(), 0);
    for entry in in_order.filter(fits) {
        if many < most {
            entries.push(entry.clone().into());
        }
        many += 1;
    }
    Found { entries, many, of: shelf.len() }
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

/// What is wrong with cells, or doubtful about the entry they make.
fn problems<T: Entry>(cells: &[String]) -> Vec<Problem> {
    match entry::<T>(cells) {
        Ok(entry) => entry.problems(),
        Err(why) => why.problems(),
    }
}

fn put<T: Entry>(shelf: &Shelf<T>, id: Option<&str>, cells: &[String]) -> Result<(Shelf<T>, String), NotPut> {
    let entry = entry::<T>(cells)?;
    match id {
        Some(id) => Ok((shelf.edit(id, entry).map_err(NotPut::Missing)?, id.to_owned())),
        None => Ok(shelf.add(entry)),
    }
}

fn stocked<T: Entry>(shelf: &Shelf<T>, id: &str, in_stock: bool) -> Result<Shelf<T>, Missing> {
    let missing = || Missing { id: id.to_owned(), built_in: false };
    let mut entry = shelf.get(id).cloned().ok_or_else(missing)?;
    entry.put_in_stock(in_stock);
    shelf.edit(id, entry)
}

impl Catalogue {
    /// The entries of a kind that hold every word sought, the first `most` of them; the entry `kept`, which is being changed, always.
    ///
    /// Every entry is looked at, however few are asked for.
    pub fn found(&self, kind: Kind, sought: &str, most: usize, kept: Option<&str>) -> Found {
        let words: Vec<String> = sought.split_whitespace().map(str::to_lowercase).collect();
        on_shelf!(self, kind, shelf => found(shelf, &words, most, kept))
    }

    /// How many entries there are of a kind, and how many of them are the shop's own.
    pub fn count(&self, kind: Kind) -> (usize, usize) {
        on_shelf!(self, kind, shelf => (shelf.len(), shelf.own().len()))
    }

    /// The entry of that id.
    pub fn any(&self, kind: Kind, id: &str) -> Option<AnyEntry> {
        on_shelf!(self, kind, shelf => shelf.get(id).cloned().map(AnyEntry::from))
    }

    /// The catalogue with an entry of the shop's own, a new one or one changed, and its id. The cell `id` is given by the shelf.
    ///
    /// # Errors
    /// When the cells make no entry, or the entry to be changed is not one of the shop's own.
    pub fn put(&self, kind: Kind, id: Option<&str>, cells: &[String]) -> Result<(Self, String), NotPut> {
        let given;
        let after = with_shelf!(self, kind, shelf => {
            let (shelf, id) = put(shelf, id, cells)?;
            given = id;
            shelf
        });
        Ok((after, given))
    }

    /// The catalogue with a copy of an entry as one of the shop's own, and the copy's id.
    ///
    /// # Errors
    /// When there is no such entry.
    pub fn copied(&self, kind: Kind, id: &str) -> Result<(Self, String), Missing> {
        let given;
        let after = with_shelf!(self, kind, shelf => {
            let (shelf, id) = shelf.copy(id)?;
            given = id;
            shelf
        });
        Ok((after, given))
    }

    /// The catalogue without an entry of the shop's own.
    ///
    /// # Errors
    /// When it is not one of the shop's own.
    pub fn without(&self, kind: Kind, id: &str) -> Result<Self, Missing> {
        Ok(with_shelf!(self, kind, shelf => shelf.delete(id)?))
    }

    /// The catalogue with an entry that was taken out; it keeps its id, and whatever changed since stays changed.
    #[must_use]
    pub fn put_back(&self, entry: &AnyEntry) -> Self {
        let mut after = self.clone();
        match entry.clone() {
            AnyEntry::GearSet(entry) => after.gear_sets = self.gear_sets.add(entry).0,
            AnyEntry::Axle(entry) => after.axles = self.axles.add(entry).0,
            AnyEntry::Tyre(entry) => after.tyres = self.tyres.add(entry).0,
            AnyEntry::SpeedometerGear(entry) => after.speedometer_gears = self.speedometer_gears.add(entry).0,
        }
        after
    }

    /// The catalogue with an entry of the shop's own said to be on the shelf, or not.
    ///
    /// # Errors
    /// When it is not one of the shop's own.
    pub fn stocked(&self, kind: Kind, id: &str, in_stock: bool) -> Result<Self, Missing> {
        Ok(with_shelf!(self, kind, shelf => stocked(shelf, id, in_stock)?))
    }
}

/// What is wrong with the cells of an entry being written, each with its column, and what is doubtful about the entry they make.
pub fn problems_of(kind: Kind, cells: &[String]) -> Vec<Problem> {
    match kind {
        Kind::GearSets => problems::<GearSet>(cells),
        Kind::Axles => problems::<Axle>(cells),
        Kind::Tyres => problems::<TyreEntry>(cells),
        Kind::SpeedometerGears => problems::<SpeedoEntry>(cells),
    }
}

/// The first problem of one column of an entry being written.
pub fn problem_at<'a>(column: &str, problems: &'a [Problem]) -> Option<&'a Problem> {
    problems.iter().find(|problem| problem.field.replace('.', "_") == column)
}
