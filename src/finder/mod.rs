//! The finder: every combination of the catalogue judged against what the customer wishes.
//!
//! Things first: [`wish`] (what can be wished for, as figures with a range), [`table`] (the catalogue as sorted numbers),
//! [`inputs`] (what is the same for every combination: shift rpm, dial, fitted tyre, engine). [`search`] goes through the
//! combinations in slices and keeps the best; [`design`] finds tooth counts for a ladder. What was typed is read by
//! [`crate::questions::find`], which also says why each result stands where it does and puts one onto the sheet.
//!
//! Inside the search figures are plain `f64`; a wish's range is in the unit that [`wish::Measure`] names.

mod best;
pub mod design;
pub mod inputs;
pub mod motion;
pub mod number;
pub mod search;
pub mod stages;
pub mod table;
pub mod wish;

pub use inputs::{Engine, FittedSet, Given};
pub use number::NumberError;
pub use search::{Found, Progress, Search};
pub use stages::Stages;
pub use table::Table;
pub use wish::{Measure, Strength, Wish};
