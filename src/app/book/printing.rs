//! What is printed, and under whose name.

use leptos::prelude::*;

use crate::app::parts::PAPER;
use crate::app::print::Printed;
use crate::app::state::State;
use crate::app::widgets::Choice;

/// The choice of pages, the shop's letterhead, and the button.
#[component]
pub(super) fn Printing() -> impl IntoView {
    let state = State::here();
    let (printed, letterhead) = (state.shop.printed, state.shop.letterhead);
    let print = move |_| {
        PAPER.then(state, |_| {
            if let Some(window) = web_sys::window() {
                let _ = window.print();
            }
        });
    };
    view! {
        <div class="printing">
            <Choice label="What to print" id="print-what" options=Printed::ALL.map(|pages| (pages, pages.words())).to_vec() now=printed choose=move |pages| printed.set(pages)/>
            <label class="printing__head"><span>"Your name and address"</span>
                <textarea class="field__input" id="letterhead" rows="3" autocomplete="off" aria-describedby="letterhead-about"
                    prop:value=move || letterhead.get() on:input=move |event| letterhead.set(event_target_value(&event))></textarea>
            </label>
            <p class="words" id="letterhead-about">"Printed above everything, on every job. Kept on this device; no link and no file carries it."</p>
            <div class="panel__acts"><button type="button" class="btn" id="print-now" data-first="" on:click=print>"Print these pages"</button></div>
        </div>
    }
}
