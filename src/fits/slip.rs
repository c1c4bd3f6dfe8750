//! The slips of a stack: one figure ten times off, or typed in the other unit.

use super::stack::Stack;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// What a figure may have been meant as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// It stands ten times too large.
    TenTimesTooLarge,
    /// It stands ten times too small.
    TenTimesTooSmall,
    /// It was read as inches and meant in mm.
    MeantInMm,
    /// It was read as mm and meant in inches.
    MeantInInches,
}

impl Slip {
    const ALL: [Self; 4] = [Self::MeantInMm, Self::MeantInInches, Self::TenTimesTooLarge, Self::TenTimesTooSmall];

    /// By how much the figure must be multiplied to be what was meant.
    pub fn factor(self) -> f64 {
        match self {
            Self::TenTimesTooLarge => 0.1,
            Self::TenTimesTooSmall => 10.0,
            Self::MeantInMm => 1.0 / 25.4,
            Self::MeantInInches => 25.4,
        }
    }
}

/// A gap outside of this, in mm, is not left by any stack that was measured aright: shims and thrust washers fill less.
const PLAUSIBLE_MM: std::ops::RangeInclusive<f64> = -0.6..=8.0;
/// A gap inside of this is what would be taken for meant.
const MEANT_MM: std::ops::RangeInclusive<f64> = -0.3..=4.0;

/// Whether the gap of a stack can be.
pub fn is_plausible(gap: Length) -> bool {
    PLAUSIBLE_MM.contains(&in_millimetres(gap))
}

/// The one part, by its place, whose figure would make an impossible gap a likely one, with the slip and the gap it then leaves.
///
/// Of several the one that leaves the smallest gap. Common practice, no published source.
pub fn of_stack(stack: &Stack) -> Option<(usize, Slip, Length)> {
    let gap = stack.gap();
    if is_plausible(gap) {
        return None;
    }
    let meant = stack.parts.iter().enumerate().flat_map(|(at, part)| {
        let total = if part.makes_room { part.total() } else { -part.total() };
        Slip::ALL.map(|slip| (at, slip, gap + total * (slip.factor() - 1.0)))
    });
    let likely = meant.filter(|(_, _, gap)| MEANT_MM.contains(&in_millimetres(*gap)));
    likely.min_by(|(_, _, one), (_, _, other)| in_millimetres(one.abs()).total_cmp(&in_millimetres(other.abs())))
}

/// Bore and shaft further apart than this, in mm, are not of one seat.
const ONE_SEAT_MM: f64 = 0.6;

/// Whether a clearance can be of one seat.
pub fn is_of_one_seat(clearance: Length) -> bool {
    in_millimetres(clearance.abs()) <= ONE_SEAT_MM
}

/// The slip that would make a bore and a shaft that are far apart those of one seat, if the shaft is the one that is off.
pub fn of_shaft(bore: Length, shaft: Length) -> Option<Slip> {
    if is_of_one_seat(bore - shaft) {
        return None;
    }
    Slip::ALL.into_iter().find(|slip| is_of_one_seat(bore - shaft * slip.factor()))
}

/// The wanted play beyond which a figure is more likely ten times off than meant: boxes are set to 0.04 to 0.8 mm (0.002 to 0.032 in) of
/// play (makers' manuals), bearings to 0.11 mm of preload (a maker's manual); some room is left.
pub fn is_unusual_play(least: Length, greatest: Length) -> bool {
    let usual = millimetres(-0.2)..=millimetres(1.0);
    !usual.contains(&least) || !usual.contains(&greatest) || least.abs().max(greatest.abs()) < millimetres(0.01)
}
