//! A run to several goals, and what was done on the way to each.

use crate::gearing::GearNumber;
use crate::motion::error::MotionError;
use crate::motion::run::{Course, LegKind, Moment, Run, Start, Stopped, run};
use crate::motion::shift::Shift;
use crate::motion::vehicle::Vehicle;
use crate::units::{Length, Time, Velocity};

use super::{Goal, Held};

/// One run to several goals.
pub(super) struct Ways {
    shifts: Vec<Shift>,
    reached: Vec<Option<Moment>>,
    run: Run,
}

impl Ways {
    /// Runs with shifts until every goal is reached, or none can be any more.
    pub(super) fn run(vehicle: &Vehicle, start: Start, shift_time: Time, goals: &[Goal], shifts: Vec<Shift>) -> Result<Self, MotionError> {
        let speeds: Vec<Velocity> = goals.iter().filter_map(Goal::speed).collect();
        let distances: Vec<Length> = goals.iter().filter_map(Goal::distance).collect();
        let course = Course { start, shifts, shift_time, speeds, distances, band: None, trace_step: None };
        let run = run(vehicle, &course)?;
        let (mut speeds, mut distances) = (run.to_speed.iter(), run.over_distance.iter());
        let next = |goal: &Goal| match goal {
            Goal::Speed(_) => speeds.next().copied().flatten(),
            Goal::Distance(_) => distances.next().copied().flatten(),
        };
        let reached = goals.iter().map(next).collect();
        Ok(Self { shifts: course.shifts, reached, run })
    }

    /// The shifts that were at hand, made or not.
    pub(super) fn shifts(&self) -> &[Shift] {
        &self.shifts
    }

    /// When each goal is reached, in their order.
    pub(super) fn reached(&self) -> &[Option<Moment>] {
        &self.reached
    }

    /// Why the run stopped.
    pub(super) fn stopped(&self) -> Stopped {
        self.run.stopped
    }

    /// The gears that were driven in before a moment.
    pub(super) fn gears(&self, until: &Moment) -> Vec<GearNumber> {
        let mut gears: Vec<GearNumber> = self.legs(until).map(|(gear, _)| gear).collect();
        gears.dedup();
        gears
    }

    /// Each gear that was used before a moment and how far it was held.
    pub(super) fn held(&self, vehicle: &Vehicle, until: &Moment) -> Vec<Held> {
        let mut held: Vec<Held> = Vec::new();
        for (gear, speed) in self.legs(until) {
            let Some(to) = vehicle.pull().gear(gear).map(|pull| pull.engine_speed(speed)) else { continue };
            match held.last_mut() {
                Some(last) if last.gear == gear => last.to = to,
                last => {
                    if let Some(last) = last {
                        last.next = Some(gear);
                    }
                    held.push(Held { gear, to, next: None });
                }
            }
        }
        held
    }

    /// The legs in gear before a moment: the gear and the speed at the end of each.
    fn legs(&self, until: &Moment) -> impl Iterator<Item = (GearNumber, Velocity)> + '_ {
        let until = *until;
        let before = self.run.legs.iter().filter(move |leg| leg.kind != LegKind::Shift && leg.from.time < until.time);
        before.map(move |leg| (leg.gear, if leg.to.time > until.time { until.speed } else { leg.to.speed }))
    }
}
