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
    /// A text that is neither a code of a fit nor a range of clearance.
    NoFit {
        /// What was typed.
        text: String,
    },
    /// A code of a fit that is not known, or not at this size.
    Code(CodeError),
    /// No diameter where one is measured.
    NoReading {
        /// What was typed.
        text: String,
    },
    /// Readings that cannot be of one diameter.
    TooFarApart {
        /// What was typed.
        text: String,
    },
    /// No count of needles.
    NoCount {
        /// What was typed.
        text: String,
    },
    /// Clock readings that are not four.
    NotFour {
        /// How many there are.
        many: usize,
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
            Self::NoFit { text } => format!("“{}” is neither a fit nor a range of clearance", number::clip(text)),
            Self::Code(why) => why.what(),
            Self::NoReading { text } => format!("“{}” is not a diameter", number::clip(text)),
            Self::TooFarApart { text } => format!("the readings “{}” are too far apart to be of one diameter", number::clip(text)),
            Self::NoCount { text } => format!("“{}” is not a number from 5 to 200", number::clip(text)),
            Self::NotFour { many } => format!("{many} of the four clock readings are there"),
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
            Self::NoFit { .. } => {
                "type a code such as H7/g6, or both ends, as 0.5 to 1.5 thou; interference with a minus, or the word before it"
            }
            Self::Code(why) => return why.what_to_do(),
            Self::NoReading { .. } => "type what was measured, as 25.021 25.024; readings at another depth behind a semicolon",
            Self::TooFarApart { .. } => {
                "check each for its point and its unit: inches and mm do not mix in one field unless each bears its unit"
            }
            Self::NoCount { .. } => "count the needles of one row",
            Self::NotFour { .. } => "read the dial at twelve, three, six and nine o’clock, as 0 0.002 0.006 0.004",
            Self::NoShim { .. } => "type thicknesses, each with how many are left: 0.10 x3, 0.15, 0.20 x2",
            Self::TooManySizes { .. } => "leave out the sizes that are out of the question",
        }
        .into()
    }
}

/// What is wrong with a code of ISO 286.
#[derive(Clone, Debug, PartialEq)]
pub enum CodeError {
    /// Not two codes with a stroke between.
    NoPair {
        /// What was typed.
        text: String,
    },
    /// A letter or a grade that is not known here.
    Unknown {
        /// What was typed.
        text: String,
        /// Whether it stands for the hole.
        is_hole: bool,
    },
    /// A field that the standard does not have at this size.
    NotAtThisSize {
        /// The code.
        text: String,
    },
    /// A size beyond the tables.
    Beyond {
        /// Their end, in mm.
        most_mm: f64,
    },
}

impl Explain for CodeError {
    fn what(&self) -> String {
        match self {
            Self::NoPair { text } => format!("“{}” is not a fit", number::clip(text)),
            Self::Unknown { text, is_hole: true } => format!("“{}” is not a hole of ISO 286 known here", number::clip(text)),
            Self::Unknown { text, is_hole: false } => format!("“{}” is not a shaft of ISO 286 known here", number::clip(text)),
            Self::NotAtThisSize { text } => format!("ISO 286 has no {text} at this size in the tables here"),
            Self::Beyond { most_mm } => format!("the tables of fits end at {} mm", number::show(*most_mm, 0)),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoPair { .. } => "type hole and shaft, as H7/g6",
            Self::Unknown { is_hole: true, .. } => "type a letter from C to U and a grade from 4 to 12, as H7",
            Self::Unknown { is_hole: false, .. } => "type a letter from c to u and a grade from 4 to 12, as g6",
            Self::NotAtThisSize { .. } | Self::Beyond { .. } => "choose another fit, or type the range of clearance",
        }
        .into()
    }
}

/// What is wrong with a line about a fastener.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FastenerError {
    /// It names no thread.
    NoThread {
        /// The line.
        line: String,
    },
    /// It names no grade.
    NoGrade {
        /// The line.
        line: String,
    },
}

impl Explain for FastenerError {
    fn what(&self) -> String {
        match self {
            Self::NoThread { line } => format!("“{}” names no thread known here", number::clip(line)),
            Self::NoGrade { line } => format!("“{}” names no grade known here", number::clip(line)),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::NoThread { .. } => "type it as M8, M8x1, 5/16-18 or 5/16 UNC, M5 to M20 or 1/4 to 5/8".into(),
            Self::NoGrade { .. } => "type the mark on its head: 8.8, 10.9, or grade 5".into(),
        }
    }
}
