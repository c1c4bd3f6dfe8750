//! Gears: what are the ratios, and how far apart are they?

pub mod answer;
pub mod pictures;
pub mod rows;

use super::{Drawn, Question};

/// The question.
pub const QUESTION: Question = Question {
    id: "gears",
    title: "Gears",
    ask: "What are the ratios, and how far apart are they?",
    rows: rows::rows,
    pictures: &[Drawn { id: "gear-ladder", tab: "Ladder", draw: |source, focus| Some(Box::new(pictures::ladder(source, focus))) }],
};
