//! Every question the page answers, a folder each.
//!
//! Inside a folder the order is: `read` (what was typed, checked), `answer` (figures), `rows` (figures with workings, in words) and
//! `pictures`. [`setup`] reads what every question needs of a setup, [`answers`] works everything out, [`LIST`] says which questions
//! there are. Page, paper, CSV and `cargo xtask figures` show the list; none of them knows a question by name.

pub mod answers;
pub mod customer;
pub mod dial;
pub mod entries;
pub mod find;
pub mod gap;
pub mod gears;
pub mod identify;
pub mod inside;
pub mod needs;
pub mod pull;
pub mod road;
pub mod setup;
pub mod short;

use crate::catalogue::Catalogue;
use crate::chart::Picture;
use crate::job::{Job, JobChoice, JobField};
use crate::problem::Explain;
use crate::sheet::{Cell, Reader, Rest, Row, Said, Section, Sheet, Words, export, words};
pub use crate::speedometer::SpeedoGear;
pub use answers::{Analysis, Answers, Shelves, analyse_job, analyse_job_after};
pub use dial::answer::Speedo;
pub use gears::answer::Gears;
pub use inside::answer::Inside;
pub use needs::{needs, needs_behind, needs_in};
pub use pull::answer::Pull;
pub use road::answer::Road;
pub use road::tyres::Tyres;
pub use setup::{Conditions, Setup, read_all};

/// Where a question is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Setups side by side: a cell for each.
    Compare,
    /// Parts in hand: one cell a row.
    Bench,
}

/// A question: what it is called, what is typed for it, and what answers it.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    /// Its name on the page and in its address: letters and dashes.
    pub id: &'static str,
    /// Where it is asked.
    pub place: Place,
    /// Its title.
    pub title: &'static str,
    /// The question in full.
    pub ask: &'static str,
    /// What is typed or chosen for all setups in its head.
    pub inputs: &'static [Input],
    /// Further inputs, each group folded under its title.
    pub groups: &'static [Group],
    /// The one figure that stands for it beside its name, for every setup.
    pub station: fn(Source<'_>) -> Station,
    /// The answer in one or two sentences that name setups; empty where nothing can be said yet.
    pub answer: fn(Source<'_>) -> Said,
    /// The rows that decide, eight at most.
    pub deciding: fn(Source<'_>) -> Vec<Row>,
    /// All rows; those that decide need not stand among them again.
    pub rows: fn(Source<'_>) -> Vec<Row>,
    /// What the figures rest on: every value, typed or usual, with its source.
    pub rests: fn(Source<'_>) -> Vec<Rest>,
    /// The pictures that show it, the first one first.
    pub pictures: &'static [Drawn],
}

/// Something typed or chosen for all setups, where a question asks for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// A text.
    Text(JobField),
    /// A choice.
    Choice(JobChoice),
}

/// Inputs under one title.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Group {
    /// The title.
    pub title: &'static str,
    /// The inputs.
    pub inputs: &'static [Input],
}

/// What stands beside a question's name: one figure for every setup.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Station {
    /// What the figures are, with their unit: `rpm at 70 mph`.
    pub label: String,
    /// The figure of every setup as it is read; none where it is not known.
    pub figures: Vec<Option<String>>,
}

/// A picture of a question.
#[derive(Clone, Copy, Debug)]
pub struct Drawn {
    /// The name of its files and of its place on the page.
    pub id: &'static str,
    /// What its tab says.
    pub tab: &'static str,
    /// The picture as plain data, the column brought forward; none where nothing could be drawn.
    pub draw: fn(Source<'_>, Option<usize>) -> Option<Box<dyn Picture>>,
    /// What pressing the picture at a value of its axis chooses: a choice of the job and the word that is kept for it.
    pub press: Option<Press>,
}

/// What pressing a picture at a value of its axis chooses.
pub type Press = fn(Source<'_>, Option<usize>, f64) -> Option<(JobChoice, String)>;

/// Every question, in the order of the page: along the driveline from engine to wheel, then the search.
pub const LIST: [Question; 6] = [pull::QUESTION, gears::QUESTION, inside::QUESTION, dial::QUESTION, road::QUESTION, find::QUESTION];

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

/// The sheet of a job with what is built in on the shelves.
pub fn build(job: &Job, words: Words) -> Sheet {
    let gears = Catalogue::built_in().speedometer_gears();
    let shelves = Shelves { speedometer_gears: &gears };
    let Answers { conditions, setups } = analyse_job(job, shelves);
    sheet_of(Source { job, conditions: &conditions, setups: &setups, shelves, reader: Reader { units: job.units, words } })
}

/// The sheet of a job that is already worked out.
pub fn sheet_of(source: Source<'_>) -> Sheet {
    let sections: Vec<Section> = LIST.iter().map(|question| question.section(source)).collect();
    let mut sheet = Sheet { short: short::row(source, &sections), sections };
    words::localise(&mut sheet, source.reader.words);
    sheet
}

impl Question {
    /// The question with its answer, in the project's own words.
    pub fn section(&self, source: Source<'_>) -> Section {
        let mut rows = (self.deciding)(source);
        let decide = rows.len();
        let decided: Vec<String> = rows.iter().map(|row| row.key.clone()).collect();
        rows.extend((self.rows)(source).into_iter().filter(|row| !decided.contains(&row.key)));
        let (title, ask) = (self.title.into(), self.ask.into());
        Section { id: self.id, title, ask, answer: (self.answer)(source), decide, rows, rests: (self.rests)(source) }
    }
}

impl Station {
    /// A station whose figure is made for every setup.
    pub fn of(source: Source<'_>, label: impl Into<String>, figure: impl Fn(&Analysis) -> Option<String>) -> Self {
        Self { label: label.into(), figures: source.setups.iter().map(figure).collect() }
    }
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

/// Every figure of a job file's sheet as JSON, keys carrying their units.
///
/// # Errors
/// A sentence, when the text is no job.
pub fn figures_of_file(text: &str) -> Result<String, String> {
    let job = crate::job::file::from_text(text).map_err(|why| format!("{}: {}", why.what(), why.what_to_do()))?;
    serde_json::to_string_pretty(&export::figures(&job, &build(&job, Words::Us))).map_err(|why| why.to_string())
}
