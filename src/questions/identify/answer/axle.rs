//! Which axle it is: those of the shelf and the tooth pairs that the turns leave.

use crate::gearing::FinalDrive;
use crate::gearing::identify::reading::Interval;
use crate::gearing::identify::tooth_pairs::{Counts, Pairs, pairs_in};
use crate::gearing::identify::turns::{ByTurns, axles_by_turns};
use crate::questions::Known;

/// What an axle can be.
#[derive(Clone, Debug, PartialEq)]
pub struct Axle {
    /// The ratios that the turns leave.
    pub interval: Interval,
    /// The axles of the shelf, those that fit first.
    pub ranked: ByTurns,
    /// The tooth pairs inside, smallest first.
    pub pairs: Pairs,
}

/// What an axle with a ratio inside that interval can be.
pub fn axle(interval: Interval, shelf: &[Known<FinalDrive>]) -> Axle {
    let drives: Vec<FinalDrive> = shelf.iter().map(|known| known.part).collect();
    Axle { interval, ranked: axles_by_turns(interval, &drives), pairs: pairs_in(&interval, &Counts::of_axle()) }
}
