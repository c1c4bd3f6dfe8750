//! The finder: every combination of the catalogue judged against what the customer wishes.
//!
//! Things first: [`wish`] (what can be wished for, as figures with a range), [`table`] (the catalogue as sorted numbers),
//! [`given`] (what the job gives: shift rpm, dial, fitted tyre, engine). [`ask`] reads what was typed. [`search`] goes through the
//! combinations in slices and keeps the best; [`why`] says why each stands where it does, [`put`] puts one onto the sheet,
//! [`meets`] asks the same of the setups that stand there already; [`design`] finds tooth counts for a ladder.
//!
//! Inside the search figures are plain `f64`; a wish's range is in the unit that [`wish::Measure`] names.

pub mod ask;
mod best;
pub mod design;
pub mod given;
pub mod meets;
mod motion;
mod number;
pub mod put;
pub mod search;
pub mod table;
pub mod why;
pub mod wish;

pub use ask::Asked;
pub use given::{Engine, Given};
pub use number::NumberError;
pub use search::{Found, Progress, Search};
pub use table::Table;
pub use wish::{Measure, Strength, Wish};
