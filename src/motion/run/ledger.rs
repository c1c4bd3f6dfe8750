//! What a run has done so far: its state, its legs and which goals are met.

use uom::si::{energy::joule, length::meter, time::second};

use super::{Leg, LegKind, Moment, Work};
use crate::gearing::GearNumber;
use crate::motion::metres_per_second;
use crate::units::{Energy, Length, Time};

/// Time (s), speed (m/s) and distance (m).
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct State {
    pub(super) t: f64,
    pub(super) v: f64,
    pub(super) s: f64,
}

impl State {
    pub(super) fn moment(self, gear: GearNumber) -> Moment {
        Moment { time: Time::new::<second>(self.t), speed: metres_per_second(self.v), distance: Length::new::<meter>(self.s), gear }
    }
}

/// One stretch that was covered, in SI.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch {
    pub(super) to: State,
    pub(super) mass: f64,
    pub(super) thrust_work: f64,
    pub(super) drag_work: f64,
    pub(super) steady_work: f64,
    pub(super) clutch_work: f64,
    pub(super) in_band: bool,
    pub(super) on_grip: bool,
}

#[derive(Clone, Copy, Debug)]
struct Open {
    kind: LegKind,
    gear: GearNumber,
    from: State,
    in_band_s: f64,
    on_grip_s: f64,
    thrust: f64,
    drag: f64,
    steady: f64,
    kinetic: f64,
    clutch: f64,
}

/// The legs, and the goals met.
#[derive(Debug)]
pub(super) struct Ledger {
    pub(super) now: State,
    pub(super) legs: Vec<Leg>,
    pub(super) trace: Option<Vec<Moment>>,
    speeds: Vec<(f64, Option<Moment>)>,
    distances: Vec<(f64, Option<Moment>)>,
    open: Option<Open>,
}

impl Ledger {
    pub(super) fn new(now: State, speeds: Vec<f64>, distances: Vec<f64>, trace: bool) -> Self {
        let unmet = |goals: Vec<f64>| goals.into_iter().map(|goal| (goal, None)).collect();
        Self {
            now,
            legs: Vec::with_capacity(16),
            trace: trace.then(Vec::new),
            speeds: unmet(speeds),
            distances: unmet(distances),
            open: None,
        }
    }

    /// Begins a leg, unless this very one is being run.
    pub(super) fn enter(&mut self, kind: LegKind, gear: GearNumber) {
        if self.open.is_some_and(|open| open.kind == kind && open.gear == gear) {
            return;
        }
        self.close();
        let from = self.now;
        self.open =
            Some(Open { kind, gear, from, in_band_s: 0.0, on_grip_s: 0.0, thrust: 0.0, drag: 0.0, steady: 0.0, kinetic: 0.0, clutch: 0.0 });
        self.meet_speeds(gear);
        self.mark(gear);
    }

    /// Writes down a stretch and goes to its end.
    pub(super) fn cover(&mut self, stretch: &Stretch) {
        let lasted = stretch.to.t - self.now.t;
        let Some(open) = self.open.as_mut() else { return };
        open.in_band_s += if stretch.in_band { lasted } else { 0.0 };
        open.on_grip_s += if stretch.on_grip { lasted } else { 0.0 };
        open.thrust += stretch.thrust_work;
        open.drag += stretch.drag_work;
        open.steady += stretch.steady_work;
        open.clutch += stretch.clutch_work;
        open.kinetic += 0.5 * stretch.mass * (stretch.to.v - self.now.v) * (stretch.to.v + self.now.v);
        let gear = open.gear;
        self.now = stretch.to;
        self.meet_speeds(gear);
        self.mark(gear);
    }

    fn mark(&mut self, gear: GearNumber) {
        let moment = self.now.moment(gear);
        if let Some(trace) = &mut self.trace {
            trace.push(moment);
        }
    }

    /// Speeds are split points of the run, so that one is met exactly when it is the present speed.
    fn meet_speeds(&mut self, gear: GearNumber) {
        let now = self.now;
        for (goal, met) in &mut self.speeds {
            if met.is_none() && (now.v - *goal).abs() <= 1e-12 * goal.abs() {
                *met = Some(now.moment(gear));
            }
        }
    }

    /// The nearest distance not covered yet.
    pub(super) fn next_distance(&self) -> Option<f64> {
        self.distances.iter().filter(|(_, met)| met.is_none()).map(|(goal, _)| *goal).reduce(f64::min)
    }

    /// Notes that every distance of this length was covered.
    pub(super) fn meet_distance(&mut self, distance: f64, at: State, gear: GearNumber) {
        for (goal, met) in &mut self.distances {
            if met.is_none() && *goal <= distance {
                *met = Some(State { s: *goal, ..at }.moment(gear));
            }
        }
    }

    /// Whether nothing is left to be reached from here.
    pub(super) fn is_done(&self) -> bool {
        self.speeds.iter().chain(&self.distances).all(|(_, met)| met.is_some())
    }

    /// Ends the leg that is being run.
    pub(super) fn close(&mut self) {
        let Some(open) = self.open.take() else { return };
        let energy = |value: f64| Energy::new::<joule>(value);
        let time = |value: f64| Time::new::<second>(value);
        if self.now.t <= open.from.t {
            return;
        }
        self.legs.push(Leg {
            kind: open.kind,
            gear: open.gear,
            from: open.from.moment(open.gear),
            to: self.now.moment(open.gear),
            in_band: time(open.in_band_s),
            on_grip: time(open.on_grip_s),
            work: Work {
                thrust: energy(open.thrust),
                drag: energy(open.drag),
                steady: energy(open.steady),
                kinetic: energy(open.kinetic),
                clutch: energy(open.clutch),
            },
        });
    }

    /// The goals, in the order they were asked.
    pub(super) fn reached(self) -> (Vec<Option<Moment>>, Vec<Option<Moment>>) {
        let met = |goals: Vec<(f64, Option<Moment>)>| goals.into_iter().map(|(_, met)| met).collect();
        (met(self.speeds), met(self.distances))
    }
}
