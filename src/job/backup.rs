//! The whole book in one file, the shop's own catalogue entries, its rows about faults and all photographs with it, and its way back: what a file holds is laid beside what is
//! kept, and only then written.

use serde::Serialize;
use serde_json::{Value, json};

use super::book::{Record, RecordId};
use super::file::{self, FileError};
use super::photographs::{Photograph, Subject};
pub use crate::catalogue::exchange::Take;
use crate::catalogue::{Catalogue, saved};
use crate::problem::Explain;

/// The version of a backup that this program writes.
pub const SCHEMA: u32 = 1;

/// The longest text that is taken for a backup, in bytes: some hundreds of photographs.
pub const LONGEST: usize = 240_000_000;

/// What a backup holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Backup {
    /// When it was made.
    pub saved: String,
    /// Its jobs.
    pub records: Vec<Record>,
    /// The catalogue with the shop's own entries, where the file holds one that can be opened.
    pub catalogue: Option<Catalogue>,
    /// Its photographs.
    pub photographs: Vec<Photograph>,
    /// The shop's own rows about faults: see [`crate::faults::own`].
    pub faults: String,
    /// Why others of its jobs, or its catalogue, cannot be opened: a sentence each.
    pub refused: Vec<String>,
}

/// How a job of the file stands to what is kept here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// Nothing of it is kept here.
    New,
    /// It is kept here, but says something else.
    Different,
    /// It is kept here and says the same.
    Same,
}

/// A job of the file beside what is kept of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meeting {
    /// The file's.
    pub theirs: Record,
    /// How it stands to what is kept.
    pub standing: Standing,
    /// When the one here was last changed, and its revision, where there is one.
    pub ours: Option<(String, u64)>,
    /// What is to be done where they differ.
    pub take: Take,
}

/// What is made of a backup before anything is written.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RestorePlan {
    /// Every job of the file: the new ones first, then the different, then the same.
    pub meetings: Vec<Meeting>,
    /// The file's catalogue, and how many of its entries are added by [`Catalogue::joined`]; none where nothing is added.
    pub catalogue: Option<(Catalogue, usize)>,
    /// The file's photographs; those of parts under the names that the parts have here.
    pub photographs: Vec<Photograph>,
    /// The file's own rows about faults, to be added by [`crate::faults::own::joined`].
    pub faults: String,
    /// Why others cannot be opened.
    pub refused: Vec<String>,
}

/// A book and the shop's own catalogue entries as the text of one file.
pub fn to_text(records: &[Record], catalogue: &Catalogue, now: &str) -> String {
    to_text_with(records, catalogue, &[], "", now)
}

/// A book, the shop's own catalogue entries, photographs and the shop's own rows about faults as the text of one file.
pub fn to_text_with(records: &[Record], catalogue: &Catalogue, photographs: &[Photograph], faults: &str, now: &str) -> String {
    #[derive(Serialize)]
    struct Book<'a> {
        layshaft: &'static str,
        schema: u32,
        saved: &'a str,
        jobs: &'a [Record],
        catalogue: &'a Catalogue,
        #[serde(skip_serializing_if = "<[_]>::is_empty")]
        photographs: &'a [Photograph],
        #[serde(skip_serializing_if = "str::is_empty")]
        faults: &'a str,
    }
    let book = Book { layshaft: "book", schema: SCHEMA, saved: now, jobs: records, catalogue, photographs, faults };
    serde_json::to_string_pretty(&book).unwrap_or_default()
}

/// Whether a JSON value is a backup, of whichever version.
pub fn is_backup(value: &Value) -> bool {
    value.get("layshaft") == Some(&json!("book"))
}

/// What a backup holds. A job that cannot be opened does not keep the others from it.
///
/// # Errors
/// When the backup is from a newer version or names no jobs.
pub fn from_value(mut value: Value) -> Result<Backup, FileError> {
    file::check_schema(&value, SCHEMA)?;
    let saved = value.get("saved").and_then(Value::as_str).unwrap_or_default().to_owned();
    let faults = value.get("faults").and_then(Value::as_str).unwrap_or_default().to_owned();
    let Some(Value::Array(jobs)) = value.get_mut("jobs").map(Value::take) else {
        return Err(FileError::NotAJob("it is a book without jobs".into()));
    };
    let mut backup = Backup { saved, faults, ..Backup::default() };
    for (at, job) in jobs.into_iter().enumerate() {
        match Record::from_value(job) {
            Ok(record) => backup.records.push(record),
            Err(why) => backup.refused.push(format!("Job {} of the file cannot be opened: {}.", at + 1, why.what())),
        }
    }
    match value.get("catalogue").filter(|catalogue| !catalogue.is_null()).map(saved::from_value) {
        Some(Ok(catalogue)) => backup.catalogue = Some(catalogue),
        Some(Err(why)) => backup.refused.push(format!("The catalogue entries of the file cannot be opened: {}.", why.what())),
        None => {}
    }
    if let Some(Value::Array(photographs)) = value.get_mut("photographs").map(Value::take) {
        let many = photographs.len();
        backup.photographs = photographs.into_iter().filter_map(Photograph::from_value).collect();
        if let lost @ 1.. = many.saturating_sub(backup.photographs.len()) {
            backup.refused.push(format!("{lost} of the {many} photographs in the file cannot be read."));
        }
    }
    Ok(backup)
}

/// Lays a backup beside the book and the catalogue.
pub fn plan(book: &[Record], catalogue: &Catalogue, backup: Backup) -> RestorePlan {
    let here = crate::order::index(book.iter().map(|record| (&record.head.id, record)));
    let meet = |theirs: Record| {
        let ours = here.get(&theirs.head.id);
        let standing = match ours {
            None => Standing::New,
            Some(ours) if ours.says_the_same(&theirs) => Standing::Same,
            Some(_) => Standing::Different,
        };
        let ours = ours.map(|ours| (ours.head.changed.clone(), ours.head.revision));
        Meeting { theirs, standing, ours, take: Take::default() }
    };
    let mut meetings: Vec<Meeting> = backup.records.into_iter().map(meet).collect();
    crate::order::by_key(&mut meetings, |meeting| meeting.standing);
    let theirs = backup.catalogue.unwrap_or_else(Catalogue::empty);
    let (joined, added) = catalogue.joined(&theirs);
    let photographs = backup.photographs.into_iter().map(|photograph| of_part_here(photograph, &theirs, &joined)).collect();
    RestorePlan { meetings, catalogue: (added > 0).then_some((theirs, added)), photographs, faults: backup.faults, refused: backup.refused }
}

/// A photograph of a part under the name that the part has here: the id of the entry that says the same.
fn of_part_here(photograph: Photograph, theirs: &Catalogue, here: &Catalogue) -> Photograph {
    let Some(Subject::Part { kind, id }) = Subject::of(&photograph.name) else { return photograph };
    let part = theirs.own(kind).find(|entry| entry.id == id).and_then(|entry| here.own_saying(entry));
    let subject = part.map(|part| Subject::Part { kind, id: part.id.clone() });
    Photograph { name: subject.map_or_else(|| photograph.name.clone(), |subject| subject.renamed(&photograph.name)), ..photograph }
}

impl RestorePlan {
    /// How many jobs of the file stand so.
    pub fn many(&self, standing: Standing) -> usize {
        self.meetings.iter().filter(|meeting| meeting.standing == standing).count()
    }

    /// What is to be written, in order; `fresh` names the copies that stand beside what is kept.
    pub fn writes(&self, fresh: impl FnMut() -> RecordId) -> Vec<Record> {
        self.writes_of(fresh).into_iter().map(|(_, record)| record).collect()
    }

    /// As [`Self::writes`], each record behind the name it has in the file.
    pub fn writes_of(&self, mut fresh: impl FnMut() -> RecordId) -> Vec<(RecordId, Record)> {
        let mut writes: Vec<(RecordId, Record)> = Vec::new();
        for meeting in &self.meetings {
            let mut record = meeting.theirs.clone();
            let taken = writes.iter().any(|(_, other)| other.head.id == record.head.id);
            match (meeting.standing, meeting.take) {
                (Standing::Same, _) | (Standing::Different, Take::Ours) => continue,
                (Standing::Different, Take::Theirs) if !taken => {
                    let ours = meeting.ours.as_ref().map_or(0, |(_, revision)| *revision);
                    record.head.revision = ours.max(record.head.revision).saturating_add(1);
                }
                (Standing::New, _) if !taken => {}
                _ => {
                    record.head.id = fresh();
                    record.head.revision = 1;
                    record.job.title = format!("{}, from the file", record.job.title);
                }
            }
            writes.push((meeting.theirs.head.id.clone(), record));
        }
        writes
    }

    /// The photographs that go with what is written: of parts, of jobs that are the same here, and of each job that is written, under
    /// its name here.
    pub fn photographs_of(&self, written: &[(RecordId, Record)]) -> Vec<Photograph> {
        let is_same = |id: &RecordId| self.meetings.iter().any(|one| one.standing == Standing::Same && one.theirs.head.id == *id);
        let mut found = Vec::new();
        for photograph in &self.photographs {
            let Some(Subject::Step { job, what }) = Subject::of(&photograph.name) else {
                found.push(photograph.clone());
                continue;
            };
            let jobs = written.iter().filter(|(theirs, _)| *theirs == job).map(|(_, record)| record.head.id.clone());
            for job in jobs.chain(is_same(&job).then(|| job.clone())) {
                let name = Subject::Step { job, what: what.clone() }.renamed(&photograph.name);
                found.push(Photograph { name, ..photograph.clone() });
            }
        }
        found
    }
}
