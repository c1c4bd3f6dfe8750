//! Which set suits this engine, this car and this use?
//!
//! Thrust needs engine and gears alone; runs, grades and top speed need the car's mass too. Each answer is there as soon as it can be.

use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Layout, Ratio};
use crate::motion::compare::{self, Facts, Question};
use crate::motion::cruise::{self, Cruise};
use crate::motion::grade::{self, Steepest};
use crate::motion::plan::{Goal, Ground, Plan, Way};
use crate::motion::pull::Gears as PlainGears;
use crate::motion::run::{self, Course, Run, Start};
use crate::motion::shift::{self, Rule, Shift, ShiftCost};
use crate::motion::top_speed::{self, TopSpeed};
use crate::motion::{self, MotionError, Vehicle};
use crate::questions::{Conditions, Setup};
use crate::units::common::{metres, metres_per_second, rpm};
use crate::units::{Torque, Velocity};

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
    /// The highest speed of all gears; none where no gear holds any.
    pub top: Option<TopSpeed>,
    /// One answer a step that a run can use, in its order.
    pub gears: Vec<GearAnswers>,
    /// The cruise in top gear.
    pub cruise: Option<Cruise>,
    /// Reverse, where its teeth are known.
    pub reverse: Option<Reverse>,
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

/// What reverse does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reverse {
    /// Road speed at [`CRAWL_RPM`].
    pub crawl: Velocity,
    /// The steepest grade it starts on, backwards up the hill.
    pub started: Option<Steepest>,
}

/// The engine speed at which a car is backed up, clutch closed. Common practice, no published source.
pub const CRAWL_RPM: f64 = 1_000.0;
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
        let (Some(curve), Some(gears)) = (&typed.curve_at_height, plain_gears(setup)) else { return Self::default() };
        let two_shafts = setup.layout == Layout::TwoShaft;
        let losses = typed.efficiencies.with_box(two_shafts);
        let thrust = match motion::Pull::new(curve, &gears, losses, typed.limit) {
            Ok(thrust) => thrust,
            Err(why) => return Self { refused: Some(why), ..Self::default() },
        };
        let Some(car) = typed.car else {
            let shifts =
                shift::equal_thrust(&thrust).into_iter().map(|best| BestShift { best, by_thrust: Some(best), cost: None }).collect();
            return Self { thrust: Some(thrust), shifts, ..Self::default() };
        };
        match Vehicle::with_trailer(thrust.clone(), car.with_box(two_shafts), typed.trailer) {
            Ok(vehicle) => Self { reverse: reverse(setup, conditions, &gears), ..Self::with_car(thrust, vehicle, conditions) },
            Err(why) => Self { thrust: Some(thrust), refused: Some(why), ..Self::default() },
        }
    }

    /// The torque at the input with which the driven tyres just spin in 1st at a steady speed; none without engine, gears and car.
    pub fn grip_torque(&self) -> Option<Torque> {
        let per_torque = self.thrust.as_ref()?.gear(GearNumber::FIRST)?.thrust_per_torque_1_per_m();
        let grip_n = self.vehicle.as_ref()?.grip_limit().get::<uom::si::force::newton>();
        (per_torque > 0.0).then(|| Torque::new::<uom::si::torque::newton_meter>(grip_n / per_torque))
    }

    fn with_car(thrust: motion::Pull, vehicle: Vehicle, conditions: &Conditions) -> Self {
        let many = thrust.gears().len();
        Self {
            shifts: best_shifts(&vehicle),
            gears: GearNumber::lowest(many).map(|gear| gear_answers(&vehicle, gear, conditions)).collect(),
            cruise: conditions.cruise.zip(thrust.gears().last()).and_then(|(speed, top)| cruise::in_gear(&vehicle, top.gear, speed)),
            top: top_speed::best(&vehicle),
            thrust: Some(thrust),
            vehicle: Some(vehicle),
            ..Self::default()
        }
    }
}

/// Reverse as a box of one gear, the car backing up.
fn reverse(setup: &Setup, conditions: &Conditions, forward: &PlainGears) -> Option<Reverse> {
    let typed = &conditions.pull;
    let two_shafts = setup.layout == Layout::TwoShaft;
    let ratio = decimal(setup.gearbox.as_ref()?.reverse_ratio()?).abs();
    // the constant pair, and the two meshes of the idler
    let of_stages = setup.stages.iter().flatten().map(|stage| stage.meshes(false)).fold(0, u8::saturating_add);
    let meshes = of_stages.saturating_add(if two_shafts { 2 } else { 3 });
    let gears = PlainGears { ratios: vec![ratio], meshes: vec![meshes], ..*forward };
    let car = typed.car?.with_box(two_shafts).reversing();
    let pull = motion::Pull::new(typed.curve_at_height.as_ref()?, &gears, car.efficiencies, typed.limit).ok()?;
    let vehicle = Vehicle::with_trailer(pull, car, typed.trailer).ok()?;
    let crawl = vehicle.pull().gear(GearNumber::FIRST)?.road_speed(rpm(CRAWL_RPM));
    Some(Reverse { crawl, started: grade::started(&vehicle, GearNumber::FIRST, typed.run.launch.value) })
}

/// The steps that a run can use as plain ratios, as soon as every one of them, the axle and the tyre are known.
fn plain_gears(setup: &Setup) -> Option<PlainGears> {
    let ratios: Vec<Ratio> = setup.driven().map(|step| step.ratio).collect::<Option<_>>()?;
    let of_gear = |gear: GearNumber| gear.of(&setup.gears).copied().flatten().map_or(0, |gear| gear.meshes_under_load(setup.layout));
    let meshes = setup.driven().map(|step| of_gear(step.gear).saturating_add(step.meshes));
    let rolling_radius = setup.rolling.as_ref()?.radius();
    let final_drive = decimal(setup.behind_gearbox()?);
    Some(PlainGears { ratios: ratios.into_iter().map(decimal).collect(), final_drive, rolling_radius, meshes: meshes.collect() })
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

fn gear_answers(vehicle: &Vehicle, gear: GearNumber, conditions: &Conditions) -> GearAnswers {
    let typed = &conditions.pull;
    GearAnswers {
        top: top_speed::in_gear(vehicle, gear),
        held: grade::held(vehicle, gear),
        started: grade::started(vehicle, gear, typed.run.launch.value),
    }
}

/// The facts of a standing start, of the shifts and of the cruise: apart from the rest, since the runs are planned for them.
///
/// With them comes what was found out about the vehicle for it, for the runs over distances.
pub fn facts(pull: &Pull, conditions: &Conditions) -> Option<(Facts, Ground)> {
    compare::facts_and_ground(pull.vehicle.as_ref()?, &question(conditions))
}

/// The rolling start from one speed to the other, where one is asked for, or why there is none.
pub fn roll(pull: &Pull, setup: &Setup, conditions: &Conditions) -> Option<Result<Way, MotionError>> {
    let (from, to, gear) = conditions.pull.run.roll?;
    let number = |gear: GearNumber| setup.number_at_rest(gear).unwrap_or(gear);
    Some(rolling(pull.vehicle.as_ref()?, conditions, (from, to, gear.map(number))))
}

/// The way over a quarter mile and over a kilometre from a standing start: apart from the rest, since planning them takes the longest.
pub fn over_distances(pull: &Pull, conditions: &Conditions, ground: &Ground) -> Vec<Way> {
    let goals = DISTANCES_M.map(|distance| Goal::Distance(metres(distance)));
    let run = &conditions.pull.run;
    let ways = |vehicle| run.shifting.ways_on(ground, vehicle, standing(conditions), run.shift_time.value, &goals).ok();
    pull.vehicle.as_ref().and_then(ways).map(|(ways, _)| ways).unwrap_or_default()
}

fn standing(conditions: &Conditions) -> Start {
    Start::Standing { launch: conditions.pull.run.launch.value }
}

/// From one speed to another, in the gear chosen and up from there, or in top gear.
fn rolling(
    vehicle: &Vehicle,
    conditions: &Conditions,
    (from, to, gear): (Velocity, Velocity, Option<GearNumber>),
) -> Result<Way, MotionError> {
    if from >= to {
        return Err(MotionError::NotRising);
    }
    let gear = gear.map_or_else(|| tallest_usable(vehicle, from), Ok)?;
    let run = &conditions.pull.run;
    let mut ways = run.shifting.ways(vehicle, Start::Rolling { gear, speed: from }, run.shift_time.value, &[Goal::Speed(to)])?;
    ways.pop().ok_or(MotionError::NoGears)
}

/// Top gear, or the tallest below it that turns the engine as fast as its curve begins.
fn tallest_usable(vehicle: &Vehicle, speed: Velocity) -> Result<GearNumber, MotionError> {
    let gears = vehicle.pull().gears();
    let usable = gears.iter().rev().find(|gear| gear.slowest <= speed && speed < gear.fastest).map(|gear| gear.gear);
    let within_limit = gears.iter().any(|gear| speed < gear.fastest);
    usable.ok_or(if within_limit { MotionError::TooSlowForAll } else { MotionError::TooFastForAll })
}

/// The standing start of the facts with a trace, for the pictures alone.
pub fn traced(pull: &Pull, facts: &Facts, conditions: &Conditions) -> Option<Run> {
    let vehicle = pull.vehicle.as_ref()?;
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

/// The run of a plan, moment by moment, as far as it was planned.
pub fn followed(pull: &Pull, plan: &Plan) -> Option<Run> {
    let course = Course {
        start: plan.start,
        shifts: plan.shifts.clone(),
        shift_time: plan.shift_time,
        speeds: Vec::new(),
        distances: vec![plan.reached.distance],
        band: None,
        trace_step: Some(metres_per_second(TRACE_M_PER_S)),
    };
    run::run(pull.vehicle.as_ref()?, &course).ok()
}
