//! A shaft in its bore: how it fits at the bench and hot, what makes it fit, and how warm a press fit must be to go together.

use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;

use super::iso286::{Code, Field};
use super::readings::Readings;
use super::shims::PlayRange;
use super::{CodeError, Material};
use crate::units::common::millimetres;
use crate::units::{Length, ThermodynamicTemperature};

/// The room in mm, beyond the interference, with which a warm part drops over a cold one (common practice, no published source).
pub const ROOM_MM: f64 = 0.05;

/// What of a fit is wanted: room between bore and shaft, below nothing where the shaft is the larger.
#[derive(Clone, Debug, PartialEq)]
pub enum Wanted {
    /// By a code of ISO 286.
    Code(Code),
    /// By a range of clearance.
    Range(PlayRange),
}

impl Wanted {
    /// The clearance wanted at a nominal size: by a code the least hole less the largest shaft, to the largest hole less the least shaft.
    ///
    /// # Errors
    /// When the standard has no such field at the size, or the size is beyond the tables here.
    pub fn range(&self, nominal: Length) -> Result<PlayRange, CodeError> {
        match self {
            Self::Range(range) => Ok(*range),
            Self::Code(code) => {
                let [hole, shaft] = code.fields(nominal)?;
                Ok(PlayRange { least: hole.lower - shaft.upper, greatest: hole.upper - shaft.lower })
            }
        }
    }

    /// The deviations that hole and shaft may have, where a code says them.
    pub fn fields(&self, nominal: Length) -> Option<[Field; 2]> {
        if let Self::Code(code) = self { code.fields(nominal).ok() } else { None }
    }
}

/// A measured bore and shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Seat {
    /// The bore.
    pub bore: Readings,
    /// The shaft.
    pub shaft: Readings,
}

/// How a fit stands against what is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stands {
    /// Inside.
    Inside,
    /// Tighter, by so much.
    TooTight(Length),
    /// Looser, by so much.
    TooLoose(Length),
}

impl Seat {
    /// The room between the two by their means, below nothing where the shaft is the larger.
    pub fn clearance(&self) -> Length {
        self.bore.mean() - self.shaft.mean()
    }

    /// The least and the greatest room of any of the readings.
    pub fn clearances(&self) -> [Length; 2] {
        [self.bore.least() - self.shaft.greatest(), self.bore.greatest() - self.shaft.least()]
    }

    /// The room when both are so many kelvin warmer: c + ΔT × (α of the bore × bore − α of the shaft × shaft).
    ///
    /// Model: free growth, neither holds the other back. Source: any textbook of machine elements (linear growth).
    pub fn clearance_warm(&self, [bore, shaft]: [Material; 2], warmer_k: f64) -> Length {
        self.clearance() + bore.growth(self.bore.mean(), warmer_k) - shaft.growth(self.shaft.mean(), warmer_k)
    }

    /// How the fit stands against a range of clearance.
    pub fn stands(&self, wanted: PlayRange) -> Stands {
        let clearance = self.clearance();
        if wanted.holds(clearance) {
            Stands::Inside
        } else if clearance < wanted.least {
            Stands::TooTight(wanted.least - clearance)
        } else {
            Stands::TooLoose(clearance - wanted.greatest)
        }
    }

    /// The bores that this shaft wants.
    pub fn bores_for(&self, wanted: PlayRange) -> [Length; 2] {
        [self.shaft.mean() + wanted.least, self.shaft.mean() + wanted.greatest]
    }

    /// The shafts that this bore wants.
    pub fn shafts_for(&self, wanted: PlayRange) -> [Length; 2] {
        [self.bore.mean() - wanted.greatest, self.bore.mean() - wanted.least]
    }

    /// How warm the outer part must be for the shaft to drop in, the shaft left at the bench: T + (interference + room to assemble) ÷
    /// (α × bore). None where there is no interference.
    ///
    /// Source: any textbook of machine elements (shrink fit).
    pub fn oven(&self, bore: Material, bench: ThermodynamicTemperature) -> Option<ThermodynamicTemperature> {
        let by = to_open_k(self.to_open()?, self.bore.mean(), bore);
        Some(ThermodynamicTemperature::new::<kelvin>(bench.get::<kelvin>() + by))
    }

    /// How cold the shaft must be to drop in, the outer part left at the bench. None where there is no interference, or no cold is enough.
    pub fn chill(&self, shaft: Material, bench: ThermodynamicTemperature) -> Option<ThermodynamicTemperature> {
        let cold = bench.get::<kelvin>() - to_open_k(self.to_open()?, self.shaft.mean(), shaft);
        (cold > 0.0).then(|| ThermodynamicTemperature::new::<kelvin>(cold))
    }

    /// What must be opened: the greatest interference of any of the readings, and room to assemble.
    pub fn to_open(&self) -> Option<Length> {
        let [least, _] = self.clearances();
        (least < Length::default()).then(|| millimetres(ROOM_MM) - least)
    }
}

/// By how many kelvin a diameter must change its temperature to change by a length.
fn to_open_k(length: Length, diameter: Length, material: Material) -> f64 {
    (length / diameter).get::<ratio>() / (material.growth_ppm_per_k() * 1e-6)
}
