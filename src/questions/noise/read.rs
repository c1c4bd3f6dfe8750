//! What is said of a noise, as far as it can be read.

use crate::gearing::GearNumber;
use crate::gearing::speeds::Selected;
use crate::job::choice::{HeardGear, NoiseSetup, StagesIn};
use crate::job::inputs::noise::USUAL_CYLINDERS;
use crate::job::{BenchField, InputId, InputProblem, Job, JobField, NoiseField};
use crate::problem::Problem;
use crate::sound::kept::{self, Kept};
use crate::sound::{Clutch, Fitted, GoesWith, Kind, Load, read};
use crate::units::{AngularVelocity, Frequency, Measured, Typed, Velocity, limits, number};

/// How fast all turns while it is heard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum At {
    /// A given road speed.
    Road(Velocity),
    /// A given engine speed.
    Engine(AngularVelocity),
}

/// What is said of a noise.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// The column of the setup it is asked of.
    pub column: usize,
    /// The gear it is heard in.
    pub selected: Option<Selected>,
    /// The speed it is heard at.
    pub at: Option<At>,
    /// Whether that speed was typed; else it is the cruise speed.
    pub is_at_typed: bool,
    /// The speed at the end of a recording, where it was not steady.
    pub until: Option<At>,
    /// Which of the stages that can be switched are in.
    pub stages_in: [bool; 2],
    /// What kind of noise it is.
    pub kind: Option<Kind>,
    /// When it is there.
    pub load: Option<Load>,
    /// Further gears in which it is there.
    pub there: Vec<Selected>,
    /// Gears in which it is gone.
    pub gone: Vec<Selected>,
    /// What it keeps step with.
    pub goes_with: Option<GoesWith>,
    /// What pressing the clutch does.
    pub clutch: Option<Clutch>,
    /// Its pitch.
    pub pitch: Option<Frequency>,
    /// The cylinders of the engine.
    pub cylinders: u8,
    /// The bearings whose geometry is given.
    pub bearings: Vec<Fitted>,
    /// The recordings that were kept.
    pub kept: Vec<Kept>,
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

/// Why a text about a noise is not used.
#[derive(Clone, Debug, PartialEq, Eq)]
enum NoiseTextError {
    /// Something that is no gear.
    NoGear { text: String },
    /// A gear in which it is both there and gone.
    BothWays { gear: String },
    /// A number of cylinders that no engine has.
    NoCylinders { text: String },
}

explain! { NoiseTextError:
    Self::NoGear { text } => format!("“{text}” is no gear: it is left out"),
        "type numbers of gears such as 1 2, n for neutral, r for reverse";
    Self::BothWays { gear } => format!("it is both there and gone in {gear}: neither is used"), "take it out of one of the two";
    Self::NoCylinders { text } => format!("“{text}” is not a number from 1 to 16: {USUAL_CYLINDERS} cylinders are taken"),
        "type a whole number from 1 to 16";
}

impl Told {
    /// Reads what is typed.
    pub fn of(job: &Job) -> Self {
        let typed = &job.bench.noise;
        let mut problems = Vec::new();
        let (bearings, errors) = read::bearings(&typed.bearings);
        problems.extend(errors.iter().map(|why| Problem::caution(id(NoiseField::Bearings), why)));
        let (kept, errors) = kept::read(&typed.kept);
        problems.extend(errors.iter().map(|why| Problem::caution(id(NoiseField::Kept), why)));
        let pitch = (!typed.pitch.is_blank()).then(|| typed.pitch.read(&limits::PITCH));
        let pitch = pitch.and_then(|read| read.map_err(|why| problems.push(Problem::caution(id(NoiseField::Pitch), &why))).ok());
        let [mut there, mut gone] =
            [(NoiseField::There, &typed.there), (NoiseField::Gone, &typed.gone)].map(|(field, text)| gears(field, text, &mut problems));
        if let Some(both) = there.iter().copied().find(|gear| gone.contains(gear)) {
            problems.push(Problem::caution(id(NoiseField::Gone), &NoiseTextError::BothWays { gear: both.to_string() }));
            let only = |own: &[Selected], other: &[Selected]| own.iter().copied().filter(|gear| !other.contains(gear)).collect::<Vec<_>>();
            (there, gone) = (only(&there, &gone), only(&gone, &there));
        }
        Self {
            column: typed.setup.value().map_or(0, |NoiseSetup(column)| column),
            selected: typed.gear.value().map(|HeardGear(gear)| gear),
            at: at(job, &mut problems),
            is_at_typed: !typed.at.is_blank(),
            until: if typed.until.is_blank() { None } else { speed(NoiseField::Until, &typed.until, &mut problems) },
            stages_in: typed.stages.value().map_or([false; 2], |StagesIn(stages)| stages),
            kind: typed.kind.value(),
            load: typed.load.value(),
            goes_with: typed.goes_with.value(),
            clutch: typed.clutch.value(),
            cylinders: cylinders(&typed.cylinders, &mut problems),
            there,
            gone,
            pitch,
            bearings,
            kept,
            problems,
        }
    }
}

fn id(field: NoiseField) -> InputId {
    JobField::Bench(BenchField::Noise(field)).into()
}

/// A road speed, or an engine speed where a unit of engine speed stands behind the number; blank, the cruise speed.
fn at(job: &Job, problems: &mut Vec<InputProblem>) -> Option<At> {
    let typed = &job.bench.noise.at;
    if typed.is_blank() {
        return job.cruise.read(&limits::CRUISE_SPEED).ok().map(At::Road);
    }
    speed(NoiseField::At, typed, problems)
}

fn speed(field: NoiseField, typed: &Typed, problems: &mut Vec<InputProblem>) -> Option<At> {
    let mut keep = |why| problems.push(Problem::stop(id(field), &why));
    if is_engine_speed(typed) {
        typed.read(&limits::ENGINE_SPEED).map_err(&mut keep).ok().map(At::Engine)
    } else {
        typed.read(&limits::ROAD_SPEED).map_err(&mut keep).ok().map(At::Road)
    }
}

fn is_engine_speed(typed: &Typed) -> bool {
    let unit = typed.text.trim().trim_start_matches(|c: char| !c.is_alphabetic());
    <AngularVelocity as Measured>::units().iter().any(|engine| unit.eq_ignore_ascii_case(engine.symbol))
}

/// The gears in a text, parted by blanks or commas: numbers, n, r.
fn gears(field: NoiseField, text: &str, problems: &mut Vec<InputProblem>) -> Vec<Selected> {
    let mut gears = Vec::new();
    for word in text.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|word| !word.is_empty()) {
        let gear = match word.to_lowercase().as_str() {
            "and" => continue,
            "n" | "neutral" => Some(Selected::Neutral),
            "r" | "reverse" => Some(Selected::Reverse),
            word => GearNumber::read(word).map(Selected::Gear),
        };
        match gear {
            Some(gear) if !gears.contains(&gear) => gears.push(gear),
            Some(_) => {}
            None => problems.push(Problem::caution(id(field), &NoiseTextError::NoGear { text: number::clip(word) })),
        }
    }
    gears
}

fn cylinders(text: &str, problems: &mut Vec<InputProblem>) -> u8 {
    let text = text.trim();
    if text.is_empty() {
        return USUAL_CYLINDERS;
    }
    let cylinders = text.parse().ok().filter(|cylinders| (1..=16).contains(cylinders));
    cylinders.unwrap_or_else(|| {
        problems.push(Problem::caution(id(NoiseField::Cylinders), &NoiseTextError::NoCylinders { text: number::clip(text) }));
        USUAL_CYLINDERS
    })
}
