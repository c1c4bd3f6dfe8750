//! The best rest of a run from every gear and speed, and the plan that follows from it.

use super::geared::Needs;
use super::grid::{Grid, Next};
use crate::gearing::GearNumber;

/// What is to be reached, in SI.
#[derive(Clone, Copy, Debug)]
pub(super) enum Wanted {
    /// This speed (m/s).
    Speed(f64),
    /// This distance (m).
    Distance(f64),
}

impl Wanted {
    pub(super) fn speed(&self) -> Option<f64> {
        match *self {
            Self::Speed(speed) => Some(speed),
            Self::Distance(_) => None,
        }
    }
}

/// One upshift of a plan.
#[derive(Clone, Copy, Debug)]
pub(super) struct Made {
    /// The gear left.
    pub(super) from: GearNumber,
    /// The gear taken.
    pub(super) to: GearNumber,
    /// At this road speed (m/s).
    pub(super) speed: f64,
    upshift: usize,
    node: usize,
}

/// A plan, as the grid sees it.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub(super) shifts: Vec<Made>,
    /// Time to the goal (s), good enough to choose between plans.
    time: f64,
    /// The speed (m/s) at the goal.
    pub(super) end: f64,
}

/// What to do in each gear at each speed, for the least of time − `metre`·distance up to the last of them.
#[derive(Default)]
pub(super) struct Rest {
    /// The last speed of the grid.
    pub(super) end: usize,
    /// What the rest of the run needs, gear after gear; without end where the goal is out of reach.
    needs: Vec<f64>,
    /// The upshift to be made there, where one is.
    shift: Vec<Option<usize>>,
}

impl Rest {
    /// Nothing is known yet of so many gears up to a speed.
    fn begin(&mut self, gears: usize, end: usize) {
        self.end = end;
        let many = gears * (end + 1);
        self.needs.clear();
        self.needs.resize(many, f64::INFINITY);
        self.shift.clear();
        self.shift.resize(many, None);
    }

    /// What one gear still has to be told, and what the taller ones know.
    pub(super) fn split(&mut self, row: usize) -> (OwnRest<'_>, TallerRest<'_>) {
        let width = self.end + 1;
        let (own, taller) = self.needs.split_at_mut_checked((row + 1) * width).unwrap_or_default();
        let needs = own.get_mut(row * width..).unwrap_or_default();
        let shift = self.shift.get_mut(row * width..(row + 1) * width).unwrap_or_default();
        (OwnRest { needs, shift }, TallerRest { needs: taller, width })
    }

    /// What the rest of the run needs from a place.
    fn needs(&self, row: usize, node: usize) -> f64 {
        TallerRest { needs: &self.needs, width: self.end + 1 }.needs(row, node)
    }

    /// The upshift at a place at or below the end, where one is.
    fn shift(&self, row: usize, node: usize) -> Option<usize> {
        self.shift.get(row * (self.end + 1)..(row + 1) * (self.end + 1))?.get(node).copied().flatten()
    }
}

/// What is to be told of one gear.
pub(super) struct OwnRest<'a> {
    needs: &'a mut [f64],
    shift: &'a mut [Option<usize>],
}

impl OwnRest<'_> {
    pub(super) fn set(&mut self, node: usize, least: f64, upshift: Option<usize>) {
        if let (Some(needs), Some(shift)) = (self.needs.get_mut(node), self.shift.get_mut(node)) {
            (*needs, *shift) = (least, upshift);
        }
    }
}

/// What is known of taller gears.
pub(super) struct TallerRest<'a> {
    needs: &'a [f64],
    width: usize,
}

impl TallerRest<'_> {
    /// What the rest of the run needs in one of them from a speed at or below the last; without end where that is not known.
    pub(super) fn needs(&self, row: usize, node: usize) -> f64 {
        let at = (node < self.width).then_some(row * self.width + node);
        at.and_then(|at| self.needs.get(at)).copied().unwrap_or(f64::INFINITY)
    }
}

/// What is kept from one search of a grid to the next.
#[derive(Default)]
pub(super) struct Kept {
    rest: Rest,
    /// The shifts of policies that leave the gears open, by their last speed and the bits of what a metre is worth: searches for several
    /// distances begin alike.
    open: Vec<((usize, u64), Vec<Made>)>,
}

/// The quickest plan to a goal; `None` where no plan gets there. `near` is what a coarser grid found.
pub(super) fn best(grid: &mut Grid<'_>, kept: &mut Kept, wanted: Wanted, near: Option<&Found>) -> Option<Found> {
    match wanted {
        Wanted::Speed(speed) => {
            // speeds closer than a billionth of the greatest are one
            let same = 2e-9 * grid.speeds.last()?;
            let end = grid.speeds.iter().position(|node| (node - speed).abs() <= same)?;
            let rest = &mut kept.rest;
            policy(grid, rest, end, 0.0, None);
            let time = rest.needs(0, grid.start);
            time.is_finite().then(|| Found { shifts: shifts(grid, rest), time, end: speed })
        }
        Wanted::Distance(distance) => {
            // from nothing known, the end of each gear is tried as the speed at the goal: a plan may end held at the limit of any of them
            let guesses = near.map_or_else(|| grid.ends(), |near| vec![near.end]);
            let mut tried = Vec::new();
            let found = guesses.into_iter().filter_map(|end| over(grid, kept, (distance, end), None, &mut tried));
            let found = found.reduce(|best, next| if next.time < best.time { next } else { best })?;
            Some(with_other_gears(grid, kept, distance, found))
        }
    }
}

/// A plan with a gear more or less, as long as that is quicker: what a metre is worth is known near the plan's own end only, so that two
/// orders of gears that end at different speeds are told apart by their times, not by the policy.
fn with_other_gears(grid: &mut Grid<'_>, kept: &mut Kept, distance: f64, found: Found) -> Found {
    let mut best = found;
    for _ in 0..grid.many() {
        let used: Vec<usize> =
            std::iter::once(0).chain(best.shifts.iter().filter_map(|made| Some(grid.rows_of(made.upshift)?.1))).collect();
        let others = (1..grid.many()).map(|row| {
            let mut rows: Vec<usize> = used.iter().copied().filter(|used| *used != row).collect();
            if rows.len() == used.len() {
                rows.insert(rows.partition_point(|used| *used < row), row);
            }
            rows
        });
        let quickest = others.filter_map(|rows| over(grid, kept, (distance, best.end), Some(&rows), &mut Vec::new()));
        match quickest.reduce(|best, next| if next.time < best.time { next } else { best }) {
            Some(next) if next.time < best.time => best = next,
            _ => break,
        }
    }
    best
}

/// The quickest plan over a distance, beginning with a guess of the speed at its end and going on while that gains time; not again from
/// an end that was tried. `only` these rows may be used, one after the other, where they are given.
fn over(
    grid: &mut Grid<'_>,
    kept: &mut Kept,
    (distance, guess): (f64, f64),
    only: Option<&[usize]>,
    tried: &mut Vec<usize>,
) -> Option<Found> {
    const MOST_ROUNDS: usize = 6;
    let mut best: Option<Found> = None;
    let mut end = guess;
    for _ in 0..MOST_ROUNDS {
        let node = grid.speeds.partition_point(|speed| *speed <= end).checked_sub(1)?.max(grid.start);
        if tried.contains(&node) {
            break;
        }
        tried.push(node);
        let shifts = shifts_to(grid, kept, (node, 1.0 / end), only);
        let Some(next) = follow(grid, shifts, distance) else { break };
        if best.as_ref().is_some_and(|best| next.time >= best.time - 1e-9) {
            break;
        }
        end = next.end;
        best = Some(next);
    }
    best
}

/// The upshifts of the policy up to a node, with what a metre is worth (s/m).
fn shifts_to(grid: &mut Grid<'_>, kept: &mut Kept, (node, metre): (usize, f64), only: Option<&[usize]>) -> Vec<Made> {
    let key = (node, metre.to_bits());
    if let Some((_, known)) = kept.open.iter().find(|(known, _)| only.is_none() && *known == key) {
        return known.clone();
    }
    policy(grid, &mut kept.rest, node, metre, only);
    let shifts = shifts(grid, &kept.rest);
    if only.is_none() {
        kept.open.push((key, shifts.clone()));
    }
    shifts
}

/// Works from the tallest gear down: what to do in each row, up to the speed `end`. `metre` is what a metre is worth (s/m).
fn policy(grid: &mut Grid<'_>, rest: &mut Rest, end: usize, metre: f64, only: Option<&[usize]>) {
    rest.begin(grid.many(), end);
    match only {
        None => (0..grid.many()).rev().for_each(|at| grid.best_rest(at, rest, metre, Next::Any)),
        Some(rows) => {
            let mut next = Next::None;
            for at in rows.iter().rev() {
                grid.best_rest(*at, rest, metre, next);
                next = Next::Only(*at);
            }
        }
    }
}

/// The upshifts the policy makes from the start on.
fn shifts(grid: &mut Grid<'_>, policy: &Rest) -> Vec<Made> {
    let (mut row, mut node) = (0, grid.start);
    let mut made = Vec::new();
    while node <= policy.end {
        let Some(index) = policy.shift(row, node) else {
            node += 1;
            continue;
        };
        let (Some(speed), Some(landing)) = (grid.speeds.get(node).copied(), grid.landing(index, node)) else { break };
        let (Some(from), Some(to)) = (grid.gear(row), grid.gear(landing.row)) else { break };
        made.push(Made { from, to, speed, upshift: index, node });
        (row, node) = (landing.row, landing.node);
    }
    made
}

/// Follows a plan until a distance is covered; a gear that comes to its end is held there.
fn follow(grid: &mut Grid<'_>, shifts: Vec<Made>, distance: f64) -> Option<Found> {
    let (mut row, mut node) = (0, grid.start);
    let mut now = Needs { time: 0.0, distance: 0.0 };
    let mut left = shifts.iter().peekable();
    loop {
        let speed = *grid.speeds.get(node)?;
        if let Some(made) = left.next_if(|made| made.node == node) {
            let landing = grid.landing(made.upshift, node)?;
            now = Needs { time: now.time + landing.needs.time, distance: now.distance + landing.needs.distance };
            (row, node) = (landing.row, landing.node);
            if now.distance >= distance {
                let end = *grid.speeds.get(node)?;
                return Some(Found { time: now.time - (now.distance - distance) / end, end, shifts });
            }
            continue;
        }
        let Some(cell) = grid.cell(row, node) else {
            let time = now.time + (distance - now.distance) / speed;
            return time.is_finite().then_some(Found { time, end: speed, shifts });
        };
        let to = *grid.speeds.get(node + 1)?;
        if now.distance + cell.distance >= distance {
            let share = (distance - now.distance) / cell.distance;
            let time = now.time + share * cell.time;
            return Some(Found { time, end: speed + share * (to - speed), shifts });
        }
        now = Needs { time: now.time + cell.time, distance: now.distance + cell.distance };
        node += 1;
    }
}
