//! A torque curve from pasted rows: CSV, tabs, semicolons or blanks; rpm with torque, power or both, in any unit known here.
//!
//! What was taken for what is said in [`Detected`], so that a person can see and correct it. Where no head names the unit, the
//! usual one of the chosen system is assumed and marked.

use super::header::{self, Column};
use super::{CurveError, CurvePoint, EngineCurve};
use crate::motion::{rpm, torque_of};
use crate::problem::Explain;
use crate::units::{Measured, Power, System, Torque, Unit, number};

/// What parts the columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Separator {
    /// Tabs.
    Tab,
    /// Semicolons.
    Semicolon,
    /// Commas.
    Comma,
    /// One or more blanks.
    Blanks,
}

/// What the second quantity is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Torque, in the unit of this symbol.
    Torque(&'static str),
    /// Power, in the unit of this symbol; torque is power over angular speed.
    Power(&'static str),
}

/// What was taken for what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Detected {
    /// What parts the columns.
    pub separator: Separator,
    /// The column of engine speed, counted from 1.
    pub speed_column: usize,
    /// The column of torque or power, counted from 1.
    pub value_column: usize,
    /// What that column is.
    pub quantity: Quantity,
    /// The line with the heads, counted from 1.
    pub head_line: Option<usize>,
    /// Whether the unit (or the quantity) was assumed, because no head names it.
    pub assumed: bool,
}

/// Something wrong in one line.
#[derive(Clone, Debug, PartialEq)]
pub struct RowProblem {
    /// The line, counted from 1 in the pasted text.
    pub line: usize,
    /// What is wrong in it.
    pub error: RowError,
}

/// What is wrong in a line.
#[derive(Clone, Debug, PartialEq)]
pub enum RowError {
    /// A cell that should be a number is none; the line was left out.
    NotANumber {
        /// The cell as it stands.
        cell: String,
    },
    /// The line has too few columns; it was left out.
    TooShort {
        /// Columns found.
        columns: usize,
        /// Columns needed.
        needed: usize,
    },
    /// The curve breaks here.
    Curve(CurveError),
}

impl Explain for RowProblem {
    fn what(&self) -> String {
        let what = match &self.error {
            RowError::NotANumber { cell } => format!("“{}” is not a number", number::clip(cell)),
            RowError::TooShort { columns: 1, needed } => format!("there is one column where {needed} are needed"),
            RowError::TooShort { columns, needed } => format!("there are {columns} columns where {needed} are needed"),
            RowError::Curve(error) => error.what(),
        };
        format!("line {}: {what}", self.line)
    }

    fn what_to_do(&self) -> String {
        match &self.error {
            RowError::NotANumber { .. } => "correct the cell; the line was left out".into(),
            RowError::TooShort { .. } => "complete the line; it was left out".into(),
            RowError::Curve(error) => error.what_to_do(),
        }
    }
}

/// What became of a pasted text.
#[derive(Clone, Debug, PartialEq)]
pub struct Pasted {
    /// The curve, or why there is none.
    pub curve: Result<EngineCurve, CurveError>,
    /// What was taken for what; `None` where the text has no row of numbers.
    pub detected: Option<Detected>,
    /// The points read, whether or not they make a curve.
    pub points: Vec<CurvePoint>,
    /// Every line that has something wrong.
    pub problems: Vec<RowProblem>,
}

struct Line {
    number: usize,
    cells: Vec<String>,
}

struct Plan {
    detected: Detected,
    point: Reading,
}

enum Reading {
    Torque(&'static Unit<Torque>),
    Power(&'static Unit<Power>),
}

/// Reads pasted rows. Lines that begin with `#` are remarks. Heads are looked for above the first row of numbers.
pub fn read(text: &str, system: System) -> Pasted {
    let separator = separator(text);
    let lines = lines(text, separator);
    let Some(first) = lines.iter().position(|line| is_data(&line.cells)) else {
        let problems = lines.into_iter().filter_map(|line| not_a_number(line.number, line.cells.into_iter().next()?)).collect();
        return Pasted { curve: Err(CurveError::NoPoints), detected: None, points: Vec::new(), problems };
    };
    let (heads, rows) = lines.split_at(first);
    let plan = plan(text, heads, separator, system);
    let mut problems = Vec::new();
    let mut points: Vec<(usize, CurvePoint)> = Vec::new();
    for row in rows {
        match point(row, &plan) {
            Ok(point) => points.push((row.number, point)),
            Err(error) => problems.push(RowProblem { line: row.number, error }),
        }
    }
    let (numbers, points): (Vec<usize>, Vec<CurvePoint>) = points.into_iter().unzip();
    let curve = EngineCurve::through(&points);
    problems.extend(breaks(&numbers, &points));
    crate::order::by_key(&mut problems, |problem| problem.line);
    Pasted { curve, detected: Some(plan.detected), points, problems }
}

/// Each place where the points stop being a curve, with its line.
fn breaks(numbers: &[usize], points: &[CurvePoint]) -> Vec<RowProblem> {
    let alone = numbers.iter().zip(points).filter_map(|(line, point)| {
        let error = super::check_point(point).err()?;
        Some(RowProblem { line: *line, error: RowError::Curve(error) })
    });
    let pairs = numbers.iter().skip(1).zip(points.windows(2)).filter_map(|(line, pair)| {
        let error = EngineCurve::through(pair).err()?;
        matches!(error, CurveError::Repeated { .. } | CurveError::Falling { .. })
            .then_some(RowProblem { line: *line, error: RowError::Curve(error) })
    });
    alone.chain(pairs).collect()
}

fn not_a_number(line: usize, cell: String) -> Option<RowProblem> {
    (!cell.is_empty()).then_some(RowProblem { line, error: RowError::NotANumber { cell } })
}

fn kept(text: &str) -> impl Iterator<Item = (usize, &str)> {
    (1..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty() && !line.trim_start().starts_with('#'))
}

/// Tab before semicolon; then blanks where every word of a row of numbers is one; commas otherwise.
fn separator(text: &str) -> Separator {
    let begins = |c: char| c.is_ascii_digit() || matches!(c, '.' | '"' | '+' | '-' | '−');
    let rows: Vec<&str> = kept(text).map(|(_, line)| line.trim()).filter(|line| line.starts_with(begins)).collect();
    let blanks = |line: &&str| {
        let words: Vec<&str> = line.split_whitespace().collect();
        words.len() >= 2 && words.iter().all(|word| number(word, f64::INFINITY).is_some() && !word.ends_with(',') && !word.starts_with(','))
    };
    if rows.iter().any(|line| line.contains('\t')) {
        Separator::Tab
    } else if rows.iter().any(|line| line.contains(';')) {
        Separator::Semicolon
    } else if rows.iter().any(blanks) {
        Separator::Blanks
    } else if rows.iter().any(|line| line.contains(',')) {
        Separator::Comma
    } else {
        Separator::Blanks
    }
}

fn lines(text: &str, separator: Separator) -> Vec<Line> {
    kept(text).map(|(number, line)| Line { number, cells: cells(line, separator) }).collect()
}

fn cells(line: &str, separator: Separator) -> Vec<String> {
    let delimiter = match separator {
        Separator::Tab => b'\t',
        Separator::Semicolon => b';',
        Separator::Comma => b',',
        Separator::Blanks => return line.split_whitespace().map(str::to_owned).collect(),
    };
    let mut reader = csv::ReaderBuilder::new().delimiter(delimiter).has_headers(false).flexible(true).from_reader(line.as_bytes());
    let record = reader.records().next().and_then(Result::ok).unwrap_or_default();
    record.iter().map(|cell| cell.trim().to_owned()).collect()
}

/// A cell as a number not above `most`; anything behind the digits but a unit makes it none.
fn number(cell: &str, most: f64) -> Option<f64> {
    let (readings, rest) = number::leading(cell)?;
    let unit_like = rest.trim().chars().all(|c| c.is_alphabetic() || matches!(c, '.' | '·' | '-' | '/' | '*' | ' '));
    readings.into_iter().flatten().find(|value| value.abs() <= most).filter(|_| unit_like)
}

fn is_data(cells: &[String]) -> bool {
    cells.iter().filter(|cell| number(cell, f64::INFINITY).is_some()).count() >= 2
}

/// Decides what the columns are from the heads above the rows, the last line first.
fn plan(text: &str, heads: &[Line], separator: Separator, system: System) -> Plan {
    let named = heads.iter().rev().find_map(|line| {
        let raw = text.lines().nth(line.number - 1).unwrap_or("");
        let words = if separator == Separator::Blanks { header::gathered(raw) } else { line.cells.clone() };
        let columns: Vec<Option<Column>> = words.iter().map(|head| header::column(head)).collect();
        columns.iter().any(Option::is_some).then_some((line.number, columns))
    });
    let (head_line, columns) = named.map_or((None, Vec::new()), |(line, columns)| (Some(line), columns));
    let find = |wanted: fn(&Column) -> bool| columns.iter().position(|column| column.as_ref().is_some_and(wanted));
    let torque = find(|column| matches!(column, Column::Torque(_)));
    let power = find(|column| matches!(column, Column::Power(_)));
    let value = torque.or(power);
    let speed = find(|column| matches!(column, Column::Speed)).unwrap_or_else(|| usize::from(value == Some(0)));
    let value_at = value.unwrap_or_else(|| usize::from(speed == 0));
    let (point, assumed) = match columns.get(value_at).copied().flatten() {
        Some(Column::Torque(unit)) => (Reading::Torque(unit.unwrap_or_else(|| Torque::usual(system))), unit.is_none()),
        Some(Column::Power(unit)) => (Reading::Power(unit.unwrap_or_else(|| Power::usual(system))), unit.is_none()),
        _ => (Reading::Torque(Torque::usual(system)), true),
    };
    let quantity = match point {
        Reading::Torque(unit) => Quantity::Torque(unit.symbol),
        Reading::Power(unit) => Quantity::Power(unit.symbol),
    };
    Plan { detected: Detected { separator, speed_column: speed + 1, value_column: value_at + 1, quantity, head_line, assumed }, point }
}

fn point(row: &Line, plan: &Plan) -> Result<CurvePoint, RowError> {
    /// Above this a number in the value column is read with its comma as a decimal point.
    const MOST: f64 = 20_000.0;
    let cell = |column: usize| {
        row.cells
            .get(column - 1)
            .ok_or(RowError::TooShort { columns: row.cells.len(), needed: plan.detected.speed_column.max(plan.detected.value_column) })
    };
    let value = |column: usize, most: f64| {
        let cell = cell(column)?;
        number(cell, most).ok_or_else(|| RowError::NotANumber { cell: cell.clone() })
    };
    let speed = rpm(value(plan.detected.speed_column, f64::INFINITY)?);
    let figure = value(plan.detected.value_column, MOST)?;
    let torque = match plan.point {
        Reading::Torque(unit) => (unit.make)(figure),
        Reading::Power(unit) => torque_of((unit.make)(figure), speed),
    };
    Ok(CurvePoint { speed, torque })
}
