//! What is typed about the build: the order of work with what was read at each step, the parts it takes, and who does it.
//!
//! [`super::inputs::build`] is its table, [`crate::checklist`] reads and changes the steps, [`super::parts`] reads the parts.

use serde::{Deserialize, Serialize};

/// The texts about the build. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Build {
    /// The steps, one a line.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub steps: String,
    /// The parts, one a line.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub parts: String,
    /// Who ticks them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub by: String,
}

impl Build {
    /// Whether nothing is typed.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
