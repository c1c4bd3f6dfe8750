//! Road speed: how fast in each gear, and where does each shift land? And are the tyres made for it?

pub mod answer;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;

pub mod tyres;

use super::deciding::chosen;
use super::{Drawn, Input, Place, Question};
use crate::job::{JobChoice, JobField};

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "road",
    place: Place::Compare,
    title: "Road speed",
    ask: "How fast in each gear, and where does each shift land?",
    inputs: &[Input::Text(JobField::Shift), Input::Text(JobField::Cruise), Input::Choice(JobChoice::OmittedAspect)],
    groups: &[],
    station: rows::station,
    answer: sentence::said,
    deciding: |source| chosen(rows::rows(source), &["cruise", "gear-", "rolls", "tyre-speed"]),
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[Drawn {
        id: "shift-chart",
        tab: "Shift chart",
        draw: |source, focus| Some(Box::new(pictures::shift_chart(source, focus))),
        press: None,
    }],
};
