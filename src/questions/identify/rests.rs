//! What the figures of Identify rest on: how well turns were read, which counts are plausible, what a case takes.

use super::read::{Evidence, text};
use crate::gearing::check::SUM_TOLERANCE;
use crate::gearing::identify::tooth_pairs::Counts;
use crate::job::BenchField;
use crate::questions::Source;
use crate::questions::rests::{PRACTICE, typed, typed_or, usual};
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench;
    let evidence = Evidence::of(bench);
    let mut rests = Vec::new();
    if evidence.is_of_a_box() {
        let layout = evidence.layout.words();
        rests.push(typed_or(bench.layout.given().is_some(), "Gearbox layout", layout, "where none is chosen"));
    }
    if evidence.turned.is_some() {
        rests.push(read_to(source, "Output read to", BenchField::Uncertainty));
    }
    if !evidence.counted.is_empty() {
        let within = format!("within {SUM_TOLERANCE} teeth");
        rests.push(usual("Tooth sums of one case", within, format!("profile shift takes up no more; {PRACTICE}")));
    }
    if !evidence.printed.is_empty() {
        rests.push(limits(source, evidence.limits));
    }
    if evidence.axle.is_some() {
        rests.push(read_to(source, "Wheel read to", BenchField::WheelUncertainty));
        rests.push(wheels(evidence.is_wheel_held));
        let Counts { driver, driven } = Counts::of_axle();
        let counts = format!("pinion {} to {}, ring {} to {}", driver.start(), driver.end(), driven.start(), driven.end());
        rests.push(usual("Tooth pairs looked for", counts, PRACTICE));
    }
    rests
}

/// How well a part of a turn was read.
fn read_to(source: Source<'_>, label: &str, field: BenchField) -> Rest {
    match text(&source.job.bench, field).trim() {
        "" => usual(label, "1/20 of a turn", format!("by eye, against a mark; {PRACTICE}")),
        text => typed(label, format!("“{text}” of a turn")),
    }
}

/// The fewest and the most teeth a gear of the printed ratios may have.
fn limits(source: Source<'_>, [fewest, most]: [u16; 2]) -> Rest {
    let is_blank = |field: BenchField| text(&source.job.bench, field).trim().is_empty();
    let counts = format!("{fewest} to {most} teeth");
    typed_or(!(is_blank(BenchField::Fewest) && is_blank(BenchField::Most)), "Gears looked for", counts, PRACTICE)
}

fn wheels(is_one_held: bool) -> Rest {
    if is_one_held {
        typed("Wheels", "one held, so the other turns twice as far")
    } else {
        usual("Wheels", "both turned alike", "where nothing else is chosen")
    }
}
