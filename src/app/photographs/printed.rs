//! The photographs of the open job on paper, small, each below the words of its step.

use leptos::prelude::*;

use super::album;
use crate::app::state::State;
use crate::checklist::{self, Line};
use crate::job::photographs::Subject;

/// All of them; nothing where there are none.
pub(in crate::app) fn view(state: State) -> AnyView {
    let open = state.desk.head.with_untracked(|head| head.id.clone());
    let lists =
        state.job.with_untracked(|job| [checklist::lines(&job.bench.build.steps), checklist::lines(&job.bench.build.parts)].concat());
    let now = |photographed: String| {
        let called = lists.iter().find_map(|line| match line {
            Line::Step(step) if step.photographed() == photographed => Some(step.what.trim().to_owned()),
            _ => None,
        });
        called.unwrap_or(photographed)
    };
    let one = |shown: &album::Shown| match Subject::of(&shown.name) {
        Some(Subject::Step { job, what }) if job == open => Some(
            view! { <figure class="paper__photo"><img src=shown.address.clone() alt="" decoding="sync"/><figcaption>{state.say(&now(what))}</figcaption></figure> },
        ),
        _ => None,
    };
    let names = album::names().get_untracked();
    let all: Vec<_> = album::shown().with_untracked(|shown| shown.iter().filter(|one| names.contains(&one.name)).filter_map(one).collect());
    if all.is_empty() { ().into_any() } else { view! { <div class="paper__photos">{all}</div> }.into_any() }
}
