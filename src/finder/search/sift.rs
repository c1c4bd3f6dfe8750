//! Which of the tyres judged may be among the results: a quick look at a whole block, then a closer one at what is left.

use super::Search;
use super::plan::Figure;
use super::row::BLOCK;
use crate::finder::best::Candidate;
use crate::finder::motion::Driven;

/// Work units of a run with engine and car.
const RUN_WORK: u64 = 10_000;

impl Search {
    /// Looks closer at the tyres of a block that may be among the best; answers the extra work done.
    pub(super) fn sift(&mut self, [set, axle]: [usize; 2], from: usize, many: usize) -> u64 {
        let dead = self.beaten();
        let mut work = 0;
        for at in 0..many {
            let bar = self.best.bar();
            let (Some(must), Some(score)) = (self.block.must.get(at).copied(), self.block.score.get(at).copied()) else { break };
            let may_join = if self.meets {
                must <= 0.0 && (score < bar.1 || !dead.get(at).copied().unwrap_or(false))
            } else {
                must <= 0.0 || (must, score) < bar
            };
            if may_join {
                work += self.consider(Candidate { must, score, rows: [set, axle, from + at], costs: self.block.costs_of(at) });
            }
        }
        work
    }

    /// Which tyres of the block one of the members that beat the last ones beats too.
    fn beaten(&self) -> [bool; BLOCK] {
        let mut dead = [false; BLOCK];
        for killer in self.killers.iter().filter_map(|at| self.front.members.get(*at)) {
            let mut beaten = [true; BLOCK];
            for (column, own) in self.block.costs.iter().zip(&killer.costs) {
                for (beaten, cost) in beaten.iter_mut().zip(column) {
                    *beaten &= own <= cost;
                }
            }
            for (dead, beaten) in dead.iter_mut().zip(&beaten) {
                *dead |= beaten;
            }
        }
        dead
    }

    /// Asks engine and car where a wish needs them, and takes the candidate up where it belongs; answers the extra work done.
    fn consider(&mut self, mut candidate: Candidate) -> u64 {
        if !self.may_still_join(&candidate) {
            return 0;
        }
        let work = self.ask_engine(&mut candidate);
        if candidate.must > 0.0 {
            if !self.meets {
                self.best.take(candidate);
            }
            return work;
        }
        if !self.meets {
            self.meets = true;
            self.best.clear();
        }
        match self.front.beaten_by(&candidate.costs, candidate.score) {
            None => self.front.take(candidate),
            Some(by) => self.killers = if self.killers[0] == by { self.killers } else { [by, self.killers[0]] },
        }
        self.best.take(candidate);
        work
    }

    /// Whether what is known without the engine leaves the candidate a place.
    fn may_still_join(&mut self, candidate: &Candidate) -> bool {
        if !self.meets {
            return true;
        }
        if candidate.must > 0.0 {
            return false;
        }
        if candidate.score < self.best.bar().1 {
            return true;
        }
        let by = self.front.beaten_by(&candidate.costs, candidate.score);
        if let Some(by) = by.filter(|by| self.killers[0] != *by) {
            self.killers = [by, self.killers[0]];
        }
        by.is_none()
    }

    fn ask_engine(&self, candidate: &mut Candidate) -> u64 {
        if !self.slots.iter().any(|slot| matches!(slot.figure, Figure::Engine(_))) {
            return 0;
        }
        let driven = self.parts(candidate.rows).and_then(|parts| Driven::new(&self.given, &parts));
        let mut costs = candidate.costs.iter_mut();
        for slot in &self.slots {
            let cost = if slot.weight.is_some() { costs.next() } else { None };
            let Figure::Engine(measure) = slot.figure else { continue };
            let steps = slot.steps(driven.as_ref().map_or(f64::NAN, |driven| driven.figure(measure)));
            match (slot.weight, cost) {
                (Some(weight), Some(cost)) => {
                    *cost = steps;
                    candidate.score += weight * steps;
                }
                _ => candidate.must += steps,
            }
        }
        RUN_WORK
    }
}
