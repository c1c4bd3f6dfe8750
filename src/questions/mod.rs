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
pub mod options;
pub mod pull;
pub mod road;
pub mod setup;
pub mod short;

use crate::catalogue::Catalogue;
use crate::chart::Picture;
use crate::job::Job;
use crate::problem::Explain;
use crate::sheet::{Cell, Reader, Row, Section, Sheet, Words, export, words};
pub use answers::{Analysis, Answers, Shelves, analyse, analyse_job, analyse_job_after};
pub use dial::answer::Speedo;
pub use gears::answer::Gears;
pub use inside::answer::Inside;
pub use needs::{needs, needs_behind, needs_in};
pub use pull::answer::Pull;
pub use road::answer::Road;
pub use road::tyres::Tyres;
pub use setup::{Conditions, Setup, read_all};

/// A question: what it is called, and what answers it.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    /// Its name on the page: letters and dashes.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// The question in full.
    pub ask: &'static str,
    /// The rows that answer it.
    pub rows: fn(Source<'_>) -> Vec<Row>,
    /// The pictures that show it, the first one first.
    pub pictures: &'static [Drawn],
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
}

/// Every question, in the order of the page.
pub const LIST: [Question; 6] = [gears::QUESTION, road::QUESTION, pull::QUESTION, inside::QUESTION, dial::QUESTION, find::QUESTION];

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
    let (conditions, setups) = analyse_job(job, shelves);
    sheet_of(Source { job, conditions: &conditions, setups: &setups, shelves, reader: Reader { units: job.units, words } })
}

/// The sheet of a job that is already worked out.
pub fn sheet_of(source: Source<'_>) -> Sheet {
    let section = |question: &Question| Section {
        id: question.id,
        title: question.title.into(),
        ask: question.ask.into(),
        rows: (question.rows)(source),
    };
    let sections: Vec<Section> = LIST.iter().map(section).collect();
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

/// Every figure of a job file's sheet as JSON, keys carrying their units.
///
/// # Errors
/// A sentence, when the text is no job.
pub fn figures_of_file(text: &str) -> Result<String, String> {
    let job = crate::job::file::from_text(text).map_err(|why| format!("{}: {}", why.what(), why.what_to_do()))?;
    serde_json::to_string_pretty(&export::figures(&job, &build(&job, Words::Us))).map_err(|why| why.to_string())
}
