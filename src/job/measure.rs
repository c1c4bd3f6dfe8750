//! What is typed about a gear that is measured, and about its mate.
//!
//! [`super::inputs::measure`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::Chosen;
use crate::speedometer::Hand;
use crate::units::Typed;

/// The texts about a measured gear, and what is chosen. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Measure {
    /// How many teeth it has.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub teeth: String,
    /// The largest reading over the tips.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub over_tips: Typed,
    /// The reading over several teeth.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub span: Typed,
    /// The reading over one tooth more.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub span_more: Typed,
    /// Over how many teeth the first span went; blank where the reading tells it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub spanned: String,
    /// The helix as the rolled print of the tips shows it.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub print: Typed,
    /// The lead, in place of the print.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub lead: Typed,
    /// The diameter of the pins or balls.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pin: Typed,
    /// The reading over them.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub over_pins: Typed,
    /// The root diameter.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub root: Typed,
    /// The face width.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub face: Typed,
    /// How far off a reading may be; blank for a caliper's.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub give_or_take: Typed,
    /// How many teeth its mate has.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub mate_teeth: String,
    /// The centre distance they run at.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub centre: Typed,
    /// The reading over several teeth of the mate.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub mate_span: Typed,
    /// The backlash felt between them.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub backlash: Typed,
    /// The hand of its teeth.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub hand: Chosen<Hand>,
}

impl Measure {
    /// Whether nothing is typed or chosen.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
