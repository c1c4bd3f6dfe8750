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

    /// A kept job could not be read and was set aside.
    pub fn set_aside(text: String, why: &str) -> Self {
        let says = format!(
            "The job kept on this device could not be opened: {why}. It was set aside untouched, and the demo job is shown instead."
        );
        Self { says, save: Some(("layshaft-set-aside.json".into(), text)) }
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
