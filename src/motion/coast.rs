//! Rolling down out of gear: time and distance between two speeds.
//!
//! Model: m·dv/dt = −(A + C·v²), so t = m/√(A·C)·[atan(v₁·√(C/A)) − atan(v₂·√(C/A))] and s = m/(2C)·ln((A + C·v₁²)/(A + C·v₂²)).
//! Source: exact integral; checked against the target times of 40 CFR 86.529-98, Figure F98-9.

use uom::si::{length::meter, mass::kilogram, time::second};

use super::in_metres_per_second;
use super::vehicle::Vehicle;
use crate::units::{Force, Length, Mass, Time, Velocity};

/// Time and distance of a coast-down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coast {
    /// How long it takes.
    pub time: Time,
    /// How far it rolls.
    pub distance: Length,
}

/// Coasts a mass from one speed to a lower one against A + C·v²; `square_n` is C in N per (m/s)².
///
/// `None` where nothing slows it, or the speeds do not fall.
pub fn coast(mass: Mass, steady: Force, square_n: f64, from: Velocity, to: Velocity) -> Option<Coast> {
    let (m, a) = (mass.get::<kilogram>(), steady.get::<uom::si::force::newton>());
    let (fast, slow) = (in_metres_per_second(from), in_metres_per_second(to));
    if !(m > 0.0 && a >= 0.0 && square_n >= 0.0 && slow >= 0.0 && fast >= slow) {
        return None;
    }
    let (time_s, distance_m) = if square_n == 0.0 {
        (m * (fast - slow) / a, m * (fast * fast - slow * slow) / (2.0 * a))
    } else if a == 0.0 {
        (m / square_n * (1.0 / slow - 1.0 / fast), m / square_n * (fast / slow).ln())
    } else {
        let bend = (square_n / a).sqrt();
        let time_s = m / (a * square_n).sqrt() * ((fast * bend).atan() - (slow * bend).atan());
        (time_s, m / (2.0 * square_n) * ((square_n * (fast * fast - slow * slow)) / (a + square_n * slow * slow)).ln_1p())
    };
    let found = time_s.is_finite() && distance_m.is_finite();
    found.then(|| Coast { time: Time::new::<second>(time_s), distance: Length::new::<meter>(distance_m) })
}

/// Coasts the car in neutral on its grade, wheels turning with it.
pub fn in_neutral(vehicle: &Vehicle, from: Velocity, to: Velocity) -> Option<Coast> {
    let (level, square) = vehicle.load_parts();
    let mass = Mass::new::<kilogram>(vehicle.masses(1)?.open);
    coast(mass, super::newtons(level), square, from, to)
}
