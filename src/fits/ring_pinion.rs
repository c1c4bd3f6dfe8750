//! A ring and pinion: the depth shim by the pinion's mark, and backlash at the tooth from a dial somewhere else.

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
