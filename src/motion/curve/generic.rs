//! A torque curve drawn from one or two figures of a data sheet, where no dyno rows exist.
//!
//! Model: the cubic power law of spark-ignition engines, P = P₁ω + P₂ω² + P₃ω³ with P₁ = Pₘ/ωₘ, P₂ = Pₘ/ωₘ², P₃ = −Pₘ/ωₘ³,
//! that is T = Tₚ·(1 + x − x²) with x = n/nₚ (R. N. Jazar, Vehicle Dynamics, power section; from memory). It puts peak torque at
//! half the speed of peak power and 1.25 times its torque. Where both peaks are given, the stretch between them becomes the cubic
//! that is flat at the torque peak and has power flat at the power peak; below and above, the law's own parabola goes on. Where the
//! two peaks stand as the law has them, the curve is the law exactly. A guess: marked [`super::CurveOrigin::Generic`].

use super::super::piecewise::Cubic;
use super::super::{in_newton_metres, in_rpm, torque_of};
use super::{CurveError, EngineCurve};
use crate::units::{AngularVelocity, Power, Torque};

/// How far above the power peak the shape is drawn, as a multiple of its speed. Common practice, no published source.
pub const DRAWN_TO: f64 = 1.2;
/// Where the shape begins, as a share of the speed of peak torque. Common practice, no published source.
pub const DRAWN_FROM: f64 = 0.25;
/// Peak torque over the torque at peak power in the cubic law.
const LAW_RISE: f64 = 1.25;

/// The curve through peak torque alone: the power peak is put at twice its speed, as the law has it.
///
/// # Errors
/// When the figures are not above zero or no engine turns so fast.
pub fn from_torque(peak: Torque, at: AngularVelocity) -> Result<EngineCurve, CurveError> {
    let torque_rpm = turned(at)?;
    draw(in_newton_metres(peak), torque_rpm, in_newton_metres(peak) / LAW_RISE, 2.0 * torque_rpm)
}

/// The curve of the cubic law through peak power alone.
///
/// # Errors
/// When the figures are not above zero or no engine turns so fast.
///
/// ```
/// use layshaft::motion::{CurveError, curve::generic::from_power};
/// use layshaft::units::{common::rpm, show, unit};
/// let curve = from_power(unit::KW.of(100.0), rpm(5_000.0))?;
/// // The law: 1.25 × 100,000 W ÷ 523.599 rad/s = 238.73 N·m, at half that speed.
/// let torque = curve.torque(rpm(2_500.0)).map(|torque| show(&torque, &unit::N_M, 1));
/// assert_eq!(torque.as_deref(), Some("238.7 N·m"));
/// # Ok::<(), CurveError>(())
/// ```
pub fn from_power(peak: Power, at: AngularVelocity) -> Result<EngineCurve, CurveError> {
    let power_rpm = turned(at)?;
    let at_power = in_newton_metres(torque_of(peak, at));
    draw(LAW_RISE * at_power, 0.5 * power_rpm, at_power, power_rpm)
}

/// The curve through peak torque and peak power.
///
/// Torque never overshoots: where it falls so little that power would have to turn sharply, the slope at the power peak is held to
/// three times the fall, and power then peaks a little later than given.
///
/// # Errors
/// When the power peak is not above the torque peak or asks for more than the peak torque, or figures are not above zero.
pub fn from_peaks(torque: (Torque, AngularVelocity), power: (Power, AngularVelocity)) -> Result<EngineCurve, CurveError> {
    let (torque_rpm, power_rpm) = (turned(torque.1)?, turned(power.1)?);
    let at_power = in_newton_metres(torque_of(power.0, power.1));
    draw(in_newton_metres(torque.0), torque_rpm, at_power, power_rpm)
}

/// A speed that was given, in rpm; one that the law puts beside it may lie beyond what is taken.
fn turned(at: AngularVelocity) -> Result<f64, CurveError> {
    let speed_rpm = in_rpm(at);
    if speed_rpm > 0.0 && speed_rpm <= CurveError::FASTEST_RPM { Ok(speed_rpm) } else { Err(CurveError::Speed(speed_rpm)) }
}

fn draw(peak_nm: f64, torque_rpm: f64, at_power_nm: f64, power_rpm: f64) -> Result<EngineCurve, CurveError> {
    if !(peak_nm > 0.0 && at_power_nm > 0.0 && peak_nm.is_finite()) {
        return Err(CurveError::NoTorque);
    }
    if power_rpm <= torque_rpm {
        return Err(CurveError::PeaksCrossed { torque_rpm, power_rpm });
    }
    if at_power_nm > peak_nm * (1.0 + 1e-9) {
        return Err(CurveError::PowerBeyondTorque { needed_nm: at_power_nm, peak_nm });
    }
    let fall = (at_power_nm - peak_nm).min(0.0) / (power_rpm - torque_rpm);
    let slope = (-at_power_nm / power_rpm).max(3.0 * fall);
    let below = below_peak(peak_nm, torque_rpm);
    let between = Cubic::hermite((torque_rpm, peak_nm), (power_rpm, at_power_nm), (0.0, slope));
    let bend = -at_power_nm / (power_rpm * power_rpm);
    let above = Cubic { from: power_rpm, to: DRAWN_TO * power_rpm, c: [at_power_nm, -at_power_nm / power_rpm, bend, 0.0] };
    Ok(EngineCurve::drawn(vec![below, between, above]))
}

/// T = Tₘ·(1 − 0.2·((nₘ − n)/nₘ)²): the law's parabola about its own torque peak.
fn below_peak(peak_nm: f64, torque_rpm: f64) -> Cubic {
    let (from, share) = (DRAWN_FROM * torque_rpm, 1.0 - DRAWN_FROM);
    let bend = (1.0 - 1.0 / LAW_RISE) * peak_nm / (torque_rpm * torque_rpm);
    let lift = share * torque_rpm;
    Cubic { from, to: torque_rpm, c: [peak_nm - bend * lift * lift, 2.0 * bend * lift, -bend, 0.0] }
}
