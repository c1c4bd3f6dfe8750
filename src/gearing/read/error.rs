//! Why a text tells no gears, and what to type instead.

use crate::gearing::teeth::Teeth;
use crate::units::number;

/// Why a text tells no gears.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GearTextError {
    /// Nothing was typed where tooth counts were wanted.
    Blank,
    /// Nothing was typed where tooth counts or a ratio were wanted.
    BlankDrive,
    /// Two tooth counts were wanted: what was typed.
    NotAPair(String),
    /// Two tooth counts or a printed ratio were wanted: what was typed.
    NotAGear(String),
    /// A tooth count outside 8 to 150: the count as typed.
    Count(String),
    /// One whole number was wanted: what was typed.
    NotACount(String),
    /// One count, or the two of a compound idler, were wanted: what was typed.
    NotAnIdler(String),
    /// Two numbers parted by a comma or a point that can be two counts or one decimal ratio.
    PairOrRatio {
        /// What was typed.
        text: String,
        /// The number before the comma or point.
        first: String,
        /// The number behind it.
        second: String,
    },
    /// Neither teeth nor a ratio from 0.1 to 20: what was typed.
    NotADrive(String),
    /// Direct drive where input and output are not in line.
    DirectInTwoShaft,
}

explain! { GearTextError:
    Self::Blank => "no tooth counts are given", "type both counts, such as 37/18";
    Self::BlankDrive => "neither tooth counts nor a ratio are given",
        "type both counts, such as 43/11, or a ratio from 0.1 to 20, such as 3.909";
    Self::NotAPair(text) => format!("“{}” is not a pair of tooth counts", number::clip(text)), "type both counts, such as 37/18";
    Self::NotAGear(text) => format!("“{}” is neither two tooth counts nor a printed ratio", number::clip(text)),
        "type both counts, such as 37/18, or the ratio as printed, such as 2.47";
    Self::Count(text) => format!("gears of {} to {} teeth only; “{}” was typed", Teeth::LEAST, Teeth::GREATEST, number::clip(text)),
        "check the count";
    Self::NotACount(text) => format!("“{}” is not a tooth count", number::clip(text)),
        format!("type a count from {} to {}", Teeth::LEAST, Teeth::GREATEST);
    Self::NotAnIdler(text) => format!("“{}” is not the tooth count of an idler", number::clip(text)),
        "type one count, such as 19, or both of a compound idler, such as 20/16";
    Self::PairOrRatio { text, first, second, .. } => format!("“{}” can be two tooth counts or one ratio", number::clip(text)),
        format!("type {first}/{second} for teeth or {first}.{second}:1 for a ratio");
    Self::NotADrive(text) => format!("“{}” is neither two tooth counts nor a ratio", number::clip(text)),
        "type both counts, such as 43/11, or a ratio from 0.1 to 20, such as 3.909";
    Self::DirectInTwoShaft => "a two-shaft box has no direct gear",
        "type both counts of the pair, such as 31/30, or a printed ratio of 1.00";
}
