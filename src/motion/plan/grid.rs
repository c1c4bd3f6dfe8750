//! What each gear needs from one speed of a grid to the next, and what each upshift needs to come back onto it.
//!
//! Most of a grid is never asked for: a gear is not driven below the first shift into it nor past the goal, and most shifts are seen to be
//! worse before the way back onto the grid is worked out. So each answer is worked out when it is first asked for, and kept.

use std::ops::Range;

use uom::si::time::second;

use crate::gearing::GearNumber;
use crate::motion::in_metres_per_second;
use crate::motion::run::Start;
use crate::motion::run::coasting;
use crate::motion::vehicle::Vehicle;
use crate::units::Time;

use super::geared::{Geared, Needs};
use super::search::{Found, Rest};

/// Speeds laid evenly over the whole range, beside those where something changes.
const EVEN: u32 = 64;
/// Into how many parts each of the two stretches beside a shift is cut for the second search.
const CLOSER: u32 = 8;
/// How many speeds are laid towards a balance of thrust and road load, each at half the distance of the one before.
const TOWARDS_BALANCE: usize = 10;

/// An answer that is worked out when it is first asked for.
#[derive(Clone, Copy, Debug, Default)]
pub(super) enum Asked<T> {
    /// Not asked for yet.
    #[default]
    Not,
    /// What it is; `None` where there is none.
    Answered(Option<T>),
}

impl<T: Copy> Asked<T> {
    fn or_work_out(&mut self, anew: impl FnOnce() -> Option<T>) -> Option<T> {
        if let Self::Answered(known) = *self {
            return known;
        }
        let answer = anew();
        *self = Self::Answered(answer);
        answer
    }
}

/// Where coasting through a shift comes out.
#[derive(Clone, Copy, Debug)]
struct Coast {
    /// The speed then (m/s).
    v: f64,
    /// The distance covered (m).
    distance: f64,
    /// The first speed of the grid above it.
    node: usize,
}

/// One gear over the grid.
struct Row<'a> {
    geared: Geared<'a>,
    /// What each stretch needs; `None` where the gear cannot cross it.
    cells: Vec<Asked<Needs>>,
    /// What a shift out of this gear at each speed comes to before the next takes hold.
    coasts: Vec<Asked<Coast>>,
    /// The upshifts out of it.
    upshifts: Range<usize>,
    /// No run is in this gear below this speed of the grid.
    lowest: usize,
    /// The last speed of the grid it comes to.
    highest: usize,
}

/// All upshifts from one gear into another.
struct Upshift {
    /// The rows of the two gears.
    rows: (usize, usize),
    /// What the upper gear needs from where the shift at each speed comes out to the grid; `None` where it could not go on.
    ways_back: Vec<Asked<Needs>>,
}

/// Into which row a gear may be left.
#[derive(Clone, Copy)]
pub(super) enum Next {
    /// Any above it.
    Any,
    /// This one.
    Only(usize),
    /// None.
    None,
}

/// Where an upshift comes back onto the grid.
#[derive(Clone, Copy, Debug)]
pub(super) struct Landing {
    /// The row of the upper gear.
    pub(super) row: usize,
    /// The first speed of the grid the upper gear then reaches.
    pub(super) node: usize,
    /// What shift and way there need.
    pub(super) needs: Needs,
}

/// Every gear from the first used one up, over the same rising speeds (m/s).
pub(super) struct Grid<'a> {
    pub(super) speeds: Vec<f64>,
    rows: Vec<Row<'a>>,
    upshifts: Vec<Upshift>,
    /// Where the run begins.
    pub(super) start: usize,
    shift_s: f64,
}

/// What a grid has come to know, for other grids of the same vehicle, start and shift time.
#[derive(Clone, Debug, Default)]
pub(super) struct Known {
    speeds: Vec<f64>,
    cells: Vec<Vec<Asked<Needs>>>,
    coasts: Vec<Vec<Asked<Coast>>>,
}

/// What may be gained by an upshift is not looked at closer where it cannot be the best by more than any rounding (s).
const ROUNDING_S: f64 = 1e-9;

impl<'a> Grid<'a> {
    /// Lays the grid for a start, with speeds of its own beside the usual ones. What another grid of the same start and vehicle knows
    /// between the same speeds is taken from it.
    pub(super) fn lay(vehicle: &'a Vehicle, start: Start, shift_time: Time, more: &[f64], known: Option<&Known>) -> Self {
        let (first, from) = match start {
            Start::Standing { .. } => (GearNumber::FIRST, 0.0),
            Start::Rolling { gear, speed } => (gear, in_metres_per_second(speed)),
        };
        let gears = geared(vehicle, start, first);
        let speeds = speeds(&gears, more.iter().copied().chain([from]));
        let start = speeds.partition_point(|speed| *speed < from);
        let nothing = Known::default();
        let known = known.unwrap_or(&nothing);
        let places = known.places(&speeds);
        let mut upshifts = Vec::new();
        for (lower_at, lower) in gears.iter().enumerate() {
            let usable = speeds.partition_point(|speed| *speed <= lower.fastest());
            let taller = gears.iter().enumerate().skip(lower_at + 1).filter(|(_, upper)| upper.overall < lower.overall);
            upshifts.extend(taller.map(|(at, _)| Upshift { rows: (lower_at, at), ways_back: vec![Asked::Not; usable] }));
        }
        let mut from = 0;
        let row = |(at, geared): (usize, Geared<'a>)| {
            let to = from + upshifts.iter().skip(from).take_while(|upshift| upshift.rows.0 == at).count();
            let out = std::mem::replace(&mut from, to)..to;
            // a shift comes out where the clutch of the upper gear is closed, and the grid is met above that
            let lowest = if at == 0 { start } else { speeds.partition_point(|speed| *speed <= geared.locks_at()) };
            let usable = speeds.partition_point(|speed| *speed <= geared.fastest());
            let cells = known.cells(at, &places);
            let coasts = if out.is_empty() { Vec::new() } else { known.coasts(at, places.get(..usable).unwrap_or(&places), &speeds) };
            Row { geared, cells, coasts, upshifts: out, lowest, highest: usable.saturating_sub(1) }
        };
        let rows = gears.into_iter().enumerate().map(row).collect();
        Self { speeds, rows, upshifts, start, shift_s: shift_time.get::<second>().max(0.0) }
    }

    /// What this grid has come to know.
    pub(super) fn known(self) -> Known {
        let (cells, coasts) = self.rows.into_iter().map(|row| (row.cells, row.coasts)).unzip();
        Known { speeds: self.speeds, cells, coasts }
    }

    /// How many gears there are.
    pub(super) fn many(&self) -> usize {
        self.rows.len()
    }

    /// The gear of a row.
    pub(super) fn gear(&self, row: usize) -> Option<GearNumber> {
        self.rows.get(row).map(|row| row.geared.gear)
    }

    /// What the stretch that begins at a node needs in the gear of a row.
    pub(super) fn cell(&mut self, row: usize, node: usize) -> Option<Needs> {
        self.rows.get_mut(row)?.cell(&self.speeds, node)
    }

    /// The highest speed each gear comes to.
    pub(super) fn ends(&mut self) -> Vec<f64> {
        let last = |row: &mut Row<'_>| {
            let node = (0..row.cells.len()).rev().find(|node| row.cell(&self.speeds, *node).is_some())?;
            self.speeds.get(node + 1).copied()
        };
        self.rows.iter_mut().filter_map(last).collect()
    }

    /// Where an upshift at a node lands; `None` where the upper gear could not go on.
    pub(super) fn landing(&mut self, upshift: usize, node: usize) -> Option<Landing> {
        let upshift = self.upshifts.get_mut(upshift)?;
        let (lower, upper) = pair(&mut self.rows, upshift.rows)?;
        let coast = lower.coast(&self.speeds, self.shift_s, node)?;
        let rest = upshift.way_back(upper, &self.speeds, coast, node)?;
        Some(Landing { row: upshift.rows.1, node: coast.node, needs: rest.after(&coast, self.shift_s) })
    }

    /// The rows of an upshift.
    pub(super) fn rows_of(&self, upshift: usize) -> Option<(usize, usize)> {
        self.upshifts.get(upshift).map(|upshift| upshift.rows)
    }

    /// What to do in a row at each speed up to a node, for the least of time − `metre`·distance: put into `rest`, the taller rows known.
    pub(super) fn best_rest(&mut self, at: usize, rest: &mut Rest, metre: f64, next: Next) {
        let (end, shift_s, speeds) = (rest.end, self.shift_s, &self.speeds);
        let worth = |needs: Needs| needs.time - metre * needs.distance;
        // below the speed at the goal no stretch is worth less than nothing
        let rises = speeds.get(end).is_some_and(|speed| speed * metre <= 1.0 + 1e-13);
        let Some((row, taller)) = self.rows.get_mut(at..).and_then(|rows| rows.split_first_mut()) else { return };
        let upshifts = match next {
            Next::Any => row.upshifts.clone(),
            Next::None => 0..0,
            Next::Only(row_after) => {
                let is_it = |index: &usize| self.upshifts.get(*index).is_some_and(|upshift| upshift.rows.1 == row_after);
                row.upshifts.clone().find(is_it).map_or(0..0, |index| index..index + 1)
            }
        };
        let first = upshifts.start;
        let out = self.upshifts.get_mut(upshifts).unwrap_or_default();
        let (mut own, taller_rest) = rest.split(at);
        let is_goal = end.checked_sub(1).and_then(|before| row.cell(speeds, before)).is_some();
        let mut beyond = f64::INFINITY;
        for node in (row.lowest..=end.min(row.highest)).rev() {
            let mut least = match row.cell(speeds, node) {
                _ if is_goal && node == end => 0.0,
                None => f64::INFINITY,
                Some(cell) => worth(cell) + beyond,
            };
            let mut shift = None;
            if !out.is_empty()
                && let Some(coast) = row.coast(speeds, shift_s, node).filter(|coast| coast.node <= end)
            {
                let soonest = shift_s - metre * coast.distance;
                for (index, upshift) in (first..).zip(out.iter_mut()) {
                    let after = taller_rest.needs(upshift.rows.1 - at - 1, coast.node);
                    if after == f64::INFINITY || (rises && soonest + after >= least + ROUNDING_S) {
                        continue;
                    }
                    let Some(upper) = taller.get_mut(upshift.rows.1 - at - 1) else { continue };
                    let Some(back) = upshift.way_back(upper, speeds, coast, node) else { continue };
                    let shifted = worth(back.after(&coast, shift_s)) + after;
                    if shifted < least {
                        (least, shift) = (shifted, Some(index));
                    }
                }
            }
            own.set(node, least, shift);
            beyond = least;
        }
    }

    /// Speeds close about the shifts of what was found, and the one it ends at.
    pub(super) fn around(&self, found: &Found) -> Vec<f64> {
        let beside = |speed: f64| {
            let at = self.speeds.partition_point(|node| *node < speed);
            let stretches = [at.checked_sub(1).map(|before| (before, at)), Some((at, at + 1))];
            stretches.into_iter().flatten().filter_map(|(from, to)| Some((*self.speeds.get(from)?, *self.speeds.get(to)?)))
        };
        let cut = |(from, to): (f64, f64)| (1..CLOSER).map(move |part| from + (to - from) * f64::from(part) / f64::from(CLOSER));
        found.shifts.iter().flat_map(|shift| beside(shift.speed)).flat_map(cut).chain([found.end]).collect()
    }
}

impl Row<'_> {
    fn cell(&mut self, speeds: &[f64], node: usize) -> Option<Needs> {
        self.cells.get_mut(node)?.or_work_out(|| self.geared.needs(*speeds.get(node)?, *speeds.get(node + 1)?))
    }

    fn coast(&mut self, speeds: &[f64], shift_s: f64, node: usize) -> Option<Coast> {
        let geared = &self.geared;
        self.coasts.get_mut(node)?.or_work_out(|| {
            let v = speeds.get(node).copied().filter(|v| *v >= geared.locks_at())?;
            let coasted = coasting::coast_in(1, geared.masses.open, geared.load, v, shift_s)?;
            Some(Coast { v: coasted.v, distance: coasted.distance, node: speeds.partition_point(|speed| *speed <= coasted.v) })
        })
    }
}

impl Upshift {
    fn way_back(&mut self, upper: &mut Row<'_>, speeds: &[f64], coast: Coast, node: usize) -> Option<Needs> {
        self.ways_back.get_mut(node)?.or_work_out(|| upper.geared.way_back(coast.v, *speeds.get(coast.node)?))
    }
}

impl Needs {
    /// The same after a shift.
    fn after(self, coast: &Coast, shift_s: f64) -> Self {
        Self { time: shift_s + self.time, distance: coast.distance + self.distance }
    }
}

impl Known {
    /// For each speed of another grid, its place in this one.
    fn places(&self, speeds: &[f64]) -> Vec<Option<usize>> {
        let mut at = 0;
        let place = |speed: &f64| {
            at += self.speeds.iter().skip(at).take_while(|known| *known < speed).count();
            // the very same number: nothing else needs the very same time
            self.speeds.get(at).filter(|known| known.to_bits() == speed.to_bits()).map(|_| at)
        };
        speeds.iter().map(place).collect()
    }

    /// A row of another grid whose speeds stand at these places in this one.
    fn cells(&self, row: usize, places: &[Option<usize>]) -> Vec<Asked<Needs>> {
        let known = self.cells.get(row).map_or(&[][..], Vec::as_slice);
        let cell = |pair: &[Option<usize>]| match *pair {
            [Some(from), Some(to)] if to == from + 1 => known.get(from).copied().unwrap_or_default(),
            _ => Asked::Not,
        };
        places.windows(2).map(cell).collect()
    }

    /// The same of what shifts at these speeds come to; `speeds` are those of the other grid.
    fn coasts(&self, row: usize, places: &[Option<usize>], speeds: &[f64]) -> Vec<Asked<Coast>> {
        let known = self.coasts.get(row).map_or(&[][..], Vec::as_slice);
        let coast = |place: &Option<usize>| match place.and_then(|at| known.get(at)) {
            Some(Asked::Answered(Some(coast))) => {
                Asked::Answered(Some(Coast { node: speeds.partition_point(|speed| *speed <= coast.v), ..*coast }))
            }
            known => known.copied().unwrap_or_default(),
        };
        places.iter().map(coast).collect()
    }
}

/// Two rows, the lower one first.
fn pair<'a, 'b>(rows: &'b mut [Row<'a>], (lower, upper): (usize, usize)) -> Option<(&'b mut Row<'a>, &'b mut Row<'a>)> {
    let (low, high) = rows.split_at_mut_checked(upper)?;
    Some((low.get_mut(lower)?, high.first_mut()?))
}

/// The gears that can be used, from the one the run begins in.
fn geared(vehicle: &Vehicle, start: Start, first: GearNumber) -> Vec<Geared<'_>> {
    let launched = match start {
        Start::Standing { launch } => Some(vehicle.pull().held_launch_rpm(launch)),
        Start::Rolling { .. } => None,
    };
    let gears = vehicle.pull().gears().iter().skip(first.place());
    gears.filter_map(|gear| Geared::of(vehicle, gear, launched.filter(|_| gear.gear == first))).collect()
}

/// The speeds of the grid: evenly, where a piece of a gear ends, towards each balance, and those asked for.
fn speeds(gears: &[Geared<'_>], more: impl Iterator<Item = f64>) -> Vec<f64> {
    let fastest = gears.iter().filter_map(|gear| gear.pieces.last()).map(|piece| piece.thrust.to).fold(0.0, f64::max);
    let mut speeds: Vec<f64> = (0..=EVEN).map(|step| fastest * f64::from(step) / f64::from(EVEN)).collect();
    for gear in gears {
        speeds.extend(gear.pieces.iter().map(|piece| piece.thrust.to));
        speeds.extend(gear.balance().into_iter().flat_map(|(from, balance)| {
            let halved = std::iter::successors(Some(0.5 * (balance - from)), |left| Some(0.5 * left));
            halved.take(TOWARDS_BALANCE).map(move |left| balance - left)
        }));
    }
    speeds.extend(more);
    speeds.retain(|speed| (0.0..=fastest).contains(speed));
    speeds.sort_by(f64::total_cmp);
    speeds.dedup_by(|a, b| (*a - *b).abs() <= 1e-9 * fastest);
    speeds
}
