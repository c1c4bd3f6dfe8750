//! What the page has to tell: a sentence, and what can be done about it.

use leptos::prelude::*;

use super::device;
use super::keep::local::StoreError;
use super::keep::records::Unreadable;
use super::parts;
use super::state::State;
use crate::catalogue::Catalogue;
use crate::catalogue::stock::OffShelf;
use crate::job::book::{Record, RecordId};
use crate::problem::{Explain, capital};

/// One thing to tell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// The sentence.
    pub says: String,
    /// What can be done about it.
    pub acts: Vec<Act>,
    /// Whether something went wrong.
    pub is_caution: bool,
    /// Whether it goes by itself.
    pub is_passing: bool,
}

/// How long a notice that goes by itself stands, in milliseconds.
pub const PASSING_MS: u32 = 6_000;

/// What can be done about a notice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Act {
    /// Save a text under a file name.
    SaveText(String, String),
    /// Save the open job as a file.
    SaveJob,
    /// Put a deleted job back into the book.
    PutBack(Box<Record>),
    /// Put parts back onto the shelf that a job took off it.
    PutOnShelf(RecordId, Vec<OffShelf>),
    /// Put the shelf back from the second state into the first; what was changed since stays.
    Reshelve(Box<(Catalogue, Catalogue)>),
    /// Begin an empty job.
    Begin,
    /// Take the last change back.
    Undo,
}

impl Act {
    fn words(&self) -> &'static str {
        match self {
            Self::SaveText(..) => "Save it as a file",
            Self::SaveJob => "Save the job as a file",
            Self::PutBack(_) | Self::PutOnShelf(..) | Self::Reshelve(_) | Self::Undo => "Undo",
            Self::Begin => "Start an empty job",
        }
    }

    /// Whether it puts the shelf back.
    pub fn is_of_shelf(&self) -> bool {
        matches!(self, Self::PutOnShelf(..) | Self::Reshelve(_))
    }

    /// Does it; answers whether the notice has done its work.
    pub fn act(&self, state: State) -> bool {
        match self {
            Self::SaveText(name, text) => device::save_file(name, "application/json", text),
            Self::Undo => state.undo_in_job(),
            Self::SaveJob | Self::PutBack(_) | Self::PutOnShelf(..) | Self::Reshelve(_) | Self::Begin => {
                state.forget_done(self);
                let act = self.clone();
                parts::KEEPER.then(state, move |keeper| (keeper.act)(state, act));
            }
        }
        !matches!(self, Self::SaveText(..) | Self::SaveJob)
    }

    /// What is said once it is undone.
    pub fn undone(&self) -> String {
        match self {
            Self::PutBack(record) => format!("“{}” is back among your jobs.", record.job.title),
            Self::PutOnShelf(..) => "The parts are back on the shelf.".into(),
            _ => "The shelf is as it was before.".into(),
        }
    }
}

impl Notice {
    /// A plain sentence.
    pub fn plain(says: impl Into<String>) -> Self {
        Self { says: says.into(), acts: Vec::new(), is_caution: false, is_passing: false }
    }

    /// A sentence about something that went wrong.
    pub fn caution(says: impl Into<String>) -> Self {
        Self { is_caution: true, ..Self::plain(says) }
    }

    /// A sentence that offers something to do.
    #[must_use]
    pub fn with(mut self, act: Act) -> Self {
        self.acts.push(act);
        self
    }

    /// The first thing anyone reads.
    pub fn welcome() -> Self {
        let says = "This is a demo job: its car, customer and gear sets are invented. Change anything in it, or start your own.";
        Self::plain(says).with(Act::Begin)
    }

    /// A sentence with a text to save.
    fn with_text(says: String, name: String, text: String) -> Self {
        Self::caution(says).with(Act::SaveText(name, text))
    }

    /// The browser lets nothing be kept.
    pub fn store_blocked() -> Self {
        let says = "This browser lets nothing be kept on the device (private mode, or storage is blocked). The sheet works; save the job as a file before you leave.";
        Self::caution(says).with(Act::SaveJob)
    }

    /// The browser does not give the jobs that its database holds.
    pub fn database_refused() -> Self {
        let says = "This browser does not open its database now: jobs kept in it are not shown, and none is lost. Close other windows of the browser and load the page again. What you do meanwhile is kept apart and joins them.";
        Self::caution(says)
    }

    /// A photograph was not written, and why.
    pub fn photograph_not_kept(why: StoreError) -> Self {
        Self::caution(match why {
            StoreError::Full => {
                "The photograph could not be kept: the store of this device is full. Nothing else is lost. Delete jobs or photographs you no longer need, then take it again."
            }
            StoreError::Blocked => {
                "The photograph could not be kept: this browser refuses its database (private mode, or storage is blocked). Nothing else is lost."
            }
        })
    }

    /// A change of the book was not written.
    pub fn not_kept() -> Self {
        Self::plain(
            "That could not be kept: the store of this device is full or blocked. Save a backup and delete jobs you no longer need.",
        )
    }

    /// A kept text could not be read and was set aside.
    pub fn set_aside(what: &str, text: String, why: &str, is_aside: bool) -> Self {
        let where_to = if is_aside { "It was set aside untouched" } else { "Save it now: the store has no room to set it aside" };
        let says =
            format!("The {what} kept on this device could not be opened: {why}. {where_to}; what comes with the program is shown instead.");
        Self::with_text(says, format!("layshaft-{what}-set-aside.json"), text)
    }

    /// A kept job could not be read; its last good copy stands in its place.
    pub fn restored(text: String, why: &str) -> Self {
        let says = format!(
            "The job kept on this device was damaged: {why}. Its last good copy was opened instead; the damaged text was set aside untouched."
        );
        Self::with_text(says, "layshaft-job-set-aside.json".into(), text)
    }

    /// A kept job cannot be opened by this version.
    pub fn unreadable(job: Unreadable) -> Self {
        let what_to_do = if job.is_newer {
            "It stays as it is: load the page again to get the newer version"
        } else {
            "It stays as it is: save it as a file before you delete it"
        };
        Self::with_text(
            format!("A job on this device cannot be opened: {}. {what_to_do}.", job.why),
            "layshaft-job-unread.json".into(),
            job.text,
        )
    }

    /// The shop's own catalogue entries could not be kept, and why; `text` is a backup of them.
    pub fn catalogue_not_kept(why: &str, text: String) -> Self {
        let says = format!(
            "Your own catalogue entries could not be kept on this device: {why}. Save them as a file, which Saved jobs takes in again."
        );
        Self::with_text(says, "layshaft-catalogue-backup.json".into(), text)
    }

    /// The shop's own catalogue entries are a newer version's and stay as they are.
    pub fn catalogue_newer(why: &dyn Explain, text: String) -> Self {
        let says = format!("{}; {}. What comes with the program is shown instead.", capital(&why.what()), why.what_to_do());
        Self::with_text(says, "layshaft-catalogue.json".into(), text)
    }
}

/// The notices, each with its acts.
#[component]
pub fn Notices() -> impl IntoView {
    let state = State::here();
    view! {
        <div class="notices" aria-live="polite">
            <For each=move || state.notices.get() key=|notice| notice.says.clone() let:notice>
                <div class="notice" class:notice--caution=notice.is_caution>
                    <p>{state.say(&notice.says)}</p>
                    <div class="notice__acts">
                        {notice.acts.iter().map(|act| act_button(state, act.clone(), notice.says.clone())).collect_view()}
                        <button type="button" class="btn" on:click=move |_| dismiss(state, &notice.says)>"Close"</button>
                    </div>
                </div>
            </For>
        </div>
    }
}

fn act_button(state: State, act: Act, says: String) -> impl IntoView {
    let words = act.words();
    let press = move |_| {
        if act.act(state) {
            dismiss(state, &says);
        }
    };
    view! { <button type="button" class="btn" on:click=press>{words}</button> }
}

fn dismiss(state: State, says: &str) {
    state.notices.update(|notices| notices.retain(|other| other.says != says));
}
