//! Build record: what goes in before what, what was read at each step, what is still open, and which parts it takes?

pub mod answer;
pub mod parts;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;
mod templates;

use super::checklists::Steps;
use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, BuildField, JobField};

const fn text(field: BuildField) -> JobField {
    JobField::Bench(BenchField::Build(field))
}

/// The steps as they are ticked.
const STEPS: Steps = Steps {
    field: text(BuildField::Steps),
    by: text(BuildField::By),
    begin: &templates::ALL,
    list: |source| source.job.bench.build.steps.clone(),
    answers: &[],
    judged: rows::judged,
};

/// The parts as they are ticked once they are in hand.
const PARTS: Steps = Steps {
    field: text(BuildField::Parts),
    by: text(BuildField::By),
    begin: &parts::USUAL,
    list: |source| source.job.bench.build.parts.clone(),
    answers: &[],
    judged: parts::judged,
};

/// The question.
pub const QUESTION: Question = Question {
    id: "record",
    place: Place::Bench,
    title: "Build record",
    ask: "What goes in before what, what was read at each step, what is still open, and which parts does it take?",
    groups: &[
        Group { title: "The order of work", inputs: &[Input::Text(text(BuildField::By)), Input::Steps(STEPS)], taken: None },
        Group { title: "Parts used and to order", inputs: &[Input::Steps(PARTS)], taken: None },
    ],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[Drawn::new("record-progress", "How far", |source, _| boxed(pictures::progress(source)))],
    ..Question::BARE
};
