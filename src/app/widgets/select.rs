//! One of several, from a list that drops down.

use leptos::prelude::*;

use crate::app::state::State;
use crate::job::{Choice, Layout};
use crate::questions::options;

/// A choice of the job.
#[component]
pub fn SelectField(
    /// Which choice.
    choice: Choice,
    /// What it is called.
    #[prop(into)]
    label: String,
    /// Whether the label is seen; it is always there for those who listen.
    #[prop(optional)]
    visible_label: bool,
) -> impl IntoView {
    let state = State::here();
    let options = match choice {
        Choice::Job(choice) => options::of_job(choice),
        Choice::Setup(_, choice) => options::of_setup(choice),
    };
    let ids: Vec<&'static str> = options.iter().map(|(id, _)| *id).collect();
    let words: Vec<&'static str> = options.iter().map(|(_, words)| *words).collect();
    let now_ids = ids.clone();
    let now = Memo::new(move |_| {
        let chosen = state.job.with(|job| job.chosen(choice).to_owned());
        now_ids.iter().position(|id| *id == chosen).unwrap_or(0)
    });
    let choose = move |at: usize| {
        let id = ids.get(at).copied().unwrap_or_default();
        state.change(move |job| job.choose(choice, id));
    };
    let spoken = label.clone();
    view! {
        <label class="field">
            {visible_label.then(|| view! { <span>{move || state.say(&label)}</span> })}
            {select(spoken, &words, move || now.get(), choose)}
        </label>
    }
}

/// The layout of a gearbox, from a list that drops down.
pub fn layout_select(label: String, now: impl Fn() -> Layout + Copy + Send + Sync + 'static, choose: impl Fn(Layout) + 'static) -> AnyView {
    let place = move || Layout::ALL.iter().position(|layout| *layout == now()).unwrap_or(0);
    select(label, &Layout::ALL.map(Layout::words), place, move |at| choose(Layout::ALL.get(at).copied().unwrap_or_default()))
}

/// A list that drops down; the options are told apart by their place.
pub fn select(
    label: String,
    options: &[&'static str],
    now: impl Fn() -> usize + Copy + Send + Sync + 'static,
    choose: impl Fn(usize) + 'static,
) -> AnyView {
    let state = State::here();
    let option = |(at, words): (usize, &&'static str)| {
        let words = *words;
        view! { <option value=at.to_string() selected=move || now() == at>{move || state.say(words)}</option> }
    };
    view! {
        <select class="select" aria-label=label prop:value=move || now().to_string()
            on:change=move |event| choose(event_target_value(&event).parse().unwrap_or(0))>
            {options.iter().enumerate().map(option).collect_view()}
        </select>
    }
    .into_any()
}
