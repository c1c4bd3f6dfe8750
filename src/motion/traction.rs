//! What the tyres hold: the greatest thrust of the driven wheels, with the load that moves to the rear as the car pulls.
//!
//! Model: driven wheels at the limit, locked differential, no lift, all of the thrust acting at the height of the centre of gravity:
//! rear F = μ·W·cos θ·s/(1 − μ·h/L), front F = μ·W·cos θ·s/(1 + μ·h/L), all F = μ·W·cos θ, with s the static share on the driven axle.
//! Source: Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, and Jazar, Vehicle Dynamics (2008), eq. 2.116 to 2.120.

use uom::si::length::meter;

use super::car::{Car, Drive};
use super::{GRAVITY_M_PER_S2, newtons};
use crate::units::Force;

/// Greatest thrust the driven wheels can put down over the car's weight times cos θ: μ with the load moved.
///
/// With rear drive it is never more than μ: at that thrust the front wheels are off the road.
fn grip_share(car: &Car) -> f64 {
    let grip = car.grip.value;
    let lever = car.gravity_height.value.get::<meter>() / car.wheelbase.value.get::<meter>();
    let share = car.driven_share.value;
    match car.drive.value {
        Drive::All => grip,
        Drive::Front => grip * share / (1.0 + grip * lever),
        Drive::Rear => {
            let left = 1.0 - grip * lever;
            if left > share { grip * share / left } else { grip }
        }
    }
}

/// Greatest thrust of the driven wheels on a grade (rise over run).
///
/// ```
/// use layshaft::motion::{Car, traction::greatest_thrust};
/// use layshaft::units::{show, unit};
/// // Rear drive, half the weight on it: 0.8 × 0.5 ÷ (1 − 0.8 × 0.57/2.6) = 0.485075 of 9,806.65 N.
/// let car = Car::of_mass(unit::KG.of(1_000.0));
/// assert_eq!(show(&greatest_thrust(&car, 0.0), &unit::NEWTON, 0), "4,757 N");
/// ```
pub fn greatest_thrust(car: &Car, grade: f64) -> Force {
    newtons(grip_share(car) * car.mass_kg() * GRAVITY_M_PER_S2 * grade.atan().cos())
}

/// The steepest grade (rise over run) that grip alone allows at a steady crawl: tan θ = F/(W·cos θ).
///
/// With a trailer its pull is taken at the height of the centre of gravity and its weight loads no driven wheel.
/// Rolling resistance is left out, as in the books (Gillespie; Jazar).
pub fn greatest_grade(car: &Car, trailer: crate::units::Mass) -> f64 {
    let car_kg = car.mass_kg();
    grip_share(car) * car_kg / (car_kg + trailer.get::<uom::si::mass::kilogram>())
}
