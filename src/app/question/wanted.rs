//! The card of a figure that was pressed: how it came about, and beside it what would make it so.

use std::rc::Rc;

use leptos::prelude::*;

use crate::app::device;
use crate::app::notices::{Act, Notice};
use crate::app::state::State;
use crate::app::widgets::figure;
use crate::app::widgets::same::Same;
use crate::catalogue::{Entry, PartKind};
use crate::job::{Job, MOST_SETUPS, SetupId};
use crate::sheet::{Cell, Working};
use crate::units::number;
use crate::wanted::{Change, Search};

/// How many parts are tried before the browser may do something else.
const SLICE: usize = 12;

/// What is known of the search.
#[derive(Clone, Debug, Default, PartialEq)]
struct Found {
    changes: Vec<Change>,
    is_done: bool,
    is_refused: bool,
}

pub(in crate::app) fn card(state: State, id: SetupId, key: String, cell: Memo<Option<Same<Cell>>>) -> AnyView {
    let of = key.clone();
    let unit = cell.with_untracked(|cell| cell.as_deref().and_then(|cell| figure::of_key(cell, &key)).map(|figure| figure.unit.clone()));
    let working =
        move || cell.with(|cell| cell.as_deref().and_then(|cell| figure::of_key(cell, &of)).and_then(|figure| figure.working.clone()));
    view! {
        <div class="card" role="group" aria-label="This figure">
            <div class="card__how">
                <h3>"How it comes about"</h3>
                {move || working().map(|working| how(state, working))}
            </div>
            {what_would(state, id, key, &unit.unwrap_or_default())}
            <button type="button" class="btn btn--small card__close" on:click=move |_| state.view.asked.set(None)>"Close"</button>
        </div>
    }
    .into_any()
}

fn how(state: State, working: Working) -> impl IntoView {
    let working = working.said(state.words.get());
    view! {
        <p class="num">{working.filled()}</p>
        <p>{working.formula}</p>
        <p class="words">"Source: "{working.source}</p>
    }
}

fn what_would(state: State, id: SetupId, key: String, unit: &str) -> impl IntoView + use<> {
    let found = RwSignal::new(Found::default());
    let asked = StoredValue::new(0_u32);
    let input = move |event| {
        asked.update_value(|asked| *asked = asked.wrapping_add(1));
        ask(state, id, &key, &event_target_value(&event), found, asked);
    };
    let full = move || state.setup_ids().len() >= MOST_SETUPS;
    let next = move || Job::letter(state.setup_ids().len());
    let row = move |change: Change| {
        let part = change.part.clone();
        let try_it = move |_| try_as_new(state, id, &part);
        let what = format!("{} {}", state.say(kind_word(change.part.kind)), change.part.title());
        view! {
            <li class="option">
                <span>{state.say(kind_word(change.part.kind))}" "<b>{change.part.title().to_owned()}</b>
                    {(!change.also.is_empty()).then(|| view! { <span class="words">" "{state.say(&change.also.join("; "))}</span> })}</span>
                <span class="num">{change.shown.clone()}</span>
                <button type="button" class="btn btn--small" disabled=full
                    aria-label=move || format!("try as {}: {what}", next()) on:click=try_it>{move || format!("try as {}", next())}</button>
            </li>
        }
    };
    let says = move || {
        found.with(|found| match (found.is_refused, found.is_done, found.changes.is_empty()) {
            (true, ..) => "Type a number, such as 3,000.",
            (_, true, true) => "No single part of the shelf moves this figure.",
            _ => "",
        })
    };
    view! {
        <div class="card__wanted">
            <h3><label for="wanted">"What would make it "</label>
                <input class="field__input field__input--short" id="wanted" type="text" inputmode="decimal" autocomplete="off" on:input=input/>
                {format!(" {unit}?")}</h3>
            <p class="words">"One change at a time, from the shelf; nearest first."</p>
            <p class="words" role="status">{says}</p>
            <ul class="options">{move || found.with(|found| found.changes.clone()).into_iter().map(row).collect_view()}</ul>
        </div>
    }
}

fn kind_word(kind: PartKind) -> &'static str {
    match kind {
        PartKind::GearSet => "Gear set",
        PartKind::RingAndPinion => "Ring and pinion",
        PartKind::Tyre => "Tyre",
        PartKind::SpeedometerGear => "Speedometer gear",
        PartKind::CaseFamily => "Case",
        PartKind::SmallPart => "Small part",
    }
}

/// Begins a search for what was typed; one that was asked before ends where it is.
fn ask(state: State, id: SetupId, key: &str, text: &str, found: RwSignal<Found>, asked: StoredValue<u32>) {
    let value = number::leading(text).and_then(|(readings, _)| readings.into_iter().flatten().next());
    let Some(value) = value else {
        found.set(Found { is_refused: !text.trim().is_empty(), ..Found::default() });
        return;
    };
    let words = state.words.get_untracked();
    let offered = untrack(|| state.shop.offered());
    let search = state.job.with_untracked(|job| Search::new(job, id, words, &offered, key, value));
    if let Some(search) = search {
        let run = asked.get_value();
        go_on(search, found, Rc::new(move || asked.try_get_value() == Some(run)));
    }
}

/// One slice after the other, for as long as nothing else was asked.
fn go_on(mut search: Search, found: RwSignal<Found>, is_wanted: Rc<dyn Fn() -> bool>) {
    if !is_wanted() {
        return;
    }
    if search.advance(SLICE) {
        let _ = found.try_set(Found { changes: search.best(), is_done: true, is_refused: false });
        return;
    }
    device::soon(move || go_on(search, found, is_wanted));
}

/// A copy of the setup with the part in it, beside the others.
fn try_as_new(state: State, id: SetupId, part: &Entry) {
    let mut added = None;
    state.change(|job| {
        let Some(copy) = job.copy_setup_to_end(id) else { return };
        if let Some(setup) = job.setup_mut(copy) {
            setup.take_part(part);
            setup.name = format!("{}, {}", setup.name, part.title());
        }
        added = Some(copy);
    });
    if let Some(added) = added {
        let letter = Job::letter(state.column_of(added));
        state.tell(Notice::plain(format!("Setup {letter} is a copy with {}.", part.title())).with(Act::Undo));
    }
}
