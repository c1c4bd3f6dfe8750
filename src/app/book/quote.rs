//! What the customer is offered: a note, what is charged, how long it holds; the shop's own priced parts are put in by one press.

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::TextField;
use crate::job::{Field, JobField};
use crate::questions::quote;

/// The offer of the open job.
#[component]
pub(super) fn Offer() -> impl IntoView {
    let state = State::here();
    let offer = Memo::new(move |_| state.job.with(|job| quote::offer(&job.quote)));
    let priced = Memo::new(move |_| {
        let offered = state.shop.offered();
        state.job.with(|job| job.quote_lines(offered.all_own()))
    });
    let missing = Memo::new(move |_| {
        let typed = state.job.with(|job| job.quote.lines.clone());
        priced.with(|lines| lines.iter().filter(|line| !typed.lines().any(|there| there.trim() == *line)).cloned().collect::<Vec<_>>())
    });
    let put_in = move |_| {
        let lines = missing.get_untracked().join("\n");
        state.change(|job| {
            let typed = job.quote.lines.trim_end();
            job.quote.lines = if typed.is_empty() { lines } else { format!("{typed}\n{lines}") };
        });
    };
    view! {
        {lines(state, JobField::QuoteNote, "Note to the customer", "3")}
        {lines(state, JobField::QuoteLines, "Quote, a line each", "4")}
        <div class="details__quote">
            <button type="button" class="btn btn--small" id="quote-parts" disabled=move || missing.with(Vec::is_empty) on:click=put_in>"Add the parts of this job"</button>
            <TextField field=Field::Job(JobField::QuoteValid) label="Valid until" visible_label=true wide=true/>
            <span class="words" role="status" id="quote-total">{move || offer.with(|offer| offer.remarks().join(" "))}</span>
        </div>
    }
}

/// A field of several lines, with a label that can be seen.
fn lines(state: State, field: JobField, label: &'static str, rows: &'static str) -> impl IntoView {
    let field = Field::Job(field);
    let example = state.job.with_untracked(|job| field.placeholder(job));
    view! {
        <label class="details__notes"><span>{label}</span>
            <textarea class="field__input" id=field.slug() rows=rows placeholder=example prop:value=move || state.job.with(|job| job.text(field).unwrap_or_default().to_owned())
                on:input=move |event| state.type_text(field, event_target_value(&event)) on:blur=move |_| state.leave_field()></textarea>
        </label>
    }
}
