//! What are the ratios, and how far apart are they?

use crate::gearing::check::ToothSums;
use crate::gearing::ladder::Character;
use crate::gearing::{GearNumber, Ladder, Ratio};
use crate::questions::Setup;
use crate::questions::setup::without_sign;

/// The ratios of a setup and what they are like.
#[derive(Clone, Debug, PartialEq)]
pub struct Gears {
    /// Each forward gear's ratio without sign, as far as it is known; lowest gear first.
    pub ratios: Vec<Option<Ratio>>,
    /// Each forward gear's overall ratio: gearbox, extra stages and final drive, without sign.
    pub overall: Vec<Option<Ratio>>,
    /// Reverse's ratio, without sign.
    pub reverse: Option<Ratio>,
    /// The whole ladder, where every gear is known.
    pub ladder: Option<Ladder>,
    /// How its steps change.
    pub character: Option<Character>,
    /// The tooth sums, where every gear is known.
    pub sums: Option<ToothSums>,
}

impl Gears {
    /// The gears of a setup.
    pub fn of(setup: &Setup) -> Self {
        let ratios: Vec<Option<Ratio>> = GearNumber::lowest(setup.gears.len()).map(|gear| setup.ratio(gear).map(without_sign)).collect();
        let behind = setup.behind_gearbox();
        let overall = ratios.iter().map(|ratio| Some((*ratio)? * behind?)).collect();
        let ladder = ratios.iter().copied().collect::<Option<Vec<_>>>().filter(|ratios| !ratios.is_empty()).map(Ladder::new);
        Self {
            overall,
            reverse: setup.gearbox.as_ref().and_then(crate::gearing::Gearbox::reverse_ratio).map(without_sign),
            character: ladder.as_ref().map(Ladder::character),
            ladder,
            sums: setup.gearbox.as_ref().map(ToothSums::of),
            ratios,
        }
    }

    /// First gear's overall ratio: what the launch feels.
    pub fn first_overall(&self) -> Option<Ratio> {
        self.overall.first().copied().flatten()
    }

    /// First over top.
    pub fn spread(&self) -> Option<Ratio> {
        self.ladder.as_ref().and_then(Ladder::spread)
    }

    /// The largest share of engine speed lost on any upshift, and the gear it is shifted from.
    pub fn deepest_drop(&self) -> Option<(GearNumber, f64)> {
        let drops = self.ladder.as_ref()?.drops();
        GearNumber::lowest(drops.len()).zip(drops).max_by(|(_, a), (_, b)| a.total_cmp(b))
    }
}
