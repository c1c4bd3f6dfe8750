//! The shop's own rows about faults: typed or pasted as lines, read at once, and what cannot be used said by its line.

use leptos::prelude::*;

use crate::app::device;
use crate::app::state::State;
use crate::problem::{Explain, capital};
use crate::questions::faults::own;

/// No more lines that cannot be used are written out.
const LISTED: usize = 12;

/// What was made of the text.
#[derive(Clone, Default, PartialEq)]
struct Read {
    /// How many rows are used; none where nothing is typed.
    says: String,
    /// What cannot be used, a sentence each.
    refused: Vec<String>,
}

/// The rows, and what was made of them.
pub(super) fn view() -> impl IntoView {
    let state = State::here();
    let text = state.shop.faults;
    let read = Memo::new(move |_| state.with_source(|source| source.shelves.own_rows.map(read).unwrap_or_default()));
    let is_blank = Memo::new(move |_| text.with(|text| text.trim().is_empty()));
    let is_open = text.with_untracked(|text| !text.trim().is_empty());
    let begin = move |_| text.set(own::EXAMPLE.to_owned());
    let save = move |_| device::save_file("layshaft-faults.csv", "text/csv", &own::built_in());
    view! {
        <details class="fold" open=is_open>
            <summary><span class="fold__title">"Write or paste them"</span><span class="fold__about">{move || read.with(|read| read.says.clone())}</span></summary>
            <div class="area">
                <label for="own-rows">"Symptoms, tests and causes as CSV"</label>
                <textarea class="area__input" id="own-rows" rows="8" spellcheck="false" autocomplete="off" autocapitalize="off" wrap="off"
                    aria-describedby="own-rows-about own-rows-refused" aria-invalid=move || read.with(|read| !read.refused.is_empty()).to_string()
                    prop:value=move || text.get() on:input=move |event| text.set(event_target_value(&event))></textarea>
            </div>
            <div class="notice__acts">
                <button type="button" class="btn btn--small" id="own-rows-begin" hidden=move || !is_blank.get() on:click=begin>"Begin with an example"</button>
                <button type="button" class="btn btn--small" id="own-rows-built-in" on:click=save>"Save the built-in rows as CSV"</button>
            </div>
            <p class="words" id="own-rows-about">"They rank beside the built-in rows in every job, marked as your own. Kept with the shop and in the backup, not with the job. What a cell may name stands in the built-in rows."</p>
            <p class="unseen" role="status">{move || read.with(|read| read.says.clone())}</p>
            <ul id="own-rows-refused">{move || read.get().refused.into_iter().map(|says| view! { <li class="field__problem">{says}</li> }).collect_view()}</ul>
        </details>
    }
}

fn read(rows: &own::OwnRows) -> Read {
    let says = format!("{} of your own in use", if rows.taken == 1 { "1 row".into() } else { format!("{} rows", rows.taken) });
    let mut refused: Vec<String> =
        rows.problems.iter().take(LISTED).map(|why| format!("{}: {}.", capital(&why.what()), why.what_to_do())).collect();
    let left = rows.problems.len().saturating_sub(LISTED);
    if left > 0 {
        refused.push(format!("And {left} more."));
    }
    Read { says, refused }
}
