//! A text that names a part of the catalogue, chosen from a list that drops down.

use leptos::prelude::*;

use crate::app::state::State;
use crate::catalogue::{Entry, PartKind};
use crate::job::{Field, JobField};

/// The choice of a part by its name.
#[component]
pub fn PartField(
    /// The text that names it.
    field: JobField,
    /// Which kind of part.
    kind: PartKind,
    /// What it is called.
    label: &'static str,
) -> impl IntoView {
    let state = State::here();
    let field = Field::Job(field);
    let chosen = Memo::new(move |_| state.job.with(|job| job.text(field).unwrap_or_default().to_owned()));
    let names = Memo::new(move |_| state.shop.catalogue.with(|catalogue| catalogue.entries(kind).map(title).collect::<Vec<_>>()));
    let option = move |name: String| {
        let (value, own) = (name.clone(), name.clone());
        view! { <option value=value selected=move || chosen.with(|chosen| *chosen == own)>{name}</option> }
    };
    view! {
        <label class="field">
            <span>{move || state.say(label)}</span>
            <select class="select" id=field.slug() on:change=move |event| {
                state.type_text(field, event_target_value(&event));
                state.leave_field();
            }>
                <option value="" selected=move || chosen.with(String::is_empty)>{move || state.say(&format!("choose a {}", kind.word(1)))}</option>
                {move || names.get().into_iter().map(option).collect_view()}
            </select>
        </label>
    }
}

fn title(entry: &Entry) -> String {
    entry.title().to_owned()
}
