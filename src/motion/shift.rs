//! When to shift up, and what it costs to shift earlier or later.
//!
//! For least time the shift comes where the next gear would accelerate as well, its smaller rotating mass counted; the textbooks'
//! equal thrust ignores that mass and comes a little late. Both are roots of cubics (`piecewise`), or the rev limit.
//! Source: the equal-acceleration rule follows from time being the integral of dv/a; equal thrust is the usual textbook statement.

use super::piecewise::{self, Cubic};
use super::pull::{GearPull, Pull};
use super::quadrature::integral;
use super::vehicle::{Free, Vehicle, next_gear};
use super::{TOLERANCE, in_metres_per_second, in_rpm, metres_per_second};
use crate::gearing::GearNumber;
use crate::units::{AngularVelocity, Time, Velocity};

/// By which rule to shift.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Rule {
    /// Equal acceleration before and after, rotating masses counted.
    #[default]
    EqualAcceleration,
    /// Equal thrust at the wheels before and after.
    EqualThrust,
    /// At a chosen engine speed.
    At(AngularVelocity),
}

/// Why the shift comes where it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// The two gears are equal there.
    Crossing,
    /// The lower gear is better up to the rev limit.
    Limit,
    /// The upper gear is better as soon as it can be used.
    Earliest,
    /// It was chosen: by the driver, or together with the other shifts of a run.
    Chosen,
}

/// One upshift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// The gear left.
    pub from: GearNumber,
    /// The gear taken.
    pub to: GearNumber,
    /// Road speed of the shift.
    pub speed: Velocity,
    /// Engine speed before.
    pub before: AngularVelocity,
    /// Engine speed after, at the same road speed.
    pub after: AngularVelocity,
    /// Why there.
    pub reason: Reason,
    /// What is left of the equation at a crossing: the lower gear's thrust (N) or acceleration (m/s²) less the upper one's.
    pub residual: f64,
    /// Whether the upper gear turns the engine at least as fast as the curve's first point.
    pub lands_on_curve: bool,
}

/// What shifting away from the best point costs, the shift itself taking no time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShiftCost {
    /// Time lost by shifting earlier; `None` where the upper gear cannot be used so early.
    pub early: Option<Time>,
    /// Time lost by shifting later; `None` where that is past the rev limit.
    pub late: Option<Time>,
}

/// The upshift out of every gear that has a taller one above it, by equal thrust; needs no mass.
///
/// ```
/// use layshaft::motion::shift::{Reason, equal_thrust};
/// use layshaft::motion::{CurvePoint, EngineCurve, Gears, Pull, car::Efficiencies};
/// use layshaft::units::common::{in_rpm, rpm};
/// use layshaft::units::unit;
/// # fn example() -> Option<()> {
/// let point = |speed| CurvePoint { speed: rpm(speed), torque: unit::N_M.of(200.0) };
/// let curve = EngineCurve::through(&[point(1_000.0), point(6_000.0)]).ok()?;
/// let gears = Gears { ratios: vec![2.0, 1.5], final_drive: 4.0, rolling_radius: unit::METRE.of(0.3), meshes: vec![2, 2] };
/// let shifts = equal_thrust(&Pull::new(&curve, &gears, Efficiencies::default(), None).ok()?);
/// // Torque is flat, so that 1st pulls harder to the end; 2nd then picks up 6,000 × 1.5/2.
/// let shift = shifts.first()?;
/// assert_eq!((shift.reason, in_rpm(shift.after).round()), (Reason::Limit, 4_500.0));
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn equal_thrust(pull: &Pull) -> Vec<Shift> {
    pull.gears().iter().filter_map(|gear| thrust_shift(pull, gear)).collect()
}

/// The upshift out of every gear that has a taller one above it.
///
/// It is the engine's own point, where the next gear pulls as well: the tyres' grip is left out. (While grip holds back two gears alike
/// none of them is quicker.) What a whole run does best, grip, shift time and goal counted, is chosen in [`super::plan`]. The published reference runs shift by this rule too.
pub fn shifts(vehicle: &Vehicle, rule: Rule) -> Vec<Shift> {
    let pull = vehicle.pull();
    match rule {
        Rule::EqualThrust => equal_thrust(pull),
        Rule::EqualAcceleration => {
            let free = vehicle.without_grip_limit();
            pull.gears().iter().filter_map(|gear| acceleration_shift(&free, gear)).collect()
        }
        Rule::At(speed) => pull.gears().iter().filter_map(|gear| chosen_shift(pull, gear, speed)).collect(),
    }
}

/// What shifting `by` earlier or later than `shift` costs in time.
///
/// Model: the integral of 1/a of the upper gear less 1/a of the lower one, over speed, between the two shift speeds, all masses and road load counted,
/// the tyres' grip left out as in [`shifts`].
pub fn cost(vehicle: &Vehicle, shift: &Shift, by: AngularVelocity) -> ShiftCost {
    let free = &vehicle.without_grip_limit();
    let at = in_metres_per_second(shift.speed);
    let moved = |sign: f64| {
        let gear = vehicle.pull().gear(shift.from)?;
        Some(at + sign * in_rpm(by) / gear.rpm_per_m_per_s)
    };
    let seconds = |value: f64| Time::new::<uom::si::time::second>(value);
    let early = moved(-1.0).map(|early| gain_s(free, shift.from, shift.to, early, at));
    let late = moved(1.0).map(|late| -gain_s(free, shift.from, shift.to, at, late));
    let [early, late] = [early, late].map(|cost| cost.filter(|cost| cost.is_finite()).map(seconds));
    ShiftCost { early, late }
}

/// The stretch of speed on which both gears can be used: from, to (m/s).
fn shared(lower: &GearPull, upper: &GearPull) -> (f64, f64) {
    (in_metres_per_second(lower.slowest.max(upper.slowest)), in_metres_per_second(lower.fastest))
}

/// The upshift at a road speed (m/s).
pub(super) fn at_road_speed(lower: &GearPull, upper: &GearPull, speed: f64, reason: Reason) -> Shift {
    let speed = metres_per_second(speed);
    let lands_on_curve = speed >= upper.slowest * (1.0 - 1e-9);
    Shift {
        from: lower.gear,
        to: upper.gear,
        speed,
        before: lower.engine_speed(speed),
        after: upper.engine_speed(speed),
        reason,
        residual: 0.0,
        lands_on_curve,
    }
}

fn chosen_shift(pull: &Pull, lower: &GearPull, speed: AngularVelocity) -> Option<Shift> {
    let upper = pull.gear(next_gear(pull, lower.gear)?)?;
    let road = lower.road_speed(speed);
    let (speed, reason) = if road > lower.fastest { (lower.fastest, Reason::Limit) } else { (road, Reason::Chosen) };
    Some(at_road_speed(lower, upper, in_metres_per_second(speed), reason))
}

fn thrust_shift(pull: &Pull, lower: &GearPull) -> Option<Shift> {
    let upper = pull.gear(next_gear(pull, lower.gear)?)?;
    let (from, to) = shared(lower, upper);
    let difference = difference(&lower.thrust, 1.0, &upper.thrust, 1.0, (from, to));
    let (speed, reason) = candidates(&difference, from, to).last().copied().unwrap_or((to, Reason::Limit));
    let residual = piecewise::value(&difference, speed).unwrap_or(0.0);
    Some(Shift { residual, ..at_road_speed(lower, upper, speed, reason) })
}

fn acceleration_shift(free: &Free<'_>, lower: &GearPull) -> Option<Shift> {
    let vehicle = free.vehicle;
    let upper = vehicle.pull().gear(vehicle.next_gear(lower.gear)?)?;
    let (from, to) = shared(lower, upper);
    let net = |gear: GearNumber| -> Vec<Cubic> {
        free.pieces(gear).iter().filter(|piece| piece.slip_to.is_none()).map(|piece| piece.thrust.less(vehicle.load())).collect()
    };
    let (mine, theirs) = (vehicle.masses(lower.gear)?.closed, vehicle.masses(upper.gear)?.closed);
    let difference = difference(&net(lower.gear), 1.0 / mine, &net(upper.gear), 1.0 / theirs, (from, to));
    let candidates = candidates(&difference, from, to);
    let (speed, reason) = quickest(free, (lower.gear, upper.gear), &candidates).unwrap_or((to, Reason::Limit));
    let residual = piecewise::value(&difference, speed).unwrap_or(0.0);
    Some(Shift { residual, ..at_road_speed(lower, upper, speed, reason) })
}

/// Lower gear's pieces, weighed, less the upper gear's, on the stretch both share.
fn difference(lower: &[Cubic], mine: f64, upper: &[Cubic], theirs: f64, (from, to): (f64, f64)) -> Vec<Cubic> {
    let mut pieces = Vec::with_capacity(lower.len() + upper.len());
    for here in lower.iter().filter_map(|piece| piece.cut(from, to)) {
        pieces.extend(upper.iter().filter_map(|there| here.weighed_against(mine, there, theirs)));
    }
    pieces
}

/// Speeds at which the shift may be best, rising: where the lower gear stops being better, or an end.
fn candidates(difference: &[Cubic], from: f64, to: f64) -> Vec<(f64, Reason)> {
    if to <= from {
        return Vec::new();
    }
    let mut edges: Vec<f64> = difference.iter().flat_map(|piece| piece.crossings(0.0)).filter(|at| *at > from && *at < to).collect();
    edges.dedup_by(|a, b| (*a - *b).abs() <= 1e-12 * to);
    edges.push(to);
    let mut found = Vec::new();
    let (mut begin, mut was_better) = (from, None);
    for end in edges {
        let better = piecewise::value(difference, 0.5 * (begin + end)).is_some_and(|value| value > 0.0);
        match (was_better, better) {
            (None, false) => found.push((from, Reason::Earliest)),
            (Some(true), false) => found.push((begin, Reason::Crossing)),
            _ => {}
        }
        (begin, was_better) = (end, Some(better));
    }
    if was_better == Some(true) {
        found.push((to, Reason::Limit));
    }
    found
}

/// Of several candidates the one with the least time: it is worth waiting for a later one where the lower gear gains in between.
fn quickest(free: &Free<'_>, gears: (GearNumber, GearNumber), candidates: &[(f64, Reason)]) -> Option<(f64, Reason)> {
    let later_is_better = |best: f64, next: f64| gain_s(free, gears.0, gears.1, best, next) > 0.0;
    candidates.iter().copied().reduce(|best, next| if later_is_better(best.0, next.0) { next } else { best })
}

/// Time the lower gear saves over the upper one between two speeds: without end where the upper one does not accelerate (or cannot be
/// used), negative without end where the lower one does not.
fn gain_s(free: &Free<'_>, lower: GearNumber, upper: GearNumber, from: f64, to: f64) -> f64 {
    let mut edges: Vec<f64> = [lower, upper].into_iter().flat_map(|gear| free.pieces(gear).iter().map(|piece| piece.thrust.from)).collect();
    edges.retain(|edge| *edge > from && *edge < to);
    edges.sort_by(f64::total_cmp);
    edges.push(to);
    let pace = |gear: GearNumber, speed: f64| free.acceleration(gear, speed).filter(|a| *a > 0.0).map(|a| 1.0 / a);
    // a stall mostly shows at an end; halving panels towards its jump would cost a hundred times more than looking
    let at_ends = |gear: GearNumber| pace(gear, from).is_none() || pace(gear, to).is_none();
    if let Some(endless) = stalled(at_ends(lower), at_ends(upper)) {
        return endless;
    }
    let (mut lower_stalls, mut upper_stalls) = (false, false);
    let mut gain = |speed: f64| {
        let paces = (pace(upper, speed), pace(lower, speed));
        upper_stalls |= paces.0.is_none();
        lower_stalls |= paces.1.is_none();
        paces.0.zip(paces.1).map_or(0.0, |(upper, lower)| upper - lower)
    };
    let (mut begin, mut sum) = (from, 0.0);
    for end in edges {
        let [part] = integral(|speed| [gain(speed)], begin, end, TOLERANCE).value;
        sum += part;
        begin = end;
    }
    stalled(lower_stalls, upper_stalls).unwrap_or(sum)
}

/// What a stall is worth to the lower gear: its own counts before the upper one's.
fn stalled(lower: bool, upper: bool) -> Option<f64> {
    if lower { Some(f64::NEG_INFINITY) } else { upper.then_some(f64::INFINITY) }
}
