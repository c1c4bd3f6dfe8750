//! The whole way from samples to ranked parts, in slices: four passes for the speed, then the mean spectra, then the ranking.

use std::sync::Arc;

use super::clip::Clip;
use super::map::{LevelMap, Mapping};
use super::places::real;
use super::score::{Candidate, rank};
use super::share_out::{Kind, Maker, share_out};
use super::spectra::{Frames, Framing, MeanSpectrum, mean};
use super::track::{Line, Tracking, common_shift, passes, standing_out};
use super::turns::{ByTurns, SpeedCurve, Turning};
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
    /// The engine's turns a second as found: times in seconds and speeds, rising in time.
    pub speeds: Vec<(f64, f64)>,
    /// How loud each frequency is over time, up to a little above the tones of the likeliest parts.
    pub map: LevelMap,
}

/// The stages: the passes, the two spectra, the ranking, the map.
const STAGES: u64 = 8;
/// The seconds of the frames of the two spectra.
const SPECTRA: [f64; 2] = [2.0, 5.0];
/// Samples that are resampled between two looks at the clock.
const SAMPLES: usize = 20_000;
/// The parts whose tones the map shows, and how far above them it goes.
const MAPPED: (usize, f64) = (4, 1.3);
/// How far apart the speeds are told, in seconds.
const SPEEDS: f64 = 0.25;
/// A stage in parts, for whoever watches.
const PARTS: u64 = 100;

/// A recording that is listened to.
#[derive(Clone, Debug)]
pub struct Listening {
    clip: Arc<Clip>,
    run: Run,
    curve: SpeedCurve,
    stage: u64,
    doing: Doing,
    spectra: Vec<MeanSpectrum>,
    found: Option<Findings>,
}

/// What is under way: one pass or spectrum after the other is resampled, made into frames, and looked at.
#[derive(Clone, Debug)]
enum Doing {
    Turning(Turning),
    Framing(ByTurns, Framing),
    Tracking(ByTurns, Frames, Tracking),
    Ranking,
    Mapping(Mapping),
    Nothing,
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
    pub fn new(clip: impl Into<Arc<Clip>>, run: Run) -> Self {
        let clip = clip.into();
        let [from, to] = run.turns;
        let curve = SpeedCurve::between(from, to, clip.seconds());
        let doing = Doing::Turning(Turning::new(&clip, &curve));
        Self { clip, run, curve, stage: 0, doing, spectra: Vec::new(), found: None }
    }

    /// One unit of work: some samples, a frame, or the ranking.
    fn step(&mut self) {
        self.doing = match std::mem::replace(&mut self.doing, Doing::Nothing) {
            Doing::Turning(mut turning) => {
                if turning.advance(&self.clip, &self.curve, SAMPLES) {
                    self.framing(turning.finish(&self.clip))
                } else {
                    Doing::Turning(turning)
                }
            }
            Doing::Framing(turned, mut framing) => {
                if framing.advance(&turned) {
                    self.framed(turned, framing.finish())
                } else {
                    Doing::Framing(turned, framing)
                }
            }
            Doing::Tracking(turned, frames, mut tracking) => {
                if tracking.advance(&frames) {
                    self.tracked(&turned, &frames, tracking.finish())
                } else {
                    Doing::Tracking(turned, frames, tracking)
                }
            }
            Doing::Ranking => self.rank(),
            Doing::Mapping(mut mapping) => {
                if mapping.advance(&self.clip) {
                    self.mapped(mapping.finish())
                } else {
                    Doing::Mapping(mapping)
                }
            }
            Doing::Nothing => Doing::Nothing,
        };
    }

    /// Begins the frames of this stage.
    fn framing(&self, turned: ByTurns) -> Doing {
        let (seconds, most) = match self.pass() {
            Some(pass) => (pass.seconds, 0.5),
            None => (SPECTRA.get(self.spectra.len()).copied().unwrap_or_default(), 2.0 / 3.0),
        };
        let framing = Framing::new(&turned, self.curve.mean(), seconds, most);
        Doing::Framing(turned, framing)
    }

    fn pass(&self) -> Option<super::track::Pass> {
        usize::try_from(self.stage).ok().and_then(|place| passes(self.run.is_steady()).get(place).copied())
    }

    fn framed(&mut self, turned: ByTurns, frames: Frames) -> Doing {
        let Some(pass) = self.pass() else {
            self.spectra.push(mean(&frames));
            self.stage += 1;
            return if self.spectra.len() < SPECTRA.len() { self.framing(turned) } else { Doing::Ranking };
        };
        let known = self.run.lines();
        let lines: Vec<Line> = if pass.typed_off.is_some() {
            known
        } else {
            let quieter = known.into_iter().map(|(order, weight)| (order, 0.35 * weight));
            standing_out(&frames).into_iter().chain(quieter).collect()
        };
        let tracking = Tracking::new(&frames, &lines, pass);
        Doing::Tracking(turned, frames, tracking)
    }

    fn tracked(&mut self, turned: &ByTurns, frames: &Frames, shifts: Vec<f64>) -> Doing {
        let moved: Vec<(f64, f64)> = frames.middles.iter().map(|middle| turned.time_of(*middle)).zip(shifts).collect();
        self.curve = self.curve.moved(&moved);
        self.stage += 1;
        Doing::Turning(Turning::new(&self.clip, &self.curve))
    }

    fn rank(&mut self) -> Doing {
        self.stage += 1;
        let mut highest = f64::from(self.run.cylinders) / 2.0;
        if let Ok(spectra) = <[MeanSpectrum; 2]>::try_from(std::mem::take(&mut self.spectra)) {
            let shift = common_shift(&spectra, &self.run.lines());
            let shared = share_out(&spectra, shift, &self.run.makers, self.run.cylinders);
            let candidates = rank(&shared, &spectra, shift, &self.run.makers);
            let [mut spectrum, _] = spectra;
            spectrum.order_of_bin /= shift.exp();
            let likeliest = candidates.iter().take(MAPPED.0).filter_map(|candidate| self.run.makers.get(candidate.maker));
            highest = likeliest.map(|maker| maker.order).fold(highest, f64::max);
            let scale = shift.exp();
            let speeds = self.speeds().map(|(time, speed)| (time, speed * scale)).collect();
            self.found = Some(Findings { turns: self.curve.mean() * scale, candidates, spectrum, speeds, map: LevelMap::default() });
        }
        let fastest = self.speeds().map(|(_, speed)| speed).fold(0.0, f64::max);
        Doing::Mapping(Mapping::new(&self.clip, MAPPED.1 * highest * fastest))
    }

    fn speeds(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let many = super::places::below(self.clip.seconds() / SPEEDS);
        (0..=many).map(|place| real(place) * SPEEDS).map(|time| (time, self.curve.at(time)))
    }

    fn mapped(&mut self, map: LevelMap) -> Doing {
        if let Some(found) = &mut self.found {
            found.map = map;
        }
        self.stage = STAGES;
        Doing::Nothing
    }

    /// How far this stage is, 0 to 1: to resample and to track takes about as long as to make the frames.
    fn share(&self) -> f64 {
        match &self.doing {
            Doing::Turning(turning) => 0.3 * turning.share(&self.clip),
            Doing::Framing(turned, framing) => 0.3 + 0.4 * framing.share(turned),
            Doing::Tracking(_, frames, tracking) => 0.7 + 0.3 * tracking.share(frames),
            Doing::Ranking | Doing::Mapping(_) | Doing::Nothing => 0.0,
        }
    }
}

impl Sliced for Listening {
    type Found = Option<Findings>;

    fn advance(&mut self, budget: u64) -> Progress {
        for _ in 0..budget.max(1) {
            if self.stage >= STAGES {
                break;
            }
            self.step();
        }
        let within = super::places::below(self.share() * real(100)).min(99);
        let done = self.stage * PARTS + u64::try_from(within).unwrap_or(0);
        Progress { done, of: STAGES * PARTS, is_finished: self.stage >= STAGES }
    }

    fn found(&self) -> Option<Findings> {
        self.found.clone()
    }
}
