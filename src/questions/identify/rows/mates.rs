//! The missing mates of counted gears by the tooth sum of the case, the box they make, and the sets of the shelf with that sum.

use super::super::read::Evidence;
use super::sets::ratios;
use crate::catalogue::case::{CaseFit, CaseNeeds, fit};
use crate::gearing::identify::mates::{Mate, Mates, mates};
use crate::gearing::part::Part;
use crate::gearing::teeth::decimal;
use crate::job::Gearbox;
use crate::questions::Source;
use crate::questions::alike::listed;
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::number;

/// Where one tooth sum for all pairs comes from.
const SUM: &str =
    "one centre distance holds one tooth sum at one pitch (any textbook of gears); profile shift may make one tooth of difference";
/// The most sets of the shelf that are named.
const MOST_NAMED: usize = 4;

/// The missing mates of what was counted.
pub(super) fn found(evidence: &Evidence) -> Option<Mates> {
    mates(&evidence.counted, evidence.layout)
}

/// The mates, the ratios they make, and the sets that share the case.
pub(super) fn rows(source: Source<'_>, evidence: &Evidence) -> Vec<Row> {
    let Some(mates) = found(evidence) else { return Vec::new() };
    let cell = mates.missing.iter().fold(Cell::default(), |cell, mate| {
        let figure = Figure::number(format!("identify.mate_{}", key(mate.at)), f64::from(mate.teeth.count()), 0);
        let worked = Worked::of(f64::from(mates.sum), 0).minus(f64::from(mate.partner.count()), 0);
        cell.and([figure.worked("mate = tooth sum of the case − counted teeth", worked, SUM).into(), Piece::words(beside(mate))])
    });
    let mut rows = vec![Row::of_one("mates", "Missing mates", cell)];
    if let Some(gearbox) = &mates.gearbox {
        let cell = Cell::line(ratios("identify.mates", gearbox)).and([Piece::words(assumed(&mates))]);
        let set = Gearbox::counted("From the bench", gearbox).as_set();
        rows.push(Row::of_one("mates-ratios", "Ratios with these mates", cell.offering(set)));
    }
    let sets = sets_of_that_sum(source, &mates);
    if !sets.is_empty() {
        rows.push(Row::of_one("mates-sets", "Sets with that tooth sum", Cell::line([Piece::words(named(&sets))])));
    }
    rows
}

/// What the ratios of the mates rest on.
fn assumed(mates: &Mates) -> &'static str {
    let has_direct = mates.gearbox.as_ref().is_some_and(|gearbox| gearbox.gears().iter().any(|gear| gear.is_direct()));
    if has_direct { "with a direct top gear, and no profile shift" } else { "without profile shift" }
}

/// The sets of the shelf that share the case by layout and tooth sums.
fn sets_of_that_sum<'a>(source: Source<'a>, mates: &Mates) -> Vec<&'a str> {
    let Some(gearbox) = &mates.gearbox else { return Vec::new() };
    let needs = CaseNeeds::of(Some(gearbox), "", None);
    let fits = source.shelves.gear_sets.iter().filter(|known| matches!(fit(&known.entry.case_needs(), &needs), CaseFit::BySums { .. }));
    fits.map(|known| known.entry.title()).collect()
}

fn named(sets: &[&str]) -> String {
    let first: Vec<String> = sets.iter().take(MOST_NAMED).map(|set| (*set).to_owned()).collect();
    match sets.len().checked_sub(MOST_NAMED) {
        None | Some(0) => listed(&first),
        Some(more) => format!("{} and {more} more", first.join(", ")),
    }
}

/// `for the 33 of the input pair`.
fn beside(mate: &Mate) -> String {
    format!("for the {} of {}", mate.partner, pair(mate.at))
}

fn pair(part: Part) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => gear.to_string(),
        _ => "the input pair".into(),
    }
}

fn key(part: Part) -> String {
    match part {
        Part::Driver(gear) | Part::Driven(gear) => format!("gear_{}", gear.number()),
        _ => "constant".into(),
    }
}

/// `The case takes a tooth sum of 53 (36 + 17): the missing mates are 20 (the input pair), 29 (2nd) and 26 (3rd). …`
pub(super) fn said(source: Source<'_>, evidence: &Evidence) -> Option<Vec<String>> {
    let mates = found(evidence)?;
    let missing: Vec<String> = mates.missing.iter().map(|mate| format!("{} ({})", mate.teeth, pair(mate.at))).collect();
    let (are, mates_word) = if missing.len() == 1 { ("is", "mate") } else { ("are", "mates") };
    let counted = mates.counted;
    let mut said = vec![format!(
        "The case takes a tooth sum of {} ({} + {}): the missing {mates_word} {are} {}.",
        mates.sum,
        counted.driver,
        counted.driven,
        listed(&missing)
    )];
    said.extend(mates.gearbox.as_ref().map(|gearbox| {
        let shown: Vec<String> = gearbox.ratios().iter().map(|ratio| number::show(decimal(*ratio).abs(), 2)).collect();
        format!("The ratios are then {}.", shown.join(", "))
    }));
    let sets = sets_of_that_sum(source, &mates);
    said.push(match sets.len() {
        0 => "No gear set in the catalogue has that sum.".into(),
        1 => format!("{} has that sum.", named(&sets)),
        _ => format!("{} have that sum.", named(&sets)),
    });
    Some(said)
}
