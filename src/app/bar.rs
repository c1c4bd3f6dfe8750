//! The bar at the top: mark, the job's title, what was kept, and the acts that concern the whole job.

use leptos::prelude::*;

use super::book::{Opener, Panel};
use super::keep::Kept;
use super::state::State;
use super::widgets::Choice;
use crate::job::{Field, JobField};
use crate::sheet::Words;
use crate::units::System;

/// The bar.
#[component]
pub fn Bar() -> impl IntoView {
    let state = State::here();
    let title = Field::Job(JobField::Title);
    view! {
        <header class="bar">
            <div class="bar__mark"><Mark/><span>"Layshaft"</span></div>
            <input class="bar__title" id="title" type="text" aria-label="Title of the job" autocomplete="off"
                prop:value=move || state.job.with(|job| job.title.clone())
                on:input=move |event| state.type_text(title, event_target_value(&event))
                on:blur=move |_| state.leave_field()/>
            <span class="bar__kept" role="status">{move || kept_words(state.desk.kept.get())}</span>
            <div class="bar__acts">
                <Units/>
                <TradeWords/>
                <button class="btn" id="undo" disabled=move || !state.can_undo() on:click=move |_| state.undo()>"Undo"</button>
                <button class="btn" id="redo" disabled=move || !state.can_redo() on:click=move |_| state.redo()>"Redo"</button>
                <super::widgets::ThemeSwitch/>
                <Opener panel=Panel::Send words="Send link"/>
                <button class="btn" id="print" on:click=|_| print()>"Print sheet"</button>
                <Opener panel=Panel::Book/>
            </div>
        </header>
    }
}

fn print() {
    if let Some(window) = web_sys::window() {
        let _ = window.print();
    }
}

fn kept_words(kept: Kept) -> &'static str {
    match kept {
        Kept::Safe => "kept on this device",
        Kept::Soon => "keeping …",
        Kept::Full => "not kept: the store is full",
        Kept::Blocked => "not kept: storage is blocked",
        Kept::Held => "not kept: changed in another tab",
        Kept::Linked => "from a link, not kept",
    }
}

#[component]
fn Units() -> impl IntoView {
    let state = State::here();
    let now = Signal::derive(move || state.job.with(|job| job.units));
    let choose = move |units| state.change(move |job| job.units = units);
    view! { <Choice label="Units" id="units" options=vec![(System::Inch, "mph · in"), (System::Metric, "km/h · mm")] now choose/> }
}

#[component]
fn TradeWords() -> impl IntoView {
    let state = State::here();
    let choose = move |words| state.words.set(words);
    view! { <Choice label="Trade words" id="words" options=vec![(Words::Us, "US"), (Words::Uk, "UK")] now=state.words choose/> }
}

#[component]
fn Mark() -> impl IntoView {
    view! {
        <svg viewBox="0 0 34 26" aria-hidden="true">
            <g fill="none" stroke="currentColor" stroke-width="2">
                <circle cx="9" cy="13" r="7"></circle>
                <circle cx="23.5" cy="13" r="7.5" stroke-dasharray="2.6 2"></circle>
            </g>
            <g fill="currentColor"><circle cx="9" cy="13" r="1.6"></circle><circle cx="23.5" cy="13" r="1.6"></circle></g>
        </svg>
    }
}
