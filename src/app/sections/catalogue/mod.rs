//! Catalogue: what is on the shop's shelf, built in and the shop's own; used in a setup, entered, changed, read from a file and written to one.
//!
//! [`list`] shows what is found, [`row`] is one entry, [`editor`] the form of an own one, [`file`] reads what comes from outside.

mod editor;
mod file;
mod list;
mod row;

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::app::widgets::Choice;
use crate::catalogue::desk::problems_of;
use crate::catalogue::{AnyEntry, Kind, export};
use crate::job::SetupId;
use crate::units::System;

/// How many entries are shown at once.
const SHOWN: usize = 24;

/// The entry being written, and where its form stands.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Editing {
    kind: Kind,
    /// None for a new entry.
    id: Option<String>,
    /// Whether the form stands above the list; else in the entry's row.
    on_top: bool,
    /// The cells as they were.
    before: Vec<String>,
}

/// What is being looked at.
#[derive(Clone, Copy)]
struct Desk {
    kind: RwSignal<Kind>,
    sought: RwSignal<String>,
    shown: RwSignal<usize>,
    editing: RwSignal<Option<Editing>>,
    /// The cells being written, as typed.
    cells: RwSignal<Vec<String>>,
    /// The entries that were taken out, the last one last.
    gone: RwSignal<Vec<AnyEntry>>,
    /// What was done, for those who listen.
    said: RwSignal<String>,
    /// The units and the setups alone, so that a key typed elsewhere leaves the rows in peace.
    units: Memo<System>,
    setups: Memo<Vec<SetupId>>,
}

impl Desk {
    fn new(state: State) -> Self {
        Self {
            kind: RwSignal::new(Kind::GearSets),
            sought: RwSignal::new(String::new()),
            shown: RwSignal::new(SHOWN),
            editing: RwSignal::new(None),
            cells: RwSignal::new(Vec::new()),
            gone: RwSignal::new(Vec::new()),
            said: RwSignal::new(String::new()),
            units: Memo::new(move |_| state.job.with(|job| job.units)),
            setups: Memo::new(move |_| state.setup_ids()),
        }
    }

    fn look_at(self, kind: Kind) {
        self.shown.set(SHOWN);
        self.kind.set(kind);
    }

    /// Opens the form. An entry being written is kept first; where it cannot be, its form stays and says why.
    fn open(self, state: State, id: Option<String>, on_top: bool, cells: Vec<String>) {
        if !self.keep(state) {
            if let Some(kind) = self.editing.with_untracked(|editing| editing.as_ref().map(|editing| editing.kind)) {
                self.look_at(kind);
            }
            self.said.set("Finish or leave the entry that is being written first.".into());
            device::focus("shelf-keep");
            return;
        }
        self.cells.set(cells.clone());
        self.editing.set(Some(Editing { kind: self.kind.get_untracked(), id, on_top, before: cells }));
    }

    /// Puts what is being written into the catalogue and closes its form; `false` where it makes no entry.
    fn keep(self, state: State) -> bool {
        let Some(editing) = self.editing.get_untracked() else { return true };
        let cells = self.cells.get_untracked();
        if cells != editing.before {
            let put = state.catalogue.with_untracked(|catalogue| catalogue.put(editing.kind, editing.id.as_deref(), &cells));
            let Ok((after, _)) = put else { return false };
            state.catalogue.set(after);
        }
        self.editing.set(None);
        true
    }

    fn problems(self) -> Vec<crate::problem::Problem> {
        self.editing
            .with(|editing| editing.as_ref().map(|editing| editing.kind))
            .map_or_else(Vec::new, |kind| self.cells.with(|cells| problems_of(kind, cells)))
    }
}

/// The whole section.
pub(super) fn picture() -> impl IntoView {
    let desk = Desk::new(State::here());
    let on_top = move || desk.editing.get().filter(|editing| editing.on_top && editing.kind == desk.kind.get());
    view! {
        <div class="shelf">
            {kinds(desk)}
            {acts(desk)}
            {file::reader(desk)}
            {move || on_top().map(|editing| editor::form(desk, editing))}
            {list::table(desk)}
            {taken_out(desk)}
            <p class="unseen" role="status">{desk.said}</p>
        </div>
    }
}

fn kinds(desk: Desk) -> impl IntoView {
    let options = vec![
        (Kind::GearSets, "gear sets"),
        (Kind::Axles, "ring and pinion pairs"),
        (Kind::Tyres, "tyres"),
        (Kind::SpeedometerGears, "speedometer gears"),
    ];
    view! { <Choice label="Kind of part" id="shelf-kinds" options now=desk.kind choose=move |kind| desk.look_at(kind)/> }
}

fn acts(desk: Desk) -> impl IntoView {
    let state = State::here();
    let add = move |_| {
        desk.open(state, None, true, blank(desk.kind.get_untracked()));
    };
    let save = move |which: &str, text: String| {
        let kind = desk.kind.get_untracked().word().replace(' ', "-");
        device::save_file(&format!("layshaft-{kind}-{which}.csv"), "text/csv", &text);
    };
    let file = move |own: bool| {
        let kind = desk.kind.get_untracked();
        state.catalogue.with_untracked(|catalogue| if own { catalogue.own_file(kind) } else { catalogue.whole_file(kind) })
    };
    let has_own = move || state.catalogue.with(|catalogue| catalogue.count(desk.kind.get()).1 > 0);
    view! {
        <div class="shelf__acts">
            <label class="shelf__search"><span class="unseen">{move || state.say("Search the catalogue")}</span>
                <input class="picker__search" id="shelf-search" type="search" autocomplete="off" prop:value=move || desk.sought.get()
                    placeholder="name, maker, teeth or note" on:input=move |event| {
                        desk.shown.set(SHOWN);
                        desk.sought.set(event_target_value(&event));
                    }/>
            </label>
            <button type="button" class="btn btn--small" id="shelf-add" on:click=add>"Add one"</button>
            <button type="button" class="btn btn--small" id="shelf-save-own" disabled=move || !has_own() on:click=move |_| save("own", file(true))>"Save your own as CSV"</button>
            <button type="button" class="btn btn--small" id="shelf-save-all" on:click=move |_| save("all", file(false))>"Save all as CSV"</button>
            <button type="button" class="btn btn--small" on:click=move |_| save("empty", export::header(desk.kind.get_untracked()))>"Save an empty CSV to fill in"</button>
        </div>
    }
}

/// The cells of an entry not yet written: on the shelf, and of the likeliest layout and role.
fn blank(kind: Kind) -> Vec<String> {
    let cell = |column: &&str| match *column {
        "in_stock" => "yes",
        "layout" => "input-reduced",
        "role" => "driven",
        _ => "",
    };
    kind.columns().iter().map(|column| cell(column).to_owned()).collect()
}

/// What was taken out last, and the way back; it stays in sight while the section does.
fn taken_out(desk: Desk) -> impl IntoView {
    let state = State::here();
    let back = move |_| {
        let Some(entry) = desk.gone.try_update(Vec::pop).flatten() else { return };
        state.catalogue.update(|catalogue| *catalogue = catalogue.put_back(&entry));
        desk.look_at(entry.kind());
        device::focus(&row::edit_id(entry.id()));
    };
    let last = move || desk.gone.with(|gone| gone.last().map(|entry| row::name(state, entry)));
    move || {
        last().map(|name| {
            view! {
                <div class="notice shelf__gone">
                    <p role="status">{format!("“{name}” was taken out of your own.")}</p>
                    <button type="button" class="btn btn--small" id="shelf-back" on:click=back>"Put it back"</button>
                    <button type="button" class="btn btn--small" on:click=move |_| desk.gone.set(Vec::new())>"Understood"</button>
                </div>
            }
        })
    }
}
