//! A part that was found, and the setups that can take it.

use leptos::prelude::*;

use crate::app::notices::{Act, Notice};
use crate::app::state::State;
use crate::catalogue::Entry;
use crate::job::{Job, SetupId};

/// `use in A B C`.
pub(in crate::app) fn offer(part: &Entry) -> AnyView {
    let state = State::here();
    let part = StoredValue::new(part.clone());
    let button = move |(column, id): (usize, SetupId)| {
        let letter = Job::letter(column);
        let about = format!("Use it in setup {letter}");
        view! { <button type="button" class="btn btn--small" aria-label=about on:click=move |_| take(state, id, &part.get_value())>{letter.to_string()}</button> }
    };
    view! {
        <div class="offer"><span class="words">"use in"</span>{move || state.setup_ids().into_iter().enumerate().map(button).collect_view()}</div>
    }
    .into_any()
}

fn take(state: State, id: SetupId, part: &Entry) {
    state.change(|job| {
        if let Some(setup) = job.setup_mut(id) {
            setup.take_part(part);
        }
    });
    let letter = Job::letter(state.column_of(id));
    state.tell(Notice::plain(format!("Setup {letter} has {} now.", part.title())).with(Act::Undo));
}
