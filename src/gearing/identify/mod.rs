//! What is on the bench: from counts, from turns, or from a printed ladder back to the sets it can be.
//!
//! [`counts`]: some teeth are counted. [`turns`]: one end was turned and the other watched; [`reading`] is what was seen.
//! [`ladder`]: printed ratios are searched for every combination of teeth that gives them; [`printed`] reads them.
//! Candidates are given by whoever asks; the catalogue is not known here.

pub mod counts;
pub mod ladder;
pub mod printed;
pub mod reading;
pub mod tooth_pairs;
pub mod turns;

use super::Gearbox;

/// A gear set that the parts may be.
#[derive(Clone, Copy, Debug)]
pub struct Candidate<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its counts.
    pub gearbox: &'a Gearbox,
}
