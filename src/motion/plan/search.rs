//! The best rest of a run from every gear and speed, and the plan that follows from it.

use super::grid::{Grid, Needs, Row, Upshift};
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

/// What to do in one gear at each speed, for the least of time − `metre`·distance up to the last of them.
#[derive(Clone, Default)]
struct Rest {
    /// What the rest of the run needs; without end where the goal is out of reach.
    needs: Vec<f64>,
    /// The upshift to be made there, where one is.
    shift: Vec<Option<usize>>,
}

/// The quickest plan to a goal; `None` where no plan gets there. `near` is what a coarser grid found.
pub(super) fn best(grid: &Grid, wanted: Wanted, near: Option<&Found>) -> Option<Found> {
    match wanted {
        Wanted::Speed(speed) => {
            // speeds closer than a billionth of the greatest are one
            let same = 2e-9 * grid.speeds.last()?;
            let end = grid.speeds.iter().position(|node| (node - speed).abs() <= same)?;
            let policy = policy(grid, end, 0.0, None);
            let time = *policy.first()?.needs.get(grid.start)?;
            time.is_finite().then(|| Found { shifts: shifts(grid, &policy), time, end: speed })
        }
        Wanted::Distance(distance) => {
            // from nothing known, the end of each gear is tried as the speed at the goal: a plan may end held at the limit of any of them
            let guesses = near.map_or_else(|| gear_ends(grid), |near| vec![near.end]);
            let mut tried = Vec::new();
            let found = guesses.into_iter().filter_map(|end| over(grid, distance, end, None, &mut tried));
            let found = found.reduce(|best, next| if next.time < best.time { next } else { best })?;
            Some(with_other_gears(grid, distance, found))
        }
    }
}

/// A plan with a gear more or less, as long as that is quicker: what a metre is worth is known near the plan's own end only, so that two
/// orders of gears that end at different speeds are told apart by their times, not by the policy.
fn with_other_gears(grid: &Grid, distance: f64, found: Found) -> Found {
    let mut best = found;
    for _ in 0..grid.rows.len() {
        let used: Vec<usize> =
            std::iter::once(0).chain(best.shifts.iter().filter_map(|made| Some(grid.upshifts.get(made.upshift)?.rows.1))).collect();
        let others = (1..grid.rows.len()).map(|row| {
            let mut rows: Vec<usize> = used.iter().copied().filter(|used| *used != row).collect();
            if rows.len() == used.len() {
                rows.insert(rows.partition_point(|used| *used < row), row);
            }
            rows
        });
        let quickest = others.filter_map(|rows| over(grid, distance, best.end, Some(&rows), &mut Vec::new()));
        match quickest.reduce(|best, next| if next.time < best.time { next } else { best }) {
            Some(next) if next.time < best.time => best = next,
            _ => break,
        }
    }
    best
}

/// The highest speed each gear comes to.
fn gear_ends(grid: &Grid) -> Vec<f64> {
    let last = |cells: &[Option<Needs>]| grid.speeds.get(cells.iter().rposition(Option::is_some)? + 1).copied();
    grid.rows.iter().filter_map(|row| last(&row.cells)).collect()
}

/// The quickest plan over a distance, beginning with a guess of the speed at its end and going on while that gains time; not again from
/// an end that was tried. `only` these rows may be used, one after the other, where they are given.
fn over(grid: &Grid, distance: f64, guess: f64, only: Option<&[usize]>, tried: &mut Vec<usize>) -> Option<Found> {
    const MOST_ROUNDS: usize = 6;
    let mut best: Option<Found> = None;
    let mut end = guess;
    for _ in 0..MOST_ROUNDS {
        let node = grid.speeds.partition_point(|speed| *speed <= end).checked_sub(1)?.max(grid.start);
        if tried.contains(&node) {
            break;
        }
        tried.push(node);
        let shifts = shifts(grid, &policy(grid, node, 1.0 / end, only));
        let Some(next) = follow(grid, shifts, distance) else { break };
        if best.as_ref().is_some_and(|best| next.time >= best.time - 1e-9) {
            break;
        }
        end = next.end;
        best = Some(next);
    }
    best
}

/// Works from the tallest gear down: what to do in each row, up to the speed `end`. `metre` is what a metre is worth (s/m).
fn policy(grid: &Grid, end: usize, metre: f64, only: Option<&[usize]>) -> Vec<Rest> {
    let allowed = |(from, to): (usize, usize)| only.is_none_or(|rows| rows.windows(2).any(|pair| pair == [from, to]));
    let mut policy = vec![Rest::default(); grid.rows.len()];
    for (at, row) in grid.rows.iter().enumerate().rev() {
        if only.is_some_and(|rows| !rows.contains(&at)) {
            continue;
        }
        let upshifts: Vec<(usize, &Upshift)> =
            grid.upshifts.iter().enumerate().filter(|(_, upshift)| upshift.rows.0 == at && allowed(upshift.rows)).collect();
        let rest = rest(row, &upshifts, &policy, end, metre);
        if let Some(place) = policy.get_mut(at) {
            *place = rest;
        }
    }
    policy
}

/// Works from the highest speed back, the taller gears known.
fn rest(row: &Row, upshifts: &[(usize, &Upshift)], taller: &[Rest], end: usize, metre: f64) -> Rest {
    let worth = |needs: Needs| needs.time - metre * needs.distance;
    let cell = |node: usize| row.cells.get(node).copied().flatten();
    let mut rest = Rest { needs: vec![f64::INFINITY; end + 1], shift: vec![None; end + 1] };
    let mut beyond = f64::INFINITY;
    for (node, (needs, shift)) in rest.needs.iter_mut().zip(&mut rest.shift).enumerate().rev() {
        let is_goal = node == end && node.checked_sub(1).and_then(cell).is_some();
        let mut least = if is_goal { 0.0 } else { cell(node).map_or(f64::INFINITY, |cell| worth(cell) + beyond) };
        for (index, upshift) in upshifts {
            let Some(landing) = upshift.landings.get(node).copied().flatten() else { continue };
            let after = taller.get(upshift.rows.1).and_then(|rest| rest.needs.get(landing.node)).copied().unwrap_or(f64::INFINITY);
            let shifted = worth(landing.needs) + after;
            if shifted < least {
                (least, *shift) = (shifted, Some(*index));
            }
        }
        (*needs, beyond) = (least, least);
    }
    rest
}

/// The upshifts the policy makes from the start on.
fn shifts(grid: &Grid, policy: &[Rest]) -> Vec<Made> {
    let (mut row, mut node) = (0, grid.start);
    let mut made = Vec::new();
    while let Some(choice) = policy.get(row).and_then(|rest| rest.shift.get(node)) {
        let Some((index, upshift)) = choice.and_then(|index| Some((index, grid.upshifts.get(index)?))) else {
            node += 1;
            continue;
        };
        let gear = |row: usize| grid.rows.get(row).map(|row| row.gear);
        let (Some(from), Some(to), Some(speed)) = (gear(row), gear(upshift.rows.1), grid.speeds.get(node)) else { break };
        let Some(landing) = upshift.landings.get(node).copied().flatten() else { break };
        made.push(Made { from, to, speed: *speed, upshift: index, node });
        (row, node) = (upshift.rows.1, landing.node);
    }
    made
}

/// Follows a plan until a distance is covered; a gear that comes to its end is held there.
fn follow(grid: &Grid, shifts: Vec<Made>, distance: f64) -> Option<Found> {
    let (mut row, mut node) = (0, grid.start);
    let mut now = Needs { time: 0.0, distance: 0.0 };
    let mut left = shifts.iter().peekable();
    loop {
        let speed = *grid.speeds.get(node)?;
        if let Some(made) = left.next_if(|made| made.node == node) {
            let upshift = grid.upshifts.get(made.upshift)?;
            let landing = upshift.landings.get(node).copied().flatten()?;
            now = Needs { time: now.time + landing.needs.time, distance: now.distance + landing.needs.distance };
            (row, node) = (upshift.rows.1, landing.node);
            if now.distance >= distance {
                let end = *grid.speeds.get(node)?;
                return Some(Found { time: now.time - (now.distance - distance) / end, end, shifts });
            }
            continue;
        }
        let Some(cell) = grid.rows.get(row)?.cells.get(node).copied().flatten() else {
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
