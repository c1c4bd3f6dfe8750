//! What is typed about a gear to be cut. Whatever is blank is taken from the measured gear.
//!
//! [`super::inputs::cutter`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::Chosen;
use crate::speedometer::Hand;
use crate::toothform::split::Split;
use crate::toothform::standard::Rack;
use crate::units::Typed;

/// The texts about a gear to be cut, and what is chosen. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Cutter {
    /// What the part is called.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub part: String,
    /// How many teeth it has.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub teeth: String,
    /// Its normal module or diametral pitch.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pitch: Typed,
    /// Its normal pressure angle.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pressure: Typed,
    /// Its helix on the pitch circle.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub helix: Typed,
    /// Its profile shift in normal modules; blank for what the rule gives it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub profile_shift: String,
    /// Its face width.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub face: Typed,
    /// How many teeth its mate has.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub mate_teeth: String,
    /// The centre distance they run at.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub centre: Typed,
    /// The least backlash wanted between them.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub backlash_least: Typed,
    /// The most.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub backlash_most: Typed,
    /// How much thinner it is cut, by a row of DIN 3967 as `25cd`; blank for what the backlash asks.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub allowance: String,
    /// How much its tips are relieved.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub relief: Typed,
    /// The circle on which relief begins.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub relief_from: Typed,
    /// The pins or balls it is to be checked with; blank for the usual.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pin: Typed,
    /// What it is made of, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub material: String,
    /// How it is hardened, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub hardening: String,
    /// Its quality, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub quality: String,
    /// The hand of its teeth.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub hand: Chosen<Hand>,
    /// The rack of the tool.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub rack: Chosen<Rack>,
    /// How the profile shifts of the pair are split.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub split: Chosen<Split>,
}

impl Cutter {
    /// Whether nothing is typed or chosen.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
