//! The speedometer, read and checked: dial and rule for all setups, gears and road check for each.

use crate::gearing::TakeOff;
use crate::job::choice::{Chosen, Law, Stock};
use crate::job::{self, InputProblem, Job, JobField, SetupField};
use crate::questions::setup::keep;
use crate::speedometer::{Dial, Hand, Reading, Tap, Train, read};
use crate::units::{System, Velocity, limits};

/// What all setups share about the speedometer.
#[derive(Clone, Debug, PartialEq)]
pub struct SpeedoShared {
    /// What the dial expects, as typed.
    pub dial: Option<Dial>,
    /// What the dial expects, as a road check of one of the setups tells.
    pub solved: Option<Solved>,
    /// The rule it is judged by: chosen, the usual one of the reader's country, or none where a file names one that is not known here.
    pub law: Chosen<Law>,
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
    /// Where the drive gear sits.
    pub take_off: TakeOff,
}

impl Default for SpeedoShared {
    /// As where nothing is typed.
    fn default() -> Self {
        Self { dial: None, solved: None, law: Chosen::NOTHING, check: None, in_stock: false, units: System::Inch }
    }
}

impl SpeedoShared {
    /// Reads what all setups share; what cannot be read goes to `problems`.
    pub fn read(job: &Job, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &job.speedo;
        Self {
            dial: keep(problems, JobField::Dial, read::dial(&typed.dial.text, typed.dial.units)).flatten(),
            solved: None,
            law: typed.law.clone(),
            check: keep(problems, JobField::SpeedoCheck, typed.check.read(&limits::ROAD_SPEED)),
            in_stock: typed.in_stock.value() == Some(Stock::InStock),
            units: job.units,
        }
    }

    /// What the dial expects, as typed or else as a road check tells.
    pub fn known_dial(&self) -> Option<Dial> {
        self.dial.or(self.solved.map(|solved| solved.dial))
    }
}

impl Speedo {
    /// Reads what one setup has; what cannot be read goes to `problems`.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.speedo;
        let train =
            (!typed.gears.trim().is_empty()).then(|| keep(problems, (setup.id, SetupField::SpeedoGears), read::train(&typed.gears)));
        let readings = keep(problems, (setup.id, SetupField::RoadCheck), read::readings(&typed.road_check.text, typed.road_check.units));
        let take_off = typed.take_off.value().unwrap_or_default();
        Self { train: train.flatten(), readings: readings.unwrap_or_default(), hand: typed.hand.value(), tap: typed.tap.value(), take_off }
    }
}
