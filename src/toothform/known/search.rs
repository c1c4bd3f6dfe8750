//! Every standard pitch, angle and tooth height held against the readings, the likeliest first.

use super::candidate::{Candidate, Off, Reading};
use super::readings::Readings;
use crate::toothform::standard::ANGLES_DEG;
use crate::toothform::{Depth, Pitch};
use crate::units::unit;

/// What the readings come to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// All that fit, the likeliest first.
    pub fitting: Vec<Candidate>,
    /// The nearest of those that do not, each of another pitch than the likeliest.
    pub others: Vec<Candidate>,
    /// Where nothing fits: the reading without which something does, and that.
    pub without: Option<(Reading, Candidate)>,
}

/// How many that do not fit are kept.
const OTHERS: usize = 3;

/// Holds every standard gear against the readings.
pub fn search(readings: &Readings) -> Found {
    let mut all = candidates(readings);
    all.sort_by(|a, b| unlikely(a).total_cmp(&unlikely(b)));
    let (fitting, mut others): (Vec<_>, Vec<_>) = all.into_iter().partition(Candidate::fits);
    others.sort_by(|a, b| a.worst().total_cmp(&b.worst()));
    others.truncate(OTHERS);
    let without = if fitting.is_empty() { without_one(readings) } else { None };
    Found { fitting, others, without }
}

fn candidates(readings: &Readings) -> Vec<Candidate> {
    // Without a reading on the flanks no angle is told from another, without one on tips or roots no height.
    let angles = if readings.has_flanks() { &ANGLES_DEG[..] } else { &ANGLES_DEG[..1] };
    let depths = if readings.over_tips.is_some() || readings.root.is_some() { &Depth::ALL[..] } else { &Depth::ALL[..1] };
    let each = Pitch::all().flat_map(|pitch| depths.iter().flat_map(move |depth| angles.iter().map(move |angle| (pitch, *depth, *angle))));
    each.filter_map(|(pitch, depth, angle)| Candidate::of(readings, pitch, depth, unit::DEGREE.of(angle))).collect()
}

/// How unlikely a gear is: how far its readings are off, and how rare what it is cut with. The weights are common practice.
fn unlikely(candidate: &Candidate) -> f64 {
    let off: f64 = candidate.residuals.iter().filter(|residual| residual.of != Reading::Shift).map(|residual| residual.times.powi(2)).sum();
    let degrees = unit::DEGREE.number(candidate.gear.cut.pressure());
    let angle = ANGLES_DEG
        .iter()
        .position(|angle| (angle - degrees).abs() < 1e-9)
        .map_or(1.0, |at| [0.0, 0.4, 0.7, 0.9, 0.7].get(at).copied().unwrap_or(1.0));
    let height = if candidate.depth == Depth::Stub { 0.8 } else { 0.0 };
    let shift = (candidate.gear.shift / 0.4).powi(2) * 0.5;
    let helix = unit::DEGREE.number(candidate.gear.cut.helix());
    let odd_helix = if helix.fract() == 0.0 { 0.0 } else { 0.2 };
    off + angle + height + shift + odd_helix + candidate.pitch.rarity()
}

/// The reading that contradicts the others: the one without which a gear fits, and the likeliest such gear.
fn without_one(readings: &Readings) -> Option<(Reading, Candidate)> {
    let mut fewer: Vec<(Reading, Readings)> = Vec::new();
    let mut without = |of: Reading, is_there: bool, change: &dyn Fn(&mut Readings)| {
        if is_there {
            let mut left = *readings;
            change(&mut left);
            fewer.push((of, left));
        }
    };
    without(Reading::Tips, readings.over_tips.is_some(), &|left| left.over_tips = None);
    without(Reading::Root, readings.root.is_some(), &|left| left.root = None);
    without(Reading::Pins, readings.pins.is_some(), &|left| left.pins = None);
    without(Reading::Centre, readings.centre.is_some(), &|left| left.centre = None);
    without(Reading::Thickness, readings.spanned.is_some() && readings.spans.iter().any(Option::is_some), &|left| left.spanned = None);
    without(Reading::BasePitch, readings.spans.iter().all(Option::is_some), &|left| left.spans[1] = None);
    without(Reading::Print, readings.print.is_some(), &|left| left.print = None);
    let found = fewer.into_iter().filter(|(_, left)| left.has_size()).filter_map(|(of, left)| {
        let fitting = candidates(&left).into_iter().filter(Candidate::fits);
        fitting.min_by(|a, b| unlikely(a).total_cmp(&unlikely(b))).map(|candidate| (of, candidate))
    });
    found.min_by(|(_, a), (_, b)| unlikely(a).total_cmp(&unlikely(b)))
}

impl Found {
    /// The likeliest that fits.
    pub fn best(&self) -> Option<&Candidate> {
        self.fitting.first()
    }
}

impl Off {
    /// Whether it says how far; what is endless does not.
    pub fn is_known(self) -> bool {
        match self {
            Self::Length(length) => length.is_finite(),
            Self::Angle(angle) => angle.is_finite(),
            Self::Modules(modules) => modules.is_finite(),
        }
    }
}
