//! What one line can be refused for, in sentences, and how its yes and no are read.

use crate::problem::Explain;
use crate::units::number::clip;

/// Why a line of a catalogue file cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LineError {
    /// A text that must be there is not.
    Blank {
        /// The column.
        column: &'static str,
    },
    /// A text longer than 500 characters.
    TooLong {
        /// How many characters it has.
        characters: usize,
    },
    /// No layout of that name.
    Layout {
        /// What was written.
        text: String,
    },
    /// Neither yes nor no.
    YesOrNo {
        /// What was written.
        text: String,
    },
    /// A quotation mark that is opened and not closed on the same line.
    OpenQuote,
    /// More cells than the header has columns.
    TooManyCells {
        /// The cells of the line.
        cells: usize,
        /// The columns of the header.
        columns: usize,
    },
    /// The same entry as on an earlier line.
    Twice {
        /// The earlier line.
        line: usize,
    },
}

/// The most characters one cell may have.
pub(super) const LONGEST_CELL: usize = 500;

impl Explain for LineError {
    fn what(&self) -> String {
        match self {
            Self::Blank { column } => format!("the {column} is missing"),
            Self::TooLong { characters } => format!("a text of {characters} characters is too long to keep"),
            Self::Layout { text } => format!("“{}” is not a gearbox layout known here", clip(text)),
            Self::YesOrNo { text } => format!("“{}” is neither yes nor no", clip(text)),
            Self::OpenQuote => "a quotation mark is opened and not closed on this line".into(),
            Self::TooManyCells { cells, columns } => format!("the line has {cells} cells, the header {columns}"),
            Self::Twice { line } => format!("the same entry stands on line {line}"),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Blank { column } => format!("fill in the {column}"),
            Self::TooLong { .. } => format!("shorten it to {LONGEST_CELL} characters"),
            Self::Layout { .. } => "write input-reduced, output-reduced or two-shaft".into(),
            Self::YesOrNo { .. } => "write yes, no, or how many are on the shelf".into(),
            Self::OpenQuote => "close it, or take the line break out of the cell".into(),
            Self::TooManyCells { .. } => "put quotation marks around a text with the separator in it, or take the extra cells out".into(),
            Self::Twice { .. } => "give it another name or note, or take one of the two out".into(),
        }
    }
}

/// Whether a part is on the shelf: yes, no, or how many there are; nothing written means no.
///
/// # Errors
/// When it is none of these.
pub(super) fn in_stock(text: &str) -> Result<bool, LineError> {
    match text.trim().to_lowercase().as_str() {
        "" | "no" | "n" | "false" | "-" => Ok(false),
        "yes" | "y" | "true" | "x" => Ok(true),
        count if count.bytes().all(|b| b.is_ascii_digit()) => Ok(count.bytes().any(|b| b != b'0')),
        _ => Err(LineError::YesOrNo { text: text.trim().to_owned() }),
    }
}

/// How [`in_stock`] is written.
pub(super) fn yes_or_no(value: bool) -> String {
    if value { "yes".into() } else { "no".into() }
}
