//! What is wrong with what is typed at the bench, whichever question asks for it.

use super::{cutter, endplay, faults, fits, identify, measure, noise, record, setting, worn};
use crate::faults::Table;
use crate::job::{InputProblem, Job};
use crate::sheet::{Cell, Row};

/// Everything that cannot be read, faults by the built-in tables.
pub fn problems(job: &Job) -> Vec<InputProblem> {
    problems_by(job, Table::built_in())
}

/// Everything that cannot be read, faults by a shop's tables.
pub fn problems_by(job: &Job, table: &Table) -> Vec<InputProblem> {
    let identify = identify::read::Evidence::of(&job.bench).problems;
    let endplay = endplay::read::Measured::of(&job.bench).problems;
    // Both read the temperatures; a problem is said once.
    let fits = fits::read::Seated::of(&job.bench).problems.into_iter().filter(|problem| !endplay.contains(problem)).collect::<Vec<_>>();
    let setting = setting::read::Set::of(&job.bench).problems.into_iter().filter(|problem| !endplay.contains(problem)).collect::<Vec<_>>();
    let measure = measure::read::Measured::of(&job.bench).problems;
    let record = record::read::Typed::of(job).problems;
    let noise = noise::read::Told::of(job).problems;
    let cutter = cutter::read::Wanted::of(&job.bench).problems;
    let faults = faults::read::Typed::of(job, table).problems;
    let worn = worn::read::Typed::of(job).problems;
    let bench = identify.into_iter().chain(endplay).chain(fits).chain(setting).chain(measure).chain(cutter);
    bench.chain(faults).chain(worn).chain(noise).chain(record).collect()
}

/// What cannot be used, a row each.
pub fn unusable<'a>(problems: impl IntoIterator<Item = &'a InputProblem>) -> Vec<Row> {
    let row =
        |(at, problem): (u32, &InputProblem)| Row::of_one(format!("problem-{at}"), "Cannot be used", Cell::absent(problem.sentence()));
    (1..).zip(problems).map(row).collect()
}
