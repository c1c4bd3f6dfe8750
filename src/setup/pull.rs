//! Engine, car and run, read and checked. What is blank is stood in for by a marked default; mass and torque are not.

use super::{Gap, keep};
use crate::job::{self, Job, JobField, PullField};
use crate::motion::atmosphere::{self, Air, Correction, Standard};
use crate::motion::car::{Car, Defaults, Drive, Efficiencies, Rotating, Sourced};
use crate::motion::curve::rows::{self, Detected};
use crate::motion::curve::{CurveError, EngineCurve, generic};
use crate::motion::shift::Rule;
use crate::problem::{Explain, Problem};
use crate::units::common::rpm;
use crate::units::{
    AngularVelocity, Area, Length, Limits, Mass, Measured, MomentOfInertia, Plain, Power, Pressure, Share, ThermodynamicTemperature, Time,
    Torque, Typed, Velocity, common, limits, number,
};

/// The most speeds that are timed.
const MOST_SPEEDS: usize = 6;

/// Engine, car and run.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    /// The engine, corrected where that was asked.
    pub curve: Option<EngineCurve>,
    /// What was taken for what in pasted rows.
    pub detected: Option<Detected>,
    /// The correction that was applied.
    pub correction: Option<Correction>,
    /// The engine speed that is not to be passed.
    pub limit: Option<AngularVelocity>,
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
    /// The rule of the upshifts.
    pub rule: Rule,
    /// The share of peak power that still counts as the power band.
    pub band_share: Sourced<Share>,
    /// The speeds whose time is asked for.
    pub speeds: Vec<Velocity>,
    /// A rolling start: from, to, and the gear (counted from 1) where one is chosen.
    pub roll: Option<(Velocity, Velocity, Option<usize>)>,
}

/// Reads one text after another, and collects what is wrong.
struct Reader<'a> {
    pull: &'a job::Pull,
    problems: &'a mut Vec<Problem>,
}

impl Reader<'_> {
    /// The quantity in a field; `None` where it is blank or cannot be read.
    fn get<Q: Measured>(&mut self, field: PullField, limits: &Limits) -> Option<Q> {
        let typed = field.typed(self.pull);
        if typed.is_blank() {
            return None;
        }
        keep(self.problems, JobField::Pull(field).path(), typed.read(limits))
    }

    fn refuse(&mut self, field: PullField, why: &impl Explain) {
        self.problems.push(Problem::stop(field.path(), why));
    }

    fn warn(&mut self, field: PullField, why: &impl Explain) {
        self.problems.push(Problem::caution(field.path(), why));
    }

    fn is_blank(&self, field: PullField) -> bool {
        field.typed(self.pull).is_blank()
    }
}

impl Pull {
    pub(super) fn read(job: &Job, shift: Option<AngularVelocity>, problems: &mut Vec<Problem>) -> Self {
        let mut reader = Reader { pull: &job.pull, problems };
        let (curve, detected) = curve(&mut reader);
        let correction = correction(&mut reader);
        let corrected = curve.map(|curve| correction.and_then(|correction| curve.scaled(correction.factor).ok()).unwrap_or(curve));
        Self {
            curve: corrected,
            detected,
            correction,
            limit: reader.get(PullField::Limit, &limits::SHIFT_SPEED),
            car: car(&mut reader),
            trailer: reader.get(PullField::Trailer, &limits::TRAILER).unwrap_or_default(),
            run: run(&mut reader, shift),
        }
    }
}

/// The engine's curve: pasted rows first, else through its peaks.
fn curve(reader: &mut Reader<'_>) -> (Option<EngineCurve>, Option<Detected>) {
    let rows = &reader.pull.rows;
    if !rows.is_blank() {
        let pasted = rows::read(&rows.text, rows.units);
        for problem in &pasted.problems {
            reader.problems.push(Problem::caution(PullField::Rows.path(), problem));
        }
        let curve = pasted.curve.map_err(|why| reader.refuse(PullField::Rows, &why)).ok();
        return (curve, pasted.detected);
    }
    (peaks(reader), None)
}

/// A generic curve through what is known of the peaks.
fn peaks(reader: &mut Reader<'_>) -> Option<EngineCurve> {
    let torque: Option<Torque> = reader.get(PullField::PeakTorque, &limits::TORQUE);
    let torque_at: Option<AngularVelocity> = reader.get(PullField::PeakTorqueAt, &limits::SHIFT_SPEED);
    let power: Option<Power> = reader.get(PullField::PeakPower, &limits::POWER);
    let power_at: Option<AngularVelocity> = reader.get(PullField::PeakPowerAt, &limits::SHIFT_SPEED);
    if power.is_some() && reader.is_blank(PullField::PeakPowerAt) {
        reader.warn(PullField::PeakPower, &Gap::PowerWithoutSpeed);
    }
    let torque_at = torque_at.or_else(|| torque.map(|_| rpm(Defaults::peak_torque_rpm().value)));
    let made: Result<EngineCurve, CurveError> = match (torque.zip(torque_at), power.zip(power_at)) {
        (Some(torque), Some(power)) => generic::from_peaks(torque, power),
        (Some((torque, at)), None) => generic::from_torque(torque, at),
        (None, Some((power, at))) => generic::from_power(power, at),
        (None, None) => return None,
    };
    made.map_err(|why| reader.refuse(if torque.is_some() { PullField::PeakTorque } else { PullField::PeakPower }, &why)).ok()
}

/// The correction to a standard, where one is chosen and the air of the test is given.
fn correction(reader: &mut Reader<'_>) -> Option<Correction> {
    let standard = match reader.pull.standard.as_str() {
        "sae-j1349" => Standard::SaeJ1349,
        "iso-1585" => Standard::Iso1585,
        "din-70020" => Standard::Din70020,
        _ => return None,
    };
    let pressure: Option<Pressure> = reader.get(PullField::AirPressure, &limits::AIR_PRESSURE);
    let temperature: Option<ThermodynamicTemperature> = reader.get(PullField::AirTemperature, &limits::AIR_TEMPERATURE);
    let humidity = reader.get::<Share>(PullField::AirHumidity, &limits::HUMIDITY).map_or(0.0, |share| share.0);
    if let Some(missing) = [PullField::AirPressure, PullField::AirTemperature].into_iter().find(|field| reader.is_blank(*field)) {
        reader.warn(missing, &Gap::AirUnknown);
    }
    let correction = atmosphere::correction(standard, &Air { pressure: pressure?, temperature: temperature?, humidity })?;
    if let Some((least, greatest)) = correction.allowed.filter(|_| !correction.is_allowed()) {
        reader.warn(PullField::AirPressure, &Gap::CorrectionBeyond { factor: correction.factor, least, greatest });
    }
    Some(correction)
}

fn car(reader: &mut Reader<'_>) -> Option<Car> {
    let drive = match reader.pull.drive.as_str() {
        "front" => Sourced::given(Drive::Front),
        "all" => Sourced::given(Drive::All),
        "rear" => Sourced::given(Drive::Rear),
        _ => Defaults::drive(),
    };
    let share = |reader: &mut Reader<'_>, field, standing_in| {
        Sourced::or(reader.get::<Share>(field, &limits::SHARE).map(|share| share.0), standing_in)
    };
    let losses = Defaults::efficiencies();
    let efficiencies = Efficiencies {
        mesh: share(reader, PullField::MeshEfficiency, losses.mesh),
        final_drive: share(reader, PullField::AxleEfficiency, losses.final_drive),
    };
    let driven_share = share(reader, PullField::DrivenShare, Defaults::driven_share(drive.value));
    let wheelbase = Sourced::or(reader.get::<Length>(PullField::Wheelbase, &limits::WHEELBASE), Defaults::wheelbase());
    let gravity_height = Sourced::or(reader.get::<Length>(PullField::GravityHeight, &limits::GRAVITY_HEIGHT), Defaults::gravity_height());
    let drag_area = Sourced::or(reader.get::<Area>(PullField::DragArea, &limits::DRAG_AREA), Defaults::drag_area());
    let rolling = Sourced::or(reader.get::<Plain>(PullField::Rolling, &limits::ROLLING).map(|plain| plain.0), Defaults::rolling());
    let grip = Sourced::or(reader.get::<Plain>(PullField::Grip, &limits::GRIP).map(|plain| plain.0), Defaults::grip());
    let rotating = Sourced::or(rotating(reader), Defaults::rotating());
    let mass: Mass = reader.get(PullField::Mass, &limits::MASS)?;
    let rest = Car::of_mass(mass);
    Some(Car { drive, driven_share, wheelbase, gravity_height, drag_area, rolling, grip, efficiencies, rotating, ..rest })
}

/// The inertias, where engine and wheels are given; a box without one is taken for nothing.
fn rotating(reader: &mut Reader<'_>) -> Option<Rotating> {
    let mut inertia = |field| reader.get::<MomentOfInertia>(field, &limits::INERTIA);
    let (engine, gearbox, wheels) = (inertia(PullField::EngineInertia), inertia(PullField::BoxInertia), inertia(PullField::WheelInertia));
    let fields = [PullField::EngineInertia, PullField::WheelInertia, PullField::BoxInertia];
    let given = fields.into_iter().find(|field| !reader.is_blank(*field));
    if let Some(given) = given.filter(|_| fields.into_iter().take(2).any(|field| reader.is_blank(field))) {
        reader.warn(given, &Gap::InertiaAlone);
    }
    Some(Rotating::Given { engine: engine?, gearbox: gearbox.unwrap_or_default(), wheels: wheels? })
}

fn run(reader: &mut Reader<'_>, shift: Option<AngularVelocity>) -> RunTyped {
    let launch = Sourced::or(reader.get(PullField::Launch, &limits::SHIFT_SPEED), in_quantity(Defaults::launch_rpm(), rpm));
    let shift_time = Sourced::or(
        reader.get(PullField::ShiftTime, &limits::SHIFT_TIME),
        in_quantity(Defaults::shift_time_s(), common::unit::<Time>("s").make),
    );
    let band_share = Sourced::or(reader.get(PullField::BandShare, &limits::SHARE), in_quantity(Defaults::band_share(), Share));
    let rule = match (reader.pull.rule.as_str(), shift) {
        ("thrust", _) => Rule::EqualThrust,
        ("chosen", Some(shift)) => Rule::At(shift),
        _ => Rule::EqualAcceleration,
    };
    let from: Option<Velocity> = reader.get(PullField::RollFrom, &limits::CRUISE_SPEED);
    let to: Option<Velocity> = reader.get(PullField::RollTo, &limits::CRUISE_SPEED);
    let gear = keep(reader.problems, PullField::RollGear.path(), roll_gear(reader.pull));
    let roll = from.zip(to).zip(gear).map(|((from, to), gear)| (from, to, gear));
    RunTyped { launch, shift_time, rule, band_share, speeds: speeds(reader), roll }
}

/// The gear of the rolling start; `None` where it is left to the car.
fn roll_gear(pull: &job::Pull) -> Result<Option<usize>, Gap> {
    let text = pull.roll_gear.text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let gear = text.trim_end_matches(char::is_alphabetic).parse().ok().filter(|gear| (1..=8).contains(gear));
    gear.map(Some).ok_or_else(|| Gap::NoSuchGear { text: number::clip(text) })
}

fn in_quantity<Q>(value: Sourced<f64>, make: fn(f64) -> Q) -> Sourced<Q> {
    Sourced { value: make(value.value), origin: value.origin }
}

/// The speeds asked for, parted by semicolons; the usual ones where none are.
fn speeds(reader: &mut Reader<'_>) -> Vec<Velocity> {
    let typed = &reader.pull.speeds;
    let units = typed.units;
    if typed.is_blank() {
        let usual: &[f64] = if units == crate::units::System::Inch { &[30.0, 60.0, 100.0] } else { &[50.0, 100.0, 160.0] };
        return usual.iter().map(|speed| (Velocity::usual(units).make)(*speed)).collect();
    }
    let parts: Vec<&str> = typed.text.split(';').map(str::trim).filter(|part| !part.is_empty()).collect();
    if parts.len() > MOST_SPEEDS {
        reader.warn(PullField::Speeds, &Gap::TooManySpeeds { most: MOST_SPEEDS });
    }
    let read = |part: &&str| keep(reader.problems, PullField::Speeds.path(), Typed::new(*part, units).read(&limits::CRUISE_SPEED));
    parts.iter().take(MOST_SPEEDS).filter_map(read).collect()
}
