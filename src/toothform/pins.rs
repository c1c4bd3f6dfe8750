//! The reading over two pins or balls laid in opposite gaps.
//!
//! inv `α_M` = `D_M` / (z mₙ cos αₙ) − π/(2z) + inv αₜ + 2 x tan αₙ / z; M = `d_b` / cos `α_M` + `D_M` for even counts; for odd ones, where no
//! gap lies opposite another, M = `d_b` / cos `α_M` · cos (90°/z) + `D_M`. Source: ISO 21771:2007; Elements of Metric Gear Technology,
//! section 10. An odd helical gear is measured over balls: pins across the face do not lie in one plane.

use std::f64::consts::PI;

use super::CutGear;
use super::involute::inverse_involute;
use crate::gearing::geometry::involute;
use crate::problem::Explain;
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, number};

/// Where a pin lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// The reading over both.
    pub over: Length,
    /// The circle that the pins' centres lie on.
    pub centres: Length,
    /// The circle on which they touch the flanks, across the shaft.
    pub touches: Length,
}

/// Why a pin gives no reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PinError {
    /// It falls through to the root, or below the flanks.
    FallsThrough {
        /// The pin.
        pin: Length,
        /// One that touches near the pitch circle.
        better: Length,
    },
    /// It sits on the tips.
    OnTheTips {
        /// The pin.
        pin: Length,
        /// One that touches near the pitch circle.
        better: Length,
    },
    /// It lies below the tips, so that the micrometer would touch teeth.
    BelowTheTips {
        /// The pin.
        pin: Length,
        /// One that touches near the pitch circle.
        better: Length,
    },
}

impl Explain for PinError {
    fn what(&self) -> String {
        match self {
            Self::FallsThrough { pin, .. } => format!("a pin of {} mm falls to the bottom of the gap", shown(*pin)),
            Self::OnTheTips { pin, .. } => format!("a pin of {} mm sits on the tips", shown(*pin)),
            Self::BelowTheTips { pin, .. } => format!("a pin of {} mm lies below the tips", shown(*pin)),
        }
    }

    fn what_to_do(&self) -> String {
        let (Self::FallsThrough { better, .. } | Self::OnTheTips { better, .. } | Self::BelowTheTips { better, .. }) = self;
        format!("lay in one of about {} mm ({} in)", shown(*better), number::show(in_millimetres(*better) / 25.4, 3))
    }
}

fn shown(length: Length) -> String {
    number::show(in_millimetres(length), 2)
}

/// The pin that touches near the pitch circle: 1.728 mₙ. Source: Machinery's Handbook, wire sizes for external gears.
pub fn usual_pin(gear: &CutGear) -> Length {
    millimetres(1.728 * gear.module_mm())
}

/// How much less than across its centre an odd count reads: cos (90°/z); 1 for even counts.
fn oddness(gear: &CutGear) -> f64 {
    if gear.teeth.count().is_multiple_of(2) { 1.0 } else { (PI / (2.0 * gear.count())).cos() }
}

/// The reading over two pins of that diameter, without backlash and wear; `None` where the pin meets no flank.
///
/// ```
/// use layshaft::gearing::{Teeth, geometry::Cut};
/// use layshaft::toothform::{CutGear, pins};
/// use layshaft::units::{show, unit};
/// # fn example() -> Option<()> {
/// let cut = Cut::new(unit::MM.of(3.0), unit::DEGREE.of(0.0), Cut::usual_pressure_angle()).ok()?;
/// let gear = CutGear { teeth: Teeth::new(17)?, cut, shift: 0.2 };
/// // An odd count: 47.924 ÷ cos 27.503° × cos (90°/17) + 5.25; with the formula of even ones it would read 59.281.
/// assert_eq!(show(&pins::over_pins(&gear, unit::MM.of(5.25))?, &unit::MM, 3), "59.050 mm");
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn over_pins(gear: &CutGear, pin: Length) -> Option<Length> {
    let centre_mm = gear.base_mm() / pressure_at_centre(gear, pin)?.cos();
    Some(millimetres(centre_mm * oddness(gear) + in_millimetres(pin)))
}

/// `α_M` in rad.
fn pressure_at_centre(gear: &CutGear, pin: Length) -> Option<f64> {
    let (z, pressure) = (gear.count(), gear.cut.pressure_rad());
    let of_pin = in_millimetres(pin) / (z * gear.module_mm() * pressure.cos());
    let value = of_pin - PI / (2.0 * z) + involute(gear.cut.transverse_pressure_rad()) + 2.0 * gear.shift * pressure.tan() / z;
    inverse_involute(value)
}

/// The profile shift that a reading shows, the flanks taken as unworn; the inverse of [`over_pins`]. The shift of `gear` is not used.
///
/// `None` where the reading lies inside the base circle.
pub fn shift_of(gear: &CutGear, pin: Length, over: Length) -> Option<f64> {
    let (z, pressure) = (gear.count(), gear.cut.pressure_rad());
    let cosine = gear.base_mm() * oddness(gear) / (in_millimetres(over) - in_millimetres(pin));
    if !(cosine > 0.0 && cosine <= 1.0) {
        return None;
    }
    let of_pin = in_millimetres(pin) / (z * gear.module_mm() * pressure.cos());
    let value = involute(cosine.acos()) - of_pin + PI / (2.0 * z) - involute(gear.cut.transverse_pressure_rad());
    Some(value * z / (2.0 * pressure.tan()))
}

/// Where a pin lies in the gaps of a gear.
///
/// # Errors
/// Where it touches no flank: it falls through, or sits on the tips; or where the tips stand above it.
pub fn lay(gear: &CutGear, pin: Length) -> Result<Laid, PinError> {
    let better = usual_pin(gear);
    let falls = PinError::FallsThrough { pin, better };
    let angle = pressure_at_centre(gear, pin).ok_or(falls)?;
    let over = over_pins(gear, pin).ok_or(falls)?;
    let centre_mm = gear.base_mm() / angle.cos();
    // Along the line of action the pin touches its radius nearer to the base circle than its centre lies; on a ball, as the base helix leans.
    let along = gear.base_mm() / 2.0 * angle.tan() - in_millimetres(pin) / 2.0 * gear.base_helix_rad().cos();
    let touches_mm = gear.base_mm().hypot(2.0 * along);
    let (tip_mm, root_mm) = (in_millimetres(gear.tip_diameter()), in_millimetres(gear.root_diameter()));
    if along <= 0.0 || centre_mm - in_millimetres(pin) < root_mm {
        return Err(falls);
    }
    if touches_mm >= tip_mm {
        return Err(PinError::OnTheTips { pin, better });
    }
    if centre_mm + in_millimetres(pin) <= tip_mm {
        return Err(PinError::BelowTheTips { pin, better });
    }
    Ok(Laid { over, centres: millimetres(centre_mm), touches: millimetres(touches_mm) })
}
