//! Which standard gear do these readings fit? All that do, ranked, with what each reading is off; and what would tell them apart.
//!
//! [`readings`] is what was measured, [`candidate`] one standard gear held against it, [`mod@search`] tries them all, [`mod@next`] chooses the
//! measurement that tells those apart that are left.

pub mod candidate;
pub mod next;
pub mod readings;
pub mod search;

pub use candidate::{Candidate, Off, Reading, Residual};
pub use readings::Readings;
pub use search::{Found, search};
