//! A setup and its conditions in, every answer out. Pure: the same job always gives the same answers.
//!
//! Each question has a file: [`gears`] (ratios, steps, tooth sums) and [`road`] (speeds and engine speeds).
//! Words and rounding are not here; they are [`crate::sheet`]'s.

pub mod gears;
pub mod road;

use crate::job::Job;
use crate::setup::{self, Conditions, Setup};
pub use gears::Gears;
pub use road::Road;

/// Everything known about one setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Analysis {
    /// The setup as read.
    pub setup: Setup,
    /// Ratios, steps and tooth sums.
    pub gears: Gears,
    /// Road speeds and engine speeds.
    pub road: Road,
}

/// Everything known about one setup under the job's conditions.
pub fn analyse(setup: Setup, conditions: &Conditions) -> Analysis {
    let gears = Gears::of(&setup);
    let road = Road::of(&setup, &gears, conditions);
    Analysis { setup, gears, road }
}

/// Everything known about a job: its conditions, and its setups in the order of their columns.
pub fn analyse_job(job: &Job) -> (Conditions, Vec<Analysis>) {
    let conditions = Conditions::of(job);
    let setups = setup::read_all(job).into_iter().map(|setup| analyse(setup, &conditions)).collect();
    (conditions, setups)
}
