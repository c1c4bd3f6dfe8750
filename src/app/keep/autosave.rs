//! Writes the open job within a second of every edit and when the page is left; notices when another tab changed it.

use leptos::prelude::*;

use super::records::{self, RECORD};
use super::store::StoreError;
use super::{Kept, opening, store};
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::job::book::Record;
use crate::job::link;

/// How long after the first unwritten key the job is written, in milliseconds.
const PAUSE: u32 = 400;

/// Keeps the open job for as long as the page lives.
pub fn keep(state: State) {
    let is_waiting = StoredValue::new(false);
    Effect::new(move || {
        let is_unkept = state.job.with(|job| state.desk.is_unkept(job));
        match state.desk.kept.get_untracked() {
            Kept::Blocked | Kept::Held => return,
            Kept::Soon if !is_unkept => state.desk.kept.set(Kept::Safe),
            Kept::Safe | Kept::Full if is_unkept => state.desk.kept.set(Kept::Soon),
            _ => {}
        }
        if is_unkept && !is_waiting.get_value() {
            is_waiting.set_value(true);
            device::after(PAUSE, move || {
                is_waiting.set_value(false);
                flush(state);
            });
        }
    });
    device::on_window("pagehide", move |_: web_sys::Event| flush(state));
    device::on_window("visibilitychange", move |_: web_sys::Event| flush(state));
    device::on_window("storage", move |event: web_sys::StorageEvent| follow_other_tab(state, &event));
    device::on_window("hashchange", move |_: web_sys::Event| {
        let fragment = device::fragment();
        if link::is_link(&fragment) {
            state.open_link(&fragment);
        }
    });
}

/// Writes the open job where it says something that is not written yet. The first edit of a linked job keeps a copy.
pub fn flush(state: State) {
    if !state.job.with_untracked(|job| state.desk.is_unkept(job)) {
        return;
    }
    if state.desk.kept.get_untracked() == Kept::Linked {
        device::drop_fragment();
        store::note_in_tab(opening::LINKED, None);
        state.tell(Notice::plain(
            "The job of the link is kept on this device now, as a copy with your change. The sender's stays as it is.",
        ));
    }
    write(state);
}

/// Writes the open job as it stands, unless another tab changed it meanwhile.
pub fn write(state: State) {
    if state.desk.kept.get_untracked() == Kept::Held {
        return;
    }
    let mut record = state.record();
    let revision = record.head.revision;
    if revision != records::revision(&record.head.id).unwrap_or(0) {
        state.desk.kept.set(if store::is_there() { Kept::Held } else { Kept::Blocked });
        return;
    }
    write_over(state, &mut record);
}

/// Writes the open job over whatever is kept of it.
fn write_over(state: State, record: &mut Record) {
    let kept = records::revision(&record.head.id).unwrap_or(0);
    record.head.revision = record.head.revision.max(kept).saturating_add(1);
    record.head.changed = device::now();
    match records::write(record) {
        Ok(()) => {
            device::ask_to_persist();
            state.desk.note_safe(&record.job);
            state.desk.head.set(record.head.clone());
            records::note_open(&record.head.id);
            state.desk.kept.set(Kept::Safe);
            state.desk.say_book_changed();
        }
        Err(StoreError::Full | StoreError::NotTaken) => state.desk.kept.set(Kept::Full),
        Err(StoreError::Blocked) => state.desk.kept.set(Kept::Blocked),
    }
}

/// Another tab wrote or removed a record.
fn follow_other_tab(state: State, event: &web_sys::StorageEvent) {
    let Some(key) = event.key() else { return };
    let Some(id) = key.strip_prefix(RECORD) else { return };
    state.desk.say_book_changed();
    let ours = state.desk.head.get_untracked();
    if id != ours.id.as_str() || state.desk.kept.get_untracked() == Kept::Linked {
        return;
    }
    match records::read(id) {
        Ok(Some(theirs)) if theirs.head.revision <= ours.revision => {}
        Ok(Some(theirs)) if state.job.with_untracked(|job| *job == theirs.job) => {
            state.desk.note_safe(&theirs.job);
            state.desk.head.set(theirs.head);
            state.desk.kept.set(Kept::Safe);
        }
        _ => state.desk.kept.set(Kept::Held),
    }
}

/// Whether what is kept of the open job is there at all.
pub fn is_kept_elsewhere(state: State) -> bool {
    records::revision(&state.desk.head.with(|head| head.id.clone())).is_some()
}

/// Takes what the other tab wrote.
pub fn load_theirs(state: State) {
    let id = state.desk.head.with_untracked(|head| head.id.clone());
    match records::read(id.as_str()) {
        Ok(Some(record)) => state.lay_out(record, Kept::Safe),
        Ok(None) => state.tell(Notice::plain("The other tab has deleted the job. Keep the one here, or open another.")),
        Err(why) => state.tell(Notice::unreadable(why)),
    }
}

/// Writes the job of this tab over the other tab's.
pub fn keep_mine(state: State) {
    state.desk.kept.set(Kept::Soon);
    write_over(state, &mut state.record());
}

/// Leaves the other tab's as it is and keeps this tab's as a job of its own.
pub fn keep_both(state: State) {
    state.desk.head.update(|head| {
        head.id = device::fresh_id();
        head.revision = 0;
    });
    state.change(|job| job.title = format!("{}, from this tab", job.title));
    state.desk.kept.set(Kept::Soon);
    write_over(state, &mut state.record());
}
