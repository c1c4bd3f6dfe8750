//! Why a range or a reading of a step cannot be read, each with what to do.

use crate::problem::Explain;
use crate::units::number;

/// What is wrong with a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ChecklistError {
    /// What is wanted is no range: what was typed.
    NoRange(String),
    /// A reading is no number with a known unit: what was typed.
    NoReading(String),
    /// A reading is of something else than what is wanted.
    OfAnother {
        /// What was typed.
        text: String,
        /// What is wanted.
        wanted: String,
    },
}

impl Explain for ChecklistError {
    fn what(&self) -> String {
        match self {
            Self::NoRange(text) => format!("“{}” is not a range", number::clip(text)),
            Self::NoReading(text) => format!("“{}” is not a reading", number::clip(text)),
            Self::OfAnother { text, wanted } => format!("“{}” cannot be held against “{}”", number::clip(text), number::clip(wanted)),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoRange(_) => "behind want, type both ends, as 0.002 to 0.006 in, or at least 0.8 mm".into(),
            Self::NoReading(_) => "type a number with its unit, such as 0.004 in, 2 N·m or 40".into(),
            Self::OfAnother { .. } => "read it in a unit of the same kind, or change what is wanted".into(),
        }
    }
}
