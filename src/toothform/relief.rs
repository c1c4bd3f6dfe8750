//! Tips that are relieved: taken back from the involute towards the tip, so that teeth bent by their load do not strike as they meet.
//!
//! The amount is square to the flank across the shaft and grows evenly with the way of roll ρ = √(r² − `r_b²`), as an inspection chart shows
//! it: C = `C_a` (ρ − `ρ_Ca`) / (`ρ_a` − `ρ_Ca`). Source: ISO 21771:2007, tip relief and its start (the law of growth is the usual straight line).

use std::f64::consts::PI;

use super::CutGear;
use super::outline::HalfTooth;
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// How far below the tip relief begins where it is not typed, in modules. Common practice, no published source.
pub const USUAL_DEPTH: f64 = 0.5;

/// A relieved tip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Relief {
    /// `C_a`, at the tip.
    pub amount: Length,
    /// `d_Ca`, the circle on which it begins.
    pub from: Length,
    /// `d_a`.
    pub tip: Length,
}

/// How far a flank has rolled off the base circle up to a circle, in mm.
pub fn roll_mm(gear: &CutGear, diameter: Length) -> f64 {
    (in_millimetres(diameter).powi(2) - gear.base_mm().powi(2)).max(0.0).sqrt() / 2.0
}

/// The same as the angle the gear has turned, in degrees: ρ / `r_b`.
pub fn roll_degrees(gear: &CutGear, diameter: Length) -> f64 {
    roll_mm(gear, diameter) / (gear.base_mm() / 2.0) * 180.0 / PI
}

impl Relief {
    /// How much of the flank is taken off on a circle; nothing inside where it begins.
    pub fn at(&self, gear: &CutGear, diameter: Length) -> Length {
        let [here, from, tip] = [diameter, self.from, self.tip].map(|diameter| roll_mm(gear, diameter));
        if here <= from || tip <= from { Length::default() } else { self.amount * ((here - from) / (tip - from)) }
    }

    /// How thick the relieved tooth is on a circle across the shaft. A flank taken back by C is the involute turned by C / `r_b`.
    pub fn thickness_at(&self, gear: &CutGear, diameter: Length) -> Option<Length> {
        gear.half_tooth_rad(diameter).map(|half| diameter * (half - self.turned_rad(gear, diameter)))
    }

    fn turned_rad(&self, gear: &CutGear, diameter: Length) -> f64 {
        in_millimetres(self.at(gear, diameter)) / (gear.base_mm() / 2.0)
    }

    /// The tooth with its tips relieved.
    pub fn of(&self, gear: &CutGear, half: HalfTooth) -> HalfTooth {
        let from_mm = in_millimetres(self.from) / 2.0;
        let mut points = half.points;
        // The corner where relief begins is a point of its own.
        let after = points.iter().position(|(radius_mm, _)| *radius_mm > from_mm);
        if let Some((after, begins)) = after.zip(gear.half_tooth_rad(self.from)).filter(|_| from_mm > half.form_mm) {
            points.insert(after, (from_mm, begins));
        }
        for (radius_mm, angle) in &mut points {
            let diameter = millimetres(2.0 * *radius_mm);
            let Some(whole) = gear.half_tooth_rad(diameter).filter(|whole| *radius_mm > from_mm && *whole > 0.0) else { continue };
            // On the flank the angle is the whole half; on the tip's land it is a share of it.
            *angle *= (1.0 - self.turned_rad(gear, diameter) / whole).max(0.0);
        }
        HalfTooth { points, ..half }
    }
}
