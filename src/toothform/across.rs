//! The reading over the tips: the tip diameter of even counts, less than it of odd ones, where a gap lies opposite each tooth.
//!
//! Flat jaws find the two points of the tips that lie farthest apart. On an even count they lie opposite. On an odd one they lie half a
//! pitch less the width of a tip off, so that M = `d_a` cos ((π/z − t) / 2), t the angle of the tip land; pointed tips make it the handbook's
//! `d_a` cos (90°/z). A helical tooth runs on round the gear as it crosses the face, and jaws laid across the whole face find tips that lie
//! nearer opposite; a face of half an axial pitch is enough for the whole diameter. From the geometry; no published source.

use std::f64::consts::PI;

use super::CutGear;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// How far from opposite the farthest tips of a gear lie, in rad.
fn off_opposite_rad(gear: &CutGear, tip: Length, face: Option<Length>) -> f64 {
    if gear.teeth.count().is_multiple_of(2) {
        return 0.0;
    }
    let land = gear.half_tooth_rad(tip).map_or(0.0, |half| 2.0 * half.max(0.0));
    let runs_on = match (gear.lead(), face) {
        (Some(lead), Some(face)) => 2.0 * PI * (face / lead).value,
        // A helical gear whose face was not measured is taken as wide enough.
        (Some(_), None) => PI,
        (None, _) => 0.0,
    };
    (PI / gear.count() - land - runs_on).max(0.0)
}

/// The largest reading over tips on that circle.
pub fn over_tips(gear: &CutGear, tip: Length, face: Option<Length>) -> Length {
    tip * (off_opposite_rad(gear, tip, face) / 2.0).cos()
}

/// The tip diameter of a reading over the tips; the inverse of [`over_tips`]. The tip land is that of `gear` at the shift the diameter
/// shows, with tips of full height.
pub fn tip_of(gear: &CutGear, read: Length, face: Option<Length>) -> Length {
    let read_mm = in_millimetres(read);
    let mut tip_mm = read_mm;
    // The land hardly changes with the diameter, so a few rounds settle it.
    for _ in 0..40 {
        let tip = millimetres(tip_mm);
        let shifted = gear.with_shift(gear.shift_of_tip(tip));
        let next = read_mm / (off_opposite_rad(&shifted, tip, face) / 2.0).cos();
        if (next - tip_mm).abs() <= 1e-12 * next {
            break;
        }
        tip_mm = next;
    }
    millimetres(tip_mm)
}
