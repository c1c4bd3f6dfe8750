//! The picture of a question: one at a time, others by their tabs; in words, as a table, saved as a file.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::chart::Shown;
use crate::app::widgets::{Chart, Menu};
use crate::app::{device, parts};
use crate::job::Choice;
use crate::questions::{Drawn, FIRST_DRAWN, Question};

/// What of a picture stands open below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Below {
    Nothing,
    Words,
    Table,
}

/// The picture of a question with its tabs. What draws a picture brings that of the first question along.
pub fn view(question: Signal<&'static Question>) -> AnyView {
    let question = Signal::derive(move || Some(question.get()).filter(|question| !question.pictures.is_empty()).unwrap_or(FIRST_DRAWN));
    view! { <Pictures question/> }.into_any()
}

#[component]
fn Pictures(question: Signal<&'static Question>) -> impl IntoView {
    let state = State::here();
    let id = question.get_untracked().id;
    let chosen = Memo::new(move |_| {
        let last = question.get().pictures.len().saturating_sub(1);
        state.view.tabs.with(|tabs| tabs.get(id).copied().unwrap_or(0)).min(last)
    });
    let still = Memo::new(move |_| {
        let picture = question.get().pictures.get(chosen.get())?;
        let forward = state.forward();
        state.with_source(|source| (picture.draw)(source, forward)).map(|picture| Shown::new(Arc::from(picture)))
    });
    let drawn = Memo::new(move |_| {
        let pointed = state.view.pointed.get();
        still.with(|still| {
            let turned = still.as_ref().zip(pointed).and_then(|(still, to)| still.picture().turned(to));
            turned.map(|picture| Shown::new(Arc::from(picture))).or_else(|| still.clone())
        })
    });
    let pressed = Callback::new(move |value: f64| press(state, question.get_untracked().pictures.get(chosen.get_untracked()), value));
    let below = RwSignal::new(Below::Nothing);
    let is_drawn = Memo::new(move |_| drawn.with(Option::is_some));
    view! {
        <figure class="picture" hidden=move || !is_drawn.get()>
            <div class="picture__top">
                <div class="tabs" role="tablist" aria-label="Pictures" on:keydown=move |event| step(state, question.get_untracked(), &event)>
                    <For each=move || question.get().pictures.iter().enumerate() key=|(_, picture)| picture.id
                        children=move |(at, picture)| tab(state, id, at, picture, chosen)/>
                </div>
                <div class="picture__acts">
                    {toggle("In words", below, Below::Words)}
                    {toggle("Table", below, Below::Table)}
                    <Menu words="Save ▾" id=format!("save-{id}") class="btn--bare" open=move |open| saving(state, question, chosen, drawn, open)/>
                </div>
            </div>
            <Chart picture=drawn name=id pressed/>
            {move || match below.get() {
                Below::Nothing => ().into_any(),
                Below::Words => parts::DESK.show(move |desk| (desk.in_words)(drawn)).into_any(),
                Below::Table => parts::DESK.show(move |desk| (desk.as_table)(drawn)).into_any(),
            }}
        </figure>
    }
}

fn saving(
    state: State,
    question: Signal<&'static Question>,
    chosen: Memo<usize>,
    drawn: Memo<Option<Shown>>,
    open: RwSignal<bool>,
) -> AnyView {
    let named = Signal::derive(move || question.get().pictures.get(chosen.get()).map_or("picture", |picture| picture.id));
    parts::DESK.show(move |desk| (desk.saving)(state, named, drawn, open)).into_any()
}

fn press(state: State, picture: Option<&'static Drawn>, value: f64) {
    let forward = untrack(|| state.forward());
    let chosen =
        picture.and_then(|picture| picture.press).and_then(|press| untrack(|| state.with_source(|source| press(source, forward, value))));
    if let Some((choice, word)) = chosen {
        state.change(|job| job.choose(Choice::Job(choice), &word));
    }
}

fn tab(state: State, question: &'static str, at: usize, picture: &'static Drawn, chosen: Memo<usize>) -> impl IntoView {
    let is_chosen = move || chosen.get() == at;
    view! {
        <button type="button" role="tab" id=format!("tab-{}", picture.id) aria-selected=move || is_chosen().to_string()
            tabindex=move || if is_chosen() { "0" } else { "-1" } on:click=move |_| choose(state, question, at)>{move || state.say(picture.tab)}</button>
    }
}

fn choose(state: State, question: &'static str, at: usize) {
    state.view.tabs.update(|tabs| {
        tabs.insert(question, at);
    });
}

/// Arrow keys go from tab to tab.
fn step(state: State, question: &'static Question, event: &web_sys::KeyboardEvent) {
    let step = match event.key().as_str() {
        "ArrowRight" => 1,
        "ArrowLeft" => -1,
        _ => return,
    };
    let now = state.view.tabs.with_untracked(|tabs| tabs.get(question.id).copied().unwrap_or(0));
    let Some((at, picture)) = now.checked_add_signed(step).and_then(|at| Some((at, question.pictures.get(at)?))) else { return };
    event.prevent_default();
    choose(state, question.id, at);
    device::focus(&format!("tab-{}", picture.id));
}

fn toggle(words: &'static str, below: RwSignal<Below>, which: Below) -> impl IntoView {
    let is_open = move || below.get() == which;
    let press = move |_| below.update(|below| *below = if *below == which { Below::Nothing } else { which });
    view! { <button type="button" class="btn btn--bare" aria-expanded=move || is_open().to_string() on:click=press>{words}</button> }
}
