//! Rows of a dynamometer as one rising pull: turned round, sorted, the better half of an up-and-down pull, equal speeds averaged.

use super::Done;
use crate::motion::curve::CurvePoint;
use crate::motion::{in_newton_metres, in_rpm, newton_metres, rpm};

/// A point and the line it came from.
pub(super) type Placed = (usize, CurvePoint);

/// Speeds closer than this are one (rpm): no dynamometer tells them apart.
const SAME_RPM: f64 = 0.5;
/// How far speed must come back before it counts as another sweep (rpm); less is the jitter of a measured pull.
const TURN_RPM: f64 = 50.0;

/// The points as one rising pull.
pub(super) fn one_rising(points: Vec<Placed>, done: &mut Vec<Done>) -> Vec<Placed> {
    let standing = |point: &Placed| in_rpm(point.1.speed) == 0.0;
    let at_rest = points.iter().filter(|point| standing(point)).count();
    let points: Vec<Placed> = points.into_iter().filter(|point| !standing(point)).collect();
    if at_rest > 0 {
        done.push(Done::AtRestLeftOut { rows: at_rest });
    }
    let mut points = one_sweep(points, done);
    points.sort_by(|a, b| in_rpm(a.1.speed).total_cmp(&in_rpm(b.1.speed)));
    averaged(points, done)
}

/// A stretch of rows in which the speed only rises or only falls.
#[derive(Clone, Copy)]
struct Sweep {
    from: usize,
    /// The row of its last extreme.
    to: usize,
    rising: bool,
}

fn one_sweep(points: Vec<Placed>, done: &mut Vec<Done>) -> Vec<Placed> {
    let speeds: Vec<f64> = points.iter().map(|(_, point)| in_rpm(point.speed)).collect();
    let sweeps = sweeps(&speeds);
    let span = |sweep: &Sweep| match (speeds.get(sweep.from), speeds.get(sweep.to)) {
        (Some(from), Some(to)) => (to - from).abs(),
        _ => 0.0,
    };
    let whole = speeds.iter().copied().fold(f64::NEG_INFINITY, f64::max) - speeds.iter().copied().fold(f64::INFINITY, f64::min);
    match sweeps.as_slice() {
        [] => points,
        [only] => {
            if !only.rising {
                done.push(Done::Reversed);
            }
            points
        }
        // an up-and-down pull has two of opposite ways; several pulls each cover nearly all of the speeds
        [first, second] if first.rising != second.rising => keep(points, *better([*first, *second].iter(), span).unwrap_or(first), done),
        several if several.iter().all(|sweep| span(sweep) > 0.8 * whole) => {
            let best = better(several.iter(), span).copied();
            match best {
                Some(best) => keep(points, best, done),
                None => points,
            }
        }
        _ => {
            done.push(Done::Sorted);
            points
        }
    }
}

/// The rising sweep of the greatest span; a falling one where it covers more than twice as much.
fn better<'a>(sweeps: impl Iterator<Item = &'a Sweep>, span: impl Fn(&Sweep) -> f64) -> Option<&'a Sweep> {
    let worth = |sweep: &Sweep| span(sweep) * if sweep.rising { 2.0 } else { 1.0 };
    sweeps.reduce(|best, next| if worth(next) > worth(best) { next } else { best })
}

fn keep(points: Vec<Placed>, sweep: Sweep, done: &mut Vec<Done>) -> Vec<Placed> {
    let all = points.len();
    let kept: Vec<Placed> = points.into_iter().skip(sweep.from).take(sweep.to + 1 - sweep.from).collect();
    done.push(Done::OneSweep { rising: sweep.rising, left_out: all - kept.len() });
    kept
}

fn sweeps(speeds: &[f64]) -> Vec<Sweep> {
    let mut found = Vec::new();
    let mut now: Option<Sweep> = None;
    let (mut from, mut extreme) = (0, 0);
    for (at, speed) in speeds.iter().enumerate().skip(1) {
        let Some(reach) = speeds.get(extreme) else { break };
        let by = speed - reach;
        match now {
            Some(sweep) if (by > 0.0) == sweep.rising => now = Some(Sweep { to: at, ..sweep }),
            _ if by.abs() < TURN_RPM => continue,
            None => now = Some(Sweep { from, to: at, rising: by > 0.0 }),
            Some(sweep) => {
                // one row of its own is where the next sweep begins: the speed was let go, not swept
                if sweep.to > sweep.from {
                    found.push(sweep);
                    from = sweep.to + 1;
                }
                now = Some(Sweep { from, to: at, rising: by > 0.0 });
            }
        }
        extreme = at;
    }
    let last = speeds.len().saturating_sub(1);
    found.extend(now.map(|sweep| Sweep { to: last, rising: sweep.rising || sweep.from == last, ..sweep }));
    found
}

/// Points at one speed become one, their torques averaged.
fn averaged(points: Vec<Placed>, done: &mut Vec<Done>) -> Vec<Placed> {
    let mut kept: Vec<(Placed, f64)> = Vec::with_capacity(points.len());
    let mut repeated = 0;
    for (line, point) in points {
        match kept.last_mut() {
            Some(((_, last), many)) if in_rpm(point.speed) - in_rpm(last.speed) < SAME_RPM => {
                let mean = |sum: f64, next: f64| (sum * *many + next) / (*many + 1.0);
                last.torque = newton_metres(mean(in_newton_metres(last.torque), in_newton_metres(point.torque)));
                last.speed = rpm(mean(in_rpm(last.speed), in_rpm(point.speed)));
                *many += 1.0;
                repeated += 1;
            }
            _ => kept.push(((line, point), 1.0)),
        }
    }
    if repeated > 0 {
        done.push(Done::Averaged { rows: repeated });
    }
    kept.into_iter().map(|(point, _)| point).collect()
}
