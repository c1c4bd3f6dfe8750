//! A pair of tapered bearings: what heat does to its end play, and the shim that sets it.

use super::Material;
use crate::units::Length;

/// How the bearings of a pair stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mounting {
    /// The cups are held from outside, rollers' small ends towards each other's backs: a case that grows lengthways gives play.
    FaceToFace,
    /// The cones are held from outside, as on a pinion: a case that grows lengthways takes play.
    BackToBack,
}

/// A pair in a case that is not of steel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// Between the bearings, along the shaft.
    pub span: Length,
    /// The outsides of the cups.
    pub cups: [Length; 2],
    /// The ratio of the radial to the axial load rating, as the bearing's list gives it.
    pub k: f64,
    /// How they stand.
    pub mounting: Mounting,
    /// What the case is made of.
    pub case: Material,
}

/// What a pair's K is taken as where the list is not at hand: a contact angle of 13.7° (K = 0.389 ÷ tan α; from memory).
pub const USUAL_K: f64 = 1.6;
/// The axial part of a cup's growth is its radial part ÷ tan α, and tan α = 0.39 ÷ K.
const TAN_BY_K: f64 = 0.39;

impl Pair {
    /// What the case grows more than the shaft between the bearings: Δα · ΔT · L.
    pub fn along(&self, warmer_k: f64) -> Length {
        self.more_than_steel(self.span, warmer_k)
    }

    /// What the cups give when the case widens around them: Δα · ΔT · K · (D₁ + D₂) ÷ (2 · 0.39).
    ///
    /// Assumes that the cups follow the case. Source: the bearing trade's usual formula, from memory.
    pub fn across(&self, warmer_k: f64) -> Length {
        let [first, second] = self.cups;
        self.more_than_steel(first + second, warmer_k) * (self.k / (2.0 * TAN_BY_K))
    }

    /// How much more end play there is when the case is warmer: both add face to face, and oppose back to back.
    pub fn opens_when_hot(&self, warmer_k: f64) -> Length {
        match self.mounting {
            Mounting::FaceToFace => self.across(warmer_k) + self.along(warmer_k),
            Mounting::BackToBack => self.across(warmer_k) - self.along(warmer_k),
        }
    }

    fn more_than_steel(&self, length: Length, warmer_k: f64) -> Length {
        self.case.growth(length, warmer_k) - Material::Steel.growth(length, warmer_k)
    }
}

/// The shim that leaves what is wanted: the one that was in, plus the float that it left, less the end play wanted (plus the preload).
///
/// Source: makers' manuals (installed shim + measured float + preload).
pub fn shim(installed: Length, float: Length, play: Length) -> Length {
    installed + float - play
}

/// Whether the bearings of a pair have run before, and whether the seal drags with them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BearingState {
    /// New, no seal on.
    New,
    /// New, with the seal.
    NewSealed,
    /// Run before, no seal on.
    Used,
    /// Run before, with the seal.
    UsedSealed,
}

impl BearingState {
    /// The turning torque of a pinion that many makers give, without the seal: 20 to 32 lbf·in with new bearings, 8 to 15 with used ones.
    ///
    /// Source: makers' manuals.
    pub fn usual_torque(self) -> &'static str {
        match self {
            Self::New | Self::NewSealed => "20 to 32 lbf·in",
            Self::Used | Self::UsedSealed => "8 to 15 lbf·in",
        }
    }

    /// Whether the seal drags.
    pub fn is_sealed(self) -> bool {
        matches!(self, Self::NewSealed | Self::UsedSealed)
    }
}
