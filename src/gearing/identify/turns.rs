//! From turns to the gear sets and axles whose ratio they leave, and what to turn next.

use super::Candidate;
use super::reading::{Interval, by_eye, size};
use crate::gearing::GearNumber;
use crate::gearing::axle::FinalDrive;
use crate::gearing::gearbox::Gearbox;
use crate::gearing::printed::PrintedRatio;
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::{Ratio, decimal};

/// A reading of a gearbox.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Turned {
    /// The gear it was taken in; `None` where that is not known.
    pub selected: Option<Selected>,
    /// The ratios it leaves.
    pub interval: Interval,
}

/// How well a candidate agrees with the readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Match {
    /// Which candidate, by its place in the list.
    pub candidate: usize,
    /// The gear that each reading fits, or comes nearest to; `None` where the set has no such gear.
    pub gears: Vec<Option<Selected>>,
    /// How far the worst reading is outside its interval, as a share of the ratio; 0 where all fit.
    pub outside: f64,
    /// How far the readings are from the middles of their intervals, summed.
    pub off_centre: f64,
}

impl Match {
    /// Whether every reading fits.
    pub fn fits(&self) -> bool {
        self.outside <= 0.0
    }
}

/// What to turn next to tell the sets left apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NextTurn {
    /// The gear to select; `None` for an axle.
    pub selected: Option<Selected>,
    /// How many groups the sets left fall into by it.
    pub groups: usize,
    /// Turns of the input that tell the nearest two groups apart with the output read to a twentieth of a turn.
    pub input_turns: i128,
}

/// What the turns say.
#[derive(Clone, Debug, PartialEq)]
pub struct ByTurns {
    /// Every candidate, those that fit first, each group by nearness.
    pub ranked: Vec<Match>,
    /// What to turn next; `None` where one or none is left, or nothing tells the rest apart.
    pub next: Option<NextTurn>,
}

impl ByTurns {
    /// The candidates that fit.
    pub fn fitting(&self) -> impl Iterator<Item = usize> + '_ {
        self.ranked.iter().filter(|found| found.fits()).map(|found| found.candidate)
    }

    /// The candidate that comes nearest where none fits.
    pub fn nearest(&self) -> Option<&Match> {
        self.ranked.first().filter(|best| !best.fits())
    }
}

/// The gear sets that the readings leave.
pub fn by_turns(readings: &[Turned], candidates: &[Candidate<'_>]) -> ByTurns {
    let matches = candidates.iter().enumerate().map(|(at, candidate)| judge(at, readings, candidate.gearbox));
    let ranked = rank(matches.collect());
    let left: Vec<&Gearbox> =
        ranked.iter().filter(|found| found.fits()).filter_map(|found| candidates.get(found.candidate)).map(|set| set.gearbox).collect();
    let gears = left.iter().map(|gearbox| gearbox.gears().len()).max().unwrap_or_default();
    let choices = GearNumber::lowest(gears).map(Selected::Gear).chain([Selected::Reverse]);
    let useful = choices.filter_map(|selected| {
        // No turning tells a ratio from the one it was rounded to.
        let exact = |gearbox: &&Gearbox| ratio(gearbox, selected).filter(|_| printed(gearbox, selected).is_none());
        let ratios: Option<Vec<Ratio>> = left.iter().map(exact).collect();
        Some(NextTurn { selected: Some(selected), ..apart(ratios?)? })
    });
    ByTurns { next: useful.min_by_key(|next| (std::cmp::Reverse(next.groups), next.input_turns)), ranked }
}

/// The axles that a reading leaves: `drives` are name and drive.
pub fn axles_by_turns(interval: Interval, drives: &[FinalDrive]) -> ByTurns {
    let matches = drives.iter().enumerate().map(|(candidate, drive)| Match {
        candidate,
        gears: Vec::new(),
        outside: interval.distance(drive.ratio()),
        off_centre: interval.off_centre(drive.ratio()),
    });
    let ranked = rank(matches.collect());
    let left = ranked.iter().filter(|found| found.fits()).filter_map(|found| drives.get(found.candidate));
    ByTurns { next: apart(left.map(|drive| drive.ratio()).collect()), ranked }
}

fn rank(mut matches: Vec<Match>) -> Vec<Match> {
    crate::order::by(&mut matches, |one, other| one.outside.total_cmp(&other.outside).then(one.off_centre.total_cmp(&other.off_centre)));
    matches
}

fn judge(candidate: usize, readings: &[Turned], gearbox: &Gearbox) -> Match {
    let mut found = Match { candidate, gears: Vec::new(), outside: 0.0, off_centre: 0.0 };
    for reading in readings {
        let all = gearbox.numbers().map(Selected::Gear).chain([Selected::Reverse]);
        let choices = all.filter(|selected| reading.selected.is_none_or(|wanted| wanted == *selected));
        let near = choices.filter_map(|selected| {
            let ratio = ratio(gearbox, selected)?;
            let interval = printed(gearbox, selected).map_or(reading.interval, |printed| reading.interval.widened(&printed));
            Some((selected, interval.distance(ratio), interval.off_centre(ratio)))
        });
        let best = near.min_by(|one, other| one.1.total_cmp(&other.1).then(one.2.total_cmp(&other.2)));
        found.gears.push(best.map(|best| best.0));
        // A set without that gear is further off than any that has it.
        found.outside = found.outside.max(best.map_or(f64::INFINITY, |best| best.1));
        found.off_centre += best.map_or(f64::INFINITY, |best| best.2);
    }
    found
}

fn ratio(gearbox: &Gearbox, selected: Selected) -> Option<Ratio> {
    match selected {
        Selected::Gear(gear) => gearbox.ratio(gear).map(size),
        Selected::Reverse => gearbox.reverse_ratio().map(size),
        Selected::Neutral => None,
    }
}

/// The printed figure of a gear that is not counted.
fn printed(gearbox: &Gearbox, selected: Selected) -> Option<PrintedRatio> {
    match selected {
        Selected::Gear(gear) => gear.of(gearbox.gears())?.printed(),
        Selected::Neutral | Selected::Reverse => None,
    }
}

/// How many turns tell different ratios apart: n/r₁ − n/r₂ must pass twice the uncertainty.
fn apart(ratios: Vec<Ratio>) -> Option<NextTurn> {
    let mut ratios = ratios;
    crate::order::by(&mut ratios, Ord::cmp);
    ratios.dedup();
    let gaps = ratios.windows(2).filter_map(|pair| Some(pair.first()?.recip() - pair.get(1)?.recip()));
    let least = gaps.min_by(|one, other| decimal(*one).total_cmp(&decimal(*other)))?;
    let turns = by_eye() * Ratio::from_integer(2) / least;
    Some(NextTurn { selected: None, groups: ratios.len(), input_turns: turns.to_integer() + 1 })
}
