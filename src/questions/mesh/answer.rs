//! Parts of up to three sets put together: each pair judged, and the box they make.

use crate::gearing::Gearbox;
use crate::gearing::mix::{Donor, MixError, Mixed, Mixture, mix};
use crate::job::Bench;
use crate::questions::Known;

/// The parts put together; `None` until the cluster's set is chosen. A set not chosen is the cluster's.
pub fn mixed(bench: &Bench, shelf: &[Known<Gearbox>]) -> Option<Result<Mixed, MixError>> {
    (!bench.mix_cluster.is_empty()).then(|| mixture(bench, shelf))
}

fn mixture(bench: &Bench, shelf: &[Known<Gearbox>]) -> Result<Mixed, MixError> {
    let [cluster, input, gears] = names(bench);
    let [cluster, input, line] = [donor(cluster, shelf)?, donor(input, shelf)?, donor(gears, shelf)?];
    let gears = vec![line; line.gearbox.gears().len()];
    mix(&Mixture { constant: input, cluster, gears: &gears, sum: None, centre: None })
}

/// The sets of the cluster, the input gear and the mainshaft gears by name.
pub fn names(bench: &Bench) -> [&str; 3] {
    let cluster = bench.mix_cluster.as_str();
    [cluster, &bench.mix_input, &bench.mix_gears].map(|name| if name.is_empty() { cluster } else { name })
}

fn donor<'a>(name: &'a str, shelf: &'a [Known<Gearbox>]) -> Result<Donor<'a>, MixError> {
    let known = shelf.iter().find(|known| known.entry.title() == name);
    known.map(|known| Donor { name, gearbox: &known.part, cut: None }).ok_or_else(|| MixError::NoSuchSet { set: name.to_owned() })
}
