//! Under which keys jobs and the shop's own entries are kept, and how a text that stands in the browser's older store comes among those
//! that are kept now: an older version left it there, or a page that was closed before its last change was written.

use super::book::{Record, RecordId, revision_of};
use crate::catalogue::saved;
use crate::faults::own;
use crate::ledger::Ledger;

/// Before the record of each job.
pub const RECORD: &str = "layshaft.job.";
/// Before the copy of what a record said before it was last written.
pub const GOOD: &str = "layshaft.good.";
/// Before what could not be read.
pub const ASIDE: &str = "layshaft.set-aside.";
/// The one job that the first versions kept.
pub const FIRST: &str = "layshaft.job";
/// The shop's own entries.
pub const CATALOGUE: &str = "layshaft.catalogue";
/// The shop's own rows about faults.
pub const FAULTS: &str = "layshaft.faults";
/// What the keys begin with under which entries that could not be read are set aside, whole.
pub const CATALOGUE_ASIDE: &str = "layshaft.catalogue.set-aside";

/// Whether a key is that of a job, of entries or of rows about faults; what else this program keeps are small settings.
pub fn is_kept(key: &str) -> bool {
    [FIRST, CATALOGUE, FAULTS].contains(&key) || [RECORD, GOOD, ASIDE, CATALOGUE_ASIDE].iter().any(|prefix| key.starts_with(prefix))
}

/// Takes in a text of the older store. Of a job the later revision stands; one that says something else beside it becomes a job of its own,
/// under a `fresh` name. Entries are added to those that are there. Nothing is lost but what is there already.
pub fn take_in(ledger: &mut Ledger, key: &str, text: &str, fresh: RecordId) {
    let Some(there) = ledger.text(key).map(str::to_owned) else {
        ledger.put(key, Some(text));
        return;
    };
    if there == text || key.starts_with(GOOD) {
        return;
    }
    if key == CATALOGUE {
        take_entries(ledger, &there, text);
    } else if key == FAULTS {
        ledger.put(FAULTS, Some(&own::joined(&there, text)));
    } else if let Some(id) = key.strip_prefix(RECORD) {
        take_record(ledger, (id, &there), text, fresh);
    } else {
        set_aside(ledger, key, text);
    }
}

fn take_record(ledger: &mut Ledger, (id, there): (&str, &str), text: &str, fresh: RecordId) {
    let (theirs, ours) = (Record::from_text(there), Record::from_text(text));
    match (theirs, ours) {
        (Ok(theirs), Ok(ours)) if theirs.says_the_same(&ours) => {}
        (_, Ok(_)) if revision_of(text) > revision_of(there) => ledger.put(&format!("{RECORD}{id}"), Some(text)),
        (_, Ok(mut ours)) => {
            ours.job.title = format!("{}, from before", ours.job.title);
            (ours.head.id, ours.head.revision) = (fresh, 1);
            ledger.put(&format!("{RECORD}{}", ours.head.id.as_str()), Some(&ours.to_text()));
        }
        (_, Err(_)) => set_aside(ledger, &format!("{ASIDE}{id}"), text),
    }
}

fn take_entries(ledger: &mut Ledger, there: &str, text: &str) {
    match (saved::from_text(there), saved::from_text(text)) {
        (Ok(theirs), Ok(ours)) => ledger.put(CATALOGUE, Some(&saved::to_text(&theirs.joined(&ours).0))),
        _ => set_aside(ledger, CATALOGUE_ASIDE, text),
    }
}

/// Puts a text under the first free name that begins so; the same text is put there once.
pub fn set_aside(ledger: &mut Ledger, key: &str, text: &str) {
    let numbered = (2_u32..).map(|number| format!("{key}-{number}"));
    let mut keys = std::iter::once(key.to_owned()).chain(numbered);
    if let Some(free) = keys.find(|key| ledger.text(key).is_none_or(|there| there == text)) {
        ledger.put(&free, Some(text));
    }
}
