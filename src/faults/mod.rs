//! What can be wrong with a gearbox and what belongs to it: symptoms as people say them, their causes, and the tests that cost least.
//!
//! The [`table`] is data, written from the trade's common practice without a published source; [`own`] reads the rows that a shop writes beside it;
//! [`told`] is what is known of one car, [`wear`] says how far a part may be worn. [`mod@rank`] puts the causes into order by weights that are shown. What was typed, and how an answer is worded, is not here.

pub mod error;
pub mod own;
pub mod rank;
mod read;
pub mod table;
pub mod told;
pub mod wear;

pub use error::TableError;
pub use own::OwnRows;
pub use rank::{Ranked, Share, Why, rank};
pub use read::Texts;
pub use table::{Cause, Condition, Cost, Given, Pick, Reach, Symptom, Table, Test};
pub use told::Told;
