//! How fast two flanks slide on each other, and what that costs.

use std::f64::consts::PI;

use super::strength::base_helix_rad;
use crate::gearing::Mesh;
use crate::gearing::geometry::{Cut, Geometry};
use crate::units::{AngularVelocity, Velocity, common::in_millimetres};

/// The usual friction of hardened teeth in gear oil. From memory, no published source; 0.04 to 0.08 are met.
pub const USUAL_FRICTION: f64 = 0.06;

/// How fast the flanks slide where contact begins and where it ends, v = (ω₁ + ω₂) g; the speeds of driver and driven gear.
///
/// Source: any textbook of the theory of machines (for instance Khurmi and Gupta, ch. 12).
pub fn speeds(geometry: &Geometry, [driver, driven]: [AngularVelocity; 2]) -> [Velocity; 2] {
    let both = driver.value.abs() + driven.value.abs();
    let of = |path: crate::units::Length| Velocity::new::<uom::si::velocity::meter_per_second>(both * path.value);
    [of(geometry.path_of_approach), of(geometry.path_of_recess)]
}

/// The share of the power that sliding takes, μ `H_v`: `H_v` = π (u + 1) / (z₁ u cos `β_b`) × (1 − `ε_α` + ε₁² + ε₂²).
///
/// ε₁ and ε₂ are the paths of recess and approach over the base pitch. Left out: churning, bearings and seals, which at part load take more.
/// Source: Niemann and Winter, Maschinenelemente, vol. 2 (from memory).
pub fn loss(geometry: &Geometry, mesh: Mesh, cut: &Cut, friction: f64) -> f64 {
    let (z1, z2) = (f64::from(mesh.driver.count()), f64::from(mesh.driven.count()));
    let pitch_mm = PI * in_millimetres(geometry.transverse_module) * geometry.transverse_pressure_rad.cos();
    let [one, two] = [geometry.path_of_recess, geometry.path_of_approach].map(|path| in_millimetres(path) / pitch_mm);
    let path = 1.0 - geometry.transverse_contact_ratio + one.powi(2) + two.powi(2);
    friction * PI * (1.0 / z1 + 1.0 / z2) / base_helix_rad(cut).cos() * path
}
