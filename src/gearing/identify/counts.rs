//! From some counted teeth to the sets that have them, and which gear to count next.

use std::collections::BTreeMap;

use super::Candidate;
use crate::gearing::check::SUM_TOLERANCE;
use crate::gearing::part::Part;
use crate::gearing::teeth::Teeth;
use crate::problem::Explain;

/// The teeth of one gear, counted on the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Counted {
    /// Where the gear sits; `None` for a gear that lies on the bench by itself.
    pub at: Option<Part>,
    /// How many were counted, 8 to 150.
    pub teeth: Teeth,
}

/// A count that a set does not have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mismatch {
    /// Where; `None` for a gear by itself.
    pub at: Option<Part>,
    /// The teeth as counted on the bench.
    pub counted: Teeth,
    /// What the set has there; `None` where it has no such gear.
    pub has: Option<Teeth>,
}

/// How well a set agrees with the counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Match {
    /// Which candidate, by its place in the list.
    pub candidate: usize,
    /// The counts it does not have.
    pub wrong: Vec<Mismatch>,
}

impl Match {
    /// Whether every count agrees.
    pub fn fits(&self) -> bool {
        self.wrong.is_empty()
    }

    /// How far off: counts that disagree, then by how many teeth in all.
    pub fn distance(&self) -> (usize, u32) {
        let teeth = self.wrong.iter().map(|wrong| wrong.has.map_or(1_000, |has| u32::from(has.count().abs_diff(wrong.counted.count()))));
        (self.wrong.len(), teeth.sum())
    }
}

/// The count that parts the remaining sets best.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NextCount {
    /// The gear to count.
    pub part: Part,
    /// Which candidates remain for each count it may have; `None` for sets without such a gear of known teeth.
    pub outcomes: BTreeMap<Option<Teeth>, Vec<usize>>,
}

/// Two counted pairs that cannot stand in one case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clash {
    /// One pair: its driving gear.
    pub one: Part,
    /// Its tooth sum.
    pub one_sum: u16,
    /// The other pair: its driving gear.
    pub other: Part,
    /// Its tooth sum.
    pub other_sum: u16,
}

impl Explain for Clash {
    fn what(&self) -> String {
        let (one, other) = (pair_name(self.one), pair_name(self.other));
        format!("{one} sums to {} and {other} to {}, which cannot share one centre distance", self.one_sum, self.other_sum)
    }

    fn what_to_do(&self) -> String {
        let (one, least) = (self.one_sum, self.one_sum.saturating_sub(SUM_TOLERANCE));
        format!("count both again: with {one} the other sum would be {least} to {}; or parts of two sets are mixed", one + SUM_TOLERANCE)
    }
}

fn pair_name(driver: Part) -> String {
    match driver {
        Part::Driver(gear) => format!("the {gear} pair"),
        _ => "the constant pair".into(),
    }
}

/// No set has all the counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NothingFits {
    /// The set that comes nearest.
    pub nearest: String,
    /// What it has otherwise.
    pub wrong: Vec<Mismatch>,
}

impl Explain for NothingFits {
    fn what(&self) -> String {
        let counts = if self.wrong.len() == 1 { "one count".into() } else { format!("{} counts", self.wrong.len()) };
        format!("no set has all these counts; {} comes nearest, off by {counts}", self.nearest)
    }

    fn what_to_do(&self) -> String {
        let again = self.wrong.iter().map(|wrong| match wrong.has {
            Some(has) => format!("{} for {}", has, wrong.counted),
            None => format!("no gear for {}", wrong.counted),
        });
        format!("count again: it has {}", again.collect::<Vec<_>>().join(", "))
    }
}

/// What the counts say.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ByCounts {
    /// Every counted candidate, best first; those that fit stand before the others, in the order they were given.
    pub ranked: Vec<Match>,
    /// What to count next; `None` where one set or none is left, or where the sets left have the same teeth throughout.
    pub next: Option<NextCount>,
    /// Counted pairs that cannot belong together.
    pub clashes: Vec<Clash>,
    /// Where none fits: which comes nearest.
    pub nothing: Option<NothingFits>,
}

impl ByCounts {
    /// The candidates that fit.
    pub fn fitting(&self) -> impl Iterator<Item = usize> + '_ {
        self.ranked.iter().filter(|found| found.fits()).map(|found| found.candidate)
    }
}

/// The sets that have these counts. A set that is known by printed ratios has no counts to compare and is left out.
pub fn by_counts(counted: &[Counted], candidates: &[Candidate<'_>]) -> ByCounts {
    let matches = candidates.iter().enumerate().filter(|(_, candidate)| candidate.gearbox.is_counted());
    let mut ranked: Vec<Match> = matches.map(|(at, candidate)| Match { candidate: at, wrong: mismatches(counted, candidate) }).collect();
    crate::order::by_key(&mut ranked, Match::distance);
    let fitting: Vec<usize> = ranked.iter().filter(|found| found.fits()).map(|found| found.candidate).collect();
    let known: Vec<Part> = counted.iter().filter_map(|count| count.at).collect();
    let nothing = ranked
        .first()
        .filter(|best| !best.fits())
        .and_then(|best| Some(NothingFits { nearest: candidates.get(best.candidate)?.name.to_owned(), wrong: best.wrong.clone() }));
    ByCounts { next: next_count(&fitting, &known, candidates), clashes: clashes(counted), nothing, ranked }
}

/// The counts a set does not have: each placed count against its gear, each loose one against a gear not yet taken.
fn mismatches(counted: &[Counted], candidate: &Candidate<'_>) -> Vec<Mismatch> {
    let gearbox = candidate.gearbox;
    let placed = counted.iter().filter_map(|count| {
        let has = count.at?.teeth(gearbox);
        (has != Some(count.teeth)).then_some(Mismatch { at: count.at, counted: count.teeth, has })
    });
    let taken: Vec<Part> = counted.iter().filter_map(|count| count.at).collect();
    let mut free: Vec<Teeth> =
        Part::gears_of(gearbox).into_iter().filter(|part| !taken.contains(part)).filter_map(|part| part.teeth(gearbox)).collect();
    let loose = counted.iter().filter(|count| count.at.is_none()).filter_map(|count| {
        if let Some(at) = free.iter().position(|teeth| *teeth == count.teeth) {
            free.swap_remove(at);
            return None;
        }
        let has = free.iter().copied().min_by_key(|teeth| teeth.count().abs_diff(count.teeth.count()));
        Some(Mismatch { at: None, counted: count.teeth, has })
    });
    placed.chain(loose.collect::<Vec<_>>()).collect()
}

/// The part whose count leaves the fewest sets in the worst case, then the one with the most outcomes.
pub fn next_count(remaining: &[usize], known: &[Part], candidates: &[Candidate<'_>]) -> Option<NextCount> {
    let sets: Vec<(usize, &Candidate<'_>)> = remaining.iter().filter_map(|at| Some((*at, candidates.get(*at)?))).collect();
    let mut parts: Vec<Part> = sets.iter().flat_map(|(_, set)| Part::gears_of(set.gearbox)).filter(|part| !known.contains(part)).collect();
    crate::order::by(&mut parts, Ord::cmp);
    parts.dedup();
    let split = |part: Part| {
        let mut outcomes: BTreeMap<Option<Teeth>, Vec<usize>> = BTreeMap::new();
        for (at, set) in &sets {
            outcomes.entry(part.teeth(set.gearbox)).or_default().push(*at);
        }
        NextCount { part, outcomes }
    };
    let useful = parts.into_iter().map(split).filter(|next| next.outcomes.len() > 1);
    useful.min_by_key(|next| (next.outcomes.values().map(Vec::len).max(), std::cmp::Reverse(next.outcomes.len())))
}

/// Every two counted pairs with sums further apart than profile shift can take up.
fn clashes(counted: &[Counted]) -> Vec<Clash> {
    let teeth = |part: Part| counted.iter().find(|count| count.at == Some(part)).map(|count| count.teeth.count());
    let pairs = counted.iter().filter_map(|count| {
        let driver = count.at?;
        let driven = match driver {
            Part::ConstantDriver => Part::ConstantDriven,
            Part::Driver(gear) => Part::Driven(gear),
            _ => return None,
        };
        Some((driver, teeth(driver)? + teeth(driven)?))
    });
    let mut pairs: Vec<(Part, u16)> = pairs.collect();
    crate::order::by(&mut pairs, Ord::cmp);
    pairs.dedup();
    let mut clashes = Vec::new();
    for (at, &(one, one_sum)) in pairs.iter().enumerate() {
        let others = pairs.iter().skip(at + 1).filter(|(_, sum)| sum.abs_diff(one_sum) > SUM_TOLERANCE);
        clashes.extend(others.map(|&(other, other_sum)| Clash { one, one_sum, other, other_sum }));
    }
    clashes
}
