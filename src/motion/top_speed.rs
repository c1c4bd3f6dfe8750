//! How fast the car goes in each gear at full throttle: where thrust falls through road load, or the rev limit.

use super::vehicle::Vehicle;
use super::{in_metres_per_second, metres_per_second};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Force, Velocity};

/// What ends the speed of a gear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// Thrust equals road load.
    Balance,
    /// The rev limit; thrust is left over.
    RevLimit,
}

/// The top speed of one gear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TopSpeed {
    /// The gear.
    pub gear: GearNumber,
    /// Road speed that the gear reaches and no more.
    pub speed: Velocity,
    /// Engine speed there.
    pub engine: AngularVelocity,
    /// What ends it.
    pub bound: Bound,
    /// Thrust less road load there: nothing at a balance, the reserve at the rev limit.
    pub left_over: Force,
}

/// The top speed of a gear with the clutch closed; `None` where road load is above thrust everywhere.
pub fn in_gear(vehicle: &Vehicle, gear: GearNumber) -> Option<TopSpeed> {
    let pull = vehicle.pull().gear(gear)?;
    let fastest = in_metres_per_second(pull.fastest);
    let nets = vehicle.pieces(gear).iter().filter(|piece| piece.slip_to.is_none()).map(|piece| piece.thrust.less(vehicle.load()));
    let answer = |speed: f64, bound: Bound, left: f64| {
        let speed = metres_per_second(speed);
        TopSpeed { gear, speed, engine: pull.engine_speed(speed), bound, left_over: super::newtons(left) }
    };
    for (from_top, net) in nets.rev().enumerate() {
        let at_end = net.at(net.to);
        if from_top == 0 && at_end >= 0.0 {
            return Some(answer(fastest, Bound::RevLimit, at_end));
        }
        let falling = net.crossings(0.0).rev().find(|at| *at > net.from && net.at(at - 1e-6 * (net.to - net.from)) > 0.0);
        if let Some(at) = falling {
            return Some(answer(at, Bound::Balance, net.at(at)));
        }
    }
    None
}

/// The top speed of every gear, `None` where a gear cannot hold any speed.
pub fn per_gear(vehicle: &Vehicle) -> Vec<Option<TopSpeed>> {
    vehicle.pull().gears().iter().map(|gear| in_gear(vehicle, gear.gear)).collect()
}

/// The highest of all, in the lowest gear that reaches it.
pub fn best(vehicle: &Vehicle) -> Option<TopSpeed> {
    per_gear(vehicle).into_iter().flatten().reduce(|best, next| if next.speed > best.speed { next } else { best })
}
