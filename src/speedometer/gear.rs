//! The gears on the shelf: drive gears on the output shaft, driven gears on the cable, adapters between.

use serde::{Deserialize, Serialize};

use crate::gearing::geometry::Hand;

worded! {
    /// What a speedometer gear is for.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
    #[serde(rename_all = "lowercase")]
    pub enum Role {
        /// On the gearbox's output shaft.
        Drive => "drive";
        /// On the cable or the sender, turned by the drive gear.
        Driven => "driven";
        /// A pair in a box of its own between the gearbox and the cable.
        Adapter => "adapter";
    }
    /// The role's word, as it stands in a list.
    pub fn word;
}

impl Role {
    /// The role of that word, in any case.
    pub fn read(word: &str) -> Option<Self> {
        [Self::Drive, Self::Driven, Self::Adapter].into_iter().find(|role| role.word().eq_ignore_ascii_case(word.trim()))
    }
}

/// One speedometer gear or adapter of the catalogue.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SpeedoGear {
    /// Its name on the shelf.
    pub name: String,
    /// Where it sits between output shaft and cable.
    pub role: Role,
    /// Its teeth, [`SpeedoGear::LEAST`] to [`SpeedoGear::GREATEST`]; of an adapter, those of the gear on the gearbox's side.
    pub teeth: u16,
    /// Of an adapter, the teeth of the gear on the cable's side.
    #[serde(default)]
    pub second: Option<u16>,
    /// The group of gears that fit the same housing.
    pub housing: String,
    /// Which way its teeth wind, where known.
    #[serde(default)]
    pub hand: Option<Hand>,
    /// Whether it lies on the shelf.
    #[serde(default)]
    pub in_stock: bool,
    /// Whether it is the shop's own and not built in.
    #[serde(default)]
    pub own: bool,
    /// What else is to be said about it.
    #[serde(default)]
    pub note: String,
}

impl SpeedoGear {
    /// Fewer teeth than this no speedometer gear has (multi-start worms on the output shaft begin here).
    pub const LEAST: u16 = 4;
    /// More teeth than this do not fit into a speedometer housing.
    pub const GREATEST: u16 = 60;

    /// Whether a tooth count can be one of a speedometer gear. Common practice, no published source.
    pub fn allows(teeth: u16) -> bool {
        (Self::LEAST..=Self::GREATEST).contains(&teeth)
    }
}
