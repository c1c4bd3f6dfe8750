//! Keeping the job on the device: read at the start, written within a second of every edit, never overwriting what cannot be read.
//!
//! The store may be missing, blocked or full; each is said plainly and the page goes on. gloo-storage throws where the store is
//! blocked, so web-sys is asked for it first.

use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;

use super::device;
use super::notices::Notice;
use super::state::State;
use crate::catalogue::{Catalogue, saved};
use crate::job::{Job, demo, file};
use crate::problem::Explain;

/// The key of the job as last kept.
const JOB: &str = "layshaft.job";
/// The key of the shop's own catalogue entries.
const CATALOGUE: &str = "layshaft.catalogue";
/// The key under which catalogue entries that could not be read are set aside, whole.
const CATALOGUE_SET_ASIDE: &str = "layshaft.catalogue.set-aside";
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
    /// The catalogue with the shop's own entries.
    pub catalogue: Catalogue,
    /// How it is kept.
    pub kept: Kept,
    /// What must be said about it.
    pub notices: Vec<Notice>,
}

/// Opens the job as last kept, or the demo job, and the shop's own catalogue.
pub fn open() -> Opened {
    let mut notices = Vec::new();
    if store().is_none() {
        notices.push(Notice::store_blocked());
        return Opened { job: demo::job(), catalogue: Catalogue::built_in(), kept: Kept::Blocked, notices };
    }
    let job = open_kept(JOB, SET_ASIDE, "job", &mut notices, file::from_text).unwrap_or_else(demo::job);
    let catalogue = open_kept(CATALOGUE, CATALOGUE_SET_ASIDE, "catalogue", &mut notices, saved::from_text);
    Opened { job, catalogue: catalogue.unwrap_or_else(Catalogue::built_in), kept: Kept::Safe, notices }
}

/// Reads what is kept under a key. A text that cannot be read is moved to a key of its own, so that nothing overwrites it, and it is said.
fn open_kept<T, E: Explain>(
    key: &str,
    aside: &str,
    what: &str,
    notices: &mut Vec<Notice>,
    read_text: impl FnOnce(&str) -> Result<T, E>,
) -> Option<T> {
    let text = read(key)?;
    read_text(&text)
        .map_err(|why| {
            let is_aside = write_text(aside, &text);
            notices.push(Notice::set_aside(what, text, &why.what(), is_aside));
        })
        .ok()
}

/// Writes the shop's own entries whenever they change.
pub fn keep_catalogue(state: State) {
    Effect::new(move |before: Option<()>| {
        let text = state.catalogue.with(saved::to_text);
        if before.is_some() && !write_text(CATALOGUE, &text) {
            state.notices.update(|notices| notices.push(Notice::catalogue_not_kept(text)));
        }
    });
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
