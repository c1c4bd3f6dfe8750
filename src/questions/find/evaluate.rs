//! How a setup that is already on the sheet meets a wish.

use crate::finder::motion::{Driven, Parts};
use crate::finder::search::{largest_drop, one_unless};
use crate::finder::stages::Steps;
use crate::finder::table::meshes;
use crate::finder::{Given, Measure, Wish};
use crate::gearing::teeth::decimal;
use crate::gearing::{Layout, Step};
use crate::questions::{Analysis, Source, case};
use crate::units::common::in_rpm;
use uom::si::{length::meter, velocity::meter_per_second};

/// The figure of a wish for a setup of the sheet, whose case the shelf may know by name.
pub fn on_sheet(source: Source<'_>, analysis: &Analysis, wish: &Wish, given: &Given) -> Option<f64> {
    if wish.measure != Measure::OtherCase {
        return figure(analysis, wish, given);
    }
    given.case.as_ref()?;
    let column = source.setups.iter().position(|other| other.setup.id == analysis.setup.id)?;
    // None of A itself, and of what has A's very gears.
    Some(one_unless(case::fit_of(source, column).is_none_or(|fit| fit.goes_in())))
}

/// The figure of a wish for a setup, in the wish's unit; `None` where what it needs is not known, or is not a matter of the sheet.
pub fn figure(analysis: &Analysis, wish: &Wish, given: &Given) -> Option<f64> {
    let setup = &analysis.setup;
    let gears = || setup.forward_ratios();
    let top = || setup.driven().last().and_then(|step| step.ratio).map(decimal);
    let behind = || setup.behind_gearbox().map(decimal);
    let way_m = || setup.rolling.as_ref().map(|rolling| rolling.circumference.get::<meter>());
    match wish.measure {
        Measure::CruiseRpm(speed) => Some(speed.get::<meter_per_second>() * 60.0 / way_m()? * behind()? * top()?),
        Measure::FirstOverall => Some(gears()?.first()? * behind()?),
        Measure::LargestDrop => Some(largest_drop(&gears()?)),
        Measure::Landing => Some(in_rpm(given.shift?) * (1.0 - largest_drop(&gears()?))),
        Measure::SpeedAtShift(gear) => Some(in_rpm(given.shift?) / 60.0 * way_m()? / (gear.of(&gears()?)? * behind()?)),
        Measure::Speedometer => analysis.speedo().error(None),
        Measure::TyreDiameter => Some(setup.tyre.as_ref()?.diameter_or_rolled().get::<meter>()),
        Measure::OtherTyre => Some(one_unless(has_tyre_of_first(analysis, given)?)),
        Measure::OtherGearSet => Some(one_unless(has_gears_of_first(analysis, given)?)),
        Measure::OtherAxle => Some(one_unless(has_axle_of_first(analysis, given)?)),
        Measure::PartsChanged => {
            let same = [has_gears_of_first(analysis, given)?, has_axle_of_first(analysis, given)?, has_tyre_of_first(analysis, given)?];
            Some(same.into_iter().map(one_unless).sum())
        }
        Measure::OtherEnd { two_shafts } => Some(one_unless((setup.layout == Layout::TwoShaft) == two_shafts)),
        Measure::GearCount => Some(setup.gears.iter().map(|_| 1.0).sum()),
        Measure::OtherLayout(layout) => Some(one_unless(setup.layout == layout)),
        Measure::ToOrder | Measure::OtherCase => None,
        Measure::StartGrade | Measure::TopSpeed | Measure::TimeToSpeed(_) | Measure::TimeOverDistance(_) => {
            let meshes = meshes(setup.gearbox.as_ref()?);
            let step = |step: &Step| Some((decimal(step.ratio?), step.gear.of(&meshes)?.saturating_add(step.meshes)));
            let (ratios, meshes) = setup.driven().map(step).collect::<Option<Vec<(f64, u8)>>>()?.into_iter().unzip();
            let two_shafts = setup.layout == Layout::TwoShaft;
            let parts = Parts { steps: &Steps { ratios, meshes }, two_shafts, behind: behind()?, circumference_m: way_m()? };
            Driven::new(given, &parts).map(|driven| driven.figure(wish.measure)).filter(|value| !value.is_nan())
        }
    }
}

fn has_gears_of_first(analysis: &Analysis, given: &Given) -> Option<bool> {
    Some(given.fitted_set.as_ref()?.is_alike(&analysis.setup.forward_ratios()?, analysis.setup.layout))
}

fn has_axle_of_first(analysis: &Analysis, given: &Given) -> Option<bool> {
    let own = decimal(analysis.setup.final_drive.as_ref()?.ratio());
    Some((own - given.fitted_axle?).abs() < 1e-9)
}

fn has_tyre_of_first(analysis: &Analysis, given: &Given) -> Option<bool> {
    let own = analysis.setup.rolling.as_ref()?.circumference.get::<meter>();
    Some((own - given.fitted.as_ref()?.circumference.get::<meter>()).abs() < 1e-9)
}
