//! A torque curve from pasted rows, as people have them: CSV, tabs, bars, semicolons, blanks or `105 lb ft @ 1500 rpm`; rows of rpm with
//! torque, power or both in any unit known here, standing or lying, rising or falling.
//!
//! What was taken for what is said in [`Detected`], what else it could be in [`Detected::others`], and what was done to the rows in
//! [`Detected::done`], so that a person can see and correct it. Where no head names the unit, the usual one of the chosen system is
//! assumed and marked, unless torque and power stand side by side: then they tell each other's units.

mod columns;
mod header;
mod pairs;
mod sweep;
mod table;

use super::{CurveError, CurvePoint, EngineCurve};
use crate::problem::Explain;
use crate::units::{System, limits, number};

/// What parts the columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Separator {
    /// Tabs.
    Tab,
    /// Upright bars.
    Bar,
    /// Semicolons.
    Semicolon,
    /// Commas.
    Comma,
    /// Colons or equals signs.
    Colon,
    /// The sign @, or the word at.
    At,
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

/// Where figures were measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredAt {
    /// At the engine.
    Engine,
    /// At the driven wheels, losses of the driveline taken off.
    Wheels,
}

/// One way to read the columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    /// The column of engine speed, counted from 1.
    pub speed_column: usize,
    /// The column of torque or power, counted from 1.
    pub value_column: usize,
    /// What that column is.
    pub quantity: Quantity,
}

/// What was done to the rows to have a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Done {
    /// Rows and columns were swapped.
    Swapped,
    /// One line held several rows, parted by semicolons.
    LineOfRows,
    /// The rows went from the highest speed down.
    Reversed,
    /// The rows were in no order.
    Sorted,
    /// Of an up-and-down pull, or of several, one sweep was taken.
    OneSweep {
        /// Whether it is a rising one.
        rising: bool,
        /// Rows of the others.
        left_out: usize,
    },
    /// Rows at a speed that stood there before were averaged with it.
    Averaged {
        /// How many rows.
        rows: usize,
    },
    /// Rows at standstill were left out.
    AtRestLeftOut {
        /// How many rows.
        rows: usize,
    },
    /// Engine speeds were read as thousands.
    ThousandsOfRpm,
    /// A comma before three digits was read as a decimal point, as only that gives figures an engine can have.
    DecimalComma {
        /// The column, counted from 1.
        column: usize,
    },
    /// Figures of the wheels were divided by what arrives there.
    BroughtToEngine {
        /// Share of the engine's torque that arrives at the wheels, 0 to 1.
        efficiency: f64,
    },
}

/// What was taken for what.
#[derive(Clone, Debug, PartialEq)]
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
    /// Where the heads say the figures were measured; `None` where they do not say.
    pub measured_at: Option<MeasuredAt>,
    /// Other readings that would give an engine too, to be offered; [`Told::reading`] chooses one.
    pub others: Vec<Reading>,
    /// What was done to the rows.
    pub done: Vec<Done>,
}

/// What is known beside the text.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Told {
    /// The system whose usual units stand in where no head names one.
    pub system: System,
    /// The reading chosen among those offered; one that the text does not offer is passed over.
    pub reading: Option<Reading>,
    /// For figures of the wheels: the share (above 0, up to 1) of the engine's torque that arrives there.
    pub wheel_efficiency: Option<f64>,
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
    /// The figure is more than any engine has; the line was left out.
    Beyond {
        /// The cell as it stands.
        cell: String,
        /// The quantity's name.
        word: &'static str,
        /// What it can be, in the unit it was read in.
        range: String,
    },
    /// The heads name a road speed and no engine speed.
    RoadSpeedOnly,
    /// The curve breaks here.
    Curve(CurveError),
}

impl Explain for RowProblem {
    fn what(&self) -> String {
        let what = match &self.error {
            RowError::NotANumber { cell } => format!("“{}” is not a number", number::clip(cell)),
            RowError::TooShort { columns: 1, needed } => format!("there is one column where {needed} are needed"),
            RowError::TooShort { columns, needed } => format!("there are {columns} columns where {needed} are needed"),
            RowError::Beyond { cell, word, .. } => format!("“{}” is outside what the {word} of an engine can be", number::clip(cell)),
            RowError::RoadSpeedOnly => "the heads name a road speed but no engine speed".into(),
            RowError::Curve(error) => error.what(),
        };
        format!("line {}: {what}", self.line)
    }

    fn what_to_do(&self) -> String {
        match &self.error {
            RowError::NotANumber { .. } => "correct the cell; the line was left out".into(),
            RowError::TooShort { .. } => "complete the line; it was left out".into(),
            RowError::Beyond { range, .. } => format!("check the column and its unit ({range}); the line was left out"),
            RowError::RoadSpeedOnly => "add the column of engine rpm".into(),
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
    /// The points read, as one rising pull, whether or not they make a curve.
    pub points: Vec<CurvePoint>,
    /// Every line that has something wrong.
    pub problems: Vec<RowProblem>,
}

/// Whether a figure can be the engine speed (rpm) of a row.
fn is_engine_speed(rpm: f64) -> bool {
    /// Slower than this no engine is loaded on a dynamometer. Common practice, no published source.
    const SLOWEST: f64 = 300.0;
    (SLOWEST..=limits::ENGINE_SPEED.greatest).contains(&rpm)
}

/// Reads pasted rows of an engine's own figures. Lines that begin with `#` are remarks. Heads are looked for above the first row of numbers.
///
/// ```
/// use layshaft::motion::CurveError;
/// use layshaft::motion::curve::rows::read;
/// use layshaft::units::{System, common::in_rpm, show, unit};
/// let pasted = read("rpm;torque Nm\n2000;180\n4000;210\n5500;170", System::Metric);
/// let peak = pasted.curve?.peak_torque();
/// assert_eq!((in_rpm(peak.speed).round(), show(&peak.torque, &unit::N_M, 0).as_str()), (4_000.0, "210 N·m"));
/// # Ok::<(), CurveError>(())
/// ```
pub fn read(text: &str, system: System) -> Pasted {
    read_as(text, &Told { system, ..Told::default() })
}

/// Reads pasted rows with a reading chosen, or from the wheels.
pub fn read_as(text: &str, told: &Told) -> Pasted {
    let table = table::table(text);
    let Some(first) = table.rows.iter().position(table::is_data) else { return nothing(table.rows) };
    let (heads, rows) = table.rows.split_at(first);
    let mut problems = Vec::new();
    let Some(plan) = columns::plan(heads, rows, table.separator, told) else {
        let line = heads.last().map_or(1, |row| row.line);
        problems.push(RowProblem { line, error: RowError::RoadSpeedOnly });
        return Pasted { curve: Err(CurveError::NoPoints), detected: None, points: Vec::new(), problems };
    };
    let mut done = table.done;
    let mut points = Vec::new();
    for row in rows {
        match plan.taken.point(row) {
            Ok(point) => points.push((row.line, point)),
            Err(error) => problems.push(RowProblem { line: row.line, error }),
        }
    }
    done.extend(plan.done());
    let points = sweep::one_rising(points, &mut done);
    let efficiency = told.wheel_efficiency.filter(|share| *share > 0.0 && *share <= 1.0);
    done.extend(efficiency.map(|efficiency| Done::BroughtToEngine { efficiency }));
    let placed = points.into_iter().map(|(line, point)| (line, CurvePoint { torque: point.torque / efficiency.unwrap_or(1.0), ..point }));
    let (lines, points): (Vec<usize>, Vec<CurvePoint>) = placed.unzip();
    problems.extend(faults(&lines, &points));
    crate::order::by_key(&mut problems, |problem| problem.line);
    Pasted { curve: EngineCurve::through(&points), detected: Some(plan.detected(table.separator, done)), points, problems }
}

/// A text without a row of numbers: its first cells are what is no number.
fn nothing(rows: Vec<table::Row>) -> Pasted {
    let problems = rows.into_iter().filter_map(|row| {
        let cell = row.cells.into_iter().next().filter(|cell| !cell.is_empty())?;
        Some(RowProblem { line: row.line, error: RowError::NotANumber { cell } })
    });
    Pasted { curve: Err(CurveError::NoPoints), detected: None, points: Vec::new(), problems: problems.collect() }
}

/// Each point that cannot be one of a curve, with its line.
fn faults(lines: &[usize], points: &[CurvePoint]) -> Vec<RowProblem> {
    let fault = |(line, point): (&usize, &CurvePoint)| {
        let error = super::check_point(point).err()?;
        Some(RowProblem { line: *line, error: RowError::Curve(error) })
    };
    lines.iter().zip(points).filter_map(fault).collect()
}
