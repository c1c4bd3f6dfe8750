//! What stands folded until it is asked for; whether it is open is remembered while the page lives.

use leptos::prelude::*;

use crate::app::state::State;

/// A fold of a question; what is inside is made when it is opened.
#[component]
pub fn Fold(
    /// The question.
    question: &'static str,
    /// The fold's name in it.
    fold: &'static str,
    /// What it says.
    title: &'static str,
    /// What is said of it, small.
    #[prop(into)]
    about: Signal<String>,
    /// What is inside.
    inside: impl Fn() -> AnyView + Send + Sync + 'static,
) -> impl IntoView {
    let state = State::here();
    let is_open = Memo::new(move |_| state.view.is_open(question, fold));
    let toggled = move |event: web_sys::Event| {
        state.view.set_open(question, fold, event_target::<web_sys::Element>(&event).has_attribute("open"));
    };
    view! {
        <details class="fold" open=is_open.get_untracked() on:toggle=toggled>
            <summary><span class="fold__title">{move || state.say(title)}</span><span class="fold__about">{move || state.say(&about.get())}</span></summary>
            {move || is_open.get().then(|| untrack(&inside))}
        </details>
    }
}
