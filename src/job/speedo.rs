//! What is typed about the speedometer: the dial and the rule for all setups, the gears and the road check for each.

use serde::{Deserialize, Serialize};

use super::choice::{Chosen, Law, Stock};
use super::document::document;
use crate::gearing::TakeOff;
use crate::speedometer::{Hand, Tap};
use crate::units::{System, Typed};

/// What all setups share: they go into one car with one dial.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct SpeedoShared {
    /// What the dial expects; blank where it is not known.
    pub dial: Typed,
    /// The id of the rule it is judged by; blank for the usual one of the reader’s country.
    pub law: Chosen<Law>,
    /// The true speed at which readings are shown.
    pub check: Typed,
    /// Whether only gears in stock are proposed.
    pub in_stock: Chosen<Stock>,
}

impl Default for SpeedoShared {
    fn default() -> Self {
        Self { dial: Typed::default(), check: Typed::new("60", System::Inch), law: Chosen::NOTHING, in_stock: Chosen::NOTHING }
    }
}

document! {
    /// What belongs to one setup.
    pub struct Speedo {
        /// Drive and driven teeth, and perhaps an adapter's.
        pub gears: String,
        /// Readings of the dial beside true speeds.
        pub road_check: Typed,
        /// The hand of the drive gear; blank where unknown.
        pub hand: Chosen<Hand>,
        /// Where the driven gear stands and its cable leaves; blank where unknown.
        pub tap: Chosen<Tap>,
        /// Where the drive gear sits; blank for the driveshaft.
        pub take_off: Chosen<TakeOff>,
    }
}
