//! The parts of a build: used, here, or still to order, with the shelf's numbers, places and prices.

use crate::catalogue::Column;
use crate::catalogue::money::{self, Totals};
use crate::checklist;
use crate::job::parts::Needed;
use crate::questions::Source;
use crate::questions::checklists::{Judged, Template};
use crate::sheet::catalogue::stock;
use crate::sheet::{Cell, Piece, Row, Tone, Verdict};

/// How many parts to order are named in the row that decides.
const NAMED: usize = 3;

/// A list to begin with. Common practice, no published source.
pub(super) const USUAL: [Template; 1] = [Template {
    name: "what is usually renewed",
    steps: "\
Bearings:
Front bearing of the case
Rear bearing of the case
Spigot bearing or its rollers
Needles of the cluster
Seals and gaskets:
Front seal
Rear seal
Seals of the selector shafts
Gasket set
Small parts:
Synchronizer rings
Springs and keys of the hubs
Thrust washers
Circlips
Lock plates and split pins
Oil
",
}];

fn all(source: Source<'_>) -> Vec<Needed<'_>> {
    source.job.parts_needed(source.shelves.own)
}

/// What is to be said beside each line of the list.
pub fn judged(source: Source<'_>) -> Vec<Judged> {
    let mut judged = vec![Judged::default(); checklist::lines(&source.job.bench.build.parts).len()];
    for part in all(source) {
        if let Some(place) = part.line.and_then(|line| judged.get_mut(line)) {
            *place = Judged { wanted: shelf_said(&part), verdict: verdict(&part) };
        }
    }
    judged
}

/// How many are used, here and to order: the row that decides; none where there are no parts.
pub(super) fn deciding(source: Source<'_>) -> Option<Row> {
    let parts = all(source);
    if parts.is_empty() {
        return None;
    }
    let used = parts.iter().filter(|part| part.is_used).count();
    let short: Vec<&Needed<'_>> = parts.iter().filter(|part| part.to_order() > 0).collect();
    let here = parts.len() - used - short.len();
    let states = [(used, "used"), (here, "on the shelf"), (short.len(), "to order")];
    let states: Vec<String> = states.into_iter().filter(|(many, _)| *many > 0).map(|(many, words)| format!("{many} {words}")).collect();
    let mut cell = Cell::line([Piece::words(states.join(", "))]);
    if !short.is_empty() {
        let more = short.len().saturating_sub(NAMED);
        let more = if more == 0 { String::new() } else { format!(" and {more} more") };
        let named: Vec<String> = short.iter().take(NAMED).map(|part| ordered(part)).collect();
        cell = cell.and([Piece::caution(format!("order {}{more}", named.join("; ")))]);
    }
    Some(Row::of_one("parts", "Parts", cell))
}

/// Every part, and what they come to.
pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    let parts = all(source);
    let row = |(number, part): (usize, &Needed<'_>)| {
        let many = if part.many == 1 { String::new() } else { format!("{} of them", part.many) };
        let said: Vec<String> = [many, shelf_said(part)].into_iter().filter(|text| !text.is_empty()).collect();
        let words = (!said.is_empty()).then(|| Piece::words(said.join(", ")));
        let cell = Cell::default().and_maybe(words).and_maybe(verdict(part).map(Piece::Verdict));
        Row::of_one(format!("need-{number}"), part.named(), cell)
    };
    let mut rows: Vec<Row> = (1..).zip(&parts).map(row).collect();
    let mut totals = Totals::default();
    for (cost, currency) in parts.iter().filter_map(Needed::cost) {
        totals.add(cost, currency);
    }
    rows.extend((!totals.is_empty()).then(|| Row::of_one("need-total", "Parts come to", Cell::line([Piece::words(totals.shown())]))));
    rows
}

/// What the shelf and the line say of it: how many are there, where, what one costs.
fn shelf_said(part: &Needed<'_>) -> String {
    let there = part.entry.filter(|_| !part.is_used).map(stock);
    let place = part.entry.map(|entry| entry.text(Column::Place).trim().to_owned());
    let price = part
        .price
        .as_ref()
        .map(|(each, currency)| format!("{}{}", money::shown(*each, currency), if part.many > 1 { " each" } else { "" }));
    let said = [there, place, price].into_iter().flatten().filter(|text| !text.is_empty());
    said.collect::<Vec<_>>().join(", ")
}

fn verdict(part: &Needed<'_>) -> Option<Verdict> {
    let (tone, text) = match (part.is_used, part.to_order()) {
        (true, _) => (Tone::Good, "used".to_owned()),
        (false, 0) => return None,
        (false, many) if part.line.is_none() => (Tone::Caution, format!("order {many}, unless it is fitted already")),
        (false, many) => (Tone::Caution, format!("order {many}")),
    };
    Some(Verdict { tone, text })
}

fn ordered(part: &Needed<'_>) -> String {
    let many = part.to_order();
    if many == 1 { part.named() } else { format!("{many} × {}", part.named()) }
}
