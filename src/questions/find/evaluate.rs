//! How a setup that is already on the sheet meets a wish.

use crate::finder::motion::{Driven, Parts};
use crate::finder::search::largest_drop;
use crate::finder::stages::Steps;
use crate::finder::table::meshes;
use crate::finder::{Given, Measure, Wish};
use crate::gearing::teeth::decimal;
use crate::gearing::{Layout, Step};
use crate::questions::Analysis;
use crate::units::common::in_rpm;
use uom::si::{length::meter, velocity::meter_per_second};

/// The figure of a wish for a setup, in the wish's unit; `None` where what it needs is not known, or is not a matter of the sheet.
pub fn figure(analysis: &Analysis, wish: &Wish, given: &Given) -> Option<f64> {
    let setup = &analysis.setup;
    let gears = || (0..setup.gears.len()).map(|gear| setup.ratio(gear).map(|ratio| decimal(ratio).abs())).collect::<Option<Vec<f64>>>();
    let top = || setup.driven().last().and_then(|step| step.ratio).map(decimal);
    let behind = || setup.behind_gearbox().map(decimal);
    let way_m = || setup.rolling.as_ref().map(|rolling| rolling.circumference.get::<meter>());
    match wish.measure {
        Measure::CruiseRpm { speed } => Some(speed.get::<meter_per_second>() * 60.0 / way_m()? * behind()? * top()?),
        Measure::FirstOverall => Some(gears()?.first()? * behind()?),
        Measure::LargestDrop => Some(largest_drop(&gears()?)),
        Measure::Landing => Some(in_rpm(given.shift?) * (1.0 - largest_drop(&gears()?))),
        Measure::SpeedAtShift { gear } => Some(in_rpm(given.shift?) / 60.0 * way_m()? / (gears()?.get(gear)? * behind()?)),
        Measure::Speedometer => analysis.speedo().error(None),
        Measure::TyreDiameter => Some(setup.tyre.as_ref()?.diameter_or_rolled().get::<meter>()),
        Measure::OtherTyre => {
            let fitted = given.fitted.as_ref()?.circumference.get::<meter>();
            Some(if (way_m()? - fitted).abs() < 1e-9 { 0.0 } else { 1.0 })
        }
        Measure::GearCount => Some(setup.gears.iter().map(|_| 1.0).sum()),
        Measure::OtherLayout { layout } => Some(if setup.layout == layout { 0.0 } else { 1.0 }),
        Measure::ToOrder => None,
        Measure::StartGrade | Measure::TopSpeed | Measure::TimeToSpeed { .. } | Measure::TimeOverDistance { .. } => {
            let meshes = meshes(setup.gearbox.as_ref()?);
            let step = |step: &Step| Some((decimal(step.ratio?), meshes.get(step.gear)?.saturating_add(step.meshes)));
            let (ratios, meshes) = setup.driven().map(step).collect::<Option<Vec<(f64, u8)>>>()?.into_iter().unzip();
            let two_shafts = setup.layout == Layout::TwoShaft;
            let parts = Parts { steps: &Steps { ratios, meshes }, two_shafts, behind: behind()?, circumference_m: way_m()? };
            Driven::new(given, &parts).map(|driven| driven.figure(wish.measure)).filter(|value| !value.is_nan())
        }
    }
}
