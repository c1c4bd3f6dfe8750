//! What is typed about setting, as far as it can be read.

use crate::checklist::Range;
use crate::fits::clock::Clock;
use crate::fits::fastener::Fastener;
use crate::fits::ring_pinion::MarkSense;
use crate::fits::several;
use crate::fits::tapered::{BearingState, Mounting, USUAL_K};
use crate::fits::{Material, PlayRange, wanted};
use crate::job::{Bench, InputProblem, SettingField};
use crate::questions::setup::keep;
use crate::questions::warmth;
use crate::units::{Force, Length, Limits, Measured, ThermodynamicTemperature, Typed, limits};

/// What was read at the bench, and what is wanted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Set {
    /// The shim that was in.
    pub shim_in: Option<Length>,
    /// The float that it left.
    pub floats: Vec<Length>,
    /// The end play wanted.
    pub wanted: Option<PlayRange>,
    /// Between the bearings.
    pub span: Option<Length>,
    /// The outsides of the cups.
    pub cups: Option<[Length; 2]>,
    /// Their K.
    pub k: f64,
    /// How they stand.
    pub mounting: Option<Mounting>,
    /// What the case is made of.
    pub case: Option<Material>,
    /// How warm the parts were, and how warm the box gets.
    pub temperatures: [ThermodynamicTemperature; 2],
    /// The pull of the balance.
    pub pull: Option<Force>,
    /// The radius it pulls at.
    pub radius: Option<Length>,
    /// Whether the bearings are new.
    pub bearings: Option<BearingState>,
    /// The turning torque wanted, where it is typed.
    pub torque: Option<Range>,
    /// The depth shim by the gauge.
    pub depth: Option<Length>,
    /// The mark on the pinion.
    pub mark: Option<Length>,
    /// Which way it goes.
    pub sense: Option<MarkSense>,
    /// The ways of the dial.
    pub lash: Vec<Length>,
    /// The radius it stands at.
    pub dial_radius: Option<Length>,
    /// The pitch radius of the gear it stands on.
    pub pitch_radius: Option<Length>,
    /// The bore of the clutch housing.
    pub bore: Option<Clock>,
    /// Its face.
    pub face: Option<Clock>,
    /// The fasteners that can be read.
    pub fasteners: Vec<Fastener>,
    /// What cannot be read, by field.
    pub problems: Vec<InputProblem>,
}

impl Set {
    /// Reads what is typed.
    pub fn of(bench: &Bench) -> Self {
        let typed = &bench.setting;
        let mut set = Self {
            mounting: typed.mounting.value(),
            case: bench.endplay.case.value().map(|case| case.0),
            bearings: typed.bearings.value(),
            sense: typed.sense.value(),
            ..Self::default()
        };
        let problems = &mut set.problems;
        set.temperatures = warmth::read(bench, problems);
        set.shim_in = length(problems, SettingField::ShimIn, &typed.shim_in, &limits::SHIM);
        set.floats = several(problems, SettingField::Float, &typed.float);
        set.wanted =
            (!typed.wanted.is_blank()).then(|| wanted::play(&typed.wanted)).and_then(|read| keep(problems, SettingField::Wanted, read));
        set.span = length(problems, SettingField::Span, &typed.span, &limits::BEARING_SPAN);
        set.cups = cups(problems, &typed.cups);
        set.k = quantity(problems, SettingField::K, &typed.k, &limits::BEARING_K).map_or(USUAL_K, |k| k.0);
        set.pull = quantity(problems, SettingField::Pull, &typed.pull, &limits::PULL);
        set.radius = length(problems, SettingField::Radius, &typed.radius, &limits::LEVER);
        set.torque = (!typed.torque.trim().is_empty())
            .then(|| Range::read(&typed.torque))
            .and_then(|read| keep(problems, SettingField::Torque, read));
        set.depth = length(problems, SettingField::Depth, &typed.depth, &limits::SHIM);
        set.mark = length(problems, SettingField::Mark, &typed.mark, &limits::PINION_MARK);
        set.lash = several(problems, SettingField::Lash, &typed.lash);
        set.dial_radius = length(problems, SettingField::DialRadius, &typed.dial_radius, &limits::LEVER);
        set.pitch_radius = length(problems, SettingField::PitchRadius, &typed.pitch_radius, &limits::LEVER);
        set.bore = clock(problems, SettingField::Bore, &typed.bore);
        set.face = clock(problems, SettingField::Face, &typed.face);
        let lines = typed.fasteners.lines().filter(|line| !line.trim().is_empty());
        let read = |line| keep(problems, SettingField::Fasteners, Fastener::read(line));
        set.fasteners = lines.filter_map(read).collect();
        set
    }
}

fn length(problems: &mut Vec<InputProblem>, field: SettingField, typed: &Typed, limits: &Limits<Length>) -> Option<Length> {
    quantity(problems, field, typed, limits)
}

fn quantity<Q: Measured>(problems: &mut Vec<InputProblem>, field: SettingField, typed: &Typed, limits: &Limits<Q>) -> Option<Q> {
    (!typed.is_blank()).then(|| typed.read(limits)).and_then(|read| keep(problems, field, read))
}

fn several(problems: &mut Vec<InputProblem>, field: SettingField, typed: &Typed) -> Vec<Length> {
    let read = (!typed.is_blank()).then(|| several::lengths(typed, &limits::DIAL_READING));
    read.and_then(|read| keep(problems, field, read)).unwrap_or_default()
}

fn cups(problems: &mut Vec<InputProblem>, typed: &Typed) -> Option<[Length; 2]> {
    let read = (!typed.is_blank()).then(|| several::lengths(typed, &limits::FIT_DIAMETER))?;
    let cups = keep(problems, SettingField::Cups, read)?;
    let first = cups.first().copied()?;
    Some([first, cups.get(1).copied().unwrap_or(first)])
}

fn clock(problems: &mut Vec<InputProblem>, field: SettingField, typed: &Typed) -> Option<Clock> {
    let read = (!typed.is_blank()).then(|| several::clock(typed, &limits::DIAL_READING))?;
    keep(problems, field, read)
}
