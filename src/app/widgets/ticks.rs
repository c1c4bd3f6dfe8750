//! Things that are there or not: a list to choose one more from, what was chosen as buttons that take it back, and groups of buttons.

use leptos::prelude::*;

use crate::app::state::State;
use crate::job::Field;
use crate::questions::{TickGroup, Ticks};

/// Groups of things that are pressed.
#[component]
pub fn TickGroups(
    /// Where they are kept, and what there is to press.
    ticks: Ticks,
) -> impl IntoView {
    let state = State::here();
    let groups = Memo::new(move |_| state.with_source(ticks.groups));
    let ids = Memo::new(move |_| groups.with(|groups| groups.iter().map(|group| group.id.clone()).collect::<Vec<_>>()));
    view! { <For each=move || ids.get() key=Clone::clone children=move |id| one_group(ticks, id, groups)/> }
}

fn one_group(ticks: Ticks, id: String, groups: Memo<Vec<TickGroup>>) -> impl IntoView {
    let state = State::here();
    let group = Memo::new(move |_| groups.with(|groups| groups.iter().find(|group| group.id == id).cloned()));
    let of = move |take: fn(&TickGroup) -> &str| {
        Memo::new(move |_| group.with(|group| group.as_ref().map_or_else(String::new, |group| take(group).to_owned())))
    };
    let (title, choose) = (of(|group| &group.title), of(|group| group.choose));
    let is_listed = Memo::new(move |_| !choose.with(String::is_empty));
    let words = move || {
        let shown = |group: &TickGroup| {
            let shown = group.ticks.iter().filter(|tick| tick.is_on || group.choose.is_empty());
            shown.map(|tick| tick.word.clone()).collect::<Vec<_>>()
        };
        group.with(|group| group.as_ref().map(shown).unwrap_or_default())
    };
    view! {
        <div class="ticks" role="group" aria-label=move || state.say(&title.get())>
            <span class="ticks__title">{move || state.say(&title.get())}</span>
            <div class="ticks__all">
                <For each=words key=Clone::clone children=move |word| tick(ticks, group, word)/>
                {move || is_listed.get().then(|| list(ticks, group, title, choose))}
            </div>
        </div>
    }
}

/// A button of a group.
fn tick(ticks: Ticks, group: Memo<Option<TickGroup>>, word: String) -> impl IntoView {
    let state = State::here();
    let named = word.clone();
    let now = Memo::new(move |_| {
        let of = |group: &TickGroup| group.ticks.iter().find(|tick| tick.word == named).cloned();
        group.with(|group| group.as_ref().and_then(of))
    });
    let says = move || now.with(|now| now.as_ref().map(|now| state.say(&now.says)).unwrap_or_default());
    let is_on = move || now.with(|now| now.as_ref().is_some_and(|now| now.is_on)).to_string();
    view! { <button type="button" class="tick" aria-pressed=is_on on:click=move |_| press(state, ticks, group, &word)>{says}</button> }
}

/// The list of those that are not there yet, under what they belong to.
fn list(ticks: Ticks, group: Memo<Option<TickGroup>>, title: Memo<String>, choose: Memo<String>) -> impl IntoView {
    let state = State::here();
    let options = move || {
        let left: Vec<_> = group.with(|group| group.iter().flat_map(|group| &group.ticks).filter(|tick| !tick.is_on).cloned().collect());
        let under = left.chunk_by(|one, other| one.under == other.under);
        let options = |ticks: &[crate::questions::ticks::Tick]| {
            let option = |tick: &crate::questions::ticks::Tick| view! { <option value=tick.word.clone()>{state.say(&tick.says)}</option> };
            let label = ticks.first().map(|tick| state.say(&tick.under)).unwrap_or_default();
            view! { <optgroup label=label>{ticks.iter().map(option).collect_view()}</optgroup> }
        };
        under.map(options).collect_view()
    };
    view! {
        <select class="select" aria-label=move || state.say(&title.get())
            on:change=move |event| {
                let word = event_target_value(&event);
                // What is chosen becomes a button: the list asks for one more.
                event_target::<web_sys::HtmlSelectElement>(&event).set_value("");
                press(state, ticks, group, &word);
            }>
            <option value="">{move || state.say(&choose.get())}</option>
            {options}
        </select>
    }
}

fn press(state: State, ticks: Ticks, group: Memo<Option<TickGroup>>, word: &str) {
    let field = Field::Job(ticks.field);
    let text = state.job.with_untracked(|job| job.text(field).unwrap_or_default().to_owned());
    let pressed = group.with_untracked(|group| group.as_ref().map(|group| group.press(&text, word)));
    if let Some(pressed) = pressed.filter(|_| !word.is_empty()) {
        state.change(|job| job.type_text(field, pressed));
    }
}
