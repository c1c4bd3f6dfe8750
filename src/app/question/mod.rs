//! A question as it is shown, always built alike: name and inputs, the answer in a sentence, one picture, the rows that decide; folded
//! below them all figures and what they rest on.

pub mod fold;
mod inputs;
mod offer;
mod picture;
mod rests;
pub mod rows;
mod said;
mod wanted;

use leptos::prelude::*;

use super::parts;
use super::state::State;
use crate::questions::{Question, Source};
use crate::sheet::{Row, words};
use fold::Fold;
use rows::Rows;

/// The view of a question.
#[component]
pub fn QuestionView(
    /// Which question.
    question: &'static Question,
) -> impl IntoView {
    let state = State::here();
    let deciding = rows::follow(state, question.deciding);
    let has_deciding = Memo::new(move |_| deciding.with(|rows| !rows.is_empty()));
    let more = Memo::new(move |_| state.with_source(|source| rest_of(question, source)).len());
    view! {
        <section class=format!("question question--{}", question.id) id=question.id aria-labelledby=format!("{}-title", question.id)>
            <div class="question__head">
                <h2 id=format!("{}-title", question.id)>{move || state.say(question.title)}</h2>
                <span class="question__ask">{move || state.say(question.ask)}</span>
                <div class="question__inputs">{inputs::view(question.inputs)}</div>
            </div>
            {said::view(state, question)}
            {inputs::groups(question)}
            {(question.id == "find").then(|| parts::FIND.show(|find| find()))}
            {picture::view(question)}
            <Show when=move || has_deciding.get()><Rows rows=deciding name="deciding"/></Show>
            <Show when=move || { more.get() > 0 }>
                <Fold question=question.id fold="all" title="All figures" about=Signal::derive(move || rows_words(more.get()))
                    inside=move || all_figures(state, question)/>
            </Show>
            <Fold question=question.id fold="rests" title="What this rests on" about=Signal::derive(|| "values and their sources".to_owned())
                inside=move || rests::view(state, question)/>
        </section>
    }
}

fn rows_words(many: usize) -> String {
    if many == 1 { "1 row".into() } else { format!("{many} rows") }
}

fn all_figures(state: State, question: &'static Question) -> AnyView {
    let rows = rows::follow_with(state, move |source| rest_of(question, source));
    view! { <Rows rows name="all"/> }.into_any()
}

/// The rows of a question that do not stand among those that decide.
fn rest_of(question: &Question, source: Source<'_>) -> Vec<Row> {
    let section = question.section(source);
    section.rows.into_iter().skip(section.decide).collect()
}

/// Rows in the reader's words.
fn said_rows(mut rows: Vec<Row>, source: Source<'_>) -> Vec<Row> {
    for row in &mut rows {
        words::row(row, source.reader.words);
    }
    rows
}
