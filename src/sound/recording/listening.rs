//! The whole way from samples to ranked parts, in slices: four passes for the speed, then the mean spectra, then the ranking.

use super::clip::Clip;
use super::score::{Candidate, rank};
use super::share_out::{Maker, share_out};
use super::spectra::{MeanSpectrum, frames, mean};
use super::track::{Line, Pass, common_shift, passes, shifts, standing_out};
use super::turns::{ByTurns, SpeedCurve};
use crate::sliced::{Progress, Sliced};

/// What was said of a recording: how fast the engine turned, and what may be heard.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// The engine's turns a second at its beginning and its end, as typed.
    pub turns: [f64; 2],
    /// The cylinders of the engine.
    pub cylinders: u8,
    /// The parts that may be heard.
    pub makers: Vec<Maker>,
}

/// What a recording says.
#[derive(Clone, Debug, PartialEq)]
pub struct Findings {
    /// The engine's mean turns a second, as found.
    pub turns: f64,
    /// The parts, the likeliest first.
    pub candidates: Vec<Candidate>,
    /// The spectrum by orders of the engine, noise at 1: the shorter frames.
    pub spectrum: MeanSpectrum,
}

/// How many steps the work has: the passes, the spectra, the ranking.
const STEPS: u64 = 6;

/// A recording that is listened to.
#[derive(Clone, Debug)]
pub struct Listening {
    clip: Clip,
    run: Run,
    curve: SpeedCurve,
    done: u64,
    spectra: Option<[MeanSpectrum; 2]>,
    found: Option<Findings>,
}

impl Run {
    fn is_steady(&self) -> bool {
        let [from, to] = self.turns;
        (to / from).ln().abs() < 0.02
    }

    /// The lines that the first pass knows.
    fn lines(&self) -> Vec<Line> {
        let firing = (1..=8_u8).map(|k| (f64::from(k) * f64::from(self.cylinders) / 2.0, f64::from(k).powf(-0.25)));
        let half = (1..=12_u8).map(|k| (f64::from(k) / 2.0, 0.3));
        let mut lines: Vec<Line> = firing.chain(half).collect();
        for maker in &self.makers {
            use super::share_out::Kind;
            match maker.kind {
                Kind::Mesh => lines.extend([(1.0, 1.0), (2.0, 0.7), (3.0, 0.5)].map(|(k, weight)| (k * maker.order, weight))),
                Kind::Driveshaft | Kind::Joint => lines.push((maker.order, 0.3)),
                Kind::Tyre | Kind::Bearing { .. } => {}
            }
        }
        lines
    }
}

impl Listening {
    /// Begins to listen.
    pub fn new(clip: Clip, run: Run) -> Self {
        let [from, to] = run.turns;
        let curve = SpeedCurve::between(from, to, clip.seconds());
        Self { clip, run, curve, done: 0, spectra: None, found: None }
    }

    fn step(&mut self) {
        match usize::try_from(self.done).ok().and_then(|place| passes(self.run.is_steady()).get(place).copied()) {
            Some(pass) => self.track(pass),
            None if self.spectra.is_none() => {
                let turned = ByTurns::of(&self.clip, &self.curve);
                let of = |seconds| mean(&frames(&turned, self.curve.mean(), seconds, 2.0 / 3.0));
                self.spectra = Some([of(2.0), of(5.0)]);
            }
            None => self.rank(),
        }
        self.done += 1;
    }

    fn track(&mut self, pass: Pass) {
        let turned = ByTurns::of(&self.clip, &self.curve);
        let frames = frames(&turned, self.curve.mean(), pass.seconds, 0.5);
        let known = self.run.lines();
        let lines = if pass.typed_off.is_some() {
            known
        } else {
            let quieter = known.into_iter().map(|(order, weight)| (order, 0.35 * weight));
            standing_out(&frames).into_iter().chain(quieter).collect()
        };
        let shifts = shifts(&frames, &lines, pass);
        let moved: Vec<(f64, f64)> = frames.middles.iter().map(|middle| turned.time_of(*middle)).zip(shifts).collect();
        self.curve = self.curve.moved(&moved);
    }

    fn rank(&mut self) {
        let Some(spectra) = &self.spectra else { return };
        let shift = common_shift(spectra, &self.run.lines());
        let shared = share_out(spectra, shift, &self.run.makers, self.run.cylinders);
        let candidates = rank(&shared, spectra, shift, &self.run.makers);
        let [spectrum, _] = spectra;
        self.found = Some(Findings { turns: self.curve.mean() * shift.exp(), candidates, spectrum: spectrum.clone() });
    }
}

impl Sliced for Listening {
    type Found = Option<Findings>;

    fn advance(&mut self, budget: u64) -> Progress {
        for _ in 0..budget.max(1) {
            if self.done >= STEPS {
                break;
            }
            self.step();
        }
        Progress { done: self.done, of: STEPS, is_finished: self.done >= STEPS }
    }

    fn found(&self) -> Option<Findings> {
        self.found.clone()
    }
}
