//! Numbers of a wish: quantities with their unit, and bare numbers and percentages.

use crate::problem::Explain;
use crate::units::number::{clip, leading, show};
use crate::units::{Limits, Measured, Typed, UnitError};

/// Why a text is no number of a wish.
#[derive(Clone, Debug, PartialEq)]
pub struct NumberError {
    /// What was typed.
    pub text: String,
    /// The least that can be.
    pub least: f64,
    /// The greatest that can be.
    pub greatest: f64,
}

impl Explain for NumberError {
    fn what(&self) -> String {
        if self.text.trim().is_empty() {
            "no number is given".into()
        } else {
            format!("“{}” is not a number from {} to {}", clip(&self.text), show(self.least, 0), show(self.greatest, 0))
        }
    }

    fn what_to_do(&self) -> String {
        format!("type a number from {} to {}", show(self.least, 0), show(self.greatest, 0))
    }
}

/// A bare number or percentage between two values, times a factor.
pub(super) fn number(text: &str, least: f64, greatest: f64, factor: f64) -> Result<f64, NumberError> {
    let allowed = |value: &f64| *value >= least && *value <= greatest;
    let read = leading(text).filter(|(_, rest)| matches!(rest.trim(), "" | "%"));
    let value = read.and_then(|(readings, _)| readings.into_iter().flatten().find(allowed));
    value.map(|value| value * factor).ok_or_else(|| NumberError { text: text.trim().to_owned(), least, greatest })
}

/// A quantity as a plain number.
pub(super) fn quantity<Q: Measured>(typed: &Typed, limits: &Limits, take: impl Fn(Q) -> f64) -> Result<f64, UnitError> {
    typed.read::<Q>(limits).map(take)
}
