//! How the sum of the profile shifts that a centre distance asks for is shared out between two gears.
//!
//! The sum is exact (ISO 21771:2007, equation 62); the split is a choice, and its rule is named wherever it is shown.

use super::CutGear;
use super::lewis::form_factor_of_helical;
use super::outline::straight_depth;
use crate::gearing::geometry::undercut::least_shift_of_tool;
use crate::gearing::geometry::{Cut, Geometry, GeometryError, Setting, geometry};
use crate::gearing::{Mesh, Teeth};
use crate::units::Length;
use crate::units::common::in_millimetres;

/// A rule that splits the sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Split {
    /// So that the flanks of both slide alike at the roots, where they wear.
    EqualSliding,
    /// So that the roots of both bend alike under their common load: equal form factors of Lewis.
    EqualStrength,
    /// Half each.
    Halves,
    /// So that the smaller gear is just not undercut; halves where it has teeth enough.
    NoUndercut,
}

/// Two gears of one cut that run at a centre distance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shared {
    /// Both gears with their profile shifts.
    pub gears: [CutGear; 2],
    /// Their geometry.
    pub geometry: Geometry,
    /// How many times faster than it rolls the root of each slides, below nothing: ζ.
    pub sliding: [f64; 2],
}

/// The split beyond which it is not searched, in modules to either side of half.
const MOST_APART: f64 = 1.2;
/// Halvings of it: to a billionth of a module.
const STEPS: usize = 32;

/// Two gears at a centre distance, the sum split by a rule; the tip radius of the tool, in modules, decides what is undercut and how strong a
/// root is.
///
/// # Errors
/// When no profile shift brings these counts to that centre distance.
pub fn by_rule(cut: Cut, counts: [Teeth; 2], centre: Length, rule: Split, tip_radius: f64) -> Result<Shared, GeometryError> {
    let least = |teeth: Teeth| least_shift_of_tool(&cut, teeth, straight_depth(&cut, tip_radius));
    let at = |first: f64| with_first(cut, counts, centre, first);
    let sum = at(0.0)?.geometry.shift_sum;
    let [one, two] = counts;
    match rule {
        Split::Halves => at(sum / 2.0),
        Split::NoUndercut if one <= two => at((sum / 2.0).max(least(one))),
        Split::NoUndercut => at((sum / 2.0).min(sum - least(two))),
        // The first gear's root slides less, and the second's more, the more of the sum the first has.
        Split::EqualSliding => balanced(&at, sum, |shared| {
            let [first, second] = shared.sliding;
            first < second
        }),
        // And the thicker and stronger it is.
        Split::EqualStrength => balanced(&at, sum, |shared| {
            let [first, second] = shared.gears.map(|gear| form_factor_of_helical(&gear, tip_radius));
            first < second
        }),
    }
}

/// The share of the first gear up to which it wants more, by halving.
fn balanced(
    at: &impl Fn(f64) -> Result<Shared, GeometryError>,
    sum: f64,
    wants_more: impl Fn(&Shared) -> bool,
) -> Result<Shared, GeometryError> {
    let (mut low, mut high) = (sum / 2.0 - MOST_APART, sum / 2.0 + MOST_APART);
    for _ in 0..STEPS {
        let middle = f64::midpoint(low, high);
        if wants_more(&at(middle)?) {
            low = middle;
        } else {
            high = middle;
        }
    }
    at(f64::midpoint(low, high))
}

/// Two gears at a centre distance, the first one's profile shift given: the second has the rest.
///
/// # Errors
/// As [`by_rule`].
pub fn with_first(cut: Cut, counts: [Teeth; 2], centre: Length, first: f64) -> Result<Shared, GeometryError> {
    let [one, two] = counts;
    let mesh = Mesh { driver: one, driven: two };
    let geometry = geometry(&Setting { mesh, cut, centre: Some(centre), driver_shift: Some(first), face_width: None })?;
    let [x1, x2] = geometry.shifts;
    let gears = [CutGear { teeth: one, cut, shift: x1 }, CutGear { teeth: two, cut, shift: x2 }];
    Ok(Shared { gears, geometry, sliding: sliding(&geometry, counts) })
}

/// ζ₁ = 1 − (z₁ ρ₂) / (z₂ ρ₁) where the other's tip meets the root of each; ρ the radii of the flanks' curves there. Without end, below nothing,
/// where contact begins below the base circle.
fn sliding(geometry: &Geometry, counts: [Teeth; 2]) -> [f64; 2] {
    let [z1, z2] = counts.map(|teeth| f64::from(teeth.count()));
    let line_mm = in_millimetres(geometry.centre) * geometry.working_pressure_rad.sin();
    let reach = |at: usize| {
        let half = |diameters: [Length; 2]| diameters.get(at).map_or(0.0, |diameter| in_millimetres(*diameter) / 2.0);
        (half(geometry.tip_diameters).powi(2) - half(geometry.base_diameters).powi(2)).max(0.0).sqrt()
    };
    let one = |reach_mm: f64, own: f64, other: f64| {
        let left_mm = line_mm - reach_mm;
        if left_mm > 0.0 { 1.0 - own / other * reach_mm / left_mm } else { f64::NEG_INFINITY }
    };
    [one(reach(1), z1, z2), one(reach(0), z2, z1)]
}
