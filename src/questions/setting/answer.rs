//! What sets the pair, how it turns, how ring, pinion and clutch housing stand.

use super::read::Set;
use crate::checklist::{Amount, Range};
use crate::fits::ring_pinion::{backlash_at_tooth, depth_shim};
use crate::fits::tapered::{self, Pair};
use crate::fits::temperature;
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, Torque, unit};

/// Usual backlash of a car's ring and pinion: 0.005 to 0.009 in (makers' manuals; others give 0.008 to 0.012).
pub const USUAL_BACKLASH_MM: [f64; 2] = [0.13, 0.23];
/// The total run-out of a clutch housing's bore that is let pass on small engines: 0.005 in (common practice, no published source).
pub const BORE_RUN_OUT_MM: f64 = 0.127;
/// The total run-out of its face that engine makers let pass: 0.012 to 0.015 in for large engines (makers' manuals).
pub const FACE_RUN_OUT_MM: f64 = 0.305;
/// Opposite clock readings must add up alike within this share of the run-out, or the crank moved.
const MISSES_SHARE: f64 = 0.25;

impl Set {
    /// The float that was read, the mean of all places.
    pub fn float(&self) -> Option<Length> {
        mean(&self.floats)
    }

    /// The least and the greatest shim that leave what is wanted.
    pub fn shims(&self) -> Option<[Length; 2]> {
        let (installed, float, wanted) = (self.shim_in?, self.float()?, self.wanted?);
        Some([tapered::shim(installed, float, wanted.greatest), tapered::shim(installed, float, wanted.least)])
    }

    /// The pair, as far as its growth is asked: without cups only along the shaft.
    pub fn pair(&self) -> Option<Pair> {
        let (span, mounting, case) = (self.span?, self.mounting?, self.case?);
        Some(Pair { span, cups: self.cups.unwrap_or_default(), k: self.k, mounting, case })
    }

    /// How many kelvin warmer the box gets.
    pub fn warmer_k(&self) -> f64 {
        let [bench, working] = self.temperatures;
        temperature::warmer_k(working, bench)
    }

    /// How much more play the pair has when warm.
    pub fn opens(&self) -> Option<Length> {
        self.pair().map(|pair| pair.opens_when_hot(self.warmer_k()))
    }

    /// The end play wanted, warm.
    pub fn hot(&self) -> Option<Length> {
        Some(self.wanted?.middle() + self.opens()?)
    }

    /// The turning torque: pull × radius.
    pub fn turning(&self) -> Option<Torque> {
        let (pull, radius) = (self.pull?, self.radius?);
        Some(unit::N_M.of(unit::NEWTON.number(pull) * unit::METRE.number(radius)))
    }

    /// The turning torque wanted, typed or usual.
    pub fn torque_wanted(&self) -> Option<Range> {
        self.torque.clone().or_else(|| Range::read(self.bearings?.usual_torque()).ok())
    }

    /// Whether the turning torque is what is wanted; none where it is not known, or a seal drags and no range is typed for that.
    pub fn turns_right(&self) -> Option<bool> {
        if self.torque.is_none() && self.bearings?.is_sealed() {
            return None;
        }
        Some(self.torque_wanted()?.holds(&Amount::of_torque(self.turning()?)))
    }

    /// The depth shim by the mark.
    pub fn depth_shim(&self) -> Option<Length> {
        Some(depth_shim(self.depth?, self.mark?, self.sense?))
    }

    /// The backlash at the tooth, at each place.
    pub fn backlash(&self) -> Vec<Length> {
        let Some((dial, pitch)) = self.dial_radius.zip(self.pitch_radius) else { return Vec::new() };
        self.lash.iter().map(|way| backlash_at_tooth(way.abs(), dial, pitch)).collect()
    }
}

/// Whether clock readings are of a round bore on a crank that stayed where it was.
pub fn adds_up(clock: &crate::fits::clock::Clock) -> bool {
    in_millimetres(clock.misses()) <= (in_millimetres(clock.run_out()) * MISSES_SHARE).max(0.013)
}

/// The mean of lengths; none of none.
pub fn mean(lengths: &[Length]) -> Option<Length> {
    let many = u32::try_from(lengths.len()).ok().filter(|many| *many > 0)?;
    Some(lengths.iter().fold(millimetres(0.0), |sum, one| sum + *one) / f64::from(many))
}

/// The least and the greatest of lengths.
pub fn ends(lengths: &[Length]) -> Option<[Length; 2]> {
    let first = *lengths.first()?;
    Some(lengths.iter().fold([first, first], |[least, greatest], one| [least.min(*one), greatest.max(*one)]))
}
