//! A gear with its mate: the profile shifts a centre distance asks for, and the backlash of two gears as they are.
//!
//! `j_wt` = `m_wt` ((z₁ + z₂)(inv `α_wt` − inv αₜ) − 2 (x₁ + x₂) tan αₙ) with `m_wt` = 2a / (z₁ + z₂), x the shifts that the flanks as measured
//! show; `j_bn` = `j_wt` cos `α_wt` cos `β_b`. From the thicknesses on the working circles (ISO 21771:2007); DIN 3967 for the conversions.
//! And how far down their flanks each other's tips reach, and how many teeth share the load where flanks end before the tips.

use std::f64::consts::PI;

use super::CutGear;
use super::involute::inverse_involute;
use crate::gearing::Mesh;
use crate::gearing::geometry::{Geometry, GeometryError, Setting, geometry, involute};
use crate::units::Length;
use crate::units::common::{in_millimetres, millimetres};

/// The play between the flanks of two gears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Backlash {
    /// Along the working circle, across the shaft: what a dial on a tooth reads. Below nothing the gears bind.
    pub around: Length,
    /// Square to the flanks: what a feeler between them reads.
    pub normal: Length,
}

/// Two gears at a centre distance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meshing {
    /// Their geometry, as it would be without backlash.
    pub geometry: Geometry,
    /// The sum of the profile shifts that the flanks show.
    pub flank_sum: f64,
    /// The play between them.
    pub backlash: Backlash,
    /// The room between the first one's tips and the second one's roots, and the other way round.
    pub clearances: [Length; 2],
}

/// Two gears of one cut at a centre distance, their shifts as their flanks show them; `tips` as measured, those of full height where none
/// was.
///
/// # Errors
/// When the centre distance does not suit the counts and the cut.
pub fn meshing(gears: [CutGear; 2], centre: Length, tips: [Option<Length>; 2]) -> Result<Meshing, GeometryError> {
    let [one, two] = gears;
    let mesh = Mesh { driver: one.teeth, driven: two.teeth };
    let setting = Setting { mesh, cut: one.cut, centre: Some(centre), driver_shift: Some(one.shift), face_width: None };
    let geometry = geometry(&setting)?;
    let flank_sum = one.shift + two.shift;
    let backlash = backlash(&one, &geometry, flank_sum);
    let reach = |at: usize, gear: &CutGear| tips.get(at).copied().flatten().unwrap_or_else(|| gear.tip_diameter());
    let clearances = clearances(centre, [reach(0, &one), reach(1, &two)], gears.map(|gear| gear.root_diameter()));
    Ok(Meshing { geometry, flank_sum, backlash, clearances })
}

/// The room between the first one's tips and the second one's roots, and the other way round.
pub fn clearances(centre: Length, tips: [Length; 2], roots: [Length; 2]) -> [Length; 2] {
    let ([tip1, tip2], [root1, root2]) = (tips, roots);
    [centre - (tip1 + root2) / 2.0, centre - (tip2 + root1) / 2.0]
}

/// The play of flanks whose shifts add up to `flank_sum`.
fn backlash(gear: &CutGear, geometry: &Geometry, flank_sum: f64) -> Backlash {
    let around_mm = arc_of_shift_mm(gear, geometry) * (geometry.shift_sum - flank_sum);
    let normal_mm = around_mm * geometry.working_pressure_rad.cos() * gear.base_helix_rad().cos();
    Backlash { around: millimetres(around_mm), normal: millimetres(normal_mm) }
}

/// The sum of the shifts that the flanks show where a dial on the working circle reads that backlash; the inverse of [`meshing`].
pub fn flank_sum_of(gear: &CutGear, geometry: &Geometry, around: Length) -> f64 {
    geometry.shift_sum - in_millimetres(around) / arc_of_shift_mm(gear, geometry)
}

/// What the working circle gains of play with each module that the sum of the shifts falls short: 2 `m_wt` tan αₙ.
fn arc_of_shift_mm(gear: &CutGear, geometry: &Geometry) -> f64 {
    let [working, _] = geometry.working_diameters;
    in_millimetres(working) / gear.count() * 2.0 * gear.cut.pressure_rad().tan()
}

/// The centre distance at which flanks with these shifts touch without play; `None` where there is none.
pub fn tightest_centre(gears: [CutGear; 2]) -> Option<Length> {
    let [one, two] = gears;
    let (sum, pressure_rad) = (one.count() + two.count(), one.cut.transverse_pressure_rad());
    let reference_mm = f64::midpoint(one.reference_mm(), two.reference_mm());
    let value = involute(pressure_rad) + 2.0 * (one.shift + two.shift) * one.cut.pressure_rad().tan() / sum;
    inverse_involute(value).map(|working| millimetres(reference_mm * pressure_rad.cos() / working.cos()))
}

/// The circles between which a flank can touch another: from where the root ends to the tip, or to where relief begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flank {
    /// The inner one.
    pub begins: Length,
    /// The outer one.
    pub ends: Length,
}

/// How far the line of contact is from the foot of the first gear's base circle to that of the second's, a sin `α_wt`, in mm.
fn line_mm(geometry: &Geometry) -> f64 {
    in_millimetres(geometry.centre) * geometry.working_pressure_rad.sin()
}

/// How far along that line, from a gear's own end, its flank touches on a circle, √(d² − `d_b`²) / 2, in mm.
fn along_mm(base: Length, circle: Length) -> f64 {
    (in_millimetres(circle).powi(2) - in_millimetres(base).powi(2)).max(0.0).sqrt() / 2.0
}

/// The circle on each gear down to which the other's tips reach, the start of its active flank (`d_Nf`, ISO 21771:2007); none below the base
/// circle, where no flank is.
pub fn reached(geometry: &Geometry, tips: [Length; 2]) -> [Option<Length>; 2] {
    let ([tip1, tip2], [base1, base2]) = (tips, geometry.base_diameters);
    let down_to = |base: Length, other: f64| {
        let left_mm = line_mm(geometry) - other;
        (left_mm >= 0.0).then(|| millimetres(in_millimetres(base).hypot(2.0 * left_mm)))
    };
    [down_to(base1, along_mm(base2, tip2)), down_to(base2, along_mm(base1, tip1))]
}

/// How many pairs of teeth touch on average on those stretches of the flanks of two gears: what of the line of contact lies on both, over the
/// base pitch π mₜ cos αₜ. From the first circle of each to its tip it is `ε_α` (ISO 21771:2007).
pub fn contact_ratio(geometry: &Geometry, flanks: [Flank; 2]) -> f64 {
    let ([one, two], [base1, base2]) = (flanks, geometry.base_diameters);
    let whole_mm = line_mm(geometry);
    let from_mm = along_mm(base1, one.begins).max(whole_mm - along_mm(base2, two.ends));
    let to_mm = along_mm(base1, one.ends).min(whole_mm - along_mm(base2, two.begins));
    let pitch_mm = PI * in_millimetres(geometry.transverse_module) * geometry.transverse_pressure_rad.cos();
    ((to_mm - from_mm) / pitch_mm).max(0.0)
}
