//! A file of entries as lines and cells: comma, semicolon or tab between them, columns in any order, quoted text.
//!
//! One line of the file is one entry, so that a broken line cannot swallow the next.

use super::entry::Kind;
use super::file::{FileError, LARGEST, MOST_LINES};
use super::guard;
use super::line::{LONGEST_CELL, LineError, in_stock};
use crate::problem::Problem;

/// A file whose header was understood.
#[derive(Clone, Debug)]
pub(super) struct Table<'a> {
    kind: Kind,
    /// Where each column of the kind stands, in the kind's order.
    places: Vec<Option<usize>>,
    width: usize,
    delimiter: u8,
    /// Column names of the header that mean nothing here.
    pub(super) unknown: Vec<String>,
    body: Vec<(usize, &'a str)>,
}

/// One line behind the header.
pub(super) struct Line<'a> {
    /// Its number in the file, counted from 1.
    pub(super) number: usize,
    /// As it stands in the file.
    pub(super) text: &'a str,
    /// Its cells.
    pub(super) row: Result<Row<'a>, LineError>,
}

/// The cells of one line, asked for by column name.
#[derive(Clone, Debug)]
pub struct Row<'a> {
    kind: Kind,
    places: &'a [Option<usize>],
    cells: Vec<String>,
    /// The cells of the entry that the line speaks of, in the kind's order: they stand in for columns that the file has not.
    known: Vec<String>,
}

/// Reads the header of a file of one kind; the lines behind it are read one by one by [`Table::lines`].
pub(super) fn read(text: &str, kind: Kind) -> Result<Table<'_>, FileError> {
    let (delimiter, header, body) = head(text)?;
    let names = cells(header, delimiter).unwrap_or_else(|_| vec![header.to_owned()]);
    let mut places = vec![None; kind.columns().len()];
    let mut unknown = Vec::new();
    for (at, name) in names.iter().enumerate() {
        let column = kind.columns().iter().zip(&mut places).find(|(column, _)| plain(column) == plain(name));
        match column {
            Some((column, Some(_))) => return Err(FileError::ColumnTwice { column }),
            Some((_, place)) => *place = Some(at),
            None if name.trim().is_empty() => {}
            None => unknown.push(name.trim().to_owned()),
        }
    }
    let missing = missing(kind, &names);
    if !missing.is_empty() {
        return Err(FileError::WrongHeader { kind, missing, header: header.to_owned() });
    }
    Ok(Table { kind, places, width: names.len(), delimiter, unknown, body })
}

/// The kind of entry whose columns the header names.
pub(super) fn kind(text: &str) -> Result<Kind, FileError> {
    let (delimiter, header, _) = head(text)?;
    let names = cells(header, delimiter).unwrap_or_default();
    Kind::ALL.into_iter().find(|kind| missing(*kind, &names).is_empty()).ok_or_else(|| FileError::NoKind { header: header.to_owned() })
}

fn missing(kind: Kind, names: &[String]) -> Vec<&'static str> {
    kind.needed().iter().copied().filter(|needed| !names.iter().any(|name| plain(name) == plain(needed))).collect()
}

/// The delimiter, the header, and the numbered lines behind it.
type Head<'a> = (u8, &'a str, Vec<(usize, &'a str)>);

fn head(text: &str) -> Result<Head<'_>, FileError> {
    if text.len() > LARGEST {
        return Err(FileError::TooLarge { bytes: text.len() });
    }
    let mut lines = numbered(text.strip_prefix('\u{feff}').unwrap_or(text));
    let said = lines.clone().find_map(|(_, line)| line.strip_prefix("sep=")?.bytes().next().filter(|b| b",;\t".contains(b)));
    let comment = |line: &str| line.starts_with('#') || line.starts_with("\"#") || line.starts_with("sep=");
    let (_, header) = lines.find(|(_, line)| !line.trim().is_empty() && !comment(line)).ok_or(FileError::Empty)?;
    let body: Vec<_> = lines.filter(|(_, line)| !blank(line)).collect();
    if body.len() > MOST_LINES {
        return Err(FileError::TooManyLines { lines: body.len() });
    }
    Ok((said.unwrap_or_else(|| likeliest_delimiter(header)), header, body))
}

/// The lines of a text, counted from 1, whichever way they end.
fn numbered(text: &str) -> impl Iterator<Item = (usize, &str)> + Clone {
    let end = if text.contains('\n') { '\n' } else { '\r' };
    text.split(end).map(|line| line.trim_end_matches('\r')).enumerate().map(|(at, line)| (at + 1, line))
}

/// Whether a spreadsheet left nothing but separators on the line.
fn blank(line: &str) -> bool {
    line.chars().all(|c| c.is_whitespace() || matches!(c, ',' | ';' | '"'))
}

fn likeliest_delimiter(header: &str) -> u8 {
    let count = |delimiter: u8| header.bytes().filter(|b| *b == delimiter).count();
    b",;\t".iter().copied().rev().max_by_key(|delimiter| count(*delimiter)).unwrap_or(b',')
}

/// A column name as two are compared: letters and digits in lower case.
fn plain(name: &str) -> String {
    name.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// The cells of one line, trimmed, the guard against formulas taken off.
fn cells(line: &str, delimiter: u8) -> Result<Vec<String>, LineError> {
    if quote_stays_open(line, delimiter) {
        return Err(LineError::OpenQuote);
    }
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(delimiter)
        .buffer_capacity(line.len() + 1)
        .from_reader(line.as_bytes());
    let mut record = csv::StringRecord::new();
    match reader.read_record(&mut record) {
        Ok(_) => Ok(record.iter().map(|cell| guard::off(cell.trim()).trim().to_owned()).collect()),
        Err(_) => Err(LineError::OpenQuote),
    }
}

/// Whether a cell begins with a quotation mark that this line does not close.
fn quote_stays_open(line: &str, delimiter: u8) -> bool {
    let (mut open, mut fresh) = (false, true);
    for byte in line.bytes() {
        match byte {
            b'"' if open || fresh => (open, fresh) = (!open, open),
            other => fresh = !open && other == delimiter,
        }
    }
    open
}

impl Table<'_> {
    /// The lines behind the header.
    pub(super) fn lines(&self) -> impl Iterator<Item = Line<'_>> {
        self.body.iter().map(|(number, text)| Line { number: *number, text, row: self.row(text) })
    }

    fn row(&self, text: &str) -> Result<Row<'_>, LineError> {
        let cells = cells(text, self.delimiter)?;
        if cells.iter().skip(self.width).any(|cell| !cell.is_empty()) {
            return Err(LineError::TooManyCells { cells: cells.len(), columns: self.width });
        }
        Ok(Row { kind: self.kind, places: &self.places, cells, known: Vec::new() })
    }
}

impl Row<'_> {
    /// The text of a column; where the file has no such column, that of the entry it speaks of, or blank.
    pub fn text(&self, column: &str) -> String {
        let Some(at) = self.kind.columns().iter().position(|name| *name == column) else { return String::new() };
        let cell = match self.places.get(at).copied().flatten() {
            Some(place) => self.cells.get(place),
            None => self.known.get(at),
        };
        cell.cloned().unwrap_or_default()
    }

    /// The row of a line that speaks of an entry with these cells, but for its id.
    pub(super) fn about(self, mut known: Vec<String>) -> Self {
        if let Some(id) = known.first_mut() {
            id.clear();
        }
        Self { known, ..self }
    }

    /// The text of a column that must not be blank.
    pub(super) fn needed(&self, column: &'static str, problems: &mut Vec<Problem>) -> String {
        let text = self.text(column);
        if text.is_empty() {
            problems.push(Problem::stop(column, &LineError::Blank { column }));
        }
        text
    }

    /// The column `in_stock`.
    pub(super) fn in_stock(&self, problems: &mut Vec<Problem>) -> bool {
        in_stock(&self.text("in_stock")).unwrap_or_else(|why| {
            problems.push(Problem::stop("in_stock", &why));
            false
        })
    }

    /// A problem for each cell that is longer than is kept.
    pub(super) fn too_long(&self) -> Vec<Problem> {
        let sizes = self.kind.columns().iter().map(|column| (column, self.text(column).chars().count()));
        let long = sizes.filter(|(_, characters)| *characters > LONGEST_CELL);
        long.map(|(column, characters)| Problem::stop(*column, &LineError::TooLong { characters })).collect()
    }
}
