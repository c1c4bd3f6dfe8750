//! Pull at the wheels: which set suits this engine, this car and this use?

pub mod answer;
pub mod engine_words;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

pub use rows::text;

use super::{Drawn, Group, Input, Place, Question, Source};
use crate::job::{JobChoice, JobField, PullField};

/// The question.
pub const QUESTION: Question = Question {
    id: "pull",
    place: Place::Compare,
    title: "Pull at the wheels",
    ask: "Which set suits this engine, this car and this use?",
    inputs: &[
        Input::Text(JobField::Car, "car"),
        pull(PullField::Mass, "mass with driver"),
        Input::Choice(JobChoice::Drive, "driven"),
        pull(PullField::PeakTorque, "peak torque"),
        pull(PullField::PeakTorqueAt, "torque peak at"),
        pull(PullField::PeakPower, "peak power"),
        pull(PullField::PeakPowerAt, "power peak at"),
        pull(PullField::Limit, "rev limit"),
    ],
    groups: &[CAR, DRIVING, MEASURED],
    station: rows::station,
    answer: sentence::said,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn {
            id: "thrust",
            tab: "Thrust",
            draw: |source, focus| has_thrust(source).then(|| Box::new(pictures::thrust(source, focus)) as _),
            press: None,
        },
        Drawn {
            id: "run",
            tab: "Run over time",
            draw: |source, focus| runs(source).then(|| Box::new(pictures::run(source, focus)) as _),
            press: None,
        },
        Drawn {
            id: "run-distance",
            tab: "Run over distance",
            draw: |source, focus| runs(source).then(|| Box::new(pictures::run_over_distance(source, focus)) as _),
            press: None,
        },
        Drawn {
            id: "power-band",
            tab: "Power band",
            draw: |source, focus| runs(source).then(|| Box::new(pictures::band(source, focus)) as _),
            press: None,
        },
    ],
};

/// What may stay blank of the car.
const CAR: Group = Group {
    title: "More about the car (grey = default)",
    inputs: &[
        pull(PullField::DrivenShare, "weight on the driven axle"),
        pull(PullField::Wheelbase, "wheelbase"),
        pull(PullField::GravityHeight, "height of the centre of gravity"),
        pull(PullField::DragArea, "drag area"),
        pull(PullField::Rolling, "rolling resistance"),
        pull(PullField::Grip, "grip of the tyres"),
        pull(PullField::MeshEfficiency, "efficiency of each mesh"),
        pull(PullField::AxleEfficiency, "efficiency of the axle"),
        pull(PullField::EngineInertia, "inertia of engine and flywheel"),
        pull(PullField::BoxInertia, "inertia of the gearbox, at its input"),
        pull(PullField::WheelInertia, "inertia of all wheels"),
        pull(PullField::Trailer, "trailer"),
    ],
};

/// How the car is driven.
const DRIVING: Group = Group {
    title: "How it is driven",
    inputs: &[
        pull(PullField::Launch, "standing start at"),
        pull(PullField::ShiftTime, "time for a shift"),
        Input::Choice(JobChoice::ShiftRule, "shift by"),
        Input::Text(JobField::Shift, "shift rpm, where chosen"),
        pull(PullField::BandShare, "power band from"),
        pull(PullField::Speeds, "speeds to time, separated by ;"),
        pull(PullField::RollFrom, "rolling start from"),
        pull(PullField::RollTo, "rolling start to"),
        pull(PullField::RollGear, "rolling start in gear"),
    ],
};

/// A measured curve, and the air it was measured in.
const MEASURED: Group = Group {
    title: "Measured power curve",
    inputs: &[
        pull(PullField::Rows, "rpm and torque or power, a point a line; a head line names the units"),
        Input::Choice(JobChoice::PowerStandard, "correction"),
        pull(PullField::AirPressure, "air pressure of the test"),
        pull(PullField::AirTemperature, "air temperature"),
        pull(PullField::AirHumidity, "relative humidity"),
    ],
};

const fn pull(field: PullField, label: &'static str) -> Input {
    Input::Text(JobField::Pull(field), label)
}

fn has_thrust(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().thrust.is_some())
}

fn runs(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().vehicle.is_some())
}
