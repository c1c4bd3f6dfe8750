//! Which way helical teeth push along their shafts, what is left over on each shaft, and the helix that leaves nothing.
//!
//! A right-hand driver is pushed the way the thumb of a right hand points whose fingers follow its turning; a left-hand one the other way,
//! and a driven gear against its driver. The shafts are looked at from the engine, whose input turns clockwise seen from there, as nearly all
//! engines do: a force above nothing points away from the engine. Source: Shigley, Mechanical Engineering Design, 9th ed., section 13-16,
//! and the law that a force has its equal against it.

use super::forces::{ToothForces, newtons};
use super::path::MeshLoad;
use crate::gearing::geometry::{Cut, Hand};
use crate::gearing::part::Shaft;
use crate::gearing::teeth::decimal;
use crate::gearing::{Layout, Teeth};
use crate::units::{Angle, Force, unit};

/// A mesh with its forces and the hand of its gear on the countershaft (of a two-shaft box, on the input shaft).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pushed {
    /// The mesh.
    pub load: MeshLoad,
    /// Its forces.
    pub forces: ToothForces,
    /// The hand.
    pub hand: Hand,
}

impl Pushed {
    /// Along the shaft of the driver and that of the driven gear; above nothing away from the engine.
    pub fn axial(&self, layout: Layout) -> [(Shaft, Force); 2] {
        let (driver, driven) = (self.load.driver.shaft(layout), self.load.driven.shaft(layout));
        let told = if layout == Layout::TwoShaft { Shaft::Input } else { Shaft::Countershaft };
        let hand = if driver == told { self.hand } else { self.hand.of_mate() };
        let sense = if hand == Hand::Right { 1.0 } else { -1.0 };
        // Power flows into a driver, so it turns the way its torque does.
        let turns = decimal(self.load.driver_share).signum();
        let along = self.forces.axial.value.abs() * sense * turns;
        [(driver, newtons(along)), (driven, newtons(-along))]
    }
}

/// What is left over on a shaft.
pub fn on_shaft(shaft: Shaft, meshes: &[Pushed], layout: Layout) -> Force {
    let all = meshes.iter().flat_map(|mesh| mesh.axial(layout));
    newtons(all.filter(|(on, _)| *on == shaft).map(|(_, force)| force.value).sum())
}

/// The helix of a gear whose thrust cancels that of another on the same shaft: sin β = sin β₀ × mₙ z / (mₙ₀ z₀), equal leads and equal hands, one
/// driving and one driven. `None` where no helix does.
///
/// Both hold the same torque, so Fₐ = 2 T tan β / d is the same where tan β / d is.
///
/// ```
/// use layshaft::gearing::{Teeth, geometry::Cut};
/// use layshaft::toothload::thrust::cancelling_helix;
/// use layshaft::units::{common::millimetres, unit};
/// # fn example() -> Option<()> {
/// let cut = Cut::new(millimetres(2.5), unit::DEGREE.of(30.0), unit::DEGREE.of(20.0)).ok()?;
/// // sin 30° × 18 ÷ 30 = 0.3
/// let helix = cancelling_helix((&cut, Teeth::new(30)?), (&cut, Teeth::new(18)?))?;
/// assert!((unit::DEGREE.number(helix) - 17.457_603).abs() < 1e-6);
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn cancelling_helix(other: (&Cut, Teeth), this: (&Cut, Teeth)) -> Option<Angle> {
    let size = |(cut, teeth): (&Cut, Teeth)| cut.normal_module().value * f64::from(teeth.count());
    let sine = other.0.helix_rad().sin() * size(this) / size(other);
    (sine < 1.0).then(|| unit::RADIAN.of(sine.asin()))
}
