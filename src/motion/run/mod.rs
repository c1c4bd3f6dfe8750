//! A run at full throttle: from a standstill with a clutch launch or rolling in a gear, up through the gears.
//!
//! Model: t = ∫m/(F − R) dv and s = ∫m·v/(F − R) dv, gear by gear, m with the turning parts of that gear. At the launch the engine is
//! held at one speed, the clutch passes its full torque there (or what the tyres hold, where that is less), and the engine's own inertia
//! does not count until lock-up. Below the first rpm of the curve the clutch slips at that rpm in any gear. During a shift
//! thrust is nothing and the car coasts for the shift time, then the next gear takes hold at once. No more than the tyres hold comes to
//! the road; at that limit the torque they do not pass speeds up what turns, and m is the car's mass with its wheels alone. The integrals are split at every kink (points of the curve, grip, lock-up, shift, power band, goals); where thrust runs out,
//! panels shrink towards the balance speed and the car then holds it.
//! Source: every text on vehicle dynamics (Gillespie ch. 2); checked against an independent integration in time.

pub(super) mod coasting;
mod ledger;
mod walk;

use crate::gearing::GearNumber;
use crate::motion::error::MotionError;
use crate::motion::shift::Shift;
use crate::motion::vehicle::Vehicle;
use crate::motion::{Band, in_metres_per_second, in_rpm};
use crate::units::common::metres;
use crate::units::{AngularVelocity, Energy, Length, Time, Velocity};
use walk::Walk;

/// How a run begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Start {
    /// At rest in first, the engine held at this speed until the clutch locks.
    Standing {
        /// The engine speed held.
        launch: AngularVelocity,
    },
    /// Rolling with the clutch closed.
    Rolling {
        /// The gear.
        gear: GearNumber,
        /// The speed at which full throttle is given.
        speed: Velocity,
    },
}

/// What is to be run.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// How it begins.
    pub start: Start,
    /// The upshifts, as [`crate::motion::shift::shifts`] gives them; without one for its gear the car stays in that gear.
    pub shifts: Vec<Shift>,
    /// Time without thrust in each shift.
    pub shift_time: Time,
    /// Speeds whose time and distance are asked for.
    pub speeds: Vec<Velocity>,
    /// Distances whose time and speed are asked for.
    pub distances: Vec<Length>,
    /// Engine speeds that count as the power band.
    pub band: Option<Band>,
    /// Speed between two points of the trace; no trace where `None`.
    pub trace_step: Option<Velocity>,
}

/// A moment of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Time since the start.
    pub time: Time,
    /// Road speed.
    pub speed: Velocity,
    /// Distance since the start.
    pub distance: Length,
    /// The gear; during a shift the one left.
    pub gear: GearNumber,
}

/// What a leg of a run is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LegKind {
    /// The clutch slips.
    Slip,
    /// The clutch is closed.
    Drive,
    /// Between two gears.
    Shift,
    /// At the speed where thrust equals road load, or at the rev limit.
    Hold,
}

/// Where the energy of a leg went; thrust = drag + steady + kinetic.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Work {
    /// Work of the thrust at the wheels.
    pub thrust: Energy,
    /// Lost to the air.
    pub drag: Energy,
    /// Lost to rolling resistance and put into climbing.
    pub steady: Energy,
    /// Gained as motion, turning parts included.
    pub kinetic: Energy,
    /// Heat in the slipping clutch; not part of the thrust's work.
    pub clutch: Energy,
}

/// One leg of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// What clutch and gear lever do meanwhile.
    pub kind: LegKind,
    /// The gear; for a shift the one left.
    pub gear: GearNumber,
    /// Its beginning.
    pub from: Moment,
    /// Its end.
    pub to: Moment,
    /// Time of it with the engine inside the power band.
    pub in_band: Time,
    /// Time of it limited by grip.
    pub on_grip: Time,
    /// Its energies.
    pub work: Work,
}

/// Why a run stopped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stopped {
    /// Everything asked for was reached.
    Finished,
    /// Thrust equals road load: speeds above are out of reach.
    Balance {
        /// The gear.
        gear: GearNumber,
    },
    /// At the rev limit, and no taller gear pulls.
    RevLimit {
        /// The gear.
        gear: GearNumber,
    },
    /// The car does not move, or not forward any more; the error says with which forces.
    TooWeak(MotionError),
    /// Thrust equals road load before the clutch locks.
    ClutchNeverLocks {
        /// The gear.
        gear: GearNumber,
    },
}

/// That the figures are good.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// Panels integrated.
    pub panels: u32,
    /// Whether every panel met its tolerance.
    pub converged: bool,
    /// Sum of the estimated errors of the time.
    pub time_error: Time,
}

/// A run from its start to its end, leg by leg.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Its legs, in order.
    pub legs: Vec<Leg>,
    /// When each speed asked for was first reached, in the order asked; `None` where it never was.
    pub to_speed: Vec<Option<Moment>>,
    /// When each distance asked for was covered, in the order asked; `None` where it never was.
    pub over_distance: Vec<Option<Moment>>,
    /// Why it stopped.
    pub stopped: Stopped,
    /// What wants attention though the figures stand.
    pub caution: Option<MotionError>,
    /// Points for a picture; empty unless asked for.
    pub trace: Vec<Moment>,
    /// That the figures are good.
    pub evidence: Evidence,
}

/// What two runs to the same distance may differ by in its last digits.
const ROUNDING_M: f64 = 1e-3;

impl Run {
    /// How long it took in all.
    pub fn time(&self) -> Time {
        self.legs.last().map_or_else(Time::default, |leg| leg.to.time)
    }

    /// The points of its picture and its end; nothing where no points were asked for.
    pub fn moments(&self) -> impl Iterator<Item = Moment> {
        let end = self.legs.last().map(|leg| leg.to).filter(|end| self.trace.last().is_some_and(|last| last.time < end.time));
        self.trace.iter().copied().chain(end)
    }

    /// When a distance was covered, between its [`moments`](Self::moments); `None` past its end.
    pub fn time_at(&self, distance: Length) -> Option<Time> {
        let mut from = self.moments().next()?;
        for to in self.moments() {
            if to.distance + metres(ROUNDING_M) >= distance {
                let way = to.distance - from.distance;
                let share = if way > Length::default() { ((distance - from.distance) / way).value } else { 1.0 };
                return Some(from.time + (to.time - from.time) * share);
            }
            from = to;
        }
        None
    }

    /// Share of the run's time with the engine inside the power band, shifts counted as outside; `None` for a run without time.
    pub fn band_share(&self) -> Option<f64> {
        let inside: Time = self.legs.iter().fold(Time::default(), |sum, leg| sum + leg.in_band);
        let share = (inside / self.time()).get::<uom::si::ratio::ratio>();
        share.is_finite().then_some(share)
    }

    /// When the clutch locked at the launch; `None` for a rolling start or where it never did.
    pub fn lock_up(&self) -> Option<Moment> {
        let [first, second, ..] = self.legs.as_slice() else { return None };
        (first.kind == LegKind::Slip && second.kind == LegKind::Drive).then_some(first.to)
    }
}

/// Runs the course.
///
/// # Errors
/// When a rolling start asks for a gear that does not exist or that turns the engine past its limit. A car too weak to move is no
/// error but a run that says so.
pub fn run(vehicle: &Vehicle, course: &Course) -> Result<Run, MotionError> {
    match course.start {
        Start::Standing { launch } => {
            let (launch_rpm, caution) = launch_inside(vehicle, launch);
            let pieces = vehicle.launch_pieces(GearNumber::FIRST, launch_rpm);
            Ok(Run { caution, ..Walk::begin(vehicle, course, GearNumber::FIRST, 0.0).through(&pieces) })
        }
        Start::Rolling { gear, speed } => {
            let pull = vehicle.pull().gear(gear).ok_or(MotionError::NoSuchGear(gear))?;
            if speed > pull.fastest * (1.0 + 1e-9) {
                return Err(MotionError::TooFastForGear { gear, engine_rpm: in_rpm(pull.engine_speed(speed)) });
            }
            Ok(Walk::begin(vehicle, course, gear, in_metres_per_second(speed)).through(vehicle.pieces(gear)))
        }
    }
}

/// The launch speed (rpm) held inside the curve and its limit, with a caution where that moved it.
fn launch_inside(vehicle: &Vehicle, launch: AngularVelocity) -> (f64, Option<MotionError>) {
    let (launch_rpm, used_rpm) = (in_rpm(launch), vehicle.pull().held_launch_rpm(launch));
    let moved = (used_rpm - launch_rpm).abs() > 1e-6 * used_rpm;
    (used_rpm, moved.then_some(MotionError::LaunchOutsideCurve { launch_rpm, used_rpm }))
}
