//! The tables as text: a head line, a semicolon between the cells, blanks between the names in a cell.

use std::collections::BTreeSet;

use super::TableError;
use super::table::{Cause, Condition, Cost, Pick, Reach, Symptom, Table, Test};
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

/// One of the tables, in the order in which they are read: a later one names what an earlier one has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Kind {
    Conditions,
    Symptoms,
    Tests,
    Causes,
}

impl Kind {
    pub(super) const ALL: [Self; 4] = [Self::Conditions, Self::Symptoms, Self::Tests, Self::Causes];

    /// What it is called, and what is built in of it.
    pub(super) fn about(self) -> (&'static str, &'static str) {
        let Texts { symptoms, conditions, tests, causes } = Texts::BUILT_IN;
        match self {
            Self::Conditions => ("conditions", conditions),
            Self::Symptoms => ("symptoms", symptoms),
            Self::Tests => ("tests", tests),
            Self::Causes => ("causes", causes),
        }
    }

    /// The names of its columns, as they are built in.
    pub(super) fn head(self) -> &'static str {
        self.about().1.lines().find(|line| !line.starts_with('#')).unwrap_or_default()
    }
}

/// The lines of one table, cut into cells.
pub(super) struct Lines(Vec<Line>);

struct Line {
    table: &'static str,
    number: usize,
    cells: Vec<String>,
}

impl Lines {
    /// The lines of a text whose names are not taken yet; what is wrong with others goes to `problems`.
    pub(super) fn of(table: &'static str, text: &str, is_taken: impl Fn(&str) -> bool, problems: &mut Vec<TableError>) -> Self {
        let Some(file) = spreadsheet::Table::of(text) else {
            problems.push(TableError::Empty(table));
            return Self(Vec::new());
        };
        let columns = file.cells(file.header).map_or(0, |cells| cells.len());
        let mut names = BTreeSet::new();
        let mut lines = Vec::new();
        for (number, line) in &file.lines {
            let Some(cells) = file.cells(line).filter(|cells| cells.len() == columns) else {
                problems.push(TableError::Cells { table, line: *number });
                continue;
            };
            let line = Line { table, number: *number, cells };
            let word = line.text(0);
            if word.is_empty() || !word.chars().all(|c| c.is_alphanumeric() || c == '-') {
                problems.push(TableError::Name { table, line: *number, word });
            } else if is_taken(&word) || !names.insert(word.clone()) {
                problems.push(TableError::Twice { table, line: *number, word });
            } else {
                lines.push(line);
            }
        }
        Self(lines)
    }

    fn read<T>(&self, problems: &mut Vec<TableError>, read: impl Fn(&Line) -> Result<T, TableError>) -> Vec<T> {
        self.0.iter().filter_map(|line| read(line).map_err(|why| problems.push(why)).ok()).collect()
    }

    pub(super) fn conditions(&self, problems: &mut Vec<TableError>) -> Vec<Condition> {
        self.read(problems, |line| {
            let pick = match line.cell(2) {
                "one" => Pick::One,
                "many" => Pick::Many,
                "implied" => Pick::Implied,
                other => return Err(line.unknown(other)),
            };
            Ok(Condition { id: line.text(0), group: line.needed(1, "group")?, pick, said: line.needed(3, "said")? })
        })
    }

    /// The symptoms; what can never be with them is found among all that `known` has once they are in it.
    pub(super) fn symptoms(&self, known: &mut Table, is_own: bool, problems: &mut Vec<TableError>) {
        let names: BTreeSet<String> = self.0.iter().map(|line| line.text(0)).collect();
        let begun = known.symptoms.len();
        let read = self.read(problems, |line| {
            let group = |word: &str| known.conditions.iter().any(|known| known.group == word).then(|| word.to_owned());
            line.words(4, |word| (names.contains(word) || known.given(word).is_some()).then_some(()))?;
            Ok(Symptom {
                id: line.text(0),
                under: line.needed(1, "under")?,
                said: line.needed(2, "said")?,
                asks: line.words(3, group)?,
                never: Vec::new(),
                branch: line.text(5),
                implies: line.words(6, |word| known.condition(word))?,
                is_own,
            })
        });
        known.symptoms.extend(read);
        for at in begun..known.symptoms.len() {
            let line = known.symptoms.get(at).and_then(|symptom| self.0.iter().find(|line| line.cell(0) == symptom.id));
            let never = line.map(|line| line.cell(4).split_whitespace().filter_map(|word| known.given(word)).collect());
            if let Some((symptom, never)) = known.symptoms.get_mut(at).zip(never) {
                symptom.never = never;
            }
        }
    }

    pub(super) fn tests(&self, is_own: bool, problems: &mut Vec<TableError>) -> Vec<Test> {
        self.read(problems, |line| {
            let cost = match line.cell(1) {
                "0" => Cost::Nothing,
                "1" => Cost::Tool,
                "2" => Cost::PartOff,
                other => return Err(line.unknown(other)),
            };
            let (ask, yes, no) = (line.needed(2, "ask")?, line.needed(3, "yes")?, line.needed(4, "no")?);
            Ok(Test { id: line.text(0), cost, ask, yes, no, is_own })
        })
    }

    pub(super) fn wear(&self, problems: &mut Vec<TableError>) -> Vec<Wear> {
        let range = |line: &Line, at: usize| Range::read(line.cell(at)).map_err(|_| line.unknown(line.cell(at)));
        self.read(problems, |line| {
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

    pub(super) fn causes(&self, known: &Table, is_own: bool, problems: &mut Vec<TableError>) -> Vec<Cause> {
        let usual = |word: &str| {
            let (id, usual) = word.split_once(':')?;
            let usual = usual.parse().ok().filter(|usual| (1..=3).contains(usual))?;
            Some((known.symptoms.iter().position(|symptom| symptom.id == id)?, usual))
        };
        let condition = |word: &str| known.condition(word);
        let shows = |word: &str| {
            let (id, answer) = word.split_once('=')?;
            Some((known.tests.iter().position(|test| test.id == id)?, is_yes(answer)?))
        };
        self.read(problems, |line| {
            let reach = match line.cell(2) {
                "0" => Reach::Free,
                "1" => Reach::Outside,
                "2" => Reach::BoxOut,
                "3" => Reach::Inside,
                other => return Err(line.unknown(other)),
            };
            line.needed(3, "symptoms")?;
            Ok(Cause {
                id: line.text(0),
                name: line.needed(1, "name")?,
                reach,
                symptoms: line.words(3, usual)?,
                fits: line.words(4, condition)?,
                against: line.words(5, condition)?,
                shows: line.words(6, shows)?,
                together: line.text(7),
                measure: line.text(8),
                is_own,
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

    /// A cell that must say something.
    fn needed(&self, at: usize, column: &'static str) -> Result<String, TableError> {
        let text = self.text(at);
        let is_said = !text.is_empty() && !text.contains('|');
        if is_said { Ok(text) } else { Err(TableError::Blank { table: self.table, line: self.number, column }) }
    }

    fn unknown(&self, word: &str) -> TableError {
        TableError::Unknown { table: self.table, line: self.number, word: word.to_owned() }
    }

    /// What the names in a cell stand for.
    fn words<T>(&self, at: usize, known: impl Fn(&str) -> Option<T>) -> Result<Vec<T>, TableError> {
        self.cell(at).split_whitespace().map(|word| known(word).ok_or_else(|| self.unknown(word))).collect()
    }
}
