//! The steps of a build as typed: what each wants, what was read, and what cannot be used.

use crate::checklist::{self, Amount, ChecklistError, Line, Range, Step};
use crate::job::{BuildField, InputProblem, Job};
use crate::problem::Problem;
use crate::questions::{endplay, fits};

/// The question that knows what a step wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Link {
    /// The end play wanted there.
    EndPlay,
    /// The clearance wanted there.
    Fits,
}

/// A step and what it wants.
#[derive(Clone, Debug, PartialEq)]
pub struct BuildStep {
    /// Its line, counted from 0.
    pub line: usize,
    /// The step as typed.
    pub step: Step,
    /// The heading above it; empty where there is none.
    pub under: String,
    /// The question that is named for what it wants.
    pub link: Option<Link>,
    /// What is wanted.
    pub range: Option<Range>,
    /// What was read, as far as it can be.
    pub readings: Vec<Amount>,
    /// What of them, or of what is wanted, cannot be used, and what to do: the last of it.
    pub refused: Option<String>,
}

/// A build as typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Typed {
    /// The steps in their order.
    pub steps: Vec<BuildStep>,
    /// How many lines they stand in.
    pub lines: usize,
    /// What cannot be read.
    pub problems: Vec<InputProblem>,
}

impl Typed {
    /// Reads what is typed.
    pub fn of(job: &Job) -> Self {
        let lines = checklist::lines(&job.bench.build.steps);
        let mut typed = Self { lines: lines.len(), ..Self::default() };
        let mut under = String::new();
        for (at, line) in lines.into_iter().enumerate() {
            match line {
                Line::Blank => {}
                Line::Heading(heading) => under = heading,
                Line::Step(step) => {
                    let step = typed.read_step(job, (at, &under), step);
                    typed.steps.push(step);
                }
            }
        }
        typed
    }

    fn read_step(&mut self, job: &Job, (line, under): (usize, &str), step: Step) -> BuildStep {
        let known = self.problems.len();
        let link = link(&step.wanted);
        let range = match link {
            Some(link) => linked(job, link),
            None if step.wanted.trim().is_empty() => None,
            None => self.keep(Range::read(&step.wanted)),
        };
        let readings = step.readings.iter().filter(|one| !one.trim().is_empty());
        let readings = readings.filter_map(|one| self.keep(Amount::read(one, range.as_ref()))).collect();
        let refused = self.problems.get(known..).and_then(<[_]>::last).map(InputProblem::sentence);
        BuildStep { line, under: under.to_owned(), link, range, readings, refused, step }
    }

    fn keep<T>(&mut self, read: Result<T, ChecklistError>) -> Option<T> {
        read.map_err(|why| self.problems.push(Problem::stop(BuildField::Steps.into(), &why))).ok()
    }
}

/// The question whose name stands where a range is wanted.
fn link(wanted: &str) -> Option<Link> {
    let words = wanted.to_lowercase();
    if words.contains("end play") {
        return Some(Link::EndPlay);
    }
    words.contains("fits").then_some(Link::Fits)
}

/// What that question wants; none where nothing is typed there.
fn linked(job: &Job, link: Link) -> Option<Range> {
    let range = match link {
        Link::EndPlay => endplay::read::Measured::of(&job.bench).wanted?,
        Link::Fits => fits::read::Seated::of(&job.bench).wanted?.1,
    };
    Some(Range::of_lengths(range.least, range.greatest, job.units))
}
