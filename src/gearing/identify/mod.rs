//! What is on the bench: from counts, from turns, or from a printed ladder back to the sets it can be.
//!
//! [`counts`]: some teeth are counted; [`mates`]: the tooth sum of the case gives those that are missing. [`turns`]: one end was turned
//! and the other watched; [`reading`] is what was seen, [`spoken`] reads it as people say it, [`slips`] what it may have been meant as,
//! [`settle`] which turns of the wheel would settle it. [`misprint`]: printed ratios that the counts contradict. [`tag`]: what is
//! stamped on an axle; [`cable`]: what the speedometer's cable tells of it.
//! [`ladder`]: printed ratios are searched for every combination of teeth that gives them; [`printed`] reads them.
//! Candidates are given by whoever asks; the catalogue is not known here.

pub mod cable;
pub mod counts;
pub mod ladder;
pub mod mates;
pub mod misprint;
pub mod printed;
pub mod reading;
pub mod settle;
pub mod slips;
pub mod spoken;
pub mod tag;
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
