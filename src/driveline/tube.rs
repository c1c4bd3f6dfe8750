//! What shafts are made of, and how near their critical speed they may turn.

use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};

use super::Material;
use crate::units::Pressure;

/// The materials of driveshaft tube.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TubeMaterial {
    /// Drawn or welded steel tube.
    Steel,
    /// Heat-treated aluminium alloy.
    Aluminium,
    /// Carbon fibre along the tube; every maker's laminate is another.
    CarbonFibre,
}

impl TubeMaterial {
    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::Aluminium => "aluminium",
            Self::CarbonFibre => "carbon fibre",
        }
    }

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

    /// Its figures as they are read: `206 GPa, 7,850 kg/m³`.
    pub fn figures(self) -> (f64, f64) {
        let Material { modulus, density } = self.material();
        (modulus.get::<gigapascal>(), density.get::<kilogram_per_cubic_meter>())
    }
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
