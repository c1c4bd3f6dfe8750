//! An entry of the shop's own being written: a field for every column, its text as typed, what is wrong with it beside it.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::{Desk, Editing, row};
use crate::app::device;
use crate::app::state::State;
use crate::catalogue::{Choices, Column, ColumnRow, Entry, Holds, PartKind, problem_at};
use crate::problem::{Problem, Severity};

/// The form for a new entry, or for one to be changed.
pub(super) fn form(desk: Desk, editing: Editing) -> impl IntoView {
    let state = State::here();
    let Editing { id, before, .. } = editing;
    let kind = before.kind;
    let problems = Memo::new(move |_| desk.problems());
    let columns = move || kind.columns().filter(|column| *column != Column::Id);
    let title = if id.is_some() { "Change one of your own" } else { "Add one of your own" };
    let back_to = id.as_deref().map_or_else(|| "shelf-add".to_owned(), row::edit_id);
    let shut = back_to.clone();
    let tried = RwSignal::new(false);
    let keep = move || {
        if desk.keep(state) {
            desk.said.set(state.say("Saved in the catalogue."));
            device::focus(&back_to);
        } else {
            tried.set(true);
        }
    };
    // Enter saves from any field; on a button it presses that.
    let enter = {
        let keep = keep.clone();
        move |event: web_sys::KeyboardEvent| {
            let is_field = event.target().is_some_and(|target| target.has_type::<web_sys::HtmlInputElement>());
            if event.key() == "Enter" && is_field && !event.is_composing() {
                event.prevent_default();
                desk.draft.update(Entry::spread_line);
                keep();
            }
        }
    };
    let leave = move |_| {
        desk.editing.set(None);
        device::focus(&shut);
    };
    if let Some(first) = columns().next() {
        device::focus(&slug(first));
    }
    let field = |column| field(desk, column, problems, before.text(column));
    view! {
        <div class="shelf__form" role="group" aria-label=title on:keydown=enter>
            <h3>{title}</h3>
            <div class="shelf__fields">{columns().map(field).collect_view()}</div>
            {rest(kind, problems)}
            <p class="field__problem" role="status">{move || (tried.get() && is_stopped(problems)).then(|| state.say("It is not in the catalogue yet: mend what is marked, then save it."))}</p>
            <div class="notice__acts">
                <button type="button" class="btn" id="shelf-keep" on:click=move |_| keep()>"Save"</button>
                <button type="button" class="btn" id="shelf-leave" on:click=leave>"Cancel"</button>
            </div>
        </div>
    }
}

fn is_stopped(problems: Memo<Vec<Problem>>) -> bool {
    problems.with(|problems| problems.iter().any(|problem| problem.severity == Severity::Stop))
}

fn slug(column: Column) -> String {
    format!("shelf-{}", column.name().replace('_', "-"))
}

/// What is wrong with the entry as a whole, or doubtful about it.
fn rest(kind: PartKind, problems: Memo<Vec<Problem>>) -> impl IntoView {
    let state = State::here();
    let others = move || {
        problems.with(|problems| {
            let has_field = |problem: &Problem| kind.columns().any(|column| column.name() == problem.field);
            problems.iter().filter(|problem| !has_field(problem) || problem.field == "layout").cloned().collect::<Vec<_>>()
        })
    };
    let line = move |problem: Problem| {
        let class = if problem.severity == Severity::Stop { "field__problem" } else { "verdict verdict--caution" };
        view! { <p class=class>{state.say(&problem.sentence())}</p> }
    };
    view! { <div id="shelf-doubts">{move || others().into_iter().map(line).collect_view()}</div> }
}

fn field(desk: Desk, column: Column, problems: Memo<Vec<Problem>>, text: &str) -> AnyView {
    let state = State::here();
    let put = move |text: String| desk.draft.update(|draft| draft.set(column, text));
    let spread = move |_| desk.draft.update(Entry::spread_line);
    let typed = Memo::new(move |_| desk.draft.with(|draft| draft.text(column).to_owned()));
    let ColumnRow { word, holds, example, .. } = column.about();
    let id = slug(column);
    match holds {
        Holds::Choice(choices) => choice(id, word, choices, text, put),
        Holds::Stock => view! {
            <label class="shelf__stock"><input id=id type="checkbox" prop:checked=text == "yes"
                on:change=move |event| put(if event_target_checked(&event) { "yes" } else { "no" }.to_owned())/>"in stock"</label>
        }
        .into_any(),
        Holds::Words | Holds::Figure | Holds::Price | Holds::Currency | Holds::Quantity => {
            let problem = Memo::new(move |_| problems.with(|problems| problem_at(column, problems).map(Problem::sentence)));
            let is_blank = move || desk.draft.with(|draft| draft.text(column).trim().is_empty());
            let is_wrong = move || problem.with(Option::is_some) && !is_blank();
            let said = format!("{id}-problem");
            let described = said.clone();
            let class = if matches!(holds, Holds::Words) { "field field--words shelf__field" } else { "field shelf__field" };
            view! {
                <div class=class>
                    <label for=id.clone()>{move || state.say(word)}</label>
                    <input class="field__input" id=id.clone() type="text" autocomplete="off" autocapitalize="off" spellcheck="false" placeholder=example
                        prop:value=move || typed.get() on:change=spread aria-invalid=move || is_wrong().to_string()
                        aria-describedby=move || problem.with(Option::is_some).then(|| described.clone()) on:input=move |event| put(event_target_value(&event))/>
                    {move || problem.get().map(|sentence| if is_blank() {
                        view! { <span class="words shelf__missing" id=said.clone()>"still to be filled in"</span> }.into_any()
                    } else {
                        view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> }.into_any()
                    })}
                </div>
            }
            .into_any()
        }
    }
}

fn choice(id: String, word: &'static str, choices: &'static Choices, text: &str, put: impl Fn(String) + 'static) -> AnyView {
    let state = State::here();
    let option = |(value, words): &(&'static str, &'static str)| {
        let (value, words) = (*value, *words);
        view! { <option value=value selected=value == text>{state.say(words)}</option> }
    };
    view! {
        <div class="field shelf__field">
            <label for=id.clone()>{word}</label>
            <select class="select" id=id on:change=move |event| put(event_target_value(&event))>{choices.options.iter().map(option).collect_view()}</select>
        </div>
    }
    .into_any()
}
