//! An entry of the shop's own, written or changed: a field for every column, kept as typed until it makes an entry.

use leptos::prelude::*;

use super::Desk;
use crate::app::state::State;
use crate::catalogue::Kind;

/// The form for a new entry, or for one to be changed.
pub(super) fn form(desk: Desk, id: Option<String>, cells: Vec<String>) -> impl IntoView {
    let state = State::here();
    let kind = desk.kind.get_untracked();
    let typed = StoredValue::new(cells.clone());
    let wrong = RwSignal::new(Vec::<String>::new());
    let title = if id.is_some() { "Change an entry of your own" } else { "Enter one of your own" };
    let keep = move |_| {
        let after = state.catalogue.with_untracked(|catalogue| typed.with_value(|cells| catalogue.put(kind, id.as_deref(), cells)));
        match after {
            Ok(after) => {
                desk.editing.set(None);
                state.catalogue.set(after);
            }
            Err(why) => wrong.set(why.sentences()),
        }
    };
    let fields = kind.columns().iter().enumerate().zip(cells).filter(|((_, column), _)| **column != "id");
    let field = move |((at, column), text): ((usize, &'static &'static str), String)| {
        let type_in = move |event: web_sys::Event| {
            typed.update_value(|cells| {
                if let Some(cell) = cells.get_mut(at) {
                    *cell = event_target_value(&event);
                }
            });
        };
        view! {
            <label class="field"><span>{label(kind, column)}</span>
                <input class="field__input shelf__input" name=*column type="text" autocomplete="off" prop:value=text placeholder=example(column) on:input=type_in/>
            </label>
        }
    };
    view! {
        <div class="shelf__form" role="group" aria-label=title>
            <h3>{title}</h3>
            <div class="car__fields">{fields.map(field).collect_view()}</div>
            <div role="alert">{move || wrong.get().into_iter().map(|said| view! { <p class="field__problem">{state.say(&said)}</p> }).collect_view()}</div>
            <div class="notice__acts">
                <button type="button" class="btn" id="shelf-keep" on:click=keep>{move || state.say("Keep it in the catalogue")}</button>
                <button type="button" class="btn" on:click=move |_| desk.editing.set(None)>"Leave it"</button>
            </div>
        </div>
    }
}

/// What a column is called.
fn label(kind: Kind, column: &str) -> String {
    match (kind, column) {
        (_, "constant") => "input pair".into(),
        (_, "in_stock") => "in stock".into(),
        (Kind::Axles, "drive") => "ring and pinion".into(),
        (_, "designation") => "size".into(),
        (_, column) => column.replace('_', " "),
    }
}

/// What a column may hold.
fn example(column: &str) -> &'static str {
    match column {
        "layout" => "input-reduced",
        "constant" => "25/30",
        "gear_1" => "37/18",
        "gear_4" => "direct",
        "reverse" => "33/16",
        "idler" => "19",
        "in_stock" => "yes",
        "drive" => "43/11",
        "designation" => "185/70R14",
        "role" => "driven",
        "teeth" => "20",
        _ => "",
    }
}
