//! Which column is what: by the heads, by units in the cells, by what an engine can have, by torque and power that stand side by side.

use super::header::{self, Column};
use super::pairs;
use super::table::{self, Row};
use super::{Detected, Done, MeasuredAt, Quantity, Reading, RowError, Separator, Told, is_engine_speed};
use crate::motion::curve::CurvePoint;
use crate::motion::{in_newton_metres, rpm, torque_of};
use crate::units::{Measured, Power, Torque, Unit, limits};

/// How one column's figures are read.
#[derive(Clone, Copy, Debug)]
pub(super) enum Figures {
    Torque(&'static Unit<Torque>),
    Power(&'static Unit<Power>),
}

impl Figures {
    pub(super) fn quantity(self) -> Quantity {
        match self {
            Self::Torque(unit) => Quantity::Torque(unit.symbol),
            Self::Power(unit) => Quantity::Power(unit.symbol),
        }
    }

    /// Whether an engine can have so much; nothing, and less than that, is no matter of the unit.
    fn can_be(self, value: f64) -> bool {
        match self {
            Self::Torque(unit) => limits::TORQUE.unit.number(unit.of(value)) <= limits::TORQUE.greatest,
            Self::Power(unit) => limits::POWER.unit.number(unit.of(value)) <= limits::POWER.greatest,
        }
    }

    /// What is wrong with a cell that cannot be.
    fn beyond(self, cell: &str) -> RowError {
        let (word, range) = match self {
            Self::Torque(unit) => (limits::TORQUE.word, limits::TORQUE.range_in(unit)),
            Self::Power(unit) => (limits::POWER.word, limits::POWER.range_in(unit)),
        };
        RowError::Beyond { cell: cell.to_owned(), word, range }
    }

    /// Torque at an engine speed (rpm).
    fn torque(self, value: f64, speed_rpm: f64) -> Torque {
        match self {
            Self::Torque(unit) => (unit.make)(value),
            Self::Power(unit) => torque_of((unit.make)(value), rpm(speed_rpm)),
        }
    }
}

/// What the marks of a column's numbers mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Marks {
    /// As they are likeliest: a comma before three digits marks thousands.
    Usual,
    /// A comma before three digits is a decimal point.
    DecimalComma,
    /// The figures are thousands.
    Thousands,
}

/// A column, counted from 0, and how its numbers are written.
#[derive(Clone, Copy, Debug)]
struct Chosen {
    at: usize,
    marks: Marks,
}

impl Chosen {
    fn value(self, cell: &str) -> Option<f64> {
        let ([likelier, other], _) = table::readings(cell)?;
        match self.marks {
            Marks::Usual => likelier.or(other),
            Marks::DecimalComma => other.or(likelier),
            Marks::Thousands => likelier.or(other).map(|value| 1000.0 * value),
        }
    }
}

/// One way to read the rows.
#[derive(Clone, Copy, Debug)]
pub(super) struct Candidate {
    speed: Chosen,
    value: Chosen,
    pub(super) figures: Figures,
    /// Whether no head names its unit, and nothing else tells it.
    pub(super) assumed: bool,
}

impl Candidate {
    pub(super) fn reading(&self) -> Reading {
        Reading { speed_column: self.speed.at + 1, value_column: self.value.at + 1, quantity: self.figures.quantity() }
    }

    /// The same with its unit told by something else than a head.
    pub(super) fn known(self) -> Self {
        Self { assumed: false, ..self }
    }

    /// The point of a row.
    pub(super) fn point(&self, row: &Row) -> Result<CurvePoint, RowError> {
        let needed = self.speed.at.max(self.value.at) + 1;
        let read = |chosen: Chosen| {
            let cell = row.cells.get(chosen.at).ok_or(RowError::TooShort { columns: row.cells.len(), needed })?;
            let value = chosen.value(cell).ok_or_else(|| RowError::NotANumber { cell: cell.clone() })?;
            Ok((value, cell))
        };
        let (speed, _) = read(self.speed)?;
        let (value, cell) = read(self.value)?;
        if !self.figures.can_be(value) {
            return Err(self.figures.beyond(cell));
        }
        Ok(CurvePoint { speed: rpm(speed), torque: self.figures.torque(value, speed) })
    }

    /// Whether the rows read so are an engine's: every figure can be, and the greatest torque is more than a toy's.
    fn is_an_engine(&self, rows: &[Row]) -> bool {
        /// Less than this (N·m) no engine of a car gives. Common practice, no published source.
        const LEAST: f64 = 5.0;
        let read = rows.iter().map(|row| self.point(row));
        let torques: Vec<f64> =
            read.clone().filter_map(Result::ok).map(|point| in_newton_metres(point.torque)).filter(|torque| torque.is_finite()).collect();
        let most = torques.into_iter().fold(0.0, f64::max);
        (LEAST..=limits::TORQUE.greatest).contains(&most) && !read.into_iter().any(|point| matches!(point, Err(RowError::Beyond { .. })))
    }
}

/// How the rows are read, and how else they could be.
#[derive(Debug)]
pub(super) struct Plan {
    pub(super) taken: Candidate,
    others: Vec<Reading>,
    head_line: Option<usize>,
    measured_at: Option<MeasuredAt>,
}

impl Plan {
    /// What was done to the numbers.
    pub(super) fn done(&self) -> impl Iterator<Item = Done> {
        let comma = |chosen: Chosen| (chosen.marks == Marks::DecimalComma).then_some(Done::DecimalComma { column: chosen.at + 1 });
        let thousands = (self.taken.speed.marks == Marks::Thousands).then_some(Done::ThousandsOfRpm);
        thousands.into_iter().chain(comma(self.taken.speed)).chain(comma(self.taken.value))
    }

    /// What was taken for what, in the caller's terms.
    pub(super) fn detected(self, separator: Separator, done: Vec<Done>) -> Detected {
        let Reading { speed_column, value_column, quantity } = self.taken.reading();
        let (head_line, assumed, measured_at) = (self.head_line, self.taken.assumed, self.measured_at);
        Detected { separator, speed_column, value_column, quantity, head_line, assumed, measured_at, others: self.others, done }
    }
}

/// Decides how the rows are read; `None` where the heads name a road speed and no engine speed.
pub(super) fn plan(heads: &[Row], rows: &[Row], separator: Separator, told: &Told) -> Option<Plan> {
    let named = named(heads, rows, separator);
    let columns: Vec<Option<Column>> = named.heads.iter().map(|head| header::column(head)).collect();
    let all = candidates(&columns, rows, told)?;
    let chosen = all.iter().find(|candidate| Some(candidate.reading()) == told.reading).or(all.first()).copied()?;
    // a person's choice is no assumption
    let taken = Candidate { assumed: chosen.assumed && told.reading != Some(chosen.reading()), ..chosen };
    let mut others: Vec<Reading> = Vec::new();
    for reading in all.iter().map(Candidate::reading) {
        if reading != taken.reading() && !others.contains(&reading) {
            others.push(reading);
        }
    }
    let of_value = named.heads.get(taken.value.at).and_then(|head| header::measured_at(head));
    let of_title = || heads.iter().filter(|row| Some(row.line) != named.line).find_map(|row| header::measured_at(&row.text));
    Some(Plan { taken, others, head_line: named.line, measured_at: of_value.or_else(of_title) })
}

/// The heads of the columns: of a line above the rows, or what stands behind the numbers of the first row.
#[derive(Default)]
struct Named {
    line: Option<usize>,
    heads: Vec<String>,
}

fn named(heads: &[Row], rows: &[Row], separator: Separator) -> Named {
    let knows = |words: &[String]| words.iter().any(|head| header::column(head).is_some());
    let above = heads.iter().rev().find_map(|row| {
        let other_mark = ['\t', '|', ';', ','].into_iter().find(|mark| row.text.contains(*mark));
        let words = match other_mark {
            Some(mark) if separator == Separator::Blanks => row.text.split(mark).map(|head| head.trim().to_owned()).collect(),
            None if row.cells.len() < 2 || separator == Separator::Blanks => header::gathered(&row.text),
            _ => row.cells.clone(),
        };
        knows(&words).then_some(Named { line: Some(row.line), heads: words })
    });
    let inside = || {
        let words: Vec<String> =
            rows.first()?.cells.iter().map(|cell| table::readings(cell).map_or("", |(_, unit)| unit).to_owned()).collect();
        knows(&words).then_some(Named { line: None, heads: words })
    };
    above.or_else(inside).unwrap_or_default()
}

/// Every way to read the rows that gives an engine, the likeliest first; `None` where only a road speed is named.
fn candidates(columns: &[Option<Column>], rows: &[Row], told: &Told) -> Option<Vec<Candidate>> {
    let width = rows.iter().map(|row| row.cells.len()).max().unwrap_or(0).max(2);
    let of = |at: usize| columns.get(at).copied().flatten();
    let named = columns.iter().flatten().any(|column| matches!(column, Column::Torque(_) | Column::Power(_)));
    let mut found = Vec::new();
    for speed in speeds(columns, rows, width)? {
        let mut values: Vec<(usize, Vec<Figures>, bool)> = (0..width)
            .filter(|at| *at != speed.at && (!named || of(*at).is_some()))
            .filter_map(|at| meanings(of(at), told).map(|(figures, assumed)| (at, figures, assumed)))
            .collect();
        // torque before power, a unit that is named before one that is not
        values.sort_by_key(|(at, _, assumed)| (matches!(of(*at), Some(Column::Power(_))), *assumed));
        for (at, figures, assumed) in values {
            let read = |figures: Figures| {
                let marks = marks(rows, at, |value| figures.can_be(value));
                Candidate { speed, value: Chosen { at, marks }, figures, assumed }
            };
            found.extend(figures.into_iter().map(read));
        }
    }
    let engines: Vec<Candidate> = found.iter().copied().filter(|candidate| candidate.is_an_engine(rows)).collect();
    // where none is an engine, the rows themselves say what is wrong with the first
    let found = if engines.is_empty() { found } else { engines };
    Some(pairs::that_agree(found, rows))
}

/// The columns that can be engine speed, the likeliest first; `None` where only a road speed is named.
fn speeds(columns: &[Option<Column>], rows: &[Row], width: usize) -> Option<Vec<Chosen>> {
    let find = |wanted: fn(&Column) -> bool| columns.iter().position(|column| column.as_ref().is_some_and(wanted));
    if let Some(at) = find(|column| matches!(column, Column::Engine | Column::Thousands)) {
        let thousands = matches!(columns.get(at), Some(Some(Column::Thousands)));
        let marks = if thousands { Marks::Thousands } else { speed_marks(rows, at).unwrap_or(Marks::Usual) };
        return Some(vec![Chosen { at, marks }]);
    }
    if let Some(at) = find(|column| matches!(column, Column::Speed))
        && let Some(marks) = speed_marks(rows, at)
    {
        return Some(vec![Chosen { at, marks }]);
    }
    let bare = (0..width).filter(|at| columns.get(*at).copied().flatten().is_none());
    let mut possible: Vec<(f64, Chosen)> = bare
        .filter_map(|at| {
            let chosen = Chosen { at, marks: speed_marks(rows, at)? };
            let greatest = rows.iter().filter_map(|row| chosen.value(row.cells.get(at)?)).fold(0.0, f64::max);
            Some((greatest, chosen))
        })
        .collect();
    // engine speeds are mostly the greatest figures of a table, and thousands of them are taken only where nothing else will do
    possible.sort_by(|a, b| (a.1.marks == Marks::Thousands).cmp(&(b.1.marks == Marks::Thousands)).then(b.0.total_cmp(&a.0)));
    if possible.is_empty() {
        if find(|column| matches!(column, Column::Road | Column::Speed)).is_some() {
            return None;
        }
        let value = find(|column| matches!(column, Column::Torque(_) | Column::Power(_)));
        return Some(vec![Chosen { at: usize::from(value == Some(0)), marks: Marks::Usual }]);
    }
    Some(possible.into_iter().map(|(_, chosen)| chosen).collect())
}

/// How a column reads as engine speeds; `None` where it does not.
fn speed_marks(rows: &[Row], at: usize) -> Option<Marks> {
    let fits = |speed: f64| speed == 0.0 || is_engine_speed(speed);
    let reads = |marks: Marks| {
        let speeds = rows.iter().filter(|row| table::is_data(row)).filter_map(|row| Chosen { at, marks }.value(row.cells.get(at)?));
        let mut speeds = speeds.peekable();
        speeds.peek().is_some() && speeds.all(fits)
    };
    let usual = marks(rows, at, fits);
    [usual, Marks::Thousands].into_iter().find(|marks| reads(*marks))
}

/// What a comma before three digits means in a column.
fn marks(rows: &[Row], at: usize, fits: impl Fn(f64) -> bool) -> Marks {
    let cells = || rows.iter().filter_map(|row| row.cells.get(at));
    let both: Vec<(f64, f64)> = cells().filter_map(|cell| table::readings(cell)?.0[0].zip(table::readings(cell)?.0[1])).collect();
    // a comma that can only be a decimal one tells of the others
    let decimal = cells().any(|cell| cell.contains(',') && table::readings(cell).is_some_and(|(readings, _)| readings[1].is_none()));
    let thousands_fit = both.iter().all(|(thousands, _)| fits(*thousands));
    let decimals_fit = both.iter().all(|(_, decimals)| fits(*decimals));
    if !both.is_empty() && decimals_fit && (decimal || !thousands_fit) { Marks::DecimalComma } else { Marks::Usual }
}

/// What a column may be by its head, the likeliest first, and whether that is an assumption; `None` where it is no figure of an engine.
fn meanings(column: Option<Column>, told: &Told) -> Option<(Vec<Figures>, bool)> {
    let torques = || units::<Torque>(told, &["lbf·ft", "N·m", "kgf·m"]).map(Figures::Torque);
    let powers = || units::<Power>(told, &["hp", "kW", "PS"]).map(Figures::Power);
    match column {
        Some(Column::Torque(Some(unit))) => Some((vec![Figures::Torque(unit)], false)),
        Some(Column::Power(Some(unit))) => Some((vec![Figures::Power(unit)], false)),
        Some(Column::Torque(None)) => Some((torques().collect(), true)),
        Some(Column::Power(None)) => Some((powers().collect(), true)),
        None => Some((torques().chain(powers()).collect(), true)),
        Some(Column::Engine | Column::Thousands | Column::Speed | Column::Road | Column::Other) => None,
    }
}

/// The system's usual unit, then the others people use.
fn units<Q: Measured>(told: &Told, symbols: &'static [&'static str]) -> impl Iterator<Item = &'static Unit<Q>> {
    let usual = Q::usual(told.system);
    let others = Q::units().iter().filter(move |unit| unit.symbol != usual.symbol && symbols.contains(&unit.symbol));
    std::iter::once(usual).chain(others)
}
