//! Fits and clearances: how does this shaft sit in this bore, cold and hot, and what makes it sit as it should?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, FitsField, JobChoice, JobField};

const fn text(field: FitsField) -> Input {
    Input::Text(JobField::Bench(BenchField::Fits(field)))
}

/// The question.
pub const QUESTION: Question = Question {
    id: "fits",
    place: Place::Bench,
    title: "Fits and clearances",
    ask: "How does this shaft sit in this bore, cold and hot, and what makes it sit as it should?",
    groups: &[
        Group { title: "What was measured", inputs: &[text(FitsField::Bore), text(FitsField::Shaft)], taken: None },
        Group { title: "What is wanted", inputs: &[text(FitsField::Wanted), text(FitsField::Nominal)], taken: None },
        Group {
            title: "Pressed in, or on needles",
            inputs: &[text(FitsField::Outside), text(FitsField::SeatLength), text(FitsField::Needle), text(FitsField::Needles)],
            taken: None,
        },
        Group {
            title: "Cold and hot",
            inputs: &[
                Input::Choice(JobChoice::FitsBore),
                Input::Choice(JobChoice::FitsShaft),
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
    pictures: &[Drawn::new("fits-fields", "Sizes", |source, _| boxed(pictures::sizes(source)))],
    ..Question::BARE
};
