//! What a tag can mean, and the axle by the speedometer's cable or dial.

use super::super::answer::tag::{by_cable, tagged};
use super::super::read::Evidence;
use super::LISTED;
use super::said::fit_said;
use crate::gearing::FinalDrive;
use crate::gearing::identify::reading::Interval;
use crate::gearing::identify::turns::axles_by_turns;
use crate::gearing::teeth::{Ratio, decimal};
use crate::questions::alike::either;
use crate::questions::{Known, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::number;

/// The most meanings of a tag that are named in a sentence.
const NAMED: usize = 4;

/// A row for each meaning of the tag, and one for the cable.
pub(super) fn rows(source: Source<'_>, evidence: &Evidence) -> Vec<Row> {
    let meanings = tagged(evidence, source.shelves.axles);
    let mut rows: Vec<Row> = meanings.iter().take(LISTED).enumerate().map(|(at, meaning)| tag_row(source, at, *meaning)).collect();
    if meanings.is_empty() && !evidence.tag.is_empty() {
        rows.push(Row::of_one("tag-none", "Tag", Cell::line([Piece::caution(CONTRADICTED)])));
    }
    rows.extend(cable_row(source, evidence));
    rows
}

/// Said where turns and tag are of different axles.
const CONTRADICTED: &str = "the turns contradict the tag: the gears may have been changed since, or a figure is misread";

fn tag_row(source: Source<'_>, at: usize, (drive, place): (FinalDrive, Option<usize>)) -> Row {
    let figure = Figure::ratio(format!("identify.tag_{}.ratio", at + 1), drive.ratio(), 3);
    let cell = Cell::line([figure.into(), Piece::words(if place.is_some() { "in the catalogue" } else { "not in the catalogue" })]);
    let known = place.and_then(|place| source.shelves.axles.get(place));
    let cell = known.map_or(cell.clone(), |known| cell.offering(known.entry.clone()));
    Row::of_one(format!("tag-{}", at + 1), format!("Tag: {}", named(drive)), cell)
}

/// `43/10`, or `3.540`.
fn named(drive: FinalDrive) -> String {
    match drive {
        FinalDrive::Pair(mesh) => format!("{}/{}", mesh.driven, mesh.driver),
        FinalDrive::Plain(ratio) => number::show(decimal(ratio), 2),
    }
}

fn cable_row(source: Source<'_>, evidence: &Evidence) -> Option<Row> {
    let label = "Axle by the cable";
    if evidence.cable.is_none() && evidence.dial.is_none() {
        return None;
    }
    let Some(interval) = by_cable(source, evidence) else {
        return Some(Row::of_one("cable", label, Cell::needed("needs the tyre and the speedometer gears of setup A")));
    };
    let middle = (interval.least + interval.greatest) / Ratio::from_integer(2);
    let figure = Figure::ratio("identify.cable.ratio", middle, 2);
    let how = if evidence.cable.is_some() { "by the cable" } else { "if the dial reads true" };
    let cell = Cell::line([figure.into(), Piece::words(format!("{how}, with the tyre and the speedometer gears of setup A; to 2 %"))]);
    Some(Row::of_one("cable", label, cell))
}

/// What tag and cable say, in sentences.
pub(super) fn said(source: Source<'_>, evidence: &Evidence) -> Vec<String> {
    tag_said(source, evidence).into_iter().chain(cable_said(source, evidence)).collect()
}

fn tag_said(source: Source<'_>, evidence: &Evidence) -> Option<String> {
    if evidence.tag.is_empty() {
        return None;
    }
    let meanings = tagged(evidence, source.shelves.axles);
    let names: Vec<String> =
        meanings.iter().map(|(drive, _)| format!("{} ({})", named(*drive), number::show(decimal(drive.ratio()), 2))).collect();
    let turn = if evidence.axle.is_none() { ": a tag outlives a change of gears, so turn the axle to be sure" } else { "" };
    Some(match meanings.as_slice() {
        [] => "The turns contradict the tag: the gears may have been changed since, or a figure is misread.".into(),
        [(FinalDrive::Plain(ratio), _)] => format!("The tag says {}{turn}.", number::show(decimal(*ratio), 2)),
        _ if names.len() > NAMED => format!("The tag can mean {} pairs: turn the axle to tell them apart.", names.len()),
        _ => format!("The tag says {}{turn}.", either(&names)),
    })
}

fn cable_said(source: Source<'_>, evidence: &Evidence) -> Option<String> {
    let interval = by_cable(source, evidence)?;
    let middle = number::show(decimal((interval.least + interval.greatest) / Ratio::from_integer(2)), 2);
    let names = inside(interval, source.shelves.axles);
    let by = if evidence.cable.is_some() { "By the cable" } else { "If the dial reads true" };
    let fit = if names.is_empty() { "No ring and pinion in the catalogue is near.".into() } else { fit_said("ring and pinion", &names) };
    Some(format!("{by} the axle is about {middle}, with the tyre and gears of setup A. {fit}"))
}

fn inside(interval: Interval, shelf: &[Known<FinalDrive>]) -> Vec<String> {
    let drives: Vec<FinalDrive> = shelf.iter().map(|known| known.part).collect();
    let found = axles_by_turns(interval, &drives);
    found.fitting().filter_map(|at| shelf.get(at)).map(|known| known.entry.title().to_owned()).collect()
}
