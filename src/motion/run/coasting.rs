//! The moments of a shift: no thrust, the car slows against its road load.
//!
//! Fourth-order Runge–Kutta in a few steps: over a shift the speed changes by a hundredth, so that its error is far below rounding,
//! and unlike the closed forms it needs no special case for no drag or no rolling resistance.

/// Steps for one shift.
const STEPS: u32 = 8;

/// Coasts for a time (s) from a speed (m/s): speed after, distance (m) and work against the air (J). `None` where the car comes to rest.
pub(super) fn coast(mass_kg: f64, (level_n, square_n): (f64, f64), speed: f64, time_s: f64) -> Option<(f64, f64, f64)> {
    let rate = |v: f64| (-(level_n + square_n * v * v) / mass_kg, v, square_n * v * v * v);
    let h = time_s / f64::from(STEPS);
    let (mut v, mut s, mut drag) = (speed, 0.0, 0.0);
    for _ in 0..STEPS {
        let first = rate(v);
        let second = rate(v + 0.5 * h * first.0);
        let third = rate(v + 0.5 * h * second.0);
        let last = rate(v + h * third.0);
        let step = |k: [f64; 4]| h / 6.0 * (k[0] + 2.0 * k[1] + 2.0 * k[2] + k[3]);
        s += step([first.1, second.1, third.1, last.1]);
        drag += step([first.2, second.2, third.2, last.2]);
        v += step([first.0, second.0, third.0, last.0]);
        if v <= 0.0 {
            return None;
        }
    }
    Some((v, s, drag))
}

/// The time (s) after which a distance (m) is coasted; Newton on a distance that grows all the time.
pub(super) fn time_over(mass_kg: f64, load: (f64, f64), speed: f64, distance: f64) -> Option<f64> {
    let mut t = distance / speed;
    for _ in 0..12 {
        let (v, s, _) = coast(mass_kg, load, speed, t)?;
        let step = (distance - s) / v;
        t += step;
        if step.abs() <= 1e-14 * t {
            break;
        }
    }
    Some(t)
}
