//! What the page begins with: the job of a link, the job that lay open, the newest of the book, or the demo job.
//!
//! A first visit has nothing to read, and begins before what reads has come.

use std::pin::Pin;

use super::{Kept, local, records, settings, shop, store};
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::shop::Settled;
use crate::catalogue::Catalogue;
use crate::job::book::{Head, Record};
use crate::job::kept::RECORD;
use crate::job::{demo, link};
use crate::problem::{Explain, capital};

/// Where this tab notes the link it shows, so that loading the page again shows it again.
pub(super) const LINKED: &str = "layshaft.linked";

/// What the page opens with.
pub struct Opened {
    /// The job and what the shop notes about it.
    pub record: Record,
    /// The catalogue with the shop's own entries.
    pub catalogue: Catalogue,
    /// What the shop settled for all jobs.
    pub settled: Settled,
    /// How the job is kept.
    pub kept: Kept,
    /// What must be said about it.
    pub notices: Vec<Notice>,
}

/// What a first visit begins with: the demo job, as yet unwritten, and shelves that are filled when the catalogue has come. None where
/// something is kept, or comes with a link.
pub fn first_visit() -> Option<Opened> {
    if fragment_of_link().is_some() || !local::keys().is_empty() {
        return None;
    }
    let (kept, notice) = if local::is_there() { (Kept::Soon, Notice::welcome()) } else { (Kept::Blocked, Notice::store_blocked()) };
    Some(Opened { record: fresh(), catalogue: Catalogue::empty(), settled: Settled::default(), kept, notices: vec![notice] })
}

/// Opens what the page begins with.
pub fn open() -> Pin<Box<dyn Future<Output = Opened>>> {
    Box::pin(opened())
}

async fn opened() -> Opened {
    let mut notices = Vec::new();
    let is_store = local::is_there();
    if !is_store {
        notices.push(Notice::store_blocked());
    } else if !store::open().await && records::last_open().is_some_and(|id| !matches!(records::read(&id), Ok(Some(_)))) {
        notices.push(Notice::database_refused());
    }
    let catalogue = if is_store { shop::open(&mut notices).await } else { Catalogue::built_in() };
    let linked = linked(&mut notices);
    let (record, kept) = match linked {
        Some(record) => (record, Kept::Linked),
        None if is_store => kept_record(&mut notices).await,
        None => (fresh(), Kept::Blocked),
    };
    Opened { record, catalogue, settled: settings::settled(), kept, notices }
}

/// The demo job as a new record.
fn fresh() -> Record {
    Record::new(Head::new(device::fresh_id(), &device::now()), demo::job())
}

/// The link that the page was opened with, now or before it was loaded again.
fn fragment_of_link() -> Option<String> {
    Some(device::fragment()).filter(|fragment| link::is_link(fragment)).or_else(|| local::read_in_tab(LINKED))
}

/// The job of the link that the page was opened with.
fn linked(notices: &mut Vec<Notice>) -> Option<Record> {
    let fragment = fragment_of_link()?;
    match link::open(&fragment) {
        Ok(job) => {
            local::note_in_tab(LINKED, Some(&fragment));
            Some(Record::new(Head::new(device::fresh_id(), &device::now()), job))
        }
        Err(why) => {
            local::note_in_tab(LINKED, None);
            notices.push(Notice::caution(format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()))));
            None
        }
    }
}

async fn kept_record(notices: &mut Vec<Notice>) -> (Record, Kept) {
    if let Err(why) = records::take_over_first(device::fresh_id(), &device::now()).await {
        notices.push(Notice::unreadable(why));
    }
    let last = match records::last_open() {
        Some(id) => read_or_restore(&id, notices).await,
        None => None,
    };
    if let Some(record) = last.or_else(newest) {
        records::note_open(&record.head.id);
        return (record, Kept::Safe);
    }
    notices.push(Notice::welcome());
    let mut record = fresh();
    record.head.revision = 1;
    records::note_open(&record.head.id);
    records::write(&record);
    (record, Kept::Soon)
}

/// The record of a name; its last good copy where it cannot be read, and what cannot be read is set aside.
async fn read_or_restore(id: &str, notices: &mut Vec<Notice>) -> Option<Record> {
    let why = match records::read(id) {
        Ok(record) => return record,
        Err(why) => why,
    };
    if why.is_newer {
        notices.push(Notice::unreadable(why));
        return None;
    }
    let good = records::good_copy(id);
    let is_aside = records::set_aside(&format!("{RECORD}{id}"), &why.name, &why.text).await;
    let copy = good.filter(|_| is_aside);
    notices.push(match &copy {
        Some(record) => {
            records::write(record);
            Notice::restored(why.text, &why.why)
        }
        None => Notice::set_aside("job", why.text, &why.why, is_aside),
    });
    copy
}

/// The job that was changed last, put away ones behind the others.
pub(super) fn newest() -> Option<Record> {
    records::all().0.into_iter().max_by_key(|record| (!record.head.archived, record.head.changed.clone()))
}
