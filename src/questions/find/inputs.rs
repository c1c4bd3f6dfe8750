//! What a job gives to the finder: shift rpm, extra stages, dial, fitted tyre, engine and car.

use crate::finder::given::FittedTyre;
use crate::finder::{Engine, Given, Stages};
use crate::gearing::TakeOff;
use crate::gearing::teeth::decimal;
use crate::questions::{Analysis, Conditions, Setup};

impl Given {
    /// What a job gives: its conditions, and stages and tyre of its first setup, the column A.
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
            stages: stages.map_or_else(Stages::default, |stages| Stages::of(stages)),
            stages_behind_take_off: first.and_then(Setup::stages_behind_take_off).map_or(1.0, decimal),
            is_taken_off_at_wheel: first.is_some_and(|setup| setup.speedo.take_off == TakeOff::Wheel),
            dial: conditions.speedo.known_dial(),
            fitted,
            engine: engine(conditions),
        }
    }
}

/// Engine and car of a job, where torque and mass are given.
fn engine(conditions: &Conditions) -> Option<Engine> {
    let pull = &conditions.pull;
    let (launch, shift_time, shifting) = (pull.run.launch.value, pull.run.shift_time.value, pull.run.shifting);
    let curve = pull.curve_at_height.clone()?;
    Some(Engine { curve, car: pull.car?, limit: pull.limit, launch, shift_time, shifting, trailer: pull.trailer })
}
