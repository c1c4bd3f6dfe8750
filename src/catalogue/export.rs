//! Entries written as a file that a spreadsheet opens and that can be read back: the same columns as the built-in files.

use super::entry::{Entry, Kind};
use super::guard;

/// A file of entries. Reading it back gives the same entries; line breaks inside a text become blanks.
pub fn file<'a, T: Entry>(entries: impl IntoIterator<Item = &'a T>) -> String {
    let header = header(T::KIND);
    entries.into_iter().fold(header, |file, entry| file + &line(&entry.cells()))
}

/// A file with the column names alone, to be filled in.
pub fn header(kind: Kind) -> String {
    kind.columns().join(",") + "\n"
}

/// A file of one entry, as cells in the order of the kind's columns; its id is left out.
pub(super) fn of_cells(kind: Kind, cells: &[String]) -> String {
    let place = kind.columns().iter().position(|column| *column == "id");
    let cells: Vec<String> =
        cells.iter().enumerate().map(|(at, cell)| if Some(at) == place { String::new() } else { cell.clone() }).collect();
    header(kind) + &line(&cells)
}

fn line(cells: &[String]) -> String {
    cells.iter().map(|cell| quoted(&guard::on(&one_line(cell)))).collect::<Vec<_>>().join(",") + "\n"
}

/// A text as one line of a file can hold it.
pub(super) fn one_line(text: &str) -> String {
    text.trim().replace("\r\n", " ").replace(['\r', '\n'], " ")
}

/// A cell in quotation marks where it holds a separator or a mark itself (RFC 4180, section 2, rules 6 and 7).
fn quoted(cell: &str) -> String {
    let plain = !cell.contains([',', ';', '\t', '"', '#']);
    if plain { cell.to_owned() } else { format!("\"{}\"", cell.replace('"', "\"\"")) }
}
