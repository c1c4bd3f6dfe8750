//! A press fit: what the two press on each other with, and the force that pushes one into the other.

use super::Material;
use crate::units::common::in_millimetres;
use crate::units::{Force, Length, Pressure, unit};

/// Friction of oiled steel in a press fit (Shigley takes 0.12 to 0.2; from memory).
pub const FRICTION: f64 = 0.12;

/// Two parts pressed together, the inner one solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Press {
    /// How much larger the shaft is than the bore, across.
    pub interference: Length,
    /// The size of the seat.
    pub diameter: Length,
    /// The outside of the part around it.
    pub outside: Length,
    /// How long the seat is.
    pub length: Length,
    /// What the outer and the inner part are made of.
    pub materials: [Material; 2],
}

impl Press {
    /// What the parts press on each other with, after Lamé: p = δ ÷ { (d/Eₒ)·[(D² + d²)/(D² − d²) + νₒ] + (d/Eᵢ)·[1 − νᵢ] }.
    ///
    /// None where nothing is pressed, or the outer part has no wall. Source: Shigley, *Mechanical Engineering Design*, equation 7-39.
    pub fn pressure(&self) -> Option<Pressure> {
        let [delta, inner, outer] = [self.interference, self.diameter, self.outside].map(in_millimetres);
        if delta <= 0.0 || inner <= 0.0 || outer <= inner * 1.001 {
            return None;
        }
        let [(hub, hub_across), (shaft, shaft_across)] = self.materials.map(Material::elastic);
        let wall = (outer * outer + inner * inner) / (outer * outer - inner * inner) + hub_across;
        Some(unit::N_MM2.of(delta / (inner / hub * wall + inner / shaft * (1.0 - shaft_across))))
    }

    /// The force at the end of the stroke: F = π · f · p · l · d. Source: Shigley, equation 7-49.
    pub fn force(&self) -> Option<Force> {
        let area = in_millimetres(self.length) * in_millimetres(self.diameter);
        Some(unit::NEWTON.of(std::f64::consts::PI * FRICTION * unit::N_MM2.number(self.pressure()?) * area))
    }
}
