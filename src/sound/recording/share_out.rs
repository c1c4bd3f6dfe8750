//! Lines that coincide are shared out among the parts and the engine, each by the usual fall of its harmonics.

use super::lines::{FIXED, measure, spectrum_for};
use super::places::{at, median, real};
use super::spectra::MeanSpectrum;

/// What makes lines, and how they fall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A mesh of teeth.
    Mesh,
    /// The driveshaft, once a turn.
    Driveshaft,
    /// Its joints, twice a turn.
    Joint,
    /// A tyre, once a turn.
    Tyre,
    /// A bearing: its order is that of the outer race.
    Bearing {
        /// The order of the inner race.
        inner: f64,
    },
}

/// A part that may make lines, told by orders of the engine.
#[derive(Clone, Debug, PartialEq)]
pub struct Maker {
    /// How its lines fall.
    pub kind: Kind,
    /// Its order: repeats for one turn of the engine.
    pub order: f64,
    /// How far its side lines stand apart, in orders.
    pub sides: Vec<f64>,
}

/// Orders of the engine that are looked at.
const HALF_ORDERS: u8 = 80;
/// A bearing runs low by up to two percent.
const SLIPS: u8 = 22;
/// The tolerance of a bearing's line, once its slip is chosen.
const TIGHT: f64 = 0.000_8;
/// Rounds of sharing out.
const ROUNDS: usize = 40;
/// Where two parts explain the same lines equally, the first share decides: the engine gets it, which is meant.
const START: [f64; 3] = [5.0, 0.1, 0.03];

impl Kind {
    /// The power of each harmonic beside the first.
    pub(super) fn profile(self) -> &'static [f64] {
        match self {
            Self::Mesh | Self::Bearing { .. } => &[1.0, 0.4, 0.2, 0.1],
            Self::Driveshaft => &[1.0, 0.2, 0.07],
            Self::Joint => &[1.0, 0.25],
            Self::Tyre => &[1.0, 0.6, 0.4, 0.25, 0.15, 0.1],
        }
    }
}

/// One set of lines that rises and falls together.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Voice {
    /// The part it belongs to; none for the engine.
    pub maker: Option<usize>,
    /// Its lines: order and power beside the first.
    pub lines: Vec<(f64, f64)>,
    start: f64,
}

/// A line of the spectrum that one or several voices may make.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Node {
    /// The order of the first line in it.
    pub order: f64,
    /// What was measured there.
    pub strength: f64,
    /// The share of each voice at power 1.
    pub shares: Vec<f64>,
}

/// What is shared out: the voices, the nodes, and what of each node each voice is credited with.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Shared {
    pub voices: Vec<Voice>,
    pub nodes: Vec<Node>,
    /// By voice, then by node.
    pub credit: Vec<Vec<f64>>,
}

/// The engine's lines: firing, falling with the square, and half orders.
fn engine(cylinders: u8) -> [Voice; 2] {
    let firing = (1..=16_u8).map(|k| (f64::from(k) * f64::from(cylinders) / 2.0, f64::from(k).powi(-2)));
    let half = (1..=HALF_ORDERS).map(|k| {
        let order = f64::from(k) / 2.0;
        (order, (order / 2.0).powf(-1.3).min(1.0))
    });
    let [start, ..] = START;
    [Voice { maker: None, lines: firing.collect(), start }, Voice { maker: None, lines: half.collect(), start }]
}

fn harmonics(order: f64, kind: Kind) -> Vec<(f64, f64)> {
    kind.profile().iter().zip(1..=u8::MAX).map(|(power, k)| (order * f64::from(k), *power)).collect()
}

/// The voices of all parts; bearings, whose slip is not known, where they fit best beside the others.
pub(super) fn voices(spectra: &[MeanSpectrum; 2], shift: f64, makers: &[Maker], cylinders: u8) -> Vec<Voice> {
    let [_, part, bearing] = START;
    let mut voices: Vec<Voice> = engine(cylinders).to_vec();
    for (place, maker) in makers.iter().enumerate().filter(|(_, maker)| !matches!(maker.kind, Kind::Bearing { .. })) {
        voices.push(Voice { maker: Some(place), lines: harmonics(maker.order, maker.kind), start: part });
    }
    let taken = taken(spectra, shift, makers, &voices);
    for (place, maker) in makers.iter().enumerate() {
        let Kind::Bearing { inner } = maker.kind else { continue };
        let races = [maker.order, inner].map(|order| harmonics(order, maker.kind));
        let free = |line: &(f64, f64)| {
            let bin = spectrum_for(spectra, line.0).order_of_bin;
            !taken.iter().any(|order| (order - line.0).abs() < (4.0 * bin).max(0.006 * line.0))
        };
        let slipped =
            |slip: f64| races.clone().map(|race| race.into_iter().map(|(order, power)| (order * slip, power)).filter(free).collect());
        let fit = |slip: f64| -> f64 {
            let races: [Vec<(f64, f64)>; 2] = slipped(slip);
            races.iter().flatten().map(|(order, _)| measure(spectra, shift, *order, TIGHT).strength.min(30.0).sqrt()).sum()
        };
        let best = (0..=SLIPS).map(|step| 0.979 + 0.001 * f64::from(step)).map(|slip| (slip, fit(slip))).max_by(|a, b| a.1.total_cmp(&b.1));
        let races: [Vec<(f64, f64)>; 2] = slipped(best.map_or(1.0, |(slip, _)| slip));
        voices.extend(races.into_iter().map(|lines| Voice { maker: Some(place), lines, start: bearing }));
    }
    voices
}

/// The lines that bearings must keep clear of: all fixed ones, and the side lines of the two loudest meshes.
fn taken(spectra: &[MeanSpectrum; 2], shift: f64, makers: &[Maker], voices: &[Voice]) -> Vec<f64> {
    let mut taken: Vec<f64> = voices.iter().flat_map(|voice| voice.lines.iter().map(|(order, _)| *order)).collect();
    let mut meshes: Vec<(&Maker, f64)> = makers
        .iter()
        .filter(|maker| maker.kind == Kind::Mesh)
        .map(|maker| (maker, measure(spectra, shift, maker.order, FIXED).strength))
        .collect();
    crate::order::by(&mut meshes, |a, b| b.1.total_cmp(&a.1));
    for (maker, _) in meshes.iter().take(2) {
        for side in &maker.sides {
            for k in 1..=3_u8 {
                let step = f64::from(k) * side;
                taken.extend([1.0, 2.0].iter().flat_map(|harmonic| [harmonic * maker.order - step, harmonic * maker.order + step]));
            }
        }
    }
    taken
}

/// The nodes of all voices, each measured: lines nearer than the spectrum parts, or than 0.18 %, are one.
fn nodes(spectra: &[MeanSpectrum; 2], shift: f64, voices: &[Voice], makers: &[Maker]) -> Vec<Node> {
    let mut all: Vec<(f64, usize, f64)> =
        voices.iter().enumerate().flat_map(|(voice, own)| own.lines.iter().map(move |(order, power)| (*order, voice, *power))).collect();
    crate::order::by(&mut all, |a, b| a.0.total_cmp(&b.0));
    let mut nodes: Vec<Node> = Vec::new();
    for (order, voice, power) in all {
        let bin = spectrum_for(spectra, order).order_of_bin;
        let is_new = nodes.last().is_none_or(|node| order - node.order >= (1.6 * bin).max(0.001_8 * node.order));
        if is_new {
            let maker = voices.get(voice).and_then(|voice| makers.get(voice.maker?));
            let is_bearing = maker.is_some_and(|maker| matches!(maker.kind, Kind::Bearing { .. }));
            let strength = measure(spectra, shift, order, if is_bearing { TIGHT } else { FIXED }).strength;
            nodes.push(Node { order, strength, shares: vec![0.0; voices.len()] });
        }
        if let Some(share) = nodes.last_mut().and_then(|node| node.shares.get_mut(voice)) {
            *share = share.max(power);
        }
    }
    nodes
}

/// Shares the nodes out: powers of the voices that explain what was measured (multiplicative updates, Lee and Seung), then the part of
/// each node that each voice explains, less what the engine would do there alone.
pub(super) fn share_out(spectra: &[MeanSpectrum; 2], shift: f64, makers: &[Maker], cylinders: u8) -> Shared {
    let voices = voices(spectra, shift, makers, cylinders);
    let nodes = nodes(spectra, shift, &voices, makers);
    let mut powers: Vec<f64> = voices.iter().map(|voice| voice.start).collect();
    let explained = |powers: &[f64], node: &Node| node.shares.iter().zip(powers).map(|(share, power)| share * power).sum::<f64>() + 1e-9;
    for _ in 0..ROUNDS {
        let mut above = vec![0.0; powers.len()];
        let mut below = vec![1e-12; powers.len()];
        for node in &nodes {
            let by = node.strength / explained(&powers, node);
            for ((above, below), share) in above.iter_mut().zip(&mut below).zip(&node.shares) {
                *above += share * by;
                *below += share;
            }
        }
        powers.iter_mut().zip(above.iter().zip(&below)).for_each(|(power, (above, below))| *power *= above / below);
    }
    let level = engine_level(&voices, &nodes);
    let of = |voice: usize| {
        let credit = |node: &Node| {
            let part = at(&node.shares, voice) * at(&powers, voice) / explained(&powers, node);
            let engine = at(&node.shares, 1).max(at(&node.shares, 0));
            let expected = if engine > 0.0 { (level * engine).max(0.02) } else { 0.0 };
            part * node.strength * (1.0 - 5.0 * expected / node.strength.max(1e-9)).max(0.0)
        };
        nodes.iter().map(credit).collect()
    };
    let credit = (0..voices.len()).map(of).collect();
    Shared { voices, nodes, credit }
}

/// What the engine's half orders come to: the middle of the first eight lines that no part has.
fn engine_level(voices: &[Voice], nodes: &[Node]) -> f64 {
    let is_own = |node: &&Node| {
        let others = node.shares.iter().zip(voices).any(|(share, voice)| voice.maker.is_some() && *share > 0.0);
        at(&node.shares, 1) > 0.0 && !others
    };
    let mut levels: Vec<f64> = nodes.iter().filter(is_own).take(8).map(|node| node.strength / at(&node.shares, 1)).collect();
    let many = real(levels.len());
    if many > 0.0 { median(&mut levels) } else { 0.0 }
}
