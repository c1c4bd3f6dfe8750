//! Whitened power spectra of frames of a recording: every bin over the broad noise about it.

use std::fmt;
use std::sync::Arc;

use rustfft::num_complex::Complex;
use rustfft::{Fft, FftPlanner};

use super::places::{at, median, near, power_of_two, real};
use super::turns::ByTurns;

/// The fewest bins of a block of the floor, and the share of its place that it is wide at least.
///
/// The share matters: with blocks of a fixed width a smeared strong line lifts its own floor and loses up to 20 dB.
const BLOCK: (usize, f64) = (24, 0.04);
/// Bins below this are left out where noise is levelled.
const FIRST_BIN: usize = 20;

/// Spectra of frames, each bin over its floor.
#[derive(Clone, Debug, PartialEq)]
pub struct Frames {
    /// The frames, in order.
    pub whitened: Vec<Vec<f64>>,
    /// The sample in the middle of each.
    pub middles: Vec<f64>,
    /// The order of one bin.
    pub order_of_bin: f64,
}

/// The mean of whitened frames, its noise level 1.
#[derive(Clone, Debug, PartialEq)]
pub struct MeanSpectrum {
    /// Each bin over the noise.
    pub bins: Vec<f64>,
    /// The order of one bin.
    pub order_of_bin: f64,
    /// How many independent frames it is the mean of.
    pub weight: f64,
}

/// A Hann window and the transform of its length.
#[derive(Clone)]
pub(super) struct Analyser {
    fft: Arc<dyn Fft<f64>>,
    window: Vec<f64>,
}

impl fmt::Debug for Analyser {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.debug_struct("Analyser").field("length", &self.window.len()).finish_non_exhaustive()
    }
}

impl Analyser {
    pub(super) fn new(length: usize) -> Self {
        let fft = FftPlanner::new().plan_fft_forward(length);
        let turn = std::f64::consts::TAU / real(length);
        Self { fft, window: (0..length).map(|place| 0.5 - 0.5 * (turn * real(place)).cos()).collect() }
    }

    pub(super) fn power(&self, samples: &[f64]) -> Vec<f64> {
        let windowed = samples.iter().zip(&self.window).map(|(sample, weight)| Complex::new(sample * weight, 0.0));
        let mut buffer: Vec<Complex<f64>> = windowed.collect();
        self.fft.process(&mut buffer);
        buffer.iter().take(self.window.len() / 2).map(Complex::norm_sqr).collect()
    }
}

/// Frames on their way, one after the other.
#[derive(Clone, Debug)]
pub struct Framing {
    analyser: Analyser,
    from: usize,
    frames: Frames,
}

impl Framing {
    /// Frames of about so many seconds, each half over the one before; no longer than `most` of the recording.
    pub fn new(turned: &ByTurns, mean_speed: f64, seconds: f64, most: f64) -> Self {
        let length = power_of_two(turned.per_turn * mean_speed * seconds, most * real(turned.samples.len()));
        let frames = Frames { whitened: Vec::new(), middles: Vec::new(), order_of_bin: turned.per_turn / real(length) };
        Self { analyser: Analyser::new(length), from: 0, frames }
    }

    /// Makes the next frame; answers whether there was none left.
    pub fn advance(&mut self, turned: &ByTurns) -> bool {
        let length = self.analyser.window.len();
        let hop = (length / 2).max(1);
        let Some(samples) = turned.samples.get(self.from..self.from + length) else { return true };
        let power = self.analyser.power(samples);
        self.frames.whitened.push(over(&power, &floor(&power, BLOCK.0)));
        self.frames.middles.push(real(self.from) + real(hop));
        self.from += hop;
        false
    }

    /// How far through the recording it is, 0 to 1.
    pub fn share(&self, turned: &ByTurns) -> f64 {
        real(self.from) / real(turned.samples.len().max(1))
    }

    /// The frames.
    pub fn finish(self) -> Frames {
        self.frames
    }
}

/// The mean of frames, levelled once more.
pub fn mean(frames: &Frames) -> MeanSpectrum {
    let many = frames.whitened.len().max(1);
    let mut sum = frames.whitened.first().map_or_else(Vec::new, |first| vec![0.0; first.len()]);
    for frame in &frames.whitened {
        sum.iter_mut().zip(frame).for_each(|(sum, value)| *sum += value / real(many));
    }
    let levelled = over(&sum, &floor(&sum, 2 * BLOCK.0));
    let mut upper: Vec<f64> = levelled.iter().skip(FIRST_BIN).copied().collect();
    let level = median(&mut upper).max(1e-12);
    let bins = levelled.iter().map(|value| value / level).collect();
    MeanSpectrum { bins, order_of_bin: frames.order_of_bin, weight: (0.6 * real(many)).max(1.0) }
}

pub(super) fn over(power: &[f64], floor: &[f64]) -> Vec<f64> {
    power.iter().zip(floor).map(|(power, floor)| power / floor.max(1e-30)).collect()
}

/// The broad noise under a spectrum: block by block the median, made a mean as of noise (÷ ln 2), its logarithm in straight lines between
/// the middles of the blocks.
pub(super) fn floor(power: &[f64], fewest: usize) -> Vec<f64> {
    let mut knots: Vec<(f64, f64)> = Vec::new();
    let mut from = 0;
    while from < power.len() {
        let width = fewest.max(near(BLOCK.1 * real(from)));
        let mut block: Vec<f64> = power.iter().skip(from).take(width).copied().collect();
        let middle = real(from) + real(block.len()) / 2.0;
        knots.push((middle, (median(&mut block) / std::f64::consts::LN_2).max(1e-30).ln()));
        from += width;
    }
    let mut next = 0;
    let level = |bin: usize, next: &mut usize| {
        let place = real(bin);
        while knots.get(*next).is_some_and(|(middle, _)| *middle < place) {
            *next += 1;
        }
        match (next.checked_sub(1).and_then(|before| knots.get(before)), knots.get(*next)) {
            (Some((from, low)), Some((to, high))) => low + (high - low) * (place - from) / (to - from),
            (Some((_, only)), None) | (None, Some((_, only))) => *only,
            (None, None) => 0.0,
        }
    };
    (0..power.len()).map(|bin| level(bin, &mut next).exp()).collect()
}

/// The top of a peak between bins, by a parabola through the logarithms of three: bin and height in dB.
///
/// Smith, Spectral Audio Signal Processing, section 5.7; its bias with a Hann window is at most 0.016 bins (computed).
///
/// ```
/// use layshaft::sound::recording::spectra::peak;
/// // Two equal neighbours: half way between them.
/// let top = peak(&[0.1, 1.0, 1.0, 0.1], 1);
/// assert!(top.is_some_and(|(bin, _)| (bin - 1.5).abs() < 1e-9));
/// ```
pub fn peak(power: &[f64], bin: usize) -> Option<(f64, f64)> {
    let decibel = |value: f64| 10.0 * value.max(1e-30).log10();
    let [a, b, c] = [at(power, bin.checked_sub(1)?), *power.get(bin)?, *power.get(bin + 1)?].map(decibel);
    let bend = a - 2.0 * b + c;
    let off = if bend.abs() < 1e-12 { 0.0 } else { 0.5 * (a - c) / bend };
    Some((real(bin) + off.clamp(-1.0, 1.0), b - 0.25 * (a - c) * off))
}
