//! What to fit, in words: the gears, the work, where they lie, and what the dial then reads.

use super::missing;
use crate::questions::dial::answer::Proposal;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece};
use crate::speedometer::{Candidate, Train, Work};
use crate::units::number;

/// Source of the order in which combinations are proposed.
const WORK: &str = "near enough is 0 to 4 % fast (SAE J2976, summary page); of those the least work, the shop’s own gears first (common practice, no published source)";

pub(super) fn cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let speedo = analysis.speedo();
    let Some((fitted, proposal)) = speedo.fitted.zip(speedo.proposal) else { return Cell::needed(missing(source, analysis)) };
    let mut line = vec![Piece::words(format!("{}:", in_words(fitted.train, &proposal)))];
    if let Some(check) = source.conditions.speedo.check {
        let reads = check * (1.0 + proposal.error);
        line.push(source.quantity("speedometer.fit_reads", &reads, 1).into());
    }
    let over = number::show(100.0 * proposal.error, 1);
    let filled = format!("{} × {} ÷ {} − 1 = {over} %", number::show(fitted.reads(), 4), proposal.train, fitted.train);
    let error = Figure::percent("speedometer.fit_error", proposal.error, 1).small();
    line.push(error.by("error = reading now × new drive ÷ driven, over drive ÷ driven fitted, − 1", filled, WORK).into());
    let lies = proposal.on_shelf.map_or_else(|| "not on the shelf: to order".to_owned(), |at| where_it_lies(source, analysis, &at));
    let work = if proposal.work == Work::Fitted { "near enough".to_owned() } else { format!("{}; {lies}", proposal.work.words()) };
    Cell::line(line).and([Piece::words(work)])
}

/// `fit the 22-tooth driven gear, keep the 8-tooth drive`.
pub fn in_words(fitted: Train, proposal: &Proposal) -> String {
    let (drive, driven) = (proposal.train.drive(), proposal.train.driven());
    match proposal.work {
        Work::Fitted => format!("keep {drive} drive, {driven} driven"),
        Work::Driven | Work::OtherDriven => format!("fit the {driven}-tooth driven gear, keep the {drive}-tooth drive"),
        Work::Adapter if fitted.adapter().is_some() => format!("fit {drive} drive, {driven} driven without the adapter"),
        Work::Drive | Work::Adapter => format!("fit {drive} drive, {driven} driven"),
    }
}

/// `: fit the 22-tooth driven gear, keep the 8-tooth drive`; nothing where what is fitted stays, or the needle is to be set first.
pub(super) fn advice(analysis: &Analysis) -> String {
    let speedo = analysis.speedo();
    if speedo.is_off_its_zero() {
        return ": set the needle first".into();
    }
    let better = speedo.fitted.zip(speedo.proposal).filter(|(_, proposal)| proposal.work != Work::Fitted);
    better.map_or_else(String::new, |(fitted, proposal)| format!(": {}", in_words(fitted.train, &proposal)))
}

/// `Curlew, in stock`.
pub(super) fn where_it_lies(source: Source<'_>, analysis: &Analysis, candidate: &Candidate) -> String {
    let gears = source.shelves.speedometer_gears;
    let fitted = analysis.setup.speedo.train;
    // The drive gear that stays in the car need not lie on the shelf.
    let stays = fitted.is_some_and(|fitted| fitted.drive() == candidate.train.drive());
    let needed = [Some(candidate.drive).filter(|_| !stays), Some(candidate.driven), candidate.adapter];
    let in_stock = needed.into_iter().flatten().filter_map(|at| gears.get(at)).all(|gear| gear.in_stock);
    let housing = gears.get(candidate.drive).map_or("", |gear| gear.housing.as_str());
    let stock = if in_stock { "in stock" } else { "to order" };
    format!("{housing}, {}", if fitted == Some(candidate.train) { "as fitted" } else { stock })
}
