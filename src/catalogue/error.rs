//! Why a line of a file, or a cell of it, cannot be used, in sentences.

use super::column::{Column, Holds, LONGEST_CELL};
use crate::speedometer::{Role, SpeedoGear};
use crate::units::number::clip;

/// Why a line of a catalogue file, or an entry as typed, cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineError {
    /// A text that must be there is not: where it should stand.
    Blank(Column),
    /// A text longer than 500 characters: how many characters it has.
    TooLong(usize),
    /// None of what is chosen from.
    Choice {
        /// Where the text stands.
        column: Column,
        /// What was written.
        text: String,
    },
    /// Neither yes nor no: what was written.
    YesOrNo(String),
    /// Not a sum of money: what was written.
    Price(String),
    /// Not three letters: what was written.
    Currency(String),
    /// A price in one currency, and another currency beside it.
    TwoCurrencies {
        /// The currency that stands with the price.
        price: String,
        /// The currency in its own column.
        currency: String,
    },
    /// The counts do not tell how a gear set is laid out, and nothing else does.
    LayoutOpen,
    /// Not a whole number.
    Quantity {
        /// Where the text stands.
        column: Column,
        /// What was written.
        text: String,
    },
    /// A count outside [`SpeedoGear::LEAST`] to [`SpeedoGear::GREATEST`]; what was written.
    Teeth(String),
    /// An adapter with one count, or a speedometer gear with two; the role typed: an adapter has a second count, the others have none.
    Second(Role),
    /// A quotation mark that is opened and not closed on the same line.
    OpenQuote,
    /// More cells than the header has columns.
    TooManyCells {
        /// How many there are in the line.
        cells: usize,
        /// The columns of the header.
        columns: usize,
    },
    /// The same entry as on an earlier line: the earlier line.
    Twice(usize),
}

fn how_many(column: Column) -> &'static str {
    if column == Column::ReorderAt { "at how many to order more" } else { "how many there are" }
}

explain! { LineError:
    Self::Blank(column) => format!("the {} is missing", column.about().word), format!("fill in the {}", column.about().word);
    Self::TooLong(characters) => format!("a text of {characters} characters is too long to keep"),
        format!("shorten it to {LONGEST_CELL} characters");
    Self::Choice { column, text } => format!("“{}” is not a {} known here", clip(text), column.about().word),
        format!("write {}", choices(*column));
    Self::YesOrNo(text) => format!("“{}” is neither yes nor no", clip(text)), "write yes, no, or how many are on the shelf";
    Self::Price(text) => format!("“{}” is not a price", clip(text)),
        "write the number alone, such as 120.00, and the currency in a column of its own";
    Self::Currency(text) => format!("“{}” is not a currency", clip(text)), "write its three letters, such as EUR, or leave it blank";
    Self::TwoCurrencies { price, currency } => format!("the price is in {price}, its currency is said to be {currency}"),
        "leave one of the two, or make two entries";
    Self::LayoutOpen => "the counts do not tell how the box is laid out",
        format!("write {} as the layout", choices(Column::Layout));
    Self::Quantity { column, text } => format!("“{}” is not a quantity", clip(text)),
        format!("write {}, from 0 to 999,999, or leave it blank", how_many(*column));
    Self::Teeth(text) => format!("“{}” is not a tooth count of a speedometer gear", clip(text)),
        format!("write a count from {} to {}", SpeedoGear::LEAST, SpeedoGear::GREATEST);
    Self::Second(Role::Adapter) => "an adapter has two tooth counts, and the second is missing",
        "write the teeth of the gear on the cable's side as the second count";
    Self::Second(role) => format!("a {} gear has one tooth count, and two are given", role.word()), "leave the second count blank";
    Self::OpenQuote => "a quotation mark is opened and not closed on this line", "close it, or take the line break out of the cell";
    Self::TooManyCells { cells, columns } => format!("the line has {cells} cells, the header {columns}"),
        "put quotation marks around a text with the separator in it, or take the extra cells out";
    Self::Twice(line) => format!("the same entry stands on line {line}"), "give it another name or note, or take one of the two out";
}

/// What a column is chosen from: `drive, driven or adapter`.
fn choices(column: Column) -> String {
    let Holds::Choice(choices) = column.about().holds else { return String::new() };
    let written: Vec<&str> = choices.options.iter().map(|(written, _)| *written).filter(|written| !written.is_empty()).collect();
    let or_blank = if written.len() < choices.options.len() { ", or leave it blank" } else { "" };
    match written.split_last() {
        Some((last, others)) => format!("{} or {last}{or_blank}", others.join(", ")),
        None => String::new(),
    }
}
