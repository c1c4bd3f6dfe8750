//! What the figures of Fits and clearances rest on: the size a code is looked up at, how much both parts grow, how warm they get.

use super::read::Seated;
use super::rows::{ISO, room, said};
use crate::fits::seat::Wanted;
use crate::questions::rests::{PRACTICE, typed_or, usual};
use crate::questions::{Source, warmth};
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench.fits;
    let seated = Seated::of(&source.job.bench);
    if seated.bore.is_none() && seated.shaft.is_none() {
        return Vec::new();
    }
    let mut rests = Vec::new();
    if let Some((Wanted::Code(code), size)) = seated.wanted.as_ref().map(|(wanted, _)| wanted).zip(seated.nominal) {
        let size = said(source, size);
        rests.push(typed_or(
            !bench.nominal.is_blank(),
            "Nominal size",
            size,
            "the nearest whole mm or sixteenth of an inch to what was measured",
        ));
        rests.push(usual("Fit", code.written(), ISO));
    }
    if let Some([bore, shaft]) = seated.materials {
        let taken = |rest: Rest, is_blank: bool| {
            if is_blank { Rest { source: format!("where none is chosen; {}", rest.source), ..rest } } else { rest }
        };
        rests.push(taken(warmth::growth("Bore", bore), bench.bore_material.is_nothing()));
        rests.push(taken(warmth::growth("Shaft", shaft), bench.shaft_material.is_nothing()));
        rests.extend(warmth::rests(source, seated.temperatures));
    }
    rests.push(usual("Room to assemble a warm part", room(source), PRACTICE));
    rests.push(usual("Before any fit here", "the box’s own manual", "it knows loads, oil and bearings, which are not looked at"));
    rests
}
