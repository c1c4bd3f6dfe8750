//! What is typed about a noise: what it is like, the speed it is heard at, the gears it is there in, its pitch.
//!
//! [`super::inputs::noise`] is its table.

use serde::{Deserialize, Serialize};

use super::choice::{Chosen, HeardGear, NoiseSetup, StagesIn};
use crate::sound::{Clutch, GoesWith, Kind, Load};
use crate::units::Typed;

/// The texts about a noise, and what is chosen. Whatever is blank is left out of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct Noise {
    /// What kind of noise it is.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub kind: Chosen<Kind>,
    /// The gear it is heard in.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub gear: Chosen<HeardGear>,
    /// The road speed or rpm at which it is heard; blank for the cruise speed.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub at: Typed,
    /// The speed at the end of a recording; blank where it was steady.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub until: Typed,
    /// Which of the extra stages that can be switched are in; blank for none.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub stages: Chosen<StagesIn>,
    /// Whether it is there pulling, coasting or both.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub load: Chosen<Load>,
    /// The setup it is asked of; blank for the first.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub setup: Chosen<NoiseSetup>,
    /// Further gears in which it is there.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub there: String,
    /// Gears in which it is gone.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub gone: String,
    /// What it keeps step with.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub goes_with: Chosen<GoesWith>,
    /// What pressing the clutch does to it.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub clutch: Chosen<Clutch>,
    /// Its pitch.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub pitch: Typed,
    /// The cylinders of the engine; blank for 4.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub cylinders: String,
    /// Bearings whose geometry is known, a line each.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub bearings: Typed,
    /// What was kept of recordings, a line each: gear, engine speed, tones and how loud they were.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub kept: String,
}

impl Noise {
    /// Whether nothing is typed or chosen.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }
}
