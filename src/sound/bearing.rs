//! How often a rolling bearing strikes, by its geometry: outer race, inner race, ball and cage.

use crate::units::{Angle, Length};

/// A rolling bearing as far as its tones go. Its outer ring stands, its inner ring turns with the shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RollingBearing {
    elements: u16,
    /// r = (d / D) cos α.
    ratio: f64,
}

impl RollingBearing {
    /// The fewest and the most balls or rollers of one row.
    pub const ELEMENTS: (u16, u16) = (4, 60);

    /// A bearing of so many balls or rollers of diameter `d` on a pitch circle `D`, touching at the angle α.
    ///
    /// None where no bearing can be so: too few or too many elements, or elements that do not stand side by side on the circle.
    pub fn new(elements: u16, element: Length, pitch: Length, contact: Angle) -> Option<Self> {
        let (fewest, most) = Self::ELEMENTS;
        let share = (element / pitch).value;
        let side_by_side = share * f64::from(elements) <= std::f64::consts::PI * 1.02;
        let ratio = share * contact.value.cos();
        let is_sound = (fewest..=most).contains(&elements) && share > 0.0 && side_by_side && (0.0..1.0).contains(&ratio) && ratio > 0.0;
        is_sound.then_some(Self { elements, ratio })
    }

    /// Turns of the cage for one turn of the shaft, ½ (1 − r).
    ///
    /// Model: pure rolling; real bearings run up to 2 % lower. Source of all four: any textbook of machine diagnosis, the orders checked
    /// against a bearing maker's table of them.
    pub fn cage(&self) -> f64 {
        (1.0 - self.ratio) / 2.0
    }

    /// Elements that pass a place of the outer race in one turn of the shaft, (N / 2)(1 − r).
    ///
    /// ```
    /// use layshaft::sound::RollingBearing;
    /// use layshaft::units::{Angle, unit};
    /// // Nine balls of 0.3126 in on 1.537 in: 4.5 × (1 − 0.20338) = 3.585.
    /// let bearing = RollingBearing::new(9, unit::INCH.of(0.3126), unit::INCH.of(1.537), Angle::default());
    /// assert_eq!(bearing.map(|bearing| (bearing.outer() * 1e3).round()), Some(3_585.0));
    /// ```
    pub fn outer(&self) -> f64 {
        f64::from(self.elements) * self.cage()
    }

    /// Elements that pass a place of the inner race in one turn of the shaft, (N / 2)(1 + r).
    pub fn inner(&self) -> f64 {
        f64::from(self.elements) * (1.0 + self.ratio) / 2.0
    }

    /// Turns of an element about itself for one turn of the shaft, (1 − r²) / 2r.
    pub fn spin(&self) -> f64 {
        (1.0 - self.ratio * self.ratio) / (2.0 * self.ratio)
    }

    /// Strikes of a damaged element, which meets both races at each of its turns.
    pub fn element(&self) -> f64 {
        2.0 * self.spin()
    }
}
