//! Every question the page answers, a folder each.
//!
//! Inside a folder the order is: `read` (what was typed, checked), `answer` (figures), `rows` (figures with workings, in words) and
//! `pictures`. [`setup`] reads what every question needs of a setup, [`answers`] works everything out, [`LIST`] says which questions
//! there are. Page, paper, CSV and `cargo xtask figures` show the list; none of them knows a question by name.

pub mod alike;
pub mod answers;
pub mod bench;
pub mod case;
pub mod checklists;
pub mod customer;
pub mod cutter;
pub mod deciding;
pub mod dial;
pub mod driveline;
pub mod endplay;
pub mod entries;
pub mod faults;
pub mod few_words;
pub mod find;
pub mod first;
pub mod fits;
pub mod gap;
pub mod gears;
pub mod identify;
pub mod inside;
pub mod measure;
pub mod mesh;
pub mod missing;
pub mod needs;
pub mod noise;
pub mod pull;
pub mod question;
pub mod quote;
pub mod reader;
pub mod record;
pub mod rests;
pub mod road;
pub mod setting;
pub mod setup;
pub mod shelves;
pub mod short;
pub mod small;
pub mod swap;
pub mod tag;
pub mod teeth;
pub mod ticks;
pub mod warmth;
pub mod worn;

use crate::catalogue::Catalogue;
use crate::gearing::Step;
use crate::gearing::identify::ladder;
use crate::job::{InputProblem, Job};
use crate::problem::Explain;
pub use crate::sheet::Place;
use crate::sheet::{Cell, Figure, Reader, Row, Section, Sheet, Words, export, words};
use crate::units::{self, Measured};
pub use answers::{Analysis, Answers, analyse_first, analyse_job, analyse_job_after};
pub use checklists::{Judged, Steps, Template};
pub use dial::answer::Speedo;
pub use driveline::answer::Driveline;
pub use first::{FIRST, FIRST_DRAWN, picture_height};
pub use gears::answer::Gears;
pub use inside::answer::Inside;
pub use needs::{needs, needs_behind, needs_in};
pub use pull::answer::Pull;
pub use question::{Draw, Drawn, Group, Heading, Input, Own, Press, Question, Station, boxed};
pub use road::answer::Road;
pub use road::tyres::Tyres;
pub use setup::{Conditions, Setup, read_all};
pub use shelves::{Known, OnShelf, Shelves};
pub use ticks::{TickGroup, Ticks};

/// Every question, in the order of the page: along the driveline from engine to wheel, then the search; then those of the bench.
pub const LIST: [Question; 20] = [
    pull::QUESTION,
    gears::QUESTION,
    inside::QUESTION,
    teeth::QUESTION,
    dial::QUESTION,
    driveline::QUESTION,
    road::QUESTION,
    swap::QUESTION,
    find::QUESTION,
    identify::QUESTION,
    measure::QUESTION,
    cutter::QUESTION,
    mesh::QUESTION,
    fits::QUESTION,
    endplay::QUESTION,
    setting::QUESTION,
    faults::QUESTION,
    worn::QUESTION,
    noise::QUESTION,
    record::QUESTION,
];

/// What stands above each question of [`LIST`], in the same order.
pub static HEADINGS: [Heading; LIST.len()] = headings();

#[expect(clippy::indexing_slicing, reason = "worked out by the compiler, which refuses a place that is not there")]
const fn headings() -> [Heading; LIST.len()] {
    let mut headings = [gears::QUESTION.heading(); LIST.len()];
    let mut at = 0;
    while at < LIST.len() {
        headings[at] = LIST[at].heading();
        at += 1;
    }
    headings
}

/// The question of an id; `None` where no question has it.
pub fn of_id(id: &str) -> Option<&'static Question> {
    LIST.iter().find(|question| question.id == id)
}

/// Work that takes longer than a keystroke may.
#[derive(Clone, Copy, Debug, Default)]
pub enum Long<'a> {
    /// Done on the spot, up to a bound: on paper, in files, in tests.
    #[default]
    AtOnce,
    /// Done in slices by whoever shows the page, and what has come of it so far.
    InSlices(&'a Slices),
}

/// What work in slices has come to so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Slices {
    /// The teeth that printed ratios can be of: the search for [`identify::answer::wish`].
    pub teeth: Option<ladder::Outcome>,
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
    /// How work is done that takes long.
    pub long: Long<'a>,
}

/// The sheet of a job with what is built in on the shelves.
pub fn build(job: &Job, words: Words) -> Sheet {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let shelves = shelf.shelves();
    let answers = analyse_job(job, shelves);
    sheet_of(Source::new(job, &answers, shelves, Reader { units: job.units, words }))
}

/// The sheet of a job that is already worked out.
pub fn sheet_of(source: Source<'_>) -> Sheet {
    let sections: Vec<Section> = LIST.iter().map(|question| question.section(source)).collect();
    let mut sheet = Sheet { short: short::row(source, &sections), sections };
    words::localise(&mut sheet, source.reader.words);
    sheet
}

impl<'a> Source<'a> {
    /// A job with its answers; work that takes long is done at once.
    pub fn new(job: &'a Job, answers: &'a Answers, shelves: Shelves<'a>, reader: Reader) -> Self {
        Self { job, conditions: &answers.conditions, setups: &answers.setups, shelves, reader, long: Long::AtOnce }
    }

    /// A figure of a quantity in the reader's usual unit of its kind.
    pub fn quantity<Q: Measured>(&self, key: &str, quantity: &Q, decimals: usize) -> Figure {
        Figure::quantity(key, quantity, Q::usual(self.reader.units), decimals)
    }

    /// A quantity in the reader's usual unit of its kind, as words have it: `54.6 mph`.
    pub fn show<Q: Measured>(&self, quantity: &Q, decimals: usize) -> String {
        units::show(quantity, Q::usual(self.reader.units), decimals)
    }

    /// A row with a cell made for every setup.
    pub fn row(&self, key: impl Into<String>, label: impl Into<String>, cell: impl Fn(&Analysis) -> Cell) -> Row {
        Row { key: key.into(), label: label.into(), cells: self.setups.iter().map(cell).collect() }
    }

    /// The steps of all setups, each once: gear by gear, the lowest step of a gear first.
    pub fn steps(&self) -> Vec<&'a Step> {
        let mut all: Vec<&Step> = Vec::new();
        for step in self.setups.iter().flat_map(|analysis| &analysis.setup.steps) {
            if !all.iter().any(|known| known.gear == step.gear && known.called() == step.called()) {
                all.push(step);
            }
        }
        crate::order::by(&mut all, |a, b| a.gear.cmp(&b.gear).then(b.factor.cmp(&a.factor)));
        all
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
pub fn figures_of_file(text: &str) -> Result<FileFigures, String> {
    let job = crate::job::file::from_text(text).map_err(|why| format!("{}: {}", why.what(), why.what_to_do()))?;
    let mut figures = export::figures(&job, &build(&job, Words::Us));
    let problems = problems_of(&job);
    let told: Vec<serde_json::Value> = problems.iter().map(|problem| export::problem(&job, problem)).collect();
    if let Some(members) = figures.as_object_mut() {
        members.insert("problems".to_owned(), told.into());
    }
    let json = serde_json::to_string_pretty(&figures).map_err(|why| why.to_string())?;
    Ok(FileFigures { json, is_sound: problems.is_empty() })
}

/// The figures of a job file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileFigures {
    /// The figures and what is wrong, as JSON.
    pub json: String,
    /// Whether every field reads.
    pub is_sound: bool,
}

/// All that is wrong with what a job holds: what all setups share first, then the setups, the bench last.
pub fn problems_of(job: &Job) -> Vec<InputProblem> {
    let answers = analyse_job(job, Shelves::default());
    let of_setups = answers.setups.iter().flat_map(|analysis| analysis.setup.problems.iter().cloned());
    answers.conditions.problems.iter().cloned().chain(of_setups).chain(bench::problems(job)).collect()
}
