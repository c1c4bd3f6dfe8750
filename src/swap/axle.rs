//! An axle of another width: where its wheels stand, and what room is left to the arch.

use crate::units::Length;
use crate::units::common::millimetres;

/// The room that a rear tyre wants to its arch: 25 to 30 mm running clearance, and the greater is taken (an article on the width of
/// differentials).
pub fn usual_arch() -> Length {
    millimetres(30.0)
}

/// How far each wheel moves outwards on an axle so much wider, with wheels whose backspace is so much greater; below nothing inwards.
///
/// Model: (width − old width) ÷ 2 − (backspace − old backspace), rims and tyres as wide as before. Source: plain geometry.
///
/// ```
/// use layshaft::swap::axle::outwards;
/// use layshaft::units::{show, unit};
/// // 40 ÷ 2 − 8
/// assert_eq!(show(&outwards(unit::MM.of(40.0), unit::MM.of(8.0)), &unit::MM, 0), "12 mm");
/// ```
pub fn outwards(wider: Length, more_backspace: Length) -> Length {
    wider / 2.0 - more_backspace
}
