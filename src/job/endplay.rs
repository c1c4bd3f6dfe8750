//! What is typed about end play: a stack of measured parts, the play wanted, what is left in the kit of shims.
//!
//! [`super::inputs::endplay`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::{CaseMaterial, Chosen};
use crate::fits::ShimsGo;
use crate::units::Typed;

/// The texts about end play, and what is chosen. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct EndPlay {
    /// The stack, a part a line.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub stack: Typed,
    /// The range of play wanted; preload with a minus.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub wanted: Typed,
    /// The shims that are left.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub kit: Typed,
    /// The play read once assembled, at one or several places.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub assembled: Typed,
    /// What the case is made of; blank for aluminium.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub case: Chosen<CaseMaterial>,
    /// Where the shims stand; blank for inside the stack.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub shims_go: Chosen<ShimsGo>,
}

impl EndPlay {
    /// Whether nothing is typed or chosen.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
