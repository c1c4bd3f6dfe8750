//! What stands folded below a question: all its figures, and what they rest on.

use leptos::prelude::*;

use super::fold::Fold;
use super::rests;
use super::rows::{self, Rows};
use super::sheets;
use crate::app::rested;
use crate::app::state::State;
use crate::questions::{self, Own, Question, Source};
use crate::sheet::Row;

pub(in crate::app) fn of(id: &str) -> AnyView {
    questions::of_id(id).map(folds).into_any()
}

fn folds(question: &'static Question) -> impl IntoView {
    let state = State::here();
    let more = rested::follow(state, move || state.with_source(|source| rest_of(question, source)).len());
    view! {
        <Show when=move || { more.get() > 0 }>
            <Fold question=question.id fold="all" title="All figures" about=Signal::derive(move || rows_words(more.get()))
                inside=move || all_figures(state, question)/>
        </Show>
        {(question.own == Some(Own::SheetsOfASet)).then(|| view! {
            <Fold question=question.id fold="sheets" title="A whole gear set" about=Signal::derive(|| "one file of sheets".to_owned())
                inside=move || sheets::of_setups(state)/>
        })}
        <Fold question=question.id fold="rests" title="What this rests on" about=Signal::derive(|| "values and their sources".to_owned())
            inside=move || rests::view(state, question)/>
    }
}

fn rows_words(many: usize) -> String {
    if many == 1 { "1 row".into() } else { format!("{many} rows") }
}

fn all_figures(state: State, question: &'static Question) -> AnyView {
    let rows = rows::follow(state, move |source| rest_of(question, source));
    view! { <Rows rows name="all"/> }.into_any()
}

/// The rows of a question that do not stand among those that decide.
fn rest_of(question: &Question, source: Source<'_>) -> Vec<Row> {
    let section = question.section(source);
    section.rows.into_iter().skip(section.decide).collect()
}
