//! The options of every choice: the word that is kept, and the words that are read.

use crate::job::{JobChoice, SetupChoice};
use crate::setup::TAPS;
use crate::speedometer::law;

/// The options of a choice of one setup.
pub fn of_setup(choice: SetupChoice) -> Vec<(&'static str, &'static str)> {
    match choice {
        SetupChoice::SpeedoHand => vec![("", "hand not known"), ("right", "right-hand gear"), ("left", "left-hand gear")],
        SetupChoice::SpeedoTap => std::iter::once(("", "side not known")).chain(TAPS.iter().map(|(id, _, words)| (*id, *words))).collect(),
    }
}

/// The options of a choice for all setups.
pub fn of_job(choice: JobChoice) -> Vec<(&'static str, &'static str)> {
    match choice {
        JobChoice::Law => law::BANDS.iter().map(|band| (band.id, band.name)).collect(),
        JobChoice::SpeedoStock => vec![("", "whole shelf"), ("yes", "in stock only")],
        JobChoice::OmittedAspect => vec![("", "80"), ("82", "82")],
        JobChoice::Drive => vec![("", "rear wheels"), ("front", "front wheels"), ("all", "all wheels")],
        JobChoice::PowerStandard => {
            vec![("", "as measured"), ("sae-j1349", "to SAE J1349"), ("iso-1585", "to ISO 1585"), ("din-70020", "to DIN 70020")]
        }
        JobChoice::ShiftRule => vec![("", "equal acceleration"), ("thrust", "equal thrust"), ("chosen", "the shift rpm above")],
        JobChoice::TurnedGear => vec![
            ("", "gear not known"),
            ("1", "1st"),
            ("2", "2nd"),
            ("3", "3rd"),
            ("4", "4th"),
            ("5", "5th"),
            ("6", "6th"),
            ("7", "7th"),
            ("8", "8th"),
            ("r", "reverse"),
        ],
        JobChoice::WheelHeld => vec![("", "both wheels free"), ("held", "one wheel held")],
        JobChoice::BenchLayout => vec![
            ("", "countershaft, reduced at the input"),
            ("output-reduced", "countershaft, reduced at the output"),
            ("two-shaft", "two shafts"),
        ],
        JobChoice::InsideGear => vec![
            ("1", "1st"),
            ("", "2nd"),
            ("3", "3rd"),
            ("4", "4th"),
            ("5", "5th"),
            ("6", "6th"),
            ("7", "7th"),
            ("8", "8th"),
            ("n", "neutral"),
            ("r", "reverse"),
        ],
        JobChoice::Lining => vec![("", "brass on steel"), ("molybdenum", "molybdenum on steel"), ("sintered", "sintered on steel")],
    }
}
