//! One of several, from a list that drops down.

use leptos::prelude::*;

use crate::app::state::State;
use crate::job::{Choice, Layout};

/// A choice of the job.
#[component]
pub fn SelectField(
    /// Which choice.
    choice: Choice,
    /// What it is called, where that is not the table's word.
    #[prop(optional, into)]
    label: String,
    /// Whether the label is seen; it is always there for those who listen.
    #[prop(optional)]
    visible_label: bool,
) -> impl IntoView {
    let state = State::here();
    let label = if label.is_empty() { choice.label().to_owned() } else { label };
    let slug = choice.slug();
    let problem = Memo::new(move |_| state.problem_of(choice).map(|problem| problem.sentence()));
    let said = format!("{slug}-problem");
    let described = said.clone();
    let now = Memo::new(move |_| state.job.with(|job| job.chosen(choice).to_owned()));
    let known = Memo::new(move |_| state.job.with(|job| choice.options_in(job)));
    // A word of a file that is no option stays in the list until another is chosen.
    let options = move || {
        let known = known.get();
        let unknown = now.with(|now| (!known.iter().any(|(word, _)| word == now)).then(|| (now.clone(), now.clone())));
        unknown.into_iter().chain(known.into_iter().map(|(word, says)| (word.to_owned(), state.say(says)))).collect::<Vec<_>>()
    };
    let option = move |(word, says): (String, String)| {
        let this = word.clone();
        view! { <option value=word selected=move || now.with(|now| *now == this)>{says}</option> }
    };
    let spoken = label.clone();
    view! {
        <label class="field">
            {visible_label.then(|| view! { <span>{move || state.say(&label)}</span> })}
            <select class="select" aria-label=move || state.say(&spoken) prop:value=move || now.get()
                aria-invalid=move || problem.with(Option::is_some).to_string()
                aria-describedby=move || problem.with(Option::is_some).then(|| described.clone())
                on:change=move |event| {
                    let word = event_target_value(&event);
                    state.change(move |job| job.choose(choice, &word));
                }>
                {move || options().into_iter().map(option).collect_view()}
            </select>
            {move || problem.get().map(|sentence| view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> })}
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
