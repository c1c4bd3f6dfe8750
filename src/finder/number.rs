//! Bare numbers that are typed to the finder: within bounds, as a percentage, or whole.

use crate::problem::Explain;
use crate::units::limits::shown;
use crate::units::number::{clip, leading};

/// Why a text is no number of its kind.
#[derive(Clone, Debug, PartialEq)]
pub enum NumberError {
    /// No number, or one outside its bounds.
    Outside {
        /// What was typed.
        text: String,
        /// The least that can be.
        least: f64,
        /// The greatest that can be.
        greatest: f64,
    },
    /// A count with something behind its point: what was typed.
    NotWhole(String),
}

impl Explain for NumberError {
    fn what(&self) -> String {
        match self {
            Self::Outside { text, .. } if text.trim().is_empty() => "no number is given".into(),
            Self::Outside { text, least, greatest } => {
                format!("“{}” is not a number from {} to {}", clip(text), shown(*least), shown(*greatest))
            }
            Self::NotWhole(text) => format!("“{}” is not a whole number", clip(text)),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Outside { least, greatest, .. } => format!("type a number from {} to {}", shown(*least), shown(*greatest)),
            Self::NotWhole(_) => "type a whole number".into(),
        }
    }
}

/// Least and greatest.
pub type Bounds = (f64, f64);

/// A number with nothing behind it.
///
/// # Errors
/// When it is none, or outside the bounds.
pub fn bare(text: &str, bounds: Bounds) -> Result<f64, NumberError> {
    read(text, bounds, str::is_empty)
}

/// A number of percent, with or without its sign, as a share; the bounds are in percent.
///
/// # Errors
/// As [`bare`].
///
/// ```
/// use layshaft::finder::number::{NumberError, percent, whole};
/// assert_eq!((100.0 * percent("30 %", (0.0, 90.0))?).round(), 30.0);
/// assert_eq!(whole("5", (1.0, 8.0))?, 5);
/// assert!(whole("4.5", (1.0, 8.0)).is_err());
/// # Ok::<(), NumberError>(())
/// ```
pub fn percent(text: &str, bounds: Bounds) -> Result<f64, NumberError> {
    read(text, bounds, |rest| matches!(rest, "" | "%")).map(|value| value * 0.01)
}

/// A count; the bounds lie within 0 and 65,535.
///
/// # Errors
/// As [`bare`]; and when something stands behind its point.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "the number is whole, and its bounds fit")]
pub fn whole(text: &str, bounds: Bounds) -> Result<u16, NumberError> {
    let value = bare(text, bounds)?;
    if value.fract() == 0.0 { Ok(value as u16) } else { Err(NumberError::NotWhole(text.trim().to_owned())) }
}

fn read(text: &str, (least, greatest): Bounds, may_follow: impl Fn(&str) -> bool) -> Result<f64, NumberError> {
    let readings = leading(text).filter(|(_, rest)| may_follow(rest.trim())).map(|(readings, _)| readings);
    let value = readings.and_then(|readings| readings.into_iter().flatten().find(|value| *value >= least && *value <= greatest));
    value.ok_or_else(|| NumberError::Outside { text: text.trim().to_owned(), least, greatest })
}
