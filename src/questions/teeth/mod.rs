//! Teeth and bearings: what does every pair bear beside the same pair of A, and where does its thrust go?

pub mod answer;
mod bearing_rows;
pub mod bearings;
mod forces;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Input, Place, Question, boxed};
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
        Drawn::new("teeth-against-a", "Against A", |source, focus| boxed(pictures::against_first(source, focus))),
        Drawn::new("teeth-forces", "Forces", |source, focus| boxed(forces::picture(source, focus)))
            .pressed(super::inside::pictures::pressed),
        Drawn::new("teeth-thrust", "Thrust", |source, focus| boxed(pictures::thrust(source, focus))),
        Drawn::new("teeth-bearings", "Bearings", |source, focus| boxed(pictures::bearings(source, focus))),
    ],
    ..Question::BARE
};
