//! For the cutter: what does a gear cutter need to make this gear?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;
pub mod sheets;

use super::{Drawn, Group, Input, Own, Place, Question, boxed};
use crate::job::{BenchField, CutterField, JobChoice, JobField};

const fn text(field: CutterField) -> Input {
    Input::Text(JobField::Bench(BenchField::Cutter(field)))
}

/// The question.
pub const QUESTION: Question = Question {
    id: "cutter",
    place: Place::Bench,
    title: "For the cutter",
    ask: "What does a gear cutter need to make this gear?",
    groups: &[
        Group {
            title: "The gear",
            inputs: &[
                text(CutterField::Teeth),
                text(CutterField::Pitch),
                text(CutterField::Pressure),
                text(CutterField::Helix),
                Input::Choice(JobChoice::CutterHand),
                text(CutterField::ProfileShift),
                text(CutterField::Face),
                Input::Choice(JobChoice::CutterRack),
            ],
            taken: Some(sentence::taken),
        },
        Group {
            title: "The pair",
            inputs: &[
                text(CutterField::MateTeeth),
                text(CutterField::Centre),
                Input::Choice(JobChoice::CutterSplit),
                text(CutterField::BacklashLeast),
                text(CutterField::BacklashMost),
                text(CutterField::Allowance),
            ],
            taken: None,
        },
        Group {
            title: "As it is made",
            inputs: &[
                text(CutterField::Part),
                text(CutterField::Material),
                text(CutterField::Hardening),
                text(CutterField::Quality),
                text(CutterField::Pin),
                text(CutterField::Relief),
                text(CutterField::ReliefFrom),
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
        Drawn::new("cutter-tooth", "Tooth", |source, _| boxed(pictures::tooth(source))),
        Drawn::new("cutter-mesh", "With its mate", |source, _| boxed(pictures::in_mesh(source))),
    ],
    own: Some(Own::SheetsOfASet),
    ..Question::BARE
};
