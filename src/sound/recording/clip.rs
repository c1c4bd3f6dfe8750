//! A recording as samples, checked: not silent, not clipped, long enough, not too long, brought down to the rate that is needed.

use std::sync::Arc;

use super::places::real;
use crate::sliced::{Progress, Sliced};

/// The rate that recordings are brought down to, or a little above, in samples a second: tones up to 5 kHz are heard.
const ENOUGH: f64 = 12_000.0;
/// The shortest and the longest recording that is listened to, in seconds.
pub const SECONDS: (f64, f64) = (4.0, 120.0);
/// Below this share of full scale nothing but the microphone's own hiss is heard.
const SILENT: f64 = 1e-4;
/// The share of samples at full scale from which a recording is clipped.
const CLIPPED: f64 = 0.002;

/// A checked recording.
#[derive(Clone, Debug, PartialEq)]
pub struct Clip {
    /// Its samples, mean removed.
    pub samples: Vec<f64>,
    /// Samples a second.
    pub rate: f64,
}

/// Why a recording tells nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ClipError {
    /// Nothing is heard in it.
    Silent,
    /// Too loud for the microphone.
    Clipped,
    /// Too short to tell tones apart: how long it is, in seconds.
    TooShort(f64),
    /// Longer than is listened to: how long it is, in seconds.
    TooLong(f64),
    /// No samples that are numbers.
    NoSound,
}

explain! { ClipError:
    Self::Silent => "the recording is silent", "check that the microphone is not covered or switched off, and record again";
    Self::Clipped => "the recording is clipped: it was too loud for the microphone",
        "hold the phone further away or under a coat, and record again";
    Self::TooShort(seconds) => format!("the recording is too short: {seconds:.1} s"), "hold a steady speed and record 15 to 30 s";
    Self::TooLong(seconds) => format!("the recording is too long: {:.0} min", seconds / 60.0),
        "cut out 20 to 30 s at a steady speed, 2 min at most";
    Self::NoSound => "the file holds no sound", "open a sound file, or record again";
}

impl Clip {
    /// Checks samples, full scale 1, and brings them down to the rate that is needed.
    ///
    /// # Errors
    /// What is wrong with them.
    pub fn new(samples: &[f32], rate: f64) -> Result<Self, ClipError> {
        let mut intake = Intake::new(samples.to_vec(), rate)?;
        while !intake.advance(u64::MAX).is_finished {}
        intake.found().map_or(Err(ClipError::NoSound), |clip| Ok(Arc::unwrap_or_clone(clip)))
    }

    /// How long it is, in seconds.
    pub fn seconds(&self) -> f64 {
        real(self.samples.len()) / self.rate
    }
}

/// A recording that is taken in: checked at once, then brought down in slices.
#[derive(Clone, Debug)]
pub struct Intake {
    samples: Vec<f32>,
    rate: f64,
    mean: f64,
    /// Of so many samples one is kept.
    step: usize,
    weights: Vec<f64>,
    kept: Vec<f64>,
    clip: Option<Arc<Clip>>,
}

impl Intake {
    /// Checks samples, full scale 1.
    ///
    /// # Errors
    /// What is wrong with them.
    pub fn new(samples: Vec<f32>, rate: f64) -> Result<Self, ClipError> {
        let mean = checked(&samples, rate)?;
        let mut step = 1;
        while rate / real(step + 1) >= ENOUGH {
            step += 1;
        }
        let weights = if step == 1 { vec![1.0] } else { low_pass(step) };
        Ok(Self { samples, rate, mean, step, weights, kept: Vec::new(), clip: None })
    }

    fn many(&self) -> usize {
        (self.samples.len() + self.step).saturating_sub(self.weights.len()) / self.step
    }

    /// Every n-th sample of the recording, smoothed so that nothing folds down from above.
    fn bring_down(&mut self, many: usize) {
        let windows = self.samples.windows(self.weights.len()).step_by(self.step).skip(self.kept.len()).take(many);
        let smooth =
            |window: &[f32]| window.iter().zip(&self.weights).map(|(sample, weight)| (f64::from(*sample) - self.mean) * weight).sum();
        let next: Vec<f64> = windows.map(smooth).collect();
        self.kept.extend(next);
    }
}

impl Sliced for Intake {
    type Found = Option<Arc<Clip>>;

    fn advance(&mut self, budget: u64) -> Progress {
        let of = self.many();
        if self.clip.is_none() {
            self.bring_down(usize::try_from(budget).unwrap_or(usize::MAX));
            if self.kept.len() >= of {
                let samples = std::mem::take(&mut self.kept);
                self.clip = Some(Arc::new(Clip { samples, rate: self.rate / real(self.step) }));
            }
        }
        let done = if self.clip.is_some() { of } else { self.kept.len() };
        let count = |places: usize| u64::try_from(places).unwrap_or(u64::MAX);
        Progress { done: count(done), of: count(of), is_finished: self.clip.is_some() }
    }

    fn found(&self) -> Option<Arc<Clip>> {
        self.clip.clone()
    }
}

/// Checks samples; answers their mean.
fn checked(samples: &[f32], rate: f64) -> Result<f64, ClipError> {
    if samples.is_empty() || !(rate.is_finite() && rate >= 4_000.0) || samples.iter().any(|sample| !sample.is_finite()) {
        return Err(ClipError::NoSound);
    }
    let seconds = real(samples.len()) / rate;
    let (least, most) = SECONDS;
    if seconds < least {
        return Err(ClipError::TooShort(seconds));
    }
    if seconds > most {
        return Err(ClipError::TooLong(seconds));
    }
    let full = samples.iter().map(|sample| f64::from(sample.abs())).fold(0.0, f64::max);
    let mean = samples.iter().map(|sample| f64::from(*sample)).sum::<f64>() / real(samples.len());
    let power = samples.iter().map(|sample| (f64::from(*sample) - mean).powi(2)).sum::<f64>() / real(samples.len());
    if power.sqrt() < SILENT {
        return Err(ClipError::Silent);
    }
    // Resampled on its way here, what was cut off swings a little over full scale.
    let at_full = samples.iter().filter(|sample| f64::from(sample.abs()) >= 0.999 * full.clamp(0.9, 1.0)).count();
    if real(at_full) > CLIPPED * real(samples.len()) {
        return Err(ClipError::Clipped);
    }
    Ok(mean)
}

/// A windowed sinc (Hann) of 24 zero crossings, cut at 0.45 of the new rate: the usual way of any textbook of signal processing.
fn low_pass(step: usize) -> Vec<f64> {
    let half = 12 * step;
    let weight = |offset: f64| {
        let x = offset * 0.9 / real(step);
        let sinc = if x == 0.0 { 1.0 } else { (std::f64::consts::PI * x).sin() / (std::f64::consts::PI * x) };
        let hann = 0.5 + 0.5 * (std::f64::consts::PI * offset / (real(half) + 1.0)).cos();
        sinc * hann * 0.9 / real(step)
    };
    (0..=2 * half).map(|at| weight(real(at) - real(half))).collect()
}
