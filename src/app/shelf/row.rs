//! One entry: what a rebuilder asks of it, the setups it can go into, and what can be done with one of the shop's own.

use leptos::prelude::*;

use super::{Desk, editor};
use crate::app::state::State;
use crate::app::widgets::shape;
use crate::app::{device, parts};
use crate::catalogue::case::fit;
use crate::catalogue::{Entry, PartKind};
use crate::job::listing::used_in;
use crate::job::photographs::Subject;
use crate::job::{Job, Setup, SetupId};
use crate::sheet::catalogue::{Told, stock as stock_words, told};

/// The name on the page of an entry's way into its form.
pub(super) fn edit_id(id: &str) -> String {
    format!("shelf-edit-{id}")
}

/// The row of an entry, and its form where it is being changed.
pub(super) fn one(desk: Desk, entry: Memo<Option<Entry>>) -> impl IntoView {
    let state = State::here();
    let Some(first) = entry.get_untracked() else { return ().into_any() };
    let (id, own, goes) = (first.id, first.own, first.kind.goes_into_a_setup());
    let said = Memo::new(move |_| {
        let units = desk.units.get();
        entry.with(|entry| entry.as_ref().map(|entry| told(entry, units))).unwrap_or_else(|| Told {
            name: String::new(),
            figures: Vec::new(),
            words: Vec::new(),
        })
    });
    let subject =
        Memo::new(move |_| entry.with(|entry| entry.as_ref().map(|entry| Subject::Part { kind: entry.kind, id: entry.id.clone() })));
    let name = Memo::new(move |_| said.with(|said| said.name.clone()));
    let fit = Memo::new(move |_| {
        let set = entry.get().filter(|entry| entry.kind == PartKind::GearSet)?;
        Some(fit(&set.case_needs(), &desk.case.get()?).words('A'))
    });
    let used = move || {
        let used =
            entry.with(|entry| entry.as_ref().filter(|entry| entry.own).and_then(|entry| desk.jobs.with(|jobs| used_in(jobs, entry))));
        used.map(|used| view! { " "<span class="shelf__words">{used}</span> })
    };
    let is_open = Memo::new(move |_| {
        desk.editing.with(|editing| editing.as_ref().is_some_and(|editing| !editing.on_top && editing.id.as_deref() == Some(id.as_str())))
    });
    let form = move || is_open.get().then(|| desk.editing.get_untracked()).flatten().map(|editing| editor::form(desk, editing));
    let class = move || if own { "shelf__one shelf__one--own" } else { "shelf__one" };
    view! {
        <li class=class data-own=own.to_string() data-name=move || said.with(|said| said.name.clone())>
            <div class="shelf__what">
                {move || entry.with(|entry| entry.as_ref().and_then(shape))}
                <span class="shelf__name">{move || said.with(|said| said.name.clone())}</span>
                <span class="shelf__mark">{if own { "your own" } else { "invented demo" }}</span>
                <span class="shelf__words">{move || state.say(&said.with(|said| said.words.join(" · ")))}</span>
                {used}
                {move || fit.get().map(|fit| view! { " "<span class="shelf__words">{state.say(&fit)}</span> })}
            </div>
            <div class="shelf__figures">{move || said.with(|said| said.figures.iter().map(|figure| view! { <span class="num">{figure.clone()}</span> }).collect_view())}</div>
            <div class="shelf__do">
                {goes.then(|| uses(desk, state, entry, said))}
                {stock(state, entry, said)}
                {copy(desk, state, entry, said)}
                {own.then(|| change(desk, state, entry, said))}
            </div>
            {own.then(|| parts::PHOTOGRAPHS.add(move |photographs| (photographs.strip)(subject.into(), name.into())))}
            {form}
        </li>
    }
    .into_any()
}

/// The letters of the setups, each a way for the part into that setup.
fn uses(desk: Desk, state: State, entry: Memo<Option<Entry>>, said: Memo<Told>) -> impl IntoView {
    let button = move |setup: SetupId| {
        let letter = move || Job::letter(desk.setups.with(|setups| setups.iter().position(|one| *one == setup).unwrap_or(0)));
        let has = move || {
            entry.with(|entry| {
                let fitted = |setups: &Vec<Setup>, entry| setups.iter().any(|each| each.id == setup && each.has_part(entry));
                entry.as_ref().is_some_and(|entry| state.setups.with(|setups| fitted(setups, entry)))
            })
        };
        let take = move |_| {
            let Some(part) = entry.get_untracked() else { return };
            state.change(|job| {
                if let Some(setup) = job.setup_mut(setup) {
                    setup.take_part(&part);
                }
            });
        };
        let label = move || format!("Use {} in setup {}", said.with(|said| said.name.clone()), letter());
        view! {
            <button type="button" class="shelf__use" aria-label=label aria-pressed=move || has().to_string() on:click=take>
                <span class=move || format!("badge badge--{}", letter().to_ascii_lowercase())>{move || letter().to_string()}</span>
            </button>
        }
    };
    view! {
        <div class="shelf__uses" role="group" aria-label="Use in setup">
            <span class="words" aria-hidden="true">"use in"</span>
            <For each=move || desk.setups.get() key=|id| *id children=button/>
        </div>
    }
}

fn stock(state: State, entry: Memo<Option<Entry>>, said: Memo<Told>) -> impl IntoView {
    let is_there = move || entry.with(|entry| entry.as_ref().is_some_and(Entry::in_stock));
    let words = move || entry.with(|entry| entry.as_ref().map(stock_words).unwrap_or_default());
    let is_low = move || entry.with(|entry| entry.as_ref().is_some_and(Entry::is_low));
    let own = entry.with_untracked(|entry| entry.as_ref().is_some_and(|entry| entry.own));
    let turn = move |_| {
        let Some(entry) = entry.get_untracked() else { return };
        let after = state.shop.catalogue.with_untracked(|catalogue| catalogue.stocked(entry.kind, &entry.id, !entry.in_stock()));
        if let Ok(after) = after {
            state.shop.catalogue.set(after);
        }
    };
    if own {
        let label = move || format!("{} in stock", said.with(|said| said.name.clone()));
        view! {
            <label class="shelf__stock"><input type="checkbox" aria-label=label prop:checked=is_there on:change=turn/>
                <span class:shelf__low=is_low>{words}</span></label>
        }
        .into_any()
    } else {
        view! { <span class="shelf__stock words">{words}</span> }.into_any()
    }
}

fn copy(desk: Desk, state: State, entry: Memo<Option<Entry>>, said: Memo<Told>) -> impl IntoView {
    let copy = move |_| {
        let Some(entry) = entry.get_untracked() else { return };
        // What is being written is kept first, so that the copy's form can open.
        if !desk.keep(state) {
            desk.open(state, None, true, entry);
            return;
        }
        let Ok((after, id)) = state.shop.catalogue.with_untracked(|catalogue| catalogue.copied(entry.kind, &entry.id)) else { return };
        let Some(copy) = after.get(entry.kind, &id).cloned() else { return };
        state.shop.catalogue.set(after);
        desk.open(state, Some(id), true, copy);
    };
    let label = move || format!("Copy {} to your own", said.with(|said| said.name.clone()));
    view! { <button type="button" class="btn btn--small" aria-label=label on:click=copy>"Copy"</button> }
}

fn change(desk: Desk, state: State, entry: Memo<Option<Entry>>, said: Memo<Told>) -> impl IntoView {
    let id = entry.with_untracked(|entry| entry.as_ref().map(|entry| edit_id(&entry.id)));
    let edit = move |_| {
        if let Some(entry) = entry.get_untracked() {
            desk.open(state, Some(entry.id.clone()), false, entry);
        }
    };
    let delete = move |_| {
        let Some(entry) = entry.get_untracked() else { return };
        let Ok(after) = state.shop.catalogue.with_untracked(|catalogue| catalogue.without(entry.kind, &entry.id)) else { return };
        desk.editing.update(|editing| {
            if editing.as_ref().is_some_and(|editing| editing.id.as_deref() == Some(&entry.id)) {
                *editing = None;
            }
        });
        desk.gone.update(|gone| gone.push(entry));
        state.shop.catalogue.set(after);
        device::focus("shelf-back");
    };
    let label = move |act: &'static str| move || format!("{act} {}", said.with(|said| said.name.clone()));
    view! {
        <button type="button" class="btn btn--small" id=id aria-label=label("Edit") on:click=edit>"Edit"</button>
        <button type="button" class="btn btn--small" aria-label=label("Delete") on:click=delete>"Delete"</button>
    }
}
