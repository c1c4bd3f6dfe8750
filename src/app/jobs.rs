//! Jobs: the book of jobs, and what the shop notes about the open one.

use leptos::prelude::*;

use super::book::details::Details;
use super::book::list::Book;
use super::state::State;

pub(super) fn place() -> AnyView {
    let state = State::here();
    view! {
        <section class="question" aria-labelledby="job-title">
            <div class="question__head">
                <h2 id="job-title">"This job"</h2>
                <span class="question__ask">{move || state.job.with(|job| job.title.clone())}</span>
            </div>
            <Details/>
        </section>
        <section class="question" id="book" aria-labelledby="book-title">
            <div class="question__head"><h2 id="book-title">"Jobs on this device"</h2></div>
            <Book/>
        </section>
    }
    .into_any()
}
