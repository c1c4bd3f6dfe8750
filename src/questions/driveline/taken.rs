//! A slope that was taken with the device itself: what stands in its field then, and what is said of the reading.

use crate::driveline::inclinometer::{put, typed};
use crate::driveline::slope::End;
use crate::job::{Field, Job, SetupField, SetupId, ShaftField};
use crate::units::{Angle, number, unit};

pub use crate::driveline::inclinometer::{Reading, SECONDS, zero};

/// Of a degree.
const THOUSANDTHS: f64 = 1_000.0;

/// The text of the field of a slope with a reading put in; none where the setup has no such field.
pub fn text(job: &Job, setup: SetupId, field: SetupField, reading: Reading) -> Option<String> {
    let before = job.text(Field::Setup(setup, field))?;
    let end = if field == SetupField::Shaft(ShaftField::PinionSlope) { End::Front } else { End::Rear };
    let lengths = &job.setup(setup)?.shaft.lengths.text;
    let pieces = if field == SetupField::Shaft(ShaftField::Slopes) {
        lengths.split([';', '+']).filter(|part| !part.trim().is_empty()).count()
    } else {
        1
    };
    Some(put(before, &typed(reading.fall(end), end), pieces))
}

/// A device's zero as it is kept: whole thousandths of a degree.
///
/// ```
/// use layshaft::questions::driveline::taken::{zero_of, zero_text};
/// use layshaft::units::unit;
///
/// let zero = unit::DEGREE.of(-0.35);
/// assert_eq!(zero_text(zero), "-350");
/// assert_eq!(zero_of("-350"), Some(zero));
/// ```
pub fn zero_text(zero: Angle) -> String {
    format!("{:.0}", unit::DEGREE.number(zero) * THOUSANDTHS)
}

/// A device's zero from what was kept of it; none where no such thing was.
pub fn zero_of(kept: &str) -> Option<Angle> {
    let thousandths: i32 = kept.parse().ok()?;
    Some(unit::DEGREE.of(f64::from(thousandths) / THOUSANDTHS))
}

/// How the device is held while it is read.
pub fn asks() -> String {
    format!("Along the tube, its top to the front; or its back to the flange, top up. Still for {SECONDS} s …")
}

/// `± 0.1°. Now turn it end for end on the same spot.`, or with the zero that was found so.
pub fn said(reading: Reading, zero: Option<Angle>) -> String {
    let degrees = |angle: Angle| number::show(unit::DEGREE.number(angle), 1);
    let spread = format!("± {}°", degrees(reading.spread));
    match zero {
        Some(zero) => format!("{spread}, zero of this device {}° taken off.", number::show_signed(unit::DEGREE.number(zero), 1)),
        None => format!("{spread}. To zero it, turn it end for end on the same spot."),
    }
}
