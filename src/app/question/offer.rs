//! A part that was found, and the setups that can take it.

use leptos::prelude::*;

use crate::app::notices::{Act, Notice};
use crate::app::state::State;
use crate::catalogue::{Entry, PartKind};
use crate::job::{Job, SetupId};
use crate::problem::Problem;

/// `use in A B C`; the sizes of a box are those of its own setup, and what is on no shelf yet is offered to it.
pub(in crate::app) fn offer(own: SetupId, part: &Entry) -> AnyView {
    let state = State::here();
    let part = part.clone();
    if part.kind == PartKind::CaseFamily {
        return if part.id.is_empty() { keep(state, part) } else { sizes(state, own, part) };
    }
    let part = StoredValue::new(part);
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

/// The sizes of a case family, for the setup whose box it is.
fn sizes(state: State, own: SetupId, part: Entry) -> AnyView {
    let use_them = move |_| take(state, own, &part);
    view! { <div class="offer"><button type="button" class="btn btn--small" on:click=use_them>"Use these sizes"</button></div> }.into_any()
}

/// Keeps the sizes of a case family on the shelf.
fn keep(state: State, part: Entry) -> AnyView {
    let keep = move |_| {
        let put = state.shop.catalogue.with_untracked(|catalogue| catalogue.put(None, &part));
        state.tell(match put {
            Ok((after, _)) => {
                state.shop.catalogue.set(after);
                Notice::plain(format!("“{}” is on the shelf now, with these sizes.", part.title()))
            }
            Err(problems) => Notice::caution(problems.first().map(Problem::sentence).unwrap_or_default()),
        });
    };
    view! { <div class="offer"><button type="button" class="btn btn--small" on:click=keep>"Keep these sizes on the shelf"</button></div> }
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
