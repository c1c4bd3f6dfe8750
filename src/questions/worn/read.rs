//! What was measured of worn parts, as far as it can be read.

use crate::checklist::{self, Amount, Line, Step};
use crate::faults::wear::{State, Wear};
use crate::job::{FaultsField, InputProblem, Job};
use crate::problem::Problem;
use crate::questions::Source;
use crate::units::number;

/// What was measured of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The part; none where the line names none that is known.
    pub wear: Option<&'static Wear>,
    /// The line.
    pub step: Step,
    /// The last reading, where it can be used.
    pub reading: Option<Amount>,
    /// Why it cannot, and what to do.
    pub refused: Option<String>,
}

/// All that was measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Typed {
    /// The lines in which something is typed, in their order.
    pub parts: Vec<Measured>,
    /// What cannot be used.
    pub problems: Vec<InputProblem>,
}

/// A line that names no part of the table.
struct NoPart(String);

explain! { NoPart:
    error => format!("“{}” is no part of this list: it is kept, and not judged", number::clip(&error.0)),
        "measure one of the parts that are listed";
}

impl Typed {
    /// Reads what is typed.
    pub fn of(job: &Job) -> Self {
        let mut typed = Self::default();
        for line in checklist::lines(&job.bench.faults.worn) {
            let Line::Step(step) = line else { continue };
            if !step.is_done && step.last_reading().is_none() && step.note.trim().is_empty() {
                continue;
            }
            let wear = Wear::built_in().iter().find(|wear| wear.name == step.what.trim());
            if wear.is_none() {
                typed.problems.push(Problem::caution(FaultsField::Worn.into(), &NoPart(step.what.trim().to_owned())));
            }
            let read = wear.zip(step.last_reading()).map(|(wear, text)| Amount::read(text, Some(&wear.good)));
            let (reading, why) = match read.transpose() {
                Ok(reading) => (reading, None),
                Err(why) => (None, Some(Problem::stop(FaultsField::Worn.into(), &why))),
            };
            let refused = why.as_ref().map(InputProblem::sentence);
            typed.problems.extend(why);
            typed.parts.push(Measured { wear, step, reading, refused });
        }
        typed
    }

    /// The parts that were measured, the worst first.
    pub fn judged(&self) -> Vec<(&'static Wear, &Amount, State)> {
        let all = self.parts.iter().filter_map(|part| {
            let (wear, reading) = part.wear.zip(part.reading.as_ref())?;
            Some((wear, reading, wear.state(reading)))
        });
        let mut all: Vec<_> = all.collect();
        crate::order::by_key(&mut all, |(.., state)| std::cmp::Reverse(*state));
        all
    }
}

/// Every part as a line, with what was measured of it.
pub fn list(source: Source<'_>) -> String {
    let typed = Typed::of(source.job);
    let line = |wear: &'static Wear| {
        let kept = typed.parts.iter().find(|part| part.wear.is_some_and(|known| known.id == wear.id));
        let step = kept.map_or_else(|| Step { what: wear.name.clone(), ..Step::default() }, |part| part.step.clone());
        Step { is_read: true, ..step }.written()
    };
    let others = typed.parts.iter().filter(|part| part.wear.is_none()).map(|part| part.step.written());
    Wear::built_in().iter().map(line).chain(others).collect::<Vec<_>>().join("\n")
}
