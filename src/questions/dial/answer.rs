//! What does the speedometer read, is that within the law, and which gears would make it true?

use std::collections::BTreeMap;

use super::read::SpeedoShared;
use crate::gearing::teeth::decimal;
use crate::questions::road::tyres::Fastest;
use crate::questions::{Conditions, Setup};
use crate::speedometer::direction::cable_turning;
use crate::speedometer::reading::driven_wanted;
use crate::speedometer::{
    Candidate, Judgement, Ranking, RoadCheck, Role, SpeedoGear, Speedometer, TestSpeed, Turning, Wanted, rank_shelf, shaft_turns,
    solve_road_check,
};
use crate::units::{TurnsPerDistance, Velocity};

/// How many of the best combinations are kept.
const KEPT: usize = 6;
/// How many combinations that mend what a road check found are kept.
const MENDING: usize = 2;

/// The speedometer of a setup.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Speedo {
    /// Turns over a distance of the shaft that carries the drive gear: the output shaft, before any stage behind the gearbox.
    pub shaft: Option<TurnsPerDistance>,
    /// The speedometer as it is fitted.
    pub fitted: Option<Speedometer>,
    /// What it shows at the check speed.
    pub reads: Option<Velocity>,
    /// How the rule judges that.
    pub judgement: Option<Judgement>,
    /// The readings at the rule's own test speeds.
    pub tested: Vec<Tested>,
    /// The best pairs of the shelf without an adapter.
    pub pairs: Ranking,
    /// The best combinations with an adapter, where one is better than the best pair.
    pub with_adapter: Option<Candidate>,
    /// What each drive gear of the shelf wants, by its teeth.
    pub drives: Vec<DriveChoice>,
    /// What the road check says.
    pub road_check: Option<RoadCheck>,
    /// The best pairs of the shelf for the ratio that the road check found, where gears mend it.
    pub mending: Vec<Candidate>,
    /// Which way the cable turns, seen from the gearbox along the cable, where hand and side are given.
    pub cable: Option<Turning>,
}

/// A reading at a speed the rule tests at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tested {
    /// The speed.
    pub test: TestSpeed,
    /// The true speed.
    pub truth: Velocity,
    /// What the dial shows.
    pub shown: Velocity,
    /// How the rule judges it.
    pub judgement: Judgement,
}

/// A drive gear of the shelf, and the driven gear it wants.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriveChoice {
    /// The drive gear's teeth.
    pub drive: u16,
    /// The driven count that would read true, as a fraction of a tooth.
    pub driven: f64,
    /// The best pair the shelf has with such a drive gear.
    pub nearest: Candidate,
}

impl Speedo {
    /// The speedometer of a setup, with what the shelf holds for it; `fastest` chooses the test speeds of some rules.
    pub fn of(setup: &Setup, conditions: &Conditions, fastest: Option<Fastest>, shelf: &[SpeedoGear]) -> Self {
        let shared = &conditions.speedo;
        let shaft =
            setup.rolling.as_ref().zip(setup.behind_gearbox()).map(|(rolling, behind)| shaft_turns(decimal(behind), rolling.turns()));
        let road_check = solve_road_check(&setup.speedo.readings).ok();
        let mending = road_check.as_ref().map(|check| mending(check, setup, shared, shelf)).unwrap_or_default();
        let cable = setup.speedo.hand.zip(setup.speedo.tap).map(|(hand, tap)| cable_turning(Turning::Clockwise, hand, tap));
        let known = Self { shaft, road_check, mending, cable, ..Self::default() };
        let (Some(shaft), Some(dial)) = (shaft, shared.dial) else { return known };
        let fitted = setup.speedo.train.map(|train| Speedometer { shaft, train, dial });
        let reads = fitted.zip(shared.check).map(|(fitted, check)| fitted.indicated(check));
        let wanted = Wanted { shaft, dial, drive: None, adapters: false, in_stock: shared.in_stock, keep: KEPT };
        let pairs = rank_shelf(shelf, &wanted);
        Self {
            fitted,
            reads,
            judgement: shared.band.zip(shared.check.zip(reads)).map(|(band, (check, reads))| band.judge(check, reads, shared.units)),
            tested: fitted.map(|fitted| tested(&fitted, shared, fastest)).unwrap_or_default(),
            with_adapter: with_adapter(shelf, wanted, &pairs),
            pairs,
            drives: drives(shelf, wanted),
            ..known
        }
    }

    /// The best pair that never reads low, or the best of all where every pair does.
    pub fn proposed(&self) -> Option<&Candidate> {
        self.pairs.best.iter().find(|candidate| candidate.error >= 0.0).or_else(|| self.pairs.best.first())
    }
}

/// What a speedometer reads at the rule's own test speeds.
fn tested(fitted: &Speedometer, shared: &SpeedoShared, fastest: Option<Fastest>) -> Vec<Tested> {
    let Some(band) = shared.band else { return Vec::new() };
    let tests = band.test_speeds(fastest.map(|fastest| fastest.speed), shared.units);
    let judged = |test: TestSpeed| {
        let truth = if test.is_shown { fitted.true_speed(test.speed) } else { test.speed };
        let shown = fitted.indicated(truth);
        Tested { test, truth, shown, judgement: band.judge(truth, shown, shared.units) }
    };
    tests.into_iter().map(judged).collect()
}

/// The best pair for every count of drive teeth on the shelf that has a driven gear to go with it, fewest teeth first.
fn drives(shelf: &[SpeedoGear], wanted: Wanted) -> Vec<DriveChoice> {
    let mut best: BTreeMap<u16, Candidate> = BTreeMap::new();
    for (at, gear) in shelf.iter().enumerate().filter(|(_, gear)| gear.role == Role::Drive) {
        let Some(found) = rank_shelf(shelf, &Wanted { drive: Some(at), keep: 1, ..wanted }).best.into_iter().next() else { continue };
        let kept = best.entry(gear.teeth).or_insert(found);
        if found.error.abs() < kept.error.abs() {
            *kept = found;
        }
    }
    let choice = |(drive, nearest)| DriveChoice { drive, driven: driven_wanted(wanted.shaft, wanted.dial, drive, None), nearest };
    best.into_iter().map(choice).collect()
}

/// The best pairs of the shelf for the ratio a road check found, whatever tyre and axle are thought to be.
fn mending(check: &RoadCheck, setup: &Setup, shared: &SpeedoShared, shelf: &[SpeedoGear]) -> Vec<Candidate> {
    let Some((train, dial)) = setup.speedo.train.zip(shared.dial).filter(|_| check.gears_mend_it()) else { return Vec::new() };
    let shaft = Speedometer::found_by_road(train, dial, check.ratio).shaft;
    rank_shelf(shelf, &Wanted { shaft, dial, drive: None, adapters: false, in_stock: shared.in_stock, keep: MENDING }).best
}

/// The best combination with an adapter, where it beats the best plain pair.
fn with_adapter(shelf: &[SpeedoGear], wanted: Wanted, pairs: &Ranking) -> Option<Candidate> {
    let best = rank_shelf(shelf, &Wanted { adapters: true, keep: 1, ..wanted }).best.into_iter().next()?;
    let plain = pairs.best.first().map_or(f64::INFINITY, |pair| pair.error.abs());
    (best.adapter.is_some() && best.error.abs() < plain).then_some(best)
}
