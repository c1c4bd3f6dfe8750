//! What is said of a fault, what was tried, and what was measured of worn parts.
//!
//! [`super::inputs::faults`] is its table; [`crate::faults`] knows what the words stand for.

use serde::{Deserialize, Serialize};

/// The texts about a fault. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Faults {
    /// Symptoms and conditions by their names, a semicolon between them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub said: String,
    /// The tests, one a line, with what they gave.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tried: String,
    /// Worn parts on the bench, one a line, with what was measured.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub worn: String,
}

impl Faults {
    /// Whether nothing is said.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
