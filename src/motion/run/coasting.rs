//! The moments of a shift: no thrust, the car slows against its road load.
//!
//! Fourth-order Runge–Kutta in a few steps: over a shift the speed changes by a hundredth, so that its error is far below rounding,
//! and unlike the closed forms it needs no special case for no drag or no rolling resistance.

use crate::motion::road_load::RoadLoad;

/// Steps for one shift.
const STEPS: u32 = 8;

/// How a coasting car comes out of a shift, in SI.
#[derive(Clone, Copy, Debug, Default)]
pub(in crate::motion) struct Coasted {
    /// Speed at the end (m/s).
    pub(in crate::motion) v: f64,
    /// Distance covered (m).
    pub(in crate::motion) distance: f64,
    /// Work against the air (J).
    pub(in crate::motion) drag_work: f64,
    /// Work against rolling resistance and grade (J).
    pub(in crate::motion) steady_work: f64,
}

/// Coasts for a time (s) from a speed (m/s); `None` where the car comes to rest.
pub(in crate::motion) fn coast(mass_kg: f64, load: &RoadLoad, speed: f64, time_s: f64) -> Option<Coasted> {
    coast_in(STEPS, mass_kg, load, speed, time_s)
}

/// As [`coast`], in so many steps; with one the speed is still good to a millionth.
pub(in crate::motion) fn coast_in(steps: u32, mass_kg: f64, load: &RoadLoad, speed: f64, time_s: f64) -> Option<Coasted> {
    let rate = |v: f64| [-load.at(v) / mass_kg, v, load.air_at(v) * v, load.rolling_and_grade_at(v) * v];
    let h = time_s / f64::from(steps);
    let mut state = [speed, 0.0, 0.0, 0.0];
    for _ in 0..steps {
        let [v, ..] = state;
        let first = rate(v);
        let second = rate(v + 0.5 * h * first[0]);
        let third = rate(v + 0.5 * h * second[0]);
        let last = rate(v + h * third[0]);
        let slopes = first.iter().zip(second).zip(third.into_iter().zip(last));
        for (value, ((a, b), (c, d))) in state.iter_mut().zip(slopes) {
            *value += h / 6.0 * (a + 2.0 * b + 2.0 * c + d);
        }
        if state[0] <= 0.0 {
            return None;
        }
    }
    let [v, distance, drag_work, steady_work] = state;
    Some(Coasted { v, distance, drag_work, steady_work })
}

/// The time (s) after which a distance (m) is coasted; Newton on a distance that grows all the time.
pub(super) fn time_over(mass_kg: f64, load: &RoadLoad, speed: f64, distance: f64) -> Option<f64> {
    let mut t = distance / speed;
    for _ in 0..12 {
        let coasted = coast(mass_kg, load, speed, t)?;
        let step = (distance - coasted.distance) / coasted.v;
        t += step;
        if step.abs() <= 1e-14 * t {
            break;
        }
    }
    Some(t)
}
