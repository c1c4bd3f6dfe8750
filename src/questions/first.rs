//! The question a page opens with, as far as it is answered before the whole program has come: in a sentence, by the rows that decide, by
//! its first picture.
//!
//! It rests on gears, axle, tyre, shift and cruise alone ([`analyse_first`](super::answers::analyse_first)), so what reads and works out
//! everything else need not be there. Its figures are those of [`gears::QUESTION`]; what engine and car have to say of them comes later.

use super::{Question, gears};

/// The question.
pub const FIRST: &Question = &Question {
    answer: gears::sentence::said_without_shelf,
    deciding: gears::rows::deciding_without_engine,
    rows: |_| Vec::new(),
    rests: |_| Vec::new(),
    pictures: &[gears::LADDER],
    ..gears::QUESTION
};
