//! A gear as it is cut: count, cut and profile shift, and the circles, angles and thicknesses that follow from them.

use std::f64::consts::PI;

use crate::gearing::Teeth;
use crate::gearing::geometry::{Cut, involute};
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Angle, Length, unit};

/// One gear: how many teeth, what cut them, and how far the tool stood off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutGear {
    /// z.
    pub teeth: Teeth,
    /// What cut it.
    pub cut: Cut,
    /// x, the profile shift in normal modules.
    pub shift: f64,
}

impl CutGear {
    /// The same gear with another profile shift.
    #[must_use]
    pub fn with_shift(self, shift: f64) -> Self {
        Self { shift, ..self }
    }

    /// z as a number.
    pub fn count(&self) -> f64 {
        f64::from(self.teeth.count())
    }

    /// mₙ in mm.
    pub(super) fn module_mm(&self) -> f64 {
        in_millimetres(self.cut.normal_module())
    }

    /// d in mm, d = mₙ z / cos β.
    pub(super) fn reference_mm(&self) -> f64 {
        in_millimetres(self.cut.reference_diameter(self.teeth))
    }

    /// `d_b` in mm, `d_b` = d cos αₜ.
    pub(super) fn base_mm(&self) -> f64 {
        self.reference_mm() * self.cut.transverse_pressure_rad().cos()
    }

    /// d, the reference or pitch diameter.
    pub fn reference_diameter(&self) -> Length {
        millimetres(self.reference_mm())
    }

    /// `d_b`, the base diameter.
    pub fn base_diameter(&self) -> Length {
        millimetres(self.base_mm())
    }

    /// `d_a` = d + 2 mₙ (h* + x), with tips of full height.
    pub fn tip_diameter(&self) -> Length {
        millimetres(self.reference_mm() + 2.0 * self.module_mm() * (self.cut.addendum() + self.shift))
    }

    /// `d_f` = d − 2 mₙ (`h_f`* − x).
    pub fn root_diameter(&self) -> Length {
        millimetres(self.reference_mm() - 2.0 * self.module_mm() * (self.cut.dedendum() - self.shift))
    }

    /// The profile shift that a tip diameter shows, where the tips have their full height; the inverse of [`Self::tip_diameter`].
    pub fn shift_of_tip(&self, tip: Length) -> f64 {
        (in_millimetres(tip) - self.reference_mm()) / (2.0 * self.module_mm()) - self.cut.addendum()
    }

    /// The profile shift that a root diameter shows, where the tool has the dedendum of the cut; the inverse of [`Self::root_diameter`].
    pub fn shift_of_root(&self, root: Length) -> f64 {
        (in_millimetres(root) - self.reference_mm()) / (2.0 * self.module_mm()) + self.cut.dedendum()
    }

    /// The dedendum in modules that a root diameter shows, at this profile shift.
    pub fn dedendum_of_root(&self, root: Length) -> f64 {
        self.shift + (self.reference_mm() - in_millimetres(root)) / (2.0 * self.module_mm())
    }

    /// `β_b`, sin `β_b` = sin β cos αₙ, in rad.
    ///
    /// Not atan(tan β cos αₙ), which is found on a widely copied sheet: the tangent goes with cos αₜ.
    pub fn base_helix_rad(&self) -> f64 {
        (self.cut.helix_rad().sin() * self.cut.pressure_rad().cos()).asin()
    }

    /// The helix on another circle of the gear, tan β = tan β₀ · diameter / d.
    pub fn helix_at(&self, diameter: Length) -> Angle {
        let tangent = self.cut.helix_rad().tan() * in_millimetres(diameter) / self.reference_mm();
        unit::RADIAN.of(tangent.atan())
    }

    /// How far a tooth runs along the shaft for one turn, L = π d / tan β; none for straight teeth.
    pub fn lead(&self) -> Option<Length> {
        let tangent = self.cut.helix_rad().tan();
        (tangent > 0.0).then(|| millimetres(PI * self.reference_mm() / tangent))
    }

    /// `p_bn` = π mₙ cos αₙ, the normal base pitch: what a span grows by with each tooth more, whatever shift and wear.
    pub fn base_pitch(&self) -> Length {
        millimetres(PI * self.module_mm() * self.cut.pressure_rad().cos())
    }

    /// sₙ = mₙ (π/2 + 2 x tan αₙ), the normal tooth thickness on the reference circle, without backlash.
    pub fn normal_thickness(&self) -> Length {
        millimetres(self.module_mm() * (PI / 2.0 + 2.0 * self.shift * self.cut.pressure_rad().tan()))
    }

    /// Half the angle that a tooth takes up on a circle, in rad: (π/2 + 2 x tan αₙ)/z + inv αₜ − inv α. `None` inside the base circle; below
    /// nothing beyond the circle where the flanks meet.
    pub fn half_tooth_rad(&self, diameter: Length) -> Option<f64> {
        let cosine = self.base_mm() / in_millimetres(diameter);
        // The base circle itself may come out a rounding inside.
        if !(cosine > 0.0 && cosine <= 1.0 + 1e-12) {
            return None;
        }
        let cosine = cosine.min(1.0);
        let pressure_rad = self.cut.transverse_pressure_rad();
        let at_reference = (PI / 2.0 + 2.0 * self.shift * self.cut.pressure_rad().tan()) / self.count();
        Some(at_reference + involute(pressure_rad) - involute(cosine.acos()))
    }

    /// How thick the tooth is on a circle, across the shaft; the tip land for the tip diameter. Source: ISO 21771:2007.
    pub fn thickness_at(&self, diameter: Length) -> Option<Length> {
        self.half_tooth_rad(diameter).map(|half| diameter * half)
    }

    /// The chordal thickness on the reference circle and the height it is measured at, across the teeth.
    ///
    /// `z_v` = z / cos³ β, θ = 90°/`z_v` + 360° x tan α / (π `z_v`), s = `z_v` mₙ sin θ, h = ½ `z_v` mₙ (1 − cos θ) + mₙ (h* + x).
    /// Source: Elements of Metric Gear Technology, section 10.
    pub fn chord(&self) -> [Length; 2] {
        let virtual_teeth = self.cut.virtual_teeth(self.count());
        let angle = PI / (2.0 * virtual_teeth) + 2.0 * self.shift * self.cut.pressure_rad().tan() / virtual_teeth;
        let across = virtual_teeth * self.module_mm();
        let addendum = self.module_mm() * (self.cut.addendum() + self.shift);
        [millimetres(across * angle.sin()), millimetres(across / 2.0 * (1.0 - angle.cos()) + addendum)]
    }
}
