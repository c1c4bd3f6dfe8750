//! The speedometer: what does the dial read, is it within the law, and which gears make it true?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Input, Place, Question, boxed};
use crate::job::{JobChoice, JobField};

/// The question.
pub const QUESTION: Question = Question {
    id: "speedometer",
    place: Place::Compare,
    title: "Speedometer",
    ask: "Does it read true, and which drive and driven gears would make it so?",
    glyph: "M14 5a9 9 0 1 0 .01 0zM14 14l5-5",
    inputs: &[
        Input::Text(JobField::Dial),
        Input::Text(JobField::SpeedoCheck),
        Input::Choice(JobChoice::Law),
        Input::Choice(JobChoice::SpeedoStock),
    ],
    station: rows::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn::new("speedometer-readings", "Readings", |source, focus| boxed(Some(pictures::readings(source, focus)))),
        Drawn::new("speedometer-shelf", "From the shelf", |source, focus| boxed(Some(pictures::shelf(source, focus)))),
    ],
    ..Question::BARE
};
