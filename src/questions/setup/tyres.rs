//! The tyre of a setup, read and worn.

use super::keep;
use crate::job::{self, InputProblem, Job, SetupField};
use crate::tyre::{self, OmittedAspect, Rolling, Tyre};
use crate::units::limits;

/// The aspect ratio taken where a metric size leaves it out.
pub(super) fn omitted_aspect(job: &Job) -> OmittedAspect {
    job.omitted_aspect.value().unwrap_or_default()
}

/// The tyre, and what it rolls with the tread it has left; a depth that was typed but cannot be read leaves that open.
pub(super) fn read(typed: &job::Setup, omitted: OmittedAspect, problems: &mut Vec<InputProblem>) -> (Option<Tyre>, Option<Rolling>) {
    let read = tyre::read_with(&typed.tyre.text, typed.tyre.units, omitted);
    let tyre = keep(problems, (typed.id, SetupField::Tyre), read);
    let new = tyre.as_ref().map(Tyre::rolling);
    if typed.tread_lost.is_blank() {
        return (tyre, new);
    }
    let lost = keep(problems, (typed.id, SetupField::TreadLost), typed.tread_lost.read(&limits::TREAD_LOST));
    (tyre, new.zip(lost).map(|(rolling, lost)| rolling.worn(lost)))
}
