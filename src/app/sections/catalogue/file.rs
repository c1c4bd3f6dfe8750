//! A CSV file read into the catalogue: first what it would do, line by line where it is refused, then the taking in.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::app::state::State;
use crate::catalogue::import::Differing;
use crate::catalogue::whole::AnyPlan;
use crate::catalogue::{FileError, file};
use crate::problem::{Explain, Problem, capital};

/// The way in for a file, and what it would do.
pub(super) fn reader() -> impl IntoView {
    let state = State::here();
    let planned = RwSignal::new(None::<Result<AnyPlan, FileError>>);
    let read = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
        let Some(chosen) = input.as_ref().and_then(web_sys::HtmlInputElement::files).and_then(|files| files.get(0)) else { return };
        leptos::task::spawn_local(async move {
            let Ok(bytes) = wasm_bindgen_futures::JsFuture::from(chosen.array_buffer()).await else { return };
            let bytes = js_sys::Uint8Array::new(&bytes).to_vec();
            let plan = file::text(&bytes).and_then(|text| state.catalogue.with_untracked(|catalogue| catalogue.plan(&text)));
            planned.set(Some(plan));
        });
        if let Some(input) = input {
            input.set_value("");
        }
    };
    view! {
        <label class="shelf__file">
            <span>"Read a CSV file: "</span>
            <input type="file" id="shelf-file" accept=".csv,.txt,text/csv" on:change=read/>
        </label>
        {move || planned.get().map(|plan| match plan {
            Ok(plan) => report(state, planned, plan).into_any(),
            Err(why) => view! { <p class="field__problem">{state.say(&format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do())))}</p> }.into_any(),
        })}
    }
}

/// What the file would do; nothing is written until it is told to.
fn report(state: State, planned: RwSignal<Option<Result<AnyPlan, FileError>>>, plan: AnyPlan) -> impl IntoView {
    let summary = plan.summary();
    let line = |(number, text): (usize, String)| view! { <li><b class="num">{format!("line {number}")}</b>" "{state.say(&text)}</li> };
    let sentences = |problems: &[Problem]| problems.iter().map(Problem::sentence).collect::<Vec<_>>().join(" ");
    let refused: Vec<_> = summary
        .refused
        .iter()
        .map(|refused| line((refused.line, format!("refused: “{}”. {}", refused.text, sentences(&refused.problems)))))
        .collect();
    let doubts: Vec<_> = summary.doubts.iter().map(|(number, problem)| line((*number, problem.sentence()))).collect();
    let unknown = summary.unknown_columns.join(", ");
    let (sentence, differs, takes) = (summary.sentence(), summary.different > 0, summary.new + summary.different > 0);
    let take = move |differing: Differing| {
        let after = state.catalogue.with_untracked(|catalogue| catalogue.apply(&plan, differing));
        planned.set(None);
        state.catalogue.set(after);
    };
    let (replace, leave) = (take.clone(), take);
    view! {
        <div class="notice" id="shelf-report" role="status">
            <p>{format!("{}.", capital(&sentence))}" Nothing is written yet."</p>
            {(!unknown.is_empty()).then(|| view! { <p class="words">{format!("Columns that mean nothing here: {unknown}")}</p> })}
            <ul class="shelf__report">{refused}{doubts}</ul>
            <div class="notice__acts">
                {takes.then(|| view! { <button type="button" class="btn" id="shelf-take" on:click=move |_| replace(Differing::Replace)>"Take these in"</button> })}
                {differs.then(|| view! { <button type="button" class="btn" on:click=move |_| leave(Differing::Leave)>"Take in the new ones, keep mine where they differ"</button> })}
                <button type="button" class="btn" on:click=move |_| planned.set(None)>"Leave it"</button>
            </div>
        </div>
    }
}
