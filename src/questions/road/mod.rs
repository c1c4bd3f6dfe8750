//! Road speed: how fast in each gear, and where does each shift land? And are the tyres made for it?

pub mod answer;
pub mod pictures;
pub mod rows;
pub mod tyres;

use super::{Drawn, Question};

/// The question.
pub const QUESTION: Question = Question {
    id: "road",
    title: "Road speed",
    ask: "How fast in each gear, and where does each shift land?",
    rows: rows::rows,
    pictures: &[Drawn {
        id: "shift-chart",
        tab: "Shift chart",
        draw: |source, focus| Some(Box::new(pictures::shift_chart(source, focus))),
    }],
};
