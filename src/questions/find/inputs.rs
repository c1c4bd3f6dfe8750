//! What a job gives to the finder: shift rpm, extra stages, dial, fitted tyre, engine and car.

use crate::finder::given::FittedTyre;
use crate::finder::{Engine, Given};
use crate::gearing::teeth::decimal;
use crate::gearing::{Stage, TakeOff};
use crate::questions::{Analysis, Conditions, Setup};

impl Given {
    /// What a job gives: its conditions, and stages and tyre of its first setup, the column A; stages that are switched are at rest.
    pub fn of(conditions: &Conditions, setups: &[Analysis]) -> Self {
        let first = setups.first().map(|analysis| &analysis.setup);
        let stages = first.and_then(|setup| setup.stages.as_ref());
        let fitted = first.and_then(|setup| {
            let circumference = setup.rolling.as_ref()?.circumference;
            let tyre = setup.tyre.as_ref()?;
            Some(FittedTyre { circumference, diameter: tyre.diameter_or_rolled() })
        });
        Self {
            shift: conditions.shift,
            stages: stages.map_or(1.0, |stages| stages.iter().map(|stage| decimal(stage.at_rest())).product()),
            stages_behind_take_off: first.and_then(Setup::stages_behind_take_off).map_or(1.0, decimal),
            is_taken_off_at_wheel: first.is_some_and(|setup| setup.speedo.take_off == TakeOff::Wheel),
            stage_meshes: meshes_of(stages.map_or(&[], Vec::as_slice)),
            dial: conditions.speedo.known_dial(),
            fitted,
            engine: engine(conditions),
        }
    }
}

/// The meshes of extra stages at rest that carry the power.
pub(super) fn meshes_of(stages: &[Stage]) -> u8 {
    stages.iter().map(|stage| stage.meshes(false)).fold(0, u8::saturating_add)
}

/// Engine and car of a job, where torque and mass are given.
fn engine(conditions: &Conditions) -> Option<Engine> {
    let pull = &conditions.pull;
    let (launch, shift_time, shifting) = (pull.run.launch.value, pull.run.shift_time.value, pull.run.shifting);
    Some(Engine { curve: pull.curve.clone()?, car: pull.car?, limit: pull.limit, launch, shift_time, shifting, trailer: pull.trailer })
}
