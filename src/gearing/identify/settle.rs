//! Which turns of the wheel tell axle ratios apart, and what the driveshaft would do for each.
//!
//! The driveshaft turns faster than the wheel, so its turns are counted: after as many turns of the wheel as the pinion has teeth
//! it has turned exactly as often as the ring has teeth (the two counts are driven and driver of one mesh).

use super::reading::{by_eye, size};
use crate::gearing::FinalDrive;
use crate::gearing::teeth::Ratio;

/// More turns of a wheel than this nobody counts: common practice, no published source.
pub const MOST_TURNS: i128 = 60;

/// What to turn, and what it would show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Settling {
    /// Turns of the wheel; of the free one where the other is held.
    pub wheel_turns: i128,
    /// Turns of the driveshaft that each of the ratios would give, in their order.
    pub shaft_turns: Vec<Ratio>,
}

/// The fewest turns of the wheel that part every two ratios by twice what an eye misses; none where two ratios are the same, or where
/// it would take more than [`MOST_TURNS`].
///
/// A few turns more are taken where they are as many as a pinion has teeth, since the driveshaft then stops at a whole turn.
pub fn by_wheel(drives: &[FinalDrive], one_wheel_held: bool) -> Option<Settling> {
    /// How many more turns a whole turn of the driveshaft is worth.
    const WORTH: i128 = 3;
    let ratios: Vec<Ratio> = drives.iter().map(|drive| size(drive.ratio())).collect();
    let mut sorted = ratios.clone();
    crate::order::by(&mut sorted, Ord::cmp);
    let gaps = sorted.windows(2).filter_map(|pair| Some(pair.get(1)? - pair.first()?));
    let least = gaps.min().filter(|gap| *gap > Ratio::from_integer(0))?;
    let of_ring = if one_wheel_held { 2 } else { 1 };
    let fewest = (by_eye() * Ratio::from_integer(2) / least).ceil().to_integer();
    let pinions = drives.iter().filter_map(|drive| match drive {
        FinalDrive::Pair(mesh) => Some(i128::from(mesh.driver.count())),
        FinalDrive::Plain(_) => None,
    });
    let turns = pinions.filter(|teeth| (fewest..=fewest + WORTH).contains(teeth)).min().unwrap_or(fewest);
    (turns * of_ring <= MOST_TURNS).then(|| Settling {
        wheel_turns: turns * of_ring,
        shaft_turns: ratios.iter().map(|ratio| ratio * Ratio::from_integer(turns)).collect(),
    })
}
