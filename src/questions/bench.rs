//! What is wrong with what is typed at the bench, whichever question asks for it.

use super::{endplay, identify};
use crate::job::{InputProblem, Job};

/// Everything that cannot be read.
pub fn problems(job: &Job) -> Vec<InputProblem> {
    let identify = identify::read::Evidence::of(&job.bench).problems;
    identify.into_iter().chain(endplay::read::Measured::of(&job.bench).problems).collect()
}
