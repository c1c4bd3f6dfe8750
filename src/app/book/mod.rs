//! The book of jobs, and the panels above the question, each opened by one press and left by Escape.
//!
//! [`list`] is the book itself, [`row`] a job in it, [`files`] opens and saves files, [`restore`] lays a backup beside the book,
//! [`details`] is what the shop notes about the open job, [`quote`] what it offers, [`printing`] what goes on paper, [`send`] its link, [`keymap`] the keys; [`banners`] say what must be decided.

pub mod banners;
pub mod details;
pub mod files;
pub mod keymap;
pub mod list;
pub mod printing;
pub mod quote;
pub mod restore;
pub mod row;
pub mod send;

use leptos::html::Section;
use leptos::prelude::*;

use super::device;
use super::parts::DESK;
use super::state::State;

worded! {
    /// The panels, one of which may be open.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Panel {
        /// What the shop notes about the open job.
        Details => "details";
        /// The open job as a link or a file.
        Send => "send";
        /// What is printed.
        Print => "printing";
        /// The keys.
        Keys => "keymap";
    }
    /// The panel's name on the page.
    pub fn name;
}

impl Panel {
    /// The button of the menu that leads to the panel: the act itself is gone with the menu.
    fn menu(self) -> &'static str {
        match self {
            Self::Details | Self::Send | Self::Print => "hand-over",
            Self::Keys => "read-in",
        }
    }

    fn title(self) -> &'static str {
        match self {
            Self::Details => "This job",
            Self::Send => "Send this job",
            Self::Print => "Print",
            Self::Keys => "Keys",
        }
    }
}

impl State {
    /// Opens a panel, or closes it where it is open.
    pub fn toggle(self, panel: Panel) {
        if self.view.panel.get_untracked() == Some(panel) {
            self.close_panel();
        } else {
            self.view.panel.set(Some(panel));
        }
    }

    /// Closes whichever panel is open; the focus goes back to what opened it.
    pub fn close_panel(self) {
        if let Some(panel) = self.view.panel.get_untracked() {
            self.view.panel.set(None);
            device::focus(panel.menu());
        }
    }
}

/// Whichever panel is open.
#[component]
pub fn Panels() -> impl IntoView {
    let state = State::here();
    move || {
        state.view.panel.get().map(|panel| {
            view! {
                <Frame panel>
                    {DESK.show(move |desk| (desk.panel)(panel))}
                </Frame>
            }
        })
    }
}

/// What stands in a panel.
pub(super) fn inside(panel: Panel) -> AnyView {
    match panel {
        Panel::Details => view! { <details::Details/> }.into_any(),
        Panel::Send => view! { <send::Send/> }.into_any(),
        Panel::Print => view! { <printing::Printing/> }.into_any(),
        Panel::Keys => view! { <keymap::Keymap/> }.into_any(),
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
