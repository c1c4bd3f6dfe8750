//! How a build stands: which steps are open, and which reading is out of its range.

use super::read::{BuildStep, Link, Typed};
use crate::checklist::range::Slip;
use crate::job::Job;

impl BuildStep {
    /// Whether its last reading is not what is wanted.
    pub fn is_outside(&self) -> bool {
        self.range.as_ref().zip(self.readings.last()).is_some_and(|(range, last)| !range.holds(last))
    }

    /// What that reading may have been meant as.
    pub fn slip(&self) -> Option<Slip> {
        self.range.as_ref().zip(self.readings.last()).and_then(|(range, last)| range.slip(last))
    }

    /// Whether it was said why a reading may stay outside.
    pub fn is_answered(&self) -> bool {
        !self.step.note.trim().is_empty()
    }

    /// Whether something is still to be done: it is not ticked, or its reading is outside and nothing is said to that.
    pub fn is_open(&self) -> bool {
        !self.step.is_done || (self.is_outside() && !self.is_answered())
    }
}

impl Typed {
    /// The steps at which something is still to be done.
    pub fn open(&self) -> impl Iterator<Item = &BuildStep> {
        self.steps.iter().filter(|step| step.is_open())
    }

    /// The steps whose reading is outside, nothing being said to it.
    pub fn outside(&self) -> impl Iterator<Item = &BuildStep> {
        self.steps.iter().filter(|step| step.is_outside() && !step.is_answered())
    }

    /// Whether a step takes over what a question wants.
    pub fn names(&self, link: Link) -> bool {
        self.steps.iter().any(|step| step.link == Some(link))
    }
}

/// How many steps of a job are open; none where it has no steps.
pub fn open_steps(job: &Job) -> Option<usize> {
    let typed = Typed::of(job);
    (!typed.steps.is_empty()).then(|| typed.open().count())
}
