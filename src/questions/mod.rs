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
pub mod quote;
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
use crate::chart::Picture;
use crate::gearing::Step;
use crate::gearing::identify::ladder;
use crate::job::{InputProblem, Job, JobChoice, JobField};
use crate::problem::Explain;
pub use crate::sheet::Place;
use crate::sheet::{Cell, Reader, Rest, Row, Said, Section, Sheet, Words, export, words};
pub use answers::{Analysis, Answers, analyse_first, analyse_job, analyse_job_after};
pub use checklists::{Judged, Steps, Template};
pub use dial::answer::Speedo;
pub use driveline::answer::Driveline;
pub use first::{FIRST, FIRST_PICTURES, picture_height};
pub use gears::answer::Gears;
pub use inside::answer::Inside;
pub use needs::{needs, needs_behind, needs_in};
pub use pull::answer::Pull;
pub use road::answer::Road;
pub use road::tyres::Tyres;
pub use setup::{Conditions, Setup, read_all};
pub use shelves::{Known, OnShelf, Shelves};
pub use ticks::{TickGroup, Ticks};

/// A question: what it is called, what is typed for it, and what answers it.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    /// Its name on the page and in its address: letters and dashes.
    pub id: &'static str,
    /// Where it is asked.
    pub place: Place,
    /// What it is called in a heading.
    pub title: &'static str,
    /// The question in full.
    pub ask: &'static str,
    /// The part of the driveline it is about as the path of a drawing, 28 by 28; empty at the bench.
    pub glyph: &'static str,
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
    /// All rows; those that decide need not stand among them again, and those that say nothing of any setup are left out.
    pub rows: fn(Source<'_>) -> Vec<Row>,
    /// What the figures rest on: every value, typed or usual, with its source.
    pub rests: fn(Source<'_>) -> Vec<Rest>,
    /// The pictures that show it, the first one first.
    pub pictures: &'static [Drawn],
    /// What no other question has.
    pub own: Option<Own>,
}

/// What the page shows of one question beside its rows and pictures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Own {
    /// Wishes, and the search that goes through the catalogue for them.
    Search,
    /// The sheets of a whole gear set in one file.
    SheetsOfASet,
}

/// What is shown of a question before it is answered: words and names alone. A program that comes in parts has them from the first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Heading {
    /// Its name on the page and in its address: letters and dashes.
    pub id: &'static str,
    /// Where it is asked.
    pub place: Place,
    /// What it is called in a heading.
    pub title: &'static str,
    /// The question in full.
    pub ask: &'static str,
    /// The part of the driveline it is about as the path of a drawing, 28 by 28; empty at the bench.
    pub glyph: &'static str,
    /// What is typed or chosen for all setups in its head.
    pub inputs: &'static [Input],
}

/// Something typed or chosen for all setups, where a question asks for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// Something typed.
    Text(JobField),
    /// Something chosen from a few.
    Choice(JobChoice),
    /// Steps that are ticked and read.
    Steps(Steps),
    /// Things that are there or not.
    Ticks(Ticks),
    /// A recording, made or opened: of the page, not of the job.
    Recording,
    /// Rows about faults that the shop writes itself: of the shop, not of the job.
    OwnRows,
    /// A picture of a gear whose teeth are counted: of the page, not of the job.
    TeethPicture,
}

/// Inputs under one title.
#[derive(Clone, Copy, Debug)]
pub struct Group {
    /// What stands on the fold.
    pub title: &'static str,
    /// What is typed and chosen inside, in order.
    pub inputs: &'static [Input],
    /// What they were taken for, where that does not show elsewhere.
    pub taken: Option<fn(Source<'_>) -> String>,
}

/// What stands beside a question's name: one figure for every setup.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Station {
    /// What the figures are, with their unit: `rpm at 70 mph`; at the bench all that is said: `2 gear sets fit`.
    pub label: String,
    /// The figure of every setup as it is read; none where it is not known. At the bench there are none.
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

impl Question {
    /// What a question has where it does not say otherwise: nothing.
    pub const BARE: Self = Self {
        id: "",
        place: Place::Compare,
        title: "",
        ask: "",
        glyph: "",
        inputs: &[],
        groups: &[],
        station: |_| Station::default(),
        answer: |_| Said::default(),
        deciding: |_| Vec::new(),
        rows: |_| Vec::new(),
        rests: |_| Vec::new(),
        pictures: &[],
        own: None,
    };

    const fn heading(&self) -> Heading {
        let &Self { id, place, title, ask, glyph, inputs, .. } = self;
        Heading { id, place, title, ask, glyph, inputs }
    }

    /// Whether a recording is asked for, so that what it says stands beside the answer.
    pub fn takes_a_recording(&self) -> bool {
        self.groups.iter().flat_map(|group| group.inputs).any(|input| *input == Input::Recording)
    }

    /// The question with its answer, in the project's own words.
    pub fn section(&self, source: Source<'_>) -> Section {
        let mut rows = (self.deciding)(source);
        let decide = rows.len();
        let decided: Vec<String> = rows.iter().map(|row| row.key.clone()).collect();
        let others = (self.rows)(source).into_iter();
        rows.extend(others.filter(|row| !decided.contains(&row.key) && !row.waits()));
        let (title, ask) = (self.title.into(), self.ask.into());
        Section { id: self.id, place: self.place, title, ask, answer: (self.answer)(source), decide, rows, rests: (self.rests)(source) }
    }
}

impl Station {
    /// What stands beside a question of the bench.
    pub fn at_bench(said: impl Into<String>) -> Self {
        Self { label: said.into(), figures: Vec::new() }
    }

    /// A station whose figure is made for every setup.
    pub fn of(source: Source<'_>, label: impl Into<String>, figure: impl Fn(&Analysis) -> Option<String>) -> Self {
        Self { label: label.into(), figures: source.setups.iter().map(figure).collect() }
    }
}

impl<'a> Source<'a> {
    /// A job with its answers; work that takes long is done at once.
    pub fn new(job: &'a Job, answers: &'a Answers, shelves: Shelves<'a>, reader: Reader) -> Self {
        Self { job, conditions: &answers.conditions, setups: &answers.setups, shelves, reader, long: Long::AtOnce }
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
