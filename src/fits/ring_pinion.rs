//! A ring and pinion: the depth shim by the pinion's mark, backlash at the tooth from a dial somewhere else, and what a contact pattern asks
//! for.

use crate::units::Length;

/// Which way the mark on a pinion goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkSense {
    /// Plus is taken off the shim, minus put on: the pinion stands further out than the nominal one.
    PlusTakesOff,
    /// Plus is put on, minus taken off.
    PlusPutsOn,
}

/// The shim below a pinion's head: the one that was measured for a nominal pinion, less its mark, or plus it.
///
/// The sense varies with the maker; the axle's own manual rules. Source: a maker's manual (plus: subtract).
pub fn depth_shim(measured: Length, mark: Length, sense: MarkSense) -> Length {
    match sense {
        MarkSense::PlusTakesOff => measured - mark,
        MarkSense::PlusPutsOn => measured + mark,
    }
}

/// Backlash at the tooth of a gear, from the way of a dial at another radius of the same gear: j = way · pitch radius ÷ dial's radius.
///
/// Small angles: the way is a thousandth of the radius.
pub fn backlash_at_tooth(way: Length, dial_radius: Length, pitch_radius: Length) -> Length {
    way * (pitch_radius / dial_radius).value
}

/// Where the paint shows that a ring gear's tooth bears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// In the middle, a little nearer the toe.
    Good,
    /// At the outer, higher end of the tooth.
    Heel,
    /// At its inner, lower end.
    Toe,
    /// Near the tip.
    High,
    /// Near the root.
    Low,
}

impl Pattern {
    /// The middle of the patch on the flank: from toe to heel, and from root to tip, each from 0 to 1.
    pub fn middle(self) -> (f64, f64) {
        match self {
            Self::Good => (0.45, 0.5),
            Self::Heel => (0.76, 0.5),
            Self::Toe => (0.24, 0.5),
            Self::High => (0.45, 0.78),
            Self::Low => (0.45, 0.22),
        }
    }

    /// What is done about it. Backlash moves the patch along the tooth, the pinion's depth up and down it.
    ///
    /// Source: makers' manuals of axles, from memory; with the depth shim between the pinion's head and its bearing.
    pub fn what_to_do(self) -> &'static str {
        match self {
            Self::Good => "leave it, and check the backlash once more",
            Self::Heel => "move the ring nearer the pinion, for less backlash",
            Self::Toe => "move the ring further off, for more backlash",
            Self::High => "set the pinion deeper, with a thicker depth shim",
            Self::Low => "set the pinion further out, with a thinner depth shim",
        }
    }
}

/// What the patterns that were read ask for; none where neither was. At opposite ends of the tooth it is the pinion that is off.
///
/// Source: makers' manuals of axles, from memory.
pub fn asked(drive: Option<Pattern>, coast: Option<Pattern>) -> Option<&'static str> {
    let (drive, coast) = (drive.or(coast)?, coast.or(drive)?);
    Some(match (drive, coast) {
        (Pattern::Toe, Pattern::Heel) => Pattern::Low.what_to_do(),
        (Pattern::Heel, Pattern::Toe) => Pattern::High.what_to_do(),
        (Pattern::High, Pattern::Low) | (Pattern::Low, Pattern::High) => {
            "the sides disagree; check the bearings and the paint, and turn it again"
        }
        (Pattern::Good, other) | (other, _) => other.what_to_do(),
    })
}
