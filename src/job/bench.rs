//! What is typed at the bench: counted teeth, turns, a printed ladder, the sets whose parts are mixed, a stack of measured parts, a bore
//! and its shaft, what a noise is like.
//!
//! [`super::inputs::bench`] is its table.

use serde::{Deserialize, Serialize};

use super::build::Build;
use super::choice::{Chosen, TurnedGear, Wheels};
use super::cutter::Cutter;
use super::endplay::EndPlay;
use super::faults::Faults;
use super::fits::Fits;
use super::measure::Measure;
use super::noise::Noise;
use super::setting::Setting;
use crate::gearing::Layout;
use crate::units::Typed;

/// The texts of the bench, and what is chosen there. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Bench {
    /// The constant pair as counted; a count not known is a question mark.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub constant: String,
    /// 1st gear as counted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub first: String,
    /// 2nd gear as counted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub second: String,
    /// 3rd gear as counted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub third: String,
    /// 4th gear as counted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub fourth: String,
    /// 5th gear as counted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub fifth: String,
    /// 6th gear as counted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub sixth: String,
    /// Reverse as counted, without its idler.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reverse: String,
    /// Counts whose place is not known.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub anywhere: String,
    /// How often the input was turned, as it would be said: `10`, `nearly 3`.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub input_turns: String,
    /// Turns of the output that they gave.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub output_turns: String,
    /// How uncertain those are; blank for a reading by eye.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub uncertainty: String,
    /// Turns of the driveshaft.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub shaft_turns: String,
    /// Turns of the wheel that they gave.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub wheel_turns: String,
    /// How uncertain those are; blank for a reading by eye.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub wheel_uncertainty: String,
    /// What is stamped on an axle or its tag.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tag: String,
    /// Turns of the speedometer's cable over a measured stretch.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub cable: Typed,
    /// Turns over a distance that stand on the dial.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub dial: Typed,
    /// Printed ratios, lowest gear first.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub ladder: String,
    /// The fewest teeth a gear of it may have; blank for 12.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub fewest: String,
    /// The most teeth a gear of it may have; blank for 60.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub most: String,
    /// The gear set the input gear comes from.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub mix_input: String,
    /// The gear set the cluster comes from.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub mix_cluster: String,
    /// The gear set the mainshaft gears come from.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub mix_gears: String,
    /// The gear whose turns were read; blank where it is not known.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub turned_gear: Chosen<TurnedGear>,
    /// Whether one wheel of the axle was held.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub wheel: Chosen<Wheels>,
    /// The layout of what lies on the bench.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub layout: Chosen<Layout>,
    /// How warm the parts were when they were measured; blank for 20 °C.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub measured_at: Typed,
    /// How warm the box gets; blank for 90 °C.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub warms_to: Typed,
    /// A stack of measured parts, and the shims for it.
    #[serde(skip_serializing_if = "EndPlay::is_blank")]
    pub endplay: EndPlay,
    /// A bore and a shaft as measured.
    #[serde(skip_serializing_if = "Fits::is_blank")]
    pub fits: Fits,
    /// The setting of bearings and gears.
    #[serde(skip_serializing_if = "Setting::is_blank")]
    pub setting: Setting,
    /// A gear as measured.
    #[serde(skip_serializing_if = "Measure::is_blank")]
    pub measure: Measure,
    /// A gear to be cut.
    #[serde(skip_serializing_if = "Cutter::is_blank")]
    pub cutter: Cutter,
    /// What a noise is like.
    #[serde(skip_serializing_if = "Noise::is_blank")]
    pub noise: Noise,
    /// What is said of a fault, and what was tried.
    #[serde(skip_serializing_if = "Faults::is_blank")]
    pub faults: Faults,
    /// The order of work, and what was read at each step.
    #[serde(skip_serializing_if = "Build::is_blank")]
    pub build: Build,
}
