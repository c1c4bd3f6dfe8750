//! Keeping the job on the device: read at the start, written within a second of every edit, never overwriting what cannot be read.
//!
//! The store may be missing, blocked or full; each is said plainly and the page goes on. gloo-storage throws where the store is
//! blocked, so web-sys is asked for it first.

use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;

use super::device;
use super::notices::Notice;
use super::state::State;
use crate::job::{Job, demo, file};
use crate::problem::Explain;

/// The key of the job as last kept.
const JOB: &str = "layshaft.job";
/// The key under which a job that could not be read is set aside, whole.
const SET_ASIDE: &str = "layshaft.set-aside";
/// How long after the last key the job is written, in milliseconds.
const PAUSE: u32 = 400;

/// How the job is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// As it stands.
    Safe,
    /// An edit is about to be written.
    Soon,
    /// The store took nothing.
    Full,
    /// There is no store.
    Blocked,
}

/// What the page opens with.
pub struct Opened {
    /// The job.
    pub job: Job,
    /// How it is kept.
    pub kept: Kept,
    /// What must be said about it.
    pub notices: Vec<Notice>,
}

/// Opens the job as last kept, or the demo job.
pub fn open() -> Opened {
    if store().is_none() {
        return Opened { job: demo::job(), kept: Kept::Blocked, notices: vec![Notice::store_blocked()] };
    }
    let Some(text) = read(JOB) else { return Opened { job: demo::job(), kept: Kept::Safe, notices: Vec::new() } };
    match file::from_text(&text) {
        Ok(job) => Opened { job, kept: Kept::Safe, notices: Vec::new() },
        Err(why) => set_aside(&text, &why),
    }
}

/// Moves a text that is no job to its own key, so that nothing overwrites it, and says so.
fn set_aside(text: &str, why: &file::FileError) -> Opened {
    let notices = vec![Notice::set_aside(text.to_owned(), &why.what())];
    let kept = if write_text(SET_ASIDE, text) { Kept::Safe } else { Kept::Full };
    Opened { job: demo::job(), kept, notices }
}

/// Writes the job a moment after every edit, and at once when the page is left.
pub fn autosave(state: State) {
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |before: Option<Job>| {
        let job = state.job.get();
        if before.is_some_and(|before| before != job) && state.kept.get_untracked() != Kept::Blocked {
            state.kept.set(Kept::Soon);
            waiting.update_value(|handle| {
                if let Some(handle) = handle.take() {
                    handle.clear();
                }
                *handle = device::after(PAUSE, move || write(state));
            });
        }
        job
    });
    device::on_window("pagehide", move |_: web_sys::Event| flush(state));
    device::on_window("visibilitychange", move |_: web_sys::Event| flush(state));
}

fn flush(state: State) {
    if state.kept.get_untracked() == Kept::Soon {
        write(state);
    }
}

fn write(state: State) {
    let written = store().is_some() && state.job.with_untracked(|job| LocalStorage::set(JOB, job).is_ok());
    state.kept.set(if written { Kept::Safe } else { Kept::Full });
}

fn store() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}

fn read(key: &str) -> Option<String> {
    store()?.get_item(key).ok().flatten()
}

fn write_text(key: &str, text: &str) -> bool {
    store().is_some_and(|store| store.set_item(key, text).is_ok())
}
