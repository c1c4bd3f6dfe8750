//! What is typed about the setting of bearings and gears: a tapered pair, turning torque, ring and pinion, the clutch housing, fasteners.
//!
//! [`super::inputs::setting`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::Chosen;
use crate::fits::ring_pinion::{MarkSense, Pattern};
use crate::fits::tapered::{BearingState, Mounting};
use crate::units::Typed;

/// The texts about setting, and what is chosen. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Setting {
    /// The shim that was in when the float was read.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub shim_in: Typed,
    /// The float that it left, at one or several places.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub float: Typed,
    /// The end play wanted, preload with a minus.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub wanted: Typed,
    /// Between the bearings.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub span: Typed,
    /// The outsides of the cups.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub cups: Typed,
    /// The K of the bearings; blank for 1.6.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub k: Typed,
    /// How the pair stands; blank for face to face.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub mounting: Chosen<Mounting>,
    /// What the spring balance shows.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pull: Typed,
    /// The radius it pulls at.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub radius: Typed,
    /// The turning torque wanted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub torque: String,
    /// Whether the bearings are new, and the seal is on; blank for new without.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub bearings: Chosen<BearingState>,
    /// The depth shim as measured for a nominal pinion.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub depth: Typed,
    /// The mark on the pinion.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub mark: Typed,
    /// Which way the mark goes; blank for plus takes off.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub sense: Chosen<MarkSense>,
    /// The way of the dial, at one or several places.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub lash: Typed,
    /// The radius the dial stands at.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub dial_radius: Typed,
    /// The pitch radius of the gear it stands on.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pitch_radius: Typed,
    /// Where the drive side of the ring gear's teeth bears.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub pattern_drive: Chosen<Pattern>,
    /// Where their coast side bears.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub pattern_coast: Chosen<Pattern>,
    /// The clutch housing's bore at twelve, three, six and nine o'clock.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub bore: Typed,
    /// Its face, read the same way.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub face: Typed,
    /// The fasteners, one a line.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub fasteners: String,
    /// Oil: grade and quantity.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub oil: String,
}

impl Setting {
    /// Whether nothing is typed or chosen.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }

    /// Whether nothing of ring and pinion is typed or chosen.
    pub fn has_no_ring_and_pinion(&self) -> bool {
        let typed = [&self.depth, &self.mark, &self.lash, &self.dial_radius, &self.pitch_radius];
        typed.into_iter().all(Typed::is_blank) && self.pattern_drive.is_nothing() && self.pattern_coast.is_nothing()
    }
}
