//! Lengths too small for the digits they are read with: said to be under the last one, never nothing.

use crate::sheet::Figure;
use crate::units::{Length, Unit, show};

/// A length in words: `0.0004 in`, `under 0.0001 in`.
pub fn said(length: Length, unit: &Unit<Length>, decimals: usize) -> String {
    match under(length, unit, decimals) {
        Some(under) => format!("{under} {}", unit.symbol),
        None => show(&length, unit, decimals),
    }
}

/// A length as a figure.
pub fn figure(key: &str, length: Length, unit: &Unit<Length>, decimals: usize) -> Figure {
    let figure = Figure::quantity(key, &length, unit, decimals);
    match under(length, unit, decimals) {
        Some(under) => Figure { shown: under, ..figure },
        None => figure,
    }
}

/// `under 0.0001`, where something that is not nothing would be read as it.
fn under(length: Length, unit: &Unit<Length>, decimals: usize) -> Option<String> {
    let last = 10_f64.powi(-i32::try_from(decimals).unwrap_or(0));
    let value = unit.number(length).abs();
    // What is left of a subtraction of equals is nothing.
    (value < last / 2.0 && value > last * 1e-5).then(|| format!("under {last:.decimals$}"))
}
