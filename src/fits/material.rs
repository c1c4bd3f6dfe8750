//! What cases, shafts and bushes are made of, and how much they grow with heat.

use crate::units::Length;

worded! {
    /// A material of a gearbox.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Material {
        /// Shafts, gears, bearings, shims.
        Steel => "steel";
        /// Grey iron.
        CastIron => "cast iron";
        /// Cast aluminium, sand or die.
        Aluminium => "aluminium";
        /// Die-cast magnesium.
        Magnesium => "magnesium";
        /// Bushes.
        Bronze => "bronze";
        /// Bushes and rings.
        Brass => "brass";
    }
    /// In words.
    pub fn word;
}

impl Material {
    /// How much a length of it grows with each kelvin, in millionths of itself.
    ///
    /// Steel 11.7 and grey iron 11.4: Callister, *Materials Science and Engineering*, table B.6. Bronze 17.6, brass 20.2, magnesium 25.2:
    /// *Elements of Metric Gear Technology*, table 18-10, which gives cast aluminium 20.5 to 22.9; 22 is taken. Sources differ by up to a
    /// tenth.
    pub fn growth_ppm_per_k(self) -> f64 {
        match self {
            Self::Steel => 11.7,
            Self::CastIron => 11.4,
            Self::Aluminium => 22.0,
            Self::Magnesium => 25.2,
            Self::Bronze => 17.6,
            Self::Brass => 20.2,
        }
    }

    /// Where that comes from.
    pub fn source(self) -> &'static str {
        match self {
            Self::Steel | Self::CastIron => "Callister, table B.6; sources differ by up to a tenth",
            Self::Aluminium => "between the 20.5 to 22.9 of cast alloys, Elements of Metric Gear Technology, table 18-10",
            Self::Magnesium | Self::Bronze | Self::Brass => {
                "Elements of Metric Gear Technology, table 18-10; alloys differ by up to a tenth"
            }
        }
    }

    /// Its modulus of elasticity in N/mm² and its Poisson's ratio.
    ///
    /// Source: Shigley, *Mechanical Engineering Design*, table A-5 (from memory).
    pub fn elastic(self) -> (f64, f64) {
        match self {
            Self::Steel => (207_000.0, 0.292),
            Self::CastIron => (100_000.0, 0.211),
            Self::Aluminium => (71_700.0, 0.333),
            Self::Magnesium => (44_800.0, 0.350),
            Self::Bronze => (111_000.0, 0.349),
            Self::Brass => (106_000.0, 0.324),
        }
    }

    /// How much a length of it grows when it is so many kelvin warmer: ΔL = L × α × ΔT.
    pub fn growth(self, length: Length, warmer_k: f64) -> Length {
        length * (self.growth_ppm_per_k() * 1e-6 * warmer_k)
    }
}
