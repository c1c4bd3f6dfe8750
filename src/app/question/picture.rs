//! The picture of a question: one at a time, others by their tabs; in words, as a table, saved as a file.

use std::sync::Arc;

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::chart::Shown;
use crate::app::widgets::{Chart, Menu};
use crate::app::{device, parts};
use crate::job::Choice;
use crate::questions::{Drawn, Question};

/// What of a picture stands open below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Below {
    Nothing,
    Words,
    Table,
}

/// The picture with its tabs; nothing where the question has none.
pub(super) fn view(question: &'static Question) -> Option<AnyView> {
    (!question.pictures.is_empty()).then(|| view! { <Pictures question/> }.into_any())
}

#[component]
fn Pictures(question: &'static Question) -> impl IntoView {
    let state = State::here();
    let last = question.pictures.len().saturating_sub(1);
    let chosen = Memo::new(move |_| state.view.tabs.with(|tabs| tabs.get(question.id).copied().unwrap_or(0)).min(last));
    let drawn = Memo::new(move |_| {
        let picture = question.pictures.get(chosen.get())?;
        let forward = state.forward();
        state.with_source(|source| (picture.draw)(source, forward)).map(|picture| Shown::new(Arc::from(picture)))
    });
    let pressed = Callback::new(move |value: f64| press(state, question.pictures.get(chosen.get_untracked()), value));
    let below = RwSignal::new(Below::Nothing);
    let is_drawn = Memo::new(move |_| drawn.with(Option::is_some));
    view! {
        <figure class="picture" hidden=move || !is_drawn.get()>
            <div class="picture__top">
                <div class="tabs" role="tablist" aria-label="Pictures" on:keydown=move |event| step(state, question, &event)>
                    {question.pictures.iter().enumerate().map(|(at, picture)| tab(state, question, at, picture, chosen)).collect_view()}
                </div>
                <div class="picture__acts">
                    {toggle("In words", below, Below::Words)}
                    {toggle("Table", below, Below::Table)}
                    <Menu words="Save ▾" id=format!("save-{}", question.id) class="btn--bare" open=move |open| saving(state, question, chosen, drawn, open)/>
                </div>
            </div>
            <Chart picture=drawn name=question.id pressed/>
            {move || match below.get() {
                Below::Nothing => ().into_any(),
                Below::Words => words(state, drawn).into_any(),
                Below::Table => table(drawn).into_any(),
            }}
        </figure>
    }
}

fn saving(state: State, question: &'static Question, chosen: Memo<usize>, drawn: Memo<Option<Shown>>, open: RwSignal<bool>) -> AnyView {
    let named = Signal::derive(move || question.pictures.get(chosen.get()).map_or("picture", |picture| picture.id));
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

fn tab(state: State, question: &'static Question, at: usize, picture: &'static Drawn, chosen: Memo<usize>) -> impl IntoView {
    let is_chosen = move || chosen.get() == at;
    view! {
        <button type="button" role="tab" id=format!("tab-{}", picture.id) aria-selected=move || is_chosen().to_string()
            tabindex=move || if is_chosen() { "0" } else { "-1" } on:click=move |_| choose(state, question, at)>{move || state.say(picture.tab)}</button>
    }
}

fn choose(state: State, question: &'static Question, at: usize) {
    state.view.tabs.update(|tabs| {
        tabs.insert(question.id, at);
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
    choose(state, question, at);
    device::focus(&format!("tab-{}", picture.id));
}

fn toggle(words: &'static str, below: RwSignal<Below>, which: Below) -> impl IntoView {
    let is_open = move || below.get() == which;
    let press = move |_| below.update(|below| *below = if *below == which { Below::Nothing } else { which });
    view! { <button type="button" class="btn btn--bare" aria-expanded=move || is_open().to_string() on:click=press>{words}</button> }
}

/// The same facts in sentences.
fn words(state: State, drawn: Memo<Option<Shown>>) -> impl IntoView {
    let lines = move || drawn.with(|shown| shown.as_ref().map(|shown| shown.picture().describe()).unwrap_or_default());
    view! { <ul class="picture__words">{move || lines().into_iter().map(|line| view! { <li>{state.say(&line)}</li> }).collect_view()}</ul> }
}

/// The figures behind the picture.
fn table(drawn: Memo<Option<Shown>>) -> impl IntoView {
    let table = Memo::new(move |_| drawn.with(|shown| shown.as_ref().map(|shown| shown.picture().table())));
    let head = |head: &String| view! { <th scope="col">{head.replace('_', " ")}</th> };
    let row = |row: &Vec<String>| view! { <tr>{row.iter().map(|cell| view! { <td>{cell.clone()}</td> }).collect_view()}</tr> };
    view! {
        <div class="picture__table" tabindex="0" role="group" aria-label="The figures behind the picture">
            {move || table.with(|table| table.as_ref().map(|table| view! {
                <table>
                    <thead><tr>{table.heads.iter().map(head).collect_view()}</tr></thead>
                    <tbody>{table.rows.iter().map(row).collect_view()}</tbody>
                </table>
            }))}
        </div>
    }
}
