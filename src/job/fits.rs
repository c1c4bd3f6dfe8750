//! What is typed about a fit: a bore and a shaft as measured, and what is wanted between them.
//!
//! [`super::inputs::fits`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::{BoreMaterial, Chosen, ShaftMaterial};
use crate::units::Typed;

/// The texts about a fit, and what is chosen. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Fits {
    /// Readings of the bore.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub bore: Typed,
    /// Readings of the shaft.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub shaft: Typed,
    /// The fit wanted: a code of ISO 286 or a range of clearance.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub wanted: Typed,
    /// The size that a code is looked up at; blank for the nearest that is usual.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub nominal: Typed,
    /// The outside of the part around the bore.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub outside: Typed,
    /// How long the seat is.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub seat_length: Typed,
    /// Across one loose needle, where needles run between the two.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub needle: Typed,
    /// How many of them stand in a row.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub needles: String,
    /// What the bore is in; blank for aluminium.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub bore_material: Chosen<BoreMaterial>,
    /// What the shaft is made of; blank for steel.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub shaft_material: Chosen<ShaftMaterial>,
}

impl Fits {
    /// Whether nothing is typed or chosen.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
