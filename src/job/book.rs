//! The book of jobs: a job with what the shop notes about it, and its text as it is kept on the device and in a backup.
//!
//! Times come in as the browser's local time in ISO form (`2026-11-25T09:31:17`); nothing here has a clock.
//! [`super::listing`] searches and sorts, [`super::backup`] puts a whole book into one file.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::Job;
use super::file::{self, FileError};

/// The version of a record that this program writes. The job inside has a version of its own.
pub const SCHEMA: u32 = 2;

/// The longest name of a record.
const LONGEST_ID: usize = 40;

/// The name of a record: small letters, digits and dashes; never used for another job.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct RecordId(String);

worded! {
    /// How far a job has come.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
    #[serde(rename_all = "kebab-case")]
    pub enum Progress {
        /// Someone asked; no price was named.
        #[default]
        Asked => "asked";
        /// A price was named, nothing is decided.
        Quoted => "quoted";
        /// It is being worked on.
        OnTheBench => "on the bench";
        /// Work has stopped until parts come.
        WaitingForParts => "waiting for parts";
        /// Handed over.
        Done => "done";
    }
    /// The step in words.
    pub fn words;
}

/// What the shop notes about a job, beside the job itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Head {
    /// The record's name.
    pub id: RecordId,
    /// Counts the times it was written; a higher one is newer.
    pub revision: u64,
    /// How far the job has come.
    #[serde(default = "Progress::of_the_first_shape")]
    pub progress: Progress,
    /// When it was begun.
    #[serde(default)]
    pub created: String,
    /// When it was last changed.
    #[serde(default)]
    pub changed: String,
    /// Whether it was put away.
    #[serde(default)]
    pub archived: bool,
    /// Whether its parts were taken off the shelf, which happens once.
    #[serde(default)]
    pub off_shelf: bool,
}

/// A job in the book.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Record {
    /// The version of the record's shape.
    pub schema: u32,
    /// What the shop notes about it.
    #[serde(flatten)]
    pub head: Head,
    /// The job as typed.
    pub job: Job,
}

impl Progress {
    /// Every step, in the order a job takes them.
    pub const ALL: [Self; 5] = [Self::Asked, Self::Quoted, Self::OnTheBench, Self::WaitingForParts, Self::Done];

    /// What a record of the first shape means that names no step.
    fn of_the_first_shape() -> Self {
        Self::Quoted
    }
}

impl RecordId {
    /// A name out of the time in milliseconds and a random number: alike on no two devices.
    pub fn fresh(milliseconds: u64, random: u32) -> Self {
        Self(format!("j{milliseconds:x}-{random:08x}"))
    }

    /// The name as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for RecordId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let is_plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if text.is_empty() || text.len() > LONGEST_ID || !text.chars().all(is_plain) {
            return Err(format!("a record's name is 1 to {LONGEST_ID} small letters, digits and dashes"));
        }
        Ok(Self(text))
    }
}

impl From<RecordId> for String {
    fn from(id: RecordId) -> Self {
        id.0
    }
}

impl Head {
    /// The head of a job that was begun now and not yet written.
    pub fn new(id: RecordId, now: &str) -> Self {
        Self {
            id,
            revision: 0,
            progress: Progress::default(),
            created: now.to_owned(),
            changed: now.to_owned(),
            archived: false,
            off_shelf: false,
        }
    }
}

impl Record {
    /// A job under its head.
    pub fn new(head: Head, job: Job) -> Self {
        Self { schema: SCHEMA, head, job }
    }

    /// Whether both say the same of the same job, however often and whenever they were written.
    pub fn says_the_same(&self, other: &Self) -> bool {
        self.job == other.job && self.head.progress == other.head.progress && self.head.archived == other.head.archived
    }

    /// The record as text, ready to be kept.
    pub fn to_text(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The record in a text.
    ///
    /// # Errors
    /// When the text is too long, no record, from a newer version, or its job cannot be opened.
    pub fn from_text(text: &str) -> Result<Self, FileError> {
        Self::from_value(file::value_of(text)?)
    }

    /// The record in a JSON value.
    ///
    /// # Errors
    /// When the value is no record, from a newer version, or its job cannot be opened.
    pub fn from_value(mut value: Value) -> Result<Self, FileError> {
        file::check_schema(&value, SCHEMA)?;
        let job = value.get_mut("job").map(Value::take).ok_or_else(|| FileError::NotAJob("it holds no job".into()))?;
        let head = serde_json::from_value(value).map_err(|error| FileError::NotAJob(error.to_string()))?;
        Ok(Self::new(head, file::from_value(job)?))
    }
}

/// The revision that a kept text names, without reading its job.
pub fn revision_of(text: &str) -> Option<u64> {
    #[derive(Deserialize)]
    struct Revision {
        revision: u64,
    }
    serde_json::from_str::<Revision>(text).ok().map(|found| found.revision)
}
