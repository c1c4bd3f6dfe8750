//! A file chosen, dropped or pasted: first what it would do, line by line; nothing is written before it is told to. A shelf of another
//! shop is a matter of [`super::exchange`].

use leptos::html::{Input, Textarea};
use leptos::prelude::*;

use super::{Desk, exchange};
use crate::app::state::State;
use crate::catalogue::exchange::{Exchange, is_json};
use crate::catalogue::import::Differing;
use crate::catalogue::{Entry, FileError, ImportPlan, file};
use crate::problem::{Explain, Problem, capital};
use crate::sheet::catalogue::{difference, told};

/// No more lines of one sort are written out; the sentence on top counts them all.
const LISTED: usize = 40;

/// What a file would do.
#[derive(Clone)]
pub(super) enum Plan {
    /// Lines of one kind.
    Lines(ImportPlan),
    /// A shelf of another shop.
    Shelf(Exchange),
    /// Nothing, and why.
    Refused(String),
}

pub(super) type Planned = RwSignal<Option<Plan>>;

/// The ways in for a file, and what it would do.
pub(super) fn reader(desk: Desk) -> impl IntoView {
    let state = State::here();
    let planned: Planned = RwSignal::new(None);
    let is_over = RwSignal::new(false);
    let chosen = NodeRef::<Input>::new();
    let pick = move |_| {
        if let Some(input) = chosen.get_untracked().and_then(|input| input.files()).and_then(|files| files.get(0)) {
            take(state, planned, &input);
        }
        if let Some(input) = chosen.get_untracked() {
            // The same file can be chosen again.
            input.set_value("");
        }
    };
    let drop = move |event: web_sys::DragEvent| {
        event.prevent_default();
        is_over.set(false);
        if let Some(dropped) = event.data_transfer().and_then(|data| data.files()).and_then(|files| files.get(0)) {
            take(state, planned, &dropped);
        }
    };
    let class = move || if is_over.get() { "shelf__in shelf__in--over" } else { "shelf__in" };
    let over = move |event: web_sys::DragEvent| {
        event.prevent_default();
        is_over.set(true);
    };
    view! {
        <div class=class on:dragover=over on:dragleave=move |_| is_over.set(false) on:drop=drop>
            <label class="shelf__file">
                <span>"Bring in a CSV file or another shop’s shelf: choose it or drop it here"</span>
                <input type="file" id="shelf-file" accept=".csv,.txt,.json,text/csv,text/plain,application/json" node_ref=chosen on:change=pick/>
            </label>
            {pasting(state, planned)}
            {move || planned.get().map(|plan| match plan {
                Plan::Lines(plan) => report(desk, state, planned, &plan).into_any(),
                Plan::Shelf(plan) => exchange::report(desk, planned, plan).into_any(),
                Plan::Refused(why) => refusal(state, planned, &why).into_any(),
            })}
        </div>
    }
}

fn pasting(state: State, planned: Planned) -> impl IntoView {
    let pasted = NodeRef::<Textarea>::new();
    let look = move |_| {
        if let Some(text) = pasted.get_untracked().map(|area| area.value()) {
            planned.set(Some(plan(state, &text)));
        }
    };
    view! {
        <details class="shelf__paste">
            <summary>"or paste its lines"</summary>
            <label class="area"><span class="unseen">"Lines of a CSV file, the column names first"</span>
                <textarea class="area__input" id="shelf-paste" rows="5" spellcheck="false" autocomplete="off" node_ref=pasted
                    placeholder="name,layout,constant,gear_1,gear_2,gear_3,gear_4"></textarea>
            </label>
            <button type="button" class="btn btn--small" id="shelf-look" on:click=look>"See what they would do"</button>
        </details>
    }
}

/// Reads a file that came in; one far too large is not read into memory.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a file's size is a whole positive number"
)]
fn take(state: State, planned: Planned, file: &web_sys::File) {
    if file.size() > file::LARGEST as f64 {
        planned.set(Some(refused(&FileError::TooLarge(file.size() as usize))));
        return;
    }
    let read = file.array_buffer();
    leptos::task::spawn_local(async move {
        let text = match wasm_bindgen_futures::JsFuture::from(read).await {
            Ok(bytes) => file::text(&js_sys::Uint8Array::new(&bytes).to_vec()),
            Err(_) => Err(FileError::NotText),
        };
        planned.set(Some(text.map_or_else(|why| refused(&why), |text| plan(state, &text))));
    });
}

/// What a text would do beside what is offered: a part that is hidden is none that the shop has.
fn plan(state: State, text: &str) -> Plan {
    let offered = untrack(|| state.shop.offered());
    if is_json(text) {
        return offered.meet(text).map_or_else(|why| refused(&why), Plan::Shelf);
    }
    offered.plan(text).map_or_else(|why| refused(&why), Plan::Lines)
}

fn refused(why: &impl Explain) -> Plan {
    Plan::Refused(format!("Nothing was taken in: {}. {}.", why.what(), capital(&why.what_to_do())))
}

fn refusal(state: State, planned: Planned, why: &str) -> impl IntoView + use<> {
    let says = state.say(why);
    view! {
        <div class="notice notice--caution" id="shelf-report">
            <p role="alert">{says}</p>
            <div class="notice__acts"><button type="button" class="btn" on:click=move |_| planned.set(None)>"Close"</button></div>
        </div>
    }
}

/// What the file would do; nothing is written until it is told to.
fn report(desk: Desk, state: State, planned: Planned, plan: &ImportPlan) -> impl IntoView + use<> {
    let (kind, new, differing) = (plan.kind, plan.new.len(), plan.different.len());
    let sentence = state.say(&format!("{}. Nothing is written yet.", capital(&plan.sentence())));
    let unknown = plan.unknown_columns.join(", ");
    let lists = lists(state, plan);
    let mine = RwSignal::new(false);
    let many = move || if mine.get() { new } else { new + differing };
    let choose = move |event| mine.set(event_target_value(&event) == "mine");
    let take = move |_| {
        let differing = if mine.get_untracked() { Differing::Leave } else { Differing::Replace };
        if let Some(Plan::Lines(plan)) = planned.try_update(Option::take).flatten() {
            let before = state.shop.catalogue.get_untracked();
            let after = before.apply(&plan, differing);
            desk.look_at(kind);
            desk.sought.set(String::new());
            exchange::put_on(state, before, after, "Taken into the catalogue.");
            crate::app::device::focus("shelf-search");
        }
    };
    view! {
        <div class="notice" id="shelf-report" role="group" aria-label="What the file would do">
            <p role="status">{sentence}</p>
            {(!unknown.is_empty()).then(|| view! { <p class="words">{format!("Columns that mean nothing here: {unknown}")}</p> })}
            {lists}
            {(differing > 0).then(|| view! {
                <label class="field"><span>"Where they differ"</span>
                    <select class="select" id="shelf-differing" on:change=choose><option value="file">"take the file’s"</option><option value="mine">"keep mine"</option></select>
                </label>
            })}
            <div class="notice__acts">
                <button type="button" class="btn" id="shelf-take" disabled=move || many() == 0 on:click=take>"Import"</button>
                <button type="button" class="btn" on:click=move |_| planned.set(None)>"Cancel"</button>
            </div>
        </div>
    }
}

/// The lines of the file, sorted by what becomes of them.
fn lists(state: State, plan: &ImportPlan) -> impl IntoView + use<> {
    let units = state.job.with_untracked(|job| job.units);
    let sentences = |problems: &[Problem]| problems.iter().map(Problem::sentence).collect::<Vec<_>>().join(" ");
    let refused =
        plan.refused.iter().map(|refused| (Some(refused.line), format!("“{}”: {}", refused.text, sentences(&refused.problems)))).collect();
    let doubts = plan.doubts.iter().map(|(line, problem)| (Some(*line), problem.sentence())).collect();
    let name = |entry: &Entry| {
        let told = told(entry, units);
        format!("“{}”, {}", told.name, told.figures.first().cloned().unwrap_or_default())
    };
    let new = plan.new.iter().map(|planned| (Some(planned.line), name(&planned.entry))).collect();
    let different = plan
        .different
        .iter()
        .map(|one| (Some(one.line), format!("{}: {}", name(&one.before), difference(&one.before, &one.after))))
        .collect();
    [("Refused", refused), ("Doubtful", doubts), ("Different", different), ("New", new)]
        .map(|(title, lines)| list(state, title, lines))
        .into_iter()
        .collect_view()
}

/// Lines under a title, each with its number where it has one; nothing where there are none.
pub(super) fn list(state: State, title: &'static str, lines: Vec<(Option<usize>, String)>) -> Option<impl IntoView + use<>> {
    let more = lines.len().saturating_sub(LISTED);
    let line = |(number, text): (Option<usize>, String)| {
        view! { <li>{number.map(|number| view! { <b class="num">{format!("line {number}")}</b>" " })}{state.say(&text)}</li> }
    };
    (!lines.is_empty()).then(|| {
        view! {
            <h3 class="shelf__sort">{title}</h3>
            <ul class="shelf__report">{lines.into_iter().take(LISTED).map(line).collect_view()}</ul>
            {(more > 0).then(|| view! { <p class="words">{format!("and {more} more")}</p> })}
        }
    })
}
