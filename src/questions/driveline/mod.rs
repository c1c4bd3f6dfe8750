//! Driveline: may the shaft turn as fast as this car turns it, and do its joints work at good angles?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;
pub mod taken;

use super::{Drawn, Input, Place, Question, boxed};
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
        Drawn::new("shaft-speed", "Shaft speed", |source, focus| boxed(pictures::speed(source, focus))),
        Drawn::new("shaft-joints", "Joints", |source, focus| boxed(pictures::joints::line(source, focus))),
        Drawn::new("shaft-turn", "Over a turn", |source, focus| boxed(pictures::joints::over_one_turn(source, focus))),
        Drawn::new("shaft-length", "Length", |source, focus| boxed(pictures::length(source, focus))),
    ],
    ..Question::BARE
};
