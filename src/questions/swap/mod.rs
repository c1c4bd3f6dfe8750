//! Swap: will another box go into the car, and what must be made? Setup A is the box that came out; all others are held against it.

pub mod answer;
pub mod judged;
pub mod oil;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Input, Place, Question, boxed};
use crate::job::JobField;

/// The question.
pub const QUESTION: Question = Question {
    id: "swap",
    place: Place::Compare,
    title: "Swap",
    ask: "Will the box go into the car in place of A’s, and what must be made?",
    glyph: "M4 9h14l-4-4M24 19H10l4 4",
    inputs: &[Input::Text(JobField::Slip), Input::Text(JobField::Tunnel), Input::Text(JobField::Arch)],
    station: sentence::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[Drawn::new("swap-side", "Side view", |source, focus| boxed(pictures::side(source, focus)))],
    ..Question::BARE
};
