//! The sheet on paper: the customer's page, the comparison, the bench, or all of it, made when the browser is about to print and gone after.
//!
//! What stands on the screen is not printed: paper has no fields, no buttons and no dark theme, and its pictures are drawn as lines,
//! not as points of a canvas. [`customer`] is the customer's page, [`comparison`] the questions with their rows, [`pictures`] what hangs on the sheet.

mod comparison;
mod customer;
pub mod pictures;
mod tag;

use std::cell::RefCell;

use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use comparison::Much;

use super::device;
use super::parts::PAPER;
use super::state::State;
use crate::questions::customer::USUAL_CAUTION;

worded! {
    /// Which pages are printed.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
    pub enum Printed {
        /// The customer's page.
        #[default]
        Customer => "Customer’s page", "";
        /// The setups side by side, in short.
        Comparison => "Comparison", "comparison";
        /// What was found and measured at the bench.
        Bench => "Bench", "bench";
        /// The build record alone, as the sheet that goes with the box.
        Record => "Build record", "record";
        /// The tag that is tied to the finished box.
        Tag => "Tag for the box", "tag";
        /// All of it with every figure, but the tag; the build record stands in the bench’s pages.
        Everything => "Everything", "everything";
    }
    /// What it is called.
    pub fn words;
    /// As it is kept on the device; blank for the usual one.
    pub fn id;
}

impl Printed {
    /// Every choice, the usual one first.
    pub const ALL: [Self; 6] = [Self::Customer, Self::Comparison, Self::Bench, Self::Record, Self::Tag, Self::Everything];

    /// What is kept under that text; the usual one under any other.
    pub fn read(text: &str) -> Self {
        Self::ALL.into_iter().find(|printed| printed.id() == text).unwrap_or_default()
    }

    /// Whether these pages are printed.
    fn holds(self, pages: Self) -> bool {
        self == pages || self == Self::Everything
    }
}

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
    let (printed, letterhead) = (state.shop.printed.get_untracked(), state.shop.letterhead.get_untracked());
    name_pages("--job-title", &state.job.with_untracked(|job| job.title.clone()));
    name_pages("--shop-name", letterhead.trim().lines().next().unwrap_or("Layshaft"));
    let pages = leptos::mount::mount_to(body, move || {
        provide_context(state);
        view! {
            <div class="paper">
                {head(&letterhead)}
                {printed.holds(Printed::Customer).then(|| customer::page(state))}
                {match printed {
                    Printed::Comparison => Some(comparison::compared(state, Much::Short)),
                    Printed::Everything => Some(comparison::compared(state, Much::Full)),
                    _ => None,
                }}
                {printed.holds(Printed::Bench).then(|| comparison::bench(state))}
                {(printed == Printed::Record).then(|| comparison::record(state))}
                {(printed == Printed::Tag).then(|| tag::page(state))}
                {(printed != Printed::Customer).then(|| view! { <p class="paper__foot">{state.words.get_untracked().say(USUAL_CAUTION)}</p> })}
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

/// The shop's name and address, above all else.
fn head(letterhead: &str) -> Option<AnyView> {
    let mut lines = letterhead.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned);
    let name = lines.next()?;
    let address = lines.collect::<Vec<_>>().join(" · ");
    Some(view! { <div class="paper__shop"><b>{name}</b><span>{address}</span></div> }.into_any())
}

/// Gives the style sheet a text for the margin of every page.
fn name_pages(name: &str, text: &str) {
    let quoted = format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\"").replace(char::is_control, " "));
    if let Some(root) = device::root().and_then(|root| root.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = root.style().set_property(name, &quoted);
    }
}
