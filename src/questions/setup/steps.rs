//! The gears of a setup as steps: each with the switchable stages in or out, and how the run and the pictures count them.

use num_traits::CheckedMul;

use super::{Setup, product};
use crate::gearing::{GearNumber, Place, Ratio, Stage, Step};

impl Setup {
    /// All that stands behind the gearbox, without sign: extra stages at rest and final drive.
    pub fn behind_gearbox(&self) -> Option<Ratio> {
        product(self.stages.as_ref()?.iter().map(Stage::at_rest).chain([self.final_drive?.ratio()]))
    }

    /// All that stands behind the driveshaft, without sign: the final drive and the stages behind it at rest.
    pub fn behind_shaft(&self) -> Option<Ratio> {
        let behind = self.stages.as_ref()?.iter().filter(|stage| stage.place == Place::BehindAxle);
        product(behind.map(Stage::at_rest).chain([self.final_drive?.ratio()]))
    }

    /// The extra stages between gearbox and final drive, each where it slows the shaft most.
    pub fn before_axle(&self) -> Option<Ratio> {
        let before = self.stages.as_ref()?.iter().filter(|stage| stage.place == Place::BeforeAxle);
        product(before.map(|stage| stage.drive.ratio().max(stage.at_rest())))
    }

    /// The extra stages behind the speedometer's drive gear, without sign, at rest.
    pub fn stages_behind_take_off(&self) -> Option<Ratio> {
        let stages = self.stages.as_ref()?.iter().enumerate();
        product(stages.filter(|(at, stage)| self.speedo.take_off.is_before(*at, stage)).map(|(_, stage)| stage.at_rest()))
    }

    /// All that stands behind the speedometer's drive gear, without sign, stages at rest.
    pub fn behind_take_off(&self) -> Option<Ratio> {
        if self.speedo.take_off == crate::gearing::TakeOff::Wheel {
            return Some(Ratio::from_integer(1));
        }
        self.stages_behind_take_off()?.checked_mul(&self.final_drive?.ratio())
    }

    /// The overall ratio of a step: gearbox, stages in or at rest, final drive; without sign.
    pub fn overall(&self, step: &Step) -> Option<Ratio> {
        step.ratio?.checked_mul(&self.behind_gearbox()?)
    }

    /// The steps that a run can use, in the order in which it counts them.
    pub fn driven(&self) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(|step| step.on_the_move)
    }

    /// The number by which a run knows the step of a name: it counts steps as gears.
    pub fn number_of(&self, step: &Step) -> Option<GearNumber> {
        self.driven().position(|own| own.gear == step.gear && own.called() == step.called()).map(GearNumber::at)
    }

    /// The number by which a run knows a gear with every stage at rest.
    pub fn number_at_rest(&self, gear: GearNumber) -> Option<GearNumber> {
        self.driven().position(|step| step.gear == gear && step.is_at_rest()).map(GearNumber::at)
    }

    /// What the step is called that a run knows by a number.
    pub fn gear_name(&self, number: GearNumber) -> String {
        self.by_number(number).map_or_else(|| number.to_string(), Step::name)
    }

    /// The same, for the keys of figures.
    pub fn gear_key(&self, number: GearNumber) -> String {
        self.by_number(number).map_or_else(|| number.number().to_string(), Step::key)
    }

    /// The step that a run knows by a number.
    pub fn by_number(&self, number: GearNumber) -> Option<&Step> {
        self.driven().nth(number.place())
    }
}
