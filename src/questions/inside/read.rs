//! The inside of the box, read and checked: what is looked at, the cut of the gears, the synchronisers.

use crate::gearing::geometry::pair_cuts::{self, PairAt, PairCut};
use crate::gearing::geometry::{Cut, Hand};
use crate::gearing::speeds::Selected;
use crate::gearing::{GearNumber, Mesh};
use crate::job::{self, InputProblem, InsideField, Job, JobField, SetupField, SetupId};
use crate::problem::Problem;
use crate::questions::gap::Gap;
use crate::questions::setup::{gears_of, keep, keep_or};
use crate::toothload::along::{self, ShaftBearing};
use crate::toothload::duty::{Duty, TorqueFrom};
use crate::toothload::synchroniser::{self, Cone, Lining};
use crate::units::{
    Angle, AngularVelocity, Length, Limits, Measured, MomentOfInertia, Plain, Time, Torque, Typed, Velocity, limits, number, unit,
};

/// What is looked at, for all setups.
#[derive(Clone, Debug, PartialEq)]
pub struct InsideShared {
    /// The setup whose train is drawn, where one was chosen.
    pub setup: Option<SetupId>,
    /// The gear selected.
    pub selected: Selected,
    /// What is looked at: an input speed, or a road speed.
    pub at: Option<LookedAt>,
    /// The time a synchroniser is given: as typed, or the usual one.
    pub shift_time: Time,
    /// The torque at the input that teeth are judged at, where it is typed.
    pub torque: Option<Torque>,
    /// Whether it is what the tyres hold in 1st instead.
    pub by_grip: bool,
    /// What the car is used for; none where a file names what is not known here.
    pub duty: Option<Duty>,
    /// The lining its cones are judged by; none where a file names one that is not known here.
    pub lining: Option<Lining>,
}

/// What the speeds inside the box are looked at for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LookedAt {
    /// A given input speed: as typed, or the shift rpm.
    Input(AngularVelocity),
    /// A given road speed.
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
    /// The cones, where diameter and width are given.
    pub cone: Option<Cone>,
    /// Whether angle and friction of the cones are typed; else usual ones are taken.
    pub is_cone_typed: bool,
    /// The outer diameter of the clutch plate, where it is given.
    pub clutch: Option<Length>,
    /// The pairs that are cut otherwise than the rest.
    pub pairs: Vec<PairCut>,
    /// The two bearings of that shaft, the one nearer to the engine first.
    pub bearings: Option<[ShaftBearing; 2]>,
    /// Those of the mainshaft, and of the input shaft of a box with a countershaft.
    pub upper_bearings: [Option<[ShaftBearing; 2]>; 2],
    /// Where its gears sit.
    pub places: Vec<(PairAt, Length)>,
    /// The hand of the teeth on the countershaft; of a two-shaft box, on the input shaft.
    pub hand: Option<Hand>,
    /// The gears without a synchroniser.
    pub unsynchronised: Vec<GearNumber>,
}

impl Default for InsideShared {
    /// As where nothing is typed, a shift rpm included.
    fn default() -> Self {
        Self {
            setup: None,
            selected: Selected::Gear(GearNumber::SECOND),
            at: None,
            shift_time: unit::SECOND.of(0.25),
            torque: None,
            by_grip: false,
            duty: Some(Duty::Road),
            lining: None,
        }
    }
}

impl InsideShared {
    /// Reads what is looked at; `shift` stands in for a blank input speed.
    pub fn read(job: &Job, shift: Option<AngularVelocity>, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &job.inside;
        let at = if typed.at.is_blank() { shift.map(LookedAt::Input) } else { looked_at(&typed.at, problems) };
        let usual = synchroniser::usual_time();
        let time = (!typed.shift_time.is_blank())
            .then(|| {
                let by = format!("{} is taken", limits::say(usual, job.units));
                keep_or(problems, JobField::SyncTime, typed.shift_time.read(&limits::SYNCHRONISING_TIME), &by)
            })
            .flatten();
        Self {
            setup: typed.setup,
            selected: typed.gear.value().map_or(Selected::Gear(GearNumber::SECOND), |gear| gear.0),
            at,
            shift_time: time.unwrap_or(usual),
            torque: torque(typed, problems),
            by_grip: typed.torque_from.value() == Some(TorqueFrom::Grip),
            duty: typed.duty.value(),
            lining: lining(typed, problems),
        }
    }
}

/// The torque that teeth are judged at.
fn torque(typed: &job::InsideShared, problems: &mut Vec<InputProblem>) -> Option<Torque> {
    if typed.torque.is_blank() {
        return None;
    }
    keep_or(problems, JobField::InsideTorque, typed.torque.read(&limits::TORQUE), "the engine’s greatest is taken")
}

/// The lining by limits of its own, else the chosen one.
fn lining(typed: &job::InsideShared, problems: &mut Vec<InputProblem>) -> Option<Lining> {
    let chosen = typed.lining.value().map(Lining::of);
    if typed.lining_limits.trim().is_empty() {
        return chosen;
    }
    let by = chosen.map_or_else(|| "the lining is not judged".into(), |chosen| format!("the usual limits of {} are taken", chosen.name));
    keep_or(problems, JobField::LiningLimits, Lining::read(&typed.lining_limits), &by).or(chosen)
}

/// An rpm, or a road speed where a unit of road speed stands behind the number.
fn looked_at(typed: &Typed, problems: &mut Vec<InputProblem>) -> Option<LookedAt> {
    let unit = typed.text.trim_start_matches(|c: char| !c.is_alphabetic());
    let is_road = <Velocity as Measured>::units().iter().any(|road| unit.trim().eq_ignore_ascii_case(road.symbol));
    let path = JobField::InsideAt;
    if is_road {
        keep(problems, path, typed.read(&limits::ROAD_SPEED)).map(LookedAt::Road)
    } else {
        keep(problems, path, typed.read(&limits::ENGINE_SPEED)).map(LookedAt::Input)
    }
}

impl Inside {
    /// How a pair is cut: as is said of it, else as the rest; none where neither is known.
    pub fn cut_of(&self, at: PairAt) -> Option<Cut> {
        let rest = self.cut.as_ref()?;
        self.pair_cut(at).copied().unwrap_or_else(|| PairCut::nothing(at)).over(rest).ok()
    }

    /// The profile shift of a pair's driving gear, where it is typed.
    pub fn driver_shift(&self, at: PairAt) -> Option<f64> {
        self.pairs.iter().rev().filter(|pair| pair.at == at).find_map(|pair| pair.driver_shift)
    }

    /// The hand of a pair's gear on the countershaft (of a two-shaft box, on the input shaft), where it is told.
    pub fn hand_of(&self, at: PairAt) -> Option<Hand> {
        self.pairs.iter().rev().filter(|pair| pair.at == at).find_map(|pair| pair.hand).or(self.hand)
    }

    /// Where a pair sits along the shaft, where it is told.
    pub fn place_of(&self, at: PairAt) -> Option<Length> {
        self.places.iter().rev().find(|(placed, _)| *placed == at).map(|(_, place)| *place)
    }

    /// The face width of a pair, where it is told.
    pub fn face_of(&self, at: PairAt) -> Option<Length> {
        self.pairs.iter().rev().filter(|pair| pair.at == at).find_map(|pair| pair.face).or(self.face)
    }

    /// Whether the teeth of reverse are taken to be straight though the others are not, since nothing is said of them.
    pub fn takes_reverse_for_straight(&self) -> bool {
        let is_said = self.pair_cut(PairAt::Reverse).is_some_and(|pair| pair.helix.is_some());
        !is_said && self.cut.as_ref().is_some_and(|cut| cut.helix() > Angle::default())
    }

    /// Whether a pair is cut with a pitch or helix of its own.
    pub fn is_cut_otherwise(&self, at: PairAt) -> bool {
        self.pair_cut(at).is_some_and(|pair| pair.module.is_some() || pair.helix.is_some())
    }

    /// The distance of a pair's shafts without profile shift.
    pub fn reference_centre(&self, at: PairAt, mesh: Mesh) -> Option<Length> {
        self.cut_of(at).map(|cut| cut.transverse_module() * f64::from(mesh.sum()) / 2.0)
    }

    /// What is said of a pair; of several the last.
    fn pair_cut(&self, at: PairAt) -> Option<&PairCut> {
        self.pairs.iter().rev().find(|pair| pair.at == at)
    }

    /// Reads the cut and the synchronisers of one setup.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        Self {
            cut: read_cut(setup, problems),
            centre: read_or(setup, InsideField::Centre, &limits::CENTRE_DISTANCE, problems, "the one that the counts give is taken"),
            face: read_or(setup, InsideField::Face, &limits::FACE_WIDTH, problems, "overlap and the estimate of inertia are left out"),
            inertia: read_or(setup, InsideField::Inertia, &limits::INPUT_INERTIA, problems, ESTIMATED),
            cone: read_cone(setup, problems),
            is_cone_typed: [InsideField::ConeAngle, InsideField::ConeFriction].iter().all(|field| typed(setup, *field).is_some()),
            clutch: read_or(setup, InsideField::ClutchDiameter, &limits::CLUTCH_DIAMETER, problems, "a usual clutch plate is taken"),
            pairs: read_pairs(setup, problems),
            bearings: read_bearings(setup, InsideField::Bearings, problems),
            upper_bearings: [InsideField::MainBearings, InsideField::InputBearings].map(|field| read_bearings(setup, field, problems)),
            places: read_places(setup, problems),
            hand: setup.inside.hand.value(),
            unsynchronised: gears(setup, problems),
        }
    }
}

/// What stands in for the inertia, as the end of a sentence.
const ESTIMATED: &str = "an estimate is taken where pitch and face width are given";

/// The cones, where diameter and width are given.
fn read_cone(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Option<Cone> {
    let inside = &setup.inside;
    let diameter: Option<Length> = read(setup, InsideField::ConeDiameter, &limits::CONE_DIAMETER, problems);
    let width: Option<Length> = read(setup, InsideField::ConeWidth, &limits::LINING_WIDTH, problems);
    let half = match (inside.cone_diameter.is_blank(), inside.cone_width.is_blank()) {
        (false, true) => Some((InsideField::ConeDiameter, "width of the lining")),
        (true, false) => Some((InsideField::ConeWidth, "mean diameter of the cones")),
        _ => None,
    };
    if let Some((field, missing)) = half {
        problems.push(Problem::caution((setup.id, field).into(), &Gap::ConeHalf(missing)));
    }
    let angle = read_or(setup, InsideField::ConeAngle, &limits::CONE_ANGLE, problems, "a usual angle is taken");
    let friction: Option<Plain> = read_or(setup, InsideField::ConeFriction, &limits::CONE_FRICTION, problems, "a usual friction is taken");
    let cones = read_cones(setup, problems);
    Some(Cone {
        mean_diameter: diameter?,
        width: width?,
        half_angle: angle.unwrap_or_else(Cone::usual_half_angle),
        friction: friction.map_or(Cone::USUAL_FRICTION, |Plain(friction)| friction),
        cones,
    })
}

/// How many cones work at once: 1 to 3, one where nothing that can be read is typed.
fn read_cones(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> u8 {
    let text = setup.inside.cones.trim();
    if text.is_empty() {
        return 1;
    }
    let cones = text.parse().ok().filter(|cones| (1..=3).contains(cones));
    if cones.is_none() {
        problems.push(Problem::caution((setup.id, InsideField::Cones).into(), &Gap::NoCones(number::clip(text))));
    }
    cones.unwrap_or(1)
}

/// The pairs that are cut otherwise; none where the text cannot be read, or where the cut of the rest does not go with it.
fn read_pairs(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Vec<PairCut> {
    let typed = &setup.inside.pair_cuts;
    let path = (setup.id, InsideField::PairCuts);
    keep(problems, path, pair_cuts::read(&typed.text, typed.units, setup.gearbox.gears.len())).unwrap_or_default()
}

fn read_bearings(setup: &job::Setup, field: InsideField, problems: &mut Vec<InputProblem>) -> Option<[ShaftBearing; 2]> {
    let typed = typed(setup, field)?;
    keep(problems, (setup.id, field), along::read_bearings(&typed.text, typed.units))?
}

fn read_places(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Vec<(PairAt, Length)> {
    let typed = &setup.inside.places;
    let read = along::read_places(&typed.text, typed.units, setup.gearbox.gears.len());
    keep(problems, (setup.id, InsideField::Places), read).unwrap_or_default()
}

/// The quantity in a field; `None` where it is blank or cannot be read.
fn read<Q: Measured>(setup: &job::Setup, field: InsideField, limits: &Limits<Q>, problems: &mut Vec<InputProblem>) -> Option<Q> {
    typed(setup, field).and_then(|typed| keep(problems, (setup.id, field), typed.read(limits)))
}

/// As [`read`], where something stands in for what cannot be read; `by` says what.
fn read_or<Q: Measured>(
    setup: &job::Setup,
    field: InsideField,
    limits: &Limits<Q>,
    problems: &mut Vec<InputProblem>,
    by: &str,
) -> Option<Q> {
    typed(setup, field).and_then(|typed| keep_or(problems, (setup.id, field), typed.read(limits), by))
}

/// The text of a field, where something is typed.
fn typed(setup: &job::Setup, field: InsideField) -> Option<Typed> {
    let kept = field.kept(&setup.inside)?;
    Some(Typed::new(kept.text(), kept.units()?)).filter(|typed| !typed.is_blank())
}

/// The cut, where the pitch is given; straight teeth and 20° where helix and pressure angle are blank, none where they cannot be read.
fn read_cut(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Option<Cut> {
    let inside = &setup.inside;
    let helix: Option<Angle> = read(setup, InsideField::Helix, &limits::HELIX, problems);
    let pressure: Option<Angle> = read(setup, InsideField::Pressure, &limits::PRESSURE_ANGLE, problems);
    let pitch = &inside.pitch;
    if pitch.is_blank() {
        let angles = [(helix, InsideField::Helix, "helix angle"), (pressure, InsideField::Pressure, "pressure angle")];
        for (_, field, angle) in angles.into_iter().filter(|(read, ..)| read.is_some()) {
            problems.push(Problem::caution((setup.id, field).into(), &Gap::AngleWithoutPitch(angle)));
        }
        return None;
    }
    let path = (setup.id, InsideField::Pitch);
    let module = keep(problems, path, Cut::read_module(&pitch.text, pitch.units))?;
    let helix = if inside.helix.is_blank() { Angle::default() } else { helix? };
    let pressure = if inside.pressure.is_blank() { Cut::usual_pressure_angle() } else { pressure? };
    keep(problems, path, Cut::new(module, helix, pressure))
}

/// The numbers of gears in a text, parted by blanks or commas; what is none is said and left out.
fn gears(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Vec<GearNumber> {
    gears_of(setup, SetupField::Unsynchronised, &setup.inside.unsynchronised, problems, |text, gears| Gap::NoGearOfBox { text, gears })
}
