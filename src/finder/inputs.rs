//! What the job gives to every combination: shift rpm, extra stages, dial, fitted tyre, engine and car.

use super::stages::Stages;
use crate::catalogue::case::CaseNeeds;
use crate::gearing::Layout;
use crate::motion::car::Car;
use crate::motion::plan::Shifting;
use crate::motion::{EngineCurve, car::Defaults};
use crate::speedometer::Dial;
use crate::units::common::rpm;
use crate::units::{AngularVelocity, Length, Mass, Time};

/// The engine and the car around it, for wishes about pull and time.
#[derive(Clone, Debug, PartialEq)]
pub struct Engine {
    /// Torque over engine speed.
    pub curve: EngineCurve,
    /// Mass, drag, grip and losses.
    pub car: Car,
    /// Engine speed that is not passed; the end of the curve where `None`.
    pub limit: Option<AngularVelocity>,
    /// Engine speed held at a start.
    pub launch: AngularVelocity,
    /// Time without thrust in each shift.
    pub shift_time: Time,
    /// How the upshifts are chosen.
    pub shifting: Shifting,
    /// Mass on the hook at a start.
    pub trailer: Mass,
}

impl Engine {
    /// An engine in a car, started and shifted as the defaults say.
    pub fn new(curve: EngineCurve, car: Car) -> Self {
        let shift_time = Time::new::<uom::si::time::second>(Defaults::shift_time_s().value);
        Self {
            curve,
            car,
            limit: None,
            launch: rpm(Defaults::launch_rpm().value),
            shift_time,
            shifting: Shifting::default(),
            trailer: Mass::default(),
        }
    }
}

/// The tyre on the car.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedTyre {
    /// What it rolls at each turn.
    pub circumference: Length,
    /// Its diameter; where only what it rolls is known, a radial tyre's that rolls so far.
    pub diameter: Length,
}

/// The gear set in the car.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedSet {
    /// The ratios of its forward gears without sign, lowest gear first.
    pub ratios: Vec<f64>,
    /// Meshes under load in each gear.
    pub meshes: Vec<u8>,
    /// How it is laid out.
    pub layout: Layout,
}

/// What is the same for every combination.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// The engine speed of each upshift.
    pub shift: Option<AngularVelocity>,
    /// The extra stages of the first setup, which stay.
    pub stages: Stages,
    /// The ratio of those of them that stand behind the speedometer's drive gear; 1 without any.
    pub stages_behind_take_off: f64,
    /// Whether the speedometer is driven from a wheel, so that neither axle nor stages have to do with it.
    pub is_taken_off_at_wheel: bool,
    /// What each speedometer pair of the shelf is judged against, where the dial is known.
    pub dial: Option<Dial>,
    /// The tyre of the first setup, which is tried beside those of the catalogue.
    pub fitted: Option<FittedTyre>,
    /// The gear set of the first setup, likewise.
    pub fitted_set: Option<FittedSet>,
    /// The ratio of the first setup's final drive, likewise.
    pub fitted_axle: Option<f64>,
    /// What the first setup asks of its case.
    pub case: Option<CaseNeeds>,
    /// Engine and car, where they are known.
    pub engine: Option<Engine>,
}

impl Given {
    /// Whether gear set or final drive of the car are known.
    pub fn has_parts(&self) -> bool {
        self.fitted_set.is_some() || self.fitted_axle.is_some()
    }

    /// Turns of the shaft that carries the speedometer's drive gear for one turn of the wheels, by the ratio of the axle.
    pub fn turns_at_take_off(&self, axle: f64) -> f64 {
        if self.is_taken_off_at_wheel { 1.0 } else { self.stages_behind_take_off * axle }
    }
}

impl Default for Given {
    fn default() -> Self {
        Self {
            shift: None,
            stages: Stages::default(),
            stages_behind_take_off: 1.0,
            is_taken_off_at_wheel: false,
            dial: Some(Dial::default()),
            fitted: None,
            fitted_set: None,
            fitted_axle: None,
            case: None,
            engine: None,
        }
    }
}
