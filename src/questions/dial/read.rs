//! The speedometer, read and checked: dial and rule for all setups, gears and road check for each.

use crate::job::choice::Stock;
use crate::job::{self, InputProblem, Job, JobField, SetupField};
use crate::questions::setup::keep;
use crate::speedometer::{Band, Dial, Hand, Reading, Tap, Train, read};
use crate::units::{System, Velocity, limits};

/// What all setups share about the speedometer.
#[derive(Clone, Debug, PartialEq)]
pub struct SpeedoShared {
    /// What the dial expects.
    pub dial: Option<Dial>,
    /// The rule it is judged by; none where a file names one that is not known here.
    pub band: Option<&'static Band>,
    /// The true speed at which readings are shown.
    pub check: Option<Velocity>,
    /// Whether only gears in stock are proposed.
    pub in_stock: bool,
    /// The system whose own numbers of the rule are used.
    pub units: System,
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

impl Default for SpeedoShared {
    /// As where nothing is typed.
    fn default() -> Self {
        Self { dial: None, band: None, check: None, in_stock: false, units: System::Inch }
    }
}

impl SpeedoShared {
    /// Reads what all setups share; what cannot be read goes to `problems`.
    pub fn read(job: &Job, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &job.speedo;
        Self {
            dial: keep(problems, JobField::Dial, read::dial(&typed.dial.text, typed.dial.units)),
            band: typed.law.value().map(|law| law.0),
            check: keep(problems, JobField::SpeedoCheck, typed.check.read(&limits::ROAD_SPEED)),
            in_stock: typed.in_stock.value() == Some(Stock::InStock),
            units: job.units,
        }
    }
}

impl Speedo {
    /// Reads what one setup has; what cannot be read goes to `problems`.
    pub fn read(setup: &job::Setup, problems: &mut Vec<InputProblem>) -> Self {
        let typed = &setup.speedo;
        let train =
            (!typed.gears.trim().is_empty()).then(|| keep(problems, (setup.id, SetupField::SpeedoGears), read::train(&typed.gears)));
        let readings = keep(problems, (setup.id, SetupField::RoadCheck), read::readings(&typed.road_check.text, typed.road_check.units));
        Self { train: train.flatten(), readings: readings.unwrap_or_default(), hand: typed.hand.value(), tap: typed.tap.value() }
    }
}
