//! The helix from ink: the tips rolled along a straight-edge leave slanted marks, and these show the helix of the tips.
//!
//! tan `β_a` = tan β · `d_a`/d: the print is steeper than the pitch circle's helix, by 1.4° on a gear of 24 teeth of module 2.5 and 19.5°.
//! Source of the way and of that gear: a shop article; the formula is the lead's, the same on every circle.

use std::f64::consts::PI;

use crate::gearing::Teeth;
use crate::units::common::in_millimetres;
use crate::units::{Angle, Length, unit};

/// The helix on the pitch circle from a print: sin β = z mₙ tan `β_a` / `d_a`. `None` where there is no such helix.
pub fn helix_of_print(teeth: Teeth, module: Length, print: Angle, tip: Length) -> Option<Angle> {
    let sine = f64::from(teeth.count()) * (module / tip).value * unit::RADIAN.number(print).tan();
    (0.0..1.0).contains(&sine).then(|| unit::RADIAN.of(sine.asin()))
}

/// The same where the tips were not measured: they are taken as those of teeth `addendum` modules high without profile shift.
pub fn helix_of_print_alone(teeth: Teeth, print: Angle, addendum: f64) -> Option<Angle> {
    let (z, tangent) = (f64::from(teeth.count()), unit::RADIAN.number(print).tan());
    let mut helix = unit::RADIAN.number(print);
    // sin β = z tan β_a / (z / cos β + 2 h*): the right side hardly moves with β.
    for _ in 0..60 {
        let sine = z * tangent / (z / helix.cos() + 2.0 * addendum);
        if !(0.0..1.0).contains(&sine) {
            return None;
        }
        helix = sine.asin();
    }
    Some(unit::RADIAN.of(helix))
}

/// The helix on the pitch circle from the lead: sin β = π z mₙ / L. `None` where there is no such helix.
pub fn helix_of_lead(teeth: Teeth, module: Length, lead: Length) -> Option<Angle> {
    let sine = PI * f64::from(teeth.count()) * in_millimetres(module) / in_millimetres(lead);
    (0.0..1.0).contains(&sine).then(|| unit::RADIAN.of(sine.asin()))
}
