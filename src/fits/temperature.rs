//! How warm parts are at the bench and in a box at work.

use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

use crate::units::ThermodynamicTemperature;

/// The temperature that lengths are measured and stated at: 20 °C (ISO 1).
pub fn bench() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(20.0)
}

/// How warm a gearbox gets on the road: 90 °C (common practice, no published source).
pub fn working() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(90.0)
}

/// How many kelvin warmer one temperature is than another.
pub fn warmer_k(hot: ThermodynamicTemperature, cold: ThermodynamicTemperature) -> f64 {
    hot.get::<kelvin>() - cold.get::<kelvin>()
}
