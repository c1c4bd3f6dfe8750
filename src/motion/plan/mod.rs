//! When to shift for one goal: all upshifts of a run chosen together, for a speed to be reached or a distance to be covered.
//!
//! Judged one by one ([`super::shift`]), an upshift comes where the next gear would accelerate as well. A run has more to weigh: each
//! shift costs time without thrust, so the last one before the goal may not pay, nor a gear that is soon left again; and a shift made
//! while the tyres hold back both gears alike only costs its time.
//!
//! Model: the run's own ([`super::run`]), with the shift speeds free and gears skipped where that is quicker; full throttle throughout,
//! never a downshift, and no shift before the clutch has closed at the launch or into a gear that turns the engine slower than its curve
//! begins. The time to a speed is a sum over gears of ∫m/(F − R)dv and shifts, so the best rest of the run from each gear
//! and speed follows from those above it (dynamic programming over a grid of speeds, R. Bellman, 1957), worked once on a coarse grid and
//! again on one that is fine about the shifts found. To a distance the same is done with w, the speed at which it is covered, given:
//! least is then ∫(1 − v/w)dt, since near the goal a metre is worth 1/w; w is the run's own after a few rounds.
//! The plan is then run like any other and set against the shifts judged one by one: its time is never the longer one.

mod geared;
mod grid;
mod ground;
mod search;
mod way;

use std::sync::Arc;

use uom::si::length::meter;

use super::error::MotionError;
use super::run::{Moment, Start, Stopped};
use super::shift::{self, Reason, Rule, Shift};
use super::vehicle::Vehicle;
use super::{in_metres_per_second, metres_per_second};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Length, Time, Velocity};
use grid::Grid;
pub use ground::Ground;
use search::{Found, Kept, Wanted};
use way::Ways;

/// What a run is to reach in the least time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Goal {
    /// This road speed.
    Speed(Velocity),
    /// This distance from the start.
    Distance(Length),
}

impl Goal {
    fn speed(&self) -> Option<Velocity> {
        if let Self::Speed(speed) = self { Some(*speed) } else { None }
    }

    fn distance(&self) -> Option<Length> {
        if let Self::Distance(distance) = self { Some(*distance) } else { None }
    }
}

/// How long a gear of a plan is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// The gear.
    pub gear: GearNumber,
    /// Engine speed at the end of it.
    pub to: AngularVelocity,
    /// The gear taken then; `None` in the gear that comes to the goal.
    pub next: Option<GearNumber>,
}

/// The way to a goal: the quickest found, or by a rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What is reached.
    pub goal: Goal,
    /// How the run begins.
    pub start: Start,
    /// Time without thrust in each shift.
    pub shift_time: Time,
    /// The upshifts made on the way; [`crate::motion::run::Course::shifts`] takes them as they are.
    pub shifts: Vec<Shift>,
    /// Each gear that is used, in order.
    pub held: Vec<Held>,
    /// When the goal is reached.
    pub reached: Moment,
    /// When it is reached by shifts judged one by one; `None` where they do not get there, or where these are they.
    pub one_by_one: Option<Moment>,
    /// Shifts that those make before the goal, into a gear this plan does without.
    pub left_out: Vec<Shift>,
}

impl Plan {
    /// What the plan gains over shifts judged one by one.
    pub fn gain(&self) -> Option<Time> {
        Some(self.one_by_one?.time - self.reached.time)
    }

    /// The shifts of a run that goes on past the goal: the plan's, then those judged one by one, none before the goal.
    pub fn going_on(&self, vehicle: &Vehicle, one_by_one: &[Shift]) -> Vec<Shift> {
        let last = self.held.last().map(|held| held.gear);
        let later = one_by_one.iter().filter(|shift| Some(shift.from) >= last).filter_map(|shift| {
            let (lower, upper) = (vehicle.pull().gear(shift.from)?, vehicle.pull().gear(shift.to)?);
            let behind = shift.speed >= self.reached.speed;
            let held_on = || shift::at_road_speed(lower, upper, in_metres_per_second(self.reached.speed), Reason::Chosen);
            Some(if behind { *shift } else { held_on() })
        });
        self.shifts.iter().copied().chain(later).collect()
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
        let late = (!shifts.is_empty()).then(|| Ways::run(vehicle, self.start, self.shift_time, &[self.goal], shifts))?.ok()?;
        Some(late.reached().first().copied().flatten()?.time - self.reached.time)
    }
}

/// The way to a goal, or why the run stops short of it.
pub type Way = Result<Plan, Stopped>;

/// How the upshifts of a run are chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Shifting {
    /// All together, for the goal.
    #[default]
    Planned,
    /// One by one, by a rule.
    By(Rule),
}

impl Shifting {
    /// The rule by which each upshift is judged on its own.
    pub fn rule(self) -> Rule {
        match self {
            Self::Planned => Rule::EqualAcceleration,
            Self::By(rule) => rule,
        }
    }

    /// The way to each goal, or why the run stops short of it. Shifts by a rule are set against nothing.
    ///
    /// # Errors
    /// As [`super::run::run()`]: when a rolling start asks for a gear that does not exist or that turns the engine past its limit.
    pub fn ways(self, vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal]) -> Result<Vec<Way>, MotionError> {
        self.ways_on(&Ground::default(), vehicle, start, shift_time, goals).map(|(ways, _)| ways)
    }

    /// The same, sooner where the vehicle's ground was gone over before for other goals; and the ground as it is known then.
    ///
    /// # Errors
    /// As [`Self::ways`].
    pub fn ways_on(
        self,
        ground: &Ground,
        vehicle: &Vehicle,
        start: Start,
        shift_time: Time,
        goals: &[Goal],
    ) -> Result<(Vec<Way>, Ground), MotionError> {
        let Self::By(rule) = self else { return plans_on(ground, vehicle, start, shift_time, goals) };
        let shifts = ground.shifts(vehicle, rule);
        let ways = Ways::run(vehicle, start, shift_time, goals, shifts.clone())?;
        let way = |(goal, reached): (&Goal, Option<Moment>)| {
            let reached = reached.ok_or(ways.stopped())?;
            Ok(plan_of(*goal, start, shift_time, (&shifts, reached, ways.held(vehicle, &reached))))
        };
        Ok((goals.iter().zip(ways.reached().iter().copied()).map(way).collect(), ground.clone()))
    }
}

/// A time to a goal that is soon worked out, for ranking many cars: shifts judged one by one, the last of them left out where that is
/// quicker. A plan may gain some hundredths of a second on it. `None` where the goal is out of reach.
pub fn ranked(vehicle: &Vehicle, start: Start, shift_time: Time, shifting: Shifting, goal: Goal) -> Option<Time> {
    let shifts = shift::shifts(vehicle, shifting.rule());
    let usual = Ways::run(vehicle, start, shift_time, &[goal], shifts.clone()).ok()?;
    let reached = usual.reached().first().copied().flatten()?;
    let last = usual.held(vehicle, &reached).last().map(|held| held.gear);
    let spared: Vec<Shift> = shifts.iter().filter(|shift| Some(shift.to) != last).copied().collect();
    if shifting != Shifting::Planned || spared.len() == shifts.len() {
        return Some(reached.time);
    }
    let held_on = Ways::run(vehicle, start, shift_time, &[goal], spared).ok();
    let held_on = held_on.and_then(|ways| ways.reached().first().copied().flatten());
    Some(held_on.map_or(reached.time, |held_on| reached.time.min(held_on.time)))
}

/// The quickest plan for each goal, or why the run stops short of it.
///
/// # Errors
/// As [`super::run::run()`]: when a rolling start asks for a gear that does not exist or that turns the engine past its limit.
pub fn plans(vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal]) -> Result<Vec<Way>, MotionError> {
    plans_on(&Ground::default(), vehicle, start, shift_time, goals).map(|(plans, _)| plans)
}

fn plans_on(ground: &Ground, vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal]) -> Result<(Vec<Way>, Ground), MotionError> {
    let one_by_one = ground.shifts(vehicle, Rule::EqualAcceleration);
    let usual = Ways::run(vehicle, start, shift_time, goals, one_by_one.clone())?;
    let (found, ground) = searched(ground, vehicle, start, shift_time, goals);
    let plan = |((goal, found), usual_at): ((&Goal, Option<Found>), Option<Moment>)| {
        let shifts = found.map(|found| shifts_of(vehicle, &found));
        let planned = shifts.map(|shifts| Ways::run(vehicle, start, shift_time, &[*goal], shifts)).transpose()?;
        let planned = planned.and_then(|ways| Some((ways.reached().first().copied().flatten()?, ways)));
        let better = planned.filter(|(at, _)| usual_at.is_none_or(|usual| at.time <= usual.time));
        let (reached, ways) = match (&better, usual_at) {
            (Some((at, ways)), _) => (*at, ways),
            (None, Some(at)) => (at, &usual),
            (None, None) => return Ok(Err(usual.stopped())),
        };
        let plan = plan_of(*goal, start, shift_time, (ways.shifts(), reached, ways.held(vehicle, &reached)));
        let left_out = usual_at.map_or_else(Vec::new, |at| left_out(&usual.gears(&at), &one_by_one, &plan.held));
        Ok(Ok(Plan { one_by_one: usual_at, left_out, ..plan }))
    };
    let plans = goals.iter().zip(found).zip(usual.reached().iter().copied()).map(plan).collect::<Result<_, MotionError>>()?;
    Ok((plans, ground))
}

/// A plan by what was run: the shifts it had at hand, when the goal is reached, and the gears held until then.
fn plan_of(goal: Goal, start: Start, shift_time: Time, (shifts, reached, held): (&[Shift], Moment, Vec<Held>)) -> Plan {
    let made = |shift: &&Shift| held.iter().any(|held| held.gear == shift.from && held.next == Some(shift.to));
    let shifts = shifts.iter().filter(made).copied().collect();
    Plan { goal, start, shift_time, shifts, held, reached, one_by_one: None, left_out: Vec::new() }
}

/// The best way to each goal on a coarse grid, then on one that is fine about the shifts found.
fn searched(ground: &Ground, vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal]) -> (Vec<Option<Found>>, Ground) {
    let wanted: Vec<Wanted> = goals.iter().map(|goal| wanted(*goal)).collect();
    let mut speeds: Vec<f64> = wanted.iter().filter_map(Wanted::speed).collect();
    let mut coarse = Grid::lay(vehicle, start, shift_time, &speeds, ground.known(start, shift_time));
    let mut kept = Kept::default();
    let first: Vec<Option<Found>> = wanted.iter().map(|wanted| search::best(&mut coarse, &mut kept, *wanted, None)).collect();
    speeds.extend(first.iter().flatten().flat_map(|found| coarse.around(found)));
    let (known, mut kept) = (Arc::new(coarse.known()), Kept::default());
    let mut fine = Grid::lay(vehicle, start, shift_time, &speeds, Some(&known));
    let found = wanted.iter().zip(&first).map(|(wanted, first)| search::best(&mut fine, &mut kept, *wanted, first.as_ref())).collect();
    (found, ground.clone().knowing(start, shift_time, known))
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

/// The shifts made on the way into gears that a plan does not hold.
fn left_out(gears: &[GearNumber], shifts: &[Shift], held: &[Held]) -> Vec<Shift> {
    let missed = |shift: &&Shift| gears.contains(&shift.to) && held.iter().all(|held| held.gear != shift.to);
    shifts.iter().filter(missed).copied().collect()
}
