//! The engine's speed from the recording itself: at each frame the shift at which known lines, and whatever else stands out, fit best.

use super::places::{at, between, median, near, real};
use super::spectra::{Frames, MeanSpectrum};

/// A line that is looked for, and how much it counts.
pub type Line = (f64, f64);

/// One pass over the recording.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pass {
    /// How long its frames are, in seconds.
    pub seconds: f64,
    /// How far the logarithm of the speed is searched either way.
    pub range: f64,
    /// The step of the search.
    pub step: f64,
    /// How far the speed wanders from a frame to the next.
    pub wander: f64,
    /// How far off the typed speed is thought to be; none where it is known better by now.
    pub typed_off: Option<f64>,
}

/// The passes: of a steady recording, or of one whose speed rises or falls.
pub fn passes(is_steady: bool) -> [Pass; 4] {
    let (range, typed) = if is_steady { (0.055, 0.03) } else { (0.085, 0.04) };
    let pass = |seconds, range, step, wander, typed_off| Pass { seconds, range, step, wander, typed_off };
    [
        pass(0.75, range, 0.001, 0.006, Some(typed)),
        pass(1.0, 0.02, 0.001, 0.004, None),
        pass(1.0, 0.008, 0.000_5, 0.003, None),
        pass(0.5, 0.006, 0.000_5, 0.003, None),
    ]
}

/// How loud a bin is, with little use for the very loud: the logarithm, cut off at 60 times the noise.
fn loudness(whitened: f64) -> f64 {
    (1.0 + whitened.min(60.0)).ln() - std::f64::consts::LN_2
}

/// The best shift of the logarithm of the speed at each frame, looked for frame by frame.
#[derive(Clone, Debug)]
pub struct Tracking {
    grid: Vec<f64>,
    lines: Vec<Line>,
    pass: Pass,
    scores: Vec<Vec<f64>>,
}

impl Tracking {
    /// Begins at the first frame.
    pub fn new(frames: &Frames, lines: &[Line], pass: Pass) -> Self {
        let many = near(pass.range / pass.step);
        let bins = frames.whitened.first().map_or(0, Vec::len);
        let inside = |line: &&Line| line.0 * pass.range.exp() / frames.order_of_bin < real(bins) - 2.0;
        Self {
            grid: (0..=2 * many).map(|place| (real(place) - real(many)) * pass.step).collect(),
            lines: lines.iter().filter(inside).copied().collect(),
            pass,
            scores: Vec::new(),
        }
    }

    /// Looks at the next frame; answers whether there was none left.
    pub fn advance(&mut self, frames: &Frames) -> bool {
        let Some(frame) = frames.whitened.get(self.scores.len()) else { return true };
        let loud: Vec<f64> = frame.iter().map(|bin| loudness(*bin)).collect();
        let of = |shift: &f64| {
            let stretch = shift.exp() / frames.order_of_bin;
            let sum: f64 = self.lines.iter().map(|(order, weight)| weight * between(&loud, order * stretch)).sum();
            sum - self.pass.typed_off.map_or(0.0, |off| 0.15 * (shift / off).powi(2))
        };
        let scores = self.grid.iter().map(of).collect();
        self.scores.push(scores);
        false
    }

    /// How far through the frames it is, 0 to 1.
    pub fn share(&self, frames: &Frames) -> f64 {
        real(self.scores.len()) / real(frames.whitened.len().max(1))
    }

    /// The shifts, one for each frame.
    pub fn finish(self) -> Vec<f64> {
        let path = best_path(&self.scores, self.pass.step / self.pass.wander);
        smoothed(&path.into_iter().map(|place| at(&self.grid, place)).collect::<Vec<_>>())
    }
}

/// The path through the scores of all frames that is best in sum, a step of `n` places costing ½ (n · stiffness)².
fn best_path(scores: &[Vec<f64>], stiffness: f64) -> Vec<usize> {
    let Some(first) = scores.first() else { return Vec::new() };
    let mut sums = first.clone();
    let mut came: Vec<Vec<usize>> = Vec::new();
    // Further steps cost more than any score gives.
    let reach = near((12.0 / stiffness).max(1.0));
    for score in scores.iter().skip(1) {
        let best = |place: usize| {
            let from = place.saturating_sub(reach);
            let values = sums.iter().enumerate().skip(from).take(place + reach + 1 - from);
            let cost = |(before, sum): (usize, &f64)| (before, sum - 0.5 * (real(before.abs_diff(place)) * stiffness).powi(2));
            values.map(cost).max_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((place, 0.0))
        };
        let steps: Vec<(usize, f64)> = (0..score.len()).map(best).collect();
        sums = steps.iter().zip(score).map(|((_, sum), own)| sum + own).collect();
        came.push(steps.into_iter().map(|(before, _)| before).collect());
    }
    let last = sums.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(place, _)| place);
    let mut path = vec![last];
    for steps in came.iter().rev() {
        let here = path.last().copied().unwrap_or(0);
        path.push(steps.get(here).copied().unwrap_or(here));
    }
    path.reverse();
    path
}

fn smoothed(path: &[f64]) -> Vec<f64> {
    let value = |place: usize| at(path, place.min(path.len().saturating_sub(1)));
    (0..path.len()).map(|place| 0.25 * value(place.saturating_sub(1)) + 0.5 * value(place) + 0.25 * value(place + 1)).collect()
}

/// What stands out of the mean of frames, known or not: the sixty highest peaks over their surroundings.
pub fn standing_out(frames: &Frames) -> Vec<Line> {
    let many = frames.whitened.len().max(1);
    let mut mean = frames.whitened.first().map_or_else(Vec::new, |first| vec![0.0; first.len()]);
    for frame in &frames.whitened {
        mean.iter_mut().zip(frame).for_each(|(sum, bin)| *sum += loudness(*bin) / real(many));
    }
    let about = |bin: usize| {
        let from = bin.saturating_sub(15);
        median(&mut mean.iter().skip(from).take(31).copied().collect::<Vec<_>>())
    };
    let over: Vec<f64> = mean.iter().enumerate().map(|(bin, value)| value - about(bin)).collect();
    let deviation = 1.482_6 * median(&mut over.iter().map(|value| value.abs()).collect::<Vec<_>>());
    let is_top =
        |bin: usize| at(&over, bin) >= at(&over, bin + 1) && bin.checked_sub(1).is_some_and(|before| at(&over, bin) > at(&over, before));
    let mut peaks: Vec<Line> = over
        .iter()
        .enumerate()
        .filter(|(bin, value)| **value > 3.0 * deviation && is_top(*bin) && real(*bin) * frames.order_of_bin > 0.8)
        .map(|(bin, value)| (real(bin) * frames.order_of_bin, value.min(2.0)))
        .collect();
    crate::order::by(&mut peaks, |a, b| b.1.total_cmp(&a.1));
    peaks.truncate(60);
    peaks
}

/// The last common shift of all orders, by the mean spectra.
pub fn common_shift(spectra: &[MeanSpectrum; 2], lines: &[Line]) -> f64 {
    let of = |shift: f64| {
        let each = |(order, weight): &Line| {
            let spectrum = super::lines::spectrum_for(spectra, *order);
            weight * between(&spectrum.bins, order * shift.exp() / spectrum.order_of_bin).clamp(1.0, 40.0).ln()
        };
        lines.iter().map(each).sum::<f64>() - 0.1 * (shift / 0.02).powi(2)
    };
    let grid = (0..=96_u8).map(|place| (f64::from(place) - 48.0) * 0.000_25);
    grid.map(|shift| (shift, of(shift))).max_by(|a, b| a.1.total_cmp(&b.1)).map_or(0.0, |(shift, _)| shift)
}
