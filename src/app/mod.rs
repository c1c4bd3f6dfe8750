//! The app: the sheet in the browser. Knows every other room; no other room knows it.
use leptos::prelude::*;

/// Mounts the sheet on the page.
pub fn start() {
    leptos::mount::mount_to_body(|| view! { <main id="sheet"><h1>"Layshaft"</h1></main> });
}
