//! The parts of a recording ranked, and how sure that is, in words.

use super::lines::{FIXED, measure};
use super::places::{at, real};
use super::share_out::{Kind, Maker, Shared};
use super::spectra::MeanSpectrum;

/// A part with its score.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// Its place among the parts that were asked for.
    pub maker: usize,
    /// Its score in dB over the noise.
    pub score: f64,
    /// The strength of its own line, over the noise of its third of an octave; nothing where it is not there.
    pub strength: f64,
    /// The order at which its own line stands, between bins by a parabola; where it should stand if it is not there.
    pub order: f64,
    /// How far those of its side lines stand apart that are there on both sides, in orders.
    pub sides: Vec<f64>,
    /// The other parts on whose lines its first two both lie; none where one of the two is its own alone.
    pub covered_by: Vec<usize>,
    /// Its share of certainty, 0 to 1. Above 0.9 it can be believed; between 0.4 and 0.8 it is not calibrated.
    pub share: f64,
}

/// How sure a recording is of its first part, in words: from a trial on synthetic recordings, where of what was said with more than 0.9 at
/// least 94 in 100 was right, of what was said with less about half.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sureness {
    /// Above 0.9.
    Clear,
    /// Above 0.4: one of the first few.
    OneOfThese,
    /// Nothing stands out.
    Nothing,
}

impl Sureness {
    /// Of ranked parts.
    pub fn of(candidates: &[Candidate]) -> Self {
        match candidates.first() {
            Some(first) if first.score < FAINT => Self::Nothing,
            Some(first) if first.share > 0.9 => Self::Clear,
            Some(_) => Self::OneOfThese,
            None => Self::Nothing,
        }
    }

    /// The spread of scores, in dB: fitted on half of the trial's recordings.
    pub const SPREAD: f64 = 2.0;

    /// Of scores in dB, the first the highest.
    pub fn of_fits(fits: impl Iterator<Item = f64>) -> Self {
        let fits: Vec<f64> = fits.collect();
        let Some(first) = fits.first().copied() else { return Self::Nothing };
        let sum: f64 = fits.iter().map(|fit| ((fit - first) / Self::SPREAD).exp()).sum();
        if 1.0 / sum > 0.9 { Self::Clear } else { Self::OneOfThese }
    }
}

/// Below this score nothing of any part is heard: its lines together are a tenth of the noise about them.
const FAINT: f64 = -10.0;

/// Ranks the parts by what they are credited with.
pub(super) fn rank(shared: &Shared, spectra: &[MeanSpectrum; 2], shift: f64, makers: &[Maker]) -> Vec<Candidate> {
    let of = |(place, maker): (usize, &Maker)| {
        let voices = shared.voices.iter().enumerate().filter(|(_, voice)| voice.maker == Some(place)).map(|(voice, _)| voice);
        let score = voices.map(|voice| of_voice(shared, voice, maker)).fold(f64::NEG_INFINITY, f64::max);
        let own = measure(spectra, shift, maker.order, FIXED);
        let sides = side_lines(shared, spectra, shift, maker);
        Candidate {
            maker: place,
            score: score + (1.5 * real(sides.len())).min(3.0),
            strength: own.strength,
            order: own.order,
            sides,
            covered_by: covered_by(place, makers),
            share: 0.0,
        }
    };
    let mut ranked: Vec<Candidate> = makers.iter().enumerate().map(of).collect();
    crate::order::by(&mut ranked, |a, b| b.score.total_cmp(&a.score));
    shares(&mut ranked);
    ranked
}

fn of_voice(shared: &Shared, voice: usize, maker: &Maker) -> f64 {
    let credit = shared.credit.get(voice).map(Vec::as_slice).unwrap_or_default();
    let sum: f64 = credit.iter().sum();
    let is_race = matches!(maker.kind, Kind::Bearing { .. });
    let mut score = 10.0 * (sum + 0.001).log10() - if is_race { 2.5 } else { 0.0 };
    // What the engine covers is not silent: its lines are held for a part of what stands there.
    let strong: Vec<f64> = shared.nodes.iter().filter(|node| at(&node.shares, voice) >= 0.35).map(|node| node.strength).collect();
    if !is_race && !strong.is_empty() {
        score = score.max(10.0 * (strong.iter().sum::<f64>() / real(strong.len()) + 1e-6).log10() - 12.0);
    }
    let found = shared.nodes.iter().filter(|node| at(&node.shares, voice) > 0.0 && node.strength > 0.0).count();
    if matches!(maker.kind, Kind::Mesh | Kind::Bearing { .. }) && found < 2 { score - 2.0 } else { score }
}

/// How far those side lines stand apart, as measured, that are there on both sides of a harmonic, where not both are somebody's own; each
/// counts 1.5 dB, 3 dB at most.
fn side_lines(shared: &Shared, spectra: &[MeanSpectrum; 2], shift: f64, maker: &Maker) -> Vec<f64> {
    let is_known = |order: f64| shared.nodes.iter().any(|node| (node.order - order).abs() < 0.002 * order);
    let mut found = Vec::new();
    for side in &maker.sides {
        for harmonic in [1.0, 2.0] {
            for step in [1.0, 2.0] {
                let both = [-1.0, 1.0].map(|sign| harmonic * maker.order + sign * step * side);
                let [below, above] = both.map(|order| measure(spectra, shift, order, FIXED));
                if below.strength > 0.0 && above.strength > 0.0 && !both.iter().all(|order| is_known(*order)) {
                    found.push((above.order - below.order) / (2.0 * step));
                }
            }
        }
    }
    found
}

/// The other parts on whose lines, within 0.4 %, the first and the second line of a part lie; none where either is its own alone.
fn covered_by(place: usize, makers: &[Maker]) -> Vec<usize> {
    let Some(own) = makers.get(place) else { return Vec::new() };
    let meets = |other: &Maker, order: f64| {
        let many = other.kind.profile().len();
        (1..=many).any(|k| (real(k) * other.order / order).ln().abs() < 0.004)
    };
    let over = |order: f64| makers.iter().enumerate().filter(move |(other, maker)| *other != place && meets(maker, order));
    let (first, second): (Vec<usize>, Vec<usize>) =
        (over(own.order).map(|(other, _)| other).collect(), over(2.0 * own.order).map(|(other, _)| other).collect());
    if first.is_empty() || second.is_empty() {
        return Vec::new();
    }
    let more: Vec<usize> = second.into_iter().filter(|other| !first.contains(other)).collect();
    [first, more].concat()
}

fn shares(ranked: &mut [Candidate]) {
    let Some(most) = ranked.first().map(|first| first.score) else { return };
    let weight = |candidate: &Candidate| ((candidate.score.max(most - 40.0) - most) / Sureness::SPREAD).exp();
    let sum: f64 = ranked.iter().map(weight).sum();
    let many = real(ranked.len());
    for candidate in ranked.iter_mut() {
        let share = 0.97 * weight(candidate) / sum + 0.03 / many;
        candidate.share = if candidate.covered_by.is_empty() { share } else { share.min(0.5) };
    }
}
