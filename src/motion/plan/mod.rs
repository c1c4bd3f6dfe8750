//! When to shift for one goal: all upshifts of a run chosen together, for a speed to be reached or a distance to be covered.
//!
//! Judged one by one ([`super::shift`]), an upshift comes where the next gear would accelerate as well. A run has more to weigh: each
//! shift costs time without thrust, so the last one before the goal may not pay, nor a gear that is soon left again; and while the
//! tyres hold back two gears alike the taller one, with less mass turning, is already the quicker one.
//!
//! Model: the run's own ([`super::run`]), with the shift speeds free and gears skipped where that is quicker; full throttle throughout,
//! never a downshift. The time to a speed is a sum over gears of ∫m/(F − R)dv and shifts, so the best rest of the run from each gear
//! and speed follows from those above it (dynamic programming over a grid of speeds, R. Bellman, 1957), worked once on a coarse grid and
//! again on one that is fine about the shifts found. To a distance the same is done with w, the speed at which it is covered, given:
//! least is then ∫(1 − v/w)dt, since near the goal a metre is worth 1/w; w is the run's own after a few rounds.
//! The plan is then run like any other and set against the shifts judged one by one: its time is never the longer one.

mod grid;
mod search;

use uom::si::length::meter;

use super::error::MotionError;
use super::run::{Course, LegKind, Moment, Run, Start, Stopped, run};
use super::shift::{self, Reason, Rule, Shift};
use super::vehicle::Vehicle;
use super::{in_metres_per_second, metres_per_second};
use crate::units::{AngularVelocity, Length, Time, Velocity};
use grid::Grid;
use search::{Found, Wanted};

/// What a run is to reach in the least time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Goal {
    /// This road speed.
    Speed(Velocity),
    /// This distance from the start.
    Distance(Length),
}

/// How long a gear of a plan is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// The gear, counted from 1.
    pub gear: usize,
    /// Engine speed at the end of it.
    pub to: AngularVelocity,
    /// The gear taken then; `None` in the gear that comes to the goal.
    pub next: Option<usize>,
}

/// The quickest way found to a goal.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What is reached.
    pub goal: Goal,
    /// How the run begins.
    pub start: Start,
    /// Time without thrust in each shift.
    pub shift_time: Time,
    /// The upshifts made on the way; [`Course::shifts`] takes them as they are.
    pub shifts: Vec<Shift>,
    /// Each gear that is used, in order.
    pub held: Vec<Held>,
    /// When the goal is reached.
    pub reached: Moment,
    /// When it is reached by shifts judged one by one; `None` where they do not get there.
    pub one_by_one: Option<Moment>,
    /// Shifts that those make before the goal, into a gear this plan does without.
    pub left_out: Vec<Shift>,
}

impl Plan {
    /// What the plan gains over shifts judged one by one.
    pub fn gain(&self) -> Option<Time> {
        Some(self.one_by_one?.time - self.reached.time)
    }

    /// What shifting so much earlier each time costs; `None` without a shift, or where the goal is then out of reach.
    pub fn cost_of_early(&self, vehicle: &Vehicle, by: AngularVelocity) -> Option<Time> {
        let gears = vehicle.pull();
        let earlier = self.shifts.iter().filter_map(|shift| {
            let (lower, upper) = (gears.gear(shift.from)?, gears.gear(shift.to)?);
            let speed = lower.road_speed(shift.before - by).max(Velocity::default());
            Some(shift::at_road_speed(lower, upper, in_metres_per_second(speed), Reason::Chosen))
        });
        let shifts: Vec<Shift> = earlier.collect();
        let late = (!shifts.is_empty()).then(|| reach(vehicle, self.goal, &course(self.start, self.shift_time, self.goal, shifts)))?;
        Some(late.ok()?.0?.time - self.reached.time)
    }
}

/// The quickest plan for each goal, or why the run stops short of it.
///
/// # Errors
/// As [`run`]: when a rolling start asks for a gear that does not exist or that turns the engine past its limit.
pub fn plans(vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal]) -> Result<Vec<Result<Plan, Stopped>>, MotionError> {
    let one_by_one = shift::shifts(vehicle, Rule::EqualAcceleration);
    let found = searched(vehicle, start, shift_time, goals);
    let plan = |(goal, found): (&Goal, Option<Found>)| {
        let usual = reach(vehicle, *goal, &course(start, shift_time, *goal, one_by_one.clone()))?;
        let planned = found.map(|found| shifts_of(vehicle, &found)).map(|shifts| course(start, shift_time, *goal, shifts));
        let planned = planned.map(|course| reach(vehicle, *goal, &course).map(|(moment, run)| (moment, run, course.shifts))).transpose()?;
        let usual_time = usual.0;
        let better = planned.filter(|(moment, ..)| moment.is_some_and(|moment| usual_time.is_none_or(|usual| moment.time <= usual.time)));
        let (reached, run, shifts) = match better {
            Some(better) => better,
            None => (usual.0, usual.1.clone(), one_by_one.clone()),
        };
        let Some(reached) = reached else { return Ok(Err(usual.1.stopped)) };
        let held = held(vehicle, &run);
        let shifts: Vec<Shift> = shifts.into_iter().filter(|shift| held.iter().any(|held| held.next == Some(shift.to))).collect();
        let left_out = if usual_time.is_some() { left_out(&usual.1, &one_by_one, &held) } else { Vec::new() };
        Ok(Ok(Plan { goal: *goal, start, shift_time, shifts, held, reached, one_by_one: usual_time, left_out }))
    };
    goals.iter().zip(found).map(plan).collect()
}

/// The best way to each goal on a coarse grid, then on one that is fine about the shifts found.
fn searched(vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal]) -> Vec<Option<Found>> {
    let wanted: Vec<Wanted> = goals.iter().map(|goal| wanted(*goal)).collect();
    let speeds: Vec<f64> = wanted.iter().filter_map(Wanted::speed).collect();
    let coarse = Grid::lay(vehicle, start, shift_time, &speeds);
    let first: Vec<Option<Found>> = wanted.iter().map(|wanted| search::best(&coarse, *wanted, None)).collect();
    let closer = first.iter().flatten().flat_map(|found| coarse.around(found));
    let fine = Grid::lay(vehicle, start, shift_time, &speeds.iter().copied().chain(closer).collect::<Vec<_>>());
    wanted.iter().zip(&first).map(|(wanted, first)| search::best(&fine, *wanted, first.as_ref())).collect()
}

fn wanted(goal: Goal) -> Wanted {
    match goal {
        Goal::Speed(speed) => Wanted::Speed(in_metres_per_second(speed)),
        Goal::Distance(distance) => Wanted::Distance(distance.get::<meter>()),
    }
}

fn shifts_of(vehicle: &Vehicle, found: &Found) -> Vec<Shift> {
    let made = found.shifts.iter().filter_map(|shift| {
        let (lower, upper) = (vehicle.pull().gear(shift.from)?, vehicle.pull().gear(shift.to)?);
        let reason = if metres_per_second(shift.speed) < lower.fastest { Reason::Chosen } else { Reason::Limit };
        Some(shift::at_road_speed(lower, upper, shift.speed, reason))
    });
    made.collect()
}

fn course(start: Start, shift_time: Time, goal: Goal, shifts: Vec<Shift>) -> Course {
    let (speeds, distances) = match goal {
        Goal::Speed(speed) => (vec![speed], Vec::new()),
        Goal::Distance(distance) => (Vec::new(), vec![distance]),
    };
    Course { start, shifts, shift_time, speeds, distances, band: None, trace_step: None }
}

/// Runs to the goal: when it is reached, and the run.
fn reach(vehicle: &Vehicle, goal: Goal, course: &Course) -> Result<(Option<Moment>, Run), MotionError> {
    let run = run(vehicle, course)?;
    let met = match goal {
        Goal::Speed(_) => run.to_speed.first(),
        Goal::Distance(_) => run.over_distance.first(),
    };
    Ok((met.copied().flatten(), run))
}

/// Each gear a run used and how far it was held.
fn held(vehicle: &Vehicle, run: &Run) -> Vec<Held> {
    let mut held: Vec<Held> = Vec::new();
    for leg in run.legs.iter().filter(|leg| leg.kind != LegKind::Shift) {
        let Some(gear) = vehicle.pull().gear(leg.gear) else { continue };
        let to = gear.engine_speed(leg.to.speed);
        match held.last_mut() {
            Some(last) if last.gear == leg.gear => last.to = to,
            last => {
                if let Some(last) = last {
                    last.next = Some(leg.gear);
                }
                held.push(Held { gear: leg.gear, to, next: None });
            }
        }
    }
    held
}

/// The shifts a run made into gears that are not held.
fn left_out(run: &Run, shifts: &[Shift], held: &[Held]) -> Vec<Shift> {
    let used = |gear: usize| run.legs.iter().any(|leg| leg.gear == gear && leg.kind != LegKind::Shift);
    let missed = |shift: &&Shift| used(shift.to) && held.iter().all(|held| held.gear != shift.to);
    shifts.iter().filter(missed).copied().collect()
}
