//! The tables as text: a head line, a semicolon between the cells, blanks between the names in a cell.

use super::TableError;
use super::table::{Cause, Condition, Cost, Given, Pick, Reach, Symptom, Test};
use super::wear::Wear;
use crate::checklist::Range;
use crate::spreadsheet;

/// The four tables as text.
#[derive(Clone, Copy, Debug)]
pub struct Texts<'a> {
    /// Symptoms.
    pub symptoms: &'a str,
    /// Conditions.
    pub conditions: &'a str,
    /// Tests.
    pub tests: &'a str,
    /// Causes.
    pub causes: &'a str,
}

impl Texts<'static> {
    /// Those that are built in.
    pub const BUILT_IN: Self = Self {
        symptoms: include_str!("data/symptoms.csv"),
        conditions: include_str!("data/conditions.csv"),
        tests: include_str!("data/tests.csv"),
        causes: include_str!("data/causes.csv"),
    };
}

/// The lines of one table, cut into cells.
pub(super) struct Lines {
    table: &'static str,
    lines: Vec<Line>,
}

/// A line of a table.
struct Line {
    table: &'static str,
    number: usize,
    cells: Vec<String>,
}

impl Lines {
    pub(super) fn of(table: &'static str, text: &str) -> Result<Self, TableError> {
        let file = spreadsheet::Table::of(text).ok_or(TableError::Empty { table })?;
        let columns = file.cells(file.header).map_or(0, |cells| cells.len());
        let mut lines: Vec<Line> = Vec::new();
        for (number, line) in &file.lines {
            let cells = file.cells(line).filter(|cells| cells.len() == columns);
            let line = Line { table, number: *number, cells: cells.ok_or(TableError::Cells { table, line: *number })? };
            if lines.iter().any(|other| other.cell(0) == line.cell(0)) {
                return Err(TableError::Twice { table, word: line.cell(0).to_owned() });
            }
            lines.push(line);
        }
        Ok(Self { table, lines })
    }

    fn read<T>(self, read: impl Fn(&Line) -> Result<T, TableError>) -> Result<Vec<T>, TableError> {
        if self.lines.is_empty() {
            return Err(TableError::Empty { table: self.table });
        }
        self.lines.iter().map(read).collect()
    }

    pub(super) fn conditions(self) -> Result<Vec<Condition>, TableError> {
        self.read(|line| {
            let pick = match line.cell(2) {
                "one" => Pick::One,
                "many" => Pick::Many,
                "implied" => Pick::Implied,
                other => return Err(line.unknown(other)),
            };
            Ok(Condition { id: line.text(0), group: line.text(1), pick, said: line.text(3) })
        })
    }

    pub(super) fn symptoms(self, conditions: &[Condition]) -> Result<Vec<Symptom>, TableError> {
        let ids: Vec<String> = self.lines.iter().map(|line| line.text(0)).collect();
        let symptom = |word: &str| ids.iter().position(|id| id == word).map(Given::Symptom);
        let condition = |word: &str| conditions.iter().position(|known| known.id == word).map(Given::Condition);
        let group = |word: &str| conditions.iter().any(|known| known.group == word).then(|| word.to_owned());
        self.read(|line| {
            Ok(Symptom {
                id: line.text(0),
                under: line.text(1),
                said: line.text(2),
                asks: line.words(3, group)?,
                never: line.words(4, |word| symptom(word).or_else(|| condition(word)))?,
                branch: line.text(5),
                implies: line.words(6, |word| conditions.iter().position(|known| known.id == word))?,
            })
        })
    }

    pub(super) fn tests(self) -> Result<Vec<Test>, TableError> {
        self.read(|line| {
            let cost = match line.cell(1) {
                "0" => Cost::Nothing,
                "1" => Cost::Tool,
                "2" => Cost::PartOff,
                other => return Err(line.unknown(other)),
            };
            Ok(Test { id: line.text(0), cost, ask: line.text(2), yes: line.text(3), no: line.text(4) })
        })
    }

    pub(super) fn wear(self) -> Result<Vec<Wear>, TableError> {
        let range = |line: &Line, at: usize| Range::read(line.cell(at)).map_err(|_| line.unknown(line.cell(at)));
        self.read(|line| {
            Ok(Wear {
                id: line.text(0),
                name: line.text(1),
                good: range(line, 2)?,
                usable: range(line, 3)?,
                together: line.text(4),
                source: line.text(5),
            })
        })
    }

    pub(super) fn causes(self, symptoms: &[Symptom], conditions: &[Condition], tests: &[Test]) -> Result<Vec<Cause>, TableError> {
        let usual = |word: &str| {
            let (id, usual) = word.split_once(':')?;
            let usual = usual.parse().ok().filter(|usual| (1..=3).contains(usual))?;
            Some((symptoms.iter().position(|symptom| symptom.id == id)?, usual))
        };
        let condition = |word: &str| conditions.iter().position(|known| known.id == word);
        let shows = |word: &str| {
            let (id, answer) = word.split_once('=')?;
            Some((tests.iter().position(|test| test.id == id)?, is_yes(answer)?))
        };
        self.read(|line| {
            let reach = match line.cell(2) {
                "0" => Reach::Free,
                "1" => Reach::Outside,
                "2" => Reach::BoxOut,
                "3" => Reach::Inside,
                other => return Err(line.unknown(other)),
            };
            Ok(Cause {
                id: line.text(0),
                name: line.text(1),
                reach,
                symptoms: line.words(3, usual)?,
                fits: line.words(4, condition)?,
                against: line.words(5, condition)?,
                shows: line.words(6, shows)?,
                together: line.text(7),
                measure: line.text(8),
            })
        })
    }
}

/// Whether a word says yes; none where it says neither.
pub(super) fn is_yes(word: &str) -> Option<bool> {
    match word {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    }
}

impl Line {
    fn cell(&self, at: usize) -> &str {
        self.cells.get(at).map_or("", String::as_str)
    }

    fn text(&self, at: usize) -> String {
        self.cell(at).to_owned()
    }

    fn unknown(&self, word: &str) -> TableError {
        TableError::Unknown { table: self.table, line: self.number, word: word.to_owned() }
    }

    /// What the names in a cell stand for.
    fn words<T>(&self, at: usize, known: impl Fn(&str) -> Option<T>) -> Result<Vec<T>, TableError> {
        self.cell(at).split_whitespace().map(|word| known(word).ok_or_else(|| self.unknown(word))).collect()
    }
}
