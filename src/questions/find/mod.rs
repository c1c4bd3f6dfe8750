//! Find a setup: which gear set, axle, tyre and speedometer gears give what the customer wants?
//!
//! [`parse`] reads the wishes, [`inputs`] what the job gives to the search, [`brief`] what a set to be designed must keep to;
//! [`evaluate`] asks the wishes of the setups that stand there already, [`words`] says why a result stands where it does,
//! [`onto_sheet`] puts one onto the sheet, [`designs`] tells a set that could be made. The search itself is [`crate::finder`]'s.

pub mod brief;
pub mod designs;
pub mod evaluate;
pub mod inputs;
pub mod onto_sheet;
pub mod parse;
pub mod rests;
pub mod rows;
pub mod sentence;
pub mod words;

use super::deciding::chosen;
use super::{Own, Place, Question};
pub use parse::Asked;

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "find",
    place: Place::Compare,
    title: "Find a setup",
    ask: "Which gear set, axle, tyre and speedometer gears give what the customer wants?",
    glyph: "M12 5a7 7 0 1 0 .01 0zM17 17l6 6",
    station: rows::station,
    answer: sentence::said,
    deciding: |source| chosen(rows::rows(source), &["wish-"]),
    rows: rows::rows,
    rests: rests::rests,
    own: Some(Own::Search),
    ..Question::BARE
};
