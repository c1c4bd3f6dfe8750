//! Pull: what an engine, a car and a gear set do together on the road.
//!
//! - [`curve`]: torque and power over engine speed, from points, pasted rows or peak figures; [`atmosphere`] corrects it.
//! - [`car`]: mass, axle loads, drag, efficiencies and inertias, each given or a marked default; [`traction`]: what the tyres hold.
//! - [`pull`]: thrust at the wheels in every gear over road speed; needs no mass.
//! - [`vehicle`]: engine, gears and car together, checked; every question below is asked of it.
//! - [`shift`], [`top_speed`], [`grade`], [`descent`], [`cruise`], [`run`]: the questions, one a file.
//! - [`plan`]: all upshifts of a run chosen together for one goal.
//! - [`compare`]: the facts that settle close or wide.
//!
//! Quantities are in SI inside; engine speed is kept in rpm, as every curve is written.

pub mod atmosphere;
pub mod car;
pub mod compare;
pub mod cruise;
pub mod curve;
pub mod descent;
pub mod error;
pub mod grade;
mod piecewise;
pub mod plan;
pub mod pull;
pub mod quadrature;
mod road_load;
pub mod run;
pub mod shift;
pub mod top_speed;
pub mod traction;
pub mod vehicle;

use uom::si::{angular_velocity::radian_per_second, force::newton, power::watt, torque::newton_meter, velocity::meter_per_second};

use crate::units::common::{in_rpm, metres_per_second, rpm};
use crate::units::{AngularVelocity, Force, Power, Torque, Velocity};

pub use car::{Car, Defaults, Drive, Origin, Rotating, Sourced};
pub use curve::{Band, CurveError, CurvePoint, EngineCurve};
pub use error::MotionError;
pub use pull::{Gears, Pull};
pub use vehicle::Vehicle;

/// Standard gravity, exact. Source: NIST SP 811, Appendix B; 40 CFR 1066.210(d)(3).
pub const GRAVITY_M_PER_S2: f64 = 9.806_65;

/// The relative error asked of every integral over speed.
const TOLERANCE: f64 = 1e-11;

fn newton_metres(value: f64) -> Torque {
    Torque::new::<newton_meter>(value)
}

fn in_newton_metres(torque: Torque) -> f64 {
    torque.get::<newton_meter>()
}

fn in_metres_per_second(speed: Velocity) -> f64 {
    speed.get::<meter_per_second>()
}

fn newtons(value: f64) -> Force {
    Force::new::<newton>(value)
}

/// Power of a torque at a speed, P = T·ω.
///
/// ```
/// use layshaft::motion::power_of;
/// use layshaft::units::{common::rpm, show, unit};
/// // 100 N·m × 3,000 × 2π ÷ 60 = 100 × 314.159
/// assert_eq!(show(&power_of(unit::N_M.of(100.0), rpm(3_000.0)), &unit::KW, 2), "31.42 kW");
/// ```
pub fn power_of(torque: Torque, speed: AngularVelocity) -> Power {
    Power::new::<watt>(in_newton_metres(torque) * speed.get::<radian_per_second>())
}

/// Torque that makes a power at a speed, T = P/ω; not finite at a standstill.
///
/// ```
/// use layshaft::motion::torque_of;
/// use layshaft::units::{common::rpm, show, unit};
/// // 550 ft·lbf/s ÷ 2π × 60 = 5,252 lbf·ft at 1 rpm
/// assert_eq!(show(&torque_of(unit::HP.of(100.0), rpm(5_252.0)), &unit::LBF_FT, 1), "100.0 lbf·ft");
/// ```
pub fn torque_of(power: Power, speed: AngularVelocity) -> Torque {
    newton_metres(power.get::<watt>() / speed.get::<radian_per_second>())
}
