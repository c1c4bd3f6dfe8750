//! Bearings and torque: which shim sets this pair, is its turning torque right, how do ring and pinion stand, and how tight is a fastener?

pub mod answer;
pub mod pictures;
pub mod read;
pub mod rests;
pub mod rows;
pub mod sentence;

use super::{Drawn, Group, Input, Place, Question, boxed};
use crate::job::{BenchField, JobChoice, JobField, SettingField};

const fn text(field: SettingField) -> Input {
    Input::Text(JobField::Bench(BenchField::Setting(field)))
}

/// The question.
pub const QUESTION: Question = Question {
    id: "setting",
    place: Place::Bench,
    title: "Bearings and torque",
    ask: "Which shim sets this pair, is its turning torque right, how do ring, pinion and clutch housing stand, how tight is a bolt?",
    groups: &[
        Group {
            title: "Tapered pair",
            inputs: &[
                text(SettingField::ShimIn),
                text(SettingField::Float),
                text(SettingField::Wanted),
                Input::Choice(JobChoice::PairMounting),
                text(SettingField::Span),
                text(SettingField::Cups),
                text(SettingField::K),
                Input::Choice(JobChoice::EndPlayCase),
                Input::Text(JobField::Bench(BenchField::MeasuredAt)),
                Input::Text(JobField::Bench(BenchField::WarmsTo)),
            ],
            taken: None,
        },
        Group {
            title: "Turning torque",
            inputs: &[
                text(SettingField::Pull),
                text(SettingField::Radius),
                Input::Choice(JobChoice::BearingState),
                text(SettingField::Torque),
            ],
            taken: None,
        },
        Group {
            title: "Ring and pinion",
            inputs: &[
                text(SettingField::Depth),
                text(SettingField::Mark),
                Input::Choice(JobChoice::MarkSense),
                text(SettingField::Lash),
                text(SettingField::DialRadius),
                text(SettingField::PitchRadius),
                Input::Choice(JobChoice::PatternDrive),
                Input::Choice(JobChoice::PatternCoast),
            ],
            taken: None,
        },
        Group { title: "Clutch housing", inputs: &[text(SettingField::Bore), text(SettingField::Face)], taken: None },
        Group { title: "Fasteners and oil", inputs: &[text(SettingField::Fasteners), text(SettingField::Oil)], taken: None },
    ],
    station: sentence::station,
    answer: sentence::answer,
    deciding: rows::deciding,
    rows: rows::rows,
    rests: rests::rests,
    pictures: &[
        Drawn::new("setting-drive", "Drive side", |source, _| boxed(pictures::drive(source))).pressed(pictures::press_drive),
        Drawn::new("setting-coast", "Coast side", |source, _| boxed(pictures::coast(source))).pressed(pictures::press_coast),
    ],
    ..Question::BARE
};
