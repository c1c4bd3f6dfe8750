//! The inside of the box, read and checked: what is looked at, the cut of the gears, the synchronisers.

use super::keep;
use crate::gearing::geometry::Cut;
use crate::gearing::speeds::Selected;
use crate::job::{self, InsideField, Job, JobField, SetupField, SetupId};
use crate::problem::Problem;
use crate::toothload::synchroniser::{Cone, Lining};
use crate::units::{Angle, AngularVelocity, Length, Limits, Measured, MomentOfInertia, Time, Typed, Velocity, common, limits};

/// What is looked at, for all setups.
#[derive(Clone, Debug, PartialEq)]
pub struct InsideShared {
    /// The setup whose train is drawn, where one was chosen.
    pub setup: Option<SetupId>,
    /// The gear selected.
    pub selected: Selected,
    /// What is looked at: an input speed, or a road speed.
    pub at: Option<LookedAt>,
    /// The time a synchroniser is given: as typed, or a quarter of a second (common practice, no published source).
    pub shift_time: Time,
    /// The lining its cones are judged by.
    pub lining: Lining,
}

/// What the speeds inside the box are looked at for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LookedAt {
    /// The input turns so: as typed, or the shift rpm.
    Input(AngularVelocity),
    /// The car rolls so.
    Road(Velocity),
}

/// The cut of the gears and the synchronisers of one setup.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Inside {
    /// How the teeth are cut, where the pitch is given.
    pub cut: Option<Cut>,
    /// Centre distance.
    pub centre: Option<Length>,
    /// Face width.
    pub face: Option<Length>,
    /// Inertia of all that hangs on the input, where it is given.
    pub inertia: Option<MomentOfInertia>,
    /// The cones, where diameter and width are given; 6.5° and a friction of 0.10 are taken (from memory).
    pub cone: Option<Cone>,
    /// The gears without a synchroniser, counted from 0.
    pub unsynchronised: Vec<usize>,
}

impl InsideShared {
    pub(super) fn read(job: &Job, shift: Option<AngularVelocity>, problems: &mut Vec<Problem>) -> Self {
        let typed = &job.inside;
        let at = if typed.at.is_blank() { shift.map(LookedAt::Input) } else { looked_at(&typed.at, problems) };
        let time = (!typed.shift_time.is_blank())
            .then(|| keep(problems, JobField::SyncTime.path(), typed.shift_time.read(&limits::SYNCHRONISING_TIME)))
            .flatten();
        let [brass, molybdenum, sintered] = Lining::PRESETS;
        let own = (!typed.lining_limits.trim().is_empty())
            .then(|| keep(problems, JobField::LiningLimits.path(), Lining::read(&typed.lining_limits)))
            .flatten();
        Self {
            setup: typed.setup,
            selected: selected(&typed.gear),
            at,
            shift_time: time.unwrap_or_else(|| (common::unit::<Time>("s").make)(0.25)),
            lining: own.unwrap_or(match typed.lining.as_str() {
                "molybdenum" => molybdenum,
                "sintered" => sintered,
                _ => brass,
            }),
        }
    }
}

/// An rpm, or a road speed where a unit of road speed stands behind the number.
fn looked_at(typed: &Typed, problems: &mut Vec<Problem>) -> Option<LookedAt> {
    let unit = typed.text.trim_start_matches(|c: char| !c.is_alphabetic());
    let is_road = <Velocity as Measured>::units().iter().any(|road| unit.trim().eq_ignore_ascii_case(road.symbol));
    let path = JobField::InsideAt.path();
    if is_road {
        keep(problems, path, typed.read(&limits::CRUISE_SPEED)).map(LookedAt::Road)
    } else {
        keep(problems, path, typed.read(&limits::SHIFT_SPEED)).map(LookedAt::Input)
    }
}

/// `1` to `8`, `n` or `r`; 2nd where nothing was chosen.
fn selected(text: &str) -> Selected {
    match text {
        "n" => Selected::Neutral,
        "r" => Selected::Reverse,
        number => Selected::Gear(number.parse::<usize>().ok().filter(|number| (1..=8).contains(number)).map_or(1, |number| number - 1)),
    }
}

impl Inside {
    pub(super) fn read(setup: &job::Setup, problems: &mut Vec<Problem>) -> Self {
        let typed = &setup.inside;
        let cut = read_cut(typed, problems);
        let diameter: Option<Length> = read(typed, InsideField::ConeDiameter, &limits::CONE_DIAMETER, problems);
        let width: Option<Length> = read(typed, InsideField::ConeWidth, &limits::LINING_WIDTH, problems);
        let degrees = common::unit::<Angle>("°").make;
        let cone = |(mean_diameter, width)| Cone { mean_diameter, width, half_angle: degrees(6.5), friction: 0.10, cones: 1 };
        Self {
            cut,
            centre: read(typed, InsideField::Centre, &limits::CENTRE_DISTANCE, problems),
            face: read(typed, InsideField::Face, &limits::FACE_WIDTH, problems),
            inertia: read(typed, InsideField::Inertia, &limits::INPUT_INERTIA, problems),
            cone: diameter.zip(width).map(cone),
            unsynchronised: gears(&typed.unsynchronised),
        }
    }
}

/// The quantity in a field; `None` where it is blank or cannot be read.
fn read<Q: Measured>(inside: &job::Inside, field: InsideField, limits: &Limits, problems: &mut Vec<Problem>) -> Option<Q> {
    let typed = field.typed(inside);
    if typed.is_blank() { None } else { keep(problems, &SetupField::Inside(field).path(), typed.read(limits)) }
}

/// The cut, where the pitch is given; straight teeth and 20° where helix and pressure angle are not.
fn read_cut(inside: &job::Inside, problems: &mut Vec<Problem>) -> Option<Cut> {
    let helix: Option<Angle> = read(inside, InsideField::Helix, &limits::HELIX, problems);
    let pressure: Option<Angle> = read(inside, InsideField::Pressure, &limits::PRESSURE_ANGLE, problems);
    let pitch = &inside.pitch;
    if pitch.is_blank() {
        return None;
    }
    let path = SetupField::Inside(InsideField::Pitch).path();
    let module = keep(problems, &path, Cut::read_module(&pitch.text, pitch.units))?;
    let degrees = common::unit::<Angle>("°").make;
    keep(problems, &path, Cut::new(module, helix.unwrap_or_default(), pressure.unwrap_or_else(|| degrees(20.0))))
}

/// The numbers of gears in a text, counted from 0.
fn gears(text: &str) -> Vec<usize> {
    let digits = text.split(|c: char| !c.is_ascii_digit()).filter_map(|part| part.parse::<usize>().ok());
    digits.filter(|gear| (1..=8).contains(gear)).map(|gear| gear - 1).collect()
}
