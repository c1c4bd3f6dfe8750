//! Which way the cable turns, from the hand of the drive gear and the side it is tapped on.

use super::Hand;

worded! {
    /// Which way a shaft turns, seen from where the text says.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
    pub enum Turning {
        /// As a clock's hands.
        Clockwise => "clockwise";
        /// Against them.
        Anticlockwise => "anticlockwise";
    }
    /// The word for it on the sheet.
    pub fn word;
}

impl Turning {
    /// Seen from the other end of the same shaft.
    #[must_use]
    pub fn from_other_end(self) -> Self {
        match self {
            Self::Clockwise => Self::Anticlockwise,
            Self::Anticlockwise => Self::Clockwise,
        }
    }
}

/// Where the driven gear stands beside the output shaft and where its cable leaves, seen by the driver.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tap {
    /// On the left, the cable leaving upwards.
    LeftUp,
    /// On the left, the cable leaving downwards.
    LeftDown,
    /// On the right, the cable leaving upwards.
    RightUp,
    /// On the right, the cable leaving downwards.
    RightDown,
    /// Above, the cable leaving to the left.
    AboveLeft,
    /// Above, the cable leaving to the right.
    AboveRight,
    /// Below, the cable leaving to the left.
    BelowLeft,
    /// Below, the cable leaving to the right.
    BelowRight,
}

/// Which way the driven gear turns, seen from the gearbox looking along the cable to the dial.
///
/// Model: shafts crossing at a right angle, output shaft along x (forward), driven shaft at p from it. The drive gear's teeth
/// follow t = cos β · x ± sin β · (x × p), + for right hand. Equal speeds across the tooth give a driven gear that turns about
/// ±(x × p) when the output shaft turns clockwise seen from the front, so with x × left = up: right hand, tapped on the left,
/// cable leaving upwards turns clockwise. The other cases follow by reflection; the driven gear is of the same hand.
/// Each plain pair of gears in an adapter reverses it.
/// Source: kinematics of crossed helical gears.
///
/// ```
/// use layshaft::speedometer::{Hand, Tap, Turning, direction::cable_turning};
/// let turning = |hand, tap| cable_turning(Turning::Clockwise, hand, tap);
/// assert_eq!(turning(Hand::Right, Tap::LeftUp), Turning::Clockwise);
/// // Either change alone turns it round, both together do not.
/// assert_eq!(turning(Hand::Left, Tap::LeftUp), Turning::Anticlockwise);
/// assert_eq!(turning(Hand::Left, Tap::LeftDown), Turning::Clockwise);
/// ```
pub fn cable_turning(shaft_from_front: Turning, hand: Hand, tap: Tap) -> Turning {
    let along_model = match tap {
        Tap::LeftUp | Tap::RightDown | Tap::AboveRight | Tap::BelowLeft => true,
        Tap::LeftDown | Tap::RightUp | Tap::AboveLeft | Tap::BelowRight => false,
    };
    let turns = [hand == Hand::Right, along_model, shaft_from_front == Turning::Clockwise];
    // Each condition that fails reverses the sense once.
    if turns.iter().filter(|holds| !**holds).count().is_multiple_of(2) { Turning::Clockwise } else { Turning::Anticlockwise }
}
