//! The search: every gear set behind every final drive on every tyre, judged in slices, the best kept as it goes.
//!
//! Final drives are taken in strides across their range, so that good combinations are met early; for each, the gear sets in the order of
//! what they cost by themselves. Before the tyres of such a row are judged, the least that any of them can cost is compared with what was
//! found: a row that cannot meet a must, or that can neither join the best hundred nor the front, is passed over. What is left out is
//! therefore proven, never guessed. Of combinations that cost the same the one met first stays.

mod columns;
mod found;
mod plan;
mod row;
mod sift;

use std::sync::Arc;

use super::best::{Best, Front};
use super::inputs::Given;
use super::motion::Parts;
use super::stages::Steps;
use super::table::{Pairs, Table};
use super::wish::{Measure, Wish};
use crate::gearing::Layout;
use crate::sliced::{self, Sliced};
use columns::{Tyres, speedometer_range};
pub use found::{Found, Standing};
use plan::{Figure, Slot};
pub use plan::{largest_drop, one_unless, speed};
use row::{Block, Row};

/// Work units of a row looked at, when one tyre judged is one.
const ROW_WORK: u64 = 8;

/// How far a search has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Combinations judged one by one.
    pub judged: u64,
    /// Combinations passed over because a bound proves that they cannot be among the results.
    pub passed: u64,
    /// Combinations there are.
    pub total: u64,
    /// Whether the search has come to its end.
    pub done: bool,
}

/// Where a row was left.
#[derive(Clone, Copy, Debug)]
struct Left {
    from: usize,
    to: usize,
}

/// A search that can be stopped and gone on with at any time.
#[derive(Clone, Debug)]
pub struct Search {
    table: Arc<Table>,
    /// What a run shifts through with each gear set.
    steps: Vec<Steps>,
    wishes: Vec<Wish>,
    given: Given,
    slots: Vec<Slot>,
    tyres: Tyres,
    /// Places of the final drives in the order they are taken.
    axles: Vec<usize>,
    /// Places of the gear sets in the order they are taken, each with the musts it misses by itself.
    sets: Vec<(usize, f64)>,
    at: (usize, usize),
    left: Option<Left>,
    row: Row,
    block: Block,
    best: Best,
    front: Front,
    meets: bool,
    killers: [usize; 2],
    progress: Progress,
    prunes: bool,
}

impl Search {
    /// A search over a table and what the car has, not yet begun. Wishes beyond the fifteenth are left out.
    pub fn new(table: Arc<Table>, mut wishes: Vec<Wish>, given: Given) -> Self {
        wishes.truncate(super::best::MOST);
        let table = if given.has_parts() { Arc::new(table.with_fitted(&given)) } else { table };
        let steps: Vec<Steps> = table.sets.iter().map(|set| given.stages.steps(&set.ratios, &set.meshes)).collect();
        let slots = plan::slots(&wishes, &table, &steps, &given);
        let tyres = Tyres::new(&table, &given, &slots, table.pairs.len());
        let preferences = slots.iter().filter(|slot| slot.weight.is_some()).count();
        let total = [table.sets.len(), table.axles.len(), tyres.rows.len()].iter().map(|count| *count as u64).product();
        Self {
            axles: strides(table.axles.len()),
            sets: set_order(&slots, table.sets.len()),
            tyres,
            slots,
            at: (0, 0),
            left: None,
            row: Row::empty(),
            block: Block::new(preferences),
            best: Best::default(),
            front: Front::new(preferences),
            meets: false,
            killers: [0; 2],
            progress: Progress { total, done: total == 0, ..Progress::default() },
            prunes: true,
            steps,
            table,
            wishes,
            given,
        }
    }

    /// The same search judging every single combination: for tests and measurements.
    #[must_use]
    pub fn exhaustive(mut self) -> Self {
        self.prunes = false;
        self
    }

    /// How far it has come.
    pub fn progress(&self) -> Progress {
        self.progress
    }

    /// Goes on for about so much work (one tyre judged is one unit; 100,000 units take about a millisecond), and answers how far it is.
    pub fn advance(&mut self, budget: u64) -> Progress {
        let mut work = 0;
        while work < budget && !self.progress.done {
            work += self.step(budget - work);
        }
        self.progress
    }

    /// One row, or what the budget allows of it; answers the work done.
    fn step(&mut self, budget: u64) -> u64 {
        let table = Arc::clone(&self.table);
        let (axle_at, set_at) = self.at;
        let Some(axle) = self.axles.get(axle_at).and_then(|at| table.axles.get(*at).map(|row| (*at, row))) else {
            self.progress.done = true;
            return 0;
        };
        let mut work = ROW_WORK;
        if set_at == 0 && self.left.is_none() {
            work += self.take_axle(axle.1);
        }
        let Some((set, alone)) = self.sets.get(set_at).copied() else {
            self.at = (axle_at + 1, 0);
            return work;
        };
        if self.prunes && self.meets && alone > 0.0 {
            // The gear sets stand in the order of the musts they miss: all further ones miss some too.
            let rows = self.sets.len().saturating_sub(set_at) as u64;
            self.progress.passed += rows * self.tyres.rows.len() as u64;
            self.at = (axle_at + 1, 0);
            return work;
        }
        work += self.go_along([set, axle.0], budget.saturating_sub(work));
        if self.left.is_none() {
            self.at = (axle_at, set_at + 1);
        }
        work
    }

    fn take_axle(&mut self, axle: &super::table::AxleRow) -> u64 {
        if !self.slots.iter().any(|slot| matches!(slot.figure, Figure::Error)) {
            return 0;
        }
        let table = Arc::clone(&self.table);
        let pairs = pairs(&table, &self.wishes);
        self.tyres.read_speedometer(axle, pairs, &self.given, speedometer_range(&self.wishes));
        8 * (self.tyres.rows.len() * pairs.len()) as u64
    }

    /// Judges the tyres of one row.
    fn go_along(&mut self, [set, axle]: [usize; 2], budget: u64) -> u64 {
        let table = Arc::clone(&self.table);
        let (Some(set_row), Some(axle_row)) = (table.sets.get(set), table.axles.get(axle)) else { return 0 };
        let has_pairs = pairs(&table, &self.wishes).get(set_row.housing).is_some_and(|group| !group.sorted.is_empty());
        self.row.set(&self.slots, set, set_row, axle_row, has_pairs);
        let Left { mut from, to } = match self.left.take() {
            Some(left) => left,
            None => self.open_row(),
        };
        let mut work = 0;
        while from < to {
            if work >= budget.max(1) {
                self.left = Some(Left { from, to });
                break;
            }
            let many = self.row.judge(&self.slots, &self.tyres, from, to, &mut self.block);
            work += many as u64 + self.sift([set, axle], from, many);
            self.progress.judged += many as u64;
            from += many.max(1);
        }
        work
    }

    /// The tyres of the row that must be judged; the others are passed over.
    fn open_row(&mut self) -> Left {
        let all = self.tyres.rows.len();
        if !self.prunes {
            return Left { from: 0, to: all };
        }
        let bound = self.row.bound(&self.slots, &self.tyres, self.meets);
        let (from, to) = if self.is_hopeless(&bound) {
            (0, 0)
        } else if self.meets {
            self.row.window(&self.slots, &self.tyres, self.tyres.fit)
        } else {
            (0, all)
        };
        self.progress.passed += (all - (to - from)) as u64;
        Left { from, to }
    }

    fn is_hopeless(&self, bound: &row::Bound) -> bool {
        let bar = self.best.bar();
        if self.meets {
            bound.must > 0.0 || (bound.score >= bar.1 && self.front.beaten_by(&bound.costs, bound.score).is_some())
        } else {
            bound.must > 0.0 && (bound.must, bound.score) >= bar
        }
    }

    pub(super) fn parts(&self, [set, axle, tyre]: [usize; 3]) -> Option<Parts<'_>> {
        Some(Parts {
            steps: self.steps.get(set)?,
            two_shafts: self.table.sets.get(set)?.layout == Layout::TwoShaft,
            behind: self.given.stages.at_rest * self.table.axles.get(axle)?.ratio,
            circumference_m: self.tyres.rows.get(tyre)?.circumference_m,
        })
    }
}

impl Sliced for Search {
    type Found = Found;

    fn advance(&mut self, budget: u64) -> sliced::Progress {
        let Progress { judged, passed, total, done } = Self::advance(self, budget);
        sliced::Progress { done: judged + passed, of: total, is_finished: done }
    }

    fn found(&self) -> Found {
        Self::found(self)
    }
}

/// The speedometer pairs that may be fitted: from stock alone where that must be.
fn pairs<'a>(table: &'a Table, wishes: &[Wish]) -> &'a [Pairs] {
    if wishes.iter().any(|wish| wish.measure == Measure::ToOrder && wish.weight().is_none()) { &table.pairs_in_stock } else { &table.pairs }
}

/// Every place once, far apart from its neighbours: steps near the golden section of the whole.
fn strides(many: usize) -> Vec<usize> {
    let near = many * 618 / 1_000;
    let stride = (near.max(1)..=many.max(1)).find(|stride| num_integer::gcd(*stride, many) == 1).unwrap_or(1);
    (0..many).map(|at| at * stride % many).collect()
}

/// The gear sets in the order of what they cost by themselves: musts first, then preferences.
fn set_order(slots: &[Slot], many: usize) -> Vec<(usize, f64)> {
    let alone = |at: usize| {
        let mut sums = (0.0, 0.0);
        for slot in slots {
            let value = match &slot.figure {
                Figure::Set(values) => values.get(at).copied(),
                // The other parts only add to the count.
                Figure::Parts { of_sets, .. } if slot.least <= 0.0 => of_sets.get(at).copied(),
                _ => None,
            };
            let steps = value.map_or(0.0, |value| slot.steps(value));
            match slot.weight {
                None => sums.0 += steps,
                Some(weight) => sums.1 += weight * steps,
            }
        }
        sums
    };
    let mut order: Vec<(usize, (f64, f64))> = (0..many).map(|at| (at, alone(at))).collect();
    crate::order::by(&mut order, |(_, a), (_, b)| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    order.into_iter().map(|(at, (must, _))| (at, must)).collect()
}
