//! Why a table of faults cannot be read, each with what to do.

use crate::problem::Explain;
use crate::units::number;

/// What is wrong with a line of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableError {
    /// A table without a head line.
    Empty {
        /// The table.
        table: &'static str,
    },
    /// A line has more or fewer cells than its head.
    Cells {
        /// The table.
        table: &'static str,
        /// The line, counted from 1.
        line: usize,
    },
    /// A cell names something that the tables do not have.
    Unknown {
        /// The table.
        table: &'static str,
        /// The line, counted from 1.
        line: usize,
        /// What stands there.
        word: String,
    },
    /// Two lines have one name.
    Twice {
        /// The table.
        table: &'static str,
        /// Their name.
        word: String,
    },
}

impl Explain for TableError {
    fn what(&self) -> String {
        match self {
            Self::Empty { table } => format!("the table of {table} has no head line"),
            Self::Cells { table, line } => format!("line {line} of the table of {table} has not as many cells as its head"),
            Self::Unknown { table, line, word } => format!("“{}” in line {line} of the table of {table} is not known", number::clip(word)),
            Self::Twice { table, word } => format!("“{}” stands twice in the table of {table}", number::clip(word)),
        }
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Empty { .. } => "put the names of the columns on the first line",
            Self::Cells { .. } => "put a semicolon between the cells, one for each column",
            Self::Unknown { .. } => "name something that one of the tables has, or add it there",
            Self::Twice { .. } => "give each line a name of its own",
        }
        .into()
    }
}
