//! What a question is: the words above it, what is typed for it, and what answers it.

use super::{Analysis, Source, Steps, Ticks};
use crate::chart::Picture;
use crate::job::{JobChoice, JobField};
use crate::sheet::{Place, Rest, Row, Said, Section};

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
    pub draw: Draw,
    /// What pressing the picture at a value of its axis chooses: a choice of the job and the word that is kept for it.
    pub press: Option<Press>,
}

/// Draws a picture as plain data, the column brought forward; none where nothing could be drawn.
pub type Draw = fn(Source<'_>, Option<usize>) -> Option<Box<dyn Picture>>;

/// A picture of whatever kind.
pub fn boxed(picture: Option<impl Picture + 'static>) -> Option<Box<dyn Picture>> {
    picture.map(|picture| Box::new(picture) as _)
}

impl Drawn {
    /// A picture that only shows.
    pub const fn new(id: &'static str, tab: &'static str, draw: Draw) -> Self {
        Self { id, tab, draw, press: None }
    }

    /// The same picture, which also chooses.
    #[must_use]
    pub const fn pressed(self, press: Press) -> Self {
        Self { press: Some(press), ..self }
    }
}

/// What pressing a picture at a value of its axis chooses.
pub type Press = fn(Source<'_>, Option<usize>, f64) -> Option<(JobChoice, String)>;

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

    pub(super) const fn heading(&self) -> Heading {
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
