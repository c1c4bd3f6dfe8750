//! What is wrong with it? The causes that fit what is said, outside before inside and cheap before dear, each with its test.

pub mod answer;
pub mod asked;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::checklists::Steps;
use super::ticks::Ticks;
use super::{Group, Input, Place, Question};
pub use crate::faults::own;
use crate::job::{BenchField, BuildField, FaultsField, JobField};

const fn text(field: FaultsField) -> JobField {
    JobField::Bench(BenchField::Faults(field))
}

/// What it does, and when.
const SAID: Ticks = Ticks { field: text(FaultsField::Said), groups: asked::groups };

const TRIED: Steps = Steps {
    field: text(FaultsField::Tried),
    by: JobField::Bench(BenchField::Build(BuildField::By)),
    begin: &[],
    list: asked::tests,
    answers: &["yes", "no"],
    judged: asked::judged,
};

/// The question.
pub const QUESTION: Question = Question {
    id: "faults",
    place: Place::Bench,
    title: "What is wrong with it?",
    ask: "What can it be, and which test that costs nothing comes first?",
    groups: &[
        Group { title: "What it does, and when", inputs: &[Input::Ticks(SAID)], taken: Some(asked::next) },
        Group { title: "Try this, cheapest first", inputs: &[Input::Steps(TRIED)], taken: Some(asked::none_yet) },
        Group { title: "Rows of your own", inputs: &[Input::OwnRows], taken: None },
    ],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    ..Question::BARE
};
