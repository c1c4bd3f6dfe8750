//! The plausible tooth pairs inside an interval of ratio, smallest first.

use std::ops::RangeInclusive;

use super::reading::Interval;
use crate::gearing::hunting::Hunting;
use crate::gearing::teeth::{Mesh, Ratio};

/// The counts that are plausible.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Counts {
    /// For the driver, or the pinion.
    pub driver: RangeInclusive<u16>,
    /// For the driven gear, or the ring.
    pub driven: RangeInclusive<u16>,
}

impl Counts {
    /// An axle's: pinion 8 to 21, ring 25 to 61. Common practice, no published source.
    pub fn of_axle() -> Self {
        Self { driver: 8..=21, driven: 25..=61 }
    }

    /// A gear pair's of a two-shaft box: 10 to 60 each. Common practice, no published source.
    pub fn of_gearbox() -> Self {
        Self { driver: 10..=60, driven: 10..=60 }
    }
}

/// What pairs there are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pairs {
    /// The pairs inside, by tooth sum from the smallest, hunting pairs before others of the same sum.
    pub inside: Vec<Mesh>,
    /// Where there is none: the pair whose ratio comes nearest.
    pub nearest: Option<Mesh>,
}

/// Every pair of plausible counts whose ratio lies inside.
pub fn pairs_in(interval: &Interval, counts: &Counts) -> Pairs {
    let all = || counts.driver.clone().flat_map(|driver| counts.driven.clone().filter_map(move |driven| Mesh::new(driver, driven)));
    let mut inside: Vec<Mesh> = all().filter(|mesh| interval.contains(mesh.ratio())).collect();
    crate::order::by_key(&mut inside, |mesh| (mesh.sum(), !Hunting::of(*mesh).is_hunting(), mesh.driver));
    let nearest = if inside.is_empty() { all().min_by(|one, other| near(interval, *one).total_cmp(&near(interval, *other))) } else { None };
    Pairs { inside, nearest }
}

fn near(interval: &Interval, mesh: Mesh) -> f64 {
    let ratio: Ratio = mesh.ratio();
    interval.distance(ratio)
}
