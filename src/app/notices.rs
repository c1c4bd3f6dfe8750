//! What the page has to tell: a sentence, and what can be done about it.

use leptos::prelude::*;

use super::device;
use super::state::State;

/// One thing to tell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// The sentence.
    pub says: String,
    /// A text to save, with the file's name, where there is one.
    pub save: Option<(String, String)>,
}

impl Notice {
    /// A plain sentence.
    pub fn plain(says: impl Into<String>) -> Self {
        Self { says: says.into(), save: None }
    }

    /// The browser lets nothing be kept.
    pub fn store_blocked() -> Self {
        Self::plain(
            "This browser lets nothing be kept on the device (private mode, or storage is blocked). The sheet works; save the job as a file before you leave.",
        )
    }

    /// A kept text could not be read and was set aside.
    pub fn set_aside(what: &str, text: String, why: &str, is_aside: bool) -> Self {
        let where_to = if is_aside { "It was set aside untouched" } else { "Save it now: the store has no room to set it aside" };
        let says =
            format!("The {what} kept on this device could not be opened: {why}. {where_to}; what comes with the program is shown instead.");
        Self { says, save: Some((format!("layshaft-{what}-set-aside.json"), text)) }
    }

    /// The shop's own catalogue entries could not be kept.
    pub fn catalogue_not_kept(text: String) -> Self {
        let says =
            "Your own catalogue entries could not be kept on this device: its store is full or blocked. Save them as a file.".to_owned();
        Self { says, save: Some(("layshaft-catalogue.json".into(), text)) }
    }
}

/// The notices, each with its acts.
#[component]
pub fn Notices() -> impl IntoView {
    let state = State::here();
    view! {
        <div aria-live="polite">
            <For each=move || state.notices.get() key=|notice| notice.says.clone() let:notice>
                <div class="notice notice--caution">
                    <p>{notice.says.clone()}</p>
                    <div class="notice__acts">
                        {notice.save.clone().map(|(name, text)| {
                            view! { <button class="btn" on:click=move |_| device::save_file(&name, "application/json", &text)>"Save it as a file"</button> }
                        })}
                        <button class="btn" on:click=move |_| {
                            let says = notice.says.clone();
                            state.notices.update(|notices| notices.retain(|other| other.says != says));
                        }>"Understood"</button>
                    </div>
                </div>
            </For>
        </div>
    }
}
