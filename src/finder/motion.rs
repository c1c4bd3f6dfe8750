//! Figures that take engine and car: asked only of combinations that everything else has let through.

use super::inputs::{Engine, Given};
use super::stages::Steps;
use super::wish::Measure;
use crate::gearing::GearNumber;
use crate::motion::plan::{self, Goal};
use crate::motion::pull::{Gears, Pull};
use crate::motion::run::Start;
use crate::motion::{Vehicle, grade, top_speed};
use crate::units::common::metres;
use uom::si::time::second;
use uom::si::velocity::meter_per_second;

/// A car with one combination in it.
pub struct Driven<'a> {
    engine: &'a Engine,
    vehicle: Vehicle,
}

/// What a combination is to the car: steps, all that stands behind the box, and what the tyre rolls.
pub struct Parts<'a> {
    /// What a run shifts through: gears and stages.
    pub steps: &'a Steps,
    /// Whether the box has two shafts.
    pub two_shafts: bool,
    /// Ratio of all that stands behind the gearbox, stages at rest.
    pub behind: f64,
    /// What the tyre rolls at each turn, in metres.
    pub circumference_m: f64,
}

impl<'a> Driven<'a> {
    /// The car with these parts; `None` without an engine, or where they cannot be.
    pub fn new(given: &'a Given, parts: &Parts<'_>) -> Option<Self> {
        let engine = given.engine.as_ref()?;
        let gears = Gears {
            ratios: parts.steps.ratios.clone(),
            final_drive: parts.behind,
            rolling_radius: metres(parts.circumference_m / (2.0 * std::f64::consts::PI)),
            meshes: parts.steps.meshes.clone(),
        };
        let car = engine.car.with_box(parts.two_shafts);
        let pull = Pull::new(&engine.curve, &gears, car.efficiencies, engine.limit).ok()?;
        Some(Self { engine, vehicle: Vehicle::with_trailer(pull, car, engine.trailer).ok()? })
    }

    /// A figure in its measure's unit; no number where the car never gets there.
    pub fn figure(&self, measure: Measure) -> f64 {
        let value = match measure {
            Measure::StartGrade => grade::started(&self.vehicle, GearNumber::FIRST, self.engine.launch).map(|start| start.grade),
            Measure::TopSpeed => top_speed::best(&self.vehicle).map(|top| top.speed.get::<meter_per_second>()),
            Measure::TimeToSpeed(speed) => self.time(Goal::Speed(speed)),
            Measure::TimeOverDistance(distance) => self.time(Goal::Distance(distance)),
            _ => None,
        };
        value.unwrap_or(f64::NAN)
    }

    fn time(&self, goal: Goal) -> Option<f64> {
        let start = Start::Standing { launch: self.engine.launch };
        let time = plan::ranked(&self.vehicle, start, self.engine.shift_time, self.engine.shifting, goal)?;
        Some(time.get::<second>())
    }
}
