//! The records of the book in the store: one key a job, the last good copy beside it, and a place for what cannot be read. The store
//! writes behind the page's back and says itself whether it could.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::{local, store};
use crate::app::device;
use crate::job::book::{Head, Record, RecordId, revision_of};
use crate::job::file::{self, FileError};
use crate::job::kept::{ASIDE, FIRST, GOOD, RECORD};
use crate::job::listing::Fitting;
use crate::problem::Explain;

/// How long a copy serves before it is made anew, in milliseconds.
const GOOD_FOR_MS: f64 = 60_000.0;
/// The name of the job that lies open: this tab's own, and the last one of any tab.
const OPEN: &str = "layshaft.open";

/// A record that cannot be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// What its key ends with.
    pub name: String,
    /// Its text.
    pub text: String,
    /// Why it cannot be opened: a sentence without its full stop.
    pub why: String,
    /// Whether a newer version wrote it, so that it is whole.
    pub is_newer: bool,
}

/// The record of a name, where there is one.
///
/// # Errors
/// When its text cannot be opened.
pub fn read(id: &str) -> Result<Option<Record>, Unreadable> {
    let Some(text) = store::read(&format!("{RECORD}{id}")) else { return Ok(None) };
    match Record::from_text(&text) {
        Ok(record) if record.head.id.as_str() == id => Ok(Some(record)),
        Ok(_) => Err(unreadable(id, text, &FileError::NotAJob("it stands under another job's name".into()))),
        Err(why) => Err(unreadable(id, text, &why)),
    }
}

fn unreadable(id: &str, text: String, why: &FileError) -> Unreadable {
    Unreadable { name: id.to_owned(), text, why: why.what(), is_newer: matches!(why, FileError::Newer(_)) }
}

/// Every record, and what cannot be opened.
pub fn all() -> (Vec<Record>, Vec<Unreadable>) {
    let mut found = (Vec::new(), Vec::new());
    for id in store::keys(RECORD) {
        match read(&id) {
            Ok(Some(record)) => found.0.push(record),
            Ok(None) => {}
            Err(why) => found.1.push(why),
        }
    }
    found
}

/// Every job of the book that can be opened, as far as parts of the shelf go.
pub fn fittings() -> Vec<Fitting> {
    all().0.into_iter().map(Fitting::from).collect()
}

/// The record's copy from before it was last written, where it can be opened.
pub fn good_copy(id: &str) -> Option<Record> {
    Record::from_text(&store::read(&format!("{GOOD}{id}"))?).ok()
}

/// What is kept under a name before it is written over, read once.
pub struct Before(Option<String>);

impl Before {
    /// What is kept under a name now.
    pub fn of(id: &RecordId) -> Self {
        Self(store::read(&key(id)))
    }

    /// Whether there is anything.
    pub fn is_there(&self) -> bool {
        self.0.is_some()
    }

    /// Its revision; 0 where nothing is kept.
    pub fn revision(&self) -> u64 {
        self.0.as_deref().and_then(revision_of).unwrap_or(0)
    }
}

/// Writes a record, whatever stands there; see [`write_over`].
pub fn write(record: &Record) {
    write_over(record, &Before::of(&record.head.id));
}

/// Writes a record over what stood there before, which is kept as the last good copy where that copy is a minute old or this
/// page made none yet.
pub fn write_over(record: &Record, before: &Before) {
    let (key, text, id) = (key(&record.head.id), record.to_text(), &record.head.id);
    store::change(|ledger| {
        if let Some(before) = before.0.as_deref().filter(|_| is_good_copy_due(id)) {
            ledger.put(&format!("{GOOD}{}", id.as_str()), Some(before));
        }
        ledger.put(&key, Some(&text));
    });
}

/// Whether the last good copy of a job is to be made anew: at most once a minute, so that it is from before the last few keys.
fn is_good_copy_due(id: &RecordId) -> bool {
    thread_local! { static MADE: RefCell<BTreeMap<RecordId, f64>> = const { RefCell::new(BTreeMap::new()) }; }
    let now = device::milliseconds();
    MADE.with_borrow_mut(|made| {
        let is_due = made.get(id).is_none_or(|then| now - then >= GOOD_FOR_MS);
        if is_due {
            made.insert(id.clone(), now);
        }
        is_due
    })
}

/// Changes what the shop notes about a job that does not lie open here.
pub fn change(id: &RecordId, change: impl FnOnce(&mut Head)) {
    let Ok(Some(mut record)) = read(id.as_str()) else { return };
    change(&mut record.head);
    record.head.revision = record.head.revision.saturating_add(1);
    write(&record);
}

/// Removes a job and its copy.
pub fn remove(id: &RecordId) {
    store::change(|ledger| keys(id).iter().for_each(|key| ledger.put(key, None)));
}

/// Moves what cannot be read under a name out of the way, whole; `false` where the store has no room for it, and it stays.
pub async fn set_aside(key: &str, name: &str, text: &str) -> bool {
    let aside = format!("{ASIDE}{name}");
    store::change(|ledger| {
        ledger.put(&aside, Some(text));
        ledger.put(key, None);
    });
    let is_aside = store::settled().await.is_ok();
    if !is_aside {
        store::take_back(&[aside, key.to_owned()]);
    }
    is_aside
}

/// Notes which job lies open.
pub fn note_open(id: &RecordId) {
    local::note_in_tab(OPEN, Some(id.as_str()));
    let _ = local::write(OPEN, id.as_str());
}

/// The name of the job that lay open last, in this tab or in any.
pub fn last_open() -> Option<String> {
    local::read_in_tab(OPEN).or_else(|| local::read(OPEN))
}

/// Makes a record of the one job that the first versions kept. What cannot be read is set aside.
///
/// # Errors
/// When that job cannot be opened.
pub async fn take_over_first(id: RecordId, now: &str) -> Result<(), Unreadable> {
    let Some(text) = store::read(FIRST) else { return Ok(()) };
    match file::from_text(&text) {
        Ok(job) => {
            let mut head = Head::new(id, now);
            head.revision = 1;
            let record = Record::new(head, job);
            note_open(&record.head.id);
            write(&record);
            store::remove(FIRST);
            Ok(())
        }
        Err(why) => {
            let why = unreadable("first", text, &why);
            if !why.is_newer {
                set_aside(FIRST, "first", &why.text).await;
            }
            Err(why)
        }
    }
}

/// The keys of a job and of its copy.
pub fn keys(id: &RecordId) -> [String; 2] {
    [key(id), format!("{GOOD}{}", id.as_str())]
}

/// The key of a job.
pub fn key(id: &RecordId) -> String {
    format!("{RECORD}{}", id.as_str())
}
