//! The parts a recording names, in words: how sure that is, what cannot be told apart, and the one test that would tell.

use super::{Asked, Findings};
use crate::problem::capital;
use crate::questions::Source;
use crate::questions::alike::listed;
use crate::questions::noise::answer::Noise;
use crate::questions::noise::kept;
use crate::questions::noise::names;
use crate::questions::noise::read::Told;
use crate::questions::noise::sentence::{Asked as Sentences, outside};
use crate::sound::by_ear::Suspect;
use crate::sound::kept::{Kept, MOST_LINES, is_same, with_one_more};
use crate::sound::recording::{Candidate, Sureness};
use crate::sound::{Moment, Origin};
use crate::units::{AngularVelocity, Frequency, number, unit};

/// The most parts that are shown.
const SHOWN: usize = 4;
/// The most that are named as one of these.
const NAMED: usize = 3;
/// The share of certainty from which a part is named among them.
const POSSIBLE: f64 = 0.1;
/// The share from which the first is named alone.
const CLEAR: f64 = 0.9;
/// The speed is said to differ from this share on.
const OFF: f64 = 0.01;

/// What a recording says.
#[derive(Clone, Debug, PartialEq)]
pub struct Heard {
    /// The answer.
    pub sentences: Vec<String>,
    /// The parts, the likeliest first.
    pub parts: Vec<Part>,
    /// The pitch of the first, in Hz, where its line is there.
    pub pitch: Option<f64>,
    /// The recordings kept with the job, and this one with them.
    pub kept: String,
}

/// A part, and its tone.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is called.
    pub name: String,
    /// Its tone in Hz.
    pub hertz: f64,
    /// The same as it is read: `1,042 Hz`.
    pub frequency: String,
    /// How likely it is and how loud: `likely, 14 dB over the noise about it`.
    pub about: String,
}

/// A recording with what its sentences are made of.
struct Recorded<'a> {
    asked: &'a Asked,
    findings: &'a Findings,
    told: &'a Told,
    source: Source<'a>,
    /// The noise at the speed that was found.
    noise: Noise<'a>,
}

/// What a recording says; none where what is typed now is not what it was asked.
pub fn heard(source: Source<'_>, asked: &Asked, findings: &Findings) -> Option<Heard> {
    let told = Told::of(source.job);
    let noise = at_found(Noise::of(source, &told).ok()?, findings.turns);
    Some(Recorded { asked, findings, told: &told, source, noise }.heard())
}

/// Every tone of what is typed, the nearest to the engine first: what can be played.
pub fn tones(source: Source<'_>) -> Vec<Part> {
    let told = Told::of(source.job);
    let Ok(noise) = Noise::of(source, &told) else { return Vec::new() };
    let tones = noise.orders.tones(noise.heard.selected).iter().filter(|tone| tone.origin != Origin::ReleaseBearing);
    let part = |suspect: Suspect| Part {
        name: capital(&names::bare(source, &told, &noise, suspect.tone.origin)),
        hertz: unit::HERTZ.number(suspect.frequency),
        frequency: names::hertz(&suspect),
        about: String::new(),
    };
    let suspects = tones.map(|tone| Suspect { tone: tone.clone(), frequency: tone.frequency(noise.moment), points: 0.0 });
    suspects.map(part).filter(|part| part.hertz > 0.0).collect()
}

/// The same noise at the speed of the engine that a recording has.
fn at_found(mut noise: Noise<'_>, turns: f64) -> Noise<'_> {
    let engine = AngularVelocity::new::<uom::si::angular_velocity::revolution_per_second>(turns);
    let by = (engine / noise.moment.engine).value;
    noise.moment = Moment { engine, output: noise.moment.output * by };
    noise.road = noise.road.map(|road| road * by);
    noise.heard.pitch = None;
    noise
}

impl Recorded<'_> {
    fn heard(&self) -> Heard {
        let ranked: Vec<(&Candidate, Suspect)> =
            self.findings.candidates.iter().filter_map(|candidate| Some((candidate, self.suspect(candidate.maker)?))).collect();
        let parts = ranked.iter().take(SHOWN).map(|(candidate, suspect)| self.part(candidate, suspect)).collect();
        let first = ranked.first().filter(|(candidate, _)| candidate.strength > 0.0);
        let pitch = first.map(|(candidate, _)| candidate.order * self.findings.turns);
        let now = self.as_kept(&ranked);
        let kept = with_one_more(&self.source.job.bench.noise.kept, &now);
        Heard { sentences: self.sentences(&ranked, &now), parts, pitch, kept }
    }

    /// What is kept of it.
    fn as_kept(&self, ranked: &[(&Candidate, Suspect)]) -> Kept {
        let line = |(candidate, _): &(&Candidate, Suspect)| {
            let frequency = Frequency::new::<uom::si::frequency::hertz>(candidate.order * self.findings.turns);
            (frequency, candidate.score)
        };
        let lines = ranked.iter().take(MOST_LINES).map(line).collect();
        Kept { selected: self.noise.heard.selected, engine: self.noise.moment.engine, lines }
    }

    /// What it says with those that were kept of other gears or speeds, and whether that is clear; none where there are none.
    fn with_others(&self, now: &Kept) -> Option<(String, bool)> {
        let others: Vec<&Kept> = self.told.kept.iter().filter(|kept| !is_same(kept, now)).collect();
        let gears: Vec<String> = others.iter().map(|kept| kept.selected.to_string()).collect();
        let all: Vec<&Kept> = others.into_iter().chain([now]).collect();
        let ranked = kept::ranked(&self.noise, &all);
        let named = self.sentence().by_recordings(&ranked).filter(|_| !gears.is_empty())?;
        Some((format!("With what was kept in {} it is {named}.", listed(&gears)), kept::sureness(&ranked) == Sureness::Clear))
    }

    /// A part of the run with its tone at the speed found.
    fn suspect(&self, maker: usize) -> Option<Suspect> {
        let tone = self.noise.orders.tone(self.noise.heard.selected, *self.asked.origins.get(maker)?)?;
        Some(Suspect { tone: tone.clone(), frequency: tone.frequency(self.noise.moment), points: 0.0 })
    }

    fn sentence(&self) -> Sentences<'_> {
        Sentences { source: self.source, told: self.told, noise: &self.noise }
    }

    fn sentences(&self, ranked: &[(&Candidate, Suspect)], now: &Kept) -> Vec<String> {
        let sentence = self.sentence();
        let moment = self.moment();
        let sureness = Sureness::of(&self.findings.candidates);
        let (Some((first, suspect)), true) = (ranked.first(), sureness != Sureness::Nothing) else {
            let nothing = format!("No part of box, shaft, axle or tyres stands out of the recording {moment}.");
            let then = self.with_others(now).map_or_else(
                || "Record where it is loudest, the phone near the noise; else look at belts, exhaust, wind and road.".into(),
                |(together, _)| together,
            );
            return vec![nothing, then];
        };
        let leaders = if sureness == Sureness::Clear { 1 } else { leaders_of(ranked) };
        let named: Vec<Suspect> = ranked.iter().take(leaders).map(|(_, suspect)| suspect.clone()).collect();
        let has = capital(&format!("{}the recording has", outside(&named)));
        let mut said = vec![format!("{has} {} {moment}.", self.named(&named, sureness))];
        let covering = first.covered_by.iter().find_map(|other| self.suspect(*other));
        let rival = covering.as_ref().or_else(|| ranked.get(1).map(|(_, suspect)| suspect));
        if let Some(other) = &covering {
            let (own, other) = (sentence.the(&suspect.tone), sentence.the(&other.tone));
            said.push(format!("At this speed in this gear {other} and {own} have the same tones: the recording cannot tell them apart."));
        } else if self.is_firing(first.order) {
            said.push(format!(
                "The engine’s firing has the same tone: press the clutch; gone, it is the engine, still there, {}.",
                sentence.the(&suspect.tone)
            ));
        }
        said.extend(self.side_tones(first, suspect));
        let together = self.with_others(now);
        let is_clear = together.as_ref().is_some_and(|(_, is_clear)| *is_clear);
        said.extend(together.map(|(together, _)| together));
        if let Some(rival) = rival.filter(|_| !is_clear) {
            let begin = if leaders == 1 && covering.is_none() { "To be sure" } else { "To tell" };
            said.push(format!("{begin}: {}", sentence.tell(suspect, rival)));
        }
        said
    }

    /// `the 3rd gear pair (1,042 Hz), clearly` or `one of the 3rd gear pair (1,042 Hz), the input pair (1,157 Hz)`.
    fn named(&self, leaders: &[Suspect], sureness: Sureness) -> String {
        let sentence = self.sentence();
        let name = |suspect: &Suspect| format!("{} ({})", sentence.the(&suspect.tone), names::hertz(suspect));
        let each: Vec<String> = leaders.iter().map(name).collect();
        match (each.as_slice(), sureness) {
            ([only], Sureness::Clear) => format!("{only} well above all else,"),
            ([first, second], _) => format!("{first} or {second}"),
            _ => format!("one of {}", listed(&each)),
        }
    }

    /// `at 40.1 mph in 3rd, 2,784 rpm (you typed 40 mph)`.
    fn moment(&self) -> String {
        let moment = self.sentence().moment();
        let off = self.asked.off(self.findings.turns);
        let middle = if self.asked.is_sweep() { "halfway, " } else { "" };
        let typed = if off.abs() < OFF {
            String::new()
        } else {
            let word = if off > 0.0 { "faster" } else { "slower" };
            format!(", {} % {word} than typed", number::show(100.0 * off.abs(), 1))
        };
        format!("{middle}at {moment}{typed}")
    }

    /// Whether a line lies on one of the first of the firing.
    fn is_firing(&self, order: f64) -> bool {
        let first = f64::from(self.asked.cylinders()) / 2.0;
        (1..=4_u8).any(|k| (order / (first * f64::from(k))).ln().abs() < 0.004)
    }

    fn side_tones(&self, candidate: &Candidate, suspect: &Suspect) -> Option<String> {
        let step = candidate.sides.first().filter(|_| suspect.tone.mesh.is_some())?;
        let hertz = Frequency::new::<uom::si::frequency::hertz>(step * self.findings.turns);
        Some(format!("Side tones stand {} apart: one tooth, or a gear off its centre.", names::frequency(hertz)))
    }

    fn part(&self, candidate: &Candidate, suspect: &Suspect) -> Part {
        let sure = match candidate.share {
            share if share > CLEAR => "likely",
            share if share > POSSIBLE => "possible",
            _ => "unlikely",
        };
        let loud = if candidate.strength > 0.0 {
            format!("{} dB over the noise about it", number::show(10.0 * candidate.strength.log10(), 0))
        } else {
            "its first tone is not heard".into()
        };
        let hertz = unit::HERTZ.number(suspect.frequency);
        let name = capital(&names::bare(self.source, self.told, &self.noise, suspect.tone.origin));
        Part { name, hertz, frequency: names::hertz(suspect), about: format!("{sure}; {loud}") }
    }
}

/// How many of the first are named where the first is not clear: at least two.
fn leaders_of(ranked: &[(&Candidate, Suspect)]) -> usize {
    let possible = ranked.iter().take_while(|(candidate, _)| candidate.share > POSSIBLE).count();
    possible.clamp(2, NAMED).min(ranked.len())
}
