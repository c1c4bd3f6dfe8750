//! What does the speedometer read, is that within the law, and which gears would make it true?
//!
//! What a dial shows is known from a road check, or worked out from what the dial expects. Where there is neither, nothing is said of it.

use std::collections::BTreeMap;

use super::read::{Solved, SpeedoShared};
use crate::gearing::teeth::decimal;
use crate::questions::{Conditions, Setup};
use crate::speedometer::direction::cable_turning;
use crate::speedometer::reading::driven_wanted;
use crate::speedometer::work::{Fitted, is_near};
use crate::speedometer::{
    Band, Candidate, Dial, Judgement, Ranking, RoadCheck, Role, SpeedoGear, Speedometer, TestSpeed, Train, Turning, Verdict, Wanted, Work,
    rank_shelf, shaft_turns, solve_road_check,
};
use crate::units::limits::DIAL_CONSTANT;
use crate::units::{System, TurnsPerDistance, Velocity};

/// How many of the best combinations are kept.
const KEPT: usize = 6;

/// A typed constant that differs from the road check by more than this share is spoken of: half of what a tyre's rolling is known to.
const DISAGREES: f64 = 0.02;

/// The speedometer of a setup.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Speedo {
    /// Turns over a distance of the shaft that carries the drive gear.
    pub shaft: Option<TurnsPerDistance>,
    /// How it is known what the dial does; nothing is said of it where it is not.
    pub basis: Option<Basis>,
    /// The speedometer as it is fitted: it reads as its road check says, where there is one.
    pub fitted: Option<Speedometer>,
    /// What the dial shows too much whatever the speed, as its road check says.
    pub offset: Velocity,
    /// What it shows at the check speed.
    pub reads: Option<Velocity>,
    /// The stages behind the drive gear that can be switched: in, each makes the dial read otherwise.
    pub switched: Vec<Switched>,
    /// The shelf's pairs without an adapter, in the order they are proposed in.
    pub pairs: Ranking,
    /// The best combination with an adapter, where it is better than the best pair.
    pub with_adapter: Option<Candidate>,
    /// What each drive gear of the shelf wants, by its teeth.
    pub drives: Vec<DriveChoice>,
    /// What to fit.
    pub proposal: Option<Proposal>,
    /// What the road check says.
    pub road_check: Option<RoadCheck>,
    /// What the typed constant would have the dial read, over what the road check found, where they disagree.
    pub disagrees: Option<f64>,
    /// Which way the cable turns, seen from the gearbox along the cable, where hand and side are given.
    pub cable: Option<Turning>,
}

/// How it is known what a dial does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The setup's own road check.
    RoadCheck,
    /// What the dial expects, as typed.
    Typed,
    /// What the dial expects, solved from the road check of the setup in this column, counted from 0.
    Solved(usize),
}

/// A stage behind the drive gear that can be switched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Switched {
    /// Its place among the stages, counted from 0.
    pub at: usize,
    /// What a gear is called with it in: `overdrive`.
    pub called: &'static str,
    /// What the dial shows with it in, over what it shows with it out.
    pub factor: f64,
    /// Whether it is switched while the car moves.
    pub on_the_move: bool,
}

/// What to fit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proposal {
    /// The gears.
    pub train: Train,
    /// What must be done.
    pub work: Work,
    /// By how much the dial then reads high, as a share of the true speed.
    pub error: f64,
    /// Where they lie on the shelf; nowhere where the gear must be got or made.
    pub on_shelf: Option<Candidate>,
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
    /// The speedometer of a setup, with what the shelf holds for it.
    pub fn of(setup: &Setup, conditions: &Conditions, shelf: &[SpeedoGear]) -> Self {
        let shared = &conditions.speedo;
        let shaft = shaft_of(setup);
        let road_check = solve_road_check(&setup.speedo.readings).ok();
        let cable = setup.speedo.hand.zip(setup.speedo.tap).map(|(hand, tap)| cable_turning(Turning::Clockwise, hand, tap));
        let known = Self { shaft, cable, switched: switched(setup), ..Self::default() };
        let believed = road_check.as_ref().filter(|check| check.is_believed());
        let Some((basis, wanted, fitted)) = known_to_read(setup, shared, shaft, believed) else { return Self { road_check, ..known } };
        let disagrees = believed.zip(shaft.zip(shared.dial)).zip(setup.speedo.train).and_then(|((check, (shaft, dial)), train)| {
            let over = Speedometer { shaft, train, dial }.reads() / check.ratio;
            ((over - 1.0).abs() > DISAGREES).then_some(over)
        });
        let offset = believed.map_or_else(Velocity::default, |check| check.offset);
        let pairs = pairs(shelf, wanted, setup.speedo.train);
        let with_adapter = with_adapter(shelf, wanted, &pairs);
        Self {
            basis: Some(basis),
            fitted,
            offset,
            reads: fitted.zip(shared.check).map(|(fitted, check)| fitted.indicated(check) + offset),
            proposal: proposal(fitted.as_ref(), &pairs, shelf, shared.in_stock),
            drives: drives(shelf, wanted),
            with_adapter,
            pairs,
            disagrees,
            road_check,
            ..known
        }
    }

    /// By how much it reads high at a true speed, as a share of it; negative where it reads low.
    pub fn error(&self, at: Option<Velocity>) -> Option<f64> {
        let gears = self.fitted?.error();
        Some(at.map_or(gears, |at| gears + (self.offset / at).value))
    }

    /// How a rule judges it at a true speed, by the rule's numbers of a system.
    pub fn judgement(&self, band: &Band, at: Velocity, units: System) -> Option<Judgement> {
        Some(band.judge(at, self.fitted?.indicated(at) + self.offset, units))
    }

    /// The readings at a rule's own test speeds, for a car that gets so fast.
    pub fn tested(&self, band: &Band, fastest: Option<Velocity>, units: System) -> Vec<Tested> {
        let Some(fitted) = self.fitted else { return Vec::new() };
        let judged = |test: TestSpeed| {
            let truth = if test.is_shown { fitted.true_speed(test.speed - self.offset) } else { test.speed };
            let shown = if test.is_shown { test.speed } else { fitted.indicated(truth) + self.offset };
            Tested { test, truth, shown, judgement: band.judge(truth, shown, units) }
        };
        band.test_speeds(fastest, units).into_iter().map(judged).collect()
    }

    /// Whether other gears are no cure, or not the first: the dial is off by an amount whatever the speed.
    pub fn is_off_its_zero(&self) -> bool {
        self.road_check.as_ref().is_some_and(|check| matches!(check.verdict, Verdict::Offset | Verdict::RatioAndOffset))
    }
}

/// Turns over a distance of the shaft that carries the drive gear, which turns the axle; see [`Setup::behind_take_off`].
fn shaft_of(setup: &Setup) -> Option<TurnsPerDistance> {
    let (rolling, behind) = setup.rolling.as_ref().zip(setup.behind_take_off())?;
    Some(shaft_turns(decimal(behind), rolling.turns()))
}

/// The stages behind the drive gear that can be switched: the shaft turns faster or slower before them at one road speed.
fn switched(setup: &Setup) -> Vec<Switched> {
    let stages = setup.stages.iter().flatten().enumerate().filter(|(at, stage)| setup.speedo.take_off.is_before(*at, stage));
    let changing = stages.filter(|(_, stage)| stage.changes());
    changing
        .filter_map(|(at, stage)| {
            Some(Switched { at, called: stage.called().0, factor: decimal(stage.factor()?), on_the_move: stage.shifts_on_the_move() })
        })
        .collect()
}

/// What the dial expects, solved from a setup whose road check, gears, axle and tyre are known; of several the one that was made first,
/// wherever it stands, so that moving a column changes no figure.
///
/// Model: the constant is what the cable turns over a true distance, over what the dial shows of it.
pub fn solved(setups: &[Setup]) -> Option<Solved> {
    let of = |(column, setup): (usize, &Setup)| {
        let check = solve_road_check(&setup.speedo.readings).ok().filter(RoadCheck::is_believed)?;
        let constant = shaft_of(setup)? * (setup.speedo.train?.turns() / check.ratio);
        DIAL_CONSTANT.allow(constant).then_some((setup.id, Solved { dial: Dial::Cable(constant), column }))
    };
    setups.iter().enumerate().filter_map(of).min_by_key(|(id, _)| *id).map(|(_, solved)| solved)
}

/// How it is known what the dial does, shaft and dial in one proportion for the shelf, and the speedometer where its gears are known.
fn known_to_read(
    setup: &Setup,
    shared: &SpeedoShared,
    shaft: Option<TurnsPerDistance>,
    check: Option<&RoadCheck>,
) -> Option<(Basis, Wanted, Option<Speedometer>)> {
    let wanted = |shaft, dial| Wanted { shaft, dial, drive: None, adapters: false, in_stock: shared.in_stock, keep: usize::MAX };
    if let Some((train, check)) = setup.speedo.train.zip(check) {
        let fitted = measured(train, shaft, check.ratio);
        return Some((Basis::RoadCheck, wanted(fitted.shaft, fitted.dial), Some(fitted)));
    }
    let (basis, dial) = match (shared.dial, shared.solved) {
        (Some(dial), _) => (Basis::Typed, dial),
        (None, Some(solved)) => (Basis::Solved(solved.column), solved.dial),
        (None, None) => return None,
    };
    let shaft = shaft?;
    Some((basis, wanted(shaft, dial), setup.speedo.train.map(|train| Speedometer { shaft, train, dial })))
}

/// A speedometer that reads as its road check says. With its shaft known the dial's constant follows; without, only the proportion of
/// the two is right, and that is all the gears hang on.
fn measured(train: Train, shaft: Option<TurnsPerDistance>, ratio: f64) -> Speedometer {
    match shaft {
        Some(shaft) => Speedometer { shaft, train, dial: Dial::Cable(shaft * (train.turns() / ratio)) },
        None => Speedometer::found_by_road(train, Dial::default(), ratio),
    }
}

/// The pairs of the shelf in the order they are proposed in.
fn pairs(shelf: &[SpeedoGear], wanted: Wanted, fitted: Option<Train>) -> Ranking {
    let keep = if fitted.is_some() { usize::MAX } else { KEPT };
    let mut ranking = rank_shelf(shelf, &Wanted { keep, ..wanted });
    if let Some(train) = fitted {
        Fitted::new(train, shelf).put_in_order(&mut ranking.best);
        ranking.best.truncate(KEPT);
    }
    ranking
}

/// What to fit: of the shelf what is near enough and costs the least work; where that is more than a driven gear, the driven gear that
/// would do, to be got; else the nearest of the shelf that does not read low.
fn proposal(fitted: Option<&Speedometer>, pairs: &Ranking, shelf: &[SpeedoGear], in_stock: bool) -> Option<Proposal> {
    let fitted = fitted?;
    let ranks = Fitted::new(fitted.train, shelf);
    let of = |candidate: &Candidate| Proposal {
        train: candidate.train,
        work: ranks.work(candidate),
        error: candidate.error,
        on_shelf: Some(*candidate),
    };
    if is_near(fitted.error()) {
        let on_shelf = pairs.best.iter().find(|candidate| candidate.train == fitted.train).copied();
        return Some(Proposal { train: fitted.train, work: Work::Fitted, error: fitted.error(), on_shelf });
    }
    let best = pairs.best.first().filter(|candidate| is_near(candidate.error)).map(of);
    let own = |proposal: &Proposal| {
        proposal
            .on_shelf
            .is_some_and(|candidate| [candidate.drive, candidate.driven].iter().any(|at| shelf.get(*at).is_some_and(|gear| gear.own)))
    };
    if let Some(best) = best.filter(|best| best.work <= Work::Driven || in_stock || own(best)) {
        return Some(best);
    }
    let driven = fitted.driven_to_fit(true).filter(|train| is_near(fitted.with(*train).error()));
    let to_get = driven.map(|train| Proposal { train, work: Work::Driven, error: fitted.with(train).error(), on_shelf: None });
    let nearest = || pairs.best.iter().find(|candidate| candidate.error >= 0.0).or_else(|| pairs.best.first()).map(of);
    to_get.filter(|_| !in_stock).or(best).or_else(nearest)
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

/// The best combination with an adapter, where it is nearer to true than every pair.
fn with_adapter(shelf: &[SpeedoGear], wanted: Wanted, pairs: &Ranking) -> Option<Candidate> {
    let best = rank_shelf(shelf, &Wanted { adapters: true, keep: 1, ..wanted }).best.into_iter().next()?;
    let plain = pairs.best.iter().map(|pair| pair.error.abs()).fold(f64::INFINITY, f64::min);
    (best.adapter.is_some() && best.error.abs() < plain).then_some(best)
}
