//! What is typed about a gear to be cut. Whatever is blank is taken from the measured gear.
//!
//! [`super::inputs::cutter`] is its table.

use super::choice::Chosen;
use super::document::document;
use crate::speedometer::Hand;
use crate::toothform::split::Split;
use crate::toothform::standard::Rack;
use crate::units::Typed;

document! {
    /// The texts about a gear to be cut, and what is chosen. Whatever is blank is left out of a file.
    pub struct Cutter {}
    left out while blank {
        /// What the part is called.
        pub part: String,
        /// How many teeth it has.
        pub teeth: String,
        /// Its normal module or diametral pitch.
        pub pitch: Typed,
        /// Its normal pressure angle.
        pub pressure: Typed,
        /// Its helix on the pitch circle.
        pub helix: Typed,
        /// Its profile shift in normal modules; blank for what the rule gives it.
        pub profile_shift: String,
        /// Its face width.
        pub face: Typed,
        /// How many teeth its mate has.
        pub mate_teeth: String,
        /// The centre distance they run at.
        pub centre: Typed,
        /// The least backlash wanted between them.
        pub backlash_least: Typed,
        /// The most.
        pub backlash_most: Typed,
        /// How much thinner it is cut, by a row of DIN 3967 as `25cd`; blank for what the backlash asks.
        pub allowance: String,
        /// How much its tips are relieved.
        pub relief: Typed,
        /// The circle on which relief begins.
        pub relief_from: Typed,
        /// The pins or balls it is to be checked with; blank for the usual.
        pub pin: Typed,
        /// What it is made of, in words.
        pub material: String,
        /// How it is hardened, in words.
        pub hardening: String,
        /// Its quality, in words.
        pub quality: String,
        /// The hand of its teeth.
        pub hand: Chosen<Hand>,
        /// The rack of the tool.
        pub rack: Chosen<Rack>,
        /// How the profile shifts of the pair are split.
        pub split: Chosen<Split>,
    }
}
