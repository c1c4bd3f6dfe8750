//! The bar: mark, places, the job's title, what was kept, and the acts that concern the whole job.

use leptos::prelude::*;

use super::address::Place;
use super::book::Panel;
use super::keep::Kept;
use super::parts;
use super::state::State;
use super::widgets::{Choice, Menu};
use crate::job::{Field, JobField};
use crate::sheet::Words;
use crate::units::System;

/// The bar at the top.
#[component]
pub fn Bar() -> impl IntoView {
    let state = State::here();
    let title = Field::Job(JobField::Title);
    view! {
        <header class="bar">
            <div class="bar__mark"><Mark/><span>"Layshaft"</span></div>
            <nav class="bar__places" aria-label="Places"><Places/></nav>
            <input class="bar__title" id="title" type="text" aria-label="Title of the job" autocomplete="off" dir="auto"
                prop:value=move || state.job.with(|job| job.title.clone())
                on:input=move |event| state.type_text(title, event_target_value(&event))
                on:blur=move |_| state.leave_field()/>
            <span class="bar__kept" role="status">{move || kept_words(state.desk.kept.get())}</span>
            <div class="bar__acts">
                <button type="button" class="btn" id="undo" disabled=move || !state.can_undo() on:click=move |_| state.undo()>"Undo"</button>
                <button type="button" class="btn bar__redo" id="redo" disabled=move || !state.can_redo() on:click=move |_| state.redo()>"Redo"</button>
                <Menu words="Hand over ▾" id="hand-over" open=move |open| parts::DESK.show(move |desk| (desk.hand_over)(state, open)).into_any()/>
                <Menu words=Signal::derive(move || read_in(state)) id="read-in" open=move |_| parts::DESK.show(move |desk| (desk.reading)(state)).into_any()/>
            </div>
        </header>
    }
}

/// The places at the bottom of a phone.
#[component]
pub fn PlacesBelow() -> impl IntoView {
    view! { <nav class="below" aria-label="Places, below"><Places/></nav> }
}

#[component]
fn Places() -> impl IntoView {
    let state = State::here();
    let link = move |place: Place| {
        let current = move || (state.view.at.get().place == place).then_some("page");
        view! { <a class="place" href=move || state.view.left(place).fragment() aria-current=current>{place.title()}</a> }
    };
    Place::ALL.map(link).collect_view()
}

/// What can be done with the whole job.
pub(super) fn hand_over(state: State, open: RwSignal<bool>) -> AnyView {
    let panel = move |panel: Panel| {
        move |_| {
            open.set(false);
            state.view.panel.set(Some(panel));
        }
    };
    view! {
        <button type="button" class="btn" id="print" on:click=panel(Panel::Print)>"Print"</button>
        <button type="button" class="btn" id="open-send" on:click=panel(Panel::Send)>"Link, file, CSV"</button>
        <button type="button" class="btn" id="open-details" on:click=panel(Panel::Details)>"Customer and notes"</button>
    }
    .into_any()
}

fn read_in(state: State) -> String {
    let units = if state.job.with(|job| job.units) == System::Inch { "mph" } else { "km/h" };
    let words = if state.words.get() == Words::Us { "US" } else { "UK" };
    format!("{units} · {words} ▾")
}

/// How the page is read: units, words, theme.
pub(super) fn reading(state: State) -> AnyView {
    let units = Signal::derive(move || state.job.with(|job| job.units));
    let choose_units = move |units| state.change(move |job| job.units = units);
    let choose_words = move |words| state.words.set(words);
    view! {
        <Choice label="Units" id="units" options=vec![(System::Inch, "mph · in"), (System::Metric, "km/h · mm")] now=units choose=choose_units/>
        <Choice label="Trade words" id="words" options=vec![(Words::Us, "US words"), (Words::Uk, "UK words")] now=state.words choose=choose_words/>
        <super::widgets::ThemeSwitch/>
        <button type="button" class="btn" id="open-keymap" on:click=move |_| state.view.panel.set(Some(Panel::Keys))>"Keys"</button>
    }
    .into_any()
}

fn kept_words(kept: Kept) -> &'static str {
    match kept {
        Kept::Safe => "Saved",
        Kept::Soon => "Saving …",
        Kept::Full => "Not saved: this device’s store is full",
        Kept::Blocked => "Not saved: storage is blocked",
        Kept::Held => "Not saved: changed in another tab",
        Kept::Linked => "From a link, not saved",
    }
}

/// A stepped cluster on one shaft.
#[component]
fn Mark() -> impl IntoView {
    view! {
        <svg viewBox="0 0 40 28" aria-hidden="true" fill="currentColor">
            <rect x="1" y="13" width="38" height="2"></rect>
            <rect x="5" y="4" width="6" height="20"></rect>
            <rect x="13" y="9" width="5" height="10"></rect>
            <rect x="20" y="6.5" width="5" height="15"></rect>
            <rect x="27" y="2" width="7" height="24"></rect>
        </svg>
    }
}
