//! Close or wide: the facts that settle it, setup beside setup, as data.
//!
//! What is read out on the phone is made of these figures elsewhere; nothing here judges.

use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Energy, Force, Time, Velocity};

use super::cruise::{self, Cruise};
use super::curve::Band;
use super::grade::{self, Steepest};
use super::in_rpm;
use super::plan::{Goal, Ground, Shifting, Way};
use super::run::{Course, Moment, Run, Start, run};
use super::shift::Shift;
use super::top_speed::{self, TopSpeed};
use super::vehicle::Vehicle;

/// What the setups are compared by.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// Engine speed held at the launch.
    pub launch: AngularVelocity,
    /// How the upshifts are chosen.
    pub shifting: Shifting,
    /// Time without thrust in each shift.
    pub shift_time: Time,
    /// Speeds whose time is asked for.
    pub speeds: Vec<Velocity>,
    /// Steady speed of a cruise, where one is asked for.
    pub cruise: Option<Velocity>,
    /// Power of at least this share (0 to 1) of its peak is the power band.
    pub band_share: f64,
}

/// Where an upshift lands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// Inside the power band.
    Inside,
    /// Below it, by so much.
    Below(AngularVelocity),
    /// Above it, by so much.
    Above(AngularVelocity),
}

/// One upshift and where it lands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landing {
    /// The upshift.
    pub shift: Shift,
    /// Where it lands.
    pub place: Place,
    /// Power after the shift over peak power; `None` where it lands off the curve.
    pub power_share: Option<f64>,
}

/// The facts of one setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Facts {
    /// First gear times everything behind the box.
    pub first_overall: f64,
    /// Thrust at the launch, held to what the tyres pass.
    pub launch_thrust: Force,
    /// The steepest grade first gear starts on.
    pub start: Steepest,
    /// When the clutch locks at the launch.
    pub lock_up: Option<Moment>,
    /// Heat in the clutch until then.
    pub clutch_energy: Option<Energy>,
    /// The power band.
    pub band: Band,
    /// Every upshift, judged on its own, and where it lands.
    pub landings: Vec<Landing>,
    /// The way to each speed asked for, or why it is out of reach.
    pub to_speed: Vec<Way>,
    /// Share of the run's time inside the power band.
    pub in_band: Option<f64>,
    /// The cruise in the tallest gear that holds it.
    pub cruise: Option<Cruise>,
    /// The highest of all gears; `None` where none holds any speed.
    pub top: Option<TopSpeed>,
    /// The whole run to the greatest speed asked for, as planned for the greatest that is reached.
    pub run: Option<Run>,
}

impl Facts {
    /// When a speed asked for is reached, by its place counted from 0.
    pub fn reached(&self, at: usize) -> Option<Moment> {
        Some(self.to_speed.get(at)?.as_ref().ok()?.reached)
    }
}

/// How one setup differs from the first: its figure less the first's.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// First overall ratio, as a share of the first setup's.
    pub first_overall_share: f64,
    /// Clutch heat of a start, as a share of the first setup's.
    pub clutch_energy_share: Option<f64>,
    /// Steepest grade started on (rise over run).
    pub start_grade: f64,
    /// Upshifts that land inside the power band: how many more.
    pub landings_inside: i32,
    /// Share of the run's time inside the power band.
    pub in_band: Option<f64>,
    /// Time to each speed asked for.
    pub to_speed: Vec<Option<Time>>,
    /// Engine speed at the cruise, from the two setups' tallest gears that hold it (rpm).
    pub cruise_rpm: Option<f64>,
    /// Top speed.
    pub top: Option<Velocity>,
}

/// The facts of one setup; `None` without a first gear.
pub fn facts(vehicle: &Vehicle, question: &Question) -> Option<Facts> {
    facts_and_ground(vehicle, question).map(|(facts, _)| facts)
}

/// The same, with the ground that was gone over for it: other plans of the vehicle are found sooner on it.
pub fn facts_and_ground(vehicle: &Vehicle, question: &Question) -> Option<(Facts, Ground)> {
    let first = vehicle.pull().gear(GearNumber::FIRST)?;
    let start = grade::started(vehicle, GearNumber::FIRST, question.launch)?;
    let band = vehicle.pull().band(question.band_share);
    let ground = Ground::new(vehicle, question.shifting.rule());
    let shifts = ground.shifts(vehicle, question.shifting.rule());
    let start_of_run = Start::Standing { launch: question.launch };
    let goals: Vec<Goal> = question.speeds.iter().copied().map(Goal::Speed).collect();
    let ways = question.shifting.ways_on(&ground, vehicle, start_of_run, question.shift_time, &goals);
    let (to_speed, ground) = ways.unwrap_or((Vec::new(), ground));
    let run = run_of(vehicle, question, to_the_last(vehicle, &to_speed, &shifts), band);
    let lock_up = run.as_ref().and_then(Run::lock_up);
    let slip = run.as_ref().and_then(|run| run.legs.first()).map(|leg| leg.work.clutch);
    let facts = Facts {
        first_overall: first.overall,
        launch_thrust: start.net.min(vehicle.grip_limit()),
        start,
        lock_up,
        clutch_energy: slip.filter(|_| lock_up.is_some()),
        band,
        landings: shifts.into_iter().map(|shift| landing(vehicle, shift, band)).collect(),
        to_speed,
        in_band: run.as_ref().and_then(Run::band_share),
        cruise: question.cruise.and_then(|speed| cruise::tallest_that_holds(vehicle, speed)),
        top: top_speed::best(vehicle),
        run,
    };
    Some((facts, ground))
}

/// How one setup differs from another.
pub fn difference(first: &Facts, other: &Facts) -> Difference {
    let inside = |facts: &Facts| facts.landings.iter().filter(|landing| landing.place == Place::Inside).fold(0_i32, |count, _| count + 1);
    let energy = |facts: &Facts| facts.clutch_energy.map(|energy| energy.get::<uom::si::energy::joule>());
    let less = |at: usize| Some(other.reached(at)?.time - first.reached(at)?.time);
    Difference {
        first_overall_share: other.first_overall / first.first_overall - 1.0,
        clutch_energy_share: energy(other).zip(energy(first)).map(|(other, first)| other / first - 1.0),
        start_grade: other.start.grade - first.start.grade,
        landings_inside: inside(other) - inside(first),
        in_band: other.in_band.zip(first.in_band).map(|(other, first)| other - first),
        to_speed: (0..first.to_speed.len().min(other.to_speed.len())).map(less).collect(),
        cruise_rpm: other.cruise.zip(first.cruise).map(|(other, first)| in_rpm(other.engine) - in_rpm(first.engine)),
        top: other.top.zip(first.top).map(|(other, first)| other.speed - first.speed),
    }
}

/// The shifts of the run to the greatest speed that is reached, and those of what comes after it.
pub fn to_the_last(vehicle: &Vehicle, to_speed: &[Way], one_by_one: &[Shift]) -> Vec<Shift> {
    let reached = to_speed.iter().filter_map(|way| way.as_ref().ok());
    let last = reached.reduce(|last, next| if next.reached.speed > last.reached.speed { next } else { last });
    last.map_or_else(|| one_by_one.to_vec(), |plan| plan.going_on(vehicle, one_by_one))
}

fn run_of(vehicle: &Vehicle, question: &Question, shifts: Vec<Shift>, band: Band) -> Option<Run> {
    let course = Course {
        start: Start::Standing { launch: question.launch },
        shifts,
        shift_time: question.shift_time,
        speeds: question.speeds.clone(),
        distances: Vec::new(),
        band: Some(band),
        trace_step: None,
    };
    run(vehicle, &course).ok()
}

fn landing(vehicle: &Vehicle, shift: Shift, band: Band) -> Landing {
    let curve = vehicle.pull().curve();
    let place = if shift.after < band.from {
        Place::Below(band.from - shift.after)
    } else if shift.after > band.to {
        Place::Above(shift.after - band.to)
    } else {
        Place::Inside
    };
    let power_share = curve.power(shift.after).map(|power| (power / vehicle.pull().peak_power().power).get::<uom::si::ratio::ratio>());
    Landing { shift, place, power_share }
}
