//! Printed ratios that the counts contradict, and lists the wrong way round.

use super::super::read::Evidence;
use crate::gearing::identify::misprint::{Misprint, WrongOrder, inverted, misprints, wrong_order};
use crate::gearing::identify::printed::Figure;
use crate::gearing::teeth::decimal;
use crate::problem::capital;
use crate::sheet::{Cell, Piece, Row};
use crate::units::number;

/// What is doubtful about the printed ratios, a caution each.
pub(super) fn rows(evidence: &Evidence) -> Vec<Row> {
    let doubts = doubts(evidence).into_iter().enumerate();
    doubts.map(|(at, doubt)| Row::of_one(format!("misprint-{}", at + 1), "Printed ratios", Cell::line([Piece::caution(doubt)]))).collect()
}

/// What is doubtful about the printed ratios, each a sentence without its full stop.
pub(super) fn doubts(evidence: &Evidence) -> Vec<String> {
    let order = wrong_order(&evidence.printed).map(|order| out_of_order(order, &evidence.printed));
    let wrong = misprints(&evidence.printed, &evidence.counted, evidence.layout);
    // A list the wrong way round contradicts every count, and saying so once is enough.
    match order {
        Some(order) => vec![order],
        None => wrong.iter().map(misprinted).collect(),
    }
}

fn out_of_order(order: WrongOrder, printed: &[Figure]) -> String {
    match order {
        WrongOrder::OutputPerInput => {
            let turned: Vec<String> = printed.iter().map(inverted).collect();
            format!("these look like turns of the output for one of the input: type {}", turned.join(" "))
        }
        WrongOrder::TopFirst => {
            let turned: Vec<String> = printed.iter().rev().map(Figure::shown).collect();
            format!("these run from top down to 1st: type {}", turned.join(" "))
        }
    }
}

/// `1st is printed 2.74 and counted 2.467: two digits are swapped`.
fn misprinted(wrong: &Misprint) -> String {
    let counted = number::show(decimal(wrong.counted), 3);
    let why = if wrong.is_swapped { "two digits of the print are swapped" } else { "count again, or the print is of another set" };
    capital(&format!("{} is printed {} and counted {counted}: {why}", wrong.gear, wrong.printed.shown()))
}
