//! One job in the book: open it, say how far it has come, copy it, put it away, delete it.

use leptos::prelude::*;

use super::list::{Shelf, Unread};
use crate::app::address::{At, Place};
use crate::app::device;
use crate::app::keep::store;
use crate::app::notices::Act;
use crate::app::state::State;
use crate::job::book::{Progress, Record, RecordId};
use crate::job::listing::{self, Line};

/// A job that can be opened.
#[component]
pub(super) fn JobRow(line: Line, shelf: Shelf) -> impl IntoView {
    let state = State::here();
    let id = line.head.id.clone();
    let line = {
        let id = id.clone();
        Memo::new(move |before: Option<&Line>| {
            let found = shelf.lines.with(|lines| lines.iter().find(|line| line.head.id == id).cloned());
            found.or_else(|| before.cloned()).unwrap_or_else(|| line.clone())
        })
    };
    let gone = {
        let id = id.clone();
        Memo::new(move |_| state.desk.gone.with(|gone| gone.iter().find(|gone| gone.head.id == id).cloned()))
    };
    let is_open = {
        let id = id.clone();
        Memo::new(move |_| state.desk.head.with(|head| head.id == id))
    };
    let name = id.as_str().to_owned();
    let there = move || {
        let (opened, id) = (id.clone(), id.clone());
        view! {
            <button type="button" class="job__open" aria-current=move || is_open.get().then_some("true") on:click=move |_| open(state, &opened)>
                <span class="job__title">{move || line.with(|line| line.title.clone())}</span>
                <span class="job__about">{move || line.with(about)}</span>
            </button>
            <ProgressChoice id=id.clone() line/>
            <Acts id line/>
        }
    };
    view! {
        <li class="job" data-job=name class:job--open=move || is_open.get()>
            {move || match gone.get() {
                Some(record) => deleted(state, record).into_any(),
                None => there().into_any(),
            }}
        </li>
    }
}

/// What stands in the place of a deleted job: the way back.
fn deleted(state: State, record: Record) -> impl IntoView {
    let (says, id) = (format!("“{}” is deleted.", record.job.title), record.head.id.clone());
    let undo_id = back_id(&id);
    let back = move |_| {
        Act::PutBack(Box::new(record.clone())).act(state);
    };
    view! {
        <div class="job__gone">
            <span role="status">{says}</span>
            <button type="button" class="btn btn--small" id=undo_id on:click=back>"Undo"</button>
            <button type="button" class="btn btn--small" on:click=move |_| state.desk.gone.update(|gone| gone.retain(|gone| gone.head.id != id))>"Close"</button>
        </div>
    }
}

/// The name on the page of the way back to a deleted job.
fn back_id(id: &RecordId) -> String {
    format!("job-back-{}", id.as_str())
}

/// Opens a job and goes to it.
pub(super) fn open(state: State, id: &RecordId) {
    state.open_record(id);
    state.view.go(At::first(Place::Compare));
}

/// Customer, car, setups, the steps of its build that are open, and the day of the last change.
fn about(line: &Line) -> String {
    let setups = if line.setups == 1 { "1 setup".to_owned() } else { format!("{} setups", line.setups) };
    let changed = format!("changed {}", listing::when(&line.head.changed, &device::now()));
    let open = match line.open_steps {
        None => String::new(),
        Some(0) => "every step done".into(),
        Some(1) => "1 step open".into(),
        Some(open) => format!("{open} steps open"),
    };
    let parts = [line.customer.clone(), line.car.clone(), setups, open, changed];
    parts.into_iter().filter(|part| !part.trim().is_empty()).collect::<Vec<_>>().join(" · ")
}

#[component]
fn ProgressChoice(id: RecordId, line: Memo<Line>) -> impl IntoView {
    let state = State::here();
    let option = move |(at, one): (usize, Progress)| {
        view! { <option value=at.to_string() selected=move || line.with(|line| line.head.progress == one)>{one.words()}</option> }
    };
    let choose = move |event| {
        let at: usize = event_target_value(&event).parse().unwrap_or(0);
        state.set_progress(&id, Progress::ALL.get(at).copied().unwrap_or_default());
    };
    view! {
        <select class="select job__progress" aria-label=move || line.with(|line| format!("State of {}", line.title)) on:change=choose>
            {Progress::ALL.into_iter().enumerate().map(option).collect_view()}
        </select>
    }
}

#[component]
fn Acts(id: RecordId, line: Memo<Line>) -> impl IntoView {
    let state = State::here();
    let of = move |act: &'static str| move || line.with(|line| format!("{act} {}", line.title));
    let away = move || line.with(|line| line.head.archived);
    let (copied, put_away, deleted) = (id.clone(), id.clone(), id);
    let delete = move |_| {
        state.delete_record(&deleted);
        device::focus(&back_id(&deleted));
    };
    let toggle = move |_| state.note(&put_away, |head| head.archived = !head.archived);
    view! {
        <div class="job__acts">
            <button type="button" class="btn btn--small" aria-label=of("Copy") on:click=move |_| state.copy_record(&copied)>"Copy"</button>
            <button type="button" class="btn btn--small" aria-label=move || if away() { of("Take back")() } else { of("Archive")() } on:click=toggle>
                {move || if away() { "Take back" } else { "Archive" }}
            </button>
            <button type="button" class="btn btn--small" aria-label=of("Delete") on:click=delete>"Delete"</button>
        </div>
    }
}

/// A job that cannot be opened: save its text or delete it.
#[component]
pub(super) fn UnreadRow(unread: Unread) -> impl IntoView {
    let state = State::here();
    let (key, text) = (unread.key.clone(), unread.text.clone());
    let save = move |_| device::save_file("layshaft-job-unread.json", "application/json", &text);
    let delete = move |_| {
        store::remove(&key);
        state.desk.say_book_changed();
    };
    view! {
        <li class="job">
            <div class="job__open">
                <span class="job__title">"A job that cannot be opened"</span>
                <span class="job__about">{unread.why}" · "{unread.text.len()}" bytes"</span>
            </div>
            <div class="job__acts">
                <button type="button" class="btn btn--small" on:click=save>"Save it as a file"</button>
                <button type="button" class="btn btn--small" on:click=delete>"Delete for good"</button>
            </div>
        </li>
    }
}
