//! The app: the sheet in the browser. Knows every other room; no other room knows it.
//!
//! [`state`] holds the job and what is derived from it, [`keep`] writes it to the device's store, [`widgets`] are the few
//! things everything is built of, [`bar`], [`book`], [`list`], [`heads`] and [`sections`] are the page, [`print`] is
//! paper. Effects here only touch the outside:
//! the store, the title, the canvas.

pub mod bar;
pub mod book;
pub mod device;
pub mod heads;
pub mod heard;
pub mod keep;
pub mod keys;
pub mod list;
pub mod notices;
pub mod picker;
pub mod print;
pub mod sections;
pub mod state;
pub mod suggestions;
pub mod theme;
pub mod widgets;

use leptos::prelude::*;

use crate::job::Job;
use crate::questions::customer::USUAL_CAUTION;
use state::State;

/// Mounts the sheet on the page.
pub fn start() {
    std::panic::set_hook(Box::new(|panic| device::log_error(&panic.to_string())));
    let opened = keep::open();
    leptos::mount::mount_to_body(move || page(opened));
    device::say_ready();
}

fn page(opened: keep::Opened) -> impl IntoView {
    let state = State::new(opened);
    provide_context(state);
    keep::autosave::keep(state);
    keep::shop::keep(state);
    keys::listen(state);
    print::listen(state);
    device::follow_title(state);
    view! {
        <a class="skip" href="#sheet">"Skip to the sheet"</a>
        <bar::Bar/>
        <div class="page">
            <list::List/>
            <main id="sheet" class=move || format!("sheet {}", shown_columns(state)) tabindex="-1">
                <book::banners::Banners/>
                <notices::Notices/>
                <book::Panels/>
                <heard::Heard/>
                <heads::Heads/>
                <suggestions::Suggestions/>
                <picker::Picker/>
                <sections::Sections/>
                <p class="foot">
                    {move || state.say(USUAL_CAUTION)}
                </p>
            </main>
        </div>
    }
}

/// A class for each column that a phone shows, by which the style sheet hides the cells of the others.
fn shown_columns(state: State) -> String {
    let shown = (0..state.setup_ids().len()).filter(|column| state.column_shown(*column));
    shown.map(|column| format!("sheet--{}", Job::letter(column).to_ascii_lowercase())).collect::<Vec<_>>().join(" ")
}
