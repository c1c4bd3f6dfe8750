//! What a job gives to the finder: shift rpm, extra stages, dial, fitted tyre, engine and car.

use crate::finder::inputs::FittedTyre;
use crate::finder::table::meshes;
use crate::finder::{Engine, FittedSet, Given, Stages};
use crate::gearing::TakeOff;
use crate::gearing::teeth::decimal;
use crate::questions::{Analysis, Conditions, Setup, Source, case};

impl Given {
    /// What a job gives, the case of its first setup included, which the shelf may know by name.
    pub fn of_source(source: Source<'_>) -> Self {
        Self { case: case::of_first(source), ..Self::of(source.conditions, source.setups) }
    }

    /// What a job gives: its conditions, and stages and parts of its first setup, the column A.
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
            fitted_set: first.and_then(fitted_set),
            fitted_axle: first.and_then(|setup| setup.final_drive.as_ref()).map(|drive| decimal(drive.ratio())),
            case: None,
            engine: engine(conditions),
        }
    }
}

/// The gear set of a setup, where all its ratios are known.
fn fitted_set(setup: &Setup) -> Option<FittedSet> {
    let meshes = meshes(setup.gearbox.as_ref()?);
    let ratios = setup.forward_ratios()?;
    Some(FittedSet { ratios, meshes, layout: setup.layout })
}

/// Engine and car of a job, where torque and mass are given.
fn engine(conditions: &Conditions) -> Option<Engine> {
    let pull = &conditions.pull;
    let (launch, shift_time, shifting) = (pull.run.launch.value, pull.run.shift_time.value, pull.run.shifting);
    let curve = pull.curve_at_height.clone()?;
    Some(Engine { curve, car: pull.car?, limit: pull.limit, launch, shift_time, shifting, trailer: pull.trailer })
}
