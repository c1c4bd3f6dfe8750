//! How much root and flank of a tooth bear: Lewis bending and Hertz contact with a factor for speed.
//!
//! Good for comparing one pair with another. Left out: shock, how the load spreads over face and teeth, notch, finish, hardness, lubrication;
//! so no stress here may be held against what a steel bears.

use std::f64::consts::PI;

use crate::gearing::Mesh;
use crate::gearing::geometry::{Cut, Geometry};
use crate::units::{Force, Length, Pressure, Velocity};

/// `K_v` = √((5.56 + √V) / 5.56) for shaved or ground teeth, V in m/s at the pitch line.
///
/// Source: Shigley, 9th ed., equation 14-6d.
pub fn speed_factor(pitch_line: Velocity) -> f64 {
    ((5.56 + pitch_line.value.abs().sqrt()) / 5.56).sqrt()
}

/// σ = `K_v` Fₜ / (b mₙ Y).
///
/// Source: Shigley, 9th ed., equation 14-8.
///
/// ```
/// use layshaft::toothload::strength::bending;
/// use layshaft::units::{common::millimetres, unit};
/// // 1.2 × 4,000 N ÷ (20 mm × 2.5 mm × 0.32)
/// let stress = bending(unit::NEWTON.of(4_000.0), millimetres(20.0), millimetres(2.5), 0.32, 1.2);
/// assert!((stress.value - 300e6).abs() < 1.0);
/// ```
pub fn bending(tangential: Force, face: Length, module: Length, form_factor: f64, speed_factor: f64) -> Pressure {
    tangential * speed_factor / (face * module * form_factor)
}

/// `Z_E` of steel on steel, in the root of a pascal: 189.8 for N/mm² (ISO 6336-2).
const STEEL: f64 = 189.8e3;

/// `σ_H` = `Z_H` `Z_E` `Z_ε` `Z_β` √(`K_v` Fₜ (u + 1) / (d₁ b u)), steel on steel, at the pitch point.
///
/// `Z_H` = √(2 cos `β_b` cos `α_wt` / (cos² αₜ sin `α_wt`)); `Z_ε` = √((4 − `ε_α`)(1 − `ε_β`) / 3 + `ε_β` / `ε_α`), from an overlap of 1 on √(1 / `ε_α`);
/// `Z_β` = 1 / √cos β. Source: ISO 6336-2:2019, nominal contact stress (from memory).
pub fn contact(tangential: Force, face: Length, mesh: Mesh, cut: &Cut, geometry: &Geometry, speed_factor: f64) -> Pressure {
    let [driver, _] = geometry.reference_diameters;
    let u = f64::from(mesh.driven.count()) / f64::from(mesh.driver.count());
    let load = (tangential * speed_factor / (driver * face)).value * (u + 1.0) / u;
    let zone = (2.0 * base_helix_rad(cut).cos() * geometry.working_pressure_rad.cos()).sqrt()
        / (geometry.transverse_pressure_rad.cos() * geometry.working_pressure_rad.sin().sqrt());
    let overlap = (face.value * cut.helix_rad().sin() / (PI * cut.normal_module().value)).min(1.0);
    let across = geometry.transverse_contact_ratio;
    let shared = ((4.0 - across) * (1.0 - overlap) / 3.0 + overlap / across).max(0.0).sqrt();
    let stress = zone * STEEL * shared / cut.helix_rad().cos().sqrt() * load.sqrt();
    Pressure::new::<uom::si::pressure::pascal>(stress)
}

/// `β_b`, sin `β_b` = sin β cos αₙ.
pub(super) fn base_helix_rad(cut: &Cut) -> f64 {
    (cut.helix_rad().sin() * cut.pressure_rad().cos()).asin()
}
