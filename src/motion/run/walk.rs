//! Walks a run from leg to leg: drives through the pieces of a gear, shifts, holds where nothing more comes.

use uom::si::{length::meter, time::second};

use super::coasting::{self, Coasted};
use super::ledger::{Ledger, State, Stretch};
use super::{Course, Evidence, LegKind, Run, Stopped};
use crate::gearing::GearNumber;
use crate::motion::error::MotionError;
use crate::motion::piecewise::Cubic;
use crate::motion::quadrature::integral;
use crate::motion::shift::Shift;
use crate::motion::vehicle::{Piece, Vehicle};
use crate::motion::{TOLERANCE, in_metres_per_second, in_rpm};

/// How near to the balance speed panels are laid, as a share of it; from there the speed is held.
const NEAREST: f64 = 1e-9;

pub(super) struct Walk<'a> {
    vehicle: &'a Vehicle,
    course: &'a Course,
    gear: GearNumber,
    ledger: Ledger,
    evidence: Evidence,
    /// Speeds (m/s) at which panels end, kept to be used again.
    edges: Vec<f64>,
}

/// How a drive in one gear ended.
#[derive(Clone, Copy)]
enum End {
    Finished,
    AtSpeed,
    Balance,
    Slipping,
    Weak(MotionError),
}

/// A panel's integrals: time, distance, work of thrust, against the air, against rolling and grade, heat in the clutch.
type Sums = [f64; 6];

impl<'a> Walk<'a> {
    pub(super) fn begin(vehicle: &'a Vehicle, course: &'a Course, gear: GearNumber, speed: f64) -> Self {
        let speeds = course.speeds.iter().map(|speed| in_metres_per_second(*speed)).collect();
        let distances = course.distances.iter().map(uom::si::f64::Length::get::<meter>).collect();
        let ledger = Ledger::new(State { v: speed, ..State::default() }, speeds, distances, course.trace_step.is_some());
        let evidence = Evidence { panels: 0, converged: true, time_error: crate::units::Time::default() };
        Self { vehicle, course, gear, ledger, evidence, edges: Vec::with_capacity(64) }
    }

    /// Goes through the first gear's pieces, and on through the others.
    pub(super) fn through(mut self, first: &[Piece]) -> Run {
        let vehicle = self.vehicle;
        let mut pieces = first;
        let stopped = loop {
            let fastest = vehicle.pull().gear(self.gear).map_or(0.0, |gear| in_metres_per_second(gear.fastest));
            let shift = self.course.shifts.iter().find(|shift| shift.from == self.gear).copied();
            let until = shift.map_or(fastest, |shift| in_metres_per_second(shift.speed).min(fastest));
            match self.drive(pieces, until) {
                End::AtSpeed => {}
                end => break self.stopped(end),
            }
            if shift.is_some_and(|shift| self.shift(&shift)) {
                if self.ledger.is_done() {
                    break Stopped::Finished;
                }
                pieces = vehicle.pieces(self.gear);
                continue;
            }
            match self.drive(pieces, fastest) {
                End::AtSpeed => break self.hold(Stopped::RevLimit { gear: self.gear }),
                end => break self.stopped(end),
            }
        };
        self.finish(stopped)
    }

    fn stopped(&mut self, end: End) -> Stopped {
        match end {
            End::Finished | End::AtSpeed => Stopped::Finished,
            End::Balance => self.hold(Stopped::Balance { gear: self.gear }),
            End::Slipping => Stopped::ClutchNeverLocks { gear: self.gear },
            End::Weak(error) => Stopped::TooWeak(error),
        }
    }

    fn finish(mut self, stopped: Stopped) -> Run {
        self.ledger.close();
        let legs = std::mem::take(&mut self.ledger.legs);
        let trace = self.ledger.trace.take().unwrap_or_default();
        let evidence = self.evidence;
        let (to_speed, over_distance) = self.ledger.reached();
        Run { legs, to_speed, over_distance, stopped, caution: None, trace, evidence }
    }

    /// Drives up to a speed (m/s), or until everything is reached or thrust runs out.
    fn drive(&mut self, pieces: &[Piece], until: f64) -> End {
        let load = self.vehicle.load();
        for piece in pieces {
            let (from, to) = (self.ledger.now.v.max(piece.thrust.from), piece.thrust.to.min(until));
            if to <= from {
                continue;
            }
            if self.ledger.is_done() {
                return End::Finished;
            }
            let net = piece.thrust.less(load);
            if net.at(from) <= 0.0 {
                return End::Weak(MotionError::TooWeak { thrust_n: piece.thrust.at(from), load_n: load.at(from) });
            }
            self.ledger.enter(if piece.slip_to.is_some() { LegKind::Slip } else { LegKind::Drive }, self.gear);
            let balance = net.crossings(0.0).find(|at| *at > from && *at <= to);
            self.lay_edges(from, to, balance);
            let net = balance.map_or(net, |balance| net.about_root(balance));
            for at in 0..self.edges.len() {
                let Some(edge) = self.edges.get(at).copied() else { break };
                if self.panel(piece, &net, edge) {
                    return End::Finished;
                }
            }
            if balance.is_some() {
                return if piece.slip_to.is_some() { End::Slipping } else { End::Balance };
            }
        }
        if self.ledger.is_done() { End::Finished } else { End::AtSpeed }
    }

    /// Where panels end between two speeds: goals, the band, the trace, and ever closer to a balance.
    fn lay_edges(&mut self, from: f64, to: f64, balance: Option<f64>) {
        self.edges.clear();
        self.edges.extend(self.course.speeds.iter().map(|speed| in_metres_per_second(*speed)));
        let per_speed = self.vehicle.pull().gear(self.gear).map_or(f64::INFINITY, |gear| gear.rpm_per_m_per_s);
        self.edges.extend(self.course.band.into_iter().flat_map(|band| [band.from, band.to]).map(|speed| in_rpm(speed) / per_speed));
        let last = balance.map_or(to, |balance| balance * (1.0 - NEAREST));
        if let Some(balance) = balance {
            let closer = std::iter::successors(Some(0.25 * (balance - from)), |left| Some(0.25 * left));
            self.edges.extend(closer.take_while(|left| *left > NEAREST * balance).map(|left| balance - left));
        }
        if let Some(step) = self.course.trace_step.map(in_metres_per_second).filter(|step| *step > 0.0) {
            /// More points than a picture can show are not laid in one piece.
            const MOST: f64 = 200.0;
            let step = step.max((to - from) / MOST);
            let points = std::iter::successors(Some((from / step).floor() + 1.0), |count| Some(count + 1.0));
            self.edges.extend(points.map(|count| count * step).take_while(|at| *at < to));
        }
        self.edges.retain(|edge| *edge > from && *edge < last);
        self.edges.push(last);
        self.edges.sort_by(f64::total_cmp);
        self.edges.dedup();
    }

    /// Drives one smooth stretch to a speed; whether everything is reached.
    ///
    /// Speeds are counted from where `net` is written about, so that close to a balance both net force and distance to it keep their digits.
    fn panel(&mut self, piece: &Piece, net: &Cubic, to: f64) -> bool {
        let from = self.ledger.now;
        if to <= from.v {
            return self.ledger.is_done();
        }
        let Some((mass, efficiency)) = self.mass_and_efficiency(piece) else { return true };
        let load = self.vehicle.load();
        let slip_to = piece.slip_to.unwrap_or(0.0);
        let integrate = |to: f64| {
            integral(
                |distance| {
                    let v = net.from + distance;
                    let pace = mass / net.at_distance(distance);
                    let thrust = piece.thrust.at(v);
                    let slip = if piece.slip_to.is_some() { thrust * (slip_to - v) / efficiency } else { 0.0 };
                    [pace, v * pace, thrust * v * pace, load.air_at(v) * v * pace, load.rolling_and_grade_at(v) * v * pace, slip * pace]
                },
                from.v - net.from,
                to - net.from,
                TOLERANCE,
            )
        };
        let mut whole = integrate(to);
        let mut end = to;
        while let Some(goal) = self.ledger.next_distance().filter(|goal| *goal <= from.s + whole.value[1]) {
            let v = speed_over(goal - from.s, (from.v, to), |v| (integrate(v).value, v * mass / net.at(v)));
            let at_goal = integrate(v);
            self.ledger.meet_distance(goal, State { t: from.t + at_goal.value[0], v, s: goal }, self.gear);
            if self.ledger.is_done() {
                (whole, end) = (at_goal, v);
                break;
            }
        }
        self.evidence.panels += whole.panels;
        self.evidence.converged &= whole.converged;
        self.evidence.time_error += crate::units::Time::new::<second>(whole.error);
        self.cover(piece, mass, whole.value, end);
        self.ledger.is_done()
    }

    fn mass_and_efficiency(&self, piece: &Piece) -> Option<(f64, f64)> {
        let masses = self.vehicle.masses(self.gear)?;
        let efficiency = self.vehicle.pull().gear(self.gear)?.efficiency;
        Some((masses.on(piece), efficiency))
    }

    fn cover(&mut self, piece: &Piece, mass: f64, sums: Sums, end: f64) {
        let [time, distance, thrust_work, drag_work, steady_work, clutch_work] = sums;
        let from = self.ledger.now;
        let engine_at = piece.slip_to.unwrap_or(0.5 * (from.v + end));
        let engine = self.vehicle.pull().gear(self.gear).map(|gear| gear.engine_speed(crate::motion::metres_per_second(engine_at)));
        let in_band = self.course.band.zip(engine).is_some_and(|(band, engine)| band.holds(engine));
        let to = State { t: from.t + time, v: end, s: from.s + distance };
        self.ledger.cover(&Stretch { to, mass, thrust_work, drag_work, steady_work, clutch_work, in_band, on_grip: piece.grip });
    }

    /// Shifts, unless the next gear could not pull afterwards; whether the gear was changed.
    fn shift(&mut self, shift: &Shift) -> bool {
        let load = self.vehicle.load();
        let Some(mass) = self.vehicle.masses(shift.from).map(|masses| masses.open) else { return false };
        let from = self.ledger.now;
        let time = self.course.shift_time.get::<second>().max(0.0);
        let Some(Coasted { v, distance, drag_work, steady_work }) = coasting::coast(mass, load, from.v, time) else { return false };
        let next = self.vehicle.pieces(shift.to);
        let after = next.get(next.partition_point(|piece| piece.thrust.to <= v));
        if after.is_none_or(|piece| piece.thrust.at(v) <= load.at(v)) {
            return false;
        }
        if time > 0.0 {
            self.ledger.enter(LegKind::Shift, shift.from);
            while let Some(goal) = self.ledger.next_distance().filter(|goal| *goal <= from.s + distance) {
                let after = coasting::time_over(mass, load, from.v, goal - from.s).unwrap_or(time);
                let speed = coasting::coast(mass, load, from.v, after).map_or(v, |coasted| coasted.v);
                self.ledger.meet_distance(goal, State { t: from.t + after, v: speed, s: goal }, shift.from);
            }
            let to = State { t: from.t + time, v, s: from.s + distance };
            let (thrust_work, clutch_work, in_band, on_grip) = (0.0, 0.0, false, false);
            self.ledger.cover(&Stretch { to, mass, thrust_work, drag_work, steady_work, clutch_work, in_band, on_grip });
        }
        self.gear = shift.to;
        true
    }

    /// Goes on at the present speed until the last distance is covered.
    fn hold(&mut self, why: Stopped) -> Stopped {
        let from = self.ledger.now;
        let load = self.vehicle.load();
        self.ledger.enter(LegKind::Hold, self.gear);
        while let Some(goal) = self.ledger.next_distance().filter(|_| from.v > 0.0) {
            let now = self.ledger.now;
            let distance = (goal - now.s).max(0.0);
            let to = State { t: now.t + distance / from.v, s: goal, ..now };
            self.ledger.meet_distance(goal, to, self.gear);
            let drag_work = load.air_at(from.v) * distance;
            let (thrust_work, steady_work) = (load.at(from.v) * distance, load.rolling_and_grade_at(from.v) * distance);
            let (clutch_work, in_band, on_grip) = (0.0, false, false);
            self.ledger.cover(&Stretch { to, mass: 0.0, thrust_work, drag_work, steady_work, clutch_work, in_band, on_grip });
        }
        if self.ledger.is_done() { Stopped::Finished } else { why }
    }
}

/// The speed at which a distance is covered: Newton on ∫v·m/net dv inside its bracket.
fn speed_over(distance: f64, (low, high): (f64, f64), sums: impl Fn(f64) -> (Sums, f64)) -> f64 {
    let (mut low, mut high) = (low, high);
    let mut v = 0.5 * (low + high);
    for _ in 0..60 {
        let ([_, covered, ..], slope) = sums(v);
        if covered < distance {
            low = v;
        } else {
            high = v;
        }
        let newton = v + (distance - covered) / slope;
        let next = if newton >= low && newton <= high { newton } else { 0.5 * (low + high) };
        if (next - v).abs() <= 1e-14 * v {
            return next;
        }
        v = next;
    }
    v
}
