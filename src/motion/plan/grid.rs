//! What each gear needs from one speed of a grid to the next, and what each upshift needs to come back onto it.

use uom::si::time::second;

use crate::gearing::GearNumber;
use crate::motion::in_metres_per_second;
use crate::motion::road_load::RoadLoad;
use crate::motion::run::Start;
use crate::motion::run::coasting::{self, Coasted};
use crate::motion::vehicle::{Masses, Piece, Vehicle};
use crate::units::Time;

use super::search::Found;

/// Speeds laid evenly over the whole range, beside those where something changes.
const EVEN: u32 = 64;
/// Into how many parts each of the two stretches beside a shift is cut for the second search.
const CLOSER: u32 = 8;
/// How many speeds are laid towards a balance of thrust and road load, each at half the distance of the one before.
const TOWARDS_BALANCE: usize = 10;

/// Time (s) and distance (m) of a stretch.
#[derive(Clone, Copy, Debug)]
pub(super) struct Needs {
    pub(super) time: f64,
    pub(super) distance: f64,
}

/// One gear over the grid.
#[derive(Debug)]
pub(super) struct Row {
    /// The gear.
    pub(super) gear: GearNumber,
    /// What each stretch needs; `None` where the gear cannot cross it.
    pub(super) cells: Vec<Option<Needs>>,
}

/// Where an upshift comes back onto the grid.
#[derive(Clone, Copy, Debug)]
pub(super) struct Landing {
    /// The first speed of the grid the upper gear then reaches.
    pub(super) node: usize,
    /// What shift and way there need.
    pub(super) needs: Needs,
}

/// All upshifts from one gear into another.
#[derive(Debug)]
pub(super) struct Upshift {
    /// The rows of the two gears.
    pub(super) rows: (usize, usize),
    /// Where a shift at each speed lands; `None` where the upper gear could not go on.
    pub(super) landings: Vec<Option<Landing>>,
}

/// Every gear from the first used one up, over the same rising speeds (m/s).
#[derive(Debug)]
pub(super) struct Grid {
    pub(super) speeds: Vec<f64>,
    pub(super) rows: Vec<Row>,
    pub(super) upshifts: Vec<Upshift>,
    /// Where the run begins.
    pub(super) start: usize,
    /// For each gear, what coasting through a shift from each speed comes to, up to its fastest.
    coasted: Vec<Vec<Option<Coasted>>>,
}

/// One gear as the grid asks it.
struct Geared<'a> {
    gear: GearNumber,
    overall: f64,
    pieces: Vec<Piece>,
    masses: Masses,
    load: &'a RoadLoad,
}

impl Grid {
    /// Lays the grid for a start, with speeds of its own beside the usual ones. What a coarser grid of the same start and vehicle knows
    /// between the same speeds is taken from it.
    pub(super) fn lay(vehicle: &Vehicle, start: Start, shift_time: Time, more: &[f64], coarse: Option<&Self>) -> Self {
        let (first, from) = match start {
            Start::Standing { .. } => (GearNumber::FIRST, 0.0),
            Start::Rolling { gear, speed } => (gear, in_metres_per_second(speed)),
        };
        let gears = geared(vehicle, start, first);
        let speeds = speeds(&gears, more.iter().copied().chain([from]));
        let known = Known::of(&speeds, coarse);
        let cells = |(at, gear): (usize, &Geared<'_>)| {
            let stretch = |(node, pair): (usize, &[f64])| known.cell(at, node, || gear.needs(*pair.first()?, *pair.get(1)?));
            Row { gear: gear.gear, cells: speeds.windows(2).enumerate().map(stretch).collect() }
        };
        let rows = gears.iter().enumerate().map(cells).collect();
        let shift_s = shift_time.get::<second>().max(0.0);
        let mut upshifts = Vec::new();
        let mut coasted = vec![Vec::new(); gears.len()];
        for (lower_at, lower) in gears.iter().enumerate() {
            let taller: Vec<usize> =
                (lower_at + 1..gears.len()).filter(|at| gears.get(*at).is_some_and(|upper| upper.overall < lower.overall)).collect();
            if taller.is_empty() {
                continue;
            }
            let usable = speeds.partition_point(|speed| *speed <= lower.fastest());
            let coast = |(node, v): (usize, &f64)| {
                let is_closed = *v >= lower.locks_at();
                let anew = || is_closed.then(|| coasting::coast_in(1, lower.masses.open, lower.load, *v, shift_s)).flatten();
                known.coasted(lower_at, node, anew)
            };
            let after: Vec<Option<Coasted>> = speeds.iter().enumerate().take(usable).map(coast).collect();
            let upshift = |at: usize| {
                let landings = after.iter().map(|after| gears.get(at)?.landing(&speeds, (*after)?, shift_s)).collect();
                Upshift { rows: (lower_at, at), landings }
            };
            upshifts.extend(taller.into_iter().map(upshift));
            if let Some(place) = coasted.get_mut(lower_at) {
                *place = after;
            }
        }
        let start = speeds.partition_point(|speed| *speed < from);
        Self { speeds, rows, upshifts, start, coasted }
    }

    /// Speeds close about the shifts of what was found, and the one it ends at.
    pub(super) fn around(&self, found: &Found) -> Vec<f64> {
        let beside = |speed: f64| {
            let at = self.speeds.partition_point(|node| *node < speed);
            let stretches = [at.checked_sub(1).map(|before| (before, at)), Some((at, at + 1))];
            stretches
                .into_iter()
                .flatten()
                .filter_map(|(from, to)| Some((*self.speeds.get(from)?, *self.speeds.get(to)?)))
                .collect::<Vec<_>>()
        };
        let cut = |(from, to): (f64, f64)| (1..CLOSER).map(move |part| from + (to - from) * f64::from(part) / f64::from(CLOSER));
        found.shifts.iter().flat_map(|shift| beside(shift.speed)).flat_map(cut).chain([found.end]).collect()
    }
}

/// What a coarser grid knows already of a finer one.
struct Known<'a> {
    coarse: Option<&'a Grid>,
    /// For each speed of the finer grid, its place in the coarser one.
    places: Vec<Option<usize>>,
}

impl<'a> Known<'a> {
    fn of(speeds: &[f64], coarse: Option<&'a Grid>) -> Self {
        let place = |grid: &Grid, speed: f64| {
            let at = grid.speeds.partition_point(|node| *node < speed);
            // the very same number: nothing else needs the very same time
            grid.speeds.get(at).filter(|node| node.to_bits() == speed.to_bits()).map(|_| at)
        };
        Self { coarse, places: coarse.map_or_else(Vec::new, |grid| speeds.iter().map(|speed| place(grid, *speed)).collect()) }
    }

    fn place(&self, node: usize) -> Option<usize> {
        self.places.get(node).copied().flatten()
    }

    /// What the stretch that begins at a node needs in the gear of a row: as it is known, else worked out.
    fn cell(&self, row: usize, node: usize, anew: impl FnOnce() -> Option<Needs>) -> Option<Needs> {
        let from = self.place(node).filter(|from| self.place(node + 1) == Some(from + 1));
        let known = from.and_then(|from| self.coarse?.rows.get(row)?.cells.get(from));
        known.map_or_else(anew, |cell| *cell)
    }

    /// What coasting through a shift from a node comes to in the gear of a row: as it is known, else worked out.
    fn coasted(&self, row: usize, node: usize, anew: impl FnOnce() -> Option<Coasted>) -> Option<Coasted> {
        let known = self.place(node).and_then(|at| self.coarse?.coasted.get(row)?.get(at));
        known.map_or_else(anew, |coasted| *coasted)
    }
}

/// The gears that can be used, from the one the run begins in.
fn geared(vehicle: &Vehicle, start: Start, first: GearNumber) -> Vec<Geared<'_>> {
    let launched = match start {
        Start::Standing { launch } => Some(vehicle.pull().held_launch_rpm(launch)),
        Start::Rolling { .. } => None,
    };
    let gears = vehicle.pull().gears().iter().skip(first.place());
    let one = |gear: &crate::motion::pull::GearPull| {
        let at_launch = launched.filter(|_| gear.gear == first);
        let pieces = at_launch.map_or_else(|| vehicle.pieces(gear.gear).to_vec(), |rpm| vehicle.launch_pieces(gear.gear, rpm));
        Some(Geared { gear: gear.gear, overall: gear.overall, pieces, masses: vehicle.masses(gear.gear)?, load: vehicle.load() })
    };
    gears.filter_map(one).collect()
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

impl Geared<'_> {
    /// The speed at which the clutch is closed: no driver shifts before, or into a gear in which it would slip.
    fn locks_at(&self) -> f64 {
        self.pieces.iter().filter_map(|piece| piece.slip_to).fold(0.0, f64::max)
    }

    /// The speed at its rev limit, a rounding above it.
    fn fastest(&self) -> f64 {
        self.pieces.last().map_or(0.0, |piece| piece.thrust.to * (1.0 + 1e-9))
    }

    /// Where thrust first falls to road load, with the beginning of its piece.
    fn balance(&self) -> Option<(f64, f64)> {
        self.pieces.iter().find_map(|piece| {
            let net = piece.thrust.less(self.load);
            net.crossings(0.0).into_iter().find(|at| *at > net.from && net.at(net.from) > 0.0).map(|at| (net.from, at))
        })
    }

    /// Seconds for each m/s at a speed; `None` where the gear does not accelerate there, or ends below.
    fn pace(&self, v: f64) -> Option<f64> {
        let piece = self.pieces.get(self.pieces.partition_point(|piece| piece.thrust.to < v))?;
        let net = piece.thrust.at(v) - self.load.at(v);
        (net > 0.0).then(|| self.masses.on(piece) / net)
    }

    /// Time and distance between two speeds with no kink between them, by Gauss's rule of three nodes.
    fn needs(&self, from: f64, to: f64) -> Option<Needs> {
        /// Nodes of the rule on −1..1 and weights. Source: any table of Gauss–Legendre quadrature; ±√(3/5), 5/9 and 8/9.
        const RULE: [(f64, f64); 3] = [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];
        let end = self.pieces.last()?.thrust.to;
        // the end itself is taken a rounding below, where the last piece still is
        self.pace(to.min(end)).filter(|_| to <= end * (1.0 + 1e-9))?;
        let (middle, half) = (0.5 * (from + to), 0.5 * (to - from));
        let mut needs = Needs { time: 0.0, distance: 0.0 };
        for (node, weight) in RULE {
            let v = middle + half * node;
            let part = weight * half * self.pace(v.min(end))?;
            needs.time += part;
            needs.distance += part * v;
        }
        Some(needs)
    }

    /// What is needed to come from a shift to the next speed of the grid in this gear.
    fn landing(&self, speeds: &[f64], after: Coasted, shift_s: f64) -> Option<Landing> {
        let node = speeds.partition_point(|speed| *speed <= after.v);
        self.pace(after.v).filter(|_| after.v >= self.locks_at())?;
        let rest = self.needs(after.v, *speeds.get(node)?)?;
        Some(Landing { node, needs: Needs { time: shift_s + rest.time, distance: after.distance + rest.distance } })
    }
}
