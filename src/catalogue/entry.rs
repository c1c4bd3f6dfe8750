//! What every entry of the catalogue has in common: an id that stays, a label that people read, and one line of a file.

use super::export::one_line;
use super::file::FileError;
use super::table::{self, Row};
use crate::problem::Problem;

/// The kinds of entry, one built-in file each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Gear sets.
    GearSets,
    /// Final drives.
    Axles,
    /// Tyre sizes.
    Tyres,
    /// Speedometer gears and adapters.
    SpeedometerGears,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::GearSets, Self::Axles, Self::Tyres, Self::SpeedometerGears];

    /// What the entries are called in a sentence.
    pub fn word(self) -> &'static str {
        match self {
            Self::GearSets => "gear sets",
            Self::Axles => "final drives",
            Self::Tyres => "tyres",
            Self::SpeedometerGears => "speedometer gears",
        }
    }

    /// The kind of entry whose columns a file's header names.
    ///
    /// # Errors
    /// When the file is too large, empty, or its header fits no kind.
    pub fn of_file(text: &str) -> Result<Self, FileError> {
        table::kind(text)
    }

    /// The columns of a file of this kind, in the order they are written.
    pub fn columns(self) -> &'static [&'static str] {
        match self {
            Self::GearSets => super::gear_set::COLUMNS,
            Self::Axles => super::axle::COLUMNS,
            Self::Tyres => super::tyre::COLUMNS,
            Self::SpeedometerGears => super::speedo::COLUMNS,
        }
    }

    /// The columns without which a file says nothing of this kind.
    pub fn needed(self) -> &'static [&'static str] {
        match self {
            Self::GearSets => &["name", "layout", "gear_1"],
            Self::Axles => &["drive"],
            Self::Tyres => &["designation"],
            Self::SpeedometerGears => &["name", "role", "teeth", "housing"],
        }
    }
}

/// One entry of the catalogue.
pub trait Entry: Clone + PartialEq + Sized + Send + Sync + 'static {
    /// Which kind it is.
    const KIND: Kind;
    /// Whether people call it by its label, so that an own entry must not share one with a built-in entry.
    const NAMED: bool;
    /// The columns by which an entry without an id is recognised when a file is read.
    const KEY: &'static [&'static str];

    /// The id, which stays when the entry is edited.
    fn id(&self) -> &str;
    /// Whether it is the shop's own, not built in.
    fn own(&self) -> bool;
    /// Whether one is on the shelf.
    fn in_stock(&self) -> bool;
    /// Says whether one is on the shelf.
    fn put_in_stock(&mut self, in_stock: bool);
    /// Gives the entry its id and says whether it is the shop's own.
    fn place(&mut self, id: String, own: bool);
    /// The text that tells two entries of one kind apart for a reader.
    fn label(&self) -> &str;
    /// Gives the entry another such text.
    fn relabel(&mut self, label: String);
    /// The cells of its line, in the order of the kind's columns.
    fn cells(&self) -> Vec<String>;

    /// The entry a line tells.
    ///
    /// # Errors
    /// Every cell that cannot be used, so that a line is taken whole or not at all.
    fn from_row(row: &Row) -> Result<Self, Vec<Problem>>;

    /// What an entry without an id is recognised by when a file is read.
    fn key(&self) -> String {
        let cells = self.cells();
        let column = |name: &str| Self::KIND.columns().iter().position(|column| *column == name);
        key::<Self>(|name| column(name).and_then(|at| cells.get(at)).cloned().unwrap_or_default())
    }

    /// What is wrong with the entry as it stands: cells that cannot be used, and doubts about those that can.
    fn problems(&self) -> Vec<Problem>;

    /// The built-in entries of this kind, read once.
    fn built_in() -> &'static [Self];
}

/// The part of [`Entry`] that every kind has alike, each by its own members: whether it is in stock, and its label.
macro_rules! kept {
    ($($in_stock:ident).+, $($label:ident).+) => {
        fn id(&self) -> &str {
            &self.id
        }

        fn own(&self) -> bool {
            self.own
        }

        fn in_stock(&self) -> bool {
            self.$($in_stock).+
        }

        fn put_in_stock(&mut self, in_stock: bool) {
            self.$($in_stock).+ = in_stock;
        }

        fn place(&mut self, id: String, own: bool) {
            (self.id, self.own) = (id, own);
        }

        fn label(&self) -> &str {
            &self.$($label).+
        }

        fn relabel(&mut self, label: String) {
            self.$($label).+ = label;
        }
    };
}
pub(super) use kept;

/// The key of an entry of a kind, whose columns are asked for by name.
pub(super) fn key<T: Entry>(column: impl Fn(&str) -> String) -> String {
    folded(&T::KEY.iter().map(|name| column(name)).collect::<Vec<_>>().join(" "))
}

/// A text made fit for an id: letters and digits in lower case, all else a dash.
pub(super) fn slug(text: &str) -> String {
    const LONGEST: usize = 60;
    let mut slug = String::with_capacity(text.len().min(LONGEST));
    for c in text.chars().flat_map(char::to_lowercase) {
        if slug.len() >= LONGEST {
            break;
        }
        if c.is_alphanumeric() {
            slug.push(c);
        } else if !slug.is_empty() && !slug.ends_with('-') {
            slug.push('-');
        }
    }
    let slug = slug.trim_end_matches('-');
    if slug.is_empty() { "entry".to_owned() } else { slug.to_owned() }
}

/// A text as two labels are compared: without regard to case and to the number of blanks.
fn folded(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

/// What an entry says: its cells without its id, outer blanks and line breaks set aside.
pub(super) fn said<T: Entry>(entry: &T) -> Vec<String> {
    entry.cells().iter().skip(1).map(|cell| one_line(cell)).collect()
}

/// Whether an entry says what another does but for the number behind its label, which it got because the label was in use.
pub(super) fn says_it_numbered<T: Entry>(numbered: &T, other: &T) -> bool {
    let behind = numbered.label().trim().strip_prefix(other.label().trim());
    let number = behind.and_then(|behind| behind.trim().strip_prefix('(')?.strip_suffix(')')?.parse::<usize>().ok());
    number.is_some() && {
        let mut plain = numbered.clone();
        plain.relabel(other.label().to_owned());
        said(&plain) == said(other)
    }
}
