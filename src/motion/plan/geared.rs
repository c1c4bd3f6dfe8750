//! One gear as the grid asks it.

use std::borrow::Cow;

use crate::gearing::GearNumber;
use crate::motion::pull::GearPull;
use crate::motion::road_load::RoadLoad;
use crate::motion::vehicle::{Masses, Piece, Vehicle};

/// Time (s) and distance (m) of a stretch.
#[derive(Clone, Copy, Debug)]
pub(super) struct Needs {
    pub(super) time: f64,
    pub(super) distance: f64,
}

/// One gear as the grid asks it.
pub(super) struct Geared<'a> {
    pub(super) gear: GearNumber,
    pub(super) overall: f64,
    pub(super) pieces: Cow<'a, [Piece]>,
    pub(super) masses: Masses,
    pub(super) load: &'a RoadLoad,
    locks_at: f64,
    /// The piece that was last asked: the next is mostly the same, or beside it.
    last: usize,
}

impl<'a> Geared<'a> {
    /// A gear of a vehicle, its clutch slipping at a launch speed (rpm) where one is given.
    pub(super) fn of(vehicle: &'a Vehicle, gear: &GearPull, launched: Option<f64>) -> Option<Self> {
        let pieces =
            launched.map_or_else(|| Cow::Borrowed(vehicle.pieces(gear.gear)), |rpm| Cow::Owned(vehicle.launch_pieces(gear.gear, rpm)));
        let locks_at = pieces.iter().filter_map(|piece| piece.slip_to).fold(0.0, f64::max);
        let (masses, load) = (vehicle.masses(gear.gear)?, vehicle.load());
        Some(Self { gear: gear.gear, overall: gear.overall, pieces, masses, load, locks_at, last: 0 })
    }

    /// The speed at which the clutch is closed: no driver shifts before, or into a gear in which it would slip.
    pub(super) fn locks_at(&self) -> f64 {
        self.locks_at
    }

    /// The speed at its rev limit, a rounding above it.
    pub(super) fn fastest(&self) -> f64 {
        self.pieces.last().map_or(0.0, |piece| piece.thrust.to * (1.0 + 1e-9))
    }

    /// Where thrust first falls to road load, with the beginning of its piece.
    pub(super) fn balance(&self) -> Option<(f64, f64)> {
        self.pieces.iter().find_map(|piece| {
            let net = piece.thrust.less(self.load);
            net.crossings(0.0).find(|at| *at > net.from && net.at(net.from) > 0.0).map(|at| (net.from, at))
        })
    }

    /// The piece a speed lies on: the first that does not end below it.
    fn piece(&mut self, v: f64) -> Option<&Piece> {
        let ends_below = |at: usize| self.pieces.get(at).is_some_and(|piece| piece.thrust.to < v);
        let mut at = self.last;
        while ends_below(at) {
            at += 1;
        }
        while let Some(before) = at.checked_sub(1).filter(|before| !ends_below(*before)) {
            at = before;
        }
        self.last = at;
        self.pieces.get(at)
    }

    /// Seconds for each m/s at a speed; `None` where the gear does not accelerate there, or ends below.
    fn pace(&mut self, v: f64) -> Option<f64> {
        let (load, masses) = (self.load.at(v), self.masses);
        let piece = self.piece(v)?;
        let net = piece.thrust.at(v) - load;
        (net > 0.0).then(|| masses.on(piece) / net)
    }

    /// Time and distance between two speeds with no kink between them, by Gauss's rule of three nodes.
    pub(super) fn needs(&mut self, from: f64, to: f64) -> Option<Needs> {
        /// Nodes of the rule on −1..1 and weights. Source: any table of Gauss–Legendre quadrature; ±√(3/5), 5/9 and 8/9.
        const RULE: [(f64, f64); 3] = [(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];
        let end = self.pieces.last()?.thrust.to;
        if to > end * (1.0 + 1e-9) {
            return None;
        }
        let (middle, half) = (0.5 * (from + to), 0.5 * (to - from));
        let mut needs = Needs { time: 0.0, distance: 0.0 };
        for (node, weight) in RULE {
            let v = middle + half * node;
            let part = weight * half * self.pace(v.min(end))?;
            needs.time += part;
            needs.distance += part * v;
        }
        // the end itself is taken a rounding below, where the last piece still is
        self.pace(to.min(end)).map(|_| needs)
    }

    /// What is needed from a speed at which a shift into this gear comes out to the next speed of the grid.
    pub(super) fn way_back(&mut self, from: f64, to: f64) -> Option<Needs> {
        if from < self.locks_at {
            return None;
        }
        self.pace(from)?;
        self.needs(from, to)
    }
}
