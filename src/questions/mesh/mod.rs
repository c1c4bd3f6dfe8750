//! Will it mesh? Parts of several sets together in one case.

pub mod answer;
pub mod rests;
pub mod rows;

use super::{Input, Place, Question};
use crate::job::{BenchField, JobField};

const fn set(field: BenchField) -> Input {
    Input::Text(JobField::Bench(field))
}

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "mesh",
    place: Place::Bench,
    title: "Will it mesh?",
    ask: "Which parts of several sets go together in one case, and what are their ratios?",
    inputs: &[set(BenchField::MixCluster), set(BenchField::MixInput), set(BenchField::MixGears)],
    station: rows::station,
    answer: rows::answer,
    deciding: rows::rows,
    rests: rests::rests,
    ..Question::BARE
};
