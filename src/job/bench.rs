//! What is typed at the bench: counted teeth, turns, a printed ladder, the sets whose parts are mixed, a stack of measured parts, a bore
//! and its shaft, what a noise is like.
//!
//! [`super::inputs::bench`] is its table.

use super::build::Build;
use super::choice::{Chosen, TurnedGear, Wheels};
use super::cutter::Cutter;
use super::document::document;
use super::endplay::EndPlay;
use super::faults::Faults;
use super::fits::Fits;
use super::measure::Measure;
use super::noise::Noise;
use super::setting::Setting;
use crate::gearing::Layout;
use crate::units::Typed;

document! {
    /// The texts of the bench, and what is chosen there. Whatever is blank is left out of a file.
    pub struct Bench {}
    left out while blank {
        /// The constant pair as counted; a count not known is a question mark.
        pub constant: String,
        /// 1st gear as counted.
        pub first: String,
        /// 2nd gear as counted.
        pub second: String,
        /// 3rd gear as counted.
        pub third: String,
        /// 4th gear as counted.
        pub fourth: String,
        /// 5th gear as counted.
        pub fifth: String,
        /// 6th gear as counted.
        pub sixth: String,
        /// Reverse as counted, without its idler.
        pub reverse: String,
        /// Counts whose place is not known.
        pub anywhere: String,
        /// How often the input was turned, as it would be said: `10`, `nearly 3`.
        pub input_turns: String,
        /// Turns of the output that they gave.
        pub output_turns: String,
        /// How uncertain those are; blank for a reading by eye.
        pub uncertainty: String,
        /// Turns of the driveshaft.
        pub shaft_turns: String,
        /// Turns of the wheel that they gave.
        pub wheel_turns: String,
        /// How uncertain those are; blank for a reading by eye.
        pub wheel_uncertainty: String,
        /// What is stamped on an axle or its tag.
        pub tag: String,
        /// Turns of the speedometer's cable over a measured stretch.
        pub cable: Typed,
        /// Turns over a distance that stand on the dial.
        pub dial: Typed,
        /// Printed ratios, lowest gear first.
        pub ladder: String,
        /// The fewest teeth a gear of it may have; blank for 12.
        pub fewest: String,
        /// The most teeth a gear of it may have; blank for 60.
        pub most: String,
        /// The gear set the input gear comes from.
        pub mix_input: String,
        /// The gear set the cluster comes from.
        pub mix_cluster: String,
        /// The gear set the mainshaft gears come from.
        pub mix_gears: String,
        /// The gear whose turns were read; blank where it is not known.
        pub turned_gear: Chosen<TurnedGear>,
        /// Whether one wheel of the axle was held.
        pub wheel: Chosen<Wheels>,
        /// The layout of what lies on the bench.
        pub layout: Chosen<Layout>,
        /// How warm the parts were when they were measured; blank for 20 °C.
        pub measured_at: Typed,
        /// How warm the box gets; blank for 90 °C.
        pub warms_to: Typed,
        /// A stack of measured parts, and the shims for it.
        pub endplay: EndPlay,
        /// A bore and a shaft as measured.
        pub fits: Fits,
        /// The setting of bearings and gears.
        pub setting: Setting,
        /// A gear as measured.
        pub measure: Measure,
        /// A gear to be cut.
        pub cutter: Cutter,
        /// What a noise is like.
        pub noise: Noise,
        /// What is said of a fault, and what was tried.
        pub faults: Faults,
        /// The order of work, and what was read at each step.
        pub build: Build,
    }
}
