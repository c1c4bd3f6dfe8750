//! The air of a test: what an engine measured in one air would give in the standard's.
//!
//! A correction is for naturally aspirated spark-ignition engines; each standard says between which factors it may be used.

use uom::si::{mass_density::kilogram_per_cubic_meter, pressure::hectopascal, thermodynamic_temperature::kelvin};

use crate::units::{Altitude, MassDensity, Pressure, ThermodynamicTemperature};

/// A test standard for engine power.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standard {
    /// SAE J1349 (1990 on): dry 990 mbar, 25 °C.
    SaeJ1349,
    /// ISO 1585, UN Regulation 85: dry 99 kPa, 25 °C.
    Iso1585,
    /// DIN 70020: 1013 mbar in all, 20 °C.
    Din70020,
}

impl Standard {
    /// What the standard is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::SaeJ1349 => "SAE J1349",
            Self::Iso1585 => "ISO 1585",
            Self::Din70020 => "DIN 70020",
        }
    }
}

/// The air of a test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Barometric pressure, water vapour included, at the place (not reduced to sea level).
    pub pressure: Pressure,
    /// Temperature of the air drawn in.
    pub temperature: ThermodynamicTemperature,
    /// Relative humidity, 0 to 1.
    pub humidity: f64,
}

/// A correction and whether the standard lets it be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// The standard it brings to.
    pub standard: Standard,
    /// Multiply measured power or torque by it to have the standard's; divide for the way back.
    pub factor: f64,
    /// The pressure used: dry, or in all for DIN 70020.
    pub pressure: Pressure,
    /// The factors between which the standard may be used, where it says so.
    pub allowed: Option<(f64, f64)>,
}

impl Correction {
    /// Whether the factor is inside what the standard allows (true where it sets no bounds).
    pub fn is_allowed(&self) -> bool {
        self.allowed.is_none_or(|(least, greatest)| self.factor >= least && self.factor <= greatest)
    }
}

impl Air {
    /// Pressure of the water vapour, relative humidity times the saturation pressure.
    ///
    /// Source: A. L. Buck, J. Appl. Meteorology 20 (1981), 6.1121·exp((18.678 − t/234.5)·t/(257.14 + t)) mbar with t in °C; from memory.
    pub fn vapour_pressure(&self) -> Pressure {
        let t = self.temperature.get::<kelvin>() - CELSIUS_ZERO_K;
        let saturated = 6.1121 * ((18.678 - t / 234.5) * t / (257.14 + t)).exp();
        Pressure::new::<hectopascal>(self.humidity.clamp(0.0, 1.0) * saturated)
    }

    /// Pressure of the dry air alone.
    pub fn dry_pressure(&self) -> Pressure {
        self.pressure - self.vapour_pressure()
    }
}

/// 0 °C on the absolute scale (K), exact.
const CELSIUS_ZERO_K: f64 = 273.15;

/// The factor that brings power measured in `air` to a standard; `None` where the air is no air (pressure or temperature not above zero).
///
/// Model (t in °C, T in K, p in mbar or kPa): J1349 `1.18·(990/p_dry)·√((t + 273)/298) − 0.18`; ISO 1585 `(99/p_dry)^1.2·(T/298)^0.6`;
/// DIN 70020 (1013/p)·√((273 + t)/293). The first two hold for factors of 0.93 to 1.07.
///
/// Source: the standards named; the ISO reference air as printed in EU 134/2014, Annex, App. 2.2 section 3, the rest from memory.
///
/// ```
/// use layshaft::motion::atmosphere::{Air, Standard, correction};
/// use layshaft::units::unit;
/// // Dry air at 950 mbar and the standard's own 25 °C: 1.18 × 990/950 − 0.18 = 1.0497.
/// let air = Air { pressure: unit::MBAR.of(950.0), temperature: unit::CELSIUS.of(25.0), humidity: 0.0 };
/// let factor = correction(Standard::SaeJ1349, &air).map(|correction| (10_000.0 * correction.factor).round());
/// assert_eq!(factor, Some(10_497.0));
/// ```
pub fn correction(standard: Standard, air: &Air) -> Option<Correction> {
    let t_celsius = air.temperature.get::<kelvin>() - CELSIUS_ZERO_K;
    let pressure = if standard == Standard::Din70020 { air.pressure } else { air.dry_pressure() };
    let mbar = pressure.get::<hectopascal>();
    // the standards put 0 °C at 273 K
    let t_kelvin = t_celsius + 273.0;
    if !(mbar > 0.0 && t_kelvin > 0.0) {
        return None;
    }
    let factor = match standard {
        Standard::SaeJ1349 => 1.18 * (990.0 / mbar) * (t_kelvin / 298.0).sqrt() - 0.18,
        Standard::Iso1585 => (990.0 / mbar).powf(1.2) * (t_kelvin / 298.0).powf(0.6),
        Standard::Din70020 => (1013.0 / mbar) * (t_kelvin / 293.0).sqrt(),
    };
    let allowed = (standard != Standard::Din70020).then_some((0.93, 1.07));
    (factor.is_finite() && factor > 0.0).then_some(Correction { standard, factor, pressure, allowed })
}

/// Density of the air at a height, as the standard atmosphere has it below 11 km.
///
/// Model: T = 288.15 K − 6.5 K/km·H, p = 101,325 Pa·(T/288.15 K)^5.2559, ρ = p/(287.053 J/(kg·K)·T), H the geopotential height.
///
/// Source: ISO 2533 (the ICAO standard atmosphere).
///
/// ```
/// use layshaft::motion::atmosphere::density_at;
/// use layshaft::units::Altitude;
/// // The table of the standard: 1.1117 kg/m³ at 1,000 m.
/// let thousandths = |metres| (1_000.0 * density_at(Altitude(metres)).value).round();
/// assert_eq!((thousandths(0.0), thousandths(1_000.0)), (1_225.0, 1_112.0));
/// ```
pub fn density_at(height: Altitude) -> MassDensity {
    const EARTH_M: f64 = 6_356_766.0;
    const GAS_J_PER_KG_K: f64 = 287.052_87;
    const LAPSE_K_PER_M: f64 = 0.0065;
    const AT_SEA: (f64, f64) = (101_325.0, 288.15);
    let geopotential = EARTH_M * height.0 / (EARTH_M + height.0);
    let (pressure_at_sea, kelvin_at_sea) = AT_SEA;
    let t = kelvin_at_sea - LAPSE_K_PER_M * geopotential;
    let p = pressure_at_sea * (t / kelvin_at_sea).powf(super::GRAVITY_M_PER_S2 / (GAS_J_PER_KG_K * LAPSE_K_PER_M));
    MassDensity::new::<kilogram_per_cubic_meter>(p / (GAS_J_PER_KG_K * t))
}

/// What is left of an engine's torque and power at a height, 1 at the sea: of one that draws its air in without a blower.
///
/// Model: 1.132·σ − 0.132, σ the density of the air over that at the sea; the friction it loses by itself does not grow less.
///
/// Source: R. F. Gagg and E. V. Farrar, Altitude performance of aircraft engines, SAE Transactions 29 (1934); from memory.
pub fn engine_share_at(height: Altitude) -> f64 {
    let thinner = (density_at(height) / density_at(Altitude(0.0))).value;
    1.132 * thinner - 0.132
}
