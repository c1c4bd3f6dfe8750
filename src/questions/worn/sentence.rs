//! The answer in a sentence or two: what is renewed, what is watched.

use super::read::Typed;
use crate::faults::wear::State;
use crate::questions::{Source, Station};
use crate::sheet::Said;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let typed = Typed::of(source.job);
    let judged = typed.judged();
    let many = |state: State| judged.iter().filter(|(.., each)| *each == state).count();
    Station::at_bench(match (judged.len(), many(State::Scrap), many(State::Watch)) {
        (0, ..) => "by what is measured".into(),
        (_, 0, 0) => "all good".into(),
        (_, 0, watch) => format!("{watch} to watch"),
        (_, scrap, _) => format!("{scrap} to renew"),
    })
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let typed = Typed::of(source.job);
    let judged = typed.judged();
    let named = |state: State, words: &str| {
        let names: Vec<String> = judged.iter().filter(|(.., each)| *each == state).map(|(wear, ..)| short(&wear.name)).collect();
        if names.is_empty() { String::new() } else { format!("{words}: {}.", names.join(", ")) }
    };
    let all_good =
        (!judged.is_empty() && judged.iter().all(|(.., state)| *state == State::Good)).then_some("All that was measured is good.");
    Said::of([named(State::Scrap, "Past the limit"), named(State::Watch, "Watch"), all_good.unwrap_or_default().to_owned()])
}

/// The wear without how it is measured.
fn short(name: &str) -> String {
    name.split(':').next().unwrap_or(name).to_lowercase()
}
