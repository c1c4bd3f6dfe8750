//! Which set suits this engine, this car and this use?
//!
//! Thrust needs engine and gears alone; runs, grades and top speed need the car's mass too. Each answer is there as soon as it can be.

use crate::gearing::Ratio;
use crate::gearing::teeth::decimal;
use crate::motion::compare::{self, Facts, Question};
use crate::motion::cruise::{self, Cruise};
use crate::motion::grade::{self, Steepest};
use crate::motion::plan::{Goal, Way};
use crate::motion::pull::Gears as PlainGears;
use crate::motion::run::{self, Course, Run, Start};
use crate::motion::shift::{self, Rule, Shift, ShiftCost};
use crate::motion::top_speed::{self, TopSpeed};
use crate::motion::{self, Defaults, MotionError, Vehicle};
use crate::questions::{Conditions, Setup};
use crate::units::common::{metres, metres_per_second, rpm};
use crate::units::{Time, Velocity};

/// What engine, car and gears do together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pull {
    /// Thrust in every gear; needs no mass.
    pub thrust: Option<motion::Pull>,
    /// Engine, gears and car together.
    pub vehicle: Option<Vehicle>,
    /// Why there is no thrust or no car, where something was given that cannot be.
    pub refused: Option<MotionError>,
    /// The best upshift out of every gear.
    pub shifts: Vec<BestShift>,
    /// The facts of a standing start, of the shifts and of the cruise.
    pub facts: Option<Facts>,
    /// One answer a forward gear, lowest first.
    pub gears: Vec<GearAnswers>,
    /// The cruise in top gear.
    pub cruise: Option<Cruise>,
    /// The way over a quarter mile and over a kilometre from a standing start.
    pub distances: Vec<Way>,
    /// What shifting early each time costs the run to the named speed; none without a shift.
    pub early: Option<Time>,
    /// The rolling start from one speed to the other, where one is asked for, or why there is none.
    pub roll: Option<Result<Way, MotionError>>,
}

/// The best upshift out of a gear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BestShift {
    /// By equal acceleration, or by equal thrust where the mass is not known.
    pub best: Shift,
    /// By equal thrust, the usual textbook rule.
    pub by_thrust: Option<Shift>,
    /// What 500 rpm early or late cost.
    pub cost: Option<ShiftCost>,
}

/// What one gear does.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GearAnswers {
    /// Its top speed on the level.
    pub top: Option<TopSpeed>,
    /// The steepest grade it holds.
    pub held: Option<Steepest>,
    /// The steepest grade it starts on.
    pub started: Option<Steepest>,
}

/// How far from the best point the cost of a shift is told.
pub const AWAY_RPM: f64 = 500.0;
/// The distances of a standing start: a quarter mile (402.336 m, exact) and a kilometre.
const DISTANCES_M: [f64; 2] = [402.336, 1_000.0];
/// Speed between two points of a run's trace.
const TRACE_M_PER_S: f64 = 0.5;

impl Pull {
    /// What engine, car and gears of a setup do together.
    pub fn of(setup: &Setup, conditions: &Conditions) -> Self {
        let typed = &conditions.pull;
        let (Some(curve), Some(gears)) = (&typed.curve, plain_gears(setup)) else { return Self::default() };
        let losses = typed.car.map_or_else(Defaults::efficiencies, |car| car.efficiencies);
        let thrust = match motion::Pull::new(curve, &gears, losses, typed.limit) {
            Ok(thrust) => thrust,
            Err(why) => return Self { refused: Some(why), ..Self::default() },
        };
        let Some(car) = typed.car else {
            let shifts =
                shift::equal_thrust(&thrust).into_iter().map(|best| BestShift { best, by_thrust: Some(best), cost: None }).collect();
            return Self { thrust: Some(thrust), shifts, ..Self::default() };
        };
        match Vehicle::new(thrust.clone(), car) {
            Ok(vehicle) => Self::with_car(thrust, vehicle, conditions),
            Err(why) => Self { thrust: Some(thrust), refused: Some(why), ..Self::default() },
        }
    }

    fn with_car(thrust: motion::Pull, vehicle: Vehicle, conditions: &Conditions) -> Self {
        let typed = &conditions.pull;
        let facts = compare::facts(&vehicle, &question(conditions));
        let many = thrust.gears().len();
        Self {
            shifts: best_shifts(&vehicle),
            gears: (1..=many).map(|gear| gear_answers(&vehicle, gear, conditions)).collect(),
            cruise: conditions.cruise.and_then(|speed| cruise::in_gear(&vehicle, many, speed, typed.trailer)),
            distances: distances(&vehicle, conditions),
            early: facts.as_ref().and_then(|facts| early(&vehicle, facts, conditions)),
            roll: conditions.pull.run.roll.map(|roll| rolling(&vehicle, conditions, roll)),
            facts,
            thrust: Some(thrust),
            vehicle: Some(vehicle),
            refused: None,
        }
    }
}

/// The gears as plain ratios, as soon as every one of them, the axle and the tyre are known.
fn plain_gears(setup: &Setup) -> Option<PlainGears> {
    let ratios: Vec<Ratio> = (0..setup.gears.len()).map(|gear| setup.ratio(gear)).collect::<Option<_>>()?;
    let meshes = setup.gears.iter().map(|gear| gear.map_or(0, |gear| gear.meshes_under_load(setup.layout)));
    let rolling_radius = setup.rolling.as_ref()?.radius();
    let final_drive = decimal(setup.behind_gearbox()?);
    Some(PlainGears {
        ratios: ratios.into_iter().map(|ratio| decimal(ratio).abs()).collect(),
        final_drive,
        rolling_radius,
        meshes: meshes.collect(),
    })
}

/// What the setups are compared by.
fn question(conditions: &Conditions) -> Question {
    let run = &conditions.pull.run;
    Question {
        launch: run.launch.value,
        shifting: run.shifting,
        shift_time: run.shift_time.value,
        speeds: run.speeds.clone(),
        cruise: conditions.cruise,
        band_share: run.band_share.value.0,
        trailer: conditions.pull.trailer,
    }
}

fn best_shifts(vehicle: &Vehicle) -> Vec<BestShift> {
    let by_thrust = shift::shifts(vehicle, Rule::EqualThrust);
    let best = |best: Shift| BestShift {
        best,
        by_thrust: by_thrust.iter().copied().find(|other| other.from == best.from),
        cost: Some(shift::cost(vehicle, &best, rpm(AWAY_RPM))),
    };
    shift::shifts(vehicle, Rule::EqualAcceleration).into_iter().map(best).collect()
}

fn gear_answers(vehicle: &Vehicle, gear: usize, conditions: &Conditions) -> GearAnswers {
    let typed = &conditions.pull;
    GearAnswers {
        top: top_speed::in_gear(vehicle, gear),
        held: grade::held(vehicle, gear, typed.trailer),
        started: grade::started(vehicle, gear, typed.run.launch.value, typed.trailer),
    }
}

/// The ways over the usual distances.
fn distances(vehicle: &Vehicle, conditions: &Conditions) -> Vec<Way> {
    let goals = DISTANCES_M.map(|distance| Goal::Distance(metres(distance)));
    ways(vehicle, conditions, standing(conditions), &goals).unwrap_or_default()
}

fn standing(conditions: &Conditions) -> Start {
    Start::Standing { launch: conditions.pull.run.launch.value }
}

fn ways(vehicle: &Vehicle, conditions: &Conditions, start: Start, goals: &[Goal]) -> Result<Vec<Way>, MotionError> {
    let run = &conditions.pull.run;
    run.shifting.ways(vehicle, start, run.shift_time.value, goals)
}

/// What shifting early each time costs on the way to the named speed.
fn early(vehicle: &Vehicle, facts: &Facts, conditions: &Conditions) -> Option<Time> {
    let (at, _) = conditions.pull.run.named_speed()?;
    facts.to_speed.get(at)?.as_ref().ok()?.cost_of_early(vehicle, rpm(AWAY_RPM))
}

/// From one speed to another, in the gear chosen and up from there, or in top gear.
fn rolling(vehicle: &Vehicle, conditions: &Conditions, (from, to, gear): (Velocity, Velocity, Option<usize>)) -> Result<Way, MotionError> {
    if from >= to {
        return Err(MotionError::NotRising);
    }
    let gear = gear.map_or_else(|| tallest_usable(vehicle, from), Ok)?;
    let mut ways = ways(vehicle, conditions, Start::Rolling { gear, speed: from }, &[Goal::Speed(to)])?;
    ways.pop().ok_or(MotionError::NoGears)
}

/// Top gear, or the tallest below it that turns the engine as fast as its curve begins.
fn tallest_usable(vehicle: &Vehicle, speed: Velocity) -> Result<usize, MotionError> {
    let gears = vehicle.pull().gears();
    let usable = gears.iter().rev().find(|gear| gear.slowest <= speed && speed < gear.fastest).map(|gear| gear.gear);
    let within_limit = gears.iter().any(|gear| speed < gear.fastest);
    usable.ok_or(if within_limit { MotionError::TooSlowForAll } else { MotionError::TooFastForAll })
}

/// The standing start of the facts with a trace, for the pictures alone.
pub fn traced(pull: &Pull, conditions: &Conditions) -> Option<Run> {
    let (vehicle, facts) = (pull.vehicle.as_ref()?, pull.facts.as_ref()?);
    let typed = &conditions.pull.run;
    let one_by_one: Vec<Shift> = facts.landings.iter().map(|landing| landing.shift).collect();
    let course = Course {
        start: standing(conditions),
        shifts: compare::to_the_last(vehicle, &facts.to_speed, &one_by_one),
        shift_time: typed.shift_time.value,
        speeds: typed.speeds.clone(),
        distances: vec![metres(DISTANCES_M[0])],
        band: None,
        trace_step: Some(metres_per_second(TRACE_M_PER_S)),
    };
    run::run(vehicle, &course).ok()
}
