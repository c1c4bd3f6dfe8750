//! Which axle it is by what is stamped on it, and by what the speedometer's cable turns with the tyre and gears of setup A.

use super::super::read::Evidence;
use crate::gearing::identify::cable::axle_by_cable;
use crate::gearing::identify::reading::Interval;
use crate::gearing::teeth::decimal;
use crate::gearing::{FinalDrive, TakeOff};
use crate::questions::{Known, Source};

/// What a tag can mean, that the turns do not contradict, each with its place on the shelf where it lies there.
pub fn tagged(evidence: &Evidence, shelf: &[Known<FinalDrive>]) -> Vec<(FinalDrive, Option<usize>)> {
    let agrees = |drive: &&FinalDrive| evidence.axle.is_none_or(|interval| interval.contains(drive.ratio()));
    let place = |drive: FinalDrive| shelf.iter().position(|known| known.part == drive);
    evidence.tag.iter().filter(agrees).map(|drive| (*drive, place(*drive))).collect()
}

/// The axle ratios that the cable, or else the dial, leaves in the car of setup A; none where its tyre or speedometer gears are not known,
/// or where a wheel drives the cable.
pub fn by_cable(source: Source<'_>, evidence: &Evidence) -> Option<Interval> {
    let setup = &source.setups.first()?.setup;
    let cable = evidence.cable.or(evidence.dial)?;
    if setup.speedo.take_off == TakeOff::Wheel {
        return None;
    }
    let stages = decimal(setup.stages_behind_take_off()?);
    axle_by_cable(cable, setup.rolling.as_ref()?.circumference, setup.speedo.train?.turns(), stages)
}
