//! One piece of a driveshaft: a uniform tube on a joint at each end.

use std::f64::consts::PI;

use uom::si::angular_velocity::radian_per_second;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, pascal};
use uom::si::torque::newton_meter;

use super::Ends;
use crate::units::{AngularVelocity, Length, Mass, MassDensity, Pressure, Torque};

/// What a tube is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Modulus of elasticity along the tube.
    pub modulus: Pressure,
    /// Mass for each volume of the wall.
    pub density: MassDensity,
}

/// A tube between two joint centres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shaft {
    length: Length,
    outside: Length,
    wall: Length,
    material: Material,
    ends: Ends,
}

/// Why there is no such tube.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShaftError {
    /// The wall is thicker than the tube's radius.
    WallThickerThanRadius,
    /// The bore is as wide as the tube.
    BoreTooWide,
    /// A length, a diameter or a wall of nothing.
    Nothing,
}

explain! { ShaftError:
    Self::WallThickerThanRadius => "the wall is thicker than the tube’s radius",
        "check both figures and their units: a wall is a few millimetres, or tenths of an inch; the inside is typed as bore 70 mm";
    Self::BoreTooWide => "the bore is as wide as the tube", "check outside and bore, and their units";
    Self::Nothing => "a shaft needs a length, a diameter and a wall", "type all three, each above nothing";
}

/// The wall of a tube that is told by its bore.
///
/// # Errors
/// Where the bore is as wide as the tube.
pub fn wall_of(outside: Length, bore: Length) -> Result<Length, ShaftError> {
    if bore < outside { Ok((outside - bore) / 2.0) } else { Err(ShaftError::BoreTooWide) }
}

impl Material {
    /// Steel: 206 gigapascals, 7,850 kg/m³ (handbook values, from memory).
    pub fn steel() -> Self {
        Self::of(206.0, 7_850.0)
    }

    /// Aluminium alloy of driveshaft tube: 70 gigapascals, 2,700 kg/m³ (handbook values, from memory).
    pub fn aluminium() -> Self {
        Self::of(70.0, 2_700.0)
    }

    /// A material by its modulus in gigapascals and its density in kilograms per cubic metre.
    pub fn of(modulus_gpa: f64, density_kg_m3: f64) -> Self {
        Self { modulus: Pressure::new::<gigapascal>(modulus_gpa), density: MassDensity::new::<kilogram_per_cubic_meter>(density_kg_m3) }
    }

    /// √(E/ρ), the speed of sound along the tube, in metres per second.
    fn root_m_per_s(self) -> f64 {
        (self.modulus.get::<pascal>() / self.density.get::<kilogram_per_cubic_meter>()).sqrt()
    }
}

impl Shaft {
    /// A tube of a length between joint centres, an outside diameter and a wall.
    ///
    /// # Errors
    /// Where one of them is nothing, or the wall is thicker than the radius.
    pub fn new(length: Length, outside: Length, wall: Length, material: Material) -> Result<Self, ShaftError> {
        if [length, outside, wall].into_iter().any(|each| each <= Length::default()) {
            return Err(ShaftError::Nothing);
        }
        if wall > outside / 2.0 {
            return Err(ShaftError::WallThickerThanRadius);
        }
        Ok(Self { length, outside, wall, material, ends: Ends::Joints })
    }

    /// The same tube with its ends held otherwise than by a joint each.
    #[must_use]
    pub fn with_ends(self, ends: Ends) -> Self {
        Self { ends, ..self }
    }

    fn bore(&self) -> Length {
        self.outside - self.wall * 2.0
    }

    /// √(D² + d²), in metres: four times the tube's radius of gyration.
    fn spread_m(&self) -> f64 {
        self.outside.get::<meter>().hypot(self.bore().get::<meter>())
    }

    /// The speed at which the tube whips: its first bending mode.
    ///
    /// Model: a uniform tube, ω = (k ÷ L)² × √(E·I ÷ (ρ·A)) with √(I ÷ A) = √(D² + d²) ÷ 4 and k = π where it is free to tilt at both
    /// joints; else see [`Ends::mode`]. Left out: the mass of yokes and slip joint, and a centre bearing that gives; both lower it, so this
    /// is an upper bound. Source: any textbook of vibrations (beams, first mode).
    ///
    /// ```
    /// use layshaft::driveline::{Material, Shaft};
    /// use layshaft::units::common::{in_rpm, millimetres};
    /// let shaft = Shaft::new(millimetres(1_500.0), millimetres(76.2), millimetres(2.1), Material::steel())?;
    /// assert_eq!(in_rpm(shaft.critical_speed()).round(), 5_624.0);
    /// # Ok::<(), layshaft::driveline::ShaftError>(())
    /// ```
    pub fn critical_speed(&self) -> AngularVelocity {
        let length = self.length.get::<meter>();
        AngularVelocity::new::<radian_per_second>(
            (self.ends.mode() / length).powi(2) * self.material.root_m_per_s() * self.spread_m() / 4.0,
        )
    }

    /// The same with all of the tube's mass lumped at mid-span, as some books work it: ω = √(c·E·I ÷ (L³·m)), with joints at both ends c = 48 and 30 % lower. For comparing
    /// with such a figure only.
    pub fn critical_speed_lumped(&self) -> AngularVelocity {
        let length = self.length.get::<meter>();
        AngularVelocity::new::<radian_per_second>(
            self.ends.stiffness().sqrt() / length.powi(2) * self.material.root_m_per_s() * self.spread_m() / 4.0,
        )
    }

    /// The longest tube of this diameter, wall and material that whips no sooner than `speed`.
    ///
    /// ```
    /// use layshaft::driveline::{Material, Shaft};
    /// use layshaft::units::{common::millimetres, show, unit};
    /// let shaft = Shaft::new(millimetres(1_500.0), millimetres(76.2), millimetres(2.1), Material::steel())?;
    /// // The critical speed falls with the square of the length: half as long for four times the speed.
    /// assert_eq!(show(&shaft.longest_for(shaft.critical_speed() * 4.0), &unit::MM, 0), "750 mm");
    /// # Ok::<(), layshaft::driveline::ShaftError>(())
    /// ```
    pub fn longest_for(&self, speed: AngularVelocity) -> Length {
        let share = self.critical_speed().get::<radian_per_second>() / speed.get::<radian_per_second>();
        self.length * share.sqrt()
    }

    /// The outside diameter, at this length, wall and material, that whips no sooner than `speed`.
    ///
    /// D² + (D − 2t)² = q² solved for D, where q is the √(D² + d²) wanted: D = t + √(q² ÷ 2 − t²). None where a solid bar already does.
    pub fn outside_for(&self, speed: AngularVelocity) -> Option<Length> {
        let wanted = self.spread_m() * speed.get::<radian_per_second>() / self.critical_speed().get::<radian_per_second>();
        let wall = self.wall.get::<meter>();
        let under = wanted * wanted / 2.0 - wall * wall;
        (under >= 0.0).then(|| Length::new::<meter>(wall + under.sqrt()))
    }

    /// The torque at which the tube's outside yields in torsion: T = τ·J ÷ r, J = π ÷ 32 × (D⁴ − d⁴).
    ///
    /// Source: any textbook of strength of materials; `shear_yield` is the material's.
    ///
    /// ```
    /// use layshaft::driveline::{Material, Shaft};
    /// use layshaft::units::{common::millimetres, show, unit};
    /// // A solid bar: τ·π·d³/16 = 200 × π × 20³ ÷ 16 = 314,159 N·mm
    /// let bar = Shaft::new(millimetres(500.0), millimetres(20.0), millimetres(10.0), Material::steel())?;
    /// assert_eq!(show(&bar.yield_torque(unit::N_MM2.of(200.0)), &unit::N_M, 1), "314.2 N·m");
    /// # Ok::<(), layshaft::driveline::ShaftError>(())
    /// ```
    pub fn yield_torque(&self, shear_yield: Pressure) -> Torque {
        let (outside, bore) = (self.outside.get::<meter>(), self.bore().get::<meter>());
        let polar = PI / 32.0 * (outside.powi(4) - bore.powi(4));
        Torque::new::<newton_meter>(shear_yield.get::<pascal>() * polar / (outside / 2.0))
    }

    /// The tube's own mass, without yokes.
    ///
    /// ```
    /// use layshaft::driveline::{Material, Shaft};
    /// use layshaft::units::{common::millimetres, show, unit};
    /// let shaft = Shaft::new(millimetres(1_500.0), millimetres(76.2), millimetres(2.1), Material::steel())?;
    /// // π × 2.1 × 74.1 × 1,500 mm³ = 733,300 mm³, × 7.85 mg
    /// assert_eq!(show(&shaft.mass(), &unit::KG, 2), "5.76 kg");
    /// # Ok::<(), layshaft::driveline::ShaftError>(())
    /// ```
    pub fn mass(&self) -> Mass {
        let (outside, bore) = (self.outside.get::<meter>(), self.bore().get::<meter>());
        let area = PI / 4.0 * (outside * outside - bore * bore);
        Mass::new::<kilogram>(area * self.length.get::<meter>() * self.material.density.get::<kilogram_per_cubic_meter>())
    }

    /// The unbalance of a tube bowed by a run-out, in gram millimetres.
    ///
    /// Model: `run_out` is what an indicator swings by at the middle over one turn, so the middle stands half of it off; a tube bowed as
    /// half a sine is off by 2 ÷ π of that on the mean: U = m × run-out ÷ π. Source: plain geometry; run-out taken for the offset is the
    /// usual slip.
    ///
    /// ```
    /// use layshaft::driveline::{Material, Shaft};
    /// use layshaft::units::common::millimetres;
    /// let shaft = Shaft::new(millimetres(1_500.0), millimetres(76.2), millimetres(2.1), Material::steel())?;
    /// // 5,756 g × 0.5 mm ÷ π
    /// assert_eq!(shaft.unbalance_of_run_out_g_mm(millimetres(0.5)).round(), 916.0);
    /// # Ok::<(), layshaft::driveline::ShaftError>(())
    /// ```
    pub fn unbalance_of_run_out_g_mm(&self, run_out: Length) -> f64 {
        self.mass().get::<kilogram>() * 1_000.0 * run_out.get::<uom::si::length::millimeter>() / PI
    }
}

/// The unbalance allowed for a mass turning at a speed by a balance grade: U = m·G ÷ ω, in gram millimetres.
///
/// `grade_mm_per_s` is the figure behind the G, the allowed speed of the centre of mass. Source: ISO 21940-11 (earlier ISO 1940-1);
/// G 16 for driveshafts, from memory.
///
/// ```
/// use layshaft::driveline::shaft::allowed_unbalance_g_mm;
/// use layshaft::units::{common::rpm, unit};
/// // G 16, 8 kg at 3,000 rpm: 8,000 g × 16 mm/s ÷ 314.159 rad/s
/// assert_eq!(allowed_unbalance_g_mm(unit::KG.of(8.0), rpm(3_000.0), 16.0).round(), 407.0);
/// ```
pub fn allowed_unbalance_g_mm(mass: Mass, speed: AngularVelocity, grade_mm_per_s: f64) -> f64 {
    mass.get::<kilogram>() * 1_000.0 * grade_mm_per_s / speed.get::<radian_per_second>()
}
