//! Inside the box: what turns there and how fast, and what must each synchroniser take up?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::deciding::chosen;
use super::{Drawn, Input, Place, Question, boxed};
use crate::job::{JobChoice, JobField};

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "inside",
    place: Place::Compare,
    title: "Inside the box",
    ask: "What turns inside the box, how fast, and what must each synchroniser do?",
    glyph: "M3 14h22M6 7v14M11 10.5v7M16 9v10M21 5v18",
    inputs: &[
        Input::Choice(JobChoice::InsideGear),
        Input::Text(JobField::InsideAt),
        Input::Choice(JobChoice::Lining),
        Input::Text(JobField::SyncTime),
        Input::Text(JobField::LiningLimits),
    ],
    station: rows::station,
    answer: sentence::said,
    deciding: |source| chosen(rows::rows(source), &["cluster", "fastest", "idle", "meshes", "sync-worst", "contact", "thrust"]),
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn::new("gear-train", "Gear train", |source, focus| boxed(Some(pictures::train(source, focus)))).pressed(pictures::pressed),
        Drawn::new("train-turned", "Turn it", |source, focus| boxed(pictures::turned(source, focus))),
        Drawn::new("countershafts", "Countershaft speeds", |source, focus| boxed(Some(pictures::countershafts(source, focus)))),
    ],
    ..Question::BARE
};
