//! Driveline: may the shaft turn as fast as this car turns it, and do its joints work at good angles?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;
pub mod taken;

use super::{Drawn, Input, Place, Question};
use crate::job::{JobChoice, JobField};

/// The question.
pub const QUESTION: Question = Question {
    id: "driveline",
    place: Place::Compare,
    title: "Driveline",
    ask: "May the driveshaft turn this fast, and are its joint angles good?",
    glyph: "M3 12h5l2-3v10l-2-3H3M25 12h-5l-2-3v10l2-3h5M10 12.5h8M10 15.5h8",
    inputs: &[Input::Text(JobField::DrivelineAt), Input::Choice(JobChoice::ShaftMargin), Input::Text(JobField::PinionMost)],
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
            id: "shaft-joints",
            tab: "Joints",
            draw: |source, focus| pictures::joints::line(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
        Drawn {
            id: "shaft-turn",
            tab: "Over a turn",
            draw: |source, focus| pictures::joints::over_one_turn(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
        Drawn {
            id: "shaft-length",
            tab: "Length",
            draw: |source, focus| pictures::length(source, focus).map(|picture| Box::new(picture) as _),
            press: None,
        },
    ],
    ..Question::BARE
};
