//! Teeth and bearings: what does every pair bear beside the same pair of A, and where does its thrust go?

pub mod answer;
mod bearing_rows;
pub mod bearings;
mod forces;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Input, Place, Question};
use crate::job::{JobChoice, JobField};

/// The question.
pub const QUESTION: Question = Question {
    id: "teeth",
    place: Place::Compare,
    title: "Teeth and bearings",
    ask: "How much more or less does each pair bear than in A, and what do its bearings hold?",
    glyph: "M5 20l5-11 5 8 4-6 5 9M4 22h20",
    inputs: &[
        Input::Text(JobField::InsideTorque),
        Input::Choice(JobChoice::TorqueFrom),
        Input::Choice(JobChoice::InsideGear),
        Input::Choice(JobChoice::Duty),
    ],
    station: sentence::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn {
            id: "teeth-against-a",
            tab: "Against A",
            draw: |source, focus| pictures::against_first(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
        Drawn {
            id: "teeth-forces",
            tab: "Forces",
            draw: |source, focus| forces::picture(source, focus).map(|picture| Box::new(picture) as _),
            press: Some(super::inside::pictures::pressed),
        },
        Drawn {
            id: "teeth-thrust",
            tab: "Thrust",
            draw: |source, focus| pictures::thrust(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
        Drawn {
            id: "teeth-bearings",
            tab: "Bearings",
            draw: |source, focus| pictures::bearings(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
    ],
    ..Question::BARE
};
