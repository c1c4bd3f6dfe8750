//! Pull at the wheels: which set suits this engine, this car and this use?

pub mod answer;
pub mod engine_words;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

pub use rows::text;

use super::{Drawn, Group, Input, Place, Question, Source, boxed};
use crate::job::{JobChoice, JobField, PullField};

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "pull",
    place: Place::Compare,
    title: "Pull at the wheels",
    ask: "Which set suits this engine, this car and this use?",
    glyph: "M4 10h20v10H4zM7 10V6h3v4M12.5 10V6h3v4M18 10V6h3v4",
    inputs: &[
        pull(PullField::Mass),
        Input::Choice(JobChoice::Drive),
        pull(PullField::PeakTorque),
        pull(PullField::PeakTorqueAt),
        pull(PullField::PeakPower),
        pull(PullField::PeakPowerAt),
        pull(PullField::Limit),
    ],
    groups: &[CAR, DRIVING, MEASURED],
    station: rows::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn::new("thrust", "Thrust", |source, focus| boxed(has_thrust(source).then(|| pictures::thrust(source, focus)))),
        Drawn::new("run", "Run over time", |source, focus| boxed(runs(source).then(|| pictures::run(source, focus)))),
        Drawn::new("run-distance", "Run over distance", |source, focus| {
            boxed(runs(source).then(|| pictures::run_over_distance(source, focus)))
        }),
        Drawn::new("run-gap", "Gap to A", |source, focus| boxed(pictures::gap_to_a(source, focus))),
        Drawn::new("power-band", "Power band", |source, focus| boxed(runs(source).then(|| pictures::band(source, focus)))),
    ],
    ..Question::BARE
};

/// What may stay blank of the car.
const CAR: Group = Group {
    title: "More about the car (grey = default)",
    inputs: &[
        pull(PullField::DrivenShare),
        pull(PullField::Wheelbase),
        pull(PullField::GravityHeight),
        pull(PullField::DragArea),
        pull(PullField::Rolling),
        pull(PullField::Grip),
        pull(PullField::MeshEfficiency),
        pull(PullField::AxleEfficiency),
        pull(PullField::EngineInertia),
        pull(PullField::BoxInertia),
        pull(PullField::WheelInertia),
        pull(PullField::Trailer),
        pull(PullField::Altitude),
    ],
    taken: None,
};

/// How the car is driven.
const DRIVING: Group = Group {
    title: "How it is driven",
    inputs: &[
        pull(PullField::Launch),
        pull(PullField::ShiftTime),
        Input::Choice(JobChoice::ShiftRule),
        Input::Text(JobField::Shift),
        pull(PullField::BandShare),
        pull(PullField::Speeds),
        pull(PullField::RollFrom),
        pull(PullField::RollTo),
        pull(PullField::RollGear),
    ],
    taken: None,
};

/// A measured curve, and the air it was measured in.
const MEASURED: Group = Group {
    title: "Measured power curve",
    inputs: &[
        pull(PullField::Rows),
        Input::Choice(JobChoice::CurveAt),
        Input::Choice(JobChoice::PowerStandard),
        pull(PullField::AirPressure),
        pull(PullField::AirTemperature),
        pull(PullField::AirHumidity),
    ],
    taken: Some(engine_words::words),
};

const fn pull(field: PullField) -> Input {
    Input::Text(JobField::Pull(field))
}

fn has_thrust(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().thrust.is_some())
}

fn runs(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().vehicle.is_some())
}
