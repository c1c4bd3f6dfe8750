//! What is it? A gear set or an axle on the bench, from counts, from turns, from printed ratios.

pub mod answer;
pub mod read;
pub mod rows;

use super::{Group, Input, Place, Question};
pub use crate::gearing::identify::ladder::LadderSearch;
use crate::job::{BenchField, Job, JobChoice, JobField};
use crate::problem::Problem;

/// What is wrong with what is typed at the bench.
pub fn problems(job: &Job) -> Vec<Problem> {
    read::Evidence::of(&job.bench).problems
}

const fn text(field: BenchField, label: &'static str) -> Input {
    Input::Text(JobField::Bench(field), label)
}

/// The question.
pub const QUESTION: Question = Question {
    id: "identify",
    place: Place::Bench,
    title: "What is it?",
    ask: "Which gear set or axle is it, from counts, from turns, from printed ratios?",
    inputs: &[Input::Choice(JobChoice::BenchLayout, "gearbox layout")],
    groups: &[
        Group {
            title: "Counted teeth: main gear / countershaft gear, ? for one you could not count",
            inputs: &[
                text(BenchField::Constant, "input pair"),
                text(BenchField::First, "1st"),
                text(BenchField::Second, "2nd"),
                text(BenchField::Third, "3rd"),
                text(BenchField::Fourth, "4th"),
                text(BenchField::Fifth, "5th"),
                text(BenchField::Sixth, "6th"),
                text(BenchField::Reverse, "reverse"),
                text(BenchField::Anywhere, "place not known"),
            ],
        },
        Group {
            title: "Turns of the gearbox: turn the input by hand and watch the output",
            inputs: &[
                text(BenchField::InputTurns, "input turns"),
                text(BenchField::OutputTurns, "output turns"),
                text(BenchField::Uncertainty, "give or take"),
                Input::Choice(JobChoice::TurnedGear, "in"),
            ],
        },
        Group {
            title: "Turns of an axle",
            inputs: &[
                text(BenchField::ShaftTurns, "driveshaft turns"),
                text(BenchField::WheelTurns, "wheel turns"),
                text(BenchField::WheelUncertainty, "give or take"),
                Input::Choice(JobChoice::WheelHeld, "with"),
            ],
        },
        Group {
            title: "Printed ratios, lowest gear first",
            inputs: &[text(BenchField::Ladder, "printed ratios"), text(BenchField::Fewest, "teeth from"), text(BenchField::Most, "to")],
        },
    ],
    station: rows::said::station,
    answer: rows::said::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: |_| Vec::new(),
    pictures: &[],
};
