//! Hands the open job over to be written when typing pauses, within a second of every edit, and when the page is left; says when it is
//! written; notices when another tab changed it.

use leptos::prelude::*;

use super::records;
use super::store::{self, Elsewhere, Health};
use super::{Kept, local, opening};
use crate::app::device;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::job::book::Record;
use crate::job::kept::RECORD;
use crate::job::{demo, link};

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

/// Keeps the open job for as long as the page lives. One that was never written, with all that was typed until now, is written at once;
/// where the browser had lost the note that there are jobs, the newest of them takes the place of a demo job in which nothing was typed.
pub fn keep(state: State) {
    if state.desk.kept.get_untracked() == Kept::Soon {
        let is_untouched = state.job.with_untracked(|job| !state.desk.is_unkept(job) && demo::is_demo(job));
        if is_untouched && opening::newest().is_some_and(|newest| newest.head.id != state.desk.head.get_untracked().id) {
            state.show_next();
        } else {
            write(state);
        }
    }
    let waiting = StoredValue::new(Waiting::default());
    Effect::new(move || {
        let is_unkept = state.job.with(|job| state.desk.is_unkept(job));
        match state.desk.kept.get_untracked() {
            Kept::Held => return,
            Kept::Soon if !is_unkept => note_health(state, store::health().get_untracked()),
            Kept::Safe | Kept::Full if is_unkept => state.desk.kept.set(Kept::Soon),
            _ => {}
        }
        if is_unkept {
            write_soon(state, waiting);
        }
    });
    let health = store::health();
    Effect::new(move || note_health(state, health.get()));
    // A phone may end a page that is not seen without another word.
    for event in ["pagehide", "visibilitychange"] {
        device::on_window(event, move |_: web_sys::Event| {
            super::leave(state);
        });
    }
    store::follow(move |key, how| follow_other_tab(state, key, how));
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

/// Says how the open job is kept, by how far the store is.
pub fn note_health(state: State, health: Health) {
    let is_unkept = state.job.with_untracked(|job| state.desk.is_unkept(job));
    match (health, state.desk.kept.get_untracked()) {
        (Health::Written, Kept::Soon | Kept::Full) if !is_unkept => {
            device::ask_to_persist();
            state.desk.kept.set(Kept::Safe);
        }
        (Health::Failed(why), Kept::Safe | Kept::Soon | Kept::Full) => {
            if store::is_more_behind_than(&records::key(&state.desk.head.with_untracked(|head| head.id.clone()))) {
                state.tell(Notice::not_kept());
            }
            state.desk.kept.set(Kept::after(why));
        }
        _ => {}
    }
}

/// Writes the open job where it says something that is not written yet. The first edit of a linked job keeps a copy.
pub fn flush(state: State) {
    if !state.job.with_untracked(|job| state.desk.is_unkept(job)) {
        return;
    }
    if state.desk.kept.get_untracked() == Kept::Linked {
        super::drop_link();
        local::note_in_tab(opening::LINKED, None);
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
    if !local::is_there() {
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
    state.desk.note_safe(&record.job);
    state.desk.head.set(record.head.clone());
    state.desk.kept.set(Kept::Soon);
    records::note_open(&record.head.id);
    records::write_over(&record, before);
    state.desk.say_book_changed();
}

/// Writes the open job over whatever is kept of it, whoever wrote that.
fn write_over_any(state: State) {
    let record = state.record();
    let before = records::Before::of(&record.head.id);
    write_over(state, record, &before);
}

/// Another tab wrote or removed a record.
fn follow_other_tab(state: State, key: &str, how: Elsewhere) {
    let Some(id) = key.strip_prefix(RECORD) else { return };
    state.desk.say_book_changed();
    let ours = state.desk.head.get_untracked();
    if id != ours.id.as_str() || state.desk.kept.get_untracked() == Kept::Linked {
        return;
    }
    match records::read(id) {
        Ok(Some(theirs)) if how == Elsewhere::Written && theirs.head.revision <= ours.revision => {}
        Ok(Some(theirs)) if state.job.with_untracked(|job| *job == theirs.job) => {
            state.desk.note_safe(&theirs.job);
            state.desk.head.set(theirs.head);
            state.desk.kept.set(Kept::Safe);
        }
        theirs => {
            if let Ok(Some(theirs)) = theirs {
                state.desk.note_safe(&theirs.job);
            }
            state.desk.kept.set(Kept::Held);
        }
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
