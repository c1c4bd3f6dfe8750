//! Speedometer pairs, sorted by ratio once, so that the best for any axle and tyre is found by halving.

use std::collections::BTreeMap;

use crate::speedometer::{Role, SpeedoGear, shelf};

/// A drive gear and a driven gear that fit each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// Turns of the cable for one turn of the shaft.
    pub ratio: f64,
    /// Teeth of the drive gear.
    pub drive: u16,
    /// Teeth of the driven gear.
    pub driven: u16,
}

/// The pairs of one housing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pairs {
    /// The housing; blank for all together.
    pub housing: String,
    /// The pairs, the lowest ratio first, no ratio twice.
    pub sorted: Vec<Pair>,
    /// Their ratios alone, for halving.
    ratios: Vec<f64>,
}

impl Pairs {
    /// Pairs of a housing, in any order.
    pub fn new(housing: impl Into<String>, mut pairs: Vec<Pair>) -> Self {
        crate::order::by(&mut pairs, |a, b| a.ratio.total_cmp(&b.ratio).then(a.drive.cmp(&b.drive)));
        pairs.dedup_by(|a, b| a.ratio.total_cmp(&b.ratio).is_eq());
        let ratios = pairs.iter().map(|pair| pair.ratio).collect();
        Self { housing: housing.into(), sorted: pairs, ratios }
    }

    /// The pair whose reading misses the range least, and nearest to true among such; with what it reads too much, as a share.
    ///
    /// `wanted` is the ratio that reads true; `least` and `greatest` bound the error. The miss falls towards the range from both sides,
    /// so only the two neighbours of the ratio inside the range that is nearest to true can be best.
    pub fn best(&self, wanted: f64, least: f64, greatest: f64) -> Option<(Pair, f64)> {
        let at = self.best_place(wanted, least, greatest)?;
        let pair = *self.sorted.get(at)?;
        Some((pair, pair.ratio / wanted - 1.0))
    }

    /// What the best pair reads too much, as a share; no number without pairs.
    pub(in crate::finder) fn best_error(&self, wanted: f64, least: f64, greatest: f64) -> f64 {
        self.best_place(wanted, least, greatest).and_then(|at| self.ratios.get(at)).map_or(f64::NAN, |ratio| ratio / wanted - 1.0)
    }

    fn best_place(&self, wanted: f64, least: f64, greatest: f64) -> Option<usize> {
        let nearest_to_true = 0.0_f64.max(least).min(greatest.max(least));
        let anchor = wanted * (1.0 + nearest_to_true);
        let above = self.ratios.partition_point(|ratio| *ratio < anchor);
        let error = |at: usize| self.ratios.get(at).map(|ratio| ratio / wanted - 1.0);
        let below = above.checked_sub(1);
        let key = |error: f64| ((least - error).max(error - greatest).max(0.0), error.abs());
        match (below.and_then(error), error(above)) {
            (Some(low), Some(high)) => {
                let (low, high) = (key(low), key(high));
                let lower_is_better = low.0.total_cmp(&high.0).then(low.1.total_cmp(&high.1)).is_le();
                if lower_is_better { below } else { Some(above) }
            }
            (Some(_), None) => below,
            (None, Some(_)) => Some(above),
            (None, None) => None,
        }
    }
}

/// The pairs of every housing, and behind them those of all together.
pub(super) fn by_housing(gears: &[SpeedoGear], in_stock: bool) -> Vec<Pairs> {
    let usable = |gear: &&SpeedoGear| SpeedoGear::allows(gear.teeth) && (gear.in_stock || !in_stock);
    let mut housings: BTreeMap<&str, [Vec<&SpeedoGear>; 2]> = BTreeMap::new();
    for gear in gears {
        let [drives, drivens] = housings.entry(gear.housing.as_str()).or_default();
        match gear.role {
            Role::Drive if usable(&gear) => drives.push(gear),
            Role::Driven if usable(&gear) => drivens.push(gear),
            _ => {}
        }
    }
    let mut groups: Vec<Pairs> =
        housings.iter().map(|(housing, [drives, drivens])| Pairs::new(*housing, fitting(drives, drivens))).collect();
    let all = groups.iter().flat_map(|group| group.sorted.iter().copied()).collect();
    groups.push(Pairs::new("", all));
    groups
}

fn fitting(drives: &[&SpeedoGear], drivens: &[&SpeedoGear]) -> Vec<Pair> {
    let pair = |drive: &SpeedoGear, driven: &SpeedoGear| Pair {
        ratio: f64::from(drive.teeth) / f64::from(driven.teeth),
        drive: drive.teeth,
        driven: driven.teeth,
    };
    drives.iter().flat_map(|drive| drivens.iter().filter(|driven| shelf::fits(drive, driven)).map(|driven| pair(drive, driven))).collect()
}
