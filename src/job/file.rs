//! The job as a text: open JSON with a schema version, read again by every later version.
//!
//! The shape is that of [`Job`]; what was typed stands in it as text, bare numbers beside the system they were meant in.
//! A newer document than this version knows is refused, never cut down.

use std::collections::BTreeSet;

use serde_json::Value;

use super::{Job, MOST_SETUPS, MOST_STAGES, Setup};
use crate::units::number;

/// The most forward gears of one setup.
const MOST_GEARS: usize = crate::gearing::Gearbox::MOST_GEARS;

/// The version this program writes.
pub const SCHEMA: u32 = 2;

/// The longest text that is taken for a job, in bytes.
pub const LONGEST: usize = 2_000_000;

/// Why a text is no job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Longer than any job: its length in bytes.
    TooLong(usize),
    /// Not JSON, or not of a job's shape: what the parser says, with line and column.
    NotAJob(String),
    /// Written by a newer version: the version it names.
    Newer(u64),
    /// More setups than fit on a sheet, or none: how many it holds.
    SetupCount(usize),
    /// A setup with more gears or extra stages than one can have.
    TooMany {
        /// The setup's name.
        setup: String,
        /// What there are too many of.
        of: &'static str,
        /// How many it has.
        given: usize,
        /// How many it can have.
        most: usize,
    },
}

explain! { FileError:
    Self::TooLong(bytes) => format!("the text has {bytes} bytes, more than any job"), "choose a file that was saved as a job here";
    Self::NotAJob(detail) => format!("the text is not a job ({detail})"), "choose a file that was saved as a job here";
    Self::Newer(schema) => format!("the job was kept by a newer version (shape {schema})"),
        "load the page again to get the newer version; the job stays as it is";
    Self::SetupCount(0) => "the job holds no setup", format!("choose a job of 1 to {MOST_SETUPS} setups");
    Self::SetupCount(given) => format!("the job holds {given} setups"), format!("choose a job of 1 to {MOST_SETUPS} setups");
    Self::TooMany { setup, of, given, most, .. } => format!("the setup “{}” has {given} {of}", number::clip(setup)),
        format!("choose a job with at most {most} {of} a setup");
}

/// The job as text, ready to be kept.
pub fn to_text(job: &Job) -> String {
    serde_json::to_string_pretty(job).unwrap_or_default()
}

/// The job in a text.
///
/// # Errors
/// When the text is too long, no job, from a newer version, or holds no setup, or too many setups, gears or stages.
///
/// ```
/// use layshaft::job::file::{FileError, from_text, to_text};
/// use layshaft::job::demo;
/// let job = demo::job();
/// assert_eq!(from_text(&to_text(&job))?, job);
/// assert!(matches!(from_text("{}"), Err(FileError::NotAJob(_))));
/// # Ok::<(), FileError>(())
/// ```
pub fn from_text(text: &str) -> Result<Job, FileError> {
    from_value(value_of(text)?)
}

/// The job in a JSON value.
///
/// # Errors
/// When the value is no job, from a newer version, or holds no setup or too many.
pub fn from_value(value: Value) -> Result<Job, FileError> {
    check_schema(&value, SCHEMA)?;
    let job: Job = serde_json::from_value(value).map_err(|error| FileError::NotAJob(error.to_string()))?;
    check(job)
}

/// The JSON value in a text that is not longer than a job can be.
pub(super) fn value_of(text: &str) -> Result<Value, FileError> {
    if text.len() > LONGEST {
        return Err(FileError::TooLong(text.len()));
    }
    json(text)
}

/// The JSON value in a text.
pub(super) fn json(text: &str) -> Result<Value, FileError> {
    serde_json::from_str(text).map_err(|error| FileError::NotAJob(error.to_string()))
}

/// Sees that a value names a version no newer than `known`.
pub(super) fn check_schema(value: &Value, known: u32) -> Result<(), FileError> {
    match value.get("schema").and_then(Value::as_u64) {
        None => Err(FileError::NotAJob("it names no schema".into())),
        Some(schema) if schema > u64::from(known) => Err(FileError::Newer(schema)),
        Some(_) => Ok(()),
    }
}

/// Mends what a hand-written file may have wrong without loss, refuses what cannot be shown.
fn check(mut job: Job) -> Result<Job, FileError> {
    if job.setups.is_empty() || job.setups.len() > MOST_SETUPS {
        return Err(FileError::SetupCount(job.setups.len()));
    }
    for setup in &mut job.setups {
        check_size(setup)?;
        if setup.gearbox.gears.is_empty() {
            setup.gearbox.gears.push(String::new());
        }
    }
    job.schema = SCHEMA;
    mend_ids(&mut job);
    Ok(job)
}

/// Refuses a setup that could not be shown whole.
fn check_size(setup: &Setup) -> Result<(), FileError> {
    let too_many = |of, given, most| FileError::TooMany { setup: setup.name.clone(), of, given, most };
    match (setup.gearbox.gears.len(), setup.stages.len()) {
        (gears, _) if gears > MOST_GEARS => Err(too_many("forward gears", gears, MOST_GEARS)),
        (_, stages) if stages > MOST_STAGES => Err(too_many("extra stages", stages, MOST_STAGES)),
        _ => Ok(()),
    }
}

/// Gives a setup whose id is taken another, and leaves room for the ids of all setups to come.
fn mend_ids(job: &mut Job) {
    const HIGHEST: u32 = u32::MAX / 2;
    let mut seen = BTreeSet::new();
    for setup in &mut job.setups {
        while setup.id.0 > HIGHEST || !seen.insert(setup.id) {
            setup.id.0 = setup.id.0.wrapping_add(1) % HIGHEST;
        }
    }
    let above = seen.last().map_or(0, |id| id.0.saturating_add(1));
    job.next_setup = if job.next_setup > HIGHEST { above } else { job.next_setup.max(above) };
}
