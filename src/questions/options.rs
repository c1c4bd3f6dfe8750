//! The options of every choice: the word that is kept, and the words that are read.

use super::dial::read::TAPS;
use crate::gearing::Layout;
use crate::job::{JobChoice, SetupChoice};
use crate::speedometer::law;

/// The forward gears.
const GEARS: [(&str, &str); 8] =
    [("1", "1st"), ("2", "2nd"), ("3", "3rd"), ("4", "4th"), ("5", "5th"), ("6", "6th"), ("7", "7th"), ("8", "8th")];

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
        JobChoice::Law => {
            std::iter::once(("", "usual for your country")).chain(law::BANDS.iter().map(|band| (band.id, band.name))).collect()
        }
        JobChoice::SpeedoStock => vec![("", "whole shelf"), ("yes", "in stock only")],
        JobChoice::OmittedAspect => vec![("", "80"), ("82", "82")],
        JobChoice::Drive => vec![("", "rear wheels"), ("front", "front wheels"), ("all", "all wheels")],
        JobChoice::PowerStandard => {
            vec![("", "as measured"), ("sae-j1349", "to SAE J1349"), ("iso-1585", "to ISO 1585"), ("din-70020", "to DIN 70020")]
        }
        JobChoice::ShiftRule => vec![("", "equal acceleration"), ("thrust", "equal thrust"), ("chosen", "the shift rpm below")],
        JobChoice::TurnedGear => [("", "gear not known")].into_iter().chain(GEARS).chain([("r", "reverse")]).collect(),
        JobChoice::WheelHeld => vec![("", "both wheels free"), ("held", "one wheel held")],
        // The usual layout is chosen by none: it stands where nothing was chosen yet.
        JobChoice::BenchLayout => {
            Layout::ALL.map(|layout| (if layout == Layout::default() { "" } else { layout.id() }, layout.words())).to_vec()
        }
        JobChoice::InsideGear => {
            // 2nd is looked at until another is chosen.
            let gears = GEARS.map(|(id, words)| (if id == "2" { "" } else { id }, words));
            gears.into_iter().chain([("n", "neutral"), ("r", "reverse")]).collect()
        }
        JobChoice::Lining => vec![("", "brass on steel"), ("molybdenum", "molybdenum on steel"), ("sintered", "sintered on steel")],
    }
}
