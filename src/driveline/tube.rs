//! What shafts are made of, and how near their critical speed they may turn.

use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};

use super::Material;
use crate::units::{Pressure, number};

worded! {
    /// The materials of driveshaft tube.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum TubeMaterial {
        /// Drawn or welded steel tube.
        Steel => "steel";
        /// Heat-treated aluminium alloy.
        Aluminium => "aluminium";
        /// Carbon fibre along the tube; every maker's laminate is another.
        CarbonFibre => "carbon fibre";
    }
    /// In words.
    pub fn word;
}

impl TubeMaterial {
    /// Its modulus along the tube and its density.
    ///
    /// Steel 206 gigapascals and 7,850 kg/m³, aluminium 70 and 2,700, carbon fibre 120 and 1,600 (handbook values, from memory; a
    /// laminate's own sheet holds before the last).
    pub fn material(self) -> Material {
        match self {
            Self::Steel => Material::steel(),
            Self::Aluminium => Material::aluminium(),
            Self::CarbonFibre => Material::of(120.0, 1_600.0),
        }
    }

    /// The shear stress at which a usual grade yields; none for a laminate, whose maker states the torque.
    ///
    /// 0.577 of the tensile yield (distortion energy, any textbook of machine design): 350 megapascals for drawn steel tube, 275
    /// for a heat-treated aluminium alloy, both from memory.
    ///
    /// ```
    /// use layshaft::driveline::TubeMaterial;
    /// use layshaft::units::{show, unit};
    /// // 0.577 × 350
    /// let steel = TubeMaterial::Steel.shear_yield().map(|stress| show(&stress, &unit::N_MM2, 2));
    /// assert_eq!(steel.as_deref(), Some("201.95 N/mm²"));
    /// ```
    pub fn shear_yield(self) -> Option<Pressure> {
        const OF_TENSILE: f64 = 0.577;
        let tensile = match self {
            Self::Steel => 350.0,
            Self::Aluminium => 275.0,
            Self::CarbonFibre => return None,
        };
        Some(Pressure::new::<megapascal>(OF_TENSILE * tensile))
    }
}

impl Material {
    /// Its modulus in gigapascals and its density in kg/m³, as they are read: `206 GPa, 7,850 kg/m³`.
    pub fn figures(self) -> (f64, f64) {
        (self.modulus.get::<gigapascal>(), self.density.get::<kilogram_per_cubic_meter>())
    }
}

/// How the two ends of a shaft are held against tilting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// By a joint each: free to tilt.
    Joints,
    /// One is held stiffly, as in a torque tube; the other by a joint.
    OneHeld,
    /// Both are held stiffly.
    BothHeld,
}

impl Ends {
    /// The k of the first bending mode, ω = (k ÷ L)² × √(E·I ÷ (ρ·A)): π, 3.9266, 4.7300. Source: any textbook of vibrations.
    pub fn mode(self) -> f64 {
        match self {
            Self::Joints => std::f64::consts::PI,
            Self::OneHeld => 3.926_602,
            Self::BothHeld => 4.730_041,
        }
    }

    /// The stiffness against a load at mid-span in E·I ÷ L³: 48, 768 ÷ 7, 192. Source: any textbook of strength of materials.
    pub fn stiffness(self) -> f64 {
        match self {
            Self::Joints => 48.0,
            Self::OneHeld => 768.0 / 7.0,
            Self::BothHeld => 192.0,
        }
    }
}

/// Why a text is no material: what was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnMaterialError(String);

explain! { OwnMaterialError:
    Self(text) => format!("“{}” is no modulus and density of a tube", number::clip(text)),
        "type both with ; between, 5 to 500 GPa and 500 to 20,000 kg/m³, such as 120; 1,600";
}

/// Reads a material of one’s own: its modulus along the tube in gigapascals, and its density in kg/m³: `120; 1,600`.
///
/// # Errors
/// Where it is not both, or one is outside 5 to 500 gigapascals or 500 to 20,000 kg/m³.
pub fn read_own_material(text: &str) -> Result<Material, OwnMaterialError> {
    let one = |text: &str, units: &[&str], (least, most): (f64, f64)| {
        let (readings, rest) = number::leading(text)?;
        let is_known = rest.trim().is_empty() || units.contains(&rest.trim().to_lowercase().as_str());
        readings.into_iter().flatten().find(|value| is_known && (least..=most).contains(value))
    };
    let both = || {
        let (modulus, density) = text.split_once(';')?;
        Some(Material::of(one(modulus, &["gpa"], (5.0, 500.0))?, one(density, &["kg/m³", "kg/m3"], (500.0, 20_000.0))?))
    };
    both().ok_or_else(|| OwnMaterialError(text.trim().to_owned()))
}

/// How near its critical speed a shaft may turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Margin {
    /// 70 %: what a maker of shafts prints for cars.
    Cars,
    /// 65 %: the same maker for machines that run all day.
    Industrial,
    /// 75 %: a common figure of driveline shops.
    Shops,
    /// 50 %: clear of the two pushes that a joint gives at every turn.
    ClearOfJoints,
}

impl Margin {
    /// As a share of the critical speed.
    pub fn share(self) -> f64 {
        match self {
            Self::Cars => 0.7,
            Self::Industrial => 0.65,
            Self::Shops => 0.75,
            Self::ClearOfJoints => 0.5,
        }
    }

    /// Where it comes from.
    pub fn source(self) -> &'static str {
        match self {
            Self::Cars => "a maker’s technical sheet, for cars",
            Self::Industrial => "a maker’s technical sheet, for machines",
            Self::Shops => "common practice of driveline shops, no published source",
            Self::ClearOfJoints => "below the speed at which the joints’ two pushes a turn meet the first bending of the tube",
        }
    }
}
