//! The bench: what lies on it, from counts, turns or a printed ladder, and whether parts of several sets belong together.

mod counts;
mod ladder;
mod mixed;
mod turns;

use leptos::prelude::*;

use crate::app::state::State;
use crate::app::widgets::{SelectField, TextField};
use crate::catalogue::{Entry, PartKind};
use crate::gearing::Gearbox as Teeth;
use crate::gearing::identify::Candidate;
use crate::job::{BenchField, Choice, Field, Gearbox, Job, JobChoice, JobField, SetupId};

/// The layout of what lies on the bench.
pub(super) fn controls() -> impl IntoView {
    view! { <SelectField choice=Choice::Job(JobChoice::BenchLayout) label="what lies there" visible_label=true/> }
}

/// The four questions, one below the other.
pub(super) fn picture() -> impl IntoView {
    let state = State::here();
    let sets = Memo::new(move |_| state.catalogue.with(|catalogue| readable(catalogue.entries(PartKind::GearSet))));
    view! {
        <div class="bench">
            {counts::panel(sets)}
            {turns::panel(sets)}
            {ladder::panel(sets)}
            {mixed::panel(sets)}
        </div>
    }
}

/// A gear set of the catalogue with the gearbox it makes.
#[derive(Clone, PartialEq)]
struct Known {
    set: Entry,
    gearbox: Teeth,
}

fn readable<'a>(sets: impl Iterator<Item = &'a Entry>) -> Vec<Known> {
    sets.filter_map(|set| Some(Known { set: set.clone(), gearbox: set.gearbox()? })).collect()
}

fn candidates(known: &[Known]) -> Vec<Candidate<'_>> {
    known.iter().map(|known| Candidate { name: known.set.title(), gearbox: &known.gearbox }).collect()
}

fn field(field: BenchField, label: &'static str, blank_means: &'static str) -> impl IntoView {
    let wide = field == BenchField::Ladder;
    view! { <TextField field=Field::Job(JobField::Bench(field)) label visible_label=true wide blank_means/> }
}

/// One question of the bench.
fn question(title: &'static str, ask: &'static str, fields: impl IntoView + 'static, answer: impl IntoView + 'static) -> impl IntoView {
    let state = State::here();
    view! {
        <div class="bench__one">
            <h3>{title}</h3>
            <p class="words">{move || state.say(ask)}</p>
            <div class="car__fields">{fields}</div>
            <div class="bench__answer" role="status">{answer}</div>
        </div>
    }
}

/// A line of an answer with the buttons that put a gear set into a setup.
fn found(state: State, title: String, about: String, gearbox: Gearbox) -> impl IntoView {
    let button = move |(column, id): (usize, SetupId)| {
        let gearbox = gearbox.clone();
        let letter = Job::letter(column);
        let put = move |_| {
            let gearbox = gearbox.clone();
            state.change(move |job| {
                if let Some(setup) = job.setup_mut(id) {
                    setup.gearbox = gearbox;
                }
            });
        };
        view! { <button type="button" class="btn btn--small" aria-label=format!("Use it in setup {letter}") on:click=put>{letter.to_string()}</button> }
    };
    let setups = state.setup_ids().into_iter().enumerate().collect::<Vec<_>>();
    view! {
        <li class="bench__found">
            <span><b>{title}</b>" "<span class="words">{about}</span></span>
            <span class="bench__use"><span class="words">"use in"</span>{setups.into_iter().map(button).collect_view()}</span>
        </li>
    }
}

/// How many answers of one question are listed.
const LISTED: usize = 8;

/// `and 12 more`, where a list was cut.
fn more(many: usize) -> Option<impl IntoView> {
    (many > LISTED).then(|| view! { <li class="words">{format!("and {} more", many - LISTED)}</li> })
}
