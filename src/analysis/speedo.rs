//! What does the speedometer read, is that within the law, and which gears would make it true?

use crate::gearing::teeth::decimal;
use crate::setup::{Conditions, Setup};
use crate::speedometer::direction::cable_turning;
use crate::speedometer::{
    Candidate, Judgement, Ranking, RoadCheck, SpeedoGear, Speedometer, Turning, Wanted, rank_shelf, shaft_turns, solve_road_check,
};
use crate::units::{TurnsPerDistance, Velocity};

/// How many of the best combinations are kept.
const KEPT: usize = 6;

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
    /// The best pairs of the shelf without an adapter.
    pub pairs: Ranking,
    /// The best combinations with an adapter, where one is better than the best pair.
    pub with_adapter: Option<Candidate>,
    /// What the road check says.
    pub road_check: Option<RoadCheck>,
    /// Which way the cable turns, seen from the gearbox along the cable, where hand and side are given.
    pub cable: Option<Turning>,
}

impl Speedo {
    /// The speedometer of a setup, with what the shelf holds for it.
    pub fn of(setup: &Setup, conditions: &Conditions, shelf: &[SpeedoGear]) -> Self {
        let shared = &conditions.speedo;
        let shaft =
            setup.rolling.as_ref().zip(setup.behind_gearbox()).map(|(rolling, behind)| shaft_turns(decimal(behind), rolling.turns()));
        let road_check = solve_road_check(&setup.speedo.readings).ok();
        let cable = setup.speedo.hand.zip(setup.speedo.tap).map(|(hand, tap)| cable_turning(Turning::Clockwise, hand, tap));
        let (Some(shaft), Some(dial)) = (shaft, shared.dial) else {
            return Self { shaft, road_check, cable, ..Self::default() };
        };
        let fitted = setup.speedo.train.map(|train| Speedometer { shaft, train, dial });
        let reads = fitted.zip(shared.check).map(|(fitted, check)| fitted.indicated(check));
        let wanted = Wanted { shaft, dial, drive: None, adapters: false, in_stock: shared.in_stock, keep: KEPT };
        let pairs = rank_shelf(shelf, &wanted);
        let judgement = shared.check.zip(reads).map(|(check, reads)| shared.band.judge(check, reads, shared.units));
        Self { shaft: Some(shaft), fitted, reads, judgement, with_adapter: with_adapter(shelf, wanted, &pairs), pairs, road_check, cable }
    }

    /// The best pair that never reads low, or the best of all where every pair does.
    pub fn proposed(&self) -> Option<&Candidate> {
        self.pairs.best.iter().find(|candidate| candidate.error >= 0.0).or_else(|| self.pairs.best.first())
    }
}

/// The best combination with an adapter, where it beats the best plain pair.
fn with_adapter(shelf: &[SpeedoGear], wanted: Wanted, pairs: &Ranking) -> Option<Candidate> {
    let best = rank_shelf(shelf, &Wanted { adapters: true, keep: 1, ..wanted }).best.into_iter().next()?;
    let plain = pairs.best.first().map_or(f64::INFINITY, |pair| pair.error.abs());
    (best.adapter.is_some() && best.error.abs() < plain).then_some(best)
}
