//! Pull at the wheels: which set suits this engine, this car and this use?

pub mod answer;
pub mod engine_words;
pub mod pictures;
pub mod read;
pub mod rows;

pub use rows::text;

use super::{Drawn, Group, Input, Place, Question, Source, chosen};
use crate::job::{JobChoice, JobField, PullField};
use crate::sheet::Said;

/// The question.
pub const QUESTION: Question = Question {
    id: "pull",
    place: Place::Compare,
    title: "Pull at the wheels",
    ask: "Which set suits this engine, this car and this use?",
    inputs: &[
        Input::Text(JobField::Pull(PullField::Mass), "mass with driver"),
        Input::Choice(JobChoice::Drive, "driven"),
        Input::Text(JobField::Pull(PullField::PeakTorque), "peak torque"),
        Input::Text(JobField::Pull(PullField::PeakTorqueAt), "at"),
        Input::Text(JobField::Pull(PullField::PeakPower), "peak power"),
        Input::Text(JobField::Pull(PullField::PeakPowerAt), "at"),
        Input::Text(JobField::Pull(PullField::Limit), "rev limit"),
    ],
    groups: &[
        Group {
            title: "More about the car",
            inputs: &[
                Input::Text(JobField::Pull(PullField::DrivenShare), "weight on the driven axle"),
                Input::Text(JobField::Pull(PullField::Wheelbase), "wheelbase"),
                Input::Text(JobField::Pull(PullField::GravityHeight), "height of the centre of gravity"),
                Input::Text(JobField::Pull(PullField::DragArea), "drag area"),
                Input::Text(JobField::Pull(PullField::Rolling), "rolling resistance"),
                Input::Text(JobField::Pull(PullField::Grip), "grip"),
                Input::Text(JobField::Pull(PullField::MeshEfficiency), "efficiency of each mesh"),
                Input::Text(JobField::Pull(PullField::AxleEfficiency), "efficiency of the axle"),
                Input::Text(JobField::Pull(PullField::EngineInertia), "inertia of engine and flywheel"),
                Input::Text(JobField::Pull(PullField::BoxInertia), "inertia of the box, at its input"),
                Input::Text(JobField::Pull(PullField::WheelInertia), "inertia of all wheels together"),
                Input::Text(JobField::Pull(PullField::Trailer), "trailer"),
            ],
        },
        Group {
            title: "How it is driven",
            inputs: &[
                Input::Text(JobField::Pull(PullField::Launch), "launch at"),
                Input::Text(JobField::Pull(PullField::ShiftTime), "time of each shift"),
                Input::Text(JobField::Pull(PullField::BandShare), "power band from"),
                Input::Text(JobField::Pull(PullField::Speeds), "times to"),
                Input::Text(JobField::Pull(PullField::RollFrom), "rolling start from"),
                Input::Text(JobField::Pull(PullField::RollTo), "to"),
                Input::Text(JobField::Pull(PullField::RollGear), "in gear"),
                Input::Choice(JobChoice::ShiftRule, "upshifts by"),
            ],
        },
        Group {
            title: "Measured power curve",
            inputs: &[
                Input::Text(JobField::Pull(PullField::Rows), "rpm and torque or power, one pair a line"),
                Input::Text(JobField::Pull(PullField::AirPressure), "air pressure"),
                Input::Text(JobField::Pull(PullField::AirTemperature), "air temperature"),
                Input::Text(JobField::Pull(PullField::AirHumidity), "humidity"),
                Input::Choice(JobChoice::PowerStandard, "corrected"),
            ],
        },
    ],
    station: rows::station,
    answer: |_| Said::default(),
    deciding: |source| chosen(&rows::rows(source), &["to-speed", "distance-1", "shift-", "cruise", "launch"]),
    rows: rows::rows,
    rests: |_| Vec::new(),
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

fn has_thrust(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().thrust.is_some())
}

fn runs(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.pull().vehicle.is_some())
}
