//! Build record: what goes in before what, what was read at each step, and what is still open?

pub mod answer;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;
mod templates;

use super::checklists::Steps;
use super::{Group, Input, Place, Question};
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

/// The question.
pub const QUESTION: Question = Question {
    id: "record",
    place: Place::Bench,
    title: "Build record",
    ask: "What goes in before what, what was read at each step, and what is still open?",
    inputs: &[],
    groups: &[Group { title: "The order of work", inputs: &[Input::Text(text(BuildField::By)), Input::Steps(STEPS)], taken: None }],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[],
};
