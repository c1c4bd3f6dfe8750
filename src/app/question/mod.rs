//! A question as it is shown, always built alike: name and inputs, the answer in a sentence, one picture, the rows that decide; folded
//! below them all figures and what they rest on.
//!
//! What is seen at once is here; what opens, and what only some questions have, comes with the other answers ([`parts`]).

pub mod fold;
pub mod folds;
pub mod inputs;
pub mod offer;
mod own_rows;
pub mod picture;
mod rests;
pub mod rows;
mod said;
pub mod saving;
pub mod sheets;
pub mod told;
pub mod wanted;

use leptos::prelude::*;

use super::parts;
use super::state::State;
use super::turns;
use crate::questions::{self, Heading, Own, Place, Question, Source};
use crate::sheet::{Row, words};
use rows::Rows;

/// A question with what answers it; none while that is on its way. Tracks its coming. The question a page opens with is there from the
/// first, as far as it can be.
pub fn answering(heading: &Heading) -> Option<&'static Question> {
    let first = || Some(questions::FIRST).filter(|first| first.id == heading.id);
    parts::ANSWERS.get().and_then(|answers| (answers.of)(heading.id)).or_else(first)
}

/// The view of a question.
#[component]
pub fn QuestionView(
    /// Which question.
    heading: &'static Heading,
) -> impl IntoView {
    let state = State::here();
    view! {
        <section class=format!("question question--{}", heading.id) id=heading.id aria-labelledby=format!("{}-title", heading.id)>
            <div class="question__head">
                <h2 id=format!("{}-title", heading.id)>{move || state.say(heading.title)}</h2>
                <span class="question__ask">{move || state.say(heading.ask)}</span>
                <div class="question__inputs">{inputs::view(heading.inputs)}</div>
            </div>
            {match untrack(|| answering(heading)) {
                Some(question) => answered(state, heading, question),
                None => parts::ANSWERS.show(move |answers| (answers.of)(heading.id).map(|question| answered(state, heading, question)).into_any()).into_any(),
            }}
        </section>
    }
}

/// What stands below a question's head, as far as it is known now.
fn answered(state: State, heading: &'static Heading, known: &'static Question) -> AnyView {
    let question = Signal::derive(move || answering(heading).unwrap_or(known));
    let deciding = move || {
        let rows = rows::follow(state, move |source| (question.get().deciding)(source));
        let has_any = Memo::new(move |_| rows.with(|rows| !rows.is_empty()));
        view! { <Show when=move || has_any.get()><Rows rows name="deciding"/></Show> }.into_any()
    };
    let said = said::view(state, question);
    let groups = parts::ANSWERS.add(move |answers| (answers.groups)(heading.id));
    let below = view! {
        {(known.own == Some(Own::Search)).then(|| parts::FIND.show(|find| find()))}
        {has_picture(known).then(|| parts::PICTURES.show_in(move || coming(state, known), move |picture| picture(question)))}
        {turns::piece(deciding)}
        {parts::ANSWERS.show(move |answers| (answers.folds)(heading.id))}
    };
    if heading.place == Place::Bench {
        // What was found stays in view beside a long column of fields.
        let recorded = known.takes_a_recording().then(|| parts::LISTEN.add(|listen| (listen.found)()));
        return view! { <div class="question__found">{said}{recorded}{below}</div>{groups} }.into_any();
    }
    view! { {said}{groups}{below} }.into_any()
}

/// Whether it is the question a page opens with, as it is answered before the others have come.
fn is_first(question: &Question) -> bool {
    question.id == questions::FIRST.id
}

/// Whether a question has a picture. That of the first comes with what draws it.
fn has_picture(question: &Question) -> bool {
    is_first(question) || !question.pictures.is_empty()
}

/// The place of the first picture until it is drawn, so that nothing moves when it is.
fn coming(state: State, known: &'static Question) -> AnyView {
    let height = move || state.with_source(questions::picture_height);
    let px = move || height().map_or_else(String::new, |height| format!("{height}px"));
    let place = || view! { <div class="picture picture--coming" aria-busy="true" hidden=move || height().is_none() style:height=px></div> };
    is_first(known).then(place).into_any()
}

/// Rows in the reader's words.
fn said_rows(mut rows: Vec<Row>, source: Source<'_>) -> Vec<Row> {
    for row in &mut rows {
        words::row(row, source.reader.words);
    }
    rows
}
