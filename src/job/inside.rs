//! What is typed about the inside of the box: what is looked at, and the cut of the gears and the synchronisers of each setup.
//!
//! [`super::inputs::shared`] and [`super::inputs::setup`] are its tables.

use serde::{Deserialize, Serialize};

use super::SetupId;
use super::choice::{Chosen, LookedGear};
use super::document::document;
use crate::speedometer::Hand;
use crate::toothload::duty::{Duty, TorqueFrom};
use crate::toothload::synchroniser::LiningKind;
use crate::units::Typed;

/// What is looked at, for all setups.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(default)]
pub struct InsideShared {
    /// The setup whose train is drawn; the first where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup: Option<SetupId>,
    /// The gear selected: `1` to `8`, `n` for neutral, `r` for reverse; blank for 2nd.
    pub gear: Chosen<LookedGear>,
    /// The input speed, or a road speed with its unit; blank for the shift rpm.
    pub at: Typed,
    /// The time a synchroniser is given.
    pub shift_time: Typed,
    /// The lining its cones are judged by; blank for brass.
    pub lining: Chosen<LiningKind>,
    /// Limits of the user's own for it: sliding speed, pressure, work and power; blank for the usual ones.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lining_limits: String,
    /// What the car is used for, by which bearings last; blank for the road.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub duty: Chosen<Duty>,
    /// The torque at the input that teeth and bearings are judged at; blank for the engine's greatest.
    #[serde(skip_serializing_if = "Typed::is_blank")]
    pub torque: Typed,
    /// Whether that torque is the engine's or what the tyres hold.
    #[serde(skip_serializing_if = "Chosen::is_nothing")]
    pub torque_from: Chosen<TorqueFrom>,
}

document! {
    /// The cut of the gears and the synchronisers of one setup.
    pub struct Inside {
        /// Normal module, or diametral pitch.
        pub pitch: Typed,
        /// Helix angle.
        pub helix: Typed,
        /// Normal pressure angle.
        pub pressure: Typed,
        /// Centre distance of countershaft and mainshaft.
        pub centre: Typed,
        /// Face width of the gears.
        pub face: Typed,
        /// Inertia of all that hangs on the input, referred to the input shaft; blank for an estimate.
        pub inertia: Typed,
        /// Mean diameter of the cones.
        pub cone_diameter: Typed,
        /// Width of the lining.
        pub cone_width: Typed,
    }
    left out while blank {
        /// The angle of the cones to the shaft.
        pub cone_angle: Typed,
        /// The friction of the cones.
        pub cone_friction: Typed,
        /// How many cones of a synchroniser work at once; blank for one.
        pub cones: String,
        /// The outer diameter of the clutch plate.
        pub clutch_diameter: Typed,
        /// The pairs that are cut otherwise: `1st 8 DP 0°; R 7 DP; 2nd x 0.3; 3rd left; 4th face 14 mm`; blank for none.
        pub pair_cuts: Typed,
        /// The two bearings of the countershaft: `0 28 kN ball; 175 24 kN roller`, `0 40 kN taper Y 1.6; 175 45 kN taper Y 1.5`; blank where they are not looked at.
        pub bearings: Typed,
        /// Where the gears sit along it: `input 22; 2nd 110; 1st 150`.
        pub places: Typed,
        /// The two bearings of the mainshaft, the output: `45 16 kN roller; 180 26 kN ball`.
        pub main_bearings: Typed,
        /// The two bearings of the input shaft of a box with a countershaft.
        pub input_bearings: Typed,
        /// The hand of the teeth on the countershaft; of a two-shaft box, on the input shaft.
        pub hand: Chosen<Hand>,
    }
    always written {
        /// The gears without a synchroniser: `1`, `1 2` or blank for none.
        pub unsynchronised: String,
    }
}
