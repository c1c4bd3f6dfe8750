//! What is typed about the setting of bearings and gears: a tapered pair, turning torque, ring and pinion, the clutch housing, fasteners.
//!
//! [`super::inputs::setting`] is its table.

use super::choice::Chosen;
use super::document::document;
use crate::fits::ring_pinion::{MarkSense, Pattern};
use crate::fits::tapered::{BearingState, Mounting};
use crate::units::Typed;

document! {
    /// The texts about setting, and what is chosen. Whatever is blank is left out of a file.
    pub struct Setting {}
    left out while blank {
        /// The shim that was in when the float was read.
        pub shim_in: Typed,
        /// The float that it left, at one or several places.
        pub float: Typed,
        /// The end play wanted, preload with a minus.
        pub wanted: Typed,
        /// Between the bearings.
        pub span: Typed,
        /// The outsides of the cups.
        pub cups: Typed,
        /// The K of the bearings; blank for 1.6.
        pub k: Typed,
        /// How the pair stands; blank for face to face.
        pub mounting: Chosen<Mounting>,
        /// What the spring balance shows.
        pub pull: Typed,
        /// The radius it pulls at.
        pub radius: Typed,
        /// The turning torque wanted.
        pub torque: String,
        /// Whether the bearings are new, and the seal is on; blank for new without.
        pub bearings: Chosen<BearingState>,
        /// The depth shim as measured for a nominal pinion.
        pub depth: Typed,
        /// The mark on the pinion.
        pub mark: Typed,
        /// Which way the mark goes; blank for plus takes off.
        pub sense: Chosen<MarkSense>,
        /// The way of the dial, at one or several places.
        pub lash: Typed,
        /// The radius the dial stands at.
        pub dial_radius: Typed,
        /// The pitch radius of the gear it stands on.
        pub pitch_radius: Typed,
        /// Where the drive side of the ring gear's teeth bears.
        pub pattern_drive: Chosen<Pattern>,
        /// Where their coast side bears.
        pub pattern_coast: Chosen<Pattern>,
        /// The clutch housing's bore at twelve, three, six and nine o'clock.
        pub bore: Typed,
        /// Its face, read the same way.
        pub face: Typed,
        /// The fasteners, one a line.
        pub fasteners: String,
        /// Oil: grade and quantity.
        pub oil: String,
    }
}

impl Setting {
    /// Whether nothing of ring and pinion is typed or chosen.
    pub fn has_no_ring_and_pinion(&self) -> bool {
        let typed = [&self.depth, &self.mark, &self.lash, &self.dial_radius, &self.pitch_radius];
        typed.into_iter().all(Typed::is_blank) && self.pattern_drive.is_nothing() && self.pattern_coast.is_nothing()
    }
}
