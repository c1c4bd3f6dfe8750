//! Why a line of a stack, a kit or a range cannot be read, each with what to do.

use crate::units::{UnitError, number};

/// What is wrong with a text about fits, play and shims.
#[derive(Clone, Debug, PartialEq)]
pub enum FitTextError {
    /// A line of a stack has no length: the line.
    NoLength(String),
    /// A line of a stack has two lengths, each with a unit: the line.
    TwoLengths(String),
    /// A quantity of a line cannot be read or is outside what it can be.
    Quantity {
        /// The line.
        line: String,
        /// Why.
        why: UnitError,
    },
    /// A stack of parts that all take room up.
    NothingMakesRoom,
    /// A range of play that has no two ends: what was typed.
    NoRange(String),
    /// A text that is neither a code of a fit nor a range of clearance: what was typed.
    NoFit(String),
    /// A code of a fit that is not known, or not at this size.
    Code(CodeError),
    /// No diameter where one is measured: what was typed.
    NoReading(String),
    /// Readings that cannot be of one diameter: what was typed.
    TooFarApart(String),
    /// No count of needles: what was typed.
    NoCount(String),
    /// Clock readings that are not four: how many there are.
    NotFour(usize),
    /// Something in a list of shims that is no thickness: what it is.
    NoShim(String),
    /// More sizes of shims than are looked at: how many are.
    TooManySizes(usize),
}

explain! { FitTextError:
    Self::NoLength(line) => format!("“{}” has no length", number::clip(line)),
        "type each part on a line of its own, as: thrust washer 3.05 x2";
    Self::TwoLengths(line) => format!("“{}” has two lengths", number::clip(line)),
        "type the one that was measured, or put them on two lines";
    Self::Quantity { line, why } =>
        {
                let what = why.what();
                // A line that is nothing but the figure need not be said twice.
                if what.contains(&number::clip(line)) { what } else { format!("in “{}”: {what}", number::clip(line)) }
            },
        why.what_to_do();
    Self::NothingMakesRoom => "every part is taken off and nothing makes room",
        "type what they go into without a minus, as: case depth 112.40";
    Self::NoRange(text) => format!("“{}” is not a range of end play", number::clip(text)),
        "type both ends, as 0.002 to 0.006, or 0.05 to 0.15 mm; preload with a minus, or the word before it";
    Self::NoFit(text) => format!("“{}” is neither a fit nor a range of clearance", number::clip(text)),
        "type a code such as H7/g6, or both ends, as 0.5 to 1.5 thou; interference with a minus, or the word before it";
    Self::Code(why) => why.what(), why.what_to_do();
    Self::NoReading(text) => format!("“{}” is not a diameter", number::clip(text)),
        "type what was measured, as 25.021 25.024; readings at another depth behind a semicolon";
    Self::TooFarApart(text) => format!("the readings “{}” are too far apart to be of one diameter", number::clip(text)),
        "check each for its point and its unit: inches and mm do not mix in one field unless each bears its unit";
    Self::NoCount(text) => format!("“{}” is not a number from 5 to 200", number::clip(text)), "count the needles of one row";
    Self::NotFour(many) => format!("{many} of the four clock readings are there"),
        "read the dial at twelve, three, six and nine o’clock, as 0 0.002 0.006 0.004";
    Self::NoShim(word) => format!("“{}” is not the thickness of a shim", number::clip(word)),
        "type thicknesses, each with how many are left: 0.10 x3, 0.15, 0.20 x2";
    Self::TooManySizes(most) => format!("only the first {most} sizes of shims are looked at"),
        "leave out the sizes that are out of the question";
}

/// What is wrong with a code of ISO 286.
#[derive(Clone, Debug, PartialEq)]
pub enum CodeError {
    /// Not two codes with a stroke between: what was typed.
    NoPair(String),
    /// A letter or a grade that is not known here.
    Unknown {
        /// What was typed.
        text: String,
        /// Whether it stands for the hole.
        is_hole: bool,
    },
    /// A field that the standard does not have at this size: the code.
    NotAtThisSize(String),
    /// A size beyond the tables: their end, in mm.
    Beyond(f64),
}

explain! { CodeError:
    Self::NoPair(text) => format!("“{}” is not a fit", number::clip(text)), "type hole and shaft, as H7/g6";
    Self::Unknown { text, is_hole: true } => format!("“{}” is not a hole of ISO 286 known here", number::clip(text)),
        "type a letter from C to U and a grade from 4 to 12, as H7";
    Self::Unknown { text, is_hole: false } => format!("“{}” is not a shaft of ISO 286 known here", number::clip(text)),
        "type a letter from c to u and a grade from 4 to 12, as g6";
    Self::NotAtThisSize(text) => format!("ISO 286 has no {text} at this size in the tables here"),
        "choose another fit, or type the range of clearance";
    Self::Beyond(most_mm) => format!("the tables of fits end at {} mm", number::show(*most_mm, 0)),
        "choose another fit, or type the range of clearance";
}

/// What is wrong with a line about a fastener.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FastenerError {
    /// It names no thread: the line.
    NoThread(String),
    /// It names no grade: the line.
    NoGrade(String),
}

explain! { FastenerError:
    Self::NoThread(line) => format!("“{}” names no thread known here", number::clip(line)),
        "type it as M8, M8x1, 5/16-18 or 5/16 UNC, M5 to M20 or 1/4 to 5/8";
    Self::NoGrade(line) => format!("“{}” names no grade known here", number::clip(line)),
        "type the mark on its head: 8.8, 10.9, or grade 5";
}
