//! Whether a count is sure: how much of the ring repeats so, how far the next count falls behind, and whether it is the ring that was
//! pointed at.

use std::f64::consts::TAU;
use std::ops::RangeInclusive;
use std::sync::Arc;

use super::CountError;
use super::field::Field;
use super::marks::{Mark, Seat};
use super::search::{Fit, off_placed};
use super::wave::Wave;
use crate::sound::recording::places::real;

/// Below this score there are no teeth.
const NOTHING: f64 = 0.2;
/// The limits of sureness: those at which no count of the pictures they were set by is sure and wrong. The next count must fall behind
/// by the second of two figures; by less, down to the first, where the score is higher.
const LEAST_SCORE: f64 = 0.44;
const LEAST_AHEAD: (f64, f64) = (0.03, 0.1);
const SLOPE: f64 = 0.2;
/// How far the ring may be from the circle as it was placed, in its radii: further off it may be the ring of another gear.
const MOST_WIDER: f64 = 0.07;
const MOST_APART: f64 = 0.08;
/// With more of the ring hidden in one piece a tooth more or fewer would fit under it.
const MOST_GAP: f64 = 0.26;
/// So much of the ring must be seen.
const LEAST_SEEN: f64 = 0.66;
/// From tooth to tooth, in pixels: finer teeth are not seen.
const LEAST_PITCH: f64 = 7.0;
/// How much repeats near the tips, of what does where most does: below the first there are no teeth, below the second it is not sure.
const LEAST_TIPS: f64 = 0.1;
const SURE_TIPS: f64 = 0.5;
/// Two pictures that agree are sure where the next count falls behind by so much in both together.
const TOGETHER: f64 = 0.12;
/// Other counts are named where they fall behind by no more, and so many of them at most.
const NEAR: f64 = 0.1;
const NAMED: usize = 2;
/// Overtones of a count: so many times it, or one beside; they say nothing against it.
const OVERTONES: RangeInclusive<usize> = 2..=5;

/// Whether a count can be relied on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sureness {
    /// It can.
    Sure,
    /// It may be one of these just as well, the likeliest first.
    NotSure(Vec<usize>),
}

/// What was counted.
#[derive(Clone, Debug)]
pub struct Counted {
    /// How many teeth, as far as the picture tells.
    pub teeth: usize,
    /// Whether that is sure.
    pub sureness: Sureness,
    /// What it rests on.
    pub evidence: Evidence,
    field: Arc<Field>,
    fits: Vec<Fit>,
}

/// What a count rests on, each from 0 to about 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// How much of the ring repeats so, beyond what mere texture does.
    pub score: f64,
    /// How far the next likely count falls behind.
    pub ahead: f64,
    /// How far the centre lies from the placed one, in radii.
    pub apart: f64,
    /// How much larger the ring is than the placed one, in radii.
    pub wider: f64,
    /// The share of the ring where teeth are seen.
    pub seen: f64,
    /// The longest stretch without, as a share of the ring.
    pub gap: f64,
    /// How much of the brightness repeats so near the tips, and on the circle where most does.
    pub tips: f64,
    /// How much does where most does.
    pub most: f64,
    /// From tooth to tooth, in pixels of the whole picture.
    pub pitch: f64,
}

impl Counted {
    pub(super) fn of(field: &Arc<Field>, fits: Vec<Fit>) -> Result<Self, CountError> {
        let best = fits.first().filter(|fit| fit.score >= NOTHING).ok_or(CountError::NoTeeth)?;
        let (wave, teeth) = (Wave::new(best.teeth), best.teeth);
        let seat = Seat::of(field, &wave, &best.ring);
        let others: Vec<Fit> = fits.iter().skip(1).filter(|fit| !is_overtone(fit.teeth, teeth)).copied().collect();
        let (apart, wider) = off_placed(field, &wave, &best.ring);
        let by_circle = wave.by_circle(field, &best.ring);
        let evidence = Evidence {
            tips: by_circle.iter().skip(4).take(2).sum::<f64>() / 2.0,
            most: by_circle.iter().copied().fold(0.0, f64::max),
            score: best.score,
            ahead: best.score - others.first().map_or(0.0, |next| next.score.max(0.0)),
            apart,
            wider,
            seen: seat.share(),
            gap: seat.longest_gap(),
            pitch: TAU * field.placed_radius() / real(teeth),
        };
        if !evidence.are_teeth() {
            return Err(CountError::NoTeeth);
        }
        let sureness = if evidence.is_enough() { Sureness::Sure } else { Sureness::NotSure(named(&others, best.score)) };
        Ok(Self { teeth, sureness, evidence, field: Arc::clone(field), fits })
    }

    /// Whether the count is sure.
    pub fn is_sure(&self) -> bool {
        self.sureness == Sureness::Sure
    }

    /// The mark of every tooth, for this count or for what a person says it is.
    pub fn marks(&self, teeth: usize) -> Vec<Mark> {
        let fit = self.fits.iter().find(|fit| fit.teeth == teeth).or(self.fits.first());
        let ring = fit.filter(|_| teeth > 0).map(|fit| fit.ring);
        ring.map(|ring| Seat::of(&self.field, &Wave::new(teeth), &ring).marks(&self.field, &ring, teeth)).unwrap_or_default()
    }

    fn score(&self, teeth: usize) -> f64 {
        self.fits.iter().find(|fit| fit.teeth == teeth).map_or(0.0, |fit| fit.score.max(0.0))
    }
}

impl Evidence {
    /// Whether what repeats are teeth: the tips of teeth stand out from what lies behind them, round holes and balls have a rim around them.
    fn are_teeth(&self) -> bool {
        self.tips >= LEAST_TIPS * self.most
    }

    /// Whether the ring lies where the circle was placed; else it may be that of another gear.
    pub fn is_placed(&self) -> bool {
        self.wider.abs() <= MOST_WIDER && self.apart <= MOST_APART
    }

    /// Whether teeth can be told from one another there, and from what only looks like them.
    fn can_be_sure(&self) -> bool {
        self.is_placed() && self.tips >= SURE_TIPS * self.most && self.gap <= MOST_GAP && self.pitch >= LEAST_PITCH
    }

    /// Whether all that is enough to be sure.
    fn is_enough(&self) -> bool {
        let ahead = (LEAST_AHEAD.1 - SLOPE * (self.score - LEAST_SCORE)).clamp(LEAST_AHEAD.0, LEAST_AHEAD.1);
        self.can_be_sure() && self.score >= LEAST_SCORE && self.seen >= LEAST_SEEN && self.ahead >= ahead
    }
}

fn is_overtone(of: usize, teeth: usize) -> bool {
    of > teeth && OVERTONES.into_iter().any(|times| of.abs_diff(times * teeth) <= 1)
}

/// The counts that fall behind least.
fn named(others: &[Fit], score: f64) -> Vec<usize> {
    others.iter().filter(|fit| fit.score >= score - NEAR).take(NAMED).map(|fit| fit.teeth).collect()
}

/// What two pictures of one gear come to, the gear turned between them: dirt, light and a hand then fall on other teeth.
pub fn together(first: &Counted, second: &Counted) -> (usize, Sureness) {
    let both = |teeth: usize| first.score(teeth) + second.score(teeth);
    let mut counts: Vec<usize> = first.fits.iter().chain(&second.fits).map(|fit| fit.teeth).collect();
    counts.sort_unstable();
    counts.dedup();
    counts.sort_by(|a, b| both(*b).total_cmp(&both(*a)));
    let teeth = counts.first().copied().unwrap_or(first.teeth);
    let agree = [first, second].iter().all(|counted| counted.teeth == teeth && counted.evidence.can_be_sure());
    let ahead = first.evidence.ahead + second.evidence.ahead;
    if agree && (first.is_sure() || second.is_sure() || ahead >= TOGETHER) {
        return (teeth, Sureness::Sure);
    }
    let others =
        counts.into_iter().skip(1).filter(|other| !is_overtone(*other, teeth)).filter(|other| both(*other) >= both(teeth) - 2.0 * NEAR);
    (teeth, Sureness::NotSure(others.take(NAMED).collect()))
}
