//! Files of the device: a new job, a file opened, all jobs backed up.

use leptos::html::Input;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};

use crate::app::device;
use crate::app::keep::{Kept, autosave, records};
use crate::app::notices::Notice;
use crate::app::photographs::album;
use crate::app::state::State;
use crate::job::backup::{self, RestorePlan};
use crate::job::file::FileError;
use crate::job::incoming::{self, Incoming};
use crate::problem::{Explain, capital};

/// The acts above the list.
#[component]
pub(super) fn Files(plan: RwSignal<Option<RestorePlan>>) -> impl IntoView {
    let state = State::here();
    let chosen = NodeRef::<Input>::new();
    let ask = move |_| {
        if let Some(input) = chosen.get_untracked() {
            input.click();
        }
    };
    let begin = move |_| {
        state.begin_empty();
        state.close_panel();
        device::focus("title");
    };
    view! {
        <div class="panel__acts">
            <button type="button" class="btn" id="new-job" on:click=begin>"New empty job"</button>
            <button type="button" class="btn" id="open-file" on:click=ask>"Open a file …"</button>
            <button type="button" class="btn" id="back-up" on:click=move |_| back_up(state)>"Back up all jobs"</button>
            <input type="file" id="file" hidden accept=".json,application/json" aria-label="Job or backup file" node_ref=chosen
                on:change=move |event| take_file(state, plan, &event)/>
        </div>
    }
}

/// Saves every job of the book, the shop's own entries and all photographs in one file.
fn back_up(state: State) {
    autosave::flush(state);
    let (mut found, broken) = records::all();
    if found.is_empty() {
        found.push(state.record());
    }
    spawn_local(async move {
        let (now, photographs, faults) = (device::now(), album::all().await, state.shop.faults.get_untracked());
        let text = state.shop.catalogue.with_untracked(|catalogue| backup::to_text_with(&found, catalogue, &photographs, &faults, &now));
        let day = now.split('T').next().unwrap_or_default();
        device::save_file(&format!("layshaft-book-{day}.json"), "application/json", &text);
        state.shop.backed_up.set(now);
    });
    if !broken.is_empty() {
        let says = format!("{} of the jobs cannot be opened and are not in the backup; save them as files from the list.", broken.len());
        state.tell(Notice::caution(says));
    }
}

/// Reads the file that was chosen.
fn take_file(state: State, plan: RwSignal<Option<RestorePlan>>, event: &web_sys::Event) {
    let Some(input) = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok()) else { return };
    let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
    // Far above any book; a film picked by mistake is not read into memory.
    if file.size() > 1.1 * limit() {
        refuse(state, &file.name(), &FileError::TooLong(size_in_bytes(&file)));
        input.set_value("");
        return;
    }
    let read = file.text();
    spawn_local(async move {
        let text = JsFuture::from(read).await.ok().and_then(|text| text.as_string());
        // The same file can be chosen again.
        input.set_value("");
        match text.ok_or_else(|| FileError::NotAJob("it cannot be read".into())).and_then(|text| incoming::read(&text)) {
            Ok(Incoming::Job(job)) => {
                let title = job.title.clone();
                state.begin(*job);
                if state.job.with_untracked(|job| job.title == title) && state.desk.kept.get_untracked() != Kept::Blocked {
                    state.tell(Notice::plain(format!("“{title}” was opened from the file and is among your saved jobs now.")));
                }
                state.close_panel();
            }
            Ok(Incoming::Book(found)) => {
                autosave::flush(state);
                plan.set(Some(state.shop.catalogue.with_untracked(|catalogue| backup::plan(&records::all().0, catalogue, *found))));
            }
            Err(why) => refuse(state, &file.name(), &why),
        }
    });
}

fn refuse(state: State, name: &str, why: &FileError) {
    state.tell(Notice::caution(format!("“{name}” was not opened: {}. {}.", why.what(), capital(&why.what_to_do()))));
}

#[expect(clippy::cast_precision_loss, reason = "the limit is far below 2^52")]
fn limit() -> f64 {
    backup::LONGEST as f64
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a file's size is a whole positive number")]
fn size_in_bytes(file: &web_sys::File) -> usize {
    file.size() as usize
}
