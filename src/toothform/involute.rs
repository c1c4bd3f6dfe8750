//! The pressure angle of an involute function: the inverse that every reading over pins needs.

use crate::gearing::geometry::involute;

/// Newton's steps at most; each doubles the digits, and ten are enough from where it begins.
const MOST_STEPS: usize = 60;

/// The angle in rad whose involute function is `value`; `None` below nothing, where no flank is.
///
/// Method: Newton's, begun right of the root of a convex function, so that each step comes nearer from the same side. tan a − a ≥ a³/3 and
/// tan a = value + a < value + π/2 give two bounds; the lesser one begins.
///
/// ```
/// use layshaft::toothform::involute::inverse_involute;
/// // inv 20° = 0.014904 (any table of involute functions).
/// let angle = inverse_involute(0.014_904_384).map(f64::to_degrees);
/// assert!(angle.is_some_and(|degrees| (degrees - 20.0).abs() < 1e-5));
/// assert_eq!(inverse_involute(-0.1), None);
/// ```
pub fn inverse_involute(value: f64) -> Option<f64> {
    if !(value >= 0.0 && value.is_finite()) {
        return None;
    }
    if value == 0.0 {
        return Some(0.0);
    }
    let mut angle = (3.0 * value).cbrt().min((value + std::f64::consts::FRAC_PI_2).atan());
    for _ in 0..MOST_STEPS {
        let step = (involute(angle) - value) / angle.tan().powi(2);
        angle -= step;
        if step.abs() <= 1e-16 * angle.abs() {
            break;
        }
    }
    Some(angle)
}
