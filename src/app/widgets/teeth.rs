//! Tooth counts of a pair: shown one over the other, typed on one line; Tab and Enter go down the column of the setup.

use leptos::prelude::*;

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
    let problem = Memo::new(move |_| state.wrong_with(field).map(|problem| problem.sentence()));
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
                on:blur=move |_| state.leave_field()/>
            <span class="teeth__shown" aria-hidden="true">
                {move || pair.get().map(|(upper, lower)| view! { <span>{upper}</span><span>{lower}</span> })}
            </span>
        </span>
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
