//! What makes that noise? Every rotating part with its tone then, those that fit what is heard first, and the test that tells them apart.

pub mod answer;
mod kept;
pub mod names;
pub mod pictures;
pub mod read;
pub mod recorded;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, JobChoice, JobField, NoiseField};

const fn text(field: NoiseField) -> Input {
    Input::Text(JobField::Bench(BenchField::Noise(field)))
}

/// The question.
pub const QUESTION: Question = Question {
    id: "noise",
    place: Place::Bench,
    title: "What makes that noise?",
    ask: "Which part whines, growls or shakes, and which test tells it from the next?",
    groups: &[
        Group {
            title: "What you hear",
            inputs: &[
                Input::Choice(JobChoice::NoiseKind),
                Input::Choice(JobChoice::NoiseGear),
                text(NoiseField::At),
                Input::Choice(JobChoice::NoiseLoad),
                Input::Choice(JobChoice::NoiseSetup),
            ],
            taken: None,
        },
        Group { title: "Let it listen", inputs: &[text(NoiseField::Until), Input::Recording], taken: None },
        Group {
            title: "What else you know",
            inputs: &[
                text(NoiseField::Gone),
                text(NoiseField::There),
                Input::Choice(JobChoice::NoiseGoesWith),
                Input::Choice(JobChoice::NoiseClutch),
                Input::Choice(JobChoice::NoiseStages),
                text(NoiseField::Pitch),
            ],
            taken: None,
        },
        Group { title: "Engine and bearings", inputs: &[text(NoiseField::Cylinders), text(NoiseField::Bearings)], taken: None },
        Group { title: "Kept with the job", inputs: &[text(NoiseField::Kept)], taken: None },
    ],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[Drawn::new("noise-tones", "Tones", |source, _| boxed(pictures::tones(source)))],
    ..Question::BARE
};
