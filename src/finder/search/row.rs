//! One gear set behind one final drive: what every wish costs along the tyres, in bounds first, then tyre by tyre in blocks.

use super::columns::{Column, Tyres};
use super::plan::{ABSENT, Figure, Slot, larger, positive};
use crate::finder::best::{Costs, MOST};
use crate::finder::table::{AxleRow, SetRow};

/// Tyres judged at once.
pub(super) const BLOCK: usize = 64;

/// What a wish costs along the tyres.
#[derive(Clone, Copy, Debug)]
enum Along {
    /// The same steps on every tyre.
    Steps(f64),
    /// The figure is `from + by ×` the column.
    Line { from: f64, by: f64, column: Column },
    /// Not known before engine and car are asked.
    Later,
}

/// The wishes of one gear set behind one final drive.
#[derive(Clone, Debug)]
pub(super) struct Row {
    along: Vec<Along>,
}

/// The least that any tyre of the row can cost.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bound {
    pub(super) must: f64,
    pub(super) score: f64,
    pub(super) costs: Costs,
}

/// What some tyres cost.
#[derive(Clone, Debug)]
pub(super) struct Block {
    pub(super) must: [f64; BLOCK],
    pub(super) score: [f64; BLOCK],
    pub(super) costs: Vec<[f64; BLOCK]>,
}

impl Block {
    pub(super) fn new(preferences: usize) -> Self {
        Self { must: [0.0; BLOCK], score: [0.0; BLOCK], costs: vec![[0.0; BLOCK]; preferences] }
    }

    /// What one tyre of the block costs.
    pub(super) fn costs_of(&self, at: usize) -> Costs {
        let mut costs = [0.0; MOST];
        for (cost, column) in costs.iter_mut().zip(&self.costs) {
            *cost = column.get(at).copied().unwrap_or(ABSENT);
        }
        costs
    }
}

impl Row {
    pub(super) fn empty() -> Self {
        Self { along: Vec::with_capacity(MOST) }
    }

    /// Makes it the row of a gear set (by its place in the table) behind a final drive.
    pub(super) fn set(&mut self, slots: &[Slot], at: usize, set: &SetRow, axle: &AxleRow, has_pairs: bool) {
        self.along.clear();
        self.along.extend(slots.iter().map(|slot| match &slot.figure {
            Figure::Set(values) => Along::Steps(slot.steps(of_set(values, at))),
            Figure::SetTimesAxle(values) => Along::Steps(slot.steps(of_set(values, at) * axle.ratio)),
            Figure::Axle(of) => Along::Steps(slot.steps(of(axle))),
            Figure::Error if has_pairs => Along::Line { from: 0.0, by: 1.0, column: Column::Error(set.housing) },
            Figure::Error => Along::Steps(ABSENT),
            Figure::Engine(_) => Along::Later,
            figure => match Self::line(figure, at, axle) {
                (_, by, _) if by.is_nan() => Along::Steps(ABSENT),
                (from, by, column) => Along::Line { from, by, column },
            },
        }));
    }

    /// A figure that goes with a column of the tyres, as start, factor and column.
    pub(super) fn line(figure: &Figure, at: usize, axle: &AxleRow) -> (f64, f64, Column) {
        match figure {
            Figure::TimesAxle(values, column) => (0.0, of_set(values, at) * axle.ratio, *column),
            Figure::OverAxle(values, column) => (0.0, of_set(values, at) / axle.ratio, *column),
            Figure::Tyre(column) => (0.0, 1.0, *column),
            Figure::Parts { of_sets, of_axle, of_tyre } => (of_set(of_sets, at) + of_axle(axle), 1.0, *of_tyre),
            Figure::Axle(_) | Figure::Set(_) | Figure::SetTimesAxle(_) | Figure::Error | Figure::Engine(_) => {
                (f64::NAN, f64::NAN, Column::Way)
            }
        }
    }

    /// The least that any of the tyres can cost: those that meet the musts about tyres, or all.
    pub(super) fn bound(&self, slots: &[Slot], tyres: &Tyres, fit_only: bool) -> Bound {
        let mut bound = Bound { must: 0.0, score: 0.0, costs: [0.0; MOST] };
        let mut costs = bound.costs.iter_mut();
        for (slot, along) in slots.iter().zip(&self.along) {
            let steps = match *along {
                Along::Steps(steps) => steps,
                Along::Line { from, by, column } => {
                    let ends = tyres.ends(column);
                    let (low, high) = if fit_only { ends.fit } else { ends.all };
                    slot.steps_between(from + by * low, from + by * high)
                }
                Along::Later => 0.0,
            };
            match slot.weight {
                None => bound.must += steps,
                Some(weight) => {
                    bound.score += weight * steps;
                    if let Some(cost) = costs.next() {
                        *cost = steps;
                    }
                }
            }
        }
        bound
    }

    /// The tyres, among the first `fit`, on which every must that follows the tyre's size can be met.
    pub(super) fn window(&self, slots: &[Slot], tyres: &Tyres, fit: usize) -> (usize, usize) {
        /// Wider than rounding, so that the tyre itself is judged exactly.
        const SLACK: f64 = 1e-9;
        let (mut from, mut to) = (0, fit);
        for (slot, along) in slots.iter().zip(&self.along) {
            let Along::Line { by, column, .. } = *along else { continue };
            if slot.weight.is_some() || by <= 0.0 || !matches!(column, Column::Turns | Column::Way) {
                continue;
            }
            let (least, greatest) = (slot.least / by * (1.0 - SLACK), slot.greatest / by * (1.0 + SLACK));
            let values = tyres.column(column).get(..fit).unwrap_or(&[]);
            let (first, last) = if column == Column::Way {
                (values.partition_point(|value| *value < least), values.partition_point(|value| *value <= greatest))
            } else {
                (values.partition_point(|value| *value > greatest), values.partition_point(|value| *value >= least))
            };
            (from, to) = (from.max(first), to.min(last));
        }
        (from, to.max(from))
    }

    /// Judges up to [`BLOCK`] tyres from one on; answers how many.
    pub(super) fn judge(&self, slots: &[Slot], tyres: &Tyres, from: usize, to: usize, block: &mut Block) -> usize {
        let many = to.saturating_sub(from).min(BLOCK);
        block.must = [0.0; BLOCK];
        block.score = [0.0; BLOCK];
        let mut columns = block.costs.iter_mut();
        for (slot, along) in slots.iter().zip(&self.along) {
            let Some(weight) = slot.weight else {
                add_must(slot, along, tyres, from, &mut block.must);
                continue;
            };
            let Some(costs) = columns.next() else { continue };
            fill(slot, along, tyres, from, costs);
            for (score, cost) in block.score.iter_mut().zip(costs.iter()) {
                *score += weight * cost;
            }
        }
        many
    }
}

fn of_set(values: &[f64], at: usize) -> f64 {
    values.get(at).copied().unwrap_or(f64::NAN)
}

fn add_must(slot: &Slot, along: &Along, tyres: &Tyres, from: usize, must: &mut [f64; BLOCK]) {
    let mut steps = [0.0; BLOCK];
    fill(slot, along, tyres, from, &mut steps);
    for (sum, steps) in must.iter_mut().zip(&steps) {
        *sum += steps;
    }
}

fn fill(slot: &Slot, along: &Along, tyres: &Tyres, start: usize, costs: &mut [f64; BLOCK]) {
    match *along {
        Along::Steps(steps) => costs.fill(steps),
        Along::Later => costs.fill(0.0),
        Along::Line { from, by, column } => {
            let values = tyres.column(column).get(start..).unwrap_or(&[]);
            let (least, greatest, per_step) = (slot.least, slot.greatest, slot.per_step);
            for (cost, value) in costs.iter_mut().zip(values) {
                let figure = from + by * value;
                *cost = positive(larger(least - figure, figure - greatest)) * per_step;
            }
        }
    }
}
