//! Files of entries: which columns the header names, what each line tells, and entries written the same way.

use super::error::LineError;
use super::file::{FileError, LARGEST, MOST_LINES};
use super::{Column, Entry, PartKind};
use crate::spreadsheet::{self, Table};

/// A file whose header was understood.
#[derive(Clone, Debug)]
pub(super) struct CsvFile<'a> {
    /// The kind of part that its columns tell of.
    pub(super) kind: PartKind,
    /// The column of each cell, nothing where its name means nothing here.
    columns: Vec<Option<Column>>,
    /// Column names of the header that mean nothing here.
    pub(super) unknown: Vec<String>,
    /// The lines, each with its number in the file, counted from 1.
    pub(super) table: Table<'a>,
}

impl<'a> CsvFile<'a> {
    /// Reads the header of a file; the lines behind it are read one by one by [`CsvFile::cells`].
    pub(super) fn of(text: &'a str) -> Result<Self, FileError> {
        if text.len() > LARGEST {
            return Err(FileError::TooLarge(text.len()));
        }
        let table = Table::of(text).ok_or(FileError::Empty)?;
        if table.lines.len() > MOST_LINES {
            return Err(FileError::TooManyLines(table.lines.len()));
        }
        let names = table.cells(table.header).unwrap_or_else(|| vec![table.header.to_owned()]);
        let tells = |kind: &PartKind| kind.needed().iter().all(|needed| names.iter().any(|name| needed.is_called(name)));
        // Of several whose columns are all there it is the one that most of the header speaks of.
        let named = |kind: &PartKind| kind.columns().filter(|column| names.iter().any(|name| column.is_called(name))).count();
        let kind = PartKind::ALL.into_iter().filter(tells).max_by_key(named).ok_or_else(|| FileError::NoKind(table.header.to_owned()))?;
        let (mut columns, mut unknown) = (Vec::new(), Vec::new());
        for name in names {
            let column = kind.columns().find(|column| column.is_called(&name));
            if let Some(column) = column.filter(|_| columns.contains(&column)) {
                return Err(FileError::ColumnTwice(column.name()));
            }
            columns.push(column);
            if column.is_none() && !name.is_empty() {
                unknown.push(name);
            }
        }
        Ok(Self { kind, columns, unknown, table })
    }

    pub(super) fn cells(&self, line: &str) -> Result<Vec<String>, LineError> {
        let cells = self.table.cells(line).ok_or(LineError::OpenQuote)?;
        if cells.iter().skip(self.columns.len()).any(|cell| !cell.is_empty()) {
            return Err(LineError::TooManyCells { cells: cells.len(), columns: self.columns.len() });
        }
        Ok(cells)
    }

    /// The entry that cells tell. What the file has no column for stays as it is in `known`, the entry they speak of.
    pub(super) fn entry(&self, cells: &[String], known: Option<&Entry>) -> Entry {
        let mut entry = known.map_or_else(|| Entry::new(self.kind), |known| known.clone().placed("", false));
        for (at, column) in self.columns.iter().enumerate() {
            if let Some(column) = column {
                entry.set(*column, cells.get(at).map_or("", String::as_str));
            }
        }
        let tells = |column| self.columns.contains(&Some(column)) && !entry.text(column).is_empty();
        if tells(Column::Quantity) && !tells(Column::InStock) {
            // A stocktaking file says by the quantity whether there is one.
            entry.set(Column::InStock, "");
        }
        entry.spread_line();
        entry
    }
}

/// A file to be filled in: the names of the columns, and an example that is not read.
pub fn write_example(kind: PartKind) -> String {
    write(kind, [&kind.example().with(Column::Id, spreadsheet::EXAMPLE)])
}

/// A file of entries of one kind. Reading it back gives the same entries; line breaks inside a text become blanks.
pub fn write<'a>(kind: PartKind, entries: impl IntoIterator<Item = &'a Entry>) -> String {
    let line = |entry: &'a Entry| kind.columns().map(|column| entry.cell(column)).collect::<Vec<_>>();
    let header = kind.columns().map(Column::name).collect();
    spreadsheet::write(std::iter::once(header).chain(entries.into_iter().map(line)))
}
