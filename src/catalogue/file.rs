//! What a whole file can be refused for, and how its bytes become text.

use crate::units::number::clip;

/// The most bytes a file may have.
pub const LARGEST: usize = 2_000_000;
/// The most lines a file may have.
pub const MOST_LINES: usize = 20_000;

/// Why a file cannot be read at all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// More than [`LARGEST`] bytes: its size.
    TooLarge(usize),
    /// More than [`MOST_LINES`] lines: how many it has.
    TooManyLines(usize),
    /// Neither UTF-8 nor UTF-16 text.
    NotText,
    /// Nothing but blanks and comments.
    Empty,
    /// The header names a column twice: its name, as the header has it.
    ColumnTwice(&'static str),
    /// The header fits no kind of part: the header as it stands.
    NoKind(String),
}

explain! { FileError:
    Self::TooLarge(bytes) => format!("the file has {} kB", bytes.div_ceil(1000)),
        format!("cut it into files of at most {} kB", LARGEST / 1000);
    Self::TooManyLines(lines) => format!("the file has {lines} lines"), format!("cut it into files of at most {MOST_LINES} lines");
    Self::NotText => "the file is not plain text", "save it from the spreadsheet as CSV UTF-8";
    Self::Empty => "the file has no line with entries", "export the catalogue to see what a file looks like";
    Self::ColumnTwice(column) => format!("the first line names the column {column} twice"), "rename or take out one of the two";
    Self::NoKind(header) => format!("the first line, “{}”, fits no kind of part", clip(header)),
        "begin the file with the column names an exported one has";
}

/// The text of a file's bytes: UTF-8, or UTF-16 with its mark.
///
/// # Errors
/// When it is too large or neither of the two.
pub fn text(bytes: &[u8]) -> Result<String, FileError> {
    if bytes.len() > LARGEST {
        return Err(FileError::TooLarge(bytes.len()));
    }
    let wide = |rest: &[u8], join: fn([u8; 2]) -> u16| {
        let units = rest.chunks(2).map(|pair| match pair {
            [first, second] => join([*first, *second]),
            _ => u16::from(b'?'),
        });
        char::decode_utf16(units).collect::<Result<String, _>>().map_err(|_| FileError::NotText)
    };
    match bytes {
        [0xff, 0xfe, rest @ ..] => wide(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => wide(rest, u16::from_be_bytes),
        _ => std::str::from_utf8(bytes).map(str::to_owned).map_err(|_| FileError::NotText),
    }
}
