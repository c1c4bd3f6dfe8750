//! What is it? A gear set or an axle on the bench, from counts, from turns, from printed ratios.

pub mod answer;
pub mod read;
pub mod rests;
pub mod rows;

use super::{Group, Input, Place, Question};
pub use crate::gearing::identify::ladder::LadderSearch;
use crate::job::{BenchField, JobChoice, JobField};

const fn text(field: BenchField) -> Input {
    Input::Text(JobField::Bench(field))
}

/// Its entry in [`super::LIST`].
pub const QUESTION: Question = Question {
    id: "identify",
    place: Place::Bench,
    title: "What is it?",
    ask: "Which gear set or axle is it, from counts, from turns, from printed ratios?",
    inputs: &[Input::Choice(JobChoice::BenchLayout)],
    groups: &[
        Group {
            title: "Counted teeth: main gear / countershaft gear, ? for one you could not count",
            inputs: &[
                text(BenchField::Constant),
                text(BenchField::First),
                text(BenchField::Second),
                text(BenchField::Third),
                text(BenchField::Fourth),
                text(BenchField::Fifth),
                text(BenchField::Sixth),
                text(BenchField::Reverse),
                text(BenchField::Anywhere),
            ],
            taken: None,
        },
        Group {
            title: "Turns of the gearbox: turn the input by hand and watch the output",
            inputs: &[
                text(BenchField::InputTurns),
                text(BenchField::OutputTurns),
                text(BenchField::Uncertainty),
                Input::Choice(JobChoice::TurnedGear),
            ],
            taken: None,
        },
        Group {
            title: "Turns of an axle",
            inputs: &[
                text(BenchField::ShaftTurns),
                text(BenchField::WheelTurns),
                text(BenchField::WheelUncertainty),
                Input::Choice(JobChoice::WheelHeld),
            ],
            taken: None,
        },
        Group {
            title: "Tag, cable and dial of an axle",
            inputs: &[text(BenchField::Tag), text(BenchField::Cable), text(BenchField::Dial)],
            taken: None,
        },
        Group {
            title: "Printed ratios, lowest gear first",
            inputs: &[text(BenchField::Ladder), text(BenchField::Fewest), text(BenchField::Most)],
            taken: None,
        },
    ],
    station: rows::said::station,
    answer: rows::said::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    ..Question::BARE
};
