//! Which gear sets of the shelf agree with all that is known of a box, and what to count or turn next.

pub mod axle;
pub mod tag;

use std::cmp::Ordering;

use super::read::Evidence;
use crate::gearing::identify::Candidate;
use crate::gearing::identify::counts::{self, ByCounts, NextCount, by_counts, next_count};
use crate::gearing::identify::ladder::{LadderSearch, Outcome, Wish, WishError};
use crate::gearing::identify::printed::{self, by_printed};
use crate::gearing::identify::tooth_pairs::{Counts, Pairs, pairs_in};
use crate::gearing::identify::turns::{self, NextTurn, by_turns};
use crate::gearing::{Gearbox, Layout};
use crate::order::index;
use crate::questions::{Known, Long, Source};
use crate::sliced::Sliced;

/// The work that a search back to teeth may take where nobody waits for it: some seconds at most.
const MOST_WORK: u64 = 1_000_000;

/// What a box can be.
#[derive(Clone, Debug, PartialEq)]
pub struct Sets {
    /// Every gear set of the shelf, those that agree best first.
    pub ranked: Vec<Standing>,
    /// How many agree with everything.
    pub fitting: usize,
    /// What the counts alone say.
    pub counts: Option<ByCounts>,
    /// What tells apart those that agree with everything.
    pub next: Option<Next>,
}

/// How a gear set stands to each kind of evidence; `None` where there is none of that kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Its place on the shelf.
    pub at: usize,
    /// To the counts.
    pub counts: Option<counts::Match>,
    /// To the turns.
    pub turns: Option<turns::Match>,
    /// To the printed ratios.
    pub printed: Option<printed::Match>,
}

/// What to do next.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// A gear to be counted.
    Count(NextCount),
    /// A gear to be turned in.
    Turn(NextTurn),
}

impl Standing {
    /// Whether it agrees with everything.
    pub fn fits(&self) -> bool {
        self.misses() == 0
    }

    /// The kinds of evidence it does not agree with.
    fn misses(&self) -> usize {
        let counts = self.counts.as_ref().is_some_and(|found| !found.fits());
        let turns = self.turns.as_ref().is_some_and(|found| !found.fits());
        let printed = self.printed.is_some_and(|found| !found.fits);
        [counts, turns, printed].into_iter().filter(|misses| *misses).count()
    }

    /// Whether it stands before another: fewer kinds missed, then fewer counts and teeth off, less of the ratio, fewer printed
    /// places, nearer the middle of the reading.
    fn nearer(&self, other: &Self) -> Ordering {
        let whole = |standing: &Self| (standing.misses(), standing.counts.as_ref().map(counts::Match::distance));
        let parts = |standing: &Self| {
            let turns = standing.turns.as_ref().map_or([0.0; 2], |found| [found.outside, found.off_centre]);
            [turns[0], standing.printed.map_or(0.0, |found| found.off), turns[1]]
        };
        let parts = parts(self).into_iter().zip(parts(other)).map(|(one, other)| one.total_cmp(&other));
        parts.fold(whole(self).cmp(&whole(other)), Ordering::then)
    }
}

/// What the box can be; `None` where nothing is known of one.
pub fn sets(evidence: &Evidence, shelf: &[Known<Gearbox>]) -> Option<Sets> {
    if !evidence.is_of_a_box() {
        return None;
    }
    let candidates: Vec<Candidate<'_>> = shelf.iter().map(|known| Candidate { name: known.entry.title(), gearbox: &known.part }).collect();
    let counts = (!evidence.counted.is_empty()).then(|| by_counts(&evidence.counted, &candidates));
    let ranked = ranked(evidence, &candidates, counts.as_ref());
    let fitting: Vec<usize> = ranked.iter().filter(|standing| standing.fits()).map(|standing| standing.at).collect();
    let next = next(evidence, &fitting, &candidates);
    Some(Sets { ranked, fitting: fitting.len(), counts, next })
}

/// Every candidate with how it stands to each kind of evidence, those that agree best first.
fn ranked(evidence: &Evidence, candidates: &[Candidate<'_>], counts: Option<&ByCounts>) -> Vec<Standing> {
    let counts = index(counts.into_iter().flat_map(|counts| counts.ranked.iter().map(|found| (found.candidate, found.clone()))));
    let turned = evidence.turned.map(|turned| by_turns(&[turned], candidates).ranked).unwrap_or_default();
    let turned = index(turned.into_iter().map(|found| (found.candidate, found)));
    let printed = if evidence.printed.is_empty() { Vec::new() } else { by_printed(&evidence.printed, candidates) };
    let printed = index(printed.into_iter().map(|found| (found.candidate, found)));
    let standing =
        |at: usize| Standing { at, counts: counts.get(&at).cloned(), turns: turned.get(&at).cloned(), printed: printed.get(&at).copied() };
    let mut all: Vec<Standing> = (0..candidates.len()).map(standing).collect();
    crate::order::by(&mut all, Standing::nearer);
    all
}

/// What tells the sets left apart: a count where teeth can be seen, else a turn of the closed box.
fn next(evidence: &Evidence, fitting: &[usize], candidates: &[Candidate<'_>]) -> Option<Next> {
    let known: Vec<_> = evidence.counted.iter().filter_map(|count| count.at).collect();
    let count = || next_count(fitting, &known, candidates).map(Next::Count);
    if evidence.turned.is_none() || !evidence.counted.is_empty() {
        return count();
    }
    let left: Vec<Candidate<'_>> = fitting.iter().filter_map(|at| candidates.get(*at).copied()).collect();
    by_turns(&[], &left).next.map(Next::Turn).or_else(count)
}

/// The tooth pairs that the turns of a two-shaft box leave; elsewhere a ratio is of two pairs, and no single one can be told.
pub fn pairs(evidence: &Evidence) -> Option<Pairs> {
    let turned = evidence.turned.filter(|_| evidence.layout == Layout::TwoShaft)?;
    Some(pairs_in(&turned.interval, &Counts::of_gearbox()))
}

/// What the search from the printed ratios back to teeth looks for; `None` where none are typed that can be read.
pub fn wish(evidence: &Evidence) -> Option<Wish> {
    let [fewest, most] = evidence.limits;
    let known = evidence.counted.iter().filter_map(|count| Some((count.at?, count.teeth))).collect();
    let wish = Wish { fewest, most, known, ..Wish::new(evidence.layout, evidence.printed.clone()) };
    (!evidence.printed.is_empty()).then_some(wish)
}

/// The teeth that the printed ratios can be of, as far as they are searched.
///
/// # Errors
/// When they cannot be searched: limits that cross, figures that no box has.
pub fn teeth(source: Source<'_>, evidence: &Evidence) -> Option<Result<Outcome, WishError>> {
    let search = LadderSearch::new(wish(evidence)?);
    match (search, source.long) {
        (Err(why), _) => Some(Err(why)),
        (Ok(_), Long::InSlices(slices)) => slices.teeth.clone().map(Ok),
        (Ok(mut search), Long::AtOnce) => {
            search.advance(MOST_WORK);
            Some(Ok(search.found()))
        }
    }
}
