//! A bore and a face read by a dial on the crank at twelve, three, six and nine o'clock: how far off, and which way.

use crate::units::Length;
use crate::units::common::in_millimetres;

/// Readings at twelve, three, six and nine o'clock, as the dial is seen. More is nearer to the crank's centre: the plunger is pushed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clock(pub [Length; 4]);

impl Clock {
    /// The total run-out.
    pub fn run_out(&self) -> Length {
        let (least, greatest) = self.0.iter().fold((self.0[0], self.0[0]), |(least, greatest), one| (least.min(*one), greatest.max(*one)));
        greatest - least
    }

    /// How far the bore's centre stands to the right of the crank's, and above it: half of what opposite readings differ by.
    ///
    /// Where the wall is nearer the dial reads more, and the bore has gone the other way. Source: plain geometry of a small offset.
    pub fn offset(&self) -> [Length; 2] {
        let [twelve, three, six, nine] = self.0;
        [(nine - three) / 2.0, (six - twelve) / 2.0]
    }

    /// How far off it stands, whichever way.
    pub fn off(&self) -> Length {
        let [right, up] = self.offset();
        let squares = in_millimetres(right).powi(2) + in_millimetres(up).powi(2);
        crate::units::common::millimetres(squares.sqrt())
    }

    /// The hour it stands off to, 1 to 12; none where it is central.
    pub fn hour(&self) -> Option<u32> {
        let [right, up] = self.offset().map(in_millimetres);
        if right.hypot(up) < 1e-9 {
            return None;
        }
        let hours = right.atan2(up).rem_euclid(std::f64::consts::TAU) / std::f64::consts::TAU * 12.0;
        (1..=12_u32).find(|hour| (hours - f64::from(*hour)).abs() <= 0.5).or(Some(12))
    }

    /// What opposite pairs do not agree by: nothing for a round bore read on a crank that stays where it is.
    pub fn misses(&self) -> Length {
        let [twelve, three, six, nine] = self.0;
        ((twelve + six) - (three + nine)).abs()
    }
}
