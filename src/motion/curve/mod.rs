//! What the engine gives: torque and power over engine speed, their peaks, and the band in which the power is good.
//!
//! A curve comes from points ([`EngineCurve::through`], or pasted text by [`rows::read`]) or from the two figures of a data sheet
//! ([`generic`]). Correcting a curve to other air is in [`super::atmosphere`].

pub mod error;
pub mod generic;
mod pchip;
pub mod rows;

pub use error::CurveError;

use std::sync::Arc;

use super::piecewise::{self, Cubic, Few};
use super::{in_newton_metres, in_rpm, newton_metres, rpm};
use crate::units::{AngularVelocity, Power, Torque};

/// One point of a torque curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurvePoint {
    /// Engine speed.
    pub speed: AngularVelocity,
    /// Torque at full throttle.
    pub torque: Torque,
}

/// Where a curve came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CurveOrigin {
    /// Points that were typed or pasted.
    Points,
    /// A generic shape drawn through peak figures.
    Generic,
}

/// A stretch of engine speeds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Its lower end.
    pub from: AngularVelocity,
    /// Its upper end.
    pub to: AngularVelocity,
}

impl Band {
    /// Whether an engine speed lies in it, ends included.
    pub fn holds(&self, speed: AngularVelocity) -> bool {
        speed >= self.from && speed <= self.to
    }
}

/// A peak of a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// Where it is.
    pub speed: AngularVelocity,
    /// Torque there.
    pub torque: Torque,
    /// Power there.
    pub power: Power,
}

/// Full-throttle torque over engine speed: at least two points, speeds rising, no torque below zero, some above.
///
/// A copy costs nothing: every setup, and every combination of a search, has the same engine.
#[derive(Clone, Debug, PartialEq)]
pub struct EngineCurve {
    points: Arc<[CurvePoint]>,
    /// Torque (N·m) over engine speed (rpm).
    pieces: Arc<[Cubic]>,
    origin: CurveOrigin,
}

impl EngineCurve {
    /// The monotone cubic through points, lowest speed first; it never overshoots them (see the source in `pchip`).
    ///
    /// # Errors
    /// With fewer than two points, speeds that repeat, fall or are not above zero, torque below zero, or none above zero.
    ///
    /// ```
    /// use layshaft::motion::{CurveError, CurvePoint, EngineCurve};
    /// use layshaft::units::{common::rpm, show, unit};
    /// let point = |speed, torque| CurvePoint { speed: rpm(speed), torque: unit::N_M.of(torque) };
    /// let flat = EngineCurve::through(&[point(1_000.0, 200.0), point(6_000.0, 200.0)])?;
    /// assert_eq!(flat.torque(rpm(3_500.0)).map(|torque| show(&torque, &unit::N_M, 1)).as_deref(), Some("200.0 N·m"));
    /// assert_eq!(flat.torque(rpm(6_500.0)), None);
    /// // 200 N·m × 6,000 × 2π ÷ 60
    /// assert_eq!(show(&flat.peak_power().power, &unit::KW, 1), "125.7 kW");
    /// # Ok::<(), CurveError>(())
    /// ```
    pub fn through(points: &[CurvePoint]) -> Result<Self, CurveError> {
        check(points)?;
        let pairs: Vec<(f64, f64)> = points.iter().map(|point| (in_rpm(point.speed), in_newton_metres(point.torque))).collect();
        Ok(Self { points: points.into(), pieces: pchip::pieces(&pairs).into(), origin: CurveOrigin::Points })
    }

    fn drawn(pieces: Vec<Cubic>) -> Self {
        let ends =
            pieces.iter().map(|piece| (piece.from, piece.at(piece.from))).chain(pieces.last().map(|last| (last.to, last.at(last.to))));
        let points = ends.map(|(speed, torque)| CurvePoint { speed: rpm(speed), torque: newton_metres(torque) }).collect();
        Self { points, pieces: pieces.into(), origin: CurveOrigin::Generic }
    }

    /// The points the curve goes through.
    pub fn points(&self) -> &[CurvePoint] {
        &self.points
    }

    /// Where the curve came from.
    pub fn origin(&self) -> CurveOrigin {
        self.origin
    }

    pub(super) fn pieces(&self) -> &[Cubic] {
        &self.pieces
    }

    /// The speeds the curve covers.
    pub fn range(&self) -> Band {
        let (from, to) = self.ends_rpm();
        Band { from: rpm(from), to: rpm(to) }
    }

    pub(super) fn ends_rpm(&self) -> (f64, f64) {
        (self.pieces.first().map_or(0.0, |piece| piece.from), self.pieces.last().map_or(0.0, |piece| piece.to))
    }

    /// Torque (N·m) at an engine speed (rpm) held inside the curve.
    pub(super) fn torque_nm_within(&self, speed_rpm: f64) -> f64 {
        let (least, greatest) = self.ends_rpm();
        piecewise::value(&self.pieces, speed_rpm.max(least).min(greatest)).unwrap_or(0.0)
    }

    /// Torque at an engine speed; `None` outside the curve.
    pub fn torque(&self, speed: AngularVelocity) -> Option<Torque> {
        piecewise::value(&self.pieces, in_rpm(speed)).map(newton_metres)
    }

    /// Power at an engine speed, P = T·ω; `None` outside the curve.
    pub fn power(&self, speed: AngularVelocity) -> Option<Power> {
        self.torque(speed).map(|torque| super::power_of(torque, speed))
    }

    /// Where torque is greatest (the lowest such speed where it is flat).
    pub fn peak_torque(&self) -> Peak {
        self.peak(self.pieces.iter().flat_map(|piece| ends_and(piece, piece.turns())), |_, torque| torque)
    }

    /// Where power is greatest, found exactly: the turning points of speed times torque.
    pub fn peak_power(&self) -> Peak {
        self.peak_power_to(self.range().to)
    }

    /// The same of the speeds up to a limit.
    pub fn peak_power_to(&self, limit: AngularVelocity) -> Peak {
        let used = self.pieces.iter().filter_map(|piece| piece.cut(piece.from, in_rpm(limit)));
        self.peak(used.flat_map(|piece| ends_and(&piece, piece.turns_of_product())), |speed, torque| speed * torque)
    }

    fn peak(&self, speeds: impl Iterator<Item = f64>, worth: impl Fn(f64, f64) -> f64) -> Peak {
        let value = |speed: f64| worth(speed, self.torque_nm_within(speed));
        let best = speeds.reduce(|best, next| if value(next) > value(best) { next } else { best }).unwrap_or(0.0);
        let (speed, torque) = (rpm(best), newton_metres(self.torque_nm_within(best)));
        Peak { speed, torque, power: super::power_of(torque, speed) }
    }

    /// The band around the power peak in which power is at least `share` (0 to 1) of its peak.
    pub fn band(&self, share: f64) -> Band {
        self.band_to(share, self.range().to)
    }

    /// The same of the speeds up to a limit: it does not run past it.
    pub fn band_to(&self, share: f64, limit: AngularVelocity) -> Band {
        let peak = in_rpm(self.peak_power_to(limit).speed);
        let floor = share * peak * self.torque_nm_within(peak);
        let crossings: Vec<f64> = self.pieces.iter().flat_map(|piece| piece.crossings_of_product(floor)).collect();
        let (least, greatest) = self.ends_rpm();
        let greatest = greatest.min(in_rpm(limit));
        let from = crossings.iter().copied().filter(|speed| *speed < peak).fold(least, f64::max);
        let to = crossings.iter().copied().filter(|speed| *speed > peak).fold(greatest, f64::min);
        Band { from: rpm(from), to: rpm(to) }
    }

    /// Torque rise, (peak torque − torque at peak power) / torque at peak power, as a share of the torque at peak power.
    ///
    /// Source: usual in tractor and lorry tests (torque back-up); from memory.
    pub fn torque_rise(&self) -> Option<f64> {
        let at_power = in_newton_metres(self.peak_power().torque);
        (at_power > 0.0).then(|| in_newton_metres(self.peak_torque().torque) / at_power - 1.0)
    }

    /// Stretches without points, over which the curve is a guess: wider than three usual spacings and 1,000 rpm, or than 2,500 rpm.
    ///
    /// Common practice, no published source. A generic curve has none: it is a guess as a whole.
    pub fn gaps(&self) -> Vec<Band> {
        let mut widths: Vec<f64> = self.pieces.iter().map(|piece| piece.to - piece.from).collect();
        widths.sort_by(f64::total_cmp);
        let usual = widths.get(widths.len() / 2).copied().unwrap_or(0.0);
        let widest = (3.0 * usual).clamp(1_000.0, 2_500.0);
        let measured = self.origin == CurveOrigin::Points;
        let gaps = self.pieces.iter().filter(|piece| measured && piece.to - piece.from > widest);
        gaps.map(|piece| Band { from: rpm(piece.from), to: rpm(piece.to) }).collect()
    }

    /// The same curve with every torque multiplied by `factor` (of an atmospheric correction).
    ///
    /// # Errors
    /// When the factor leaves no torque above zero.
    pub fn scaled(&self, factor: f64) -> Result<Self, CurveError> {
        if !(factor.is_finite() && factor > 0.0) {
            return Err(CurveError::NoTorque);
        }
        let points = self.points.iter().map(|point| CurvePoint { torque: point.torque * factor, ..*point }).collect();
        let pieces = self.pieces.iter().map(|piece| piece.stretched(1.0, factor)).collect();
        Ok(Self { points, pieces, origin: self.origin })
    }
}

fn ends_and(piece: &Cubic, inside: Few) -> impl Iterator<Item = f64> + use<> {
    std::iter::once(piece.from).chain(inside).chain(std::iter::once(piece.to))
}

fn check(points: &[CurvePoint]) -> Result<(), CurveError> {
    match points {
        [] => return Err(CurveError::NoPoints),
        [only] => return Err(CurveError::OnePoint(in_rpm(only.speed))),
        _ => {}
    }
    points.iter().try_for_each(check_point)?;
    let speeds = || points.iter().map(|point| in_rpm(point.speed));
    for (before_rpm, speed_rpm) in speeds().zip(speeds().skip(1)) {
        // closer than any dyno tells apart counts as the same speed
        if (speed_rpm - before_rpm).abs() < 1e-6 {
            return Err(CurveError::Repeated(speed_rpm));
        }
        if speed_rpm < before_rpm {
            return Err(CurveError::Falling { before_rpm, speed_rpm });
        }
    }
    if points.iter().all(|point| in_newton_metres(point.torque) == 0.0) {
        return Err(CurveError::NoTorque);
    }
    Ok(())
}

/// What one point alone must hold: a speed an engine can turn, and torque of at least nothing.
fn check_point(point: &CurvePoint) -> Result<(), CurveError> {
    let (speed_rpm, torque_nm) = (in_rpm(point.speed), in_newton_metres(point.torque));
    if !(speed_rpm > 0.0 && speed_rpm <= CurveError::FASTEST_RPM) {
        return Err(CurveError::Speed(speed_rpm));
    }
    if !(torque_nm.is_finite() && torque_nm >= 0.0) {
        return Err(CurveError::Torque { speed_rpm, torque_nm });
    }
    Ok(())
}
