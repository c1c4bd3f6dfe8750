//! Catalogue: what is on the shop's shelf, built in and the shop's own; entered, changed, read from a file and written to one.

mod editor;
mod file;
mod list;

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::catalogue::{Catalogue, Kind, export};

/// What is being looked at.
#[derive(Clone, Copy)]
struct Desk {
    kind: RwSignal<Kind>,
    sought: RwSignal<String>,
    /// The entry being written: its id, none for a new one, and its cells.
    editing: RwSignal<Option<(Option<String>, Vec<String>)>>,
    /// The catalogue as it was before the last entry was taken away, and what that entry was called.
    before: RwSignal<Option<(Catalogue, String)>>,
}

/// The whole section.
pub(super) fn picture() -> impl IntoView {
    let desk = Desk {
        kind: RwSignal::new(Kind::GearSets),
        sought: RwSignal::new(String::new()),
        editing: RwSignal::new(None),
        before: RwSignal::new(None),
    };
    view! {
        <div class="shelf">
            {kinds(desk)}
            {acts(desk)}
            {move || desk.editing.get().map(|(id, cells)| editor::form(desk, id, cells))}
            {taken_away(desk)}
            {list::table(desk)}
        </div>
    }
}

fn kinds(desk: Desk) -> impl IntoView {
    let state = State::here();
    let chip = move |kind: Kind| {
        let choose = move |_| {
            desk.editing.set(None);
            desk.kind.set(kind);
        };
        let many = move || state.catalogue.with(|catalogue| catalogue.lines(kind).len());
        view! {
            <button type="button" aria-pressed=move || (desk.kind.get() == kind).to_string() on:click=choose>{move || state.say(kind.word())}" "<span class="num">{many}</span></button>
        }
    };
    view! { <div class="choice" role="group" aria-label="Kind of entry" id="shelf-kinds">{Kind::ALL.into_iter().map(chip).collect_view()}</div> }
}

fn acts(desk: Desk) -> impl IntoView {
    let state = State::here();
    let add = move |_| desk.editing.set(Some((None, vec![String::new(); desk.kind.get_untracked().columns().len()])));
    let save = move |own: bool| {
        let kind = desk.kind.get_untracked();
        let text = state.catalogue.with_untracked(|catalogue| if own { catalogue.own_file(kind) } else { catalogue.whole_file(kind) });
        device::save_file(&format!("layshaft-{}.csv", kind.word().replace(' ', "-")), "text/csv", &text);
    };
    let blank = move |_| {
        let kind = desk.kind.get_untracked();
        device::save_file(&format!("layshaft-{}-empty.csv", kind.word().replace(' ', "-")), "text/csv", &export::header(kind));
    };
    view! {
        <div class="shelf__acts">
            <label class="field"><span>"Search"</span>
                <input class="picker__search" id="shelf-search" type="search" autocomplete="off" prop:value=move || desk.sought.get()
                    on:input=move |event| desk.sought.set(event_target_value(&event))/>
            </label>
            <button type="button" class="btn btn--small" id="shelf-add" on:click=add>"Enter one of your own"</button>
            <button type="button" class="btn btn--small" on:click=move |_| save(true)>"Save your own as CSV"</button>
            <button type="button" class="btn btn--small" on:click=move |_| save(false)>"Save all as CSV"</button>
            <button type="button" class="btn btn--small" on:click=blank>"An empty file to fill in"</button>
        </div>
        {file::reader()}
    }
}

/// What was taken away last, and the way back.
fn taken_away(desk: Desk) -> impl IntoView {
    let state = State::here();
    let back = move |_| {
        if let Some((before, _)) = desk.before.try_update(Option::take).flatten() {
            state.catalogue.set(before);
        }
    };
    move || {
        desk.before.with(|before| before.as_ref().map(|(_, label)| label.clone())).map(|label| {
            view! {
                <p class="notice" role="status">
                    {format!("“{label}” was taken out of the catalogue. ")}
                    <button type="button" class="btn btn--small" id="shelf-back" on:click=back>"Put it back"</button>
                </p>
            }
        })
    }
}
