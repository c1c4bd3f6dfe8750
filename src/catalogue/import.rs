//! A file of entries compared with the catalogue: what is new, the same, different, refused and why, before anything is changed.
//!
//! Each line is taken whole or not at all, and [`Catalogue::apply`] answers a new catalogue.

use std::collections::{BTreeMap, BTreeSet};

use super::csv_file::CsvFile;
use super::error::LineError;
use super::file::FileError;
use super::{Catalogue, Entry, PartKind};
use crate::problem::Problem;

/// What reading a file would do.
#[derive(Clone, Debug, PartialEq)]
pub struct ImportPlan {
    /// The kind of part that the file's columns tell of.
    pub kind: PartKind,
    /// Entries the catalogue does not have.
    pub new: Vec<Planned>,
    /// Lines that say what the catalogue says already.
    pub same: Vec<usize>,
    /// Entries that would replace one of the shop's own.
    pub different: Vec<Change>,
    /// Lines that cannot be used.
    pub refused: Vec<Refused>,
    /// Doubts about lines that can be used.
    pub doubts: Vec<(usize, Problem)>,
    /// Columns of the header that mean nothing here.
    pub unknown_columns: Vec<String>,
}

/// An entry and the line it stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// The line, counted from 1.
    pub line: usize,
    /// What it tells.
    pub entry: Entry,
}

/// An own entry that the file tells differently.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The line, counted from 1.
    pub line: usize,
    /// The entry as it is.
    pub before: Entry,
    /// The entry as the file tells it.
    pub after: Entry,
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
    /// The catalogue's stays.
    Leave,
}

impl ImportPlan {
    /// The counts in words: `12 new gear sets, 3 as they are here, 1 different, 2 lines refused`.
    pub fn sentence(&self) -> String {
        let [new, same, different, refused] = [self.new.len(), self.same.len(), self.different.len(), self.refused.len()];
        let (kind, lines) = (self.kind.word(new), if refused == 1 { "line" } else { "lines" });
        format!("{new} new {kind}, {same} as they are here, {different} different, {refused} {lines} refused")
    }
}

impl Catalogue {
    /// What reading a file would do; nothing is changed yet.
    ///
    /// An entry is recognised by its id, or else by its name (the shop's own rings and pinions, and tyres, by their size and note). What the
    /// file has no column for stays as it is in the entry it speaks of. One that is told differently from a built-in entry is
    /// new: what is built in stays as it is.
    ///
    /// # Errors
    /// When the file as a whole cannot be read: too large, empty, or a header that fits no kind of part.
    pub fn plan(&self, text: &str) -> Result<ImportPlan, FileError> {
        let file = CsvFile::of(text)?;
        let mut sorting = Sorting::on(self, &file);
        for (number, text) in &file.table.lines {
            match sorting.read(&file, *number, text) {
                Ok(entry) => sorting.take(*number, entry),
                Err(problems) => sorting.plan.refused.push(Refused { line: *number, text: (*text).to_owned(), problems }),
            }
        }
        Ok(sorting.plan)
    }

    /// The catalogue after the import.
    #[must_use]
    pub fn apply(&self, plan: &ImportPlan, differing: Differing) -> Self {
        let new = plan.new.iter().map(|taken| taken.entry.clone()).collect();
        let changed = plan.different.iter().map(|change| change.after.clone()).collect();
        match differing {
            Differing::Replace => self.replace_all(changed).add_all(new),
            Differing::Leave => self.add_all(new),
        }
    }
}

/// A plan being made.
struct Sorting<'a> {
    ids: BTreeMap<&'a str, &'a Entry>,
    keys: BTreeMap<String, &'a Entry>,
    own: Vec<&'a Entry>,
    /// The line on which each entry of the file stands.
    seen: BTreeMap<String, usize>,
    /// The ids of the catalogue that a line of the file stands for.
    claimed: BTreeSet<&'a str>,
    plan: ImportPlan,
}

impl<'a> Sorting<'a> {
    fn on(catalogue: &'a Catalogue, file: &CsvFile<'_>) -> Self {
        let (kind, unknown_columns) = (file.kind, file.unknown.clone());
        Self {
            ids: crate::order::index(catalogue.entries(kind).map(|entry| (entry.id.as_str(), entry))),
            // A size without an id is the shop's own, however alike a built-in one is: that one may be hidden tomorrow.
            keys: crate::order::index(
                catalogue.entries(kind).filter(|entry| entry.own || kind.is_named()).map(|entry| (entry.key(), entry)),
            ),
            own: catalogue.own(kind).collect(),
            seen: BTreeMap::new(),
            claimed: BTreeSet::new(),
            plan: ImportPlan {
                kind,
                new: Vec::new(),
                same: Vec::new(),
                different: Vec::new(),
                refused: Vec::new(),
                doubts: Vec::new(),
                unknown_columns,
            },
        }
    }

    /// The entry that a line tells, unless an earlier line tells the same one.
    fn read(&mut self, file: &CsvFile<'_>, line: usize, text: &str) -> Result<Entry, Vec<Problem>> {
        let of_line = |why: &LineError| vec![Problem::stop("line", why)];
        let cells = file.cells(text).map_err(|why| of_line(&why))?;
        let plain = file.entry(&cells, None);
        let entry = file.entry(&cells, self.known(&plain)).checked()?;
        let name = if entry.id.is_empty() { format!("key {}", entry.key()) } else { format!("id {}", entry.id) };
        if let Some(earlier) = self.seen.get(&name) {
            return Err(of_line(&LineError::Twice(*earlier)));
        }
        self.seen.insert(name, line);
        Ok(entry)
    }

    fn take(&mut self, line: usize, entry: Entry) {
        self.plan.doubts.extend(entry.doubts().into_iter().map(|problem| (line, problem)));
        match self.known(&entry).filter(|known| self.claimed.insert(&known.id)) {
            Some(known) if known.said() == entry.said() => self.plan.same.push(line),
            Some(known) if known.own => {
                self.plan.different.push(Change { line, before: known.clone(), after: entry.placed(&known.id, true) });
            }
            Some(_) if self.has_own_version(&entry) => self.plan.same.push(line),
            Some(_) => self.plan.new.push(Planned { line, entry: entry.placed("", false) }),
            None => self.plan.new.push(Planned { line, entry }),
        }
    }

    /// The entry of the catalogue that one of the file speaks of.
    fn known(&self, entry: &Entry) -> Option<&'a Entry> {
        // An id that is not here speaks of another shop's own entry, never of a built-in one.
        let by_key = || self.keys.get(&entry.key()).filter(|known| entry.id.is_empty() || known.own);
        self.ids.get(entry.id.as_str()).or_else(by_key).copied()
    }

    /// Whether an earlier import already put this version of a built-in entry beside it, its label numbered.
    fn has_own_version(&self, entry: &Entry) -> bool {
        self.own.iter().any(|own| own.said() == entry.said() || own.says_numbered(entry))
    }
}
