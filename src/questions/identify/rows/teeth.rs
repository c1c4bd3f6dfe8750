//! The combinations of teeth that print as they are printed, each as a gear set that a setup can take.

use super::super::answer::teeth;
use super::super::read::Evidence;
use super::LISTED;
use super::sets::ratios;
use crate::gearing::Layout;
use crate::gearing::identify::ladder::{Found, Outcome};
use crate::job::Gearbox;
use crate::problem::{Explain, capital};
use crate::questions::Source;
use crate::sheet::{Cell, Piece, Row};

/// What the search has come to, and the best of what it found.
pub(super) fn rows(source: Source<'_>, evidence: &Evidence) -> Vec<Row> {
    let Some(outcome) = teeth(source, evidence) else { return Vec::new() };
    let label = "Teeth by the printed ratios";
    match outcome {
        Err(why) => {
            let said = format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()));
            vec![Row::of_one("teeth", label, Cell::absent(said))]
        }
        Ok(outcome) => {
            let mut rows = vec![Row::of_one("teeth", label, Cell::line([Piece::words(said(&outcome))]))];
            let found = outcome.best.iter().take(LISTED).enumerate();
            rows.extend(found.filter_map(|(at, found)| found_row(at + 1, found, evidence.layout)));
            rows
        }
    }
}

/// What the search has come to, and what to do where nothing fits.
pub(super) fn said(outcome: &Outcome) -> String {
    match &outcome.nearest {
        Some(nearest) => format!("{}; {}", outcome.sentence(), nearest.what_to_do()),
        None => outcome.sentence(),
    }
}

fn found_row(number: usize, found: &Found, layout: Layout) -> Option<Row> {
    let gearbox = found.gearbox(layout)?;
    let typed = Gearbox::counted("From printed ratios", &gearbox);
    let constant = if typed.constant.is_empty() { String::new() } else { format!("{} with ", typed.constant) };
    let counts = format!("{constant}{}", typed.gears.join("  "));
    let cell = Cell::line(ratios(&format!("identify.teeth_{number}"), &gearbox));
    Some(Row::of_one(format!("teeth-{number}"), counts, cell.offering(typed.as_set())))
}
