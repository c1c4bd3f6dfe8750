//! A recording as it is kept with the job, without its sound: the gear, the engine's speed, and how loud the likeliest parts stand out of it;
//! a line of text each: `gear 3 at 2,774 rpm: 1,041.7 Hz 14.2 dB; 409.3 Hz −3.1 dB`.

use super::orders::Orders;
use super::together::{Expected, Stand, together};
use super::tone::{Moment, Origin};
use super::weights::Class;
use crate::gearing::GearNumber;
use crate::gearing::speeds::Selected;
use crate::units::common::in_rpm;
use crate::units::{AngularVelocity, Frequency, System, limits, number, unit};

/// The most lines of a recording that are kept.
pub const MOST_LINES: usize = 10;
/// The most recordings that are read.
pub const MOST_KEPT: usize = 8;
/// A tone meets a line that was kept within this share: tracked speeds are better, a typed tooth count is exact.
const MEETS: f64 = 0.006;
/// A worn bearing runs lower by up to this share.
const SLIPS: f64 = 0.025;
/// A part of which nothing was kept stands so many dB below the last that was.
const BELOW: f64 = 3.0;
/// And at least so many below the loudest.
const FAR_BELOW: f64 = 15.0;

/// A recording that was kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// The gear it was made in.
    pub selected: Selected,
    /// How fast the engine turned, as found.
    pub engine: AngularVelocity,
    /// Tones and their levels over the noise about them in dB, the loudest first.
    pub lines: Vec<(Frequency, f64)>,
}

/// Why a line is no recording: what was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptError(String);

explain! { KeptError:
    Self(text) => format!("“{}” is no recording that was kept", number::clip(text)),
        "a line is like gear 3 at 2,774 rpm: 1,042 Hz 14 dB; mend it, or clear it and record again";
}

impl Kept {
    /// As it is written.
    pub fn line(&self) -> String {
        let gear = match self.selected {
            Selected::Gear(gear) => format!("gear {}", gear.number()),
            Selected::Neutral => "neutral".into(),
            Selected::Reverse => "reverse".into(),
        };
        let lines = self
            .lines
            .iter()
            .map(|(frequency, level)| format!("{} Hz {} dB", number::show(unit::HERTZ.number(*frequency), 1), number::show(*level, 1)));
        format!("{gear} at {} rpm: {}", number::show(in_rpm(self.engine), 0), lines.collect::<Vec<_>>().join("; "))
    }

    fn read(line: &str) -> Option<Self> {
        let (head, body) = line.split_once(':')?;
        let (gear, speed) = head.split_once(" at ")?;
        let selected = match gear.trim() {
            "neutral" => Selected::Neutral,
            "reverse" => Selected::Reverse,
            gear => Selected::Gear(GearNumber::read(gear.strip_prefix("gear ")?)?),
        };
        let speed = crate::units::read(speed, System::Metric, &limits::ENGINE_SPEED).ok()?;
        let lines: Option<Vec<(Frequency, f64)>> =
            body.split(';').filter(|part| !part.trim().is_empty()).take(MOST_LINES).map(one).collect();
        Some(Self { selected, engine: speed, lines: lines.filter(|lines| !lines.is_empty())? })
    }

    /// How loud each part stands in it, and whether it would be heard.
    fn stands(&self, parts: &[Origin], orders: &Orders, moment: Moment) -> Vec<Stand> {
        let levels = || self.lines.iter().map(|(_, level)| *level);
        let least = (levels().fold(f64::INFINITY, f64::min) - BELOW).min(levels().fold(f64::NEG_INFINITY, f64::max) - FAR_BELOW);
        let stand = |origin: &Origin| {
            let tone = orders.tone(self.selected, *origin);
            let own = tone.map(|tone| tone.frequency(moment)).filter(|own| *own > Frequency::default());
            let Some((tone, own)) = tone.zip(own) else { return Stand { level: least, expected: Expected::Silent } };
            let lags = if matches!(origin, Origin::Bearing(..)) { SLIPS } else { MEETS };
            let met = self.lines.iter().filter(|(line, _)| (-lags..=MEETS).contains(&(*line / own).value.ln()));
            let level = met.map(|(_, level)| *level).fold(least, f64::max);
            Stand { level, expected: if Class::of(tone) == Class::Idle { Expected::Either } else { Expected::Heard } }
        };
        parts.iter().map(stand).collect()
    }
}

/// `1,041.7 Hz 14.2 dB`.
fn one(part: &str) -> Option<(Frequency, f64)> {
    let (hertz, rest) = number::leading(part)?;
    let (level, rest) = number::leading(rest.trim_start().strip_prefix("Hz")?)?;
    let hertz = hertz.into_iter().flatten().find(|hertz| (1.0..=20_000.0).contains(hertz))?;
    let level = level.into_iter().flatten().find(|level| (-60.0..=120.0).contains(level))?;
    (rest.trim() == "dB").then(|| (unit::HERTZ.of(hertz), level))
}

/// The recordings of a text, a line each, and what is wrong with the others.
///
/// ```
/// use layshaft::sound::kept::read;
/// let line = "gear 3 at 2,774 rpm: 1,041.7 Hz 14.2 dB; 409.3 Hz −3.1 dB";
/// let (kept, errors) = read(line);
/// assert_eq!((kept[0].line().as_str(), errors.len()), (line, 0));
/// ```
pub fn read(text: &str) -> (Vec<Kept>, Vec<KeptError>) {
    let mut errors = Vec::new();
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty()).take(MOST_KEPT);
    let kept = lines.filter_map(|line| {
        let read = Kept::read(line);
        if read.is_none() {
            errors.push(KeptError(line.to_owned()));
        }
        read
    });
    (kept.collect(), errors)
}

/// A text with one more recording: it takes the place of one in the same gear at the same speed.
pub fn with_one_more(text: &str, new: &Kept) -> String {
    let others = text.lines().filter(|line| !line.trim().is_empty() && !Kept::read(line.trim()).is_some_and(|old| is_same(&old, new)));
    let all: Vec<String> = others.map(str::to_owned).chain([new.line()]).collect();
    all.join("\n")
}

/// Whether two recordings are of the same gear at the same speed, within 3 %.
pub fn is_same(one: &Kept, other: &Kept) -> bool {
    one.selected == other.selected && (one.engine / other.engine).value.ln().abs() < 0.03
}

/// A part by what all recordings say of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ranked {
    /// The part.
    pub origin: Origin,
    /// Its highest level of all recordings, in dB.
    pub level: f64,
    /// How well it fits all of them: 0 at best, below it in dB.
    pub fits: f64,
}

/// The parts by recordings, each with how fast all turned: the one that fits all of them best first.
pub fn rank(recordings: &[(&Kept, Moment)], parts: &[Origin], orders: &Orders) -> Vec<Ranked> {
    let stands: Vec<Vec<Stand>> = recordings.iter().map(|(kept, moment)| kept.stands(parts, orders, *moment)).collect();
    let level = |at: usize| stands.iter().filter_map(|parts| parts.get(at)).map(|stand| stand.level).fold(f64::NEG_INFINITY, f64::max);
    let fits = together(&stands);
    let mut ranked: Vec<Ranked> =
        parts.iter().zip(fits).enumerate().map(|(at, (origin, fits))| Ranked { origin: *origin, level: level(at), fits }).collect();
    crate::order::by(&mut ranked, |a, b| b.fits.total_cmp(&a.fits));
    ranked
}
