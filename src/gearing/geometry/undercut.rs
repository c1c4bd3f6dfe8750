//! The fewest teeth that can be cut, and run, without the tips digging in.

use super::Cut;

/// The fewest teeth a rack cutter leaves whole without profile shift: 2 h* cos β / sin² αₜ. Round up.
///
/// Source: Shigley, Mechanical Engineering Design, section 13-7 (from memory); Bevan, The Theory of Machines, example 4, p. 334.
///
/// ```
/// use layshaft::gearing::geometry::cut::{Cut, CutError};
/// use layshaft::gearing::geometry::undercut::fewest_teeth_for_a_rack;
/// use layshaft::units::unit;
/// let straight = Cut::new(unit::MM.of(2.5), unit::DEGREE.of(0.0), unit::DEGREE.of(20.0))?;
/// // 2 ÷ 0.342020² = 17.097
/// assert_eq!(fewest_teeth_for_a_rack(&straight).ceil(), 18.0);
/// # Ok::<(), CutError>(())
/// ```
pub fn fewest_teeth_for_a_rack(cut: &Cut) -> f64 {
    2.0 * cut.addendum() * cut.helix_rad().cos() / cut.transverse_pressure_rad().sin().powi(2)
}

/// The least profile shift, in normal modules, at which a rack cutter does not undercut that many teeth.
///
/// x = h* − z sin² αₜ / (2 cos β); negative where there is room to spare. Source: ISO 21771:2007 symbols; from the geometry of the rack.
pub fn least_shift(cut: &Cut, teeth: super::super::Teeth) -> f64 {
    least_shift_of_tool(cut, teeth, cut.addendum())
}

/// The same for a tool whose straight flanks go so deep below its reference line, in normal modules: deeper than the mate's addendum where its
/// tip is little rounded.
pub fn least_shift_of_tool(cut: &Cut, teeth: super::super::Teeth, straight_depth: f64) -> f64 {
    straight_depth - f64::from(teeth.count()) * cut.transverse_pressure_rad().sin().powi(2) / (2.0 * cut.helix_rad().cos())
}
