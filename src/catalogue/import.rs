//! A file of entries compared with the shelf: what is new, the same, different, refused and why, before anything is changed.
//!
//! Each line is taken whole or not at all, and [`Plan::apply`] answers a new shelf.

use std::collections::{BTreeMap, BTreeSet};

use super::entry::{self, Entry, said, says_it_numbered};
use super::file::FileError;
use super::line::LineError;
use super::shelf::Shelf;
use super::table::{self, Row};
use crate::problem::Problem;

/// What reading a file would do.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan<T> {
    /// Entries the shelf does not have.
    pub new: Vec<Planned<T>>,
    /// Lines that say what the shelf says already.
    pub same: Vec<usize>,
    /// Entries that would replace one of the shop's own.
    pub different: Vec<Change<T>>,
    /// Lines that cannot be used.
    pub refused: Vec<Refused>,
    /// Doubts about lines that can be used.
    pub doubts: Vec<(usize, Problem)>,
    /// Columns of the header that mean nothing here.
    pub unknown_columns: Vec<String>,
}

/// An entry and the line it stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned<T> {
    /// The line, counted from 1.
    pub line: usize,
    /// What it tells.
    pub entry: T,
}

/// An own entry that the file tells differently.
#[derive(Clone, Debug, PartialEq)]
pub struct Change<T> {
    /// The line, counted from 1.
    pub line: usize,
    /// The entry as it is.
    pub before: T,
    /// The entry as the file tells it.
    pub after: T,
}

/// A line that cannot be used.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// The line, counted from 1.
    pub line: usize,
    /// The line as it stands in the file.
    pub text: String,
    /// Why, one problem for each cell.
    pub problems: Vec<Problem>,
}

/// What becomes of entries that the file tells differently.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Differing {
    /// The file's wins.
    Replace,
    /// The shelf's stays.
    Leave,
}

/// What reading a file would do to a shelf.
///
/// An entry is recognised by its id, or else by its name (axles and tyres by their size and note). What the file has no
/// column for stays as it is in the entry it speaks of. One that is told differently from a built-in entry is new: what is
/// built in stays as it is.
///
/// # Errors
/// When the file as a whole cannot be read: too large, empty, or a header that fits no entry of this kind.
pub fn plan<T: Entry>(text: &str, shelf: &Shelf<T>) -> Result<Plan<T>, FileError> {
    let table = table::read(text, T::KIND)?;
    let mut sorting = Sorting::on(shelf, table.unknown.clone());
    for line in table.lines() {
        let row = line.row.map_err(|why| vec![Problem::stop("line", &why)]);
        let read = row.and_then(|row| T::from_row(&sorting.filled(row)));
        match read.and_then(|entry| sorting.once(line.number, entry)) {
            Ok(entry) => sorting.take(line.number, entry),
            Err(problems) => sorting.plan.refused.push(Refused { line: line.number, text: line.text.to_owned(), problems }),
        }
    }
    Ok(sorting.plan)
}

/// A plan being made.
struct Sorting<'a, T: Entry> {
    shelf: &'a Shelf<T>,
    ids: BTreeMap<String, &'a T>,
    keys: BTreeMap<String, &'a T>,
    /// The line on which each entry of the file stands.
    seen: BTreeMap<String, usize>,
    /// The ids of the shelf that a line of the file stands for.
    claimed: BTreeSet<String>,
    plan: Plan<T>,
}

impl<'a, T: Entry> Sorting<'a, T> {
    fn on(shelf: &'a Shelf<T>, unknown_columns: Vec<String>) -> Self {
        let plan =
            Plan { new: Vec::new(), same: Vec::new(), different: Vec::new(), refused: Vec::new(), doubts: Vec::new(), unknown_columns };
        Self {
            shelf,
            ids: crate::order::index(shelf.all().map(|entry| (entry.id().to_owned(), entry))),
            keys: crate::order::index(shelf.all().map(|entry| (entry.key(), entry))),
            seen: BTreeMap::new(),
            claimed: BTreeSet::new(),
            plan,
        }
    }

    /// The entry again, unless an earlier line tells the same one.
    fn once(&mut self, line: usize, entry: T) -> Result<T, Vec<Problem>> {
        let name = if entry.id().is_empty() { format!("key {}", entry.key()) } else { format!("id {}", entry.id()) };
        if let Some(earlier) = self.seen.get(&name) {
            return Err(vec![Problem::stop("line", &LineError::Twice { line: *earlier })]);
        }
        self.seen.insert(name, line);
        Ok(entry)
    }

    fn take(&mut self, line: usize, entry: T) {
        self.plan.doubts.extend(entry.problems().into_iter().map(|problem| (line, problem)));
        let known = self.known(entry.id(), &entry.key());
        match known.filter(|known| self.claimed.insert(known.id().to_owned())) {
            Some(known) if said(known) == said(&entry) => self.plan.same.push(line),
            Some(known) if known.own() => {
                self.plan.different.push(Change { line, before: known.clone(), after: placed(entry, known.id()) });
            }
            Some(_) if self.has_own_version(&entry) => self.plan.same.push(line),
            Some(_) => self.plan.new.push(Planned { line, entry: placed(entry, "") }),
            None => self.plan.new.push(Planned { line, entry }),
        }
    }

    /// The entry of the shelf that an id and a key speak of.
    fn known(&self, id: &str, key: &str) -> Option<&'a T> {
        // An id that is not here speaks of another shop's own entry, never of a built-in one.
        let by_key = || self.keys.get(key).filter(|known| id.is_empty() || known.own());
        self.ids.get(id).or_else(by_key).copied()
    }

    /// A row with what the file has no column for as it stands in the entry of the shelf that the line speaks of.
    fn filled<'b>(&self, row: Row<'b>) -> Row<'b> {
        let known = self.known(&row.text("id"), &entry::key::<T>(|column| row.text(column)));
        match known {
            Some(known) => row.about(known.cells()),
            None => row,
        }
    }

    /// Whether an earlier import already put this version of a built-in entry beside it, its label numbered.
    fn has_own_version(&self, entry: &T) -> bool {
        self.shelf.own().iter().any(|own| said(own) == said(entry) || says_it_numbered(own, entry))
    }
}

fn placed<T: Entry>(mut entry: T, id: &str) -> T {
    entry.place(id.to_owned(), true);
    entry
}

impl<T: Entry> Plan<T> {
    /// The shelf after the import.
    #[must_use]
    pub fn apply(&self, shelf: &Shelf<T>, differing: Differing) -> Shelf<T> {
        let new = self.new.iter().map(|taken| taken.entry.clone()).collect();
        let changed = self.different.iter().map(|change| (change.before.id().to_owned(), change.after.clone()));
        match differing {
            Differing::Replace => shelf.replace_all(changed.collect()).add_all(new),
            Differing::Leave => shelf.add_all(new),
        }
    }
}
