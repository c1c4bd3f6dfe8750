//! What was found: how far the search is, and the results, each with why it stands where it does and a way onto the sheet.

use leptos::prelude::*;

use super::runner::Runner;
use crate::app::notices::Notice;
use crate::app::state::State;
use crate::catalogue::Entry;
use crate::catalogue::case::fit;
use crate::finder::Found;
use crate::finder::search::Standing;
use crate::job::{Job, MOST_SETUPS, SetupId};
use crate::questions::case;
use crate::questions::find::onto_sheet::{self as put, Into};
use crate::questions::find::words as why;
use crate::units::number;

/// How many results are shown before more are asked for.
const FIRST: usize = 10;

/// How far the search is, in words and as a bar, and the way to stop it.
pub(super) fn progress(runner: Runner) -> impl IntoView {
    let state = State::here();
    let says = move || {
        runner.found.with(|found| {
            let Some(found) = found else { return "Searching …".to_owned() };
            let unread = found.unread.sentence().map_or_else(String::new, |sentence| format!(" {sentence}"));
            format!("{}{unread}", why::summary(found))
        })
    };
    let share = move || runner.found.with(|found| found.as_ref().map_or(0.0, |found| share(found)));
    let is_begun = move || runner.found.with(Option::is_some);
    let is_done = move || runner.found.with(|found| found.as_ref().is_some_and(|found| found.progress.done));
    view! {
        <div class="find__progress" id="find-progress" data-done=move || (is_done() && !runner.is_running.get()).to_string()>
            <p role="status">{move || state.say(&says())}</p>
            <progress max="1" aria-label="How far the search is" prop:value=share hidden=move || !runner.is_running.get()></progress>
            {move || runner.is_running.get().then(|| view! { <button type="button" class="btn btn--small" on:click=move |_| runner.stop()>"Stop"</button> })}
            {move || (is_begun() && !runner.is_running.get() && !is_done())
                .then(|| view! { <button type="button" class="btn btn--small" on:click=move |_| runner.go_on()>"Go on"</button> })}
        </div>
    }
}

#[expect(clippy::cast_precision_loss, reason = "a share that is shown as a bar")]
fn share(found: &Found) -> f64 {
    let settled = found.progress.judged + found.progress.passed;
    settled as f64 / found.progress.total.max(1) as f64
}

/// The results in their order.
pub(super) fn list(runner: Runner) -> impl IntoView {
    let state = State::here();
    let into = RwSignal::new(Into::New);
    let shown = RwSignal::new(FIRST);
    let many = move || runner.found.with(|found| found.as_ref().map_or(0, |found| found.results.len()));
    let rows = move || {
        runner.found.with(|found| {
            let found = found.as_ref()?;
            let results = found.results.iter().take(shown.get()).enumerate();
            Some(results.map(|(at, standing)| row(state, runner, found, at, standing, into)).collect_view())
        })
    };
    view! {
        <div class="find__results" hidden=move || many() == 0>
            <div class="find__into">
                <h3>"What was found"</h3>
                {place(state, into)}
            </div>
            <ol class="results" id="find-results">{rows}</ol>
            <button type="button" class="btn" hidden={move || shown.get() >= many()} on:click=move |_| shown.update(|shown| *shown += 30)>
                {move || format!("Show more of {}", many())}
            </button>
        </div>
    }
}

/// Where a pressed result goes: a new column, or the place of a setup.
fn place(state: State, into: RwSignal<Into>) -> impl IntoView {
    let full = move || state.job.with(|job| job.setups.len() >= MOST_SETUPS);
    let chosen = move |id: SetupId| into.get() == Into::Place(id);
    let choose = move |event: web_sys::Event| {
        let id = event_target_value(&event).parse().ok().map(SetupId);
        into.set(id.map_or(Into::New, Into::Place));
    };
    let option = move |id: SetupId| {
        let words = move || format!("in place of {}", Job::letter(state.column_of(id)));
        view! { <option value=id.0.to_string() selected=move || chosen(id)>{words}</option> }
    };
    view! {
        <label class="field">
            <span>"A result pressed becomes"</span>
            <select class="select" id="find-into" on:change=choose>
                <option value="" selected=move || into.get() == Into::New>"a new setup"</option>
                <For each=move || state.setup_ids() key=|id| *id children=option/>
            </select>
        </label>
        <span class="words">{move || full().then_some("Six setups stand on the sheet, and no more fit: choose whose place it takes.")}</span>
    }
}

fn row(state: State, runner: Runner, found: &Found, at: usize, standing: &Standing, into: RwSignal<Into>) -> impl IntoView + use<> {
    let units = state.job.with_untracked(|job| job.units);
    let [set, axle, tyre] = names(state, standing);
    let pair = standing.pair.map(|(pair, error)| {
        let high = if error < 0.0 { "low" } else { "high" };
        format!("speedometer {}/{}, reads {} % {high}", pair.drive, pair.driven, number::show(100.0 * error.abs(), 1))
    });
    let figures = found.wishes.iter().zip(&standing.figures).filter(|(wish, _)| !wish.measure.is_flag());
    let figures: Vec<(String, String)> =
        figures.map(|(wish, value)| (why::name(wish.measure, units), why::figure(wish.measure, *value, units))).collect();
    let reason = why::reason(standing, found, units);
    let fit = fit_of(state, standing);
    let reason = if fit.is_empty() { reason } else { format!("{fit}; {reason}") };
    let ratios: Vec<String> = standing.set.ratios.iter().map(|ratio| number::show(*ratio, 3)).collect();
    let cost = untrack(|| put::cost(standing, &state.shop.offered()));
    let class = if standing.on_front { "result result--front" } else { "result" };
    let parts = [
        Some(format!("{axle} ({})", number::show(standing.axle.ratio, 3))),
        Some(tyre),
        pair,
        cost.map(|cost| format!("new parts {cost}")),
    ]
    .into_iter()
    .flatten()
    .collect::<Vec<_>>()
    .join(", ");
    let figure = move |(name, value): (String, String)| {
        view! { <span class="result__figure"><span class="words">{move || state.say(&name)}</span>" "<span class="num">{value}</span></span> }
    };
    view! {
        <li class=class>
            <button type="button" class="result__press" data-result=at.to_string() on:click=move |_| press(state, runner, at, into.get_untracked())>
                <span class="result__name">{format!("{}. {set}", at + 1)}</span>
                <span class="result__parts">{parts}</span>
                <span class="result__ratios num">{ratios.join("  ")}</span>
                <span class="result__figures">{figures.into_iter().map(figure).collect_view()}</span>
                <span class="result__why">{move || state.say(&reason)}</span>
            </button>
        </li>
    }
}

/// Whether the gear set of a result goes into A's case; nothing where A has no gears yet.
fn fit_of(state: State, standing: &Standing) -> String {
    let first = untrack(|| state.with_source(case::of_first));
    let offered = untrack(|| state.shop.offered());
    let needs = put::gear_set(standing, &offered).map(Entry::case_needs);
    first.zip(needs).map_or_else(String::new, |(first, needs)| fit(&needs, &first).words('A'))
}

/// The parts of a result by name.
pub(super) fn names(state: State, standing: &Standing) -> [String; 3] {
    let offered = untrack(|| state.shop.offered());
    state.job.with_untracked(|job| put::names(standing, &offered, job))
}

/// Puts a result onto the sheet and says where it stands.
pub(super) fn press(state: State, runner: Runner, at: usize, into: Into) {
    let standing = runner.found.with_untracked(|found| found.as_ref().and_then(|found| found.results.get(at).cloned()));
    let Some(standing) = standing else { return };
    if into == Into::New && state.job.with_untracked(|job| job.setups.len() >= MOST_SETUPS) {
        state.tell(Notice::plain("Six setups stand on the sheet, and no more fit: remove one, or choose whose place the result takes."));
        return;
    }
    let mut put = None;
    let catalogue = untrack(|| state.shop.offered());
    state.change(|job| put = put::put(job, &catalogue, &standing, into));
    if let Some(id) = put {
        let letter = Job::letter(state.job.with_untracked(|job| job.setups.iter().position(|setup| setup.id == id).unwrap_or(0)));
        let [set, axle, tyre] = names(state, &standing);
        state.tell(Notice::plain(format!("{set} with {axle} and {tyre} is setup {letter} now.")));
    }
}
