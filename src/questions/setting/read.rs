//! What is typed about setting, as far as it can be read.

use crate::checklist::Range;
use crate::fits::clock::Clock;
use crate::fits::fastener::Fastener;
use crate::fits::ring_pinion::MarkSense;
use crate::fits::several;
use crate::fits::tapered::{BearingState, Mounting, USUAL_K};
use crate::fits::{Material, PlayRange, wanted};
use crate::job::{Bench, InputProblem, SettingField};
use crate::questions::reader::Reader;
use crate::questions::setup::keep;
use crate::questions::warmth;
use crate::units::{Force, Length, ThermodynamicTemperature, Typed, limits};

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
        use SettingField as F;
        let typed = &bench.setting;
        let mut problems = Vec::new();
        let temperatures = warmth::read(bench, &mut problems);
        let mut read = Reader::new(&mut problems);
        let lengths = |typed: &Typed| several::lengths(typed, &limits::DIAL_READING);
        let lines = typed.fasteners.lines().filter(|line| !line.trim().is_empty());
        let clock = |typed: &Typed| several::clock(typed, &limits::DIAL_READING);
        Self {
            temperatures,
            mounting: typed.mounting.value(),
            case: bench.endplay.case.value().map(|case| case.0),
            bearings: typed.bearings.value(),
            sense: typed.sense.value(),
            shim_in: read.quantity(&typed.shim_in, F::ShimIn, &limits::SHIM),
            floats: read.read(&typed.float, F::Float, lengths).unwrap_or_default(),
            wanted: read.read(&typed.wanted, F::Wanted, wanted::play),
            span: read.quantity(&typed.span, F::Span, &limits::BEARING_SPAN),
            cups: read.read(&typed.cups, F::Cups, |typed| several::lengths(typed, &limits::FIT_DIAMETER)).and_then(|cups| both(&cups)),
            k: read.quantity(&typed.k, F::K, &limits::BEARING_K).map_or(USUAL_K, |k| k.0),
            pull: read.quantity(&typed.pull, F::Pull, &limits::PULL),
            radius: read.quantity(&typed.radius, F::Radius, &limits::LEVER),
            torque: (!typed.torque.trim().is_empty())
                .then(|| Range::read(&typed.torque))
                .and_then(|range| keep(read.problems, F::Torque, range)),
            depth: read.quantity(&typed.depth, F::Depth, &limits::SHIM),
            mark: read.quantity(&typed.mark, F::Mark, &limits::PINION_MARK),
            lash: read.read(&typed.lash, F::Lash, lengths).unwrap_or_default(),
            dial_radius: read.quantity(&typed.dial_radius, F::DialRadius, &limits::LEVER),
            pitch_radius: read.quantity(&typed.pitch_radius, F::PitchRadius, &limits::LEVER),
            bore: read.read(&typed.bore, F::Bore, clock),
            face: read.read(&typed.face, F::Face, clock),
            fasteners: lines.filter_map(|line| keep(read.problems, F::Fasteners, Fastener::read(line))).collect(),
            problems,
        }
    }
}

/// Both cups; one alone stands for the other too.
fn both(cups: &[Length]) -> Option<[Length; 2]> {
    let first = cups.first().copied()?;
    Some([first, cups.get(1).copied().unwrap_or(first)])
}
