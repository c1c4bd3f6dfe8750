//! From samples a second to samples a turn of the engine, so that every order stands still however the speed wanders.

use super::clip::Clip;
use super::places::{at, below, between, near, real};

/// How far apart the speeds of a curve stand, in seconds.
const GRID: f64 = 0.05;
/// The fewest and the most samples of a turn.
const SAMPLES_OF_A_TURN: (f64, f64) = (160.0, 400.0);

/// The engine's turns a second over a recording.
#[derive(Clone, Debug, PartialEq)]
pub struct SpeedCurve {
    speeds: Vec<f64>,
}

impl SpeedCurve {
    /// A straight line between two ends, in turns a second.
    pub fn between(from: f64, to: f64, seconds: f64) -> Self {
        let many = near(seconds / GRID) + 2;
        Self { speeds: (0..many).map(|place| from + (to - from) * (real(place) * GRID / seconds).min(1.0)).collect() }
    }

    /// The speed at a time.
    pub fn at(&self, seconds: f64) -> f64 {
        between(&self.speeds, (seconds / GRID).min(real(self.speeds.len().saturating_sub(2)) + 0.999))
    }

    /// The mean speed.
    pub fn mean(&self) -> f64 {
        self.speeds.iter().sum::<f64>() / real(self.speeds.len().max(1))
    }

    /// The slowest speed.
    pub fn slowest(&self) -> f64 {
        self.speeds.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// The curve with the logarithm of its speeds moved by as much as stands beside the nearest times, in a straight line between them.
    #[must_use]
    pub fn moved(&self, by: &[(f64, f64)]) -> Self {
        let shift = |time: f64| {
            let Some(next) = by.iter().position(|(there, _)| *there >= time) else { return by.last().map_or(0.0, |(_, shift)| *shift) };
            match (next.checked_sub(1).and_then(|before| by.get(before)), by.get(next)) {
                (Some((from, low)), Some((to, high))) if to > from => low + (high - low) * (time - from) / (to - from),
                (_, Some((_, shift))) => *shift,
                _ => 0.0,
            }
        };
        Self { speeds: self.speeds.iter().enumerate().map(|(place, speed)| speed * shift(real(place) * GRID).exp()).collect() }
    }
}

/// A recording at constant samples a turn.
#[derive(Clone, Debug, PartialEq)]
pub struct ByTurns {
    /// The samples.
    pub samples: Vec<f64>,
    /// How many to a turn of the engine.
    pub per_turn: f64,
    /// The turns at each sample of the recording.
    phase: Vec<f64>,
    rate: f64,
}

/// A recording on its way to constant samples a turn.
#[derive(Clone, Debug, PartialEq)]
pub struct Turning {
    samples: Vec<f64>,
    per_turn: f64,
    phase: Vec<f64>,
    turns: f64,
}

impl Turning {
    /// Begins at the first sample.
    pub fn new(clip: &Clip, curve: &SpeedCurve) -> Self {
        let (least, most) = SAMPLES_OF_A_TURN;
        let per_turn = (clip.rate / curve.slowest()).clamp(least, most);
        Self { samples: Vec::new(), per_turn, phase: Vec::with_capacity(clip.samples.len()), turns: 0.0 }
    }

    /// Goes on by so many samples of the recording; answers whether it is through.
    ///
    /// The phase is the sum of the speed, inverted in straight lines; the recording is read between its samples by a cubic through four of
    /// them (Catmull and Rom).
    pub fn advance(&mut self, clip: &Clip, curve: &SpeedCurve, many: usize) -> bool {
        let from = self.phase.len();
        let to = from.saturating_add(many).min(clip.samples.len());
        for place in from..to {
            let before = self.phase.last().copied().unwrap_or(0.0);
            self.read_up_to(clip, place, before);
            self.phase.push(self.turns);
            self.turns += curve.at(real(place) / clip.rate) / clip.rate;
        }
        to == clip.samples.len()
    }

    /// Reads the samples between the turns at the place before and those at this one.
    fn read_up_to(&mut self, clip: &Clip, place: usize, before: f64) {
        let Some(low) = place.checked_sub(1) else { return };
        loop {
            let wanted = real(self.samples.len()) / self.per_turn;
            if wanted >= self.turns {
                break;
            }
            self.samples.push(cubic(&clip.samples, low, (wanted - before) / (self.turns - before)));
        }
    }

    /// How far through the recording it is, 0 to 1.
    pub fn share(&self, clip: &Clip) -> f64 {
        real(self.phase.len()) / real(clip.samples.len().max(1))
    }

    /// What it has come to.
    pub fn finish(mut self, clip: &Clip) -> ByTurns {
        self.samples.truncate(below(self.phase.last().copied().unwrap_or(0.0) * self.per_turn));
        ByTurns { samples: self.samples, per_turn: self.per_turn, phase: self.phase, rate: clip.rate }
    }
}

impl ByTurns {
    /// Resamples a recording by a speed curve.
    pub fn of(clip: &Clip, curve: &SpeedCurve) -> Self {
        let mut turning = Turning::new(clip, curve);
        while !turning.advance(clip, curve, usize::MAX) {}
        turning.finish(clip)
    }

    /// The time at which a sample stands, in seconds.
    pub fn time_of(&self, sample: f64) -> f64 {
        let wanted = sample / self.per_turn;
        let place = self.phase.partition_point(|turns| *turns < wanted);
        real(place) / self.rate
    }
}

/// The value between two samples by a cubic through them and their neighbours.
fn cubic(samples: &[f64], low: usize, share: f64) -> f64 {
    let (b, c) = (at(samples, low), at(samples, low + 1));
    let a = low.checked_sub(1).map_or(b, |before| at(samples, before));
    let d = samples.get(low + 2).copied().unwrap_or(c);
    b + 0.5 * share * (c - a + share * (2.0 * a - 5.0 * b + 4.0 * c - d + share * (3.0 * (b - c) + d - a)))
}
