//! Parts of up to three sets put together: each pair judged, and the box they make.

use crate::catalogue::case::{CaseFit, CaseNeeds, fit};
use crate::catalogue::{Column, Entry};
use crate::gearing::Gearbox;
use crate::gearing::mix::{Donor, MixError, Mixed, Mixture, mix};
use crate::job::Bench;
use crate::questions::{Known, Source, case};

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
    known.map(|known| Donor { name, gearbox: &known.part, cut: None }).ok_or_else(|| MixError::NoSuchSet(name.to_owned()))
}

/// Whether the parts put together go into the case of setup A; none where there are none, or A has no gears yet.
///
/// They are known for a case where each of the sets is.
pub fn fits_first(source: Source<'_>, mixed: &Mixed) -> Option<CaseFit> {
    let entry = |name: &str| source.shelves.known_sets.iter().find(|known| known.entry.title() == name).map(|known| &known.entry);
    let each: Vec<Vec<String>> = names(&source.job.bench).into_iter().filter_map(entry).map(families).collect();
    let shared = |family: &&String| each.iter().all(|families| families.iter().any(|other| other.eq_ignore_ascii_case(family)));
    let named: Vec<String> = each.first()?.iter().filter(shared).cloned().collect();
    let needs = CaseNeeds { families: named, ..CaseNeeds::of(Some(&mixed.gearbox), "", None) };
    Some(fit(&needs, &case::of_first(source)?))
}

/// The cases that a set is known to go into.
fn families(set: &Entry) -> Vec<String> {
    CaseNeeds::of(None, set.text(Column::Case), None).families
}
