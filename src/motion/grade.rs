//! The steepest grade each gear can start on and hold, with or without a trailer.
//!
//! Model: thrust less drag carries W·(f·cos θ + sin θ), so θ = asin((F − c·v²)/(W·√(1 + f²))) − atan f; grip may allow less
//! ([`super::traction::greatest_grade`]), and the lower of the two governs.

use super::road_load::RoadLoad;
use super::vehicle::Vehicle;
use super::{GRAVITY_M_PER_S2, in_metres_per_second, metres_per_second, newtons, rpm, traction};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Force, Velocity};

/// What sets a grade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GradeBound {
    /// The engine gives no more.
    Thrust,
    /// The driven wheels hold no more.
    Grip,
}

/// The steepest grade of a gear, by thrust and by grip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steepest {
    /// The gear.
    pub gear: GearNumber,
    /// By thrust alone, rise over run; `None` where thrust would lift the car straight up. Below 0 the car needs a descent.
    pub by_thrust: Option<f64>,
    /// By grip alone, rise over run; at a start as much less as by thrust.
    pub by_grip: f64,
    /// The lower of the two.
    pub grade: f64,
    /// Which of the two.
    pub bound: GradeBound,
    /// Thrust less drag, tyres' grip not looked at.
    pub net: Force,
    /// Engine speed at which thrust is greatest over drag, or the launch.
    pub engine: AngularVelocity,
    /// Road speed there; nothing at a start.
    pub speed: Velocity,
}

/// The steepest grade a gear holds at full throttle, at the speed where it pulls best; `None` where there is no such gear.
pub fn held(vehicle: &Vehicle, gear: GearNumber) -> Option<Steepest> {
    let pull = vehicle.pull().gear(gear)?;
    let growing = RoadLoad { level: 0.0, ..*vehicle.load() };
    let fastest = in_metres_per_second(pull.fastest);
    let nets: Vec<_> = pull.thrust.iter().filter_map(|piece| piece.cut(0.0, fastest)).map(|piece| piece.less(&growing)).collect();
    let speeds = nets.iter().flat_map(|net| net.turns().chain([net.from, net.to]).map(|speed| (speed, net.at(speed))));
    let (speed, net) = speeds.reduce(|best, next| if next.1 > best.1 { next } else { best })?;
    let speed = metres_per_second(speed);
    Some(steepest(vehicle, gear, net, 1.0, (speed, pull.engine_speed(speed))))
}

/// What of thrust and grip is left to hold the grade at a start; the rest picks up speed, so that the clutch closes before long.
///
/// Common practice, no published source: with nothing left over the clutch would slip for ever.
pub const START_SHARE: f64 = 0.9;

/// The steepest grade on which a gear moves the car off, the clutch slipping at `launch`, a tenth of thrust or grip left to pick up speed.
pub fn started(vehicle: &Vehicle, gear: GearNumber, launch: AngularVelocity) -> Option<Steepest> {
    let pull = vehicle.pull().gear(gear)?;
    let launch_rpm = vehicle.pull().held_launch_rpm(launch);
    let thrust = vehicle.pull().curve().torque_nm_within(launch_rpm) * pull.thrust_per_torque_1_per_m();
    Some(steepest(vehicle, gear, thrust, START_SHARE, (metres_per_second(0.0), rpm(launch_rpm))))
}

/// The grade (rise over run) a pull at the wheels, drag taken off, carries up; `None` past the vertical.
pub(super) fn carried(net_n: f64, mass_kg: f64, rolling: f64) -> Option<f64> {
    let sine = net_n / (mass_kg * GRAVITY_M_PER_S2 * rolling.hypot(1.0));
    let slope = if sine <= 1.0 { sine.max(-1.0).asin() - rolling.atan() } else { return None };
    Some(slope.tan())
}

fn steepest(vehicle: &Vehicle, gear: GearNumber, net_n: f64, share: f64, (speed, engine): (Velocity, AngularVelocity)) -> Steepest {
    let car = vehicle.car();
    let by_thrust = carried(share * net_n, vehicle.mass_kg(), car.rolling.value);
    let by_grip = share * traction::greatest_grade(car, vehicle.trailer());
    let (grade, bound) = match by_thrust {
        Some(by_thrust) if by_thrust <= by_grip => (by_thrust, GradeBound::Thrust),
        _ => (by_grip, GradeBound::Grip),
    };
    Steepest { gear, by_thrust, by_grip, grade, bound, net: newtons(net_n), engine, speed }
}
