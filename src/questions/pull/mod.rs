//! Pull at the wheels: which set suits this engine, this car and this use?

pub mod answer;
pub mod engine_words;
pub mod pictures;
pub mod read;
pub mod rows;

pub use rows::text;

use super::{Drawn, Place, Question, Source};
use crate::sheet::Said;

/// The question.
pub const QUESTION: Question = Question {
    id: "pull",
    place: Place::Compare,
    title: "Pull at the wheels",
    ask: "Which set suits this engine, this car and this use?",
    inputs: &[],
    groups: &[],
    station: rows::station,
    answer: |_| Said::default(),
    deciding: |_| Vec::new(),
    rows: rows::rows,
    rests: |_| Vec::new(),
    pictures: &[
        Drawn {
            id: "thrust",
            tab: "Thrust",
            draw: |source, focus| has_thrust(source).then(|| Box::new(pictures::thrust(source, focus)) as _),
            press: None,
        },
        Drawn {
            id: "run",
            tab: "Run over time",
            draw: |source, focus| runs(source).then(|| Box::new(pictures::run(source, focus)) as _),
            press: None,
        },
        Drawn {
            id: "run-distance",
            tab: "Run over distance",
            draw: |source, focus| runs(source).then(|| Box::new(pictures::run_over_distance(source, focus)) as _),
            press: None,
        },
        Drawn {
            id: "power-band",
            tab: "Power band",
            draw: |source, focus| runs(source).then(|| Box::new(pictures::band(source, focus)) as _),
            press: None,
        },
    ],
};

fn has_thrust(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().thrust.is_some())
}

fn runs(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().vehicle.is_some())
}
