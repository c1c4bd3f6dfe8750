//! From a printed ladder back to teeth: the catalogue at once, every combination of teeth in slices.

use std::cell::RefCell;

use leptos::prelude::*;

use super::{Known, LISTED, candidates, field, found, more, question};
use crate::app::device;
use crate::app::state::State;
use crate::gearing::identify::ladder::{Found, LadderSearch, Progress};
use crate::gearing::identify::printed::Figure;
use crate::gearing::{Layout, write};
use crate::job::{Bench, BenchField, Gearbox};
use crate::problem::{Explain, capital};
use crate::questions::identify::answer as bench;

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
}

/// The printed ladder and what it can be.
pub(super) fn panel(sets: Memo<Vec<Known>>) -> impl IntoView {
    let state = State::here();
    let (seen, running) = (RwSignal::new(Seen::default()), RwSignal::new(None::<f64>));
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
    };
    let searching = Memo::new(move |_| running.with(Option::is_some));
    let progress = move || {
        searching.get().then(|| {
            view! {
                <div class="bench__progress">
                    <progress aria-label="Search from the printed ladder" max="1" prop:value=move || running.get().unwrap_or(1.0)></progress>
                    <button type="button" class="btn btn--small" on:click=move |_| stop(turn, running)>"Stop"</button>
                </div>
            }
        })
    };
    let answer = move || {
        let known = sets.with(|sets| {
            let answer = state.job.with(|job| bench::from_ladder(&job.bench, &candidates(sets)))?;
            Some(match answer {
                Ok(answer) => {
                    let fitting = answer.ranked.iter().filter(|one| one.fits).filter_map(|one| sets.get(one.candidate));
                    let lines: Vec<_> = fitting
                        .take(LISTED)
                        .map(|known| found(state, known.set.title().to_owned(), known.set.gears().join("  "), Gearbox::picked(&known.set)))
                        .collect();
                    let head = if lines.is_empty() { "No gear set of the catalogue prints so." } else { "From the catalogue:" };
                    view! { <p>{state.say(head)}</p> <ul class="bench__list">{lines}</ul> }.into_any()
                }
                Err(why) => refusal(state, &why),
            })
        });
        let wrong = state.job.with(|job| bench::limit_problems(&job.bench));
        let wrong = wrong.iter().map(|problem| view! { <p class="field__problem">{state.say(&problem.sentence())}</p> }).collect_view();
        view! { {wrong} {known} {progress} {move || seen.with(|seen| seen_view(state, seen))} }
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
fn begin(state: State, turn: StoredValue<u32>, seen: RwSignal<Seen>, running: RwSignal<Option<f64>>) {
    turn.update_value(|turn| *turn = turn.wrapping_add(1));
    seen.set(Seen::default());
    let figures: Option<Vec<Figure>> =
        state.job.with_untracked(|job| bench::from_ladder(&job.bench, &[])).and_then(Result::ok).map(|ladder| ladder.figures);
    let Some(figures) = figures else { return running.set(None) };
    match state.job.with_untracked(|job| bench::ladder_search(&job.bench, figures)) {
        Ok(search) => {
            SEARCH.set(Some(search));
            running.set(Some(0.0));
            let now = turn.get_value();
            device::soon(move || slice(now, turn, seen, running));
        }
        Err(why) => {
            running.set(None);
            seen.set(Seen { sentence: format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do())), ..Seen::default() });
        }
    }
}

fn stop(turn: StoredValue<u32>, running: RwSignal<Option<f64>>) {
    turn.update_value(|turn| *turn = turn.wrapping_add(1));
    running.set(None);
}

/// One slice of the search, then the next, until it is done or something else was asked.
fn slice(now: u32, turn: StoredValue<u32>, seen: RwSignal<Seen>, running: RwSignal<Option<f64>>) {
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
        let best = outcome.best.iter().take(LISTED).cloned().collect();
        Some((Seen { sentence: outcome.sentence(), best, many: outcome.count }, progress))
    });
    let Some((found, progress)) = step else { return running.set(None) };
    // Nothing is painted anew while a slice finds nothing new.
    if seen.with_untracked(|seen| *seen != found) {
        seen.set(found);
    }
    match progress {
        Progress::Working { done, of, .. } => {
            running.set(Some(share(done, of)));
            device::soon(move || slice(now, turn, seen, running));
        }
        Progress::Finished => running.set(None),
    }
}

#[expect(clippy::cast_precision_loss, reason = "a share for the eye")]
fn share(done: usize, of: usize) -> f64 {
    if of == 0 { 0.0 } else { done as f64 / of as f64 }
}

fn seen_view(state: State, seen: &Seen) -> impl IntoView + use<> {
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
    let many = usize::try_from(seen.many).unwrap_or(usize::MAX);
    view! { <p>{state.say(&capital(&seen.sentence))}</p> <ul class="bench__list">{lines}{more(many)}</ul> }
}

/// A combination as it would be typed.
fn typed(found: &Found, layout: Layout) -> Gearbox {
    Gearbox {
        name: "From a printed ladder".into(),
        layout,
        constant: found.constant.map_or_else(String::new, |mesh| write::constant(mesh, layout)),
        gears: found.gears.iter().map(|gear| write::gear(*gear, layout)).collect(),
        ..Gearbox::default()
    }
}
