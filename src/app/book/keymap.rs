//! The keys that work on the page.

use leptos::prelude::*;

const KEYS: [(&str, &str); 11] = [
    ("?", "this list"),
    ("Escape", "close what is open"),
    ("Ctrl + Z", "undo"),
    ("Ctrl + Shift + Z, Ctrl + Y", "redo"),
    ("Ctrl + P", "print the sheet"),
    ("Tab, Shift + Tab", "the next or previous field"),
    ("Tab, Enter", "in a column of teeth: the next gear of the setup"),
    ("← → ↑ ↓", "on a figure: the next one beside, above or below"),
    ("Enter, Space", "press a button; on a figure: how it came about"),
    ("← →", "in a picture: move the pointer"),
    ("Home, End", "in a picture: its first or last point"),
];

#[component]
pub(super) fn Keymap() -> impl IntoView {
    let line = |(keys, does): (&'static str, &'static str)| view! { <div><dt><kbd>{keys}</kbd></dt><dd>{does}</dd></div> };
    view! {
        <dl class="keymap">{KEYS.into_iter().map(line).collect_view()}</dl>
        <p class="words">"On a Mac, Command stands for Ctrl. A single key does nothing while a field is typed into."</p>
    }
}
