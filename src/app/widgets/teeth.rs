//! Tooth counts of a pair, or the ratio printed for it: counts shown one over the other, typed on one line; Tab and Enter go down the
//! column of the setup. A whole line of a box fills the gears of its setup.

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::job::{Field, SetupId};

/// The counts of one pair of a setup.
#[component]
pub fn Teeth(
    /// The setup.
    setup: SetupId,
    /// Which text.
    field: Field,
    /// What it is called.
    label: String,
) -> impl IntoView {
    let state = State::here();
    let slug = field.slug();
    let said = format!("{slug}-problem");
    let described = said.clone();
    let fills = Memo::new(move |_| state.job.with(|job| Some(job.line_at(field, job.text(field)?)?.gears.len())));
    let problem = Memo::new(move |_| state.wrong_with(field).filter(|_| fills.get().is_none()).map(|problem| problem.sentence()));
    let taken = Memo::new(move |_| state.job.with(|job| job.taken(field)));
    let note = move || fills.get().map(|many| format!("fills {many} gears")).or_else(|| taken.get());
    let paste = move |event: web_sys::ClipboardEvent| {
        let pasted = event.clipboard_data().and_then(|data| data.get_data("text/plain").ok()).unwrap_or_default();
        if state.job.with_untracked(|job| job.line_at(field, &pasted).is_some()) {
            event.prevent_default();
            state.type_text(field, pasted);
            state.take_line(field);
            state.leave_field();
        }
    };
    // The line fills rows, and what is pressed to leave the field must not move before it has heard of it.
    let leave = move |_| {
        if fills.with_untracked(Option::is_none) {
            return state.leave_field();
        }
        device::after_press(Box::new(move || {
            state.take_line(field);
            state.leave_field();
        }));
    };
    let text = Memo::new(move |_| state.job.with(|job| job.text(field).unwrap_or_default().to_owned()));
    let pair = Memo::new(move |_| text.with(|text| pair_of(text)));
    let is_wrong = move || problem.with(Option::is_some);
    view! {
        <span class="teeth" class:teeth--pair=move || pair.with(Option::is_some)>
            <input class="field__input teeth__input" id=slug type="text" inputmode="decimal" autocomplete="off" autocapitalize="off" spellcheck="false"
                data-column=setup.0.to_string() aria-label=label aria-invalid=move || is_wrong().to_string()
                aria-describedby=move || is_wrong().then(|| described.clone())
                prop:value=move || text.get()
                on:focus=super::select_text
                on:input=move |event| state.type_text(field, event_target_value(&event))
                on:paste=paste on:blur=leave/>
            <span class="teeth__shown" aria-hidden="true">
                {move || pair.get().map(|(upper, lower)| view! { <span>{upper}</span><span>{lower}</span> })}
            </span>
        </span>
        {move || note().map(|note| view! { <span class="field__taken">{note}</span> })}
        {move || problem.get().map(|sentence| view! { <span class="field__problem" id=said.clone()>{state.say(&sentence)}</span> })}
    }
}

/// Both counts, where the text is two of them and nothing else.
fn pair_of(text: &str) -> Option<(String, String)> {
    let (upper, lower) = text.split_once('/')?;
    let is_count = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_digit());
    let (upper, lower) = (upper.trim(), lower.trim());
    (is_count(upper) && is_count(lower)).then(|| (upper.to_owned(), lower.to_owned()))
}
