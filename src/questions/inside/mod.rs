//! Inside the box: what turns there and how fast, and what must each synchroniser take up?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rows;

use super::{Drawn, Question};

/// The question.
pub const QUESTION: Question = Question {
    id: "inside",
    title: "Inside the box",
    ask: "What turns inside the box, how fast, and what must each synchroniser do?",
    rows: rows::rows,
    pictures: &[
        Drawn { id: "gear-train", tab: "Gear train", draw: |source, focus| Some(Box::new(pictures::train(source, focus))) },
        Drawn {
            id: "countershafts",
            tab: "Countershaft speeds",
            draw: |source, focus| Some(Box::new(pictures::countershafts(source, focus))),
        },
    ],
};
