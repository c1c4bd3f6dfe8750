//! Which axle it is: those of the shelf and the tooth pairs that the turns leave.

use crate::gearing::FinalDrive;
use crate::gearing::identify::reading::Interval;
use crate::gearing::identify::settle::{Settling, by_wheel};
use crate::gearing::identify::slips::{Slip, Turned, slip};
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
    /// What the reading may have been meant as, where it leaves no usual ratio, and what it then leaves.
    pub meant: Option<(Slip, Interval)>,
    /// Which turns of the wheel tell apart what is left of the shelf, those that fit in their order.
    pub settling: Option<Settling>,
}

/// What an axle with a ratio inside that interval, read in that way, can be.
pub fn axle(interval: Interval, turned: Turned, shelf: &[Known<FinalDrive>]) -> Axle {
    let drives: Vec<FinalDrive> = shelf.iter().map(|known| known.part).collect();
    let ranked = axles_by_turns(interval, &drives);
    let left: Vec<FinalDrive> = ranked.fitting().filter_map(|at| drives.get(at).copied()).collect();
    Axle {
        interval,
        pairs: pairs_in(&interval, &Counts::of_axle()),
        meant: slip(interval, turned),
        settling: by_wheel(&left, turned == Turned::AxleHeld),
        ranked,
    }
}
