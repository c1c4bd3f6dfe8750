//! Files read into and written from the whole catalogue: the header says which shelf is meant.

use super::export;
use super::import::{self, Differing, Plan, Refused};
use super::{AnyEntry, Axle, Catalogue, FileError, GearSet, Kind, SpeedoEntry, TyreEntry};
use crate::problem::Problem;

/// What reading a file would do, whichever shelf it is for.
#[derive(Clone, Debug, PartialEq)]
pub enum AnyPlan {
    /// A file of gear sets.
    GearSets(Plan<GearSet>),
    /// A file of final drives.
    Axles(Plan<Axle>),
    /// A file of tyres.
    Tyres(Plan<TyreEntry>),
    /// A file of speedometer gears.
    SpeedometerGears(Plan<SpeedoEntry>),
}

/// What a plan comes to, for a reader.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary<'a> {
    /// Which kind of entry.
    pub kind: Kind,
    /// How many the shelf does not have.
    pub new: usize,
    /// How many lines say what the shelf says already.
    pub same: usize,
    /// How many would replace one of the shop's own.
    pub different: usize,
    /// Lines that cannot be used.
    pub refused: &'a [Refused],
    /// Doubts about lines that can be used.
    pub doubts: &'a [(usize, Problem)],
    /// Columns of the header that mean nothing here.
    pub unknown_columns: &'a [String],
}

impl Summary<'_> {
    /// The counts in words: `12 new gear sets, 3 as they are here, 1 different, 2 lines refused`.
    pub fn sentence(&self) -> String {
        let Self { new, same, different, .. } = self;
        let (kind, refused) = (self.kind.word(), self.refused.len());
        let lines = if refused == 1 { "line" } else { "lines" };
        format!("{new} new {kind}, {same} as they are here, {different} different, {refused} {lines} refused")
    }
}

fn summary<T>(kind: Kind, plan: &Plan<T>) -> Summary<'_> {
    Summary {
        kind,
        new: plan.new.len(),
        same: plan.same.len(),
        different: plan.different.len(),
        refused: &plan.refused,
        doubts: &plan.doubts,
        unknown_columns: &plan.unknown_columns,
    }
}

impl AnyPlan {
    /// What the plan comes to.
    pub fn summary(&self) -> Summary<'_> {
        match self {
            Self::GearSets(plan) => summary(Kind::GearSets, plan),
            Self::Axles(plan) => summary(Kind::Axles, plan),
            Self::Tyres(plan) => summary(Kind::Tyres, plan),
            Self::SpeedometerGears(plan) => summary(Kind::SpeedometerGears, plan),
        }
    }
}

/// An entry that the file tells differently: its line, as it is here, as the file has it.
pub type Differs = (usize, AnyEntry, AnyEntry);

fn new_entries<T: Clone + Into<AnyEntry>>(plan: &Plan<T>) -> Vec<(usize, AnyEntry)> {
    plan.new.iter().map(|planned| (planned.line, planned.entry.clone().into())).collect()
}

fn differing<T: Clone + Into<AnyEntry>>(plan: &Plan<T>) -> Vec<Differs> {
    plan.different.iter().map(|change| (change.line, change.before.clone().into(), change.after.clone().into())).collect()
}

impl AnyPlan {
    /// The entries the shelf does not have, each with its line.
    pub fn new_entries(&self) -> Vec<(usize, AnyEntry)> {
        match self {
            Self::GearSets(plan) => new_entries(plan),
            Self::Axles(plan) => new_entries(plan),
            Self::Tyres(plan) => new_entries(plan),
            Self::SpeedometerGears(plan) => new_entries(plan),
        }
    }

    /// The own entries that the file tells differently.
    pub fn differing(&self) -> Vec<Differs> {
        match self {
            Self::GearSets(plan) => differing(plan),
            Self::Axles(plan) => differing(plan),
            Self::Tyres(plan) => differing(plan),
            Self::SpeedometerGears(plan) => differing(plan),
        }
    }
}

impl Catalogue {
    /// What reading a file would do; nothing is changed yet.
    ///
    /// # Errors
    /// When the file as a whole cannot be read, or its header fits no kind of entry.
    pub fn plan(&self, text: &str) -> Result<AnyPlan, FileError> {
        Ok(match Kind::of_file(text)? {
            Kind::GearSets => AnyPlan::GearSets(import::plan(text, &self.gear_sets)?),
            Kind::Axles => AnyPlan::Axles(import::plan(text, &self.axles)?),
            Kind::Tyres => AnyPlan::Tyres(import::plan(text, &self.tyres)?),
            Kind::SpeedometerGears => AnyPlan::SpeedometerGears(import::plan(text, &self.speedometer_gears)?),
        })
    }

    /// The catalogue after the import.
    #[must_use]
    pub fn apply(&self, plan: &AnyPlan, differing: Differing) -> Self {
        let mut after = self.clone();
        match plan {
            AnyPlan::GearSets(plan) => after.gear_sets = plan.apply(&self.gear_sets, differing),
            AnyPlan::Axles(plan) => after.axles = plan.apply(&self.axles, differing),
            AnyPlan::Tyres(plan) => after.tyres = plan.apply(&self.tyres, differing),
            AnyPlan::SpeedometerGears(plan) => after.speedometer_gears = plan.apply(&self.speedometer_gears, differing),
        }
        after
    }

    /// The shop's own entries of one kind as a file.
    pub fn own_file(&self, kind: Kind) -> String {
        match kind {
            Kind::GearSets => export::file(self.gear_sets.own()),
            Kind::Axles => export::file(self.axles.own()),
            Kind::Tyres => export::file(self.tyres.own()),
            Kind::SpeedometerGears => export::file(self.speedometer_gears.own()),
        }
    }

    /// Every entry of one kind as a file, the built-in ones first.
    pub fn whole_file(&self, kind: Kind) -> String {
        match kind {
            Kind::GearSets => export::file(self.gear_sets.all()),
            Kind::Axles => export::file(self.axles.all()),
            Kind::Tyres => export::file(self.tyres.all()),
            Kind::SpeedometerGears => export::file(self.speedometer_gears.all()),
        }
    }
}
