//! The search itself: head by head, in slices, with the best kept in order.

use super::window::Head;
use super::{Found, Nearest, Outcome, Rank, Wish, WishError};
use crate::gearing::GearNumber;
use crate::gearing::gearbox::Layout;
use crate::gearing::hunting::Hunting;
use crate::gearing::teeth::{Mesh, Ratio, Teeth};
use crate::sliced::{Progress, Sliced};

/// A search that can be stopped and gone on with: drop it to cancel, [`Sliced::advance`] to go on.
///
/// It is complete: every combination is counted, and the best are kept. The order of slices does not change the answer.
#[derive(Clone, Debug)]
pub struct LadderSearch {
    wish: Wish,
    heads: Vec<Head>,
    done: usize,
    work: u64,
    count: u64,
    best: Vec<Found>,
    nearest: Option<Nearest>,
}

impl LadderSearch {
    /// A search for a wish.
    ///
    /// # Errors
    /// When the wish cannot be searched.
    pub fn new(wish: Wish) -> Result<Self, WishError> {
        if wish.figures.is_empty() {
            return Err(WishError::Nothing);
        }
        if wish.geared().next().is_none() {
            return Err(WishError::OnlyDirect);
        }
        let (fewest, most) = (wish.fewest, wish.most);
        if fewest > most || fewest < Teeth::LEAST || most > Teeth::GREATEST {
            return Err(WishError::Limits { fewest, most });
        }
        if wish.tolerance > Wish::MOST_TOLERANCE {
            return Err(WishError::Tolerance(wish.tolerance));
        }
        Ok(Self { heads: Head::all(&wish), wish, done: 0, work: 0, count: 0, best: Vec::new(), nearest: None })
    }

    /// The layout that was asked for.
    pub fn layout(&self) -> Layout {
        self.wish.layout
    }

    fn judge(&mut self, head: Head) {
        let count = head.count(&self.wish);
        if count > 0 {
            self.count = self.count.saturating_add(count);
            self.collect(head);
        } else if self.count == 0 {
            self.come_near(head);
        }
    }

    /// Keeps the best combinations of a head.
    fn collect(&mut self, head: Head) {
        let sums = head.least_sum..=head.least_sum + self.wish.tolerance;
        let options = self.wish.geared().map(|(gear, _)| {
            let mut pairs: Vec<Mesh> = sums.clone().flat_map(|sum| head.options(&self.wish, gear, sum).pairs()).collect();
            pairs.sort_by_key(|mesh| (mesh.sum(), !Hunting::of(*mesh).is_hunting()));
            pairs
        });
        let options: Vec<Vec<Mesh>> = options.collect();
        let mut chosen: Vec<Mesh> = head.constant.into_iter().collect();
        self.descend(head, &options, &mut chosen);
    }

    /// Adds one gear after the other, turning back where no completion can rank among the kept.
    fn descend(&mut self, head: Head, options: &[Vec<Mesh>], chosen: &mut Vec<Mesh>) {
        self.work += 1;
        if self.is_hopeless(head, options, chosen) {
            return;
        }
        let Some((pairs, rest)) = options.split_first() else {
            self.keep(head, chosen);
            return;
        };
        for mesh in pairs {
            chosen.push(*mesh);
            self.descend(head, rest, chosen);
            chosen.pop();
        }
    }

    /// Whether the best that can still come of the chosen pairs ranks behind all that are kept.
    fn is_hopeless(&self, head: Head, rest: &[Vec<Mesh>], chosen: &[Mesh]) -> bool {
        let Some(worst) = self.best.last().filter(|_| self.best.len() >= self.wish.keep) else { return self.wish.keep == 0 };
        let so_far = Rank::of(chosen.iter().copied());
        let never_hunting = rest.iter().filter(|pairs| !pairs.iter().any(|mesh| Hunting::of(*mesh).is_hunting())).count();
        let teeth = rest.len() * usize::from(head.least_sum);
        let bound = Rank {
            spread: so_far.spread,
            not_hunting: so_far.not_hunting + never_hunting,
            teeth: so_far.teeth + u32::try_from(teeth).unwrap_or(u32::MAX / 2),
        };
        bound >= worst.rank
    }

    fn keep(&mut self, head: Head, chosen: &[Mesh]) {
        if chosen.iter().all(|mesh| mesh.sum() > head.least_sum) {
            return;
        }
        let rank = Rank::of(chosen.iter().copied());
        let gears = self.wish.gears(chosen.iter().skip(usize::from(head.constant.is_some())).copied());
        let at = self.best.partition_point(|found| found.rank <= rank);
        self.best.insert(at, Found { constant: head.constant, gears, rank });
        self.best.truncate(self.wish.keep);
    }

    /// Remembers the head whose worst gear is least far off.
    fn come_near(&mut self, head: Head) {
        let mut pairs = Vec::new();
        let mut worst: Option<(GearNumber, Mesh, f64)> = None;
        let limit = self.nearest.as_ref().map_or(f64::INFINITY, |nearest| nearest.off);
        for (gear, _) in self.wish.geared() {
            let Some((mesh, off)) = head.nearest(&self.wish, gear) else { return };
            if off >= limit {
                return;
            }
            if worst.is_none_or(|(_, _, most)| off > most) {
                worst = Some((gear, mesh, off));
            }
            pairs.push(mesh);
        }
        let Some((gear, mesh, off)) = worst else { return };
        let Some(printed) = gear.of(&self.wish.figures).copied() else { return };
        let times = head.constant.map_or(Ratio::from_integer(1), Mesh::ratio);
        let rank = Rank::of(head.constant.into_iter().chain(pairs.iter().copied()));
        let found = Found { constant: head.constant, gears: self.wish.gears(pairs), rank };
        self.nearest = Some(Nearest { tolerance: self.wish.tolerance, found, gear, printed, ratio: times * mesh.ratio(), off });
    }
}

impl Sliced for LadderSearch {
    type Found = Outcome;

    /// A unit is a head (a constant pair with its tooth sum; 2,401 of them for 12 to 60 teeth) or a pair tried for one of its
    /// gears: a few microseconds. A head is never left half done, which for figures without decimals takes some milliseconds.
    fn advance(&mut self, budget: u64) -> Progress {
        let end = self.work.saturating_add(budget);
        while self.work < end
            && let Some(head) = self.heads.get(self.done).copied()
        {
            self.work += 1;
            self.judge(head);
            self.done += 1;
        }
        Progress { done: self.done as u64, of: self.heads.len() as u64, is_finished: self.done >= self.heads.len() }
    }

    fn found(&self) -> Outcome {
        let complete = self.done >= self.heads.len();
        let nearest = self.nearest.clone().filter(|_| complete && self.count == 0);
        Outcome { tolerance: self.wish.tolerance, complete, count: self.count, best: self.best.clone(), nearest }
    }
}
