//! What the figures of Measure a gear rest on: how far readings may be off, what is taken where nothing tells it, what wear may be.

use super::answer::{Known, MateFrom};
use super::read::Measured;
use super::said;
use crate::questions::Source;
use crate::questions::rests::{PRACTICE, typed_or, usual};
use crate::sheet::Rest;
use crate::toothform::known::readings::print_give_or_take;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench.measure;
    let measured = Measured::of(&source.job.bench);
    let Some(known) = Known::of_measured(&measured) else { return Vec::new() };
    let readings = &known.readings;
    let give_or_take = said::length(source, readings.give_or_take);
    let mut rests = vec![
        typed_or(!bench.give_or_take.is_blank(), "Lengths give or take", give_or_take, format!("a caliper; {PRACTICE}")),
        usual("Pitches tried", "modules 1 to 12, 2 to 24 DP, all normal", "ISO 54 and the usual diametral pitches (from memory)"),
        usual("Tooth heights tried", "full depth 1 and 1.25, stub 0.8 and 1 modules", "ISO 53; American stub of 1932 (from memory)"),
    ];
    if readings.has_flanks() {
        rests.push(usual("Pressure angles tried", "14.5, 17.5, 20, 22.5 and 25°", PRACTICE));
        rests.push(usual("Flanks may have lost", "8 % of a module over a span", PRACTICE));
    } else {
        rests.push(usual("Pressure angle", "20°, until a span is measured", "ISO 53"));
    }
    if readings.print.is_some() {
        rests.push(usual("Print gives or takes", said::angle(print_give_or_take()), PRACTICE));
    } else if readings.lead.is_none() {
        rests.push(usual("Teeth", "straight, until a print or a lead is typed", "what is not typed"));
    }
    if readings.over_tips.is_some() && !readings.teeth.count().is_multiple_of(2) {
        let value = if readings.print.is_some() && readings.face.is_none() {
            "taken as the whole diameter: type the face width if it is narrow"
        } else {
            "put right for the gap opposite each tooth"
        };
        rests.push(usual("Over the tips of an odd count", value, "from the geometry of the tips, no published source"));
    }
    if known.with_mate.is_some_and(|with| with.from == MateFrom::CutToMatch) {
        rests.push(usual("The mate", "cut to match this centre distance, and unworn", "until its span or the backlash is typed"));
    }
    rests
}
