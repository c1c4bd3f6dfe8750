//! Lengths too small for the digits they are read with: said to be under the last one, never nothing.

use crate::questions::Source;
use crate::sheet::{Figure, Worked};
use crate::units::{Length, Measured, System};

/// As it is read: to a ten-thousandth of an inch, a thousandth of a mm.
pub fn decimals(source: Source<'_>) -> usize {
    if source.reader.units == System::Inch { 4 } else { 3 }
}

/// A length in words: `0.0004 in`, `under 0.0001 in`.
pub fn said(source: Source<'_>, length: Length) -> String {
    match under(source, length) {
        Some(under) => format!("{under} {}", Length::usual(source.reader.units).symbol),
        None => source.show(&length, decimals(source)),
    }
}

/// A length worked out from others, each as it is typed: begins with one of them.
pub fn worked(source: Source<'_>, length: Length) -> Worked {
    Worked::of(in_usual(source, length), decimals(source))
}

/// A length in the reader's unit.
pub fn in_usual(source: Source<'_>, length: Length) -> f64 {
    (Length::usual(source.reader.units).take)(&length)
}

/// A length as a figure.
pub fn figure(source: Source<'_>, key: &str, length: Length) -> Figure {
    let figure = source.quantity(key, &length, decimals(source));
    match under(source, length) {
        Some(under) => Figure { shown: under, ..figure },
        None => figure,
    }
}

/// `under 0.0001`, where something that is not nothing would be read as it.
fn under(source: Source<'_>, length: Length) -> Option<String> {
    let (unit, decimals) = (Length::usual(source.reader.units), decimals(source));
    let last = 10_f64.powi(-i32::try_from(decimals).unwrap_or(0));
    let value = unit.number(length).abs();
    // What is left of a subtraction of equals is nothing.
    (value < last / 2.0 && value > last * 1e-5).then(|| format!("under {last:.decimals$}"))
}
