//! Down a hill without the brakes: what a closed throttle holds back, and the grade on which each gear keeps its speed.

use super::vehicle::Vehicle;
use super::{GRAVITY_M_PER_S2, in_metres_per_second, in_newton_metres, in_rpm, newton_metres};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Torque, Velocity};

/// Mean effective pressure at peak torque of a naturally aspirated engine of the time (bar). Common practice, no published source.
const PEAK_BAR: f64 = 9.0;

/// Torque that turning an engine with a closed throttle takes.
///
/// Model: friction as a mean effective pressure, 0.97 + 0.15·N + 0.05·N² bar with N in 1,000 rpm, as a share of the 9 bar that peak torque
/// is taken for. What the closed throttle adds by pumping is left out, so that an engine brakes at least so much; a guess within a third.
/// Source: J. B. Heywood, Internal Combustion Engine Fundamentals, eq. 13.6; from memory.
///
/// ```
/// use layshaft::motion::descent::braking_torque;
/// use layshaft::units::{common::rpm, show, unit};
/// // (0.97 + 0.15 × 3 + 0.05 × 9) ÷ 9 of 180 N·m
/// assert_eq!(show(&braking_torque(unit::N_M.of(180.0), rpm(3_000.0)), &unit::N_M, 1), "37.4 N·m");
/// ```
pub fn braking_torque(peak: Torque, speed: AngularVelocity) -> Torque {
    let thousands = in_rpm(speed) / 1_000.0;
    let friction_bar = 0.97 + 0.15 * thousands + 0.05 * thousands * thousands;
    newton_metres(in_newton_metres(peak) * friction_bar / PEAK_BAR)
}

/// The grade (rise over run) down which a gear keeps a speed with the throttle closed; `None` where there is no such gear,
/// the engine would turn past its limit or slower than its curve begins, or it would hold the car on any grade.
///
/// Model: W·(sin θ − f·cos θ) = T·i/(r·η) + c·v² with what rolling resistance grows by; the losses help, so that they divide.
pub fn kept(vehicle: &Vehicle, gear: GearNumber, speed: Velocity) -> Option<f64> {
    let pull = vehicle.pull().gear(gear)?;
    if speed > pull.fastest * (1.0 + 1e-9) || speed < pull.slowest * (1.0 - 1e-9) {
        return None;
    }
    let torque = braking_torque(vehicle.pull().curve().peak_torque().torque, pull.engine_speed(speed));
    let engine_n = in_newton_metres(torque) * pull.overall / (pull.radius_m() * pull.efficiency);
    let back_n = engine_n + vehicle.load().growing_at(in_metres_per_second(speed));
    let rolling = vehicle.car().rolling.value;
    let sine = back_n / (vehicle.mass_kg() * GRAVITY_M_PER_S2 * rolling.hypot(1.0));
    let grade = (sine <= 1.0).then(|| (sine.asin() + rolling.atan()).tan())?;
    (grade >= 0.0).then_some(grade)
}
