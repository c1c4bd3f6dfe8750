//! What the figures of End play and shims rest on: how much case and shaft grow, how warm they get, what a pack may be.

use super::read::Measured;
use super::rows::kit_said;
use crate::fits::Material;
use crate::fits::shims::MOST_IN_A_PACK;
use crate::questions::Source;
use crate::questions::rests::usual;
use crate::questions::warmth;
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench.endplay;
    let measured = Measured::of_source(source);
    if measured.stack.is_none() {
        return Vec::new();
    }
    let mut rests = Vec::new();
    if let Some(case) = measured.case {
        let case = warmth::growth("Case", case);
        rests.push(if bench.case.is_nothing() { Rest { source: format!("where none is chosen; {}", case.source), ..case } } else { case });
        rests.push(warmth::growth("Shaft, parts and shims", Material::Steel));
        rests.extend(warmth::rests(source, measured.temperatures));
    }
    if measured.is_kit_of_shelf {
        rests.push(usual("Shims", kit_said(&measured.kit), "where none are typed: those of the shop’s own shelf"));
    }
    if measured.wanted.is_some() {
        let most = format!("{MOST_IN_A_PACK} at most");
        rests.push(usual("Shims in one pack", most, "a thicker pack springs; common practice, no published source"));
    }
    rests.push(usual(
        "Usual end play",
        "0.002 to 0.005 in (0.05 to 0.13 mm) for the cluster of a small box",
        "common practice of builders, no published source: the box’s own manual rules",
    ));
    rests
}
