//! Light, dark, or as the system is.

use leptos::prelude::*;

use crate::app::state::State;

/// A button that goes from the system's theme to the other one and back.
#[component]
pub fn ThemeSwitch() -> impl IntoView {
    let state = State::here();
    view! {
        <button class="btn" id="theme" type="button" aria-label="Switch between light and dark" on:click=move |_| state.theme.switch()>"◐"</button>
    }
}
