//! The question a page opens with, as far as it is answered before the whole program has come: in a sentence, by the rows that decide, by
//! its first picture.
//!
//! It rests on gears, axle, tyre, shift and cruise alone ([`analyse_first`](super::answers::analyse_first)), so what reads and works out
//! everything else need not be there. Its figures are those of [`gears::QUESTION`]; what engine and car have to say of them comes later.

use super::{Question, Source, gears};
use crate::chart::ladder;

/// The question, without its pictures.
pub const FIRST: &Question = &Question {
    answer: gears::sentence::said_without_shelf,
    deciding: gears::rows::deciding_without_engine,
    rows: |_| Vec::new(),
    rests: |_| Vec::new(),
    pictures: &[],
    ..gears::QUESTION
};

/// The same with its picture, for whoever draws it.
pub const FIRST_DRAWN: &Question = &Question { pictures: &[gears::LADDER], ..*FIRST };

/// How tall its picture will be, so that its place can be kept free; none where nothing is to be drawn.
pub fn picture_height(source: Source<'_>) -> Option<f64> {
    gears::has_gear(source).then(|| ladder::height(source.setups.len()))
}
