//! The answer of Swap in a sentence: what each box needs in place of A's, and the cheapest measurement that is still missing.

use super::judged::{Stands, judged};
use super::read::Swap;
use crate::questions::alike::say;
use crate::questions::{Analysis, Source, Station};
use crate::sheet::Said;
use crate::sheet::said::{mark, marks};

/// A measurement, and whether a box lacks it.
type Measurement = (&'static str, fn(&Swap) -> bool);

/// What is measured first: no tool, a tape, a caliper, a tape again with the box out.
const CHEAPEST_FIRST: [Measurement; 9] = [
    ("count the splines of the input", |swap| swap.input_spline.is_none()),
    ("a tape from the case face to the output flange", |swap| swap.length.is_none()),
    ("a tape from the case face to the mount", |swap| swap.mount.is_none()),
    ("a tape from the case face to the lever", |swap| swap.lever.is_none()),
    ("a caliper over the splines of the input", |swap| swap.input_spline.is_some_and(|spline| spline.outside.is_none())),
    ("a caliper on the spigot", |swap| swap.spigot.is_none()),
    ("a rule from the case face to the nose of the input shaft", |swap| swap.nose.is_none()),
    ("a gasket laid on the bolt holes", |swap| swap.holes.is_none()),
    ("count the splines of the output", |swap| swap.output_spline.is_none()),
];
/// The most parts of a box that are named.
const MOST_NAMED: usize = 5;

/// How many parts are to be made or moved, for every setup but A.
pub fn station(source: Source<'_>) -> Station {
    Station::of(source, "to make or move, against A", |analysis| {
        let judged = judged(source, analysis);
        let is_a = source.setups.first().is_some_and(|first| first.setup.id == analysis.setup.id);
        (!is_a && !judged.is_empty())
            .then(|| judged.iter().filter(|part| matches!(part.stands, Stands::ToMake | Stands::CannotBe)).count().to_string())
    })
}

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    if source.setups.len() < 2 {
        return Said::new("[A] is the box that the car had: add the other one as a setup.");
    }
    let boxes = source.setups.iter().enumerate().skip(1).map(|(column, analysis)| of_box(source, column, analysis));
    Said::of(boxes.chain([copies(source), next(source)]))
}

/// `[B] has the sizes of [A]: measure it if it is another box.`
fn copies(source: Source<'_>) -> String {
    // What other questions ask for too is no size of the box.
    let bare = |swap: &Swap| Swap { plate: None, hand: None, cable: None, ..swap.clone() };
    let Some(old) = source.setups.first().map(|first| &first.setup.swap).filter(|old| bare(old) != Swap::default()) else {
        return String::new();
    };
    let alike = (0..).zip(source.setups).skip(1).filter(|(_, analysis)| analysis.setup.swap == *old);
    let columns: Vec<usize> = alike.map(|(column, _)| column).collect();
    let one = if columns.len() == 1 { "it if it" } else { "each that" };
    if columns.is_empty() {
        String::new()
    } else {
        format!("{} the sizes of [A]: measure {one} is another box.", say(&columns, "has", "have"))
    }
}

/// `[B]: driveshaft 38 mm shorter: …; mount 21 mm further back; the lever comes up 15 mm behind the hole.`
fn of_box(source: Source<'_>, column: usize, analysis: &Analysis) -> String {
    let judged = judged(source, analysis);
    let of = |stands: Stands| judged.iter().filter(move |part| part.stands == stands).map(|part| part.says.clone());
    let mut open: Vec<String> = [Stands::CannotBe, Stands::ToMake, Stands::ToMeasure].into_iter().flat_map(of).collect();
    if judged.is_empty() {
        return String::new();
    }
    if open.is_empty() {
        open = of(Stands::AsOld).collect();
    }
    let left = open.len().saturating_sub(MOST_NAMED);
    open.truncate(MOST_NAMED);
    if left > 0 {
        open.push(format!("{left} more below"));
    }
    format!("{}: {}.", mark(column), open.join("; "))
}

/// `Cheapest to measure next: count the splines of the input, [B].`
fn next(source: Source<'_>) -> String {
    let lacking = |lacks: fn(&Swap) -> bool| {
        (0..).zip(source.setups).filter(|(_, analysis)| lacks(&analysis.setup.swap)).map(|(column, _)| column).collect::<Vec<usize>>()
    };
    let first = CHEAPEST_FIRST.iter().map(|(words, lacks)| (words, lacking(*lacks))).find(|(_, columns)| !columns.is_empty());
    first.map_or_else(String::new, |(words, columns)| format!("Cheapest to measure next, on {}: {words}.", marks(&columns)))
}
