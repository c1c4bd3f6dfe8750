//! Why a text is no tyre.

use crate::problem::Explain;
use crate::units::{UnitError, number};

/// The forms in which a measured tyre can be typed, for the sentence that helps.
pub const MEASURED_FORMS: &str = "“rolls 1,878 mm”, “circumference 74 in”, “diameter 616 mm”, “loaded radius 11.4 in”, “856 turns/mile”, “532 rev/km” or “10 turns 18.79 m”";

/// Why a text is no tyre.
#[derive(Clone, Debug, PartialEq)]
pub enum TyreError {
    /// Nothing was typed.
    Blank,
    /// A size was begun but a part of it was not understood.
    NotUnderstood {
        /// What was typed.
        text: String,
        /// The part, in capitals; empty where the text ends too early.
        part: String,
        /// Examples of the forms that came nearest.
        nearest: Vec<&'static str>,
    },
    /// A letter size of which no dimensions are known: as it was understood.
    UnknownLetter(String),
    /// The rim is as large as the tyre, or larger: as it was understood.
    RimTooLarge(String),
    /// A length without a word that says what was measured: what was typed.
    WhichLength(String),
    /// A count of turns without the roll-out distance, or the other way about: what was typed.
    TurnsOfWhat(String),
    /// No measurement at all: what was typed.
    NotMeasured(String),
    /// The number of a measurement or its unit.
    Number(UnitError),
}

impl Explain for TyreError {
    fn what(&self) -> String {
        match self {
            Self::Blank => "no tyre is given".into(),
            Self::NotUnderstood { text, part, .. } if part.is_empty() => {
                format!("“{}” ends before the size is complete", number::clip(text))
            }
            Self::NotUnderstood { text, part, .. } if part.eq_ignore_ascii_case(text.trim()) => {
                format!("“{}” is not a tyre size", number::clip(text))
            }
            Self::NotUnderstood { text, part, .. } => {
                format!("in “{}” the part “{}” was not understood", number::clip(text), number::clip(part))
            }
            Self::UnknownLetter(size) => format!("the dimensions of {size} are not known here: a letter size names a load, not a width"),
            Self::RimTooLarge(size) => format!("{size} would be no larger than its rim"),
            Self::WhichLength(text) => format!("“{}” does not say what was measured", number::clip(text)),
            Self::TurnsOfWhat(text) => format!("“{}” does not say both how many turns and how far", number::clip(text)),
            Self::NotMeasured(text) => format!("“{}” is no measurement of a tyre", number::clip(text)),
            Self::Number(error) => error.what(),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Blank => format!("type the size as moulded, such as 185/70R14 or 6.00-16, or a measurement such as {MEASURED_FORMS}"),
            Self::NotUnderstood { nearest, .. } if nearest.len() > 3 => {
                format!("type the size as moulded, such as 185/70R14, 165R13, E78-14 or 6.00-16, or a measurement such as {MEASURED_FORMS}")
            }
            Self::NotUnderstood { nearest, .. } => format!("type it like {}", nearest.join(" or ")),
            Self::UnknownLetter(_) => format!("measure the tyre and type {MEASURED_FORMS}"),
            Self::RimTooLarge(_) => "check the diameter and the rim".into(),
            Self::WhichLength(_) | Self::NotMeasured(_) => format!("say what it is: {MEASURED_FORMS}"),
            Self::TurnsOfWhat(_) => "type it like “10 turns 18.79 m”, “856 turns/mile” or “532 rev/km”".into(),
            Self::Number(error) => error.what_to_do(),
        }
    }
}
