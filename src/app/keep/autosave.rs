//! Writes the open job when typing pauses, within a second of every edit, and when the page is left; notices when another tab
//! changed it.

use leptos::prelude::*;

use super::records::{self, RECORD};
use super::{Kept, opening, store};
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::job::book::Record;
use crate::job::link;

/// How long after the last key the job is written, in milliseconds.
const PAUSE: u32 = 400;
/// How long after the first unwritten key it is written where the keys never pause, in milliseconds.
const LONGEST: u32 = 1_000;

/// What waits to write the job.
#[derive(Clone, Copy, Default)]
struct Waiting {
    pause: Option<TimeoutHandle>,
    longest: Option<TimeoutHandle>,
}

/// Keeps the open job for as long as the page lives. One that was never written, with all that was typed until now, is written at once.
pub fn keep(state: State) {
    if state.desk.kept.get_untracked() == Kept::Soon {
        write(state);
    }
    let waiting = StoredValue::new(Waiting::default());
    Effect::new(move || {
        let is_unkept = state.job.with(|job| state.desk.is_unkept(job));
        match state.desk.kept.get_untracked() {
            Kept::Held => return,
            Kept::Soon if !is_unkept => state.desk.kept.set(Kept::Safe),
            Kept::Safe | Kept::Full if is_unkept => state.desk.kept.set(Kept::Soon),
            _ => {}
        }
        if is_unkept {
            write_soon(state, waiting);
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

/// Writes the open job when the keys pause, or a second after the first of them.
fn write_soon(state: State, waiting: StoredValue<Waiting>) {
    let act = move || {
        let Waiting { pause, longest } = waiting.get_value();
        waiting.set_value(Waiting::default());
        [pause, longest].into_iter().flatten().for_each(|timer| timer.clear());
        flush(state);
    };
    let Waiting { pause, longest } = waiting.get_value();
    if let Some(timer) = pause {
        timer.clear();
    }
    waiting.set_value(Waiting { pause: device::after(PAUSE, act), longest: longest.or_else(|| device::after(LONGEST, act)) });
}

/// Writes the open job where it says something that is not written yet. The first edit of a linked job keeps a copy.
pub fn flush(state: State) {
    if !state.job.with_untracked(|job| state.desk.is_unkept(job)) {
        return;
    }
    if state.desk.kept.get_untracked() == Kept::Linked {
        super::drop_link();
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
    if !store::is_there() {
        state.desk.kept.set(Kept::Blocked);
        return;
    }
    let record = state.record();
    let before = records::Before::of(&record.head.id);
    if record.head.revision == before.revision() {
        write_over(state, record, &before);
    } else {
        state.desk.kept.set(Kept::Held);
    }
}

/// Writes the open job over whatever is kept of it.
fn write_over(state: State, mut record: Record, before: &records::Before) {
    record.head.revision = record.head.revision.max(before.revision()).saturating_add(1);
    record.head.changed = device::now();
    match records::write_over(&record, before) {
        Ok(()) => {
            device::ask_to_persist();
            state.desk.note_safe(&record.job);
            state.desk.head.set(record.head.clone());
            records::note_open(&record.head.id);
            state.desk.kept.set(Kept::Safe);
            state.desk.say_book_changed();
        }
        Err(why) => state.desk.kept.set(Kept::after(why)),
    }
}

/// Writes the open job over whatever is kept of it, whoever wrote that.
fn write_over_any(state: State) {
    let record = state.record();
    let before = records::Before::of(&record.head.id);
    write_over(state, record, &before);
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
    records::Before::of(&state.desk.head.with(|head| head.id.clone())).is_there()
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
    write_over_any(state);
}

/// Leaves the other tab's as it is and keeps this tab's as a job of its own.
pub fn keep_both(state: State) {
    state.desk.head.update(|head| {
        head.id = device::fresh_id();
        head.revision = 0;
    });
    state.change(|job| job.title = format!("{}, from this tab", job.title));
    state.desk.kept.set(Kept::Soon);
    write_over_any(state);
}
