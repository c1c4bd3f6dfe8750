//! The inside of the box, read and checked: what is looked at, the cut of the gears, the synchronisers.

use crate::gearing::geometry::Cut;
use crate::gearing::speeds::Selected;
use crate::job::{self, InsideField, Job, JobField, SetupField, SetupId};
use crate::problem::Problem;
use crate::questions::gap::Gap;
use crate::questions::setup::{gear_number, keep, keep_or};
use crate::toothload::synchroniser::{Cone, Lining};
use crate::units::{Angle, AngularVelocity, Length, Limits, Measured, MomentOfInertia, Time, Typed, Velocity, limits, number, unit};

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

impl Default for InsideShared {
    /// As where nothing is typed, a shift rpm included.
    fn default() -> Self {
        let [brass, ..] = Lining::PRESETS;
        Self { setup: None, selected: Selected::Gear(1), at: None, shift_time: unit::SECOND.of(0.25), lining: brass }
    }
}

impl InsideShared {
    /// Reads what is looked at; `shift` stands in for a blank input speed.
    pub fn read(job: &Job, shift: Option<AngularVelocity>, problems: &mut Vec<Problem>) -> Self {
        let typed = &job.inside;
        let at = if typed.at.is_blank() { shift.map(LookedAt::Input) } else { looked_at(&typed.at, problems) };
        let quarter = unit::SECOND.of(0.25);
        let time = (!typed.shift_time.is_blank())
            .then(|| {
                let by = format!("{} is taken", limits::say(quarter, job.units));
                keep_or(problems, JobField::SyncTime.path(), typed.shift_time.read(&limits::SYNCHRONISING_TIME), &by)
            })
            .flatten();
        Self {
            setup: typed.setup,
            selected: selected(&typed.gear),
            at,
            shift_time: time.unwrap_or(quarter),
            lining: lining(typed, problems),
        }
    }
}

/// The lining by limits of its own, else the chosen one.
fn lining(typed: &job::InsideShared, problems: &mut Vec<Problem>) -> Lining {
    let [brass, molybdenum, sintered] = Lining::PRESETS;
    let chosen = match typed.lining.as_str() {
        "molybdenum" => molybdenum,
        "sintered" => sintered,
        _ => brass,
    };
    if typed.lining_limits.trim().is_empty() {
        return chosen;
    }
    let by = format!("the usual limits of {} are taken", chosen.name);
    keep_or(problems, JobField::LiningLimits.path(), Lining::read(&typed.lining_limits), &by).unwrap_or(chosen)
}

/// An rpm, or a road speed where a unit of road speed stands behind the number.
fn looked_at(typed: &Typed, problems: &mut Vec<Problem>) -> Option<LookedAt> {
    let unit = typed.text.trim_start_matches(|c: char| !c.is_alphabetic());
    let is_road = <Velocity as Measured>::units().iter().any(|road| unit.trim().eq_ignore_ascii_case(road.symbol));
    let path = JobField::InsideAt.path();
    if is_road {
        keep(problems, path, typed.read(&limits::ROAD_SPEED)).map(LookedAt::Road)
    } else {
        keep(problems, path, typed.read(&limits::ENGINE_SPEED)).map(LookedAt::Input)
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
    /// Reads the cut and the synchronisers of one setup.
    pub fn read(setup: &job::Setup, problems: &mut Vec<Problem>) -> Self {
        let typed = &setup.inside;
        Self {
            cut: read_cut(typed, problems),
            centre: read_or(typed, InsideField::Centre, &limits::CENTRE_DISTANCE, problems, "the one that the counts give is taken"),
            face: read_or(typed, InsideField::Face, &limits::FACE_WIDTH, problems, "overlap and the estimate of inertia are left out"),
            inertia: read_or(typed, InsideField::Inertia, &limits::INPUT_INERTIA, problems, ESTIMATED),
            cone: read_cone(typed, problems),
            unsynchronised: gears(&typed.unsynchronised, setup.gearbox.gears.len(), problems),
        }
    }
}

/// What stands in for the inertia, as the end of a sentence.
const ESTIMATED: &str = "an estimate is taken where pitch and face width are given";

/// The cones, where diameter and width are given.
fn read_cone(inside: &job::Inside, problems: &mut Vec<Problem>) -> Option<Cone> {
    let diameter: Option<Length> = read(inside, InsideField::ConeDiameter, &limits::CONE_DIAMETER, problems);
    let width: Option<Length> = read(inside, InsideField::ConeWidth, &limits::LINING_WIDTH, problems);
    let half = match (inside.cone_diameter.is_blank(), inside.cone_width.is_blank()) {
        (false, true) => Some((InsideField::ConeDiameter, "width of the lining")),
        (true, false) => Some((InsideField::ConeWidth, "mean diameter of the cones")),
        _ => None,
    };
    if let Some((field, missing)) = half {
        problems.push(Problem::caution(field.path(), &Gap::ConeHalf { missing }));
    }
    let half_angle = unit::DEGREE.of(6.5);
    Some(Cone { mean_diameter: diameter?, width: width?, half_angle, friction: 0.10, cones: 1 })
}

/// The quantity in a field; `None` where it is blank or cannot be read.
fn read<Q: Measured>(inside: &job::Inside, field: InsideField, limits: &Limits<Q>, problems: &mut Vec<Problem>) -> Option<Q> {
    let typed = field.typed(inside);
    if typed.is_blank() { None } else { keep(problems, &SetupField::Inside(field).path(), typed.read(limits)) }
}

/// As [`read`], where something stands in for what cannot be read; `by` says what.
fn read_or<Q: Measured>(inside: &job::Inside, field: InsideField, limits: &Limits<Q>, problems: &mut Vec<Problem>, by: &str) -> Option<Q> {
    let typed = field.typed(inside);
    if typed.is_blank() { None } else { keep_or(problems, field.path(), typed.read(limits), by) }
}

/// The cut, where the pitch is given; straight teeth and 20° where helix and pressure angle are blank, none where they cannot be read.
fn read_cut(inside: &job::Inside, problems: &mut Vec<Problem>) -> Option<Cut> {
    let helix: Option<Angle> = read(inside, InsideField::Helix, &limits::HELIX, problems);
    let pressure: Option<Angle> = read(inside, InsideField::Pressure, &limits::PRESSURE_ANGLE, problems);
    let pitch = &inside.pitch;
    if pitch.is_blank() {
        let angles = [(helix, InsideField::Helix, "helix angle"), (pressure, InsideField::Pressure, "pressure angle")];
        for (_, field, angle) in angles.into_iter().filter(|(read, ..)| read.is_some()) {
            problems.push(Problem::caution(field.path(), &Gap::AngleWithoutPitch { angle }));
        }
        return None;
    }
    let path = InsideField::Pitch.path();
    let module = keep(problems, path, Cut::read_module(&pitch.text, pitch.units))?;
    let helix = if inside.helix.is_blank() { Angle::default() } else { helix? };
    let pressure = if inside.pressure.is_blank() { unit::DEGREE.of(20.0) } else { pressure? };
    keep(problems, path, Cut::new(module, helix, pressure))
}

/// The numbers of gears in a text, parted by blanks or commas, counted from 0; what is none is said and left out.
fn gears(text: &str, many: usize, problems: &mut Vec<Problem>) -> Vec<usize> {
    let parts = text.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|part| !part.is_empty());
    let read = |part: &str| {
        let gear = gear_number(part).filter(|gear| *gear <= many).map(|gear| gear - 1);
        gear.ok_or_else(|| Gap::NoGearOfBox { text: number::clip(part), gears: many })
    };
    let path = SetupField::Unsynchronised.path();
    parts.filter_map(|part| read(part).map_err(|why| problems.push(Problem::caution(path.as_str(), &why))).ok()).collect()
}
