//! Gears: what are the ratios, and how far apart are they?

pub mod answer;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;
mod stepped;

use super::{Drawn, Input, Place, Question, Source};
use crate::job::JobField;

/// Its first picture.
pub const LADDER: Drawn = Drawn {
    id: "gear-ladder",
    tab: "Ladder",
    draw: |source, focus| has_gear(source).then(|| Box::new(pictures::ladder(source, focus)) as _),
    press: None,
};

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "gears",
    place: Place::Compare,
    title: "Gears",
    ask: "What are the ratios, and how far apart are they?",
    glyph: "M3 7h14v14H3zM17 10h8v8h-8M6 14h8",
    inputs: &[Input::Text(JobField::Shift)],
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
            draw: |source, focus| has_gear(source).then(|| Box::new(super::road::pictures::shift_chart(source, focus)) as _),
            press: None,
        },
    ],
    ..Question::BARE
};

/// Whether there is anything to draw.
pub(super) fn has_gear(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.gears().ratios.iter().any(Option::is_some))
}
