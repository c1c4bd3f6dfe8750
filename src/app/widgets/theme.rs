//! Light, dark, or as the system is.

use leptos::prelude::*;

use crate::app::device;

/// A button that goes from the system's theme to the other one and back.
#[component]
pub fn ThemeSwitch() -> impl IntoView {
    let other = RwSignal::new(false);
    let press = move |_| {
        other.update(|other| *other = !*other);
        let dark = system_is_dark() != other.get_untracked();
        if let Some(root) = device::root() {
            let _ = root.set_attribute("data-theme", if dark { "dark" } else { "light" });
        }
        device::announce("layshaft:theme");
    };
    view! { <button class="btn" id="theme" type="button" aria-label="Switch between light and dark" on:click=press>"◐"</button> }
}

fn system_is_dark() -> bool {
    web_sys::window()
        .and_then(|window| window.match_media("(prefers-color-scheme: dark)").ok().flatten())
        .is_some_and(|query| query.matches())
}
