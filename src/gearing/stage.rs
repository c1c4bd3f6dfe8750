//! Extra stages between gearbox and wheels: what each is, whether it can be switched, and the steps it makes of a box's gears.
//!
//! A stage that can be switched rests until it is put in: an overdrive rests straight through, a range box in its high range. A box at
//! rest has its gears alone; every switchable stage adds a step to each gear that it can be used in.

use std::cmp::Reverse;

use num_traits::{CheckedDiv, CheckedMul};

use crate::order;

use super::axle::{FinalDrive, Place};
use super::gearbox::Gearbox;
use super::teeth::Ratio;
use crate::gearing::GearNumber;

/// What an extra stage is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum StageKind {
    /// A unit behind the box that makes a gear taller.
    Overdrive,
    /// Two ranges or a splitter, in or behind the box.
    RangeBox,
    /// Shares the drive between the axles, mostly with a low range.
    TransferBox,
    /// A pair of gears that is always in.
    DropGears,
    /// A reduction at the wheels, always in.
    HubReduction,
    /// A final drive of two ratios.
    TwoSpeedAxle,
}

impl StageKind {
    /// Where it stands.
    pub const fn place(self) -> Place {
        match self {
            Self::HubReduction | Self::TwoSpeedAxle => Place::BehindAxle,
            Self::Overdrive | Self::RangeBox | Self::TransferBox | Self::DropGears => Place::BeforeAxle,
        }
    }

    /// Whether it is made to be switched.
    pub const fn is_switched(self) -> bool {
        !matches!(self, Self::DropGears | Self::HubReduction)
    }

    /// Whether it is switched while the car moves, so that a run may use it; a transfer box is not (common practice, no published source).
    pub const fn shifts_on_the_move(self) -> bool {
        !matches!(self, Self::TransferBox)
    }

    /// How many meshes carry the power where it is not straight through: the input, middle and output gears of a transfer box make two;
    /// an epicyclic train loses about as much as one (common practice, no published source).
    const fn meshes(self) -> u8 {
        if matches!(self, Self::TransferBox) { 2 } else { 1 }
    }
}

/// The gears a switchable stage can be used in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct UsedIn([bool; Gearbox::MOST_GEARS]);

impl UsedIn {
    /// Every gear.
    pub const ALL: Self = Self([true; Gearbox::MOST_GEARS]);

    /// These gears; what no box has is left out.
    pub fn gears(gears: &[GearNumber]) -> Self {
        let mut used = [false; Gearbox::MOST_GEARS];
        for gear in gears {
            if let Some(used) = used.get_mut(gear.place()) {
                *used = true;
            }
        }
        Self(used)
    }

    /// Whether it can be used in a gear.
    pub fn contains(self, gear: GearNumber) -> bool {
        gear.of(&self.0).copied().unwrap_or(false)
    }
}

/// How a stage is switched.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Switch {
    /// Its ratio at rest; 1 where it is straight through then.
    pub rest: Ratio,
    /// The gears it can be put in.
    pub used_in: UsedIn,
}

/// One extra stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Stage {
    /// What it is, where that is said.
    pub kind: Option<StageKind>,
    /// Where it stands.
    pub place: Place,
    /// Its ratio when it is in, as teeth or alone.
    pub drive: FinalDrive,
    /// How it is switched; none where it is always in.
    pub switch: Option<Switch>,
}

impl Stage {
    /// Its ratio until it is switched.
    pub fn at_rest(&self) -> Ratio {
        self.switch.map_or_else(|| self.drive.ratio(), |switch| switch.rest)
    }

    /// What putting it in multiplies the ratio at rest by; `None` where it is always in, or where the exact range is left.
    pub fn factor(&self) -> Option<Ratio> {
        self.drive.ratio().checked_div(&self.switch?.rest)
    }

    /// Whether putting it in changes anything.
    pub fn changes(&self) -> bool {
        self.factor().is_some_and(|factor| factor != Ratio::from_integer(1))
    }

    /// How many meshes of it carry the power; none where it is straight through.
    pub fn meshes(&self, is_in: bool) -> u8 {
        let ratio = if is_in { self.drive.ratio() } else { self.at_rest() };
        if ratio == Ratio::from_integer(1) { 0 } else { self.kind.map_or(1, StageKind::meshes) }
    }

    /// Whether it is switched while the car moves.
    pub fn shifts_on_the_move(&self) -> bool {
        self.kind.is_none_or(StageKind::shifts_on_the_move)
    }

    /// What a gear is called with it in, in full and in short.
    pub fn called(&self) -> (&'static str, &'static str) {
        let is_taller = self.drive.ratio() < self.at_rest();
        match (self.kind, is_taller) {
            (Some(StageKind::Overdrive), true) => ("overdrive", "OD"),
            // Straight through until it is put in, and taller then: whatever it is called, it is used as an overdrive.
            (None, true) if self.at_rest() == Ratio::from_integer(1) => ("overdrive", "OD"),
            (Some(StageKind::TransferBox), false) => ("low range", "LR"),
            (Some(StageKind::TransferBox), true) => ("high range", "HR"),
            (Some(StageKind::TwoSpeedAxle), false) => ("low axle", "LA"),
            (Some(StageKind::TwoSpeedAxle), true) => ("high axle", "HA"),
            (_, false) => ("low", "L"),
            (_, true) => ("high", "H"),
        }
    }
}

/// A gear with the switchable stages in or at rest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// The gear.
    pub gear: GearNumber,
    /// Input turns for one turn of what the stages drive at rest, without sign: the gear's ratio times [`Self::factor`]. None where the
    /// gear is not known.
    pub ratio: Option<Ratio>,
    /// What the stages that are in multiply the gear's ratio by; 1 at rest.
    pub factor: Ratio,
    /// The stages that are in, by their places, counted from 0.
    pub stages_in: Vec<usize>,
    /// Meshes of all stages that carry the power.
    pub meshes: u8,
    /// Whether it can be shifted into while the car moves.
    pub on_the_move: bool,
    called: String,
    short: String,
}

impl Step {
    /// What it is called: `3rd`, `3rd overdrive`.
    pub fn name(&self) -> String {
        with(&self.gear.to_string(), ' ', &self.called)
    }

    /// The same for a picture: `3rd OD`.
    pub fn short_name(&self) -> String {
        with(&self.gear.to_string(), ' ', &self.short)
    }

    /// What is behind the gear's name: `overdrive`; empty at rest.
    pub fn called(&self) -> &str {
        &self.called
    }

    /// Its name in keys: `3`, `3_overdrive`.
    pub fn key(&self) -> String {
        with(&self.gear.number().to_string(), '_', &self.called.replace(' ', "_"))
    }

    /// Whether every stage rests.
    pub fn is_at_rest(&self) -> bool {
        self.stages_in.is_empty()
    }
}

fn with(name: &str, between: char, behind: &str) -> String {
    if behind.is_empty() { name.to_owned() } else { format!("{name}{between}{behind}") }
}

/// The most switchable stages a box can have here: two make four steps of a gear.
pub const MOST_SWITCHED: usize = 2;

/// A stage that can be switched, with its place and what a gear is called with it in.
struct Switched<'a> {
    at: usize,
    stage: &'a Stage,
    called: String,
    short: String,
}

/// Every step of a box, the lowest first where all its ratios are known, else gear by gear. Ratios are without sign; one whose ratio leaves
/// the exact range is left out.
pub fn steps(ratios: &[Option<Ratio>], stages: &[Stage]) -> Vec<Step> {
    let switched = switched(stages);
    let mut steps: Vec<Step> = GearNumber::each(ratios).flat_map(|(gear, ratio)| of_gear(gear, *ratio, stages, &switched)).collect();
    // A box without a switchable stage keeps the order of its gears, whatever they are.
    if !switched.is_empty() && ratios.iter().all(Option::is_some) {
        order::by_key(&mut steps, |step| Reverse(step.ratio));
    }
    steps
}

/// The stages that are switched, each called differently.
fn switched(stages: &[Stage]) -> Vec<Switched<'_>> {
    let mut all: Vec<Switched<'_>> = Vec::new();
    for (at, stage) in stages.iter().enumerate().filter(|(_, stage)| stage.changes()).take(MOST_SWITCHED) {
        let (called, short) = stage.called();
        let number = if all.iter().any(|other| other.called == called) { (all.len() + 1).to_string() } else { String::new() };
        all.push(Switched { at, stage, called: with(called, ' ', &number), short: format!("{short}{number}") });
    }
    all
}

/// The steps of one gear: at rest, and with each of its stages in, alone and together; the lowest first.
fn of_gear(gear: GearNumber, ratio: Option<Ratio>, stages: &[Stage], switched: &[Switched<'_>]) -> Vec<Step> {
    let mut sets: Vec<Vec<&Switched<'_>>> = vec![Vec::new()];
    for one in switched.iter().filter(|one| one.stage.switch.is_some_and(|switch| switch.used_in.contains(gear))) {
        let with_it: Vec<Vec<&Switched<'_>>> = sets.iter().map(|set| set.iter().copied().chain([one]).collect()).collect();
        sets.extend(with_it);
    }
    let mut steps: Vec<Step> = sets.iter().filter_map(|set| step(gear, ratio, stages, set)).collect();
    order::by_key(&mut steps, |step| Reverse(step.factor));
    steps
}

fn step(gear: GearNumber, ratio: Option<Ratio>, stages: &[Stage], set: &[&Switched<'_>]) -> Option<Step> {
    let factor = set.iter().try_fold(Ratio::from_integer(1), |product, one| product.checked_mul(&one.stage.factor()?))?;
    let ratio = match ratio {
        Some(ratio) => Some(ratio.checked_mul(&factor)?),
        None => None,
    };
    let is_in = |at: usize| set.iter().any(|one| one.at == at);
    Some(Step {
        gear,
        ratio,
        factor,
        stages_in: set.iter().map(|one| one.at).collect(),
        meshes: stages.iter().enumerate().map(|(at, stage)| stage.meshes(is_in(at))).fold(0, u8::saturating_add),
        on_the_move: set.iter().all(|one| one.stage.shifts_on_the_move()),
        called: set.iter().map(|one| one.called.as_str()).collect::<Vec<_>>().join(" "),
        short: set.iter().map(|one| one.short.as_str()).collect::<Vec<_>>().join(" "),
    })
}

/// Where the speedometer's drive gear sits.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum TakeOff {
    /// On the driveshaft: an overdrive, a range box or a transfer box takes it along on its own output (common practice, no published
    /// source).
    #[default]
    Shaft,
    /// On the output of the gearbox, before every extra stage.
    Gearbox,
    /// On the output of an extra stage before the axle, counted from 0.
    Stage(usize),
    /// At a wheel.
    Wheel,
}

impl TakeOff {
    /// Whether a stage, by its place among the stages counted from 0, stands behind it.
    pub fn is_before(self, at: usize, stage: &Stage) -> bool {
        let is_behind_axle = stage.place == Place::BehindAxle;
        match self {
            Self::Wheel => false,
            Self::Shaft => is_behind_axle,
            Self::Gearbox => true,
            Self::Stage(own) => is_behind_axle || at > own,
        }
    }
}
