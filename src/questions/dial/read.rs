//! The speedometer, read and checked: dial and rule for all setups, gears and road check for each.

use crate::job::{self, Job, JobField, SetupField};
use crate::problem::Problem;
use crate::questions::setup::keep;
use crate::speedometer::{Band, Dial, Hand, Reading, Tap, Train, law, read};
use crate::units::{System, Velocity, limits};

/// What all setups share about the speedometer.
#[derive(Clone, Debug, PartialEq)]
pub struct SpeedoShared {
    /// What the dial expects, as typed.
    pub dial: Option<Dial>,
    /// What the dial expects, as a road check of one of the setups tells.
    pub solved: Option<Solved>,
    /// The rule it is judged by; where none is chosen, the usual one of the reader's country.
    pub band: Option<&'static Band>,
    /// The true speed at which readings are shown.
    pub check: Option<Velocity>,
    /// Whether only gears in stock are proposed.
    pub in_stock: bool,
    /// The system whose own numbers of the rule are used.
    pub units: System,
}

/// What a road check tells of the dial.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solved {
    /// The dial.
    pub dial: Dial,
    /// The column of the setup whose road check it is, counted from 0.
    pub column: usize,
}

/// What one setup has.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Speedo {
    /// The gears fitted, where they are given.
    pub train: Option<Train>,
    /// The readings of its road check, where there are any.
    pub readings: Vec<Reading>,
    /// The hand of the drive gear, where it is given.
    pub hand: Option<Hand>,
    /// Where the driven gear stands and its cable leaves, where it is given.
    pub tap: Option<Tap>,
}

impl SpeedoShared {
    /// Reads what all setups share; what cannot be read goes to `problems`.
    pub fn read(job: &Job, problems: &mut Vec<Problem>) -> Self {
        let typed = &job.speedo;
        Self {
            dial: keep(problems, JobField::Dial.path(), read::dial(&typed.dial.text, typed.dial.units)).flatten(),
            solved: None,
            band: law::named(&typed.law),
            check: keep(problems, JobField::SpeedoCheck.path(), typed.check.read(&limits::ROAD_SPEED)),
            in_stock: typed.in_stock == "yes",
            units: job.units,
        }
    }
}

impl SpeedoShared {
    /// What the dial expects, as typed or else as a road check tells.
    pub fn known_dial(&self) -> Option<Dial> {
        self.dial.or(self.solved.map(|solved| solved.dial))
    }
}

impl Speedo {
    /// Reads what one setup has; what cannot be read goes to `problems`.
    pub fn read(setup: &job::Setup, problems: &mut Vec<Problem>) -> Self {
        let typed = &setup.speedo;
        let train = (!typed.gears.trim().is_empty()).then(|| keep(problems, &SetupField::SpeedoGears.path(), read::train(&typed.gears)));
        let readings = keep(problems, &SetupField::RoadCheck.path(), read::readings(&typed.road_check.text, typed.road_check.units));
        Self {
            train: train.flatten(),
            readings: readings.unwrap_or_default(),
            hand: Hand::read(&typed.hand),
            tap: TAPS.iter().find(|(id, _, _)| *id == typed.tap).map(|(_, tap, _)| *tap),
        }
    }
}

/// Where a driven gear can stand and its cable leave: the word in the file, the case, the words on the page.
pub const TAPS: [(&str, Tap, &str); 8] = [
    ("left-up", Tap::LeftUp, "on the left, cable up"),
    ("left-down", Tap::LeftDown, "on the left, cable down"),
    ("right-up", Tap::RightUp, "on the right, cable up"),
    ("right-down", Tap::RightDown, "on the right, cable down"),
    ("above-left", Tap::AboveLeft, "above, cable to the left"),
    ("above-right", Tap::AboveRight, "above, cable to the right"),
    ("below-left", Tap::BelowLeft, "below, cable to the left"),
    ("below-right", Tap::BelowRight, "below, cable to the right"),
];
