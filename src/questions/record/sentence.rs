//! The answer in a sentence or two: how many steps are open, the next one, what is out of its range.

use super::read::Typed;
use crate::questions::{Source, Station};
use crate::sheet::Said;
use crate::units::number;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let typed = Typed::of(source.job);
    Station::at_bench(match (typed.steps.len(), typed.open().count()) {
        (0, _) => "the order of work, ticked".into(),
        (_, 0) => "every step is done".into(),
        (_, open) => open_said(open),
    })
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let typed = Typed::of(source.job);
    if typed.steps.is_empty() {
        return Said::default();
    }
    let open = typed.open().count();
    if open == 0 {
        let many = typed.steps.len();
        return Said::new(if many == 1 { "The one step is done.".into() } else { format!("All {many} steps are done.") });
    }
    let outside: Vec<_> = typed.outside().collect();
    let outside = match outside.as_slice() {
        [] => String::new(),
        [one] => format!("“{}” is out of range: {} is wanted.", number::clip(&one.named()), one.wanted_said()),
        many => format!("{} readings are out of range.", many.len()),
    };
    let next = typed.open().find(|step| !step.is_outside());
    let next = next.map_or_else(String::new, |next| format!("Next: {}.", next.named().trim_end_matches('.')));
    Said::of([format!("{}, of {} in all.", open_said(open), typed.steps.len()), outside, next])
}

fn open_said(open: usize) -> String {
    if open == 1 { "1 step open".into() } else { format!("{open} steps open") }
}
