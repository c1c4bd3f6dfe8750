//! A pasted text as a table of cells: rows as lines or parted by semicolons, columns by any usual mark, lying or standing.

use super::{Done, Separator, header};
use crate::units::number::{self, Readings};

#[derive(Debug)]
pub(super) struct Row {
    /// The line of the text it stands in, counted from 1.
    pub(super) line: usize,
    pub(super) text: String,
    pub(super) cells: Vec<String>,
}

/// The rows of a text, and what was done to have them.
#[derive(Debug)]
pub(super) struct Table {
    pub(super) separator: Separator,
    pub(super) rows: Vec<Row>,
    pub(super) done: Vec<Done>,
}

/// Takes a text apart. Lines that begin with `#` are remarks, and rulings (`|---|---|`) are nothing.
pub(super) fn table(text: &str) -> Table {
    let (lines, in_one_line) = lines(text);
    let separator = separator(&lines.iter().map(|(_, line)| line.as_str()).collect::<Vec<_>>());
    let rows = lines.into_iter().map(|(line, text)| Row { line, cells: cells(&text, separator), text }).collect();
    let mut done = Vec::new();
    if in_one_line {
        done.push(Done::LineOfRows);
    }
    let rows = match standing(rows) {
        Ok(stood) => {
            done.push(Done::Swapped);
            stood
        }
        Err(rows) => rows,
    };
    Table { separator, rows, done }
}

/// The readings of a cell's number, where nothing but a unit stands behind the digits.
pub(super) fn readings(cell: &str) -> Option<(Readings, &str)> {
    let (readings, rest) = number::leading(cell)?;
    let unit_like = rest.trim().chars().all(|c| c.is_alphabetic() || matches!(c, '.' | '·' | '-' | '/' | '*' | ' ' | '(' | ')'));
    unit_like.then_some((readings, rest.trim()))
}

/// Whether a row has figures in two columns.
pub(super) fn is_data(row: &Row) -> bool {
    row.cells.iter().filter(|cell| readings(cell).is_some()).count() >= 2
}

/// The lines of the text with their numbers; a line whose parts between semicolons are rows of their own is cut there.
fn lines(text: &str) -> (Vec<(usize, String)>, bool) {
    let ruling = |line: &str| line.contains('-') && line.chars().all(|c| matches!(c, '-' | '|' | ':' | '+' | '=') || c.is_whitespace());
    let kept: Vec<(usize, &str)> = (1..)
        .zip(text.lines())
        .map(|(at, line)| (at, line.trim()))
        .filter(|(_, line)| !line.is_empty() && !line.starts_with('#') && !ruling(line))
        .collect();
    let alone = kept.len() == 1;
    let several = |part: &str| {
        let marks = |c: char| c.is_whitespace() || matches!(c, ':' | '@' | '|' | '=') || (alone && c == ',');
        part.split(marks).filter(|word| word.starts_with(|c: char| c.is_ascii_digit())).count() >= 2
    };
    let of_rows = |line: &str| line.split(';').filter(|part| several(part)).count() >= 2;
    let in_one_line = kept.iter().any(|(_, line)| of_rows(line));
    let cut = |(at, line): (usize, &str)| -> Vec<(usize, String)> {
        let parts = if of_rows(line) { line.split(';').collect() } else { vec![line] };
        parts.into_iter().map(str::trim).filter(|part| !part.is_empty()).map(|part| (at, spelled(part))).collect()
    };
    (kept.into_iter().flat_map(cut).collect(), in_one_line)
}

/// `105 lb ft at 1500 rpm` with the sign for its word.
fn spelled(line: &str) -> String {
    if begins_with_number(line) { line.replace(" at ", " @ ") } else { line.to_owned() }
}

fn begins_with_number(line: &str) -> bool {
    line.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | '"' | '+' | '-' | '−' | '|'))
}

/// Tab, bar, semicolon and the marks of a list before blanks; blanks where every word of a row of numbers is one; commas otherwise.
fn separator(lines: &[&str]) -> Separator {
    let rows: Vec<&str> = lines.iter().copied().filter(|line| begins_with_number(line)).collect();
    // rows that lie begin with a word: then all lines are looked at
    let rows = if rows.is_empty() { lines.to_vec() } else { rows };
    let blanks = |line: &&str| {
        let words: Vec<&str> = line.split_whitespace().collect();
        let numbers = words.iter().filter(|word| readings(word).is_some() && !word.ends_with(',') && !word.starts_with(',')).count();
        numbers >= 2 && !words.iter().any(|word| word.ends_with(','))
    };
    let any = |mark: char| rows.iter().any(|line| line.contains(mark));
    if any('\t') {
        Separator::Tab
    } else if any('|') {
        Separator::Bar
    } else if any(';') {
        Separator::Semicolon
    } else if any('@') {
        Separator::At
    } else if any(':') || any('=') {
        Separator::Colon
    } else if rows.iter().any(blanks) {
        Separator::Blanks
    } else if any(',') {
        Separator::Comma
    } else {
        Separator::Blanks
    }
}

fn cells(line: &str, separator: Separator) -> Vec<String> {
    let delimiter = match separator {
        Separator::Tab => b'\t',
        Separator::Semicolon => b';',
        Separator::Comma => b',',
        Separator::Bar => return trimmed(line.trim().trim_matches('|').split('|')),
        Separator::At => return trimmed(line.split('@')),
        Separator::Colon => return trimmed(line.split([':', '='])),
        Separator::Blanks => return with_units(line),
    };
    let mut reader = csv::ReaderBuilder::new().delimiter(delimiter).has_headers(false).flexible(true).from_reader(line.as_bytes());
    let record = reader.records().next().and_then(Result::ok).unwrap_or_default();
    trimmed(record.iter())
}

fn trimmed<'a>(cells: impl Iterator<Item = &'a str>) -> Vec<String> {
    cells.map(|cell| cell.trim().to_owned()).collect()
}

/// Words between blanks; what is no number goes to the cell before it, as its unit, or makes one head with the words before.
fn with_units(line: &str) -> Vec<String> {
    let mut cells: Vec<String> = Vec::new();
    let mut figures = false;
    for word in line.split_whitespace() {
        let figure = word.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | '+' | '-' | '−'));
        figures |= figure;
        match cells.last_mut().filter(|_| !figure) {
            Some(cell) => {
                cell.push(' ');
                cell.push_str(word);
            }
            None => cells.push(word.to_owned()),
        }
    }
    // a line of words alone is one of heads, whose words are gathered elsewhere
    if figures { cells } else { line.split_whitespace().map(str::to_owned).collect() }
}

/// The same table with its rows as columns, where it lies: a row of engine speeds above one of torque or power. Else the rows as they were.
fn standing(rows: Vec<Row>) -> Result<Vec<Row>, Vec<Row>> {
    /// Engine speed, torque, power and a few more.
    const MOST_ROWS: usize = 8;
    let data: Vec<&Row> = rows.iter().filter(|row| is_data(row)).collect();
    if data.len() < 2 || data.len() > MOST_ROWS || !(lies_with_heads(&data) || lies_bare(&data)) {
        return Err(rows);
    }
    let width = data.iter().map(|row| row.cells.len()).max().unwrap_or(0);
    let line = data.iter().find(|row| !is_speeds(row)).map_or(0, |row| row.line);
    let column = |at: usize| {
        let cells: Vec<String> = data.iter().map(|row| row.cells.get(at).cloned().unwrap_or_default()).collect();
        Row { line, text: cells.join("\t"), cells }
    };
    Ok((0..width).map(column).collect())
}

/// Every row begins with a head, and one of them is of engine speed.
fn lies_with_heads(data: &[&Row]) -> bool {
    let heads =
        || data.iter().filter_map(|row| row.cells.first()).map(|cell| if readings(cell).is_some() { None } else { header::column(cell) });
    let engine =
        |head: Option<header::Column>| matches!(head, Some(header::Column::Engine | header::Column::Thousands | header::Column::Speed));
    heads().any(engine) && heads().all(|head| head.is_some()) && data.iter().all(|row| row.cells.len() >= 3)
}

/// No heads: a row of three or more rising or falling engine speeds, and no column that could be one.
fn lies_bare(data: &[&Row]) -> bool {
    let width = data.iter().map(|row| row.cells.len()).min().unwrap_or(0);
    let column = |at: usize| data.iter().filter_map(|row| row.cells.get(at)).map(String::as_str).collect::<Vec<_>>();
    width >= 3 && data.iter().any(|row| is_speeds(row)) && !(0..width).any(|at| are_speeds(&column(at)))
}

fn is_speeds(row: &Row) -> bool {
    let cells: Vec<&str> = row.cells.iter().map(String::as_str).collect();
    let numbers: Vec<&str> = cells.iter().copied().skip(usize::from(cells.first().is_some_and(|cell| readings(cell).is_none()))).collect();
    are_speeds(&numbers)
}

/// Whether cells read as engine speeds of a pull, all rising or all falling.
fn are_speeds(cells: &[&str]) -> bool {
    let speeds: Vec<f64> =
        cells.iter().filter_map(|cell| readings(cell)?.0.into_iter().flatten().find(|speed| super::is_engine_speed(*speed))).collect();
    let rising = |pair: &[f64]| pair.first() < pair.last();
    let falling = |pair: &[f64]| pair.first() > pair.last();
    speeds.len() == cells.len() && cells.len() >= 2 && (speeds.windows(2).all(rising) || speeds.windows(2).all(falling))
}
