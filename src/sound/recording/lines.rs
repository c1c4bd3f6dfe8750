//! One line of an order in the mean spectra: whether it is there, and how strong it is.

use super::places::{at, near, real};
use super::spectra::{MeanSpectrum, peak};

/// Orders below this are looked up in the longer frames.
const LOW_ORDERS: f64 = 6.0;
/// How far off a line of fixed order may stand, as a share of it.
pub const FIXED: f64 = 0.001_5;
/// The bandwidth of a third of an octave, as a share of its middle: 2^(1/6) − 2^(−1/6).
const THIRD_OCTAVE: f64 = 0.231_6;

/// A line that was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Its power over the noise of its third of an octave; nothing where it is not there.
    pub strength: f64,
    /// The order at which its top stands, between bins by a parabola.
    pub order: f64,
}

/// The spectrum in which an order is looked up: that of the longer frames for low orders.
pub fn spectrum_for(spectra: &[MeanSpectrum; 2], order: f64) -> &MeanSpectrum {
    let [short, long] = spectra;
    if order < LOW_ORDERS { long } else { short }
}

/// Measures the line of an order, all orders moved by a common shift; `share` is how far off it may stand.
pub fn measure(spectra: &[MeanSpectrum; 2], shift: f64, order: f64, share: f64) -> Measured {
    let spectrum = spectrum_for(spectra, order);
    let middle = order * shift.exp() / spectrum.order_of_bin;
    let absent = Measured { strength: 0.0, order };
    if middle < 2.0 || middle * 1.01 + 8.0 > real(spectrum.bins.len()) {
        return absent;
    }
    let found = top_of(spectrum, middle, share);
    found.map_or(absent, |top| Measured {
        strength: strength(spectrum, top, middle),
        order: peak(&spectrum.bins, top).map_or(real(top), |(bin, _)| bin) * spectrum.order_of_bin / shift.exp(),
    })
}

/// The bin of the top of a line near a place; none where there is no line.
fn top_of(spectrum: &MeanSpectrum, middle: f64, share: f64) -> Option<usize> {
    let bins = &spectrum.bins;
    let reach = (share * middle).max(1.5);
    let (low, high) = (near(middle - reach), near(middle + reach));
    let half = near(0.000_8 * middle).max(1);
    let sum = |bin: usize, half: usize| -> f64 { (bin.saturating_sub(half)..=bin + half).map(|at_bin| at(bins, at_bin) - 1.0).sum() };
    let noise = (1.5 * real(2 * half + 1)).sqrt();
    let (place, best) = (low..=high).map(|bin| (bin, sum(bin, half) / noise)).max_by(|a, b| a.1.total_cmp(&b.1))?;
    if best < (3.2 + 0.3 * real(high - low + 1).ln()) / spectrum.weight.sqrt() {
        return None;
    }
    // The skirt of a louder line is no line.
    let highest = |from: usize, to: usize| (from..=to).map(|bin| at(bins, bin)).fold(0.0, f64::max);
    let own = highest(place.saturating_sub(half), place + half);
    let about = near((0.006 * middle).max(5.0));
    if highest(place.saturating_sub(about), place + about) > 3.0 * own {
        return None;
    }
    let mut top = place;
    for _ in 0..8 + half {
        let [before, here, after] = [top.saturating_sub(1), top, top + 1].map(|bin| sum(bin, 1));
        if before > here && before >= after {
            top = top.saturating_sub(1);
        } else if after > here {
            top += 1;
        } else {
            break;
        }
    }
    (top + half + 1 >= low && top <= high + half + 1).then_some(top)
}

/// The power of a line over the noise of its third of an octave.
fn strength(spectrum: &MeanSpectrum, top: usize, middle: f64) -> f64 {
    let half = near((0.002 * middle).max(2.0));
    let power: f64 = (top.saturating_sub(half)..=top + half).map(|bin| at(&spectrum.bins, bin) - 1.0).sum::<f64>() / 1.5;
    power.max(0.0) / (THIRD_OCTAVE * middle)
}
