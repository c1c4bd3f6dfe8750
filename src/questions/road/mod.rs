//! Road speed: how fast in each gear, and where does each shift land? And are the tyres made for it?

pub mod answer;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;

pub mod tyres;

use super::deciding::chosen;
use super::{Drawn, Input, Place, Question, boxed};
use crate::job::{JobChoice, JobField};

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "road",
    place: Place::Compare,
    title: "Road speed",
    ask: "How fast in each gear, and where does each shift land?",
    glyph: "M14 4a10 10 0 1 0 .01 0zM14 9a5 5 0 1 0 .01 0z",
    inputs: &[Input::Text(JobField::Shift), Input::Text(JobField::Cruise), Input::Choice(JobChoice::OmittedAspect)],
    station: rows::station,
    answer: sentence::said,
    deciding: |source| chosen(rows::rows(source), &["cruise", "gear-", "rolls", "tyre-speed"]),
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[Drawn::new("shift-chart", "Shift chart", |source, focus| boxed(Some(pictures::shift_chart(source, focus))))],
    ..Question::BARE
};
