//! What is said of a fault and what was tried, as far as the table knows it.

use crate::checklist::{self, Line, Step};
use crate::faults::{Table, Told};
use crate::gearing::GearNumber;
use crate::job::{FaultsField, InputProblem, Job};
use crate::problem::Problem;
use crate::questions::{Source, ticks};
use crate::units::number;

/// What is said of a fault.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Typed {
    /// What the table knows of it, without what follows from it.
    pub told: Told,
    /// The steps in which something was tried or noted, in their order, each with its place in the table where it has one.
    pub tried: Vec<(Option<usize>, Step)>,
    /// What cannot be used.
    pub problems: Vec<InputProblem>,
}

/// Why something that is said is not used.
#[derive(Clone, Debug, PartialEq, Eq)]
enum SaidError {
    /// Neither a symptom nor a condition.
    NotKnown { text: String },
    /// No test of the table.
    NoTest { text: String },
    /// A test that was answered otherwise than yes or no.
    NeitherWay { text: String },
}

explain! { SaidError:
    Self::NotKnown { text } => format!("“{}” is neither a symptom nor a condition here: it is left out", number::clip(text)),
        "choose from the list";
    Self::NoTest { text } => format!("“{}” is no test of this list: it is kept, and not used", number::clip(text)),
        "answer one of the tests that are listed";
    Self::NeitherWay { text } => format!("“{}” is neither yes nor no: it is kept, and not used", number::clip(text)), "press yes or no";
}

impl Typed {
    /// Reads what is typed.
    pub fn of(job: &Job, table: &Table) -> Self {
        let typed = &job.bench.faults;
        let mut read = Self::default();
        for word in ticks::words(&typed.said) {
            match table.given(word) {
                Some(given) => read.told.take(given),
                None => read.problem(FaultsField::Said, &SaidError::NotKnown { text: word.to_owned() }),
            }
        }
        for line in checklist::lines(&typed.tried) {
            if let Line::Step(step) = line {
                read.take_step(table, step);
            }
        }
        read
    }

    fn problem(&mut self, field: FaultsField, why: &SaidError) {
        self.problems.push(Problem::caution(field.into(), why));
    }

    fn take_step(&mut self, table: &Table, step: Step) {
        // A test that was listed and not tried says nothing.
        if !step.is_done && step.last_reading().is_none() && step.note.trim().is_empty() {
            return;
        }
        let test = table.tests.iter().position(|test| test.ask == step.what.trim());
        let answer = match step.last_reading() {
            Some("yes") => Some(true),
            Some("no") => Some(false),
            Some(other) => {
                let why = SaidError::NeitherWay { text: other.to_owned() };
                self.problem(FaultsField::Tried, &why);
                None
            }
            None => None,
        };
        match (test, answer) {
            (Some(test), Some(answer)) => {
                self.told.results.insert(test, answer);
            }
            (None, _) => self.problem(FaultsField::Tried, &SaidError::NoTest { text: step.what.trim().to_owned() }),
            (Some(_), None) => {}
        }
        self.tried.push((test, step));
    }
}

/// What is known of the fault, with what follows from the gears: the first setup knows which gear is direct.
pub fn told(source: Source<'_>) -> Told {
    let table = source.shelves.faults();
    let mut told = Typed::of(source.job, table).told;
    told.imply(table, direct_gear(source));
    told
}

/// The straight-through gear; 4th where the gears are not known: common practice, no published source.
fn direct_gear(source: Source<'_>) -> Option<GearNumber> {
    let ratios = source.setups.first().map_or(&[][..], |analysis| analysis.gears().ratios.as_slice());
    let known: Vec<_> = ratios.iter().copied().flatten().collect();
    if known.is_empty() {
        return Some(GearNumber::at(3));
    }
    ratios.iter().position(|ratio| ratio.is_some_and(|ratio| ratio == crate::gearing::Ratio::from_integer(1))).map(GearNumber::at)
}
