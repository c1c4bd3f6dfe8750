//! The sheet as data: sections of rows, a cell for every setup, each figure with its working.
//!
//! The page, the print, the exports and the golden tests all read the same rows, so a figure is written once.
//! [`figure`] is what stands in a cell, [`worked`] a value worked out in the open, [`words`] the trade's words for a reader, [`export`] the rows as JSON and CSV.
//! The rows themselves are made by each question in [`crate::questions`]. Nothing here knows a browser.

pub mod catalogue;
pub mod export;
pub mod figure;
pub mod markup;
pub mod said;
pub mod silhouette;
pub mod suggest;
pub mod words;
pub mod worked;

use crate::job::{SetupChoice, SetupField};
use crate::units::System;
pub use figure::{Figure, Filled, Piece, Size, Tone, Verdict, Working};
pub use said::Said;
pub use words::Words;
pub use worked::Worked;

/// How the sheet is read: in which units, with which words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reader {
    /// The units of every figure.
    pub units: System,
    /// The trade's words.
    pub words: Words,
}

/// Where a question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Setups side by side: a cell for each.
    Compare,
    /// Parts in hand, which belong to no setup: one cell a row.
    Bench,
}

/// The whole sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What decides, under the heads.
    pub short: Row,
    /// The sections, in order.
    pub sections: Vec<Section>,
}

/// One section: a question and the rows that answer it.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Its name on the page: letters and dashes.
    pub id: &'static str,
    /// Where it is asked.
    pub place: Place,
    /// What stands above it.
    pub title: String,
    /// The question it answers.
    pub ask: String,
    /// The answer in a sentence or two; empty where nothing can be said yet.
    pub answer: Said,
    /// How many of the rows, from the first, decide; the rest stands folded.
    pub decide: usize,
    /// Its rows, those that decide first.
    pub rows: Vec<Row>,
    /// What the figures rest on.
    pub rests: Vec<Rest>,
}

/// A value that figures rest on: typed, or the usual one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rest {
    /// What the value is called.
    pub label: String,
    /// The value with its unit, as the reader reads it.
    pub value: String,
    /// Where it comes from: `as typed`, or the source of a usual value.
    pub source: String,
    /// Whether it was typed.
    pub is_typed: bool,
}

/// One row: a label and a cell for every setup, or one cell at the bench.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Its name inside the section: letters, digits, dashes and points.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// A cell for every setup, in the order of the columns; at the bench the one cell there is.
    pub cells: Vec<Cell>,
}

impl Row {
    /// A row of the bench.
    pub fn of_one(key: impl Into<String>, label: impl Into<String>, cell: Cell) -> Self {
        Self { key: key.into(), label: label.into(), cells: vec![cell] }
    }
}

/// What one setup answers in one row: lines of pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cell {
    /// The lines, top to bottom.
    pub lines: Vec<Vec<Piece>>,
    /// What is typed or chosen in this cell, behind its first line.
    pub entries: Vec<Entry>,
    /// The part that was found, which each setup can take (`use in A B C`): see [`crate::job::Setup::take_part`].
    pub offer: Option<Box<crate::catalogue::Entry>>,
}

/// Something typed or chosen where it is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Where in the setup it is kept.
    pub kind: EntryKind,
    /// What it is called, for those who do not see the row.
    pub label: String,
    /// What stands in it now.
    pub text: String,
}

/// The kinds of entries a cell can hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum EntryKind {
    /// A text of the setup.
    Text(SetupField),
    /// A choice from a few.
    Choice(SetupChoice),
    /// The layout of the gearbox, and how many gears it has.
    Layout,
    /// What an extra stage is.
    StageKind(usize),
    /// Where an extra stage stands, and its removal.
    StagePlace(usize),
    /// One more extra stage.
    AddStage,
    /// A slope, taken with the device itself.
    Tilt(SetupField),
}

impl Cell {
    /// A cell of one line.
    pub fn line(pieces: impl Into<Vec<Piece>>) -> Self {
        Self { lines: vec![pieces.into()], ..Self::default() }
    }

    /// The cell with something typed or chosen in it.
    #[must_use]
    pub fn with_entry(mut self, kind: EntryKind, label: impl Into<String>, text: impl Into<String>) -> Self {
        self.entries.push(Entry { kind, label: label.into(), text: text.into() });
        self
    }

    /// The cell with a part that each setup can take.
    #[must_use]
    pub fn offering(mut self, part: crate::catalogue::Entry) -> Self {
        self.offer = Some(Box::new(part));
        self
    }

    /// The cell with another line below.
    #[must_use]
    pub fn and(mut self, pieces: impl Into<Vec<Piece>>) -> Self {
        self.lines.push(pieces.into());
        self
    }

    /// The cell with another line below, where there is one.
    #[must_use]
    pub fn and_maybe(self, line: Option<impl Into<Vec<Piece>>>) -> Self {
        match line {
            Some(line) => self.and(line),
            None => self,
        }
    }

    /// A cell that says why it has no figure.
    pub fn absent(why: impl Into<String>) -> Self {
        Self::line([Piece::Absent(why.into())])
    }

    /// A cell that says what is still needed for its figure.
    pub fn needed(what: impl Into<String>) -> Self {
        Self::line([Piece::Needed(what.into())])
    }

    /// Every piece of the cell.
    pub fn pieces(&self) -> impl Iterator<Item = &Piece> {
        self.lines.iter().flatten()
    }
}

impl Row {
    /// Whether any setup has more to say in it than why it has no figure, or something to type.
    pub fn says_something(&self) -> bool {
        self.cells.iter().any(|cell| !cell.entries.is_empty() || cell.pieces().any(Piece::says))
    }

    /// Whether nothing stands in it but what is still needed.
    pub fn waits(&self) -> bool {
        self.cells.iter().all(|cell| cell.entries.is_empty() && cell.pieces().all(|piece| matches!(piece, Piece::Needed(_))))
    }
}

impl Section {
    /// The cautions of its rows, each with the column (counted from 0; none at the bench) and row it stands in.
    pub fn cautions(&self) -> impl Iterator<Item = (Option<usize>, &Row, &Verdict)> {
        let is_bench = self.place == Place::Bench;
        self.rows.iter().flat_map(move |row| {
            row.cells.iter().enumerate().flat_map(move |(column, cell)| {
                cell.pieces().filter_map(move |piece| match piece {
                    Piece::Verdict(verdict) if matches!(verdict.tone, Tone::Caution | Tone::Stop) => {
                        Some(((!is_bench).then_some(column), row, verdict))
                    }
                    _ => None,
                })
            })
        })
    }
}
