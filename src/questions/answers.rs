//! A job in, every answer out, each worked out when it is first asked for. Pure: the same job always gives the same answers.
//!
//! Words and rounding are not here; they are each question's `rows`. What a page does not show is never worked out.

use std::sync::{Arc, OnceLock};

use super::dial::{self, answer::Speedo};
use super::driveline::answer::Driveline;
use super::gears::answer::Gears;
use super::inside::answer::Inside;
use super::pull::answer::{self as pull, Pull};
use super::road::answer::Road;
use super::road::tyres::Tyres;
use super::setup::{self, Conditions, Setup};
use super::shelves::Shelves;
use super::teeth::answer::{Teeth, engine_torque};
use crate::job::Job;
use crate::motion::MotionError;
use crate::motion::compare::Facts;
use crate::motion::plan::{Ground, Way};
use crate::speedometer::SpeedoGear;

/// A job's conditions, and everything that can be known about its setups in the order of their columns.
#[derive(Clone, Debug, PartialEq)]
pub struct Answers {
    /// What all setups share.
    pub conditions: Arc<Conditions>,
    /// One a setup.
    pub setups: Vec<Analysis>,
}

/// Everything that can be known about one setup.
///
/// Two are equal where what they are worked out from is.
#[derive(Clone, Debug)]
pub struct Analysis {
    /// The setup as read.
    pub setup: Setup,
    conditions: Arc<Conditions>,
    speedometer_gears: Arc<[SpeedoGear]>,
    gears: OnceLock<Gears>,
    road: OnceLock<Road>,
    pull: OnceLock<Pull>,
    facts: OnceLock<Option<(Facts, Ground)>>,
    roll: OnceLock<Option<Result<Way, MotionError>>>,
    over_distances: OnceLock<Vec<Way>>,
    inside: OnceLock<Inside>,
    teeth: OnceLock<Teeth>,
    tyres: OnceLock<Tyres>,
    speedo: OnceLock<Speedo>,
    driveline: OnceLock<Driveline>,
}

impl PartialEq for Analysis {
    fn eq(&self, other: &Self) -> bool {
        self.setup == other.setup && self.conditions == other.conditions && self.speedometer_gears == other.speedometer_gears
    }
}

impl Analysis {
    fn new(setup: Setup, conditions: Arc<Conditions>, speedometer_gears: Arc<[SpeedoGear]>) -> Self {
        Self {
            setup,
            conditions,
            speedometer_gears,
            gears: OnceLock::new(),
            road: OnceLock::new(),
            pull: OnceLock::new(),
            facts: OnceLock::new(),
            roll: OnceLock::new(),
            over_distances: OnceLock::new(),
            inside: OnceLock::new(),
            teeth: OnceLock::new(),
            tyres: OnceLock::new(),
            speedo: OnceLock::new(),
            driveline: OnceLock::new(),
        }
    }

    /// What all setups share.
    pub fn conditions(&self) -> &Conditions {
        &self.conditions
    }

    /// Ratios, steps and tooth sums.
    pub fn gears(&self) -> &Gears {
        self.gears.get_or_init(|| Gears::of(&self.setup))
    }

    /// Road speeds and engine speeds.
    pub fn road(&self) -> &Road {
        self.road.get_or_init(|| Road::of(&self.setup, self.gears(), &self.conditions))
    }

    /// What engine, car and gears do together.
    pub fn pull(&self) -> &Pull {
        self.pull.get_or_init(|| Pull::of(&self.setup, &self.conditions))
    }

    /// The facts of a standing start, of the shifts and of the cruise.
    pub fn facts(&self) -> Option<&Facts> {
        self.facts_and_ground().map(|(facts, _)| facts)
    }

    fn facts_and_ground(&self) -> Option<&(Facts, Ground)> {
        self.facts.get_or_init(|| pull::facts(self.pull(), &self.conditions)).as_ref()
    }

    /// The rolling start, where one is asked for, or why there is none.
    pub fn roll(&self) -> Option<&Result<Way, MotionError>> {
        self.roll.get_or_init(|| pull::roll(self.pull(), &self.setup, &self.conditions)).as_ref()
    }

    /// The ways over a quarter mile and a kilometre from a standing start.
    pub fn over_distances(&self) -> &[Way] {
        let ways = || {
            let (_, ground) = self.facts_and_ground()?;
            Some(pull::over_distances(self.pull(), &self.conditions, ground))
        };
        self.over_distances.get_or_init(|| ways().unwrap_or_default())
    }

    /// What turns inside the box.
    pub fn inside(&self) -> &Inside {
        self.inside.get_or_init(|| Inside::of(&self.setup, &self.conditions))
    }

    /// What the teeth bear.
    pub fn teeth(&self) -> &Teeth {
        self.teeth.get_or_init(|| {
            let by_grip = self.conditions.inside.by_grip;
            let judged = if by_grip { self.pull().grip_torque() } else { engine_torque(&self.conditions) };
            Teeth::of(&self.setup, judged, &self.conditions)
        })
    }

    /// What is asked of the tyres.
    pub fn tyres(&self) -> &Tyres {
        self.tyres.get_or_init(|| Tyres::of(&self.setup, self.road(), self.pull(), &self.conditions))
    }

    /// What the speedometer reads, and what would mend it.
    pub fn speedo(&self) -> &Speedo {
        self.speedo.get_or_init(|| Speedo::of(&self.setup, &self.conditions, &self.speedometer_gears))
    }

    /// How fast the driveshaft turns, and may turn.
    pub fn driveline(&self) -> &Driveline {
        self.driveline.get_or_init(|| Driveline::of(&self.setup, self.gears(), self.pull(), self.tyres(), &self.conditions))
    }
}

/// Everything that can be known about a job.
pub fn analyse_job(job: &Job, shelves: Shelves<'_>) -> Answers {
    analyse_job_after(job, shelves, None)
}

/// What answers the question a page opens with ([`super::first`]): gears, axle, tyre, shift and cruise, and nothing else that is typed.
pub fn analyse_first(job: &Job) -> Answers {
    let conditions = Arc::new(Conditions::of_road(job));
    let gears: Arc<[SpeedoGear]> = Arc::new([]);
    let analysis = |setup: Setup| Analysis::new(setup, Arc::clone(&conditions), Arc::clone(&gears));
    let setups = setup::read_each(job, setup::read_drive).into_iter().map(analysis).collect();
    Answers { conditions, setups }
}

/// As [`analyse_job`], quicker after the job was known before: a setup that nothing typed since has to do with keeps its answers.
pub fn analyse_job_after(job: &Job, shelves: Shelves<'_>, before: Option<&Answers>) -> Answers {
    let setups = setup::read_all(job);
    let mut conditions = Conditions::of(job);
    conditions.speedo.solved = dial::answer::solved(&setups);
    let before = before.filter(|before| *before.conditions == conditions);
    let conditions = before.map_or_else(|| Arc::new(conditions), |before| Arc::clone(&before.conditions));
    let gears: Arc<[SpeedoGear]> = shelves.speedometer_gears.into();
    let analysis = |setup: Setup| {
        let fresh = Analysis::new(setup, Arc::clone(&conditions), Arc::clone(&gears));
        before.and_then(|before| before.setups.iter().find(|known| **known == fresh)).cloned().unwrap_or(fresh)
    };
    Answers { setups: setups.into_iter().map(analysis).collect(), conditions }
}
