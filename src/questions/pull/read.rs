//! Engine, car and run, read and checked. What is blank is stood in for by a marked default; mass and torque are not.

use crate::gearing::GearNumber;
use crate::job::choice::{Chosen, Picked, ShiftBy};
use crate::job::inputs::car::usual_speeds;
use crate::job::{self, InputProblem, Job, PullField};
use crate::motion::atmosphere::{self, Correction};
use crate::motion::car::{Car, Defaults, Drive, Efficiencies, Rotating, Sourced};
use crate::motion::curve::EngineCurve;
use crate::motion::curve::rows::Detected;
use crate::motion::plan::Shifting;
use crate::motion::shift::Rule;
use crate::problem::{Explain, Problem};
use crate::questions::gap::Gap;
use crate::questions::setup::{keep, keep_or};
use crate::units::common::rpm;
use crate::units::{
    Altitude, AngularVelocity, Limits, Mass, Measured, MomentOfInertia, Plain, Share, System, Time, Typed, Velocity, limits, number, unit,
};

mod engine;

/// The most speeds that are timed.
const MOST_SPEEDS: usize = 6;

/// What holds where there is no rev limit, as the end of a sentence.
const NO_LIMIT: &str = "the run ends with the torque curve, and downshifts are judged by the shift rpm";

/// Engine, car and run.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    /// The engine at the sea, corrected where that was asked.
    pub curve: Option<EngineCurve>,
    /// The engine where the car is driven.
    pub curve_at_height: Option<EngineCurve>,
    /// Height above the sea of where the car is driven.
    pub altitude: Sourced<Altitude>,
    /// What was taken for what in pasted rows.
    pub detected: Option<Detected>,
    /// The correction of a measured curve that was applied; peaks are taken as they are typed.
    pub correction: Option<Correction>,
    /// The engine speed that is not to be passed.
    pub limit: Option<AngularVelocity>,
    /// What the losses leave over; they count without a mass too.
    pub efficiencies: Efficiencies,
    /// The car, where its mass is given.
    pub car: Option<Car>,
    /// Mass on the hook.
    pub trailer: Mass,
    /// How the car is driven.
    pub run: RunTyped,
}

/// How the car is driven.
#[derive(Clone, Debug, PartialEq)]
pub struct RunTyped {
    /// Engine speed held at a standing start.
    pub launch: Sourced<AngularVelocity>,
    /// Time without thrust in each shift.
    pub shift_time: Sourced<Time>,
    /// How the upshifts of a run are chosen.
    pub shifting: Shifting,
    /// The share of peak power that still counts as the power band.
    pub band_share: Sourced<Share>,
    /// The speeds whose time is asked for.
    pub speeds: Vec<Velocity>,
    /// A rolling start: from, to, and the gear where one is chosen; else top gear.
    pub roll: Option<(Velocity, Velocity, Option<GearNumber>)>,
}

impl RunTyped {
    /// Which of the speeds stands for a run: the second, usually 60 mph or 100 km/h, or the only one.
    pub fn named_speed(&self) -> Option<(usize, Velocity)> {
        let all = || self.speeds.iter().copied().enumerate();
        all().nth(1).or_else(|| all().next())
    }
}

impl Default for Pull {
    /// As where nothing is typed.
    fn default() -> Self {
        Self {
            curve: None,
            curve_at_height: None,
            altitude: Defaults::altitude(),
            detected: None,
            correction: None,
            limit: None,
            efficiencies: Efficiencies::default(),
            car: None,
            trailer: Mass::default(),
            run: RunTyped::default(),
        }
    }
}

impl Default for RunTyped {
    /// As where nothing is typed, and no speeds are asked for.
    fn default() -> Self {
        Self {
            launch: usual_launch(),
            shift_time: turned_into(Defaults::shift_time_s(), unit::SECOND.make),
            shifting: Shifting::Planned,
            band_share: turned_into(Defaults::band_share(), Share),
            speeds: Vec::new(),
            roll: None,
        }
    }
}

fn usual_launch() -> Sourced<AngularVelocity> {
    turned_into(Defaults::launch_rpm(), rpm)
}

/// Reads one text after another, and collects what is wrong.
pub(super) struct Reader<'a> {
    pub(super) pull: &'a job::Pull,
    pub(super) units: System,
    pub(super) problems: &'a mut Vec<InputProblem>,
}

impl Reader<'_> {
    /// The text of a field, where something is typed.
    fn typed(&self, field: PullField) -> Option<Typed> {
        let kept = field.kept(self.pull)?;
        Some(Typed::new(kept.text(), kept.units().unwrap_or(self.units))).filter(|typed| !typed.is_blank())
    }

    /// The quantity in a field; `None` where it is blank or cannot be read.
    pub(super) fn get<Q: Measured>(&mut self, field: PullField, limits: &Limits<Q>) -> Option<Q> {
        self.typed(field).and_then(|typed| keep(self.problems, field, typed.read(limits)))
    }

    /// As [`Reader::get`], where something stands in for what cannot be read; `by` says what.
    pub(super) fn get_or<Q: Measured>(&mut self, field: PullField, limits: &Limits<Q>, by: &str) -> Option<Q> {
        self.typed(field).and_then(|typed| keep_or(self.problems, field, typed.read(limits), by))
    }

    /// The quantity in a field, or what stands in for it.
    fn sourced<Q: Measured>(&mut self, field: PullField, limits: &Limits<Q>, standing_in: Sourced<Q>) -> Sourced<Q> {
        let by = format!("{} is taken", limits::say(standing_in.value, self.units));
        Sourced::or(self.get_or(field, limits, &by), standing_in)
    }

    pub(super) fn refuse(&mut self, field: PullField, why: &impl Explain) {
        self.problems.push(Problem::stop(field.into(), why));
    }

    pub(super) fn warn(&mut self, field: PullField, why: &impl Explain) {
        self.problems.push(Problem::caution(field.into(), why));
    }

    pub(super) fn is_blank(&self, field: PullField) -> bool {
        self.typed(field).is_none()
    }
}

impl Pull {
    /// Reads engine, car and run; `shift` is the shift rpm of the sheet.
    pub fn read(job: &Job, shift: Option<AngularVelocity>, problems: &mut Vec<InputProblem>) -> Self {
        let mut reader = Reader { pull: &job.pull, units: job.units, problems };
        let efficiencies = efficiencies(&mut reader);
        let (curve, detected) = engine::curve(&mut reader, efficiencies.final_drive.value);
        // Read in any case, so that what is wrong with the air is said; the peaks of a brochure are at its standard already.
        let correction = engine::correction(&mut reader).filter(|_| !reader.is_blank(PullField::Rows));
        let corrected = curve.map(|curve| correction.and_then(|correction| curve.scaled(correction.factor).ok()).unwrap_or(curve));
        let altitude = reader.sourced(PullField::Altitude, &limits::ALTITUDE, Defaults::altitude());
        let share = if altitude.is_given() { atmosphere::engine_share_at(altitude.value) } else { 1.0 };
        Self {
            curve_at_height: corrected.as_ref().and_then(|curve| curve.scaled(share).ok()),
            curve: corrected,
            altitude,
            detected,
            correction,
            limit: reader.get_or(PullField::Limit, &limits::ENGINE_SPEED, NO_LIMIT),
            efficiencies,
            car: car(&mut reader, efficiencies).map(|car| at_height(car, altitude)),
            trailer: reader.get_or(PullField::Trailer, &limits::TRAILER, "no trailer is taken").unwrap_or_default(),
            run: run(&mut reader, shift, job.units),
        }
    }
}

fn share(reader: &mut Reader<'_>, field: PullField, standing_in: Sourced<f64>) -> Sourced<f64> {
    turned_into(reader.sourced(field, &limits::SHARE, turned_into(standing_in, Share)), |share| share.0)
}

/// The losses as they are typed; what stands in is a box's with input and output in line.
fn efficiencies(reader: &mut Reader<'_>) -> Efficiencies {
    let losses = Defaults::efficiencies(false);
    Efficiencies {
        mesh: share(reader, PullField::MeshEfficiency, losses.mesh),
        final_drive: share(reader, PullField::AxleEfficiency, losses.final_drive),
    }
}

/// The car; what stands in is a box's with input and output in line: see [`Car::with_box`].
fn car(reader: &mut Reader<'_>, efficiencies: Efficiencies) -> Option<Car> {
    let drive = drive(&reader.pull.drive);
    let plain = |reader: &mut Reader<'_>, field, limits, standing_in| {
        turned_into(reader.sourced(field, limits, turned_into(standing_in, Plain)), |plain| plain.0)
    };
    let driven_share =
        share(reader, PullField::DrivenShare, Defaults::driven_share(drive.map_or_else(Drive::default, |drive| drive.value)));
    let wheelbase = reader.sourced(PullField::Wheelbase, &limits::WHEELBASE, Defaults::wheelbase());
    let gravity_height = reader.sourced(PullField::GravityHeight, &limits::GRAVITY_HEIGHT, Defaults::gravity_height());
    let drag_area = reader.sourced(PullField::DragArea, &limits::DRAG_AREA, Defaults::drag_area());
    let rolling = plain(reader, PullField::Rolling, &limits::ROLLING, Defaults::rolling());
    let grip = plain(reader, PullField::Grip, &limits::GRIP, Defaults::grip());
    let rotating = Sourced::or(rotating(reader), Defaults::rotating());
    let mass: Mass = reader.get(PullField::Mass, &limits::MASS)?;
    let rest = Car::of_mass(mass);
    Some(Car { drive: drive?, driven_share, wheelbase, gravity_height, drag_area, rolling, grip, efficiencies, rotating, ..rest })
}

/// The car in the air of a height.
fn at_height(car: Car, altitude: Sourced<Altitude>) -> Car {
    let why = "standard atmosphere at the height that is typed (ISO 2533)";
    let thinner = Sourced::default(atmosphere::density_at(altitude.value), why);
    Car { air_density: if altitude.is_given() { thinner } else { car.air_density }, ..car }
}

/// The driven wheels; none where a file names others.
fn drive(chosen: &Chosen<Drive>) -> Option<Sourced<Drive>> {
    match chosen.picked() {
        Picked::Nothing => Some(Defaults::drive(false)),
        Picked::One(drive) => Some(Sourced::given(drive)),
        Picked::Unknown(_) => None,
    }
}

/// The inertias, where engine and wheels are given; a box without one is taken for nothing.
fn rotating(reader: &mut Reader<'_>) -> Option<Rotating> {
    let mut inertia = |field| reader.get_or::<MomentOfInertia>(field, &limits::INERTIA, "rotating parts are taken by the usual rule");
    let (engine, gearbox, wheels) = (inertia(PullField::EngineInertia), inertia(PullField::BoxInertia), inertia(PullField::WheelInertia));
    let fields = [PullField::EngineInertia, PullField::WheelInertia, PullField::BoxInertia];
    let given = fields.into_iter().find(|field| !reader.is_blank(*field));
    if let Some(given) = given.filter(|_| fields.into_iter().take(2).any(|field| reader.is_blank(field))) {
        reader.warn(given, &Gap::InertiaAlone);
    }
    let gearbox = if reader.is_blank(PullField::BoxInertia) { MomentOfInertia::default() } else { gearbox? };
    Some(Rotating::Given { engine: engine?, gearbox, wheels: wheels? })
}

fn run(reader: &mut Reader<'_>, shift: Option<AngularVelocity>, blank: System) -> RunTyped {
    let launch = reader.sourced(PullField::Launch, &limits::ENGINE_SPEED, usual_launch());
    let seconds = unit::SECOND.make;
    let shift_time = reader.sourced(PullField::ShiftTime, &limits::SHIFT_TIME, turned_into(Defaults::shift_time_s(), seconds));
    let band_share = reader.sourced(PullField::BandShare, &limits::SHARE, turned_into(Defaults::band_share(), Share));
    let shifting = match (reader.pull.rule.value(), shift) {
        (Some(ShiftBy::Thrust), _) => Shifting::By(Rule::EqualThrust),
        (Some(ShiftBy::ShiftRpm), Some(shift)) => Shifting::By(Rule::At(shift)),
        _ => Shifting::Planned,
    };
    let roll = roll(reader);
    RunTyped { launch, shift_time, shifting, band_share, speeds: speeds(reader, blank), roll }
}

/// The rolling start: from, to, and its gear.
fn roll(reader: &mut Reader<'_>) -> Option<(Velocity, Velocity, Option<GearNumber>)> {
    let from: Option<Velocity> = reader.get(PullField::RollFrom, &limits::ROAD_SPEED);
    let to: Option<Velocity> = reader.get(PullField::RollTo, &limits::ROAD_SPEED);
    let gear = keep(reader.problems, PullField::RollGear, roll_gear(reader.pull));
    let half = match [PullField::RollFrom, PullField::RollTo, PullField::RollGear].map(|field| !reader.is_blank(field)) {
        [true, false, _] => Some((PullField::RollFrom, "the speed it ends at is")),
        [false, true, _] => Some((PullField::RollTo, "the speed it begins at is")),
        [false, false, true] => Some((PullField::RollGear, "the speeds it begins and ends at are")),
        _ => None,
    };
    if let Some((field, missing)) = half {
        reader.warn(field, &Gap::RollHalf { missing });
    }
    Some((from?, to?, gear?))
}

/// The gear of the rolling start; `None` where it is top gear.
fn roll_gear(pull: &job::Pull) -> Result<Option<GearNumber>, Gap> {
    let text = pull.roll_gear.text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    GearNumber::read(text).map(Some).ok_or_else(|| Gap::NoSuchGear { text: number::clip(text) })
}

/// The same value in another form, with its origin.
fn turned_into<A, B>(value: Sourced<A>, make: impl Fn(A) -> B) -> Sourced<B> {
    Sourced { value: make(value.value), origin: value.origin }
}

/// The speeds asked for, parted by semicolons; where none are, the usual ones in the job's units (`blank`).
fn speeds(reader: &mut Reader<'_>, blank: System) -> Vec<Velocity> {
    let typed = &reader.pull.speeds;
    let (text, units) = if typed.is_blank() { (usual_speeds(blank), blank) } else { (typed.text.as_str(), typed.units) };
    let parts: Vec<&str> = text.split(';').map(str::trim).filter(|part| !part.is_empty()).collect();
    if parts.len() > MOST_SPEEDS {
        reader.warn(PullField::Speeds, &Gap::TooManySpeeds { most: MOST_SPEEDS });
    }
    let read = |part: &&str| keep(reader.problems, PullField::Speeds, Typed::new(*part, units).read(&limits::ROAD_SPEED));
    parts.iter().take(MOST_SPEEDS).filter_map(read).collect()
}
