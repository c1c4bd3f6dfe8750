//! Where two gears touch: diameters, working pressure angle, profile shift, contact ratios.
//!
//! Here: the figures of a pair from its counts, its [`Cut`] and its centre distance. [`cut`] holds what one cutter makes, [`hand`] which way it winds,
//! [`pair_cuts`] the pairs that are cut otherwise, [`undercut`] the fewest teeth. Tooth counts alone never need this file; it answers only where the cut is known.

pub mod cut;
pub mod hand;
pub mod pair_cuts;
pub mod undercut;

use std::f64::consts::PI;

pub use cut::Cut;
pub use hand::Hand;

use super::teeth::Mesh;
use crate::units::{Length, common::in_millimetres, common::millimetres, number};

/// A pair of gears as it is cut and set up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// The tooth counts.
    pub mesh: Mesh,
    /// How both are cut.
    pub cut: Cut,
    /// The centre distance; `None` takes the reference one, with no profile shift.
    pub centre: Option<Length>,
    /// The profile shift of the driver in normal modules; `None` shares the sum equally (an assumption that moves the contact
    /// ratio by a few hundredths only).
    pub driver_shift: Option<f64>,
    /// The common face width.
    pub face_width: Option<Length>,
}

/// The figures of a pair; arrays are driver, driven.
///
/// Model and symbols of ISO 21771:2007. Tips are shortened so that the full tip clearance is kept (k = y − Σx).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geometry {
    /// mₜ = mₙ / cos β.
    pub transverse_module: Length,
    /// αₜ in rad, tan αₜ = tan αₙ / cos β.
    pub transverse_pressure_rad: f64,
    /// a₀ = mₜ (z₁ + z₂) / 2.
    pub reference_centre: Length,
    /// The centre distance it works at.
    pub centre: Length,
    /// `α_wt` in rad, cos `α_wt` = a₀ cos αₜ / a.
    pub working_pressure_rad: f64,
    /// Σx = (z₁ + z₂)(inv `α_wt` − inv αₜ) / (2 tan αₙ), in normal modules.
    pub shift_sum: f64,
    /// x₁ and x₂, in normal modules.
    pub shifts: [f64; 2],
    /// d = mₜ z.
    pub reference_diameters: [Length; 2],
    /// `d_b` = d cos αₜ.
    pub base_diameters: [Length; 2],
    /// `d_w` = 2 a z / (z₁ + z₂).
    pub working_diameters: [Length; 2],
    /// `d_a` = d + 2 mₙ (h* + x + k).
    pub tip_diameters: [Length; 2],
    /// `d_f` = d − 2 mₙ (`h_f`* − x).
    pub root_diameters: [Length; 2],
    /// From first contact to the pitch point, the driver driving.
    pub path_of_approach: Length,
    /// From the pitch point to last contact.
    pub path_of_recess: Length,
    /// `ε_α`, teeth in contact across the profile.
    pub transverse_contact_ratio: f64,
    /// `ε_β` = b sin β / (π mₙ); `None` without a face width.
    pub overlap_ratio: Option<f64>,
}

impl Geometry {
    /// `ε_γ` = `ε_α` + `ε_β`.
    pub fn total_contact_ratio(&self) -> f64 {
        self.transverse_contact_ratio + self.overlap_ratio.unwrap_or(0.0)
    }
}

/// Why a pair has no geometry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GeometryError {
    /// The flanks cannot meet at so short a centre distance, or only with less tooth than any pair has.
    TooClose {
        /// The centre distance given.
        centre: Length,
        /// The one the counts and the cut give without profile shift.
        reference: Length,
    },
    /// The tips do not reach each other, or only with more profile shift than any pair has.
    TooFar {
        /// The centre distance given.
        centre: Length,
        /// The one the counts and the cut give without profile shift.
        reference: Length,
    },
    /// A length that is nothing, negative or no number.
    NoLength,
}

explain! { GeometryError:
    Self::TooClose { centre, reference, .. } => format!("at a centre distance of {} mm the flanks cannot meet", shown(*centre)),
        format!("check module and helix angle: these counts want about {} mm", shown(*reference));
    Self::TooFar { centre, reference, .. } => format!("at a centre distance of {} mm the teeth do not reach each other", shown(*centre)),
        format!("check module and helix angle: these counts want about {} mm", shown(*reference));
    Self::NoLength => "a centre distance or face width of nothing cannot be", "type the measured length, or leave it empty";
}

fn shown(length: Length) -> String {
    number::show(in_millimetres(length), 2)
}

/// A pair that would want its profiles shifted by more than this in all, in normal modules, is not cut like that: the counts, the
/// pitch or the centre distance are wrong. Common practice, no published source.
pub const MOST_SHIFT: f64 = 2.0;

/// The involute function, inv α = tan α − α.
pub fn involute(angle_rad: f64) -> f64 {
    angle_rad.tan() - angle_rad
}

/// The geometry of a pair.
///
/// # Errors
/// When the centre distance does not suit the counts and the cut.
///
/// # Source
/// ISO 21771:2007, whose equation 62 gives the sum of the profile shifts.
pub fn geometry(setting: &Setting) -> Result<Geometry, GeometryError> {
    let line = Line::new(setting)?;
    let circles = Circles::new(setting, &line);
    let beyond_pitch = |tip_mm: f64, base_mm: f64| {
        let whole = (tip_mm.powi(2) - base_mm.powi(2)).max(0.0).sqrt();
        (whole - base_mm * line.working_rad.tan()) / 2.0
    };
    let ([tip1, tip2], [base1, base2]) = (circles.tip_mm, circles.base_mm);
    let (recess_mm, approach_mm) = (beyond_pitch(tip1, base1), beyond_pitch(tip2, base2));
    let contact = (approach_mm + recess_mm) / (PI * line.transverse_mm * line.pressure_rad.cos());
    if contact <= 0.0 {
        return Err(GeometryError::TooFar { centre: millimetres(line.centre_mm), reference: millimetres(line.reference_mm) });
    }
    Ok(Geometry {
        transverse_module: millimetres(line.transverse_mm),
        transverse_pressure_rad: line.pressure_rad,
        reference_centre: millimetres(line.reference_mm),
        centre: millimetres(line.centre_mm),
        working_pressure_rad: line.working_rad,
        shift_sum: line.shift_sum,
        shifts: circles.shifts,
        reference_diameters: circles.reference_mm.map(millimetres),
        base_diameters: circles.base_mm.map(millimetres),
        working_diameters: line.counts.map(|count| millimetres(2.0 * line.centre_mm * count / line.sum)),
        tip_diameters: circles.tip_mm.map(millimetres),
        root_diameters: circles.root_mm.map(millimetres),
        path_of_approach: millimetres(approach_mm),
        path_of_recess: millimetres(recess_mm),
        transverse_contact_ratio: contact,
        overlap_ratio: overlap(setting)?,
    })
}

fn overlap(setting: &Setting) -> Result<Option<f64>, GeometryError> {
    let Some(width) = setting.face_width else { return Ok(None) };
    let width_mm = in_millimetres(width);
    if !(width_mm > 0.0 && width_mm.is_finite()) {
        return Err(GeometryError::NoLength);
    }
    Ok(Some(width_mm * setting.cut.helix_rad().sin() / (PI * in_millimetres(setting.cut.normal_module()))))
}

/// Centre distance, pressure angles and the shift they ask for.
struct Line {
    counts: [f64; 2],
    sum: f64,
    transverse_mm: f64,
    pressure_rad: f64,
    reference_mm: f64,
    centre_mm: f64,
    working_rad: f64,
    shift_sum: f64,
}

impl Line {
    fn new(setting: &Setting) -> Result<Self, GeometryError> {
        let counts = [setting.mesh.driver, setting.mesh.driven].map(|teeth| f64::from(teeth.count()));
        let sum = f64::from(setting.mesh.sum());
        let cut = &setting.cut;
        let transverse_mm = in_millimetres(cut.transverse_module());
        let pressure_rad = cut.transverse_pressure_rad();
        let reference_mm = transverse_mm * sum / 2.0;
        let centre_mm = setting.centre.map_or(reference_mm, in_millimetres);
        if !(centre_mm > 0.0 && centre_mm.is_finite()) {
            return Err(GeometryError::NoLength);
        }
        let cosine = reference_mm * pressure_rad.cos() / centre_mm;
        let (centre, reference) = (millimetres(centre_mm), millimetres(reference_mm));
        if cosine >= 1.0 {
            return Err(GeometryError::TooClose { centre, reference });
        }
        let working_rad = if setting.centre.is_some() { cosine.acos() } else { pressure_rad };
        let shift_sum = sum * (involute(working_rad) - involute(pressure_rad)) / (2.0 * cut.pressure_rad().tan());
        if shift_sum > MOST_SHIFT {
            return Err(GeometryError::TooFar { centre, reference });
        }
        if shift_sum < -MOST_SHIFT {
            return Err(GeometryError::TooClose { centre, reference });
        }
        Ok(Self { counts, sum, transverse_mm, pressure_rad, reference_mm, centre_mm, working_rad, shift_sum })
    }
}

/// The circles of both gears.
struct Circles {
    shifts: [f64; 2],
    reference_mm: [f64; 2],
    base_mm: [f64; 2],
    tip_mm: [f64; 2],
    root_mm: [f64; 2],
}

impl Circles {
    fn new(setting: &Setting, line: &Line) -> Self {
        let cut = &setting.cut;
        let normal_mm = in_millimetres(cut.normal_module());
        let first = setting.driver_shift.filter(|shift| shift.is_finite()).unwrap_or(line.shift_sum / 2.0);
        let shifts = [first, line.shift_sum - first];
        let shortening = (line.centre_mm - line.reference_mm) / normal_mm - line.shift_sum;
        let reference_mm = line.counts.map(|count| count * line.transverse_mm);
        let [driver_mm, driven_mm] = reference_mm;
        let circle =
            |grow: &dyn Fn(f64) -> f64| [driver_mm + 2.0 * normal_mm * grow(shifts[0]), driven_mm + 2.0 * normal_mm * grow(shifts[1])];
        Self {
            shifts,
            reference_mm,
            base_mm: reference_mm.map(|diameter_mm| diameter_mm * line.pressure_rad.cos()),
            tip_mm: circle(&|shift| cut.addendum() + shift + shortening),
            root_mm: circle(&|shift| shift - cut.dedendum()),
        }
    }
}
