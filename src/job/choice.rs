//! Everything that is chosen from a few, so that one widget serves them all. Kept as a short text, so that files stay readable.

use super::{Job, Setup, SetupId};

/// One choice of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Choice {
    /// A choice for all setups.
    Job(JobChoice),
    /// A choice of one setup.
    Setup(SetupId, SetupChoice),
}

/// The choices for all setups.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum JobChoice {
    /// The rule a speedometer is judged by.
    Law,
    /// Whether only speedometer gears in stock are proposed.
    SpeedoStock,
    /// The aspect ratio taken where a metric tyre size leaves it out.
    OmittedAspect,
    /// The driven wheels.
    Drive,
    /// The standard that a measured curve is corrected to.
    PowerStandard,
    /// The rule of the upshifts in a run.
    ShiftRule,
    /// The gear whose turns were read at the bench.
    TurnedGear,
    /// Whether one wheel of the axle was held at the bench.
    WheelHeld,
    /// The layout of what lies on the bench.
    BenchLayout,
    /// The gear selected inside the box.
    InsideGear,
    /// The lining its synchronisers are judged by.
    Lining,
}

/// The choices of one setup.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SetupChoice {
    /// The hand of the speedometer drive gear.
    SpeedoHand,
    /// Where the driven gear stands and its cable leaves.
    SpeedoTap,
}

impl JobChoice {
    fn slot(self, job: &mut Job) -> &mut String {
        match self {
            Self::Law => &mut job.speedo.law,
            Self::SpeedoStock => &mut job.speedo.in_stock,
            Self::OmittedAspect => &mut job.omitted_aspect,
            Self::Drive => &mut job.pull.drive,
            Self::PowerStandard => &mut job.pull.standard,
            Self::ShiftRule => &mut job.pull.rule,
            Self::TurnedGear => &mut job.bench.turned_gear,
            Self::WheelHeld => &mut job.bench.wheel,
            Self::BenchLayout => &mut job.bench.layout,
            Self::InsideGear => &mut job.inside.gear,
            Self::Lining => &mut job.inside.lining,
        }
    }

    fn kept(self, job: &Job) -> &str {
        match self {
            Self::Law => &job.speedo.law,
            Self::SpeedoStock => &job.speedo.in_stock,
            Self::OmittedAspect => &job.omitted_aspect,
            Self::Drive => &job.pull.drive,
            Self::PowerStandard => &job.pull.standard,
            Self::ShiftRule => &job.pull.rule,
            Self::TurnedGear => &job.bench.turned_gear,
            Self::WheelHeld => &job.bench.wheel,
            Self::BenchLayout => &job.bench.layout,
            Self::InsideGear => &job.inside.gear,
            Self::Lining => &job.inside.lining,
        }
    }
}

impl SetupChoice {
    fn slot(self, setup: &mut Setup) -> &mut String {
        match self {
            Self::SpeedoHand => &mut setup.speedo.hand,
            Self::SpeedoTap => &mut setup.speedo.tap,
        }
    }

    fn kept(self, setup: &Setup) -> &str {
        match self {
            Self::SpeedoHand => &setup.speedo.hand,
            Self::SpeedoTap => &setup.speedo.tap,
        }
    }
}

impl Job {
    /// What is chosen now, as it is kept; blank where nothing was chosen yet.
    pub fn chosen(&self, choice: Choice) -> &str {
        match choice {
            Choice::Job(choice) => choice.kept(self),
            Choice::Setup(id, choice) => self.setup(id).map_or("", |setup| choice.kept(setup)),
        }
    }

    /// Chooses. Nothing happens where there is no such setup.
    pub fn choose(&mut self, choice: Choice, id: &str) {
        let slot = match choice {
            Choice::Job(choice) => Some(choice.slot(self)),
            Choice::Setup(setup, choice) => self.setup_mut(setup).map(|setup| choice.slot(setup)),
        };
        if let Some(slot) = slot {
            id.clone_into(slot);
        }
    }
}
