//! What the judgement of mixed parts rests on: the sets they come from, the sum the case takes, and how far a pair may be off.

use super::answer::{mixed, names};
use crate::gearing::check::SUM_TOLERANCE;
use crate::questions::Source;
use crate::questions::rests::{typed, typed_or, usual};
use crate::sheet::Rest;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let bench = &source.job.bench;
    let Some(Ok(mixed)) = mixed(bench, source.shelves.known_sets) else { return Vec::new() };
    let [cluster, input, gears] = names(bench);
    let mut rests = vec![typed("Cluster from", cluster)];
    let from = |label: &str, set: &str, chosen: &str| typed_or(!chosen.is_empty(), label, set, "the cluster’s set, where none is chosen");
    rests.push(from("Input gear from", input, &bench.mix_input));
    rests.push(from("Mainshaft gears from", gears, &bench.mix_gears));
    rests.extend(
        mixed
            .pairs
            .first()
            .map(|pair| usual("Tooth sum of the case", pair.wanted_sum.to_string(), "the commonest sum of the cluster’s set")),
    );
    let within = format!("up to {SUM_TOLERANCE} teeth");
    rests.push(usual(
        "A pair may be off by",
        within,
        "profile shift takes up so much, if the gears were cut for it; common practice, no published source",
    ));
    rests
}
