//! Measure a gear: which teeth are these, are they worn, and do they run with that mate?

pub mod answer;
pub mod counted;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod said;
pub mod sentence;

use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, JobChoice, JobField, MeasureField};

const fn text(field: MeasureField) -> Input {
    Input::Text(JobField::Bench(BenchField::Measure(field)))
}

/// The question.
pub const QUESTION: Question = Question {
    id: "measure",
    place: Place::Bench,
    title: "Measure a gear",
    ask: "Which teeth are these, are they worn, and do they run with that mate?",
    groups: &[
        Group {
            title: "What was measured",
            inputs: &[
                text(MeasureField::Teeth),
                text(MeasureField::OverTips),
                text(MeasureField::Span),
                text(MeasureField::SpanMore),
                text(MeasureField::Print),
                Input::Choice(JobChoice::MeasureHand),
            ],
            taken: Some(sentence::where_to_measure),
        },
        Group { title: "Count by camera", inputs: &[Input::TeethPicture], taken: None },
        Group {
            title: "With its mate",
            inputs: &[
                text(MeasureField::MateTeeth),
                text(MeasureField::Centre),
                text(MeasureField::MateSpan),
                text(MeasureField::Backlash),
            ],
            taken: None,
        },
        Group {
            title: "More readings",
            inputs: &[
                text(MeasureField::Pin),
                text(MeasureField::OverPins),
                text(MeasureField::Root),
                text(MeasureField::Face),
                text(MeasureField::Lead),
                text(MeasureField::Spanned),
                text(MeasureField::GiveOrTake),
            ],
            taken: None,
        },
    ],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn::new("measure-span", "Over teeth", |source, _| boxed(pictures::spanned(source))),
        Drawn::new("measure-pins", "Over pins", |source, _| boxed(pictures::pinned(source))),
    ],
    ..Question::BARE
};
