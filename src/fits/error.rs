//! Why a line of a stack, a kit or a range cannot be read, each with what to do.

use crate::problem::Explain;
use crate::units::{UnitError, number};

/// What is wrong with a text about fits, play and shims.
#[derive(Clone, Debug, PartialEq)]
pub enum FitTextError {
    /// A line of a stack has no length.
    NoLength {
        /// The line.
        line: String,
    },
    /// A line of a stack has two lengths, each with a unit.
    TwoLengths {
        /// The line.
        line: String,
    },
    /// A quantity of a line cannot be read or is outside what it can be.
    Quantity {
        /// The line.
        line: String,
        /// Why.
        why: UnitError,
    },
    /// A stack of parts that all take room up.
    NothingMakesRoom,
    /// A range of play that has no two ends.
    NoRange {
        /// What was typed.
        text: String,
    },
    /// Something in a list of shims that is no thickness.
    NoShim {
        /// What it is.
        word: String,
    },
    /// More sizes of shims than are looked at.
    TooManySizes {
        /// How many are.
        most: usize,
    },
}

impl Explain for FitTextError {
    fn what(&self) -> String {
        match self {
            Self::NoLength { line } => format!("“{}” has no length", number::clip(line)),
            Self::TwoLengths { line } => format!("“{}” has two lengths", number::clip(line)),
            Self::Quantity { line, why } => {
                let what = why.what();
                // A line that is nothing but the figure need not be said twice.
                if what.contains(&number::clip(line)) { what } else { format!("in “{}”: {what}", number::clip(line)) }
            }
            Self::NothingMakesRoom => "every part is taken off and nothing makes room".into(),
            Self::NoRange { text } => format!("“{}” is not a range of end play", number::clip(text)),
            Self::NoShim { word } => format!("“{}” is not the thickness of a shim", number::clip(word)),
            Self::TooManySizes { most } => format!("only the first {most} sizes of shims are looked at"),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoLength { .. } => "type each part on a line of its own, as: thrust washer 3.05 x2",
            Self::TwoLengths { .. } => "type the one that was measured, or put them on two lines",
            Self::Quantity { why, .. } => return why.what_to_do(),
            Self::NothingMakesRoom => "type what they go into without a minus, as: case depth 112.40",
            Self::NoRange { .. } => "type both ends, as 0.002 to 0.006, or 0.05 to 0.15 mm; preload with a minus, or the word before it",
            Self::NoShim { .. } => "type thicknesses, each with how many are left: 0.10 x3, 0.15, 0.20 x2",
            Self::TooManySizes { .. } => "leave out the sizes that are out of the question",
        }
        .into()
    }
}
