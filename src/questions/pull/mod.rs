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
        Input::Text(JobField::Pull(PullField::Mass)),
        Input::Choice(JobChoice::Drive),
        Input::Text(JobField::Pull(PullField::PeakTorque)),
        Input::Text(JobField::Pull(PullField::PeakTorqueAt)),
        Input::Text(JobField::Pull(PullField::PeakPower)),
        Input::Text(JobField::Pull(PullField::PeakPowerAt)),
        Input::Text(JobField::Pull(PullField::Limit)),
    ],
    groups: &[
        Group {
            title: "More about the car",
            inputs: &[
                Input::Text(JobField::Pull(PullField::DrivenShare)),
                Input::Text(JobField::Pull(PullField::Wheelbase)),
                Input::Text(JobField::Pull(PullField::GravityHeight)),
                Input::Text(JobField::Pull(PullField::DragArea)),
                Input::Text(JobField::Pull(PullField::Rolling)),
                Input::Text(JobField::Pull(PullField::Grip)),
                Input::Text(JobField::Pull(PullField::MeshEfficiency)),
                Input::Text(JobField::Pull(PullField::AxleEfficiency)),
                Input::Text(JobField::Pull(PullField::EngineInertia)),
                Input::Text(JobField::Pull(PullField::BoxInertia)),
                Input::Text(JobField::Pull(PullField::WheelInertia)),
                Input::Text(JobField::Pull(PullField::Trailer)),
            ],
        },
        Group {
            title: "How it is driven",
            inputs: &[
                Input::Text(JobField::Pull(PullField::Launch)),
                Input::Text(JobField::Pull(PullField::ShiftTime)),
                Input::Text(JobField::Pull(PullField::BandShare)),
                Input::Text(JobField::Pull(PullField::Speeds)),
                Input::Text(JobField::Pull(PullField::RollFrom)),
                Input::Text(JobField::Pull(PullField::RollTo)),
                Input::Text(JobField::Pull(PullField::RollGear)),
                Input::Choice(JobChoice::ShiftRule),
            ],
        },
        Group {
            title: "Measured power curve",
            inputs: &[
                Input::Text(JobField::Pull(PullField::Rows)),
                Input::Text(JobField::Pull(PullField::AirPressure)),
                Input::Text(JobField::Pull(PullField::AirTemperature)),
                Input::Text(JobField::Pull(PullField::AirHumidity)),
                Input::Choice(JobChoice::PowerStandard),
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
