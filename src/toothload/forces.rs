//! The forces between two teeth, from the torque of one gear.

use crate::gearing::geometry::Cut;
use crate::units::{Force, Length, Torque};

/// The three parts of the force at a mesh; magnitudes, without direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToothForces {
    /// Along the pitch line: what carries the torque.
    pub tangential: Force,
    /// Pushes the shafts apart.
    pub radial: Force,
    /// Along the shaft: the thrust.
    pub axial: Force,
}

impl ToothForces {
    /// The whole force, √(Fₜ² + Fᵣ² + Fₐ²); for a helical gear it equals Fₜ / (cos αₙ cos β).
    pub fn whole(&self) -> Force {
        newtons(self.tangential.value.hypot(self.radial.value).hypot(self.axial.value))
    }
}

pub(super) fn newtons(value: f64) -> Force {
    Force::new::<uom::si::force::newton>(value)
}

/// The forces of a spur or helical gear that carries `torque` on that reference diameter.
///
/// Fₜ = 2T / d, Fᵣ = Fₜ tan αₙ / cos β, Fₐ = Fₜ tan β. No dynamic factor, no friction, one mesh.
///
/// Source: Shigley, Mechanical Engineering Design, 9th ed., section 13-16 (equation 13-40).
///
/// ```
/// use layshaft::gearing::geometry::cut::{Cut, CutError};
/// use layshaft::toothload::forces::helical;
/// use layshaft::units::{common::millimetres, show, unit};
/// let cut = Cut::new(millimetres(2.5), unit::DEGREE.of(30.0), unit::DEGREE.of(20.0))?;
/// let forces = helical(unit::N_M.of(100.0), millimetres(50.0), &cut);
/// // 2 × 100,000 N·mm ÷ 50 mm; × tan 20° ÷ cos 30°; × tan 30°
/// assert_eq!(show(&forces.tangential, &unit::NEWTON, 0), "4,000 N");
/// assert_eq!(show(&forces.radial, &unit::NEWTON, 0), "1,681 N");
/// assert_eq!(show(&forces.axial, &unit::NEWTON, 0), "2,309 N");
/// # Ok::<(), CutError>(())
/// ```
pub fn helical(torque: Torque, diameter: Length, cut: &Cut) -> ToothForces {
    let tangential = 2.0 * torque.value.abs() / diameter.value;
    ToothForces {
        tangential: newtons(tangential),
        radial: newtons(tangential * cut.pressure_rad().tan() / cut.helix_rad().cos()),
        axial: newtons(tangential * cut.helix_rad().tan()),
    }
}
