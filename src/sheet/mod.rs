//! The sheet as data: sections of rows, a cell for every setup, each figure with its working.
//!
//! The page, the print, the exports and the golden tests all read the same rows, so a figure is written once.
//! [`figure`] is what stands in a cell, [`words`] the trade's words for a reader, [`export`] the rows as JSON and CSV, [`customer`] one setup's
//! page for the customer;
//! [`engine`] says what the engine is taken for; [`short`] and a file for each section turn answers into rows. Nothing here knows a browser.

pub mod bench;
pub mod catalogue;
pub mod customer;
pub mod engine;
pub mod export;
pub mod figure;
pub mod find;
pub mod gears;
pub mod inside;
pub mod options;
pub mod pull;
pub mod road;
pub mod short;
pub mod speedo;
pub mod suggest;
pub mod typed;
pub mod tyres;
pub mod words;

use crate::analysis::{self, Analysis, Shelves};
use crate::catalogue::Catalogue;
use crate::job::{Job, SetupChoice, SetupField};
use crate::problem::Severity;
use crate::setup::Conditions;
use crate::units::System;
pub use figure::{Figure, Piece, Size, Tone, Verdict, Working};
pub use words::Words;

/// How the sheet is read: in which units, with which words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reader {
    /// The units of every figure.
    pub units: System,
    /// The trade's words.
    pub words: Words,
}

/// A job with every answer, and how it is read: what each section makes its rows from.
#[derive(Clone, Copy, Debug)]
pub struct Source<'a> {
    /// The job as typed.
    pub job: &'a Job,
    /// What all setups share.
    pub conditions: &'a Conditions,
    /// The setups in the order of their columns.
    pub setups: &'a [Analysis],
    /// What lies on the shop's shelves.
    pub shelves: Shelves<'a>,
    /// How it is read.
    pub reader: Reader,
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
    /// Its title.
    pub title: String,
    /// The question it answers.
    pub ask: String,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// One row: a label and a cell for every setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Its name inside the section: letters, digits, dashes and points.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// A cell for every setup, in the order of the columns.
    pub cells: Vec<Cell>,
}

/// What one setup answers in one row: lines of pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cell {
    /// The lines, top to bottom.
    pub lines: Vec<Vec<Piece>>,
    /// What is typed or chosen in this cell, behind its first line.
    pub entries: Vec<Entry>,
}

/// Something typed or chosen where it is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// What it is.
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
    /// Where an extra stage stands, and its removal.
    StagePlace(usize),
    /// One more extra stage.
    AddStage,
}

/// The sheet of a job with what is built in on the shelves.
pub fn build(job: &Job, words: Words) -> Sheet {
    let gears = Catalogue::built_in().speedometer_gears();
    let shelves = Shelves { speedometer_gears: &gears };
    let (conditions, setups) = analysis::analyse_job(job, shelves);
    of(Source { job, conditions: &conditions, setups: &setups, shelves, reader: Reader { units: job.units, words } })
}

/// The sheet of a job that is already worked out.
pub fn of(source: Source<'_>) -> Sheet {
    let sections = vec![
        gears::section(source),
        road::section(source),
        pull::section(source),
        inside::section(source),
        speedo::section(source),
        bench::section(),
        find::section(source),
        catalogue::section(),
    ];
    let mut sheet = Sheet { short: short::row(source, &sections), sections };
    words::localise(&mut sheet, source.reader.words);
    sheet
}

impl Source<'_> {
    /// A row with a cell made for every setup.
    pub fn row(&self, key: impl Into<String>, label: impl Into<String>, cell: impl Fn(&Analysis) -> Cell) -> Row {
        Row { key: key.into(), label: label.into(), cells: self.setups.iter().map(cell).collect() }
    }

    /// The greatest number of forward gears of any setup.
    pub fn most_gears(&self) -> usize {
        self.setups.iter().map(|analysis| analysis.setup.gears.len()).max().unwrap_or(0)
    }
}

impl Cell {
    /// A cell of one line.
    pub fn line(pieces: impl Into<Vec<Piece>>) -> Self {
        Self { lines: vec![pieces.into()], entries: Vec::new() }
    }

    /// The cell with something typed or chosen in it.
    #[must_use]
    pub fn with_entry(mut self, kind: EntryKind, label: impl Into<String>, text: impl Into<String>) -> Self {
        self.entries.push(Entry { kind, label: label.into(), text: text.into() });
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
    pub fn and_maybe(self, piece: Option<Piece>) -> Self {
        match piece {
            Some(piece) => self.and([piece]),
            None => self,
        }
    }

    /// A cell that says why it has no figure.
    pub fn absent(why: impl Into<String>) -> Self {
        Self::line([Piece::Absent(why.into())])
    }

    /// Every piece of the cell.
    pub fn pieces(&self) -> impl Iterator<Item = &Piece> {
        self.lines.iter().flatten()
    }
}

impl Section {
    /// The cautions of its rows, each with the column (counted from 0) and row it stands in.
    pub fn cautions(&self) -> impl Iterator<Item = (usize, &Row, &Verdict)> {
        self.rows.iter().flat_map(|row| {
            row.cells.iter().enumerate().flat_map(move |(column, cell)| {
                cell.pieces().filter_map(move |piece| match piece {
                    Piece::Verdict(verdict) if matches!(verdict.tone, Tone::Caution | Tone::Stop) => Some((column, row, verdict)),
                    _ => None,
                })
            })
        })
    }
}

/// The ordinal of a gear, counted from 0: 1st, 2nd, 3rd …
pub fn ordinal(gear: usize) -> String {
    match gear + 1 {
        1 => "1st".into(),
        2 => "2nd".into(),
        3 => "3rd".into(),
        n => format!("{n}th"),
    }
}

/// What a setup still needs before its road figures can stand.
pub fn needs(analysis: &Analysis) -> String {
    let setup = &analysis.setup;
    let stop = |field: &str| setup.problems.iter().any(|problem| problem.severity == Severity::Stop && problem.field.starts_with(field));
    needed(analysis, stop("gear") || stop("constant"), true)
}

/// What a setup still needs before the road figures of one gear can stand.
pub fn needs_in(analysis: &Analysis, gear: usize) -> String {
    needed(analysis, analysis.setup.ratio(gear).is_none(), true)
}

/// What a setup still needs before the overall ratio of one gear can stand.
pub fn needs_behind(analysis: &Analysis, gear: usize) -> String {
    needed(analysis, analysis.setup.ratio(gear).is_none(), false)
}

fn needed(analysis: &Analysis, gearbox: bool, tyre: bool) -> String {
    let setup = &analysis.setup;
    let wants = [
        (gearbox, "the gearbox"),
        (setup.final_drive.is_none(), "the ring and pinion"),
        (setup.stages.is_none(), "the extra stages"),
        (tyre && setup.tyre.is_none(), "the tyre"),
        (tyre && setup.tyre.is_some() && setup.rolling.is_none(), "the tread worn off"),
    ];
    let wants: Vec<&str> = wants.into_iter().filter(|(wanted, _)| *wanted).map(|(_, word)| word).collect();
    match wants.split_last() {
        None => "needs a figure above".into(),
        Some((last, [])) => format!("needs {last}"),
        Some((last, [first])) => format!("needs {first} and {last}"),
        Some((last, rest)) => format!("needs {}, and {last}", rest.join(", ")),
    }
}
