//! The speeds at which each rule tests a speedometer.

use super::Band;
use crate::units::{System, Unit, Velocity, unit};

/// The speeds a rule names for its test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tests {
    /// None that is known here.
    Unnamed,
    /// Those of UN R39, by the vehicle's greatest speed.
    LikeR39,
    /// The one true speed the rule speaks of.
    ItsOwn,
    /// True speeds in mph.
    TrueMph(&'static [f64]),
    /// Speeds shown on the dial, km/h.
    ShownKmh(&'static [f64]),
}

/// A speed at which a rule wants the dial tried.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TestSpeed {
    /// True or shown, as `is_shown` says.
    pub speed: Velocity,
    /// The unit the rule names it in.
    pub unit: &'static Unit<Velocity>,
    /// Whether the dial is brought to it; otherwise it is the true speed.
    pub is_shown: bool,
}

impl Band {
    /// The speeds it tests at, for a vehicle of a greatest speed; none where it names none, or where they hang on a greatest speed
    /// that is not known.
    ///
    /// UN R39 names speeds on the dial (Australian certification circular 18/03-3-1, interpretation 1, read).
    pub fn test_speeds(&self, greatest: Option<Velocity>, system: System) -> Vec<TestSpeed> {
        let of = |values: &[f64], unit: &'static Unit<Velocity>, is_shown: bool| {
            values.iter().map(|value| TestSpeed { speed: unit.of(*value), unit, is_shown }).collect()
        };
        match self.tests {
            Tests::Unnamed => Vec::new(),
            Tests::LikeR39 => greatest.map(|greatest| of(&speeds_of_r39(greatest), &unit::KM_H, true)).unwrap_or_default(),
            Tests::ItsOwn => {
                let (numbers, unit) = self.numbers(system);
                of(&[numbers.from], unit, false)
            }
            Tests::TrueMph(values) => of(values, &unit::MPH, false),
            Tests::ShownKmh(values) => of(values, &unit::KM_H, true),
        }
    }
}

/// The speeds UN R39 tests at, km/h, by the vehicle's greatest speed.
///
/// Source: paragraph 5.2.5, from memory; 40, 80 and 120 km/h also quoted from 75/443.
pub fn speeds_of_r39(greatest: Velocity) -> Vec<f64> {
    let km_h = unit::KM_H.number(greatest);
    let most = 0.8 * km_h;
    match km_h {
        v if v <= 45.0 => vec![most],
        v if v <= 100.0 => [Some(40.0), (most >= 55.0).then_some(most)].into_iter().flatten().collect(),
        v if v <= 150.0 => [Some(40.0), Some(80.0), (most >= 100.0).then_some(most)].into_iter().flatten().collect(),
        _ => vec![40.0, 80.0, 120.0],
    }
}
