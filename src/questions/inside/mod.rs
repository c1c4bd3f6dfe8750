//! Inside the box: what turns there and how fast, and what must each synchroniser take up?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::deciding::chosen;
use super::{Drawn, Input, Place, Question};
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
        Drawn {
            id: "gear-train",
            tab: "Gear train",
            draw: |source, focus| Some(Box::new(pictures::train(source, focus))),
            press: Some(pictures::pressed),
        },
        Drawn {
            id: "train-turned",
            tab: "Turn it",
            draw: |source, focus| pictures::turned(source, focus).map(|turned| Box::new(turned) as _),
            press: None,
        },
        Drawn {
            id: "countershafts",
            tab: "Countershaft speeds",
            draw: |source, focus| Some(Box::new(pictures::countershafts(source, focus))),
            press: None,
        },
    ],
    ..Question::BARE
};
