//! The book of jobs on the page: panels above the sheet, each opened by one press and left by Escape.
//!
//! [`list`] is the book itself, [`row`] a job in it, [`files`] opens and saves files, [`restore`] lays a backup beside the book,
//! [`details`] is what the shop notes about the open job, [`send`] its link, [`keymap`] the keys; [`banners`] say what must be decided.

pub mod banners;
pub mod details;
pub mod files;
pub mod keymap;
pub mod list;
pub mod restore;
pub mod row;
pub mod send;

use leptos::html::Section;
use leptos::prelude::*;

use super::device;
use super::state::State;

/// The panels, one of which may be open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Panel {
    /// The book of jobs.
    Book,
    /// What the shop notes about the open job.
    Details,
    /// The open job as a link or a file.
    Send,
    /// The keys.
    Keys,
}

impl Panel {
    /// The panel's name on the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Book => "book",
            Self::Details => "details",
            Self::Send => "send",
            Self::Keys => "keymap",
        }
    }

    fn title(self) -> &'static str {
        match self {
            Self::Book => "Saved jobs",
            Self::Details => "This job",
            Self::Send => "Send this job",
            Self::Keys => "Keys",
        }
    }
}

impl State {
    /// Opens a panel, or closes it where it is open.
    pub fn toggle(self, panel: Panel) {
        if self.panel.get_untracked() == Some(panel) {
            self.close_panel();
        } else {
            self.panel.set(Some(panel));
        }
    }

    /// Closes whichever panel is open; the focus goes back to what opened it.
    pub fn close_panel(self) {
        if let Some(panel) = self.panel.get_untracked() {
            self.panel.set(None);
            device::focus(&format!("open-{}", panel.name()));
        }
    }
}

/// The button that opens a panel.
#[component]
pub fn Opener(
    /// The panel.
    panel: Panel,
    /// Whether the button is a small one.
    #[prop(optional)]
    small: bool,
    /// What stands on it, where that is not the panel's title.
    #[prop(optional)]
    words: Option<&'static str>,
) -> impl IntoView {
    let state = State::here();
    let open = move || state.panel.get() == Some(panel);
    view! {
        <button type="button" class=if small { "btn btn--small" } else { "btn" } id=format!("open-{}", panel.name())
            aria-expanded=move || open().to_string() on:click=move |_| state.toggle(panel)>{words.unwrap_or(panel.title())}</button>
    }
}

/// Whichever panel is open.
#[component]
pub fn Panels() -> impl IntoView {
    let state = State::here();
    move || {
        state.panel.get().map(|panel| {
            view! {
                <Frame panel>
                    {match panel {
                        Panel::Book => view! { <list::Book/> }.into_any(),
                        Panel::Details => view! { <details::Details/> }.into_any(),
                        Panel::Send => view! { <send::Send/> }.into_any(),
                        Panel::Keys => view! { <keymap::Keymap/> }.into_any(),
                    }}
                </Frame>
            }
        })
    }
}

/// A panel with its heading and the way out.
#[component]
fn Frame(panel: Panel, children: Children) -> impl IntoView {
    let state = State::here();
    let frame = NodeRef::<Section>::new();
    Effect::new(move || {
        if let Some(frame) = frame.get() {
            device::focus_in(&frame, &["[data-first]", ".field__input"]);
        }
    });
    let heading = format!("{}-title", panel.name());
    let labelled = heading.clone();
    view! {
        <section class="panel" id=panel.name() aria-labelledby=labelled node_ref=frame>
            <div class="panel__top">
                <h2 id=heading tabindex="-1" data-first=(panel == Panel::Keys).then_some("")>{panel.title()}</h2>
                <button type="button" class="btn btn--small" on:click=move |_| state.close_panel()>"Close"</button>
            </div>
            {children()}
        </section>
    }
}
