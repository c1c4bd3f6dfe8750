//! A setup, read and checked: what was typed becomes gears, a final drive, a tyre and the conditions, or says why not.
//!
//! Every part stands on its own, so that a slip in one field leaves the rest of the sheet standing.
//! No figure is worked out here.

mod stages;
mod steps;
mod tyres;

use num_traits::CheckedMul;

use super::dial::read::{Speedo, SpeedoShared};
use super::driveline::read::{DrivelineShared, Shafts};
use super::gap::Gap;
use super::inside::read::{Inside, InsideShared};
use super::pull::read::Pull;
use super::swap::read::{Swap, SwapShared};
use crate::gearing::stage::steps;
use crate::gearing::teeth::decimal;
use crate::gearing::{self, FinalDrive, Gear, GearNumber, Gearbox, Idler, Layout, Mesh, PrintedRatio, Ratio, Reverse, Stage, Step, read};
use crate::job::{self, Choice, InputId, InputProblem, Job, JobField, SetupField, SetupId};
use crate::problem::{Explain, Problem};
use crate::tyre::{OmittedAspect, Rolling, Tyre};
use crate::units::{AngularVelocity, Velocity, limits, number};

/// What all setups of a job share.
#[derive(Clone, Debug, PartialEq)]
pub struct Conditions {
    /// The engine speed of each upshift.
    pub shift: Option<AngularVelocity>,
    /// The road speed of a steady cruise.
    pub cruise: Option<Velocity>,
    /// What is looked at inside the box.
    pub inside: InsideShared,
    /// Engine, car and run.
    pub pull: Pull,
    /// The dial, the rule and what else all setups share about the speedometer.
    pub speedo: SpeedoShared,
    /// What the driveshafts are judged at.
    pub driveline: DrivelineShared,
    /// What the car has room for.
    pub swap: SwapShared,
    /// What is wrong with either.
    pub problems: Vec<InputProblem>,
}

/// One setup, read and checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Setup {
    /// Its id inside the job.
    pub id: SetupId,
    /// The letter of its column.
    pub letter: char,
    /// What it is called.
    pub name: String,
    /// How its gearbox is laid out.
    pub layout: Layout,
    /// The constant pair, where the layout has one and it could be read.
    pub constant: Option<Mesh>,
    /// The forward gears, each as far as it could be read.
    pub gears: Vec<Option<Gear>>,
    /// Reverse, where its teeth or its ratio are given.
    pub reverse: Option<Reverse>,
    /// The whole gearbox, where every part of it could be read.
    pub gearbox: Option<Gearbox>,
    /// The final drive.
    pub final_drive: Option<FinalDrive>,
    /// The extra stages, where every one could be read.
    pub stages: Option<Vec<Stage>>,
    /// Its gears with the switchable stages in or at rest, the lowest first where every ratio is known; the gears alone where there are
    /// none, or where a stage could not be read.
    pub steps: Vec<Step>,
    /// The tyre.
    pub tyre: Option<Tyre>,
    /// What it rolls in one turn, worn as it is.
    pub rolling: Option<Rolling>,
    /// The cut of its gears and its synchronisers.
    pub inside: Inside,
    /// The speedometer's gears and road check.
    pub speedo: Speedo,
    /// The driveshaft.
    pub shaft: Shafts,
    /// The sizes of its box.
    pub swap: Swap,
    /// Everything that is wrong with it.
    pub problems: Vec<InputProblem>,
}

impl Setup {
    /// The ratio of a forward gear (0 is first), signed; known as soon as the constant pair and that gear are.
    pub fn ratio(&self, gear: GearNumber) -> Option<Ratio> {
        gear.of(&self.gears).copied().flatten()?.ratio(self.layout, self.constant)
    }

    /// The ratios of all forward gears without sign, lowest gear first; none where one of them cannot be read, or there is no gear.
    pub fn forward_ratios(&self) -> Option<Vec<f64>> {
        let ratios = GearNumber::lowest(self.gears.len())
            .map(|gear| self.ratio(gear).map(|ratio| decimal(ratio).abs()))
            .collect::<Option<Vec<f64>>>();
        ratios.filter(|ratios| !ratios.is_empty())
    }

    /// The printed figure of a forward gear that is not counted: what its last digit leaves open, every figure in that gear has too.
    pub fn printed(&self, gear: GearNumber) -> Option<PrintedRatio> {
        gear.of(&self.gears).copied().flatten()?.printed()
    }
}

impl Conditions {
    /// Reads shift and cruise alone; the rest is as where nothing is typed.
    pub fn of_road(job: &Job) -> Self {
        let mut problems = Vec::new();
        let shift = keep(&mut problems, JobField::Shift, job.shift.read(&limits::SHIFT_SPEED));
        let cruise = keep(&mut problems, JobField::Cruise, job.cruise.read(&limits::CRUISE_SPEED));
        let (inside, pull, speedo) = (InsideShared::default(), Pull::default(), SpeedoShared::default());
        Self { shift, cruise, inside, pull, speedo, driveline: DrivelineShared::default(), swap: SwapShared::default(), problems }
    }

    /// Reads what all setups of a job share.
    pub fn of(job: &Job) -> Self {
        let road = Self::of_road(job);
        let (shift, cruise) = (road.shift, road.cruise);
        let mut problems = job.unknown_choices(|choice| matches!(choice, Choice::Job(_)));
        problems.extend(road.problems);
        let speedo = SpeedoShared::read(job, &mut problems);
        let pull = Pull::read(job, shift, &mut problems);
        let inside = InsideShared::read(job, shift, &mut problems);
        let driveline = DrivelineShared::read(job, &mut problems);
        let swap = SwapShared::read(job, &mut problems);
        Self { shift, cruise, inside, pull, speedo, driveline, swap, problems }
    }
}

/// Reads every setup of a job, in the order of its columns.
pub fn read_all(job: &Job) -> Vec<Setup> {
    let mut setups = read_each(job, read_one);
    for setup in &mut setups {
        setup.problems.extend(job.unknown_choices(|choice| matches!(choice, Choice::Setup(id, _) if id == setup.id)));
    }
    setups
}

/// Reads something of every setup of a job, in the order of its columns.
pub fn read_each(job: &Job, read: fn(&job::Setup, char, OmittedAspect) -> Setup) -> Vec<Setup> {
    let omitted = tyres::omitted_aspect(job);
    job.setups.iter().enumerate().map(|(column, typed)| read(typed, Job::letter(column), omitted)).collect()
}

/// Reads one setup.
pub fn read_one(typed: &job::Setup, letter: char, omitted: OmittedAspect) -> Setup {
    let mut setup = read_drive(typed, letter, omitted);
    setup.inside = Inside::read(typed, &mut setup.problems);
    setup.speedo = Speedo::read(typed, &mut setup.problems);
    setup.shaft = Shafts::read(typed, &mut setup.problems);
    setup.swap = Swap::read(typed, &mut setup.problems);
    setup
}

/// Reads gears, axle and tyre of one setup; the rest is as where nothing is typed.
pub fn read_drive(typed: &job::Setup, letter: char, omitted: OmittedAspect) -> Setup {
    let mut problems = Vec::new();
    let id = typed.id;
    let layout = typed.gearbox.layout;
    let gears = read_gears(typed, &mut problems);
    let constant = read_constant(typed, &gears, &mut problems);
    let reverse = read_reverse(typed, &mut problems);
    let gearbox = assemble(layout, constant, &gears, reverse);
    let final_drive = keep(&mut problems, (id, SetupField::FinalDrive), read::final_drive(&typed.final_drive));
    let stages = stages::read(typed, &mut problems);
    let ratios: Vec<Option<Ratio>> =
        gears.iter().map(|gear| gear.and_then(|gear| gear.ratio(layout, constant)).map(without_sign)).collect();
    let steps = steps(&ratios, stages.as_deref().unwrap_or_default());
    let (tyre, rolling) = tyres::read(typed, omitted, &mut problems);
    Setup {
        id: typed.id,
        letter,
        name: typed.name.clone(),
        layout,
        constant,
        gears,
        reverse,
        gearbox,
        final_drive,
        stages,
        steps,
        tyre,
        rolling,
        inside: Inside::default(),
        speedo: Speedo::default(),
        shaft: Shafts::default(),
        swap: Swap::default(),
        problems,
    }
}

/// A ratio without the sign of its direction.
pub fn without_sign(ratio: Ratio) -> Ratio {
    if ratio < Ratio::from_integer(0) { -ratio } else { ratio }
}

/// The product of ratios; `None` where it leaves the exact range, which no stages that can be typed do.
fn product(mut ratios: impl Iterator<Item = Ratio>) -> Option<Ratio> {
    ratios.try_fold(Ratio::from_integer(1), |product, ratio| product.checked_mul(&ratio))
}

fn read_gears(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Vec<Option<Gear>> {
    let typed = &setup.gearbox;
    let read = |(at, text): (usize, &String)| keep(problems, (setup.id, SetupField::Gear(at)), read::gear(text, typed.layout));
    typed.gears.iter().take(gearing::Gearbox::MOST_GEARS).enumerate().map(read).collect()
}

/// The constant pair; nothing of it is missed where every gear could be read and none goes by its own pair.
fn read_constant(setup: &job::Setup, gears: &[Option<Gear>], problems: &mut Vec<InputProblem>) -> Option<Mesh> {
    let known = gears.iter().copied().collect::<Option<Vec<_>>>().unwrap_or_default();
    let typed = &setup.gearbox;
    match typed.layout {
        Layout::TwoShaft => None,
        layout => keep(problems, (setup.id, SetupField::Constant), read::constant_of(&typed.constant, layout, &known)).flatten(),
    }
}

/// Reverse may be left blank: it is often unknown, and no forward figure needs it.
fn read_reverse(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Option<Reverse> {
    let typed = &setup.gearbox;
    let idler = keep(problems, (setup.id, SetupField::Idler), read::idler(&typed.idler));
    if typed.reverse.trim().is_empty() {
        if idler.is_some_and(|idler| idler != Idler::Plain(None)) {
            problems.push(Problem::caution((setup.id, SetupField::Idler).into(), &Gap::IdlerAlone));
        }
        return None;
    }
    // An idler that cannot be read says so itself.
    let reverse =
        keep(problems, (setup.id, SetupField::Reverse), read::reverse(&typed.reverse, idler.unwrap_or(Idler::Plain(None)), typed.layout));
    idler.and(reverse)
}

fn assemble(layout: Layout, constant: Option<Mesh>, gears: &[Option<Gear>], reverse: Option<Reverse>) -> Option<Gearbox> {
    let gears = gears.iter().copied().collect::<Option<Vec<_>>>()?;
    Gearbox::new(layout, constant, gears, reverse).ok()
}

/// What could be read; what could not is said of its field.
pub fn keep<T>(problems: &mut Vec<InputProblem>, field: impl Into<InputId>, read: Result<T, impl Explain>) -> Option<T> {
    read.map_err(|why| problems.push(Problem::stop(field.into(), &why))).ok()
}

/// As [`keep`], where something stands in for what cannot be read; `by` says what.
pub fn keep_or<T>(problems: &mut Vec<InputProblem>, field: impl Into<InputId>, read: Result<T, impl Explain>, by: &str) -> Option<T> {
    read.map_err(|why| problems.push(Problem::defaulted(field.into(), &why, by))).ok()
}

/// The gears of a box that a text names, parted by blanks or commas; what is none of them is said and left out.
pub fn gears_of(
    setup: &job::Setup,
    field: SetupField,
    text: &str,
    problems: &mut Vec<InputProblem>,
    why: impl Fn(String, usize) -> Gap,
) -> Vec<GearNumber> {
    let many = setup.gearbox.gears.len();
    let parts = text.split(|c: char| c.is_whitespace() || matches!(c, ',' | ';')).filter(|part| !part.is_empty());
    let read = |part: &str| {
        let gear = GearNumber::read(part).filter(|gear| gear.place() < many);
        let read = gear.ok_or_else(|| why(number::clip(part), many));
        read.map_err(|why| problems.push(Problem::caution((setup.id, field).into(), &why))).ok()
    };
    parts.filter_map(read).collect()
}
