//! The reading over several teeth: flat jaws on two outer flanks, square to them.
//!
//! `W_k` = mₙ cos αₙ (π (k − ½) + z inv αₜ) + 2 x mₙ sin αₙ. Source: DIN 3960 and ISO 21771:2007; the examples of DIN 3966-1.

use std::f64::consts::PI;

use super::CutGear;
use crate::gearing::geometry::involute;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// The span over `over` teeth, without backlash and wear.
///
/// ```
/// use layshaft::gearing::{Teeth, geometry::Cut};
/// use layshaft::toothform::{CutGear, span};
/// use layshaft::units::{show, unit};
/// # fn example() -> Option<()> {
/// let cut = Cut::new(unit::MM.of(2.0), unit::DEGREE.of(0.0), Cut::usual_pressure_angle()).ok()?;
/// let gear = CutGear { teeth: Teeth::new(20)?, cut, shift: 0.0 };
/// // 2 cos 20° × (π × 2.5 + 20 × 0.014904) = 1.879385 × 8.152069
/// assert_eq!(show(&span::over_teeth(&gear, 3), &unit::MM, 3), "15.321 mm");
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn over_teeth(gear: &CutGear, over: u16) -> Length {
    let pressure_rad = gear.cut.pressure_rad();
    let unshifted = PI * (f64::from(over) - 0.5) + gear.count() * involute(gear.cut.transverse_pressure_rad());
    let modules = pressure_rad.cos() * unshifted + 2.0 * gear.shift * pressure_rad.sin();
    millimetres(gear.module_mm() * modules)
}

/// The profile shift that a span shows, the flanks taken as unworn; the inverse of [`over_teeth`]. The shift of `gear` is not used.
pub fn shift_of(gear: &CutGear, over: u16, span: Length) -> f64 {
    let unshifted = in_millimetres(over_teeth(&gear.with_shift(0.0), over));
    (in_millimetres(span) - unshifted) / span_of_shift_mm(gear)
}

/// Over how many teeth a span went and the profile shift it shows, where the gear's is about that much. Another tooth moves the shift by more
/// than any gear has, so the reading itself tells the count. The shift of `gear` is not used.
pub fn told(gear: &CutGear, span: Length, about: f64) -> Option<(u16, f64)> {
    let most = gear.teeth.count().saturating_sub(1).max(2);
    let each = (1..=most).map(|over| (over, shift_of(gear, over, span)));
    each.min_by(|(_, a), (_, b)| (a - about).abs().total_cmp(&(b - about).abs()))
}

/// How much a span loses where both flanks of a tooth together are thinner than a profile shift of `gear` makes them by `shift` modules.
pub fn thinning(gear: &CutGear, shift: f64) -> Length {
    millimetres(span_of_shift_mm(gear) * shift)
}

/// How much a span grows with a profile shift of one module: 2 mₙ sin αₙ.
fn span_of_shift_mm(gear: &CutGear) -> f64 {
    2.0 * gear.module_mm() * gear.cut.pressure_rad().sin()
}

/// Over how many teeth to measure, before rounding, so that the jaws touch at half height.
///
/// k = z/π · ((1 + sin² β / (cos² β + tan² α)) √((cos² β + tan² α)(1/cos β + 2 x/z)² − 1) − inv αₜ − 2 x tan α / z) + ½. Source: Elements of
/// Metric Gear Technology, section 10.
pub fn teeth_to_span_exactly(gear: &CutGear) -> f64 {
    let (helix, pressure) = (gear.cut.helix_rad(), gear.cut.pressure_rad());
    let relative = gear.shift / gear.count();
    let square = helix.cos().powi(2) + pressure.tan().powi(2);
    let root = (square * (1.0 / helix.cos() + 2.0 * relative).powi(2) - 1.0).max(0.0).sqrt();
    let turned = (1.0 + helix.sin().powi(2) / square) * root;
    gear.count() / PI * (turned - involute(gear.cut.transverse_pressure_rad()) - 2.0 * relative * pressure.tan()) + 0.5
}

/// Over how many teeth to measure: two at least, and fewer than there are.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "kept between 2 and the count before it is cast")]
pub fn teeth_to_span(gear: &CutGear) -> u16 {
    teeth_to_span_exactly(gear).round().clamp(2.0, (gear.count() - 1.0).max(2.0)) as u16
}

/// The circle on which the jaws touch at mid-face: √(`d_b`² + (W cos `β_b`)²).
pub fn contact_diameter(gear: &CutGear, span: Length) -> Length {
    let across = in_millimetres(span) * gear.base_helix_rad().cos();
    millimetres(gear.base_mm().hypot(across))
}

/// The face width below which both jaws do not find their flanks on a helical gear: W sin `β_b`.
pub fn least_face_width(gear: &CutGear, span: Length) -> Length {
    span * gear.base_helix_rad().sin()
}
