//! The answer in a sentence or two: the likeliest cause, the next, and the test to begin with.

use super::answer::Fault;
use super::asked::called;
use super::read::Typed;
use crate::faults::{Given, Ranked};
use crate::questions::{Question, Source, Station, of_id};
use crate::sheet::Said;
use crate::sheet::said::open;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let fault = Fault::of(source);
    Station::at_bench(fault.first().map_or("by what it does", |first| &first.cause.name))
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let typed = Typed::of(source.job, source.shelves.faults());
    let fault = Fault::of(source);
    if fault.told.symptoms.is_empty() {
        let is_blank = typed.told.conditions.is_empty() && typed.told.results.is_empty();
        return Said::new(if is_blank { "" } else { "Choose what it does first." });
    }
    let contradiction = fault.contradictions.first().map(|pair| contradiction(&fault, *pair));
    let Some(first) = fault.first() else {
        return Said::of([contradiction.unwrap_or_default(), "Nothing listed fits all of that: take back what is least sure.".into()]);
    };
    Said::of([contradiction.unwrap_or_default(), named(&fault, first), test(&fault, first)])
}

/// `“slips” and “creeps with the clutch down” do not go together: take one out, or look for two faults.`
pub(super) fn contradiction(fault: &Fault<'_>, (one, other): (Given, Given)) -> String {
    format!("{} and {} do not go together: take one out, or look for two faults.", fault.quoted(one), fault.quoted(other))
}

fn named(fault: &Fault<'_>, first: &Ranked<'_>) -> String {
    let called = |ranked: &Ranked<'_>| called(&ranked.cause.name, ranked.cause.is_own);
    let name = called(first);
    if first.is_shown(&fault.told) {
        let together = &first.cause.together;
        let wear = if together.is_empty() { String::new() } else { format!(" Look at these with it: {together}.") };
        let measured = |question: &Question| format!(" Measured in {}.", open(question.id, &format!("“{}”", question.title)));
        let measured = of_id(&first.cause.measure).map_or_else(String::new, measured);
        return format!("Its test shows it: {name}.{wear}{measured}");
    }
    let next = fault.causes.get(1).filter(|next| next.points > 0);
    next.map_or_else(|| format!("Look first at this: {name}."), |next| format!("Look first at this: {name}; then {}.", called(next)))
}

/// The test to begin with.
fn test(fault: &Fault<'_>, first: &Ranked<'_>) -> String {
    let next = first.next_test(&fault.told).and_then(|(test, _)| fault.table.tests.get(test));
    match next {
        Some(test) if first.is_shown(&fault.told) => format!("To be sure: {}", test.ask),
        Some(test) => format!("Test: {}", test.ask),
        None => String::new(),
    }
}
