//! An entry of the catalogue: one record of texts, a text for each column of its kind, kept as they were typed.

use std::collections::BTreeMap;

use super::{Column, PartKind};
use crate::gearing::read::{self, line};
use crate::spreadsheet::one_line;

/// What is known of one part, a text for each column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Decides which columns there are.
    pub kind: PartKind,
    /// The id, which stays when the entry is edited; blank for one that is not in a catalogue yet.
    pub id: String,
    /// Whether it is the shop's own, not built in.
    pub own: bool,
    /// What is written in each column; a column with nothing in it is not here.
    texts: BTreeMap<Column, String>,
}

impl Entry {
    /// An entry with nothing in it.
    pub fn new(kind: PartKind) -> Self {
        Self { kind, id: String::new(), own: false, texts: BTreeMap::new() }
    }

    /// An entry to be filled in: on the shelf, and of the likeliest layout and role.
    pub fn started(kind: PartKind) -> Self {
        kind.columns().fold(Self::new(kind), |entry, column| entry.with(column, column.start()))
    }

    /// The entry with another text in a column.
    #[must_use]
    pub fn with(mut self, column: Column, text: impl Into<String>) -> Self {
        self.set(column, text);
        self
    }

    /// The entry under an id, as one of the shop's own or not.
    #[must_use]
    pub(super) fn placed(self, id: &str, own: bool) -> Self {
        Self { id: id.to_owned(), own, ..self }
    }

    /// Puts a text into a column.
    pub fn set(&mut self, column: Column, text: impl Into<String>) {
        let text = text.into();
        if column == Column::Id {
            self.id = text;
        } else if text.is_empty() {
            self.texts.remove(&column);
        } else {
            self.texts.insert(column, text);
        }
    }

    /// Fills the gears of a gear set from a whole line of a box in the column of its 1st gear, where the other gears are blank; what
    /// the line says of the constant pair or of reverse goes into a blank column of theirs.
    pub fn spread_line(&mut self) {
        let [first, others @ ..] = Column::GEARS;
        if self.kind != PartKind::GearSet || others.iter().any(|gear| !self.text(*gear).is_empty()) {
            return;
        }
        let (text, layout) = (self.text(first), self.layout());
        // Where the constant pair has a column of its own, the line has none.
        let forward = (!self.text(Column::Constant).is_empty()).then_some(Column::GEARS.len());
        if read::gear(text, layout).is_ok() {
            return;
        }
        let Some(found) = line::line(text, layout, forward).ok().filter(|found| found.gears.len() > 1) else { return };
        for (column, gear) in Column::GEARS.into_iter().zip(found.gears) {
            self.set(column, gear);
        }
        for (column, text) in [(Column::Constant, found.constant), (Column::Reverse, found.reverse)] {
            if let Some(text) = text.filter(|_| self.text(column).is_empty()) {
                self.set(column, text);
            }
        }
    }

    /// The text of a column, as typed.
    pub fn text(&self, column: Column) -> &str {
        if column == Column::Id { &self.id } else { self.texts.get(&column).map_or("", String::as_str) }
    }

    /// The text of a column as a file has it: what is not said to be in stock is not.
    pub fn cell(&self, column: Column) -> &str {
        match self.text(column) {
            "" if column == Column::InStock => "no",
            text => text,
        }
    }

    /// What it is called by: its name, its teeth or its size.
    pub fn title(&self) -> &str {
        self.text(self.kind.title())
    }

    /// Whether one is on the shelf.
    pub fn in_stock(&self) -> bool {
        self.text(Column::InStock) == "yes"
    }

    /// Says whether one is on the shelf; a quantity of none is then out of date.
    pub fn put_in_stock(&mut self, in_stock: bool) {
        if in_stock && self.text(Column::Quantity) == "0" {
            self.set(Column::Quantity, "");
        }
        self.set(Column::InStock, if in_stock { "yes" } else { "no" });
    }

    /// The text that tells it apart from another entry of its kind.
    pub(super) fn label(&self) -> &str {
        self.text(self.kind.label())
    }

    /// The entry with something behind its label.
    pub(super) fn labelled(&self, behind: &str) -> Self {
        self.clone().with(self.kind.label(), format!("{} {behind}", self.label()).trim())
    }

    /// What it is recognised by where it has no id: its name, or its size and note.
    pub(super) fn key(&self) -> String {
        let label = if self.kind.is_named() { "" } else { self.label() };
        let words = self.title().split_whitespace().chain(label.split_whitespace());
        words.collect::<Vec<_>>().join(" ").to_lowercase()
    }

    /// Every text that is there.
    pub(super) fn texts(&self) -> impl Iterator<Item = &str> {
        self.texts.values().map(String::as_str)
    }

    /// What it says: its cells without its id, outer blanks and line breaks set aside.
    pub(super) fn said(&self) -> Vec<String> {
        self.kind.columns().skip(1).map(|column| one_line(self.cell(column))).collect()
    }

    /// Whether it says what another does but for the number behind its label, which it got because the label was in use.
    pub(super) fn says_numbered(&self, other: &Self) -> bool {
        self.unnumbered().is_some_and(|plain| plain.label() == other.label().trim() && plain.said() == other.said())
    }

    /// The entry without the number behind its label; none where there is no number.
    pub(super) fn unnumbered(&self) -> Option<Self> {
        let (label, number) = self.label().trim().strip_suffix(')')?.rsplit_once('(')?;
        number.parse::<usize>().ok()?;
        Some(self.clone().with(self.kind.label(), label.trim_end()))
    }
}
