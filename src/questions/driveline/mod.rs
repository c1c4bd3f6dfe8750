//! Driveline: may the shaft turn as fast as this car turns it?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Input, Place, Question};
use crate::job::{JobChoice, JobField};

/// The question.
pub const QUESTION: Question = Question {
    id: "driveline",
    place: Place::Compare,
    title: "Driveline",
    ask: "May the driveshaft turn as fast as this car turns it?",
    inputs: &[Input::Text(JobField::DrivelineAt), Input::Choice(JobChoice::ShaftMargin)],
    groups: &[],
    station: rows::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn {
            id: "shaft-speed",
            tab: "Shaft speed",
            draw: |source, focus| pictures::speed(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
        Drawn {
            id: "shaft-length",
            tab: "Length",
            draw: |source, focus| pictures::length(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
    ],
};
