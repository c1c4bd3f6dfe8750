//! One of a few: buttons side by side, the chosen one pressed.

use leptos::prelude::*;

/// A choice of one among a few.
#[component]
pub fn Choice<T: Copy + PartialEq + Send + Sync + 'static>(
    /// What is chosen.
    label: &'static str,
    /// Its name on the page.
    id: &'static str,
    /// The options and their words.
    options: Vec<(T, &'static str)>,
    /// The one chosen now.
    #[prop(into)]
    now: Signal<T>,
    /// What choosing does.
    choose: impl Fn(T) + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let state = super::super::state::State::here();
    let button = move |(option, words): (T, &'static str)| {
        view! {
            <button type="button" aria-pressed=move || (now.get() == option).to_string() on:click=move |_| choose(option)>
                {move || state.say(words)}
            </button>
        }
    };
    view! { <div class="choice" role="group" id=id aria-label=label>{options.into_iter().map(button).collect_view()}</div> }
}
