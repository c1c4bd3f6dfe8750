//! A text that names a part of the catalogue, chosen from a list that drops down.

use leptos::prelude::*;

use crate::app::state::State;
use crate::catalogue::{Entry, PartKind};
use crate::job::Field;

/// The choice of a part by its name.
#[component]
pub fn PartField(
    /// The text that names it.
    field: Field,
    /// Which kind of part.
    kind: PartKind,
) -> impl IntoView {
    let state = State::here();
    let chosen = Memo::new(move |_| state.job.with(|job| job.text(field).unwrap_or_default().to_owned()));
    let names = Memo::new(move |_| {
        let mut names: Vec<String> = state.shop.offered().entries(kind).map(title).collect();
        // What is chosen stays chosen, even where it is offered no longer.
        let kept = chosen.get();
        if !kept.is_empty() && !names.contains(&kept) {
            names.insert(0, kept);
        }
        names
    });
    // A blank one is what the table says it is; where it says nothing, it is still to be chosen.
    let taken = Memo::new(move |_| state.job.with(|job| field.placeholder(job)));
    let nothing =
        move || taken.with(|taken| if taken.is_empty() { state.say(&format!("choose a {}", kind.word(1))) } else { taken.clone() });
    let label = state.job.with_untracked(|job| field.label(job).into_owned());
    let option = move |name: String| {
        let (value, own) = (name.clone(), name.clone());
        view! { <option value=value selected=move || chosen.with(|chosen| *chosen == own)>{name}</option> }
    };
    view! {
        <label class="field">
            <span>{move || state.say(&label)}</span>
            <select class="select" id=field.slug() on:change=move |event| {
                state.type_text(field, event_target_value(&event));
                state.leave_field();
            }>
                <option value="" selected=move || chosen.with(String::is_empty)>{nothing}</option>
                {move || names.get().into_iter().map(option).collect_view()}
            </select>
        </label>
    }
}

fn title(entry: &Entry) -> String {
    entry.title().to_owned()
}
