//! How well the root of a tooth bears bending: the Lewis form factor, from the tooth as the rack leaves it.
//!
//! Y = 2 x² / (3 l mₙ) at the weakest place, x half the thickness there and l the distance below the place where the force at the tip crosses
//! the middle of the tooth: the parabola of equal strength touches the root there. The force acts at the tip, on one tooth alone. Tables give
//! Y for 20° and full depth; from the outline it follows for every rack and profile shift. Source: Shigley, Mechanical Engineering Design,
//! 9th ed., section 14-1.

use super::CutGear;
use super::outline::HalfTooth;
use crate::gearing::Teeth;
use crate::gearing::geometry::Cut;
use crate::units::Angle;
use crate::units::common::{in_millimetres, millimetres};

/// Y of a spur gear whose rack has that tip radius, in modules. `None` for a tooth that has no weakest place, which no gear of a gearbox is.
pub fn form_factor(gear: &CutGear, tip_radius: f64) -> Option<f64> {
    let tip = gear.tip_diameter();
    let half = HalfTooth::of(gear, tip_radius, tip);
    let (tip_mm, _) = *half.points.last()?;
    let half_tip = gear.half_tooth_rad(millimetres(2.0 * tip_mm))?.max(0.0);
    let pressure = (gear.base_mm() / (2.0 * tip_mm)).acos();
    // The force is square to the flank, so its line touches the base circle.
    let crossing_mm = gear.base_mm() / 2.0 / (pressure - half_tip).cos();
    // The root is in the lower half of the tooth. In the upper, a pointed tip has no thickness under the load, and the formula no end.
    let middle_mm = f64::midpoint(in_millimetres(gear.root_diameter()) / 2.0, tip_mm);
    let shares = half.points.iter().filter(|(radius_mm, _)| *radius_mm <= middle_mm).filter_map(|(radius_mm, angle)| {
        let below_mm = crossing_mm - radius_mm * angle.cos();
        (below_mm > 0.0).then(|| 2.0 * (radius_mm * angle.sin()).powi(2) / (3.0 * below_mm * gear.module_mm()))
    });
    shares.filter(|share| *share > 1e-9).reduce(f64::min).filter(|share| share.is_finite())
}

/// Y of a helical gear by the spur gear that has its tooth form, z / cos³ β teeth; between two whole counts in proportion.
pub fn form_factor_of_helical(gear: &CutGear, tip_radius: f64) -> Option<f64> {
    let straight = Cut::new(gear.cut.normal_module(), Angle::default(), gear.cut.pressure()).ok()?;
    let straight = straight.with_heights(gear.cut.addendum(), gear.cut.dedendum());
    let virtual_teeth = gear.cut.virtual_teeth(gear.count()).clamp(f64::from(Teeth::LEAST), f64::from(Teeth::GREATEST));
    let whole = (Teeth::LEAST..=Teeth::GREATEST).rev().find(|teeth| f64::from(*teeth) <= virtual_teeth)?;
    let of = |teeth: u16| form_factor(&CutGear { teeth: Teeth::new(teeth)?, cut: straight, shift: gear.shift }, tip_radius);
    let low = of(whole)?;
    let high = of(whole.saturating_add(1)).unwrap_or(low);
    Some(low + (virtual_teeth - f64::from(whole)) * (high - low))
}
