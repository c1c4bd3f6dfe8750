//! Bench: the questions about parts in hand, one at a time.

use leptos::prelude::*;

use super::Frame;
use super::address::{At, Place};
use super::line;
use super::question::QuestionView;
use super::state::State;
use crate::questions::Heading;
use crate::questions::identify::LadderSearch;
use crate::questions::identify::answer::wish;
use crate::questions::identify::read::Evidence;

/// How long nothing must have changed before a search begins anew, in milliseconds.
const QUIET_MS: u32 = 20;

pub(super) fn place() -> AnyView {
    let state = State::here();
    let open = Memo::new(move |_| Some(state.view.at.get()));
    search_teeth(state);
    view! {
        <nav class="line line--plain" aria-label="Bench questions"><ul>{Place::Bench.questions().map(link).collect_view()}</ul></nav>
        <Frame class="main--bench">
            {move || open.get().and_then(At::open).map(|heading| view! { <QuestionView heading/> })}
        </Frame>
    }
    .into_any()
}

/// The search from printed ratios back to teeth begins anew whenever what it is asked changes.
fn search_teeth(state: State) {
    let asked = Memo::new(move |_| state.job.with(|job| wish(&Evidence::of(&job.bench))));
    Effect::new(move || {
        let asked = asked.get();
        state.teeth.begin(QUIET_MS, move || LadderSearch::new(asked?).ok());
    });
}

fn link(question: &'static Heading) -> impl IntoView {
    let state = State::here();
    let at = At { place: Place::Bench, question: question.id };
    let current = move || (state.view.at.get() == at).then_some("page");
    let stop = NodeRef::<leptos::html::A>::new();
    line::keep_in_sight(state, at, stop);
    view! {
        <li>
            <a class="station" href=at.fragment() aria-current=current node_ref=stop>
                <span class="station__name">{move || state.say(question.title)}</span>
                <span class="station__label">{move || state.say(question.ask)}</span>
            </a>
        </li>
    }
}
