//! The sheet on paper: a page for the customer, then the full comparison, made when the browser is about to print and gone after.
//!
//! What stands on the screen is not printed: paper has no fields, no buttons and no dark theme, and its pictures are drawn as lines,
//! not as points of a canvas. [`customer`] is the first page, [`comparison`] the pages behind it, [`pictures`] what hangs on the sheet.

mod comparison;
mod customer;
pub mod pictures;

use std::cell::RefCell;

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::device;
use super::parts::PAPER;
use super::state::State;
use crate::questions::customer::USUAL_CAUTION;

thread_local! {
    /// Takes the pages away again.
    static PAGES: RefCell<Option<Box<dyn FnOnce()>>> = const { RefCell::new(None) };
}

/// Makes the pages whenever the browser prints, however it was asked to.
pub fn listen(state: State) {
    // Printing waits for nothing: what the browser was asked to print before this part came is a page without the sheet.
    device::on_window("beforeprint", move |_: web_sys::Event| PAPER.then(state, move |lay| lay(state)));
    device::on_window("afterprint", |_: web_sys::Event| clear());
}

/// Puts the pages into the document, at once: the browser waits for nothing.
pub(super) fn lay(state: State) {
    clear();
    let Some(body) = web_sys::window().and_then(|window| window.document()).and_then(|document| document.body()) else { return };
    name_pages(&state.job.with_untracked(|job| job.title.clone()));
    let pages = leptos::mount::mount_to(body, move || {
        provide_context(state);
        view! {
            <div class="paper">
                {customer::page(state)}
                {comparison::pages(state)}
                <p class="paper__foot">{state.words.get_untracked().say(USUAL_CAUTION)}</p>
            </div>
        }
    });
    PAGES.with_borrow_mut(|kept| *kept = Some(Box::new(move || drop(pages))));
}

fn clear() {
    if let Some(take_away) = PAGES.with_borrow_mut(Option::take) {
        take_away();
    }
}

/// Gives the style sheet the job's title for the margin of every page.
fn name_pages(title: &str) {
    let quoted = format!("\"{}\"", title.replace('\\', "\\\\").replace('"', "\\\"").replace(char::is_control, " "));
    if let Some(root) = device::root().and_then(|root| root.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = root.style().set_property("--job-title", &quoted);
    }
}
