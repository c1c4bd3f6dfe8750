//! Why a table of faults cannot be read, each with what to do.

use crate::units::number;

/// What is wrong with a line of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableError {
    /// A table without a head line: the table.
    Empty(&'static str),
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
    /// A line has a name that is there already.
    Twice {
        /// The table.
        table: &'static str,
        /// The line, counted from 1.
        line: usize,
        /// The name.
        word: String,
    },
    /// A name that cannot stand among others in a cell.
    Name {
        /// The table.
        table: &'static str,
        /// The line, counted from 1.
        line: usize,
        /// What stands there.
        word: String,
    },
    /// A cell that must say something is blank, or has a bar in it, which parts what was read from what was to be done.
    Blank {
        /// The table.
        table: &'static str,
        /// The line, counted from 1.
        line: usize,
        /// The cell's column.
        column: &'static str,
    },
    /// The names of the columns are others than those of the table.
    Head {
        /// The line, counted from 1.
        line: usize,
        /// What they are.
        head: &'static str,
    },
    /// A line in front of the first head line: the line, counted from 1.
    NoHead(usize),
    /// More lines than are read: how many are.
    TooMany(usize),
}

impl TableError {
    /// The line it stands in, where it is one line's.
    pub fn line(&self) -> Option<usize> {
        match self {
            Self::Empty(_) | Self::TooMany(_) => None,
            Self::Cells { line, .. }
            | Self::Unknown { line, .. }
            | Self::Twice { line, .. }
            | Self::Name { line, .. }
            | Self::Blank { line, .. }
            | Self::Head { line, .. }
            | Self::NoHead(line) => Some(*line),
        }
    }
}

explain! { TableError:
    Self::Empty(table) => format!("the table of {table} has no head line"), "put the names of the columns on the first line";
    Self::Cells { table, line } => format!("line {line} ({table}) has not as many cells as its head"),
        "put a semicolon between the cells, one for each column, blank ones too";
    Self::Unknown { table, line, word } => format!("line {line} ({table}): “{}” is not known", number::clip(word)),
        "name something that one of the tables has, or add it there";
    Self::Twice { table, line, word } => format!("line {line} ({table}): “{}” is there already", number::clip(word)),
        "give each line a name of its own";
    Self::Name { table, line, word } => format!("line {line} ({table}): “{}” is no name", number::clip(word)),
        "begin the line with letters, digits and dashes, as in own-long-plug";
    Self::Blank { table, line, column } => format!("line {line} ({table}): “{column}” is blank, or has a bar in it"),
        "fill it in, without “|”";
    Self::Head { line, head, .. } => format!("line {line} names other columns than its table has"),
        format!("put them as they are built in: {head}");
    Self::NoHead(line) => format!("line {line} stands under no head line"), "put the names of the columns above it, as the example does";
    Self::TooMany(most) => format!("only the first {most} lines are read"), "take some out";
}
