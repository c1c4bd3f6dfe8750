//! Loose needles around a shaft: how many go in, what gap is left, how much room they have.

use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// A full set of needles between a shaft and the bore around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeedleSet {
    /// What they run on.
    pub shaft: Length,
    /// What they run in.
    pub bore: Length,
    /// Across one needle.
    pub needle: Length,
}

impl NeedleSet {
    /// How many go round: the angle of one is 2 · asin(w ÷ (d + w)).
    pub fn most(&self) -> u32 {
        let each = self.angle();
        (1..=400_u32).take_while(|many| f64::from(*many) * each <= std::f64::consts::TAU * (1.0 + 1e-9)).last().unwrap_or(0)
    }

    /// The gap left in a row of so many, along the circle of their centres; below nothing where so many do not go in.
    pub fn gap(&self, many: u32) -> Length {
        let radius = in_millimetres(self.shaft + self.needle) / 2.0;
        millimetres(radius * (std::f64::consts::TAU - f64::from(many) * self.angle()))
    }

    /// The room across: bore − shaft − twice the needle.
    pub fn clearance(&self) -> Length {
        self.bore - self.shaft - self.needle * 2.0
    }

    fn angle(&self) -> f64 {
        let (needle, across) = (in_millimetres(self.needle), in_millimetres(self.shaft + self.needle));
        2.0 * (needle / across).clamp(0.0, 1.0).asin()
    }
}
