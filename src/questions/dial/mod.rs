//! The speedometer: what does the dial read, is it within the law, and which gears make it true?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rows;

use super::{Drawn, Question};

/// The question.
pub const QUESTION: Question = Question {
    id: "speedometer",
    title: "Speedometer",
    ask: "Does it read true, and which drive and driven gears would make it so?",
    rows: rows::rows,
    pictures: &[
        Drawn { id: "speedometer-readings", tab: "Readings", draw: |source, focus| Some(Box::new(pictures::readings(source, focus))) },
        Drawn { id: "speedometer-shelf", tab: "From the shelf", draw: |source, focus| Some(Box::new(pictures::shelf(source, focus))) },
    ],
};
