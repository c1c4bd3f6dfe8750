//! The count that fits a picture best, with the next best beside it: every count that is likely is fitted, the winner's neighbours too.
//!
//! Done in steps of some milliseconds, one after the other, so that a page stays awake.

use std::collections::VecDeque;
use std::f64::consts::TAU;
use std::sync::Arc;

use rustfft::num_complex::Complex;

use super::coarse::{COUNTS, Coarse};
use super::field::Field;
use super::grey::Grey;
use super::ring::Ring;
use super::simplex::climb;
use super::verdict::Counted;
use super::wave::{SEGMENTS, Wave};
use super::{Circle, CountError, DARK, SMALLEST};
use crate::sliced::{Progress, Sliced};
use crate::sound::recording::places::real;

/// First steps of a fit, of the radius for centre and radius, of 1 for perspective and ellipse.
const STEP: f64 = 0.012;
const STEP_NEARER: f64 = 0.015;
const STEP_LONGER: f64 = 0.006;
/// Looks at the picture for a fit.
const ROUGH: usize = 60;
const FINE: usize = 220;
const BESIDE: usize = 160;
/// How many counts are fitted to the last by their score, and by how well their phase holds.
const BY_SCORE: usize = 4;
const BY_PHASE: usize = 2;
/// Where the best already scores so well, those so far behind are not fitted any further.
const CLEAR: f64 = 0.8;
const FAR_BEHIND: f64 = 0.45;
/// How often neighbours are tried: the winner's, and those of a neighbour that won.
const ROUNDS: usize = 3;
/// How far perspective and ellipse go in pictures from straight above, three diameters away: that of a tilt of 5°, and of 7°.
const USUAL_NEARER: f64 = 0.015;
const USUAL_LONGER: f64 = 0.008;
/// How far the tips and their centre usually lie from the circle as it was placed, in its radii.
const USUAL_PLACED: f64 = 0.03;
/// What a ring that is unlikely by one usual length loses.
const UNLIKELY: f64 = 0.01;
/// Steps that a count usually takes, so that it can be told how far it is.
const USUAL_STEPS: u64 = 140;
/// How much of the winner's score a half or a third of its count must reach to be the count itself.
const PART: f64 = 0.6;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fit {
    pub(super) teeth: usize,
    pub(super) ring: Ring,
    pub(super) score: f64,
}

/// The best fit of every count that was tried.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Fits(Vec<Fit>);

impl Fits {
    fn take(&mut self, fit: Fit) {
        match self.0.iter_mut().find(|other| other.teeth == fit.teeth) {
            Some(other) if other.score >= fit.score => {}
            Some(other) => *other = fit,
            None => self.0.push(fit),
        }
    }

    /// All of them, the best first.
    pub(super) fn sorted(&self) -> Vec<Fit> {
        let mut all = self.0.clone();
        all.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.teeth.cmp(&b.teeth)));
        all
    }

    fn best(&self) -> Option<Fit> {
        self.sorted().first().copied()
    }
}

/// A count under way.
#[derive(Clone, Debug)]
pub struct Counting {
    field: Arc<Field>,
    coarse: Coarse,
    steps: VecDeque<Step>,
    done: u64,
    fits: Fits,
    /// Fits whose phase no longer drifts, and how well it holds.
    unwound: Vec<(Fit, f64)>,
    /// The winner whose neighbours were tried last.
    winner: Option<usize>,
    found: Option<Result<Counted, CountError>>,
}

/// A step of the way.
#[derive(Clone, Copy, Debug)]
enum Step {
    /// Rings around a centre.
    Look((f64, f64)),
    /// The guesses are chosen.
    Guess,
    /// A count is fitted in centre and radius.
    Rough(usize, Ring),
    /// Every count's phase is made to hold.
    Unwind,
    Unwound(Fit),
    /// The best are fitted in all.
    Choose,
    Fine(Fit),
    /// The winner's neighbours are tried, so many times more.
    Beside(usize),
    Neighbour(usize, Ring),
    /// A part of the winner's count is tried.
    Part(usize),
    /// The verdict.
    Settle,
}

impl Counting {
    /// Begins to count the teeth on a circle.
    ///
    /// # Errors
    /// Where the picture cannot show teeth there.
    pub fn new(grey: &Grey, circle: Circle) -> Result<Self, CountError> {
        if !circle.radius.is_finite() || circle.radius < SMALLEST {
            return Err(CountError::TooSmall(circle.radius.max(0.0)));
        }
        let inside = |place: f64, length: usize| place - 0.8 * circle.radius >= 0.0 && place + 0.8 * circle.radius <= real(length);
        if !(inside(circle.x, grey.width()) && inside(circle.y, grey.height())) {
            return Err(CountError::Outside);
        }
        let field = Field::around(grey, circle);
        if field.spread < DARK {
            return Err(CountError::TooDark);
        }
        let coarse = Coarse::new(&field);
        let steps = Coarse::centres(&field).into_iter().map(Step::Look).chain([Step::Guess]).collect();
        Ok(Self { field: Arc::new(field), coarse, steps, done: 0, fits: Fits::default(), unwound: Vec::new(), winner: None, found: None })
    }

    fn step(&mut self, step: Step) {
        match step {
            Step::Look(centre) => self.coarse.look(&self.field, centre),
            Step::Guess => self.guess(),
            Step::Rough(teeth, ring) => self.fits.take(fit(&self.field, teeth, ring, true, ROUGH)),
            Step::Unwind => {
                self.steps.extend(self.fits.sorted().into_iter().map(Step::Unwound));
                self.steps.push_back(Step::Choose);
            }
            Step::Unwound(fit) => self.unwound.push(unwound(&self.field, fit)),
            Step::Choose => self.choose(),
            Step::Fine(from) => self.fits.take(fit(&self.field, from.teeth, from.ring, false, FINE)),
            Step::Beside(left) => self.try_beside(left),
            Step::Neighbour(teeth, ring) => {
                let (from, _) = unwound(&self.field, Fit { teeth, ring, score: f64::MIN });
                self.fits.take(fit(&self.field, teeth, from.ring, false, BESIDE));
            }
            Step::Part(part) => self.try_part(part),
            Step::Settle => self.found = Some(Counted::of(&self.field, self.fits.sorted())),
        }
    }

    fn guess(&mut self) {
        for guess in self.coarse.guesses() {
            let around = (guess.teeth.saturating_sub(2)..=guess.teeth + 2).filter(|teeth| COUNTS.contains(teeth));
            self.steps.extend(around.map(|teeth| Step::Rough(teeth, guess.ring)));
        }
        self.steps.push_back(Step::Unwind);
    }

    /// Chooses what is fitted to the last.
    fn choose(&mut self) {
        let mut unwound = std::mem::take(&mut self.unwound);
        unwound.sort_by(|a, b| b.0.score.total_cmp(&a.0.score));
        let best = unwound.first().map_or(0.0, |(fit, _)| fit.score);
        let is_open = |fit: &Fit| best < CLEAR || fit.score >= best - FAR_BEHIND;
        let by_score: Vec<Fit> = unwound.iter().map(|(fit, _)| *fit).filter(is_open).take(BY_SCORE).collect();
        for (fit, _) in &unwound {
            self.fits.take(*fit);
        }
        unwound.sort_by(|a, b| b.1.total_cmp(&a.1));
        let others = unwound.into_iter().map(|(fit, _)| fit).filter(|fit| by_score.iter().all(|other| other.teeth != fit.teeth));
        let by_phase: Vec<Fit> = others.filter(is_open).take(BY_PHASE).collect();
        self.steps.extend(by_score.into_iter().chain(by_phase).map(Step::Fine));
        self.steps.extend([Step::Beside(ROUNDS), Step::Part(3), Step::Part(2), Step::Settle]);
    }

    /// Gives the neighbours of the best their fair chance, and theirs where one of them is better: how sure a count is hangs on how well
    /// the loser is fitted.
    fn try_beside(&mut self, left: usize) {
        let Some(best) = self.fits.best().filter(|_| left > 0) else { return };
        if self.winner == Some(best.teeth) {
            return;
        }
        let before = self.winner.replace(best.teeth);
        self.steps.push_front(Step::Beside(left - 1));
        for teeth in [best.teeth + 1, best.teeth - 1] {
            if COUNTS.contains(&teeth) && before != Some(teeth) {
                self.steps.push_front(Step::Neighbour(teeth, best.ring));
            }
        }
    }

    /// A part of the winner's count, where that does nearly as well: then the winner is its overtone.
    fn try_part(&mut self, part: usize) {
        let Some(best) = self.fits.best() else { return };
        let teeth = best.teeth.checked_div(part).unwrap_or(0);
        if teeth * part != best.teeth || !COUNTS.contains(&teeth) {
            return;
        }
        let less = fit(&self.field, teeth, best.ring, false, BESIDE);
        let score = if less.score >= PART * best.score { best.score + 1e-6 } else { less.score };
        self.fits.take(Fit { score, ..less });
    }
}

impl Sliced for Counting {
    type Found = Option<Result<Counted, CountError>>;

    fn advance(&mut self, budget: u64) -> Progress {
        for _ in 0..budget {
            let Some(step) = self.steps.pop_front() else { break };
            self.step(step);
            self.done += 1;
        }
        let ahead = u64::try_from(self.steps.len()).unwrap_or(0);
        Progress { done: self.done, of: (self.done + ahead).max(USUAL_STEPS), is_finished: ahead == 0 }
    }

    fn found(&self) -> Self::Found {
        self.found.clone()
    }
}

/// How far the centre and the tips of a ring lie from the circle as it was placed, in its radii.
pub(super) fn off_placed(field: &Field, wave: &Wave, ring: &Ring) -> (f64, f64) {
    let placed = field.placed;
    ((ring.x - placed.x).hypot(ring.y - placed.y) / placed.radius, ring.radius * wave.tips() / placed.radius - 1.0)
}

/// The score of a count on a ring, less what is unlikely of the ring.
fn score(field: &Field, wave: &Wave, ring: &Ring) -> f64 {
    let off = |(a, b): (f64, f64), usual: f64| (a * a + b * b) / (usual * usual);
    let of_ring = off(ring.nearer, USUAL_NEARER) + off(ring.longer, USUAL_LONGER);
    wave.read(field, ring).score - UNLIKELY * (of_ring + off(off_placed(field, wave, ring), USUAL_PLACED))
}

/// Fits a count from where a ring lies; only centre and radius where `is_flat`.
fn fit(field: &Field, teeth: usize, from: Ring, is_flat: bool, most: usize) -> Fit {
    let wave = Wave::new(teeth);
    let step = STEP * field.placed.radius;
    let (nearer, longer) = if is_flat { (0.0, 0.0) } else { (STEP_NEARER, STEP_LONGER) };
    let steps = [step, step, step, nearer, nearer, longer, longer];
    let (numbers, score) = climb(from.numbers(), steps, most, |numbers| score(field, &wave, &Ring::of(numbers)));
    Fit { teeth, ring: Ring::of(numbers), score }
}

/// Moves the centre so that the phase no longer drifts to and fro once around; answers also how well the phase holds then.
fn unwound(field: &Field, from: Fit) -> (Fit, f64) {
    let wave = Wave::new(from.teeth);
    let teeth = real(from.teeth);
    let parts = wave.read(field, &from.ring).parts;
    let mut best = (f64::MIN, (0.0, 0.0));
    for (a, b) in (-7..=7).flat_map(|a| (-7..=7).map(move |b| (0.4 * f64::from(a), 0.4 * f64::from(b)))) {
        let square = a * a + b * b;
        if square > 8.0 {
            continue;
        }
        let turned = parts.iter().enumerate().map(|(place, part)| {
            let (sin, cos) = (TAU * (real(place) + 0.5) / real(SEGMENTS)).sin_cos();
            part * Complex::cis(-(a * cos + b * sin))
        });
        let holds = turned.sum::<Complex<f64>>().norm() / real(SEGMENTS) - 0.01 * square;
        if holds > best.0 {
            best = (holds, (a, b));
        }
    }
    let (holds, (a, b)) = best;
    let mut chosen = Fit { score: score(field, &wave, &from.ring), ..from };
    for sign in [1.0, -1.0] {
        let (x, y) = (-sign * from.ring.radius * b / teeth, sign * from.ring.radius * a / teeth);
        let nearer = (from.ring.nearer.0 + x / from.ring.radius, from.ring.nearer.1 + y / from.ring.radius);
        let ring = Ring { x: from.ring.x + x, y: from.ring.y + y, nearer, ..from.ring };
        let score = score(field, &wave, &ring);
        if score > chosen.score {
            chosen = Fit { ring, score, ..from };
        }
    }
    (chosen, holds - 0.45 / teeth.sqrt())
}
