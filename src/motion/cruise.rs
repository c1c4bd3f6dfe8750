//! At a steady speed: how hard the engine works in each gear, what it has left, and the grade at which a downshift is needed.

use uom::si::power::watt;

use super::grade::carried;
use super::vehicle::Vehicle;
use super::{in_metres_per_second, newtons};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Force, Power, Velocity};

/// One gear at a steady speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cruise {
    /// The gear.
    pub gear: GearNumber,
    /// Engine speed.
    pub engine: AngularVelocity,
    /// Road load to be overcome.
    pub load: Force,
    /// Thrust at full throttle; `None` where the curve does not reach this engine speed.
    pub thrust: Option<Force>,
    /// Road load over thrust at full throttle, above 1 where the gear cannot hold the speed.
    pub load_share: Option<f64>,
    /// Thrust less road load.
    pub reserve: Option<Force>,
    /// Power asked of the engine, F·v/η.
    pub power: Power,
    /// The grade (rise over run) at which full throttle just holds the speed: steeper than this a lower gear is needed.
    pub downshift_grade: Option<f64>,
}

/// A gear at a steady speed; `None` where there is no such gear or it is past its rev limit.
pub fn in_gear(vehicle: &Vehicle, gear: GearNumber, speed: Velocity) -> Option<Cruise> {
    let pull = vehicle.pull().gear(gear)?;
    if speed > pull.fastest * (1.0 + 1e-9) {
        return None;
    }
    let v = in_metres_per_second(speed);
    let load = vehicle.load();
    let load_n = load.at(v);
    let thrust_n = pull.thrust_n(v);
    Some(Cruise {
        gear,
        engine: pull.engine_speed(speed),
        load: newtons(load_n),
        thrust: thrust_n.map(newtons),
        load_share: thrust_n.filter(|thrust| *thrust > 0.0).map(|thrust| load_n / thrust),
        reserve: thrust_n.map(|thrust| newtons(thrust - load_n)),
        power: Power::new::<watt>(load_n * v / pull.efficiency),
        downshift_grade: thrust_n.and_then(|thrust| carried(thrust - load.growing_at(v), vehicle.mass_kg(), vehicle.car().rolling.value)),
    })
}

/// The tallest gear that can hold the speed at full throttle.
pub fn tallest_that_holds(vehicle: &Vehicle, speed: Velocity) -> Option<Cruise> {
    let gears = vehicle.pull().gears().iter().rev();
    gears.filter_map(|gear| in_gear(vehicle, gear.gear, speed)).find(|cruise| cruise.load_share.is_some_and(|share| share <= 1.0))
}
