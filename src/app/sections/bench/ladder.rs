//! From a printed ladder back to teeth: the catalogue at once, every combination of teeth in slices.

use std::cell::RefCell;

use leptos::prelude::*;

use super::{Known, LISTED, candidates, field, found, more, question};
use crate::analysis::bench;
use crate::app::device;
use crate::app::state::State;
use crate::gearing::identify::ladder::{Found, LadderSearch, Progress};
use crate::gearing::identify::printed::Figure;
use crate::gearing::{Gear, Layout, Mesh};
use crate::job::{Bench, BenchField, Gearbox};
use crate::problem::{Explain, capital};

/// How long a slice may take, in milliseconds.
const SLICE_MS: f64 = 8.0;
/// Steps of the search between two looks at the clock.
const STEPS: usize = 4;

thread_local! {
    /// The search that is running; a page has one.
    static SEARCH: RefCell<Option<LadderSearch>> = const { RefCell::new(None) };
}

/// What the search has found so far.
#[derive(Clone, Debug, Default, PartialEq)]
struct Seen {
    sentence: String,
    best: Vec<Found>,
    many: u64,
    share: f64,
}

/// The printed ladder and what it can be.
pub(super) fn panel(sets: Memo<Vec<Known>>) -> impl IntoView {
    let state = State::here();
    let (seen, running) = (RwSignal::new(Seen::default()), RwSignal::new(false));
    let asked = Memo::new(move |_| state.job.with(|job| ladder_texts(&job.bench)));
    let turn = StoredValue::new(0_u32);
    Effect::new(move || {
        // Reading, not only tracking: a memo nobody has read does not know what it depends on.
        asked.with(|_| ());
        begin(state, turn, seen, running);
    });
    let fields = view! {
        {field(BenchField::Ladder, "printed ratios", "2.47 1.67 1.24 1.00")}
        {field(BenchField::Fewest, "teeth from", "12")}
        {field(BenchField::Most, "to", "60")}
        <button type="button" class="btn btn--small" disabled=move || !running.get() on:click=move |_| stop(turn, running)>"Stop"</button>
    };
    let answer = move || {
        let known = sets.with(|sets| {
            let answer = state.job.with(|job| bench::from_ladder(&job.bench, &candidates(sets)))?;
            Some(match answer {
                Ok(answer) => {
                    let fitting = answer.ranked.iter().filter(|one| one.fits).filter_map(|one| sets.get(one.candidate));
                    let lines: Vec<_> = fitting
                        .take(LISTED)
                        .map(|known| found(state, known.set.name.clone(), known.set.gears.join("  "), Gearbox::picked(&known.set)))
                        .collect();
                    let head = if lines.is_empty() { "No gear set of the catalogue prints so." } else { "From the catalogue:" };
                    view! { <p>{head}</p> <ul class="bench__list">{lines}</ul> }.into_any()
                }
                Err(why) => refusal(state, &why),
            })
        });
        view! { {known} {seen_view(state, &seen.get(), running.get())} }
    };
    question(
        "A printed ladder",
        "Ratios as an old manual prints them, back to teeth: every combination that shares one centre distance and rounds to the figures.",
        fields,
        answer,
    )
}

fn refusal(state: State, why: &impl Explain) -> AnyView {
    let said = format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()));
    view! { <p class="field__problem">{state.say(&said)}</p> }.into_any()
}

fn ladder_texts(bench: &Bench) -> [String; 4] {
    [bench.ladder.clone(), bench.fewest.clone(), bench.most.clone(), bench.layout.clone()]
}

/// Starts the search for what is typed now; whatever ran before is dropped.
fn begin(state: State, turn: StoredValue<u32>, seen: RwSignal<Seen>, running: RwSignal<bool>) {
    turn.update_value(|turn| *turn = turn.wrapping_add(1));
    seen.set(Seen::default());
    let figures: Option<Vec<Figure>> =
        state.job.with_untracked(|job| bench::from_ladder(&job.bench, &[])).and_then(Result::ok).map(|ladder| ladder.figures);
    let Some(figures) = figures else { return running.set(false) };
    match state.job.with_untracked(|job| bench::ladder_search(&job.bench, figures)) {
        Ok(search) => {
            SEARCH.set(Some(search));
            running.set(true);
            let now = turn.get_value();
            device::soon(move || slice(now, turn, seen, running));
        }
        Err(why) => {
            running.set(false);
            seen.set(Seen { sentence: format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do())), ..Seen::default() });
        }
    }
}

fn stop(turn: StoredValue<u32>, running: RwSignal<bool>) {
    turn.update_value(|turn| *turn = turn.wrapping_add(1));
    running.set(false);
}

/// One slice of the search, then the next, until it is done or something else was asked.
fn slice(now: u32, turn: StoredValue<u32>, seen: RwSignal<Seen>, running: RwSignal<bool>) {
    if turn.try_get_value() != Some(now) {
        return;
    }
    let begun = device::milliseconds();
    let step = SEARCH.with_borrow_mut(|search| {
        let search = search.as_mut()?;
        let mut progress = search.advance(STEPS);
        while matches!(progress, Progress::Working { .. }) && device::milliseconds() - begun < SLICE_MS {
            progress = search.advance(STEPS);
        }
        let outcome = search.outcome();
        let share = match progress {
            Progress::Working { done, of, .. } => share(done, of),
            Progress::Finished => 1.0,
        };
        Some((
            Seen { sentence: outcome.sentence(), best: outcome.best.iter().take(LISTED).cloned().collect(), many: outcome.count, share },
            progress,
        ))
    });
    let Some((found, progress)) = step else { return running.set(false) };
    seen.set(found);
    if matches!(progress, Progress::Working { .. }) {
        device::soon(move || slice(now, turn, seen, running));
    } else {
        running.set(false);
    }
}

#[expect(clippy::cast_precision_loss, reason = "a share for the eye")]
fn share(done: usize, of: usize) -> f64 {
    if of == 0 { 0.0 } else { done as f64 / of as f64 }
}

fn seen_view(state: State, seen: &Seen, running: bool) -> impl IntoView + use<> {
    let layout = state.job.with(|job| bench::layout(&job.bench));
    let lines: Vec<_> = seen
        .best
        .iter()
        .map(|one| {
            let gearbox = typed(one, layout);
            let constant = if gearbox.constant.is_empty() { String::new() } else { format!("{} · ", gearbox.constant) };
            found(state, format!("{constant}{}", gearbox.gears.join("  ")), String::new(), gearbox)
        })
        .collect();
    let progress =
        running.then(|| view! { <progress aria-label="Search from the printed ladder" max="1" prop:value=seen.share></progress> });
    let many = usize::try_from(seen.many).unwrap_or(usize::MAX);
    view! { {progress} <p>{state.say(&seen.sentence)}</p> <ul class="bench__list">{lines}{more(many)}</ul> }
}

/// A combination as it would be typed.
fn typed(found: &Found, layout: Layout) -> Gearbox {
    let pair = |mesh: Mesh, line_drives: bool| {
        if line_drives { format!("{}/{}", mesh.driver, mesh.driven) } else { format!("{}/{}", mesh.driven, mesh.driver) }
    };
    let gear = |gear: &Gear| match gear {
        Gear::Direct => "direct".to_owned(),
        Gear::Mesh(mesh) => pair(*mesh, layout == Layout::OutputReduced),
    };
    Gearbox {
        name: "From a printed ladder".into(),
        layout,
        constant: found.constant.map_or_else(String::new, |mesh| pair(mesh, layout != Layout::OutputReduced)),
        gears: found.gears.iter().map(gear).collect(),
        ..Gearbox::default()
    }
}
