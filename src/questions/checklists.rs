//! A list of steps as an input: where its text is kept, what it can begin with, and what is to be said beside each line.

use super::Source;
use crate::job::JobField;
use crate::sheet::{Tone, Verdict};

/// A list of steps that are ticked and read.
#[derive(Clone, Copy, Debug)]
pub struct Steps {
    /// Where its text is kept: see [`crate::checklist`].
    pub field: JobField,
    /// Where the name of whoever ticks is kept.
    pub by: JobField,
    /// What it can begin with; none where it is made from other inputs.
    pub begin: &'static [Template],
    /// Its lines as they stand now: as kept, or those that follow from other inputs with what was kept of them.
    pub list: fn(Source<'_>) -> String,
    /// What a step is answered by; none where it is ticked.
    pub answers: &'static [&'static str],
    /// What is to be said of its lines, one for each.
    pub judged: fn(Source<'_>) -> Vec<Judged>,
}

/// A list to begin with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Template {
    /// What it is for.
    pub name: &'static str,
    /// Its lines.
    pub steps: &'static str,
}

/// What is to be said beside a line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Judged {
    /// What is wanted of its reading; empty where nothing is.
    pub wanted: String,
    /// How the reading stands.
    pub verdict: Option<Verdict>,
}

impl Judged {
    /// What is said beside a reading: why it cannot be used where it cannot, else how it stands.
    pub fn of_reading(wanted: String, verdict: Option<Verdict>, refused: Option<&str>) -> Self {
        let refused = refused.map(|sentence| Verdict { tone: Tone::Stop, text: sentence.into() });
        Self { wanted, verdict: refused.or(verdict) }
    }
}

impl PartialEq for Steps {
    fn eq(&self, other: &Self) -> bool {
        self.field == other.field
    }
}

impl Eq for Steps {}
