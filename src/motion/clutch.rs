//! What a start costs the clutch, in closed form: the quick answer on any grade, without drag or driveline loss.
//!
//! Model: the engine is held at ω, the clutch passes a constant torque T against a resisting torque R at its shaft, and the car is a
//! flywheel J = m·r²/N²: slip lasts t = J·ω/(T − R) and turns E = ½·J·ω²·T/(T − R) into heat. Two free discs lose
//! E = ½·J₁·J₂/(J₁ + J₂)·(ω₁ − ω₂)².
//! Source: standard clutch theory (Shigley, Mechanical Engineering Design, clutch chapter, energy considerations); from memory.

use uom::si::{angular_velocity::radian_per_second, energy::joule, mass::kilogram, moment_of_inertia::kilogram_square_meter, time::second};

use super::vehicle::Vehicle;
use super::{GRAVITY_M_PER_S2, in_newton_metres, in_rpm, newton_metres};
use crate::units::{AngularVelocity, Energy, Mass, MomentOfInertia, Time, Torque};

/// A start as the clutch sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlipWork {
    /// The car as a flywheel on the clutch shaft.
    pub inertia: MomentOfInertia,
    /// Torque that resists at the clutch shaft.
    pub resisting: Torque,
    /// Torque the clutch passes.
    pub clutch: Torque,
    /// How long it slips.
    pub time: Time,
    /// Heat in the clutch.
    pub energy: Energy,
}

/// The slip of one start; `None` where the clutch torque does not exceed the resisting torque, so that it would slip for ever.
pub fn slip(inertia: MomentOfInertia, speed: AngularVelocity, clutch: Torque, resisting: Torque) -> Option<SlipWork> {
    let (j, w) = (inertia.get::<kilogram_square_meter>(), speed.get::<radian_per_second>());
    let (passed, against) = (in_newton_metres(clutch), in_newton_metres(resisting));
    let surplus = passed - against;
    (surplus > 0.0 && j > 0.0).then(|| SlipWork {
        inertia,
        resisting,
        clutch,
        time: Time::new::<second>(j * w / surplus),
        energy: Energy::new::<joule>(0.5 * j * w * w * passed / surplus),
    })
}

/// A start in a gear (counted from 1) at a launch speed on a grade (rise over run), with a trailer.
///
/// The clutch passes the engine's full torque at that speed; grip is not looked at.
pub fn start(vehicle: &Vehicle, gear: usize, launch: AngularVelocity, grade: f64, trailer: Mass) -> Option<SlipWork> {
    let pull = vehicle.pull().gear(gear)?;
    let lever_m = pull.radius_m() / pull.overall;
    let trailer_kg = trailer.get::<kilogram>();
    let inertia = (vehicle.masses(gear)?.slipping + trailer_kg) * lever_m * lever_m;
    let slope = grade.atan();
    let weight = (vehicle.car().mass_kg() + trailer_kg) * GRAVITY_M_PER_S2;
    let resisting = weight * (vehicle.car().rolling.value * slope.cos() + slope.sin()) * lever_m;
    let torque = vehicle.pull().curve().torque_nm_within(in_rpm(launch));
    slip(MomentOfInertia::new::<kilogram_square_meter>(inertia), launch, newton_metres(torque), newton_metres(resisting))
}

/// Heat when two free discs are clutched together at different speeds.
pub fn two_discs(one: (MomentOfInertia, AngularVelocity), other: (MomentOfInertia, AngularVelocity)) -> Energy {
    let [a, b] = [one.0, other.0].map(|inertia| inertia.get::<kilogram_square_meter>());
    let apart = (one.1 - other.1).get::<radian_per_second>();
    Energy::new::<joule>(0.5 * a * b / (a + b) * apart * apart)
}
