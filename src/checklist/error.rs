//! Why a range or a reading of a step cannot be read, each with what to do.

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

explain! { ChecklistError:
    Self::NoRange(text) => format!("“{}” is not a range", number::clip(text)),
        "behind want, type both ends, as 0.002 to 0.006 in, or at least 0.8 mm";
    Self::NoReading(text) => format!("“{}” is not a reading", number::clip(text)),
        "type a number with its unit, such as 0.004 in, 2 N·m or 40";
    Self::OfAnother { text, wanted } => format!("“{}” cannot be held against “{}”", number::clip(text), number::clip(wanted)),
        "read it in a unit of the same kind, or change what is wanted";
}
