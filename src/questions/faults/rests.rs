//! What the answer about a fault rests on: what was said, and the weights.

use super::answer::Fault;
use super::read::Typed;
use crate::faults::Given;
use crate::faults::rank::{AGAINST, FITS, REFUTED, SHOWN, USUAL};
use crate::questions::Source;
use crate::questions::rests::{PRACTICE, typed, usual};
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let fault = Fault::of(source);
    if fault.told.symptoms.is_empty() {
        return Vec::new();
    }
    let table = fault.table;
    let told = Typed::of(source.job, table).told;
    let said = |given: Vec<Given>| given.into_iter().map(|given| table.said(given)).collect::<Vec<_>>().join(", ");
    let mut rests = vec![typed("What it does", said(told.symptoms.iter().copied().map(Given::Symptom).collect()))];
    let conditions: Vec<Given> = told.conditions.iter().copied().map(Given::Condition).collect();
    if !conditions.is_empty() {
        rests.push(typed("When", said(conditions)));
    }
    let follows = |at: &usize| !told.conditions.contains(at);
    let implied: Vec<Given> = fault.told.conditions.iter().copied().filter(follows).map(Given::Condition).collect();
    if !implied.is_empty() {
        rests.push(usual("So it is", said(implied), "from what was chosen; 4th counts as direct where setup A has no gears"));
    }
    for (test, answer) in &told.results {
        let ask = table.tests.get(*test).map_or("", |test| &test.ask);
        rests.push(typed(ask, if *answer { "yes" } else { "no" }));
    }
    if let Some(own) = source.shelves.own_rows.filter(|own| own.taken > 0) {
        rests.push(typed("Rows of the shop’s own beside the table", own.taken.to_string()));
    }
    rests.push(usual("Symptom: usual, one of several, rare", format!("{}, {}, {} points", 3 * USUAL, 2 * USUAL, USUAL), PRACTICE));
    rests.push(usual("Condition that fits, that speaks against it", format!("{FITS}, −{} points", -AGAINST), PRACTICE));
    rests.push(usual("Test as the cause would have it, otherwise", format!("{SHOWN}, −{} points", -REFUTED), PRACTICE));
    rests.push(usual("How far in: nothing comes off, outside, gearbox out, inside", "0, −1, −2, −3 points", PRACTICE));
    rests.push(usual("Its test: costs nothing, a tool or a helper, a part comes off", "0, −1, −2 points", PRACTICE));
    rests
}
