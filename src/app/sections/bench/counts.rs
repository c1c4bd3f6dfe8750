//! From counted teeth.

use leptos::prelude::*;

use super::{Known, LISTED, candidates, field, found, more, question};
use crate::app::state::State;
use crate::catalogue::Column;
use crate::gearing::identify::counts::{ByCounts, NextCount};
use crate::job::{BenchField, Gearbox};
use crate::problem::{Explain, Problem, capital};
use crate::questions::identify::answer as bench;

/// The counted teeth and the sets they can be.
pub(super) fn panel(sets: Memo<Vec<Known>>) -> impl IntoView {
    let state = State::here();
    let fields = view! {
        {field(BenchField::Constant, "input pair", "?/30")}
        {field(BenchField::First, "1st", "37/?")}
        {field(BenchField::Second, "2nd", "")}
        {field(BenchField::Third, "3rd", "")}
        {field(BenchField::Fourth, "4th", "")}
        {field(BenchField::Fifth, "5th", "")}
        {field(BenchField::Sixth, "6th", "")}
        {field(BenchField::Reverse, "reverse", "33/16")}
        {field(BenchField::Anywhere, "place not known", "23 18")}
    };
    let answer = move || {
        let mut problems = Vec::new();
        let answer = sets.with(|sets| state.job.with(|job| bench::from_counts(&job.bench, &candidates(sets), &mut problems)));
        view! {
            {problems.iter().map(|problem: &Problem| view! { <p class="field__problem">{state.say(&problem.sentence())}</p> }).collect_view()}
            {answer.map(|answer| sets.with(|sets| shown(state, sets, &answer)))}
        }
    };
    question(
        "Counted teeth",
        "As many as are known, a question mark for the rest: the gear on the input and output line over the countershaft’s.",
        fields,
        answer,
    )
}

fn shown(state: State, sets: &[Known], answer: &ByCounts) -> impl IntoView + use<> {
    let fitting: Vec<usize> = answer.fitting().collect();
    let head = match fitting.len() {
        0 => answer
            .nothing
            .as_ref()
            .map_or_else(String::new, |nothing| format!("{}. {}.", capital(&nothing.what()), capital(&nothing.what_to_do()))),
        1 => "One gear set of the catalogue fits.".into(),
        many => format!(
            "{many} gear sets of the catalogue fit. {}",
            answer.next.as_ref().map_or_else(String::new, |next| next_words(sets, next))
        ),
    };
    let clashes = answer.clashes.iter().map(|clash| view! { <p class="field__problem">{state.say(&format!("{}. {}.", capital(&clash.what()), capital(&clash.what_to_do())))}</p> }).collect_view();
    let many = fitting.len();
    let lines = fitting.into_iter().take(LISTED).filter_map(|at| sets.get(at)).map(|known| {
        let teeth = [known.set.text(Column::Maker), known.set.text(Column::Constant), &known.set.gears().join("  ")].join(" · ");
        found(state, known.set.title().to_owned(), teeth, Gearbox::picked(&known.set))
    });
    view! { {clashes} <p>{state.say(&head)}</p> <ul class="bench__list">{lines.collect_view()}{more(many)}</ul> }
}

/// Which count would tell the rest apart.
fn next_words(sets: &[Known], next: &NextCount) -> String {
    let layout = sets.first().map_or_else(Default::default, |known| known.gearbox.layout());
    format!("Count the {} next: that parts them into {} groups.", next.part.name(layout), next.outcomes.len())
}
