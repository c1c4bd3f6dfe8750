//! The answer in a few sentences: which part, its tone then, and the test that tells it from the next.

use super::answer::Noise;
use super::names;
use super::read::Told;
use crate::gearing::speeds::Selected;
use crate::problem::capital;
use crate::questions::alike::listed;
use crate::questions::{Source, Station};
use crate::sheet::Said;
use crate::sound::by_ear::Suspect;
use crate::sound::tell_apart::{Test, Which, neither_carries};
use crate::sound::tone::Whereabouts;
use crate::sound::{Origin, Tone};
use crate::units::number;

/// The most parts that are named as alike.
const MOST_NAMED: usize = 3;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let told = Told::of(source.job);
    let Ok(noise) = Noise::of(source, &told) else { return Station::at_bench("by what you hear") };
    let first = noise.leaders().first();
    Station::at_bench(first.map_or_else(
        || "by what you hear".into(),
        |first| format!("{}: {}", names::bare(source, &told, &noise, first.tone.origin), names::hertz(first)),
    ))
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let told = Told::of(source.job);
    if told.selected.is_none() {
        return Said::default();
    }
    let noise = match Noise::of(source, &told) {
        Ok(noise) => noise,
        Err(why) => return Said::new(format!("{}.", capital(&why))),
    };
    let asked = Asked { source, told: &told, noise: &noise };
    Said::of(asked.kept_said().into_iter().chain(asked.sentences()))
}

/// A noise with what its sentences are made of.
pub(super) struct Asked<'a> {
    pub(super) source: Source<'a>,
    pub(super) told: &'a Told,
    pub(super) noise: &'a Noise<'a>,
}

impl Asked<'_> {
    pub(super) fn the(&self, tone: &Tone) -> String {
        names::the(self.source, self.told, self.noise, tone.origin)
    }

    /// `40 mph in 3rd, 2,778 rpm`.
    pub(super) fn moment(&self) -> String {
        let gear = names::stepped(self.noise);
        let engine = names::engine(self.noise);
        match names::road(self.source, self.noise) {
            Some(road) if !self.noise.heard.stands => format!("{road} in {gear}, {engine}"),
            _ => format!("{engine} in {gear}"),
        }
    }

    fn sentences(&self) -> Vec<String> {
        let noise = self.noise;
        if !noise.heard.says_something() {
            return vec![format!("At {} these turn. Say what the noise is like.", self.moment())];
        }
        let leaders = noise.leaders();
        match leaders {
            [] => vec![self.nothing_fits()],
            [first] => {
                let next = noise.suspects.get(1).map(|next| format!("To be sure: {}", self.tell(first, next)));
                vec![format!("{}{}.", outside(leaders), self.named(leaders)), next.unwrap_or_default()]
            }
            [first, second] => {
                let group = self.group_test(first, second);
                let then = if group.is_some() { "Then " } else { "To tell: " };
                let test = format!("{then}{}", self.tell(first, second));
                vec![format!("{}{}.", outside(leaders), self.named(leaders)), group.unwrap_or_default(), test]
            }
            [first, second, ..] => {
                let test = format!("Begin so: {}", self.tell(first, second));
                vec![format!("{}{}.", outside(leaders), self.named(leaders)), test]
            }
        }
    }

    /// `Nothing that turns makes a tone near 1,700 Hz then …`
    fn nothing_fits(&self) -> String {
        let at = self.moment();
        match self.noise.heard.pitch {
            Some(pitch) => format!(
                "No part of box, shaft, axle or wheels has a tone near {} at {at}. Check pitch and speed; look at what the engine drives by belt.",
                names::frequency(pitch)
            ),
            None => format!("Nothing that turns at {at} fits all of that: take back what is least sure."),
        }
    }

    /// `Third’s pair, 1,042 Hz, or the input pair, 1,158 Hz`.
    fn named(&self, leaders: &[Suspect]) -> String {
        let prefixed = !outside(leaders).is_empty();
        let each: Vec<String> =
            leaders.iter().take(MOST_NAMED).map(|suspect| format!("{} ({})", self.the(&suspect.tone), names::hertz(suspect))).collect();
        let more = leaders.len().saturating_sub(MOST_NAMED);
        let said = match each.split_last() {
            Some((last, [])) => last.clone(),
            Some((last, [first])) => format!("{first} or {last}"),
            _ if more > 0 => format!("one of {}, or {more} more", each.join(", ")),
            _ => format!("one of {}", listed(&each)),
        };
        let said = format!("{said}, at {}", self.moment());
        if prefixed { said } else { capital(&said) }
    }

    /// `In 4th at 2,778 rpm neither carries the power: gone there, it is one of them.`
    fn group_test(&self, first: &Suspect, second: &Suspect) -> Option<String> {
        let pair = [first, second].map(|suspect| suspect.tone.origin);
        if !pair.iter().all(|origin| matches!(origin, Origin::Pair(_))) {
            return None;
        }
        let gear = neither_carries(pair, self.noise.heard.selected, &self.noise.orders)?;
        Some(format!("In {gear} at {} neither carries the power: gone there, it is one of these two.", names::engine(self.noise)))
    }

    /// The test that tells two apart, as the end of a sentence.
    pub(super) fn tell(&self, one: &Suspect, other: &Suspect) -> String {
        let name = |which: Which| self.the(if which == Which::First { &one.tone } else { &other.tone });
        let rest = |which: Which| name(if which == Which::First { Which::Second } else { Which::First });
        let suspect = |which: Which| if which == Which::First { one } else { other };
        let engine = names::engine(self.noise);
        match self.noise.test(one, other) {
            Test::Clutch { leaves } => {
                format!("press the clutch at that speed: gone, it is {}; still there, {}.", name(leaves), rest(leaves))
            }
            Test::Tyres { moves } => {
                format!("swap the tyres front to rear: changed, it is {}; the same, {}.", name(moves), rest(moves))
            }
            Test::SameRpm { gear, stays } => {
                format!("hold {engine} in {gear}: gone, it is {}; still there, {}.", rest(stays), name(stays))
            }
            Test::SameRoad { gear, keeps, moved } => format!(
                "hold the same road speed in {gear}: still {}, it is {}; {} or gone, {}.",
                names::hertz(suspect(keeps)),
                name(keeps),
                names::frequency(moved),
                rest(keeps)
            ),
            Test::Rolling { keeps } => {
                format!("roll in neutral at that road speed, engine idling: still there, it is {}; gone, {}.", name(keeps), rest(keeps))
            }
            Test::Standing { stays } => {
                format!("stand in neutral, clutch up, at {engine}: still there, it is {}; gone, {}.", name(stays), rest(stays))
            }
            Test::Load { changes } => {
                format!("pull, then lift off at the same speed: it changes if it is {}, and stays if it is {}.", name(changes), rest(changes))
            }
            Test::TurnShaft { .. } => {
                "no speed or gear tells the driveshaft from its joints: turn the shaft half round on its flange. Changed, it is out of balance; the same, look at the joints.".into()
            }
            Test::Pitch => format!(
                "match the pitch: {} is {}, {} {}.",
                names::hertz(one),
                self.the(&one.tone),
                names::hertz(other),
                self.the(&other.tone)
            ),
            Test::Inside => format!("no drive tells {} from {}: only a look does.", self.the(&one.tone), self.the(&other.tone)),
        }
    }

    /// What a part does in this gear and in others.
    pub(super) fn load(&self, tone: &Tone) -> String {
        let selected = self.noise.heard.selected;
        if !matches!(tone.origin, Origin::Pair(_)) {
            return String::new();
        }
        let carried: Vec<String> = self
            .noise
            .orders
            .gears()
            .filter(|gear| self.noise.orders.carries(Selected::Gear(*gear), tone.origin))
            .map(String::from)
            .collect();
        if tone.carries {
            match carried.as_slice() {
                [] | [_] => format!("carries the power in {selected} alone"),
                _ => format!("carries the power in {}", listed(&carried)),
            }
        } else {
            "turns along without load".into()
        }
    }

    /// How far the side tones of a pair stand apart.
    pub(super) fn side_tones(&self, tone: &Tone) -> String {
        let mut steps: Vec<String> = Vec::new();
        for step in tone.side_steps(self.noise.moment) {
            let shown = number::show(step.get::<uom::si::frequency::hertz>(), 1);
            if shown != "0.0" && !steps.contains(&shown) {
                steps.push(shown);
            }
        }
        let cause = if tone.mesh.is_some() { ": one tooth, or a gear off its centre" } else { "" };
        if steps.is_empty() { String::new() } else { format!("side tones {} Hz apart{cause}", steps.join(" or ")) }
    }
}

/// Said where none of the parts is the box's.
pub(super) fn outside(leaders: &[Suspect]) -> &'static str {
    let is_box = |suspect: &Suspect| suspect.tone.origin.whereabouts(suspect.tone.seat) == Whereabouts::Gearbox;
    if leaders.iter().any(is_box) { "" } else { "Nothing of the box: " }
}
