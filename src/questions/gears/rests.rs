//! What the figures of Gears rest on: the shift rpm, the axle, and what the tyre rolls.

use crate::gearing::FinalDrive;
use crate::gearing::teeth::decimal;
use crate::questions::rests::{by_setup, typed};
use crate::questions::{Analysis, Source, road};
use crate::sheet::Rest;
use crate::units::common::show_rpm;
use crate::units::number;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let mut rests: Vec<Rest> = shift(source).into_iter().collect();
    rests.extend(by_setup(source, axle));
    rests.extend(road::rests::rolling(source));
    rests
}

/// The shift rpm.
pub fn shift(source: Source<'_>) -> Option<Rest> {
    let shift = source.conditions.shift?;
    Some(typed("Shift at", format!("{} rpm", show_rpm(shift))))
}

/// The axle of a setup.
pub fn axle(analysis: &Analysis) -> Option<Rest> {
    let drive = analysis.setup.final_drive?;
    let ratio = number::show(decimal(drive.ratio()), 3);
    Some(match drive {
        FinalDrive::Pair(mesh) => typed("Ring and pinion", format!("{}/{} = {ratio}", mesh.driven, mesh.driver)),
        FinalDrive::Plain(_) => typed("Ring and pinion", ratio),
    })
}
