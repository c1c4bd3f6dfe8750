//! What is typed about the inside of the box: what is looked at, and the cut of the gears and the synchronisers of each setup.

use serde::{Deserialize, Serialize};

use super::SetupId;
use crate::units::Typed;

/// What is looked at, for all setups.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct InsideShared {
    /// The setup whose train is drawn; the first where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup: Option<SetupId>,
    /// The gear selected: `1` to `8`, `n` for neutral, `r` for reverse; blank for 2nd.
    pub gear: String,
    /// The input speed, or a road speed with its unit; blank for the shift rpm.
    pub at: Typed,
    /// The time a synchroniser is given.
    pub shift_time: Typed,
    /// The lining its cones are judged by: `molybdenum`, `sintered`, or anything else for brass.
    pub lining: String,
    /// Limits of the user's own for it: sliding speed, pressure, work and power; blank for the usual ones.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lining_limits: String,
}

/// The cut of the gears and the synchronisers of one setup.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
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
    /// Inertia of all that hangs on the input, told at the input shaft; blank for an estimate.
    pub inertia: Typed,
    /// Mean diameter of the cones.
    pub cone_diameter: Typed,
    /// Width of the lining.
    pub cone_width: Typed,
    /// The gears without a synchroniser: `1`, `1 2` or blank for none.
    pub unsynchronised: String,
}

/// The texts of one setup about the inside of its box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum InsideField {
    /// Normal module, or diametral pitch.
    Pitch,
    /// Helix angle.
    Helix,
    /// Normal pressure angle.
    Pressure,
    /// Centre distance.
    Centre,
    /// Face width.
    Face,
    /// Inertia of all that hangs on the input.
    Inertia,
    /// Mean diameter of the cones.
    ConeDiameter,
    /// Width of the lining.
    ConeWidth,
}

impl InsideField {
    /// The path by which a [`crate::problem::Problem`] names this field.
    pub fn path(self) -> &'static str {
        match self {
            Self::Pitch => "pitch",
            Self::Helix => "helix",
            Self::Pressure => "pressure-angle",
            Self::Centre => "centre",
            Self::Face => "face-width",
            Self::Inertia => "input-inertia",
            Self::ConeDiameter => "cone-diameter",
            Self::ConeWidth => "cone-width",
        }
    }

    /// The text as typed.
    pub fn typed(self, inside: &Inside) -> &Typed {
        match self {
            Self::Pitch => &inside.pitch,
            Self::Helix => &inside.helix,
            Self::Pressure => &inside.pressure,
            Self::Centre => &inside.centre,
            Self::Face => &inside.face,
            Self::Inertia => &inside.inertia,
            Self::ConeDiameter => &inside.cone_diameter,
            Self::ConeWidth => &inside.cone_width,
        }
    }

    pub(super) fn slot(self, inside: &mut Inside) -> &mut Typed {
        match self {
            Self::Pitch => &mut inside.pitch,
            Self::Helix => &mut inside.helix,
            Self::Pressure => &mut inside.pressure,
            Self::Centre => &mut inside.centre,
            Self::Face => &mut inside.face,
            Self::Inertia => &mut inside.inertia,
            Self::ConeDiameter => &mut inside.cone_diameter,
            Self::ConeWidth => &mut inside.cone_width,
        }
    }
}
