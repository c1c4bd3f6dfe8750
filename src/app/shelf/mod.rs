//! Catalogue: what is on the shop's shelf, built in and the shop's own; used in a setup, entered, changed, read from a file and written to one.
//!
//! [`list`] shows what is found, [`row`] is one entry, [`editor`] the form of an own one, [`file`] reads what comes from outside,
//! [`exchange`] hands the shelf to another shop and takes theirs in.

mod editor;
mod exchange;
mod file;
mod list;
mod row;

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::Choice;
use crate::app::{device, parts};
use crate::catalogue::case::CaseNeeds;
use crate::catalogue::search::Query;
use crate::catalogue::{DemoParts, Entry, PartKind, write_example};
use crate::job::SetupId;
use crate::job::listing::Fitting;
use crate::problem::Problem;
use crate::questions;
use crate::units::System;

pub(super) fn place() -> AnyView {
    let state = State::here();
    view! {
        <section class="question" id="catalogue" aria-labelledby="shelf-title">
            <div class="question__head">
                <h2 id="shelf-title">"Shelf"</h2>
                <span class="question__ask">{move || state.say("What is on the shop’s shelf, and what is your own?")}</span>
            </div>
            {view()}
        </section>
    }
    .into_any()
}

/// How many entries are shown at once.
const SHOWN: usize = 24;

/// The entry being written, and where its form stands.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Editing {
    /// None for a new entry.
    id: Option<String>,
    /// Whether the form stands above the list; else in the entry's row.
    on_top: bool,
    /// The entry as it was.
    before: Entry,
}

/// What is being looked at.
#[derive(Clone, Copy)]
struct Desk {
    kind: RwSignal<PartKind>,
    sought: RwSignal<String>,
    /// Whether only what is to be ordered is shown.
    to_reorder: RwSignal<bool>,
    shown: RwSignal<usize>,
    editing: RwSignal<Option<Editing>>,
    /// The entry being written, as typed.
    draft: RwSignal<Entry>,
    /// The entries that were taken out, the last one last.
    gone: RwSignal<Vec<Entry>>,
    /// What was done, for those who listen.
    said: RwSignal<String>,
    /// The units and the setups alone, so that a key typed elsewhere leaves the rows in peace.
    units: Memo<System>,
    setups: Memo<Vec<SetupId>>,
    /// What setup A asks of its case.
    case: Memo<Option<CaseNeeds>>,
    /// The jobs of the book, once what reads them is there.
    jobs: Memo<Vec<Fitting>>,
}

impl Desk {
    fn new(state: State) -> Self {
        Self {
            kind: RwSignal::new(PartKind::GearSet),
            sought: RwSignal::new(String::new()),
            to_reorder: RwSignal::new(false),
            shown: RwSignal::new(SHOWN),
            editing: RwSignal::new(None),
            draft: RwSignal::new(Entry::new(PartKind::GearSet)),
            gone: RwSignal::new(Vec::new()),
            said: RwSignal::new(String::new()),
            units: Memo::new(move |_| state.job.with(|job| job.units)),
            setups: Memo::new(move |_| state.setup_ids()),
            case: Memo::new(move |_| state.with_source(questions::case::of_first)),
            jobs: Memo::new(move |_| {
                state.desk.book_changed.track();
                parts::KEEPER.get().map(|keeper| (keeper.fittings)()).unwrap_or_default()
            }),
        }
    }

    /// What is sought, as it is understood.
    fn query(self) -> Query {
        self.sought.with(|sought| Query::read(sought)).only_to_reorder(self.to_reorder.get())
    }

    fn look_at(self, kind: PartKind) {
        self.shown.set(SHOWN);
        self.to_reorder.set(false);
        self.kind.set(kind);
    }

    /// Opens the form. An entry being written is kept first; where it cannot be, its form stays and says why.
    fn open(self, state: State, id: Option<String>, on_top: bool, entry: Entry) {
        if !self.keep(state) {
            if let Some(kind) = self.editing.with_untracked(|editing| editing.as_ref().map(|editing| editing.before.kind)) {
                self.look_at(kind);
            }
            self.said.set("Finish or leave the entry that is being written first.".into());
            device::focus("shelf-keep");
            return;
        }
        self.draft.set(entry.clone());
        self.editing.set(Some(Editing { id, on_top, before: entry }));
    }

    /// Puts what is being written into the catalogue and closes its form; `false` where it makes no entry.
    fn keep(self, state: State) -> bool {
        let Some(editing) = self.editing.get_untracked() else { return true };
        let draft = self.draft.get_untracked();
        if draft != editing.before {
            let put = state.shop.catalogue.with_untracked(|catalogue| catalogue.put(editing.id.as_deref(), &draft));
            let Ok((after, _)) = put else { return false };
            state.shop.catalogue.set(after);
        }
        self.editing.set(None);
        true
    }

    fn problems(self) -> Vec<Problem> {
        if self.editing.with(Option::is_some) { self.draft.with(Entry::problems) } else { Vec::new() }
    }
}

/// The whole section.
fn view() -> impl IntoView {
    let desk = Desk::new(State::here());
    let on_top = move || desk.editing.get().filter(|editing| editing.on_top && editing.before.kind == desk.kind.get());
    view! {
        <div class="shelf">
            {demo_switch()}
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

/// Whether the invented parts that come with the program are offered, here and everywhere.
fn demo_switch() -> impl IntoView {
    let state = State::here();
    let shop = state.shop;
    let turn = move |event| shop.demo_parts.set(if event_target_checked(&event) { DemoParts::Shown } else { DemoParts::Hidden });
    view! {
        <div class="shelf__demo">
            <label class="shelf__stock"><input type="checkbox" id="demo-parts" aria-describedby="demo-parts-why"
                prop:checked=move || shop.offers_demo() on:change=turn/>"Demo parts"</label>
            <span class="words" id="demo-parts-why" role="status">{move || state.say(shop.demo_parts.get().reason(shop.standing.get()))}</span>
        </div>
    }
}

fn kinds(desk: Desk) -> impl IntoView {
    let options = PartKind::ALL.map(|kind| (kind, kind.plural())).to_vec();
    view! { <Choice label="Kind of part" id="shelf-kinds" options now=desk.kind choose=move |kind| desk.look_at(kind)/> }
}

fn acts(desk: Desk) -> impl IntoView {
    let state = State::here();
    let add = move |_| {
        desk.open(state, None, true, Entry::started(desk.kind.get_untracked()));
    };
    let save = move |which: &str, text: String| {
        let kind = desk.kind.get_untracked().plural().replace(' ', "-");
        device::save_file(&format!("layshaft-{kind}-{which}.csv"), "text/csv", &text);
    };
    let file = move |own: bool| {
        let kind = desk.kind.get_untracked();
        let offered = untrack(|| state.shop.offered());
        if own { offered.own_file(kind) } else { offered.whole_file(kind) }
    };
    let has_any = move || state.shop.catalogue.with(crate::catalogue::Catalogue::has_own);
    let has_own = move || state.shop.catalogue.with(|catalogue| catalogue.own(desk.kind.get()).next().is_some());
    view! {
           <div class="shelf__acts">
               <label class="shelf__search"><span class="unseen">{move || state.say("Search the catalogue")}</span>
                   <input class="picker__search" id="shelf-search" type="search" autocomplete="off" prop:value=move || desk.sought.get()
                       placeholder="name, case, sum 55, first near 2.5" on:input=move |event| {
                           desk.shown.set(SHOWN);
                           desk.sought.set(event_target_value(&event));
                       }/>
               </label>
    {reorder(desk)}
               <button type="button" class="btn btn--small" id="shelf-add" on:click=add>"Add one"</button>
               <button type="button" class="btn btn--small" id="shelf-save-own" disabled=move || !has_own() on:click=move |_| save("own", file(true))>"Save your own as CSV"</button>
               <button type="button" class="btn btn--small" id="shelf-save-all" on:click=move |_| save("all", file(false))>"Save all as CSV"</button>
               <button type="button" class="btn btn--small" id="shelf-hand" disabled=move || !has_any() on:click=move |_| exchange::save(state)>"Save a shelf for another shop"</button>
               <button type="button" class="btn btn--small" on:click=move |_| save("to-fill-in", write_example(desk.kind.get_untracked()))>"Save a CSV to fill in"</button>
           </div>
       }
}

/// How many it is time to order more of, where there are any; pressed, they alone are shown.
fn reorder(desk: Desk) -> impl IntoView {
    let state = State::here();
    let many = Memo::new(move |_| state.shop.catalogue.with(|catalogue| catalogue.many_to_reorder(desk.kind.get())));
    let pressed = move || desk.to_reorder.get().to_string();
    move || {
        (many.get() > 0 || desk.to_reorder.get()).then(|| {
            view! {
                <button type="button" class="btn btn--small" id="shelf-reorder" aria-pressed=pressed
                    on:click=move |_| desk.to_reorder.update(|only| *only = !*only)>{format!("To reorder: {}", many.get())}</button>
            }
        })
    }
}

/// What was taken out last, and the way back; it stays in sight while the section does.
fn taken_out(desk: Desk) -> impl IntoView {
    let state = State::here();
    let back = move |_| {
        let Some(entry) = desk.gone.try_update(Vec::pop).flatten() else { return };
        state.shop.catalogue.update(|catalogue| *catalogue = catalogue.add(entry.clone()).0);
        desk.look_at(entry.kind);
        device::focus(&row::edit_id(&entry.id));
    };
    let last = move || desk.gone.with(|gone| gone.last().map(|entry| entry.title().to_owned()));
    move || {
        last().map(|name| {
            view! {
                <div class="notice shelf__gone">
                    <p role="status">{format!("“{name}” was taken out of your own.")}</p>
                    <button type="button" class="btn btn--small" id="shelf-back" on:click=back>"Put it back"</button>
                    <button type="button" class="btn btn--small" on:click=move |_| desk.gone.set(Vec::new())>"Close"</button>
                </div>
            }
        })
    }
}
