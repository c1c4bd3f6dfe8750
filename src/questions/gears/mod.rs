//! Gears: what are the ratios, and how far apart are they?

pub mod answer;
pub mod pictures;
pub mod rests;
pub mod rows;
pub mod sentence;
mod stepped;

use super::{Drawn, Input, Place, Question, Source, boxed};
use crate::job::JobField;

/// Its first picture.
pub const LADDER: Drawn =
    Drawn::new("gear-ladder", "Ladder", |source, focus| boxed(has_gear(source).then(|| pictures::ladder(source, focus))));

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
        Drawn::new("gear-shifts", "Shift chart", |source, focus| {
            boxed(has_gear(source).then(|| super::road::pictures::shift_chart(source, focus)))
        }),
    ],
    ..Question::BARE
};

/// Whether there is anything to draw.
pub(super) fn has_gear(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.gears().ratios.iter().any(Option::is_some))
}
