//! End play and shims: what play does a measured stack leave, and which shims bring it where it is wanted?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, EndPlayField, JobChoice, JobField};

const fn text(field: EndPlayField) -> Input {
    Input::Text(JobField::Bench(BenchField::EndPlay(field)))
}

/// The question.
pub const QUESTION: Question = Question {
    id: "endplay",
    place: Place::Bench,
    title: "End play and shims",
    ask: "What play does this stack leave, and which shims bring it where it is wanted?",
    groups: &[
        Group { title: "What was measured", inputs: &[text(EndPlayField::Stack)], taken: Some(rows::read_as) },
        Group {
            title: "What is wanted, and what is in the drawer",
            inputs: &[
                text(EndPlayField::Wanted),
                text(EndPlayField::Kit),
                Input::Choice(JobChoice::ShimsGo),
                text(EndPlayField::Assembled),
            ],
            taken: None,
        },
        Group {
            title: "Cold and hot",
            inputs: &[
                Input::Choice(JobChoice::EndPlayCase),
                Input::Text(JobField::Bench(BenchField::MeasuredAt)),
                Input::Text(JobField::Bench(BenchField::WarmsTo)),
            ],
            taken: None,
        },
    ],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[Drawn::new("endplay-shims", "Shims", |source, _| boxed(pictures::shims(source)))],
    ..Question::BARE
};
