//! Gears: what are the ratios, and how far apart are they?

pub mod answer;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Input, Place, Question};
use crate::job::JobField;

/// Its first picture.
pub const LADDER: Drawn =
    Drawn { id: "gear-ladder", tab: "Ladder", draw: |source, focus| Some(Box::new(pictures::ladder(source, focus))), press: None };

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "gears",
    place: Place::Compare,
    title: "Gears",
    ask: "What are the ratios, and how far apart are they?",
    inputs: &[Input::Text(JobField::Shift)],
    groups: &[],
    station: rows::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        LADDER,
        Drawn {
            id: "gear-shifts",
            tab: "Shift chart",
            draw: |source, focus| Some(Box::new(super::road::pictures::shift_chart(source, focus))),
            press: None,
        },
    ],
};
