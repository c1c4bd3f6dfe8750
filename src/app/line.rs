//! The line: the driveline from engine to wheel, each station a question with its deciding figure for every setup, and its cautions.
//!
//! It is a summary, so it follows a moment after the keys rest; the open question follows at once. What answers a question may be on its
//! way yet: its station says so until it has come.

use leptos::prelude::*;

use super::address::{At, Place};
use super::device;
use super::question::answering;
use super::rested;
use super::state::State;
use crate::job::Job;
use crate::questions::{Heading, Question, Source, Station};

#[derive(Clone, PartialEq)]
struct Shown {
    station: Station,
    cautions: Vec<usize>,
}

/// The stations, top to bottom.
#[component]
pub fn Line() -> impl IntoView {
    let state = State::here();
    let questions: Vec<&'static Heading> = Place::Compare.questions().collect();
    let stations = move |nth: usize| Place::Compare.questions().nth(nth).map_or_else(|| coming(state), |heading| shown(state, heading));
    let shown = rested::follow_each(state, questions.len(), || coming(state), stations);
    view! {
        <nav class="line" aria-label="Questions">
            <ul>{questions.into_iter().zip(shown).map(|(question, shown)| station(state, question, shown)).collect_view()}</ul>
        </nav>
    }
}

fn shown(state: State, heading: &Heading) -> Shown {
    let Some(question) = answering(heading) else { return coming(state) };
    state.with_source(|source| Shown { station: (question.station)(source), cautions: cautions(question, source) })
}

/// What stands at a station until its question can be answered.
fn coming(state: State) -> Shown {
    let figures = untrack(|| state.setup_ids()).iter().map(|_| Some("…".to_owned())).collect();
    Shown { station: Station { label: "…".to_owned(), figures }, cautions: Vec::new() }
}

/// The columns with a caution in the question.
fn cautions(question: &Question, source: Source<'_>) -> Vec<usize> {
    let section = question.section(source);
    let mut columns: Vec<usize> = section.cautions().filter_map(|(column, _, _)| column).collect();
    crate::order::by_key(&mut columns, |column| *column);
    columns.dedup();
    columns
}

fn station(state: State, question: &'static Heading, shown: RwSignal<Shown>) -> impl IntoView {
    let at = At { place: Place::Compare, question: question.id };
    let current = move || (state.view.at.get() == at).then_some("page");
    let label = move || shown.with(|shown| state.say(&shown.station.label));
    let stop = NodeRef::<leptos::html::A>::new();
    keep_in_sight(state, at, stop);
    view! {
        <li class=format!("stop stop--{}", question.id)>
            <a class="station" href=at.fragment() aria-current=current node_ref=stop>
                {glyph(question.glyph)}
                <span class="station__name">{move || state.say(question.title)}</span>
                {move || shown.with(flag)}
                <span class="station__label">{label}</span>
                <span class="station__figures">{move || shown.with(figures)}</span>
            </a>
        </li>
    }
}

/// Where the line is a strip that scrolls, the open question's stop is scrolled into it.
pub(super) fn keep_in_sight(state: State, at: At, stop: NodeRef<leptos::html::A>) {
    Effect::new(move || {
        if let Some(stop) = stop.get().filter(|_| state.view.at.get() == at) {
            request_animation_frame(move || device::scroll_sideways_to(&stop));
        }
    });
}

fn figures(shown: &Shown) -> AnyView {
    let figure = |(column, figure): (usize, &Option<String>)| {
        let letter = Job::letter(column);
        view! {
            <span class=format!("ink--{}", letter.to_ascii_lowercase())>
                <span class="unseen">{letter.to_string()}" "</span>{figure.clone().unwrap_or_else(|| "–".into())}
            </span>
        }
    };
    shown.station.figures.iter().enumerate().map(figure).collect_view().into_any()
}

fn flag(shown: &Shown) -> Option<AnyView> {
    let letters = shown.cautions.iter().map(|column| Job::letter(*column).to_string()).collect::<Vec<_>>().join(" ");
    (!letters.is_empty()).then(|| {
        view! {
            <span class="station__flag"><span aria-hidden="true">"⚠ "</span><span class="unseen">"caution in setup "</span>{letters}</span>
        }
        .into_any()
    })
}

/// A small drawing of the station: what part of the driveline it is about.
fn glyph(path: &'static str) -> impl IntoView {
    view! {
        <svg class="station__glyph" viewBox="0 0 28 28" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="1.8">
            <path d=path></path>
        </svg>
    }
}
