//! A setup and its conditions in, every answer out. Pure: the same job always gives the same answers.
//!
//! Words and rounding are not here; they are each question's `rows`.

use super::dial::answer::Speedo;
use super::gears::answer::Gears;
use super::inside::answer::{self as inside, Inside};
use super::pull::answer::Pull;
use super::road::answer::Road;
use super::road::tyres::Tyres;
use super::setup::{self, Conditions, Setup};
use crate::job::Job;
use crate::speedometer::SpeedoGear;

/// Everything known about one setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Analysis {
    /// The setup as read.
    pub setup: Setup,
    /// Ratios, steps and tooth sums.
    pub gears: Gears,
    /// Road speeds and engine speeds.
    pub road: Road,
    /// What engine, car and gears do together.
    pub pull: Pull,
    /// What turns inside the box.
    pub inside: Inside,
    /// What is asked of the tyres.
    pub tyres: Tyres,
    /// What the speedometer reads, and what would mend it.
    pub speedo: Speedo,
}

/// What lies on the shop's shelves and is proposed from.
#[derive(Clone, Copy, Debug, Default)]
pub struct Shelves<'a> {
    /// The speedometer gears.
    pub speedometer_gears: &'a [SpeedoGear],
}

/// A job's conditions, and everything known about its setups in the order of their columns.
pub type Answers = (Conditions, Vec<Analysis>);

/// Everything known about one setup under the job's conditions.
pub fn analyse(setup: Setup, conditions: &Conditions, shelves: Shelves<'_>) -> Analysis {
    let inside = Inside::of(&setup, conditions);
    with_inside(setup, inside, conditions, shelves)
}

/// Everything known about a job.
pub fn analyse_job(job: &Job, shelves: Shelves<'_>) -> Answers {
    analyse_job_after(job, shelves, None)
}

/// Everything known about a job, quicker after it was known before: the inside of a box that nothing typed since has to do with is taken
/// over. It is the longest of the questions, and most of what is typed leaves it alone.
pub fn analyse_job_after(job: &Job, shelves: Shelves<'_>, before: Option<&Answers>) -> Answers {
    let conditions = Conditions::of(job);
    let before = before.filter(|(known, _)| inside::depends_on(known) == inside::depends_on(&conditions));
    let analysis = |setup: Setup| {
        let known = before.and_then(|(_, setups)| setups.iter().find(|known| known.setup == setup));
        let inside = known.map_or_else(|| Inside::of(&setup, &conditions), |known| known.inside.clone());
        with_inside(setup, inside, &conditions, shelves)
    };
    let setups = setup::read_all(job).into_iter().map(analysis).collect();
    (conditions, setups)
}

fn with_inside(setup: Setup, inside: Inside, conditions: &Conditions, shelves: Shelves<'_>) -> Analysis {
    let gears = Gears::of(&setup);
    let road = Road::of(&setup, &gears, conditions);
    let pull = Pull::of(&setup, conditions);
    let tyres = Tyres::of(&setup, &road, &pull, conditions);
    let speedo = Speedo::of(&setup, conditions, tyres.fastest, shelves.speedometer_gears);
    Analysis { setup, gears, road, pull, inside, tyres, speedo }
}
