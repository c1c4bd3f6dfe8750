//! What the figures of For the cutter rest on: tool, backlash, split.

use super::answer::Order;
use super::sentence::rule_said;
use crate::questions::Source;
use crate::questions::measure::said::length;
use crate::questions::rests::{typed_or, usual};
use crate::sheet::Rest;
use crate::toothform::pins;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench.cutter;
    let Some(order) = Order::of(&source.job.bench) else { return Vec::new() };
    let is_typed = !bench.backlash_least.is_blank() || !bench.backlash_most.is_blank();
    let mut rests = vec![usual(
        "Rack of the tool",
        order.rack.said(),
        if bench.rack.is_nothing() { "where none is chosen; ISO 53" } else { "as chosen; ISO 53" },
    )];
    rests.push(match (order.row, order.backlash) {
        (Some(row), _) => usual(
            "Tooth allowance",
            format!("{}, each gear by its own pitch diameter", row.said()),
            "DIN 3967:1978; rows a, cd, h and series 21, 25, 27 read in part, the others from memory",
        ),
        (None, backlash) => {
            let [least, most] = backlash.unwrap_or_default().map(|backlash| length(source, backlash));
            let backlash = format!("{least} to {most}, half on each gear");
            typed_or(is_typed, "Backlash", backlash, "3 to 6 hundredths of a module; common practice, no published source")
        }
    });
    if let Some(relief) = order.relief.filter(|_| bench.relief_from.is_blank()) {
        let from = length(source, relief.from);
        rests.push(usual("Relief begins on", from, "half a module below the tip; common practice, no published source"));
    }
    if order.contact().is_some_and(|contact| contact.relieved.is_some()) {
        let ends = "taken to end where this gear’s tip relief begins";
        rests.push(usual("Contact with relief", ends, "relieved flanks touch under load only; common practice, no published source"));
    }
    if order.pair.is_some() && order.wanted.profile_shift.is_none() {
        rests.extend(order.wanted.split.map(|rule| {
            usual("Split of the profile shifts", rule_said(rule), "sum by ISO 21771:2007, equation 62; the split is a choice")
        }));
    }
    let pin = length(source, order.pin);
    rests.push(typed_or(!bench.pin.is_blank(), "Pin to check with", pin, "1.728 × module, Machinery’s Handbook"));
    if pins::lay(&order.gear, order.pin).is_ok() {
        rests.push(usual("Contents", "the data block of a gear drawing", "ISO 1340 (from memory)"));
    }
    rests
}
