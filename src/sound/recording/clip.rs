//! A recording as samples, checked: not silent, not clipped, long enough, not too long, brought down to the rate that is needed.

use super::places::real;
use crate::problem::Explain;

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
    /// Too short to tell tones apart.
    TooShort {
        /// How long it is, in seconds.
        seconds: f64,
    },
    /// Longer than is listened to.
    TooLong {
        /// How long it is, in seconds.
        seconds: f64,
    },
    /// No samples that are numbers.
    NoSound,
}

impl Explain for ClipError {
    fn what(&self) -> String {
        match self {
            Self::Silent => "the recording is silent".into(),
            Self::Clipped => "the recording is clipped: it was too loud for the microphone".into(),
            Self::TooShort { seconds } => format!("the recording is too short: {seconds:.1} s"),
            Self::TooLong { seconds } => format!("the recording is too long: {:.0} min", seconds / 60.0),
            Self::NoSound => "the file holds no sound".into(),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Silent => "check that the microphone is not covered or switched off, and record again",
            Self::Clipped => "hold the phone further away or under a coat, and record again",
            Self::TooShort { .. } => "hold a steady speed and record 15 to 30 s",
            Self::TooLong { .. } => "cut out 20 to 30 s at a steady speed, 2 min at most",
            Self::NoSound => "open a sound file, or record again",
        }
        .into()
    }
}

impl Clip {
    /// Checks samples, full scale 1, and brings them down to the rate that is needed.
    ///
    /// # Errors
    /// What is wrong with them.
    pub fn new(samples: &[f32], rate: f64) -> Result<Self, ClipError> {
        if samples.is_empty() || !(rate.is_finite() && rate >= 4_000.0) || samples.iter().any(|sample| !sample.is_finite()) {
            return Err(ClipError::NoSound);
        }
        let seconds = real(samples.len()) / rate;
        let (least, most) = SECONDS;
        if seconds < least {
            return Err(ClipError::TooShort { seconds });
        }
        if seconds > most {
            return Err(ClipError::TooLong { seconds });
        }
        let full = samples.iter().map(|sample| f64::from(sample.abs())).fold(0.0, f64::max);
        let mean = samples.iter().map(|sample| f64::from(*sample)).sum::<f64>() / real(samples.len());
        let power = samples.iter().map(|sample| (f64::from(*sample) - mean).powi(2)).sum::<f64>() / real(samples.len());
        if power.sqrt() < SILENT {
            return Err(ClipError::Silent);
        }
        let at_full = samples.iter().filter(|sample| f64::from(sample.abs()) >= 0.999 * full.max(0.9)).count();
        if real(at_full) > CLIPPED * real(samples.len()) {
            return Err(ClipError::Clipped);
        }
        let samples: Vec<f64> = samples.iter().map(|sample| f64::from(*sample) - mean).collect();
        Ok(Self { samples, rate }.brought_down())
    }

    /// How long it is, in seconds.
    pub fn seconds(&self) -> f64 {
        real(self.samples.len()) / self.rate
    }

    /// Every n-th sample of the recording, smoothed so that nothing folds down from above.
    ///
    /// A windowed sinc (Hann) of 24 zero crossings, cut at 0.45 of the new rate: the usual way of any textbook of signal processing.
    fn brought_down(self) -> Self {
        let mut step = 1;
        while self.rate / real(step + 1) >= ENOUGH {
            step += 1;
        }
        if step == 1 {
            return self;
        }
        let half = 12 * step;
        let weight = |offset: f64| {
            let x = offset * 0.9 / real(step);
            let sinc = if x == 0.0 { 1.0 } else { (std::f64::consts::PI * x).sin() / (std::f64::consts::PI * x) };
            let hann = 0.5 + 0.5 * (std::f64::consts::PI * offset / (real(half) + 1.0)).cos();
            sinc * hann * 0.9 / real(step)
        };
        let weights: Vec<f64> = (0..=2 * half).map(|at| weight(real(at) - real(half))).collect();
        let windows = self.samples.windows(weights.len()).step_by(step);
        let samples = windows.map(|window| window.iter().zip(&weights).map(|(sample, weight)| sample * weight).sum()).collect();
        Self { samples, rate: self.rate / real(step) }
    }
}
