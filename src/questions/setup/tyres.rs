//! The tyre of a setup, read and worn.

use super::keep;
use crate::job::{self, Job, SetupField};
use crate::problem::Problem;
use crate::tyre::{self, OmittedAspect, Rolling, Tyre};
use crate::units::limits;

/// The aspect ratio taken where a metric size leaves it out.
pub(super) fn omitted_aspect(job: &Job) -> OmittedAspect {
    if job.omitted_aspect == "82" { OmittedAspect::EightyTwo } else { OmittedAspect::Eighty }
}

/// The tyre, and what it rolls with the tread it has left; a depth that was typed but cannot be read leaves that open.
pub(super) fn read(typed: &job::Setup, omitted: OmittedAspect, problems: &mut Vec<Problem>) -> (Option<Tyre>, Option<Rolling>) {
    let read = tyre::read_with(&typed.tyre.text, typed.tyre.units, omitted);
    let tyre = keep(problems, &SetupField::Tyre.path(), read);
    let new = tyre.as_ref().map(Tyre::rolling);
    if typed.tread_lost.is_blank() {
        return (tyre, new);
    }
    let lost = keep(problems, &SetupField::TreadLost.path(), typed.tread_lost.read(&limits::TREAD_LOST));
    (tyre, new.zip(lost).map(|(rolling, lost)| rolling.worn(lost)))
}
