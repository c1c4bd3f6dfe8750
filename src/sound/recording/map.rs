//! A recording over time: how loud every frequency is from its beginning to its end, coarse enough to be looked at.

use super::clip::Clip;
use super::places::{below, power_of_two, real};
use super::spectra::{Analyser, floor, over};

/// How loud each frequency is over time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LevelMap {
    /// How long the recording is, in seconds.
    pub seconds: f64,
    /// The frequency at the upper end, in Hz.
    pub most: f64,
    /// Levels in dB over the noise: a column for each stretch of time, in it a row for each stretch of frequency, from 0 up.
    pub columns: Vec<Vec<f64>>,
}

/// About how many columns and rows a map has.
const SIZE: (usize, usize) = (72, 90);
/// How long a frame is, in seconds: short enough for a sweep, long enough for 3 Hz.
const SECONDS: f64 = 0.35;
/// The fewest bins of a block of the floor.
const BLOCK: usize = 24;

/// A map on its way, a column at a time.
#[derive(Clone, Debug)]
pub(super) struct Mapping {
    analyser: Analyser,
    length: usize,
    hop: usize,
    from: usize,
    map: LevelMap,
}

impl Mapping {
    /// Begins at the first sample; `most` is the frequency at the upper end, in Hz.
    pub(super) fn new(clip: &Clip, most: f64) -> Self {
        let length = power_of_two(SECONDS * clip.rate, real(clip.samples.len()));
        let (columns, _) = SIZE;
        let hop = (clip.samples.len().saturating_sub(length) / columns).max(1);
        let map = LevelMap { seconds: clip.seconds(), most: most.min(clip.rate / 2.0), columns: Vec::new() };
        Self { analyser: Analyser::new(length), length, hop, from: 0, map }
    }

    /// Makes the next column; answers whether there was none left.
    pub(super) fn advance(&mut self, clip: &Clip) -> bool {
        let Some(samples) = clip.samples.get(self.from..self.from + self.length) else { return true };
        let power = self.analyser.power(samples);
        let whitened = over(&power, &floor(&power, BLOCK));
        let (_, rows) = SIZE;
        let row_of_bin = clip.rate / real(self.length) / self.map.most * real(rows);
        let mut column = vec![0.0_f64; rows];
        for (bin, value) in whitened.iter().enumerate() {
            if let Some(level) = column.get_mut(below(real(bin) * row_of_bin)) {
                *level = level.max(10.0 * value.max(1e-3).log10());
            }
        }
        self.map.columns.push(column);
        self.from += self.hop;
        false
    }

    pub(super) fn finish(self) -> LevelMap {
        self.map
    }
}
