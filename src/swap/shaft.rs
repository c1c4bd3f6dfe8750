//! The driveshaft behind a longer or shorter box: its new length, and how much slip the old one has left.

use crate::units::unit::{INCH, MM};
use crate::units::{Length, System};

/// What a box of another length does to the driveshaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftChange {
    /// How much further back the output flange stands than the old one's; below nothing further forward.
    pub longer: Length,
    /// How far the slip joint can still go in at ride height with the old box and the old shaft.
    pub slip: Length,
}

impl ShaftChange {
    /// The slip that is left at ride height: 1 in or 25 mm drawn out of home (common practice, no published source).
    pub fn usual_slip(system: System) -> Length {
        if system == System::Inch { INCH.of(1.0) } else { MM.of(25.0) }
    }

    /// Between the joint centres of a shaft that keeps the slip, from the length of the old one; of two pieces the front one.
    ///
    /// Model: the box moves along the shaft's own line. At 5° between the two this is 0.4 % of the difference.
    ///
    /// ```
    /// use layshaft::swap::ShaftChange;
    /// use layshaft::units::{show, unit};
    /// // A box 38 mm longer, an old shaft of 1,250 mm: 1,250 − 38.
    /// let change = ShaftChange { longer: unit::MM.of(38.0), slip: unit::MM.of(25.0) };
    /// assert_eq!(show(&change.between_joints(unit::MM.of(1_250.0)), &unit::MM, 0), "1,212 mm");
    /// ```
    pub fn between_joints(&self, old: Length) -> Length {
        old - self.longer
    }

    /// How far the slip joint can still go in with the old shaft behind the other box; below nothing it is home before the axle moves.
    pub fn slip_of_old(&self) -> Length {
        self.slip - self.longer
    }

    /// Whether the old shaft serves: the flange stands within 3 mm (1/8 in) of the old one's (common practice, no published source).
    pub fn old_serves(&self) -> bool {
        self.longer.value.abs() <= 0.003_2
    }
}
