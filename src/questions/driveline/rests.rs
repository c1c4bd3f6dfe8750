//! What the figures of Driveline rest on: the axle, what the tyre rolls, the speed, the tube, the share allowed.

use super::answer::Why;
use super::rows::{CRITICAL, limits_words};
use crate::driveline::{Margin, TubeMaterial};
use crate::questions::gears::rests::axle;
use crate::questions::rests::{by_setup, typed, usual};
use crate::questions::{Analysis, Source, road};
use crate::sheet::Rest;
use crate::units::{Measured, Velocity, number, show};

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let mut rests = by_setup(source, |analysis| judged_at(source, analysis));
    rests.extend(by_setup(source, axle));
    rests.extend(road::rests::rolling(source));
    rests.extend(by_setup(source, |analysis| tube(source, analysis)));
    if source.setups.iter().any(|analysis| analysis.driveline().critical.is_some()) {
        rests.push(usual("Yokes and slip joint", "not counted: they lower the critical speed", CRITICAL));
    }
    rests.extend(source.conditions.driveline.margin.map(|margin| allowed(source, margin)));
    if source.setups.iter().any(|analysis| analysis.driveline().joints.is_some()) {
        let from = "service manuals, a design guide that quotes SAE AE-7, an industrial handbook of cardan shafts";
        rests.push(usual("Joint angles", limits_words(), from));
        rests.push(usual("Slopes", "at ride height, standing", "as measured: a sprung axle lifts its nose under drive"));
    }
    rests
}

fn judged_at(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let turning = analysis.driveline().turning?;
    let value = show(&turning.road, Velocity::usual(source.reader.units), 0);
    Some(match turning.why {
        Why::Typed => typed("Judged at", value),
        Why::TopSpeed => usual("Judged at", value, "the car’s top speed"),
        Why::ShiftRpm => usual("Judged at", value, "the shift rpm in top gear, since engine and car are not typed"),
    })
}

fn tube(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let material = analysis.setup.shaft.material.filter(|_| analysis.driveline().critical.is_some())?;
    let (modulus, density) = material.figures();
    let value = format!("{}, {} GPa, {} kg/m³", material.word(), number::show(modulus, 0), number::show(density, 0));
    let is_typed = source.job.setup(analysis.setup.id).is_some_and(|setup| !setup.shaft.material.is_nothing());
    let from = match (is_typed, material) {
        (_, TubeMaterial::CarbonFibre) => "handbook values, from memory: the maker’s sheet of the laminate holds before them",
        (true, _) => "as chosen; handbook values, from memory",
        (false, _) => "taken where none is chosen; handbook values, from memory",
    };
    Some(Rest { is_typed, ..usual("Tube", value, from) })
}

fn allowed(source: Source<'_>, margin: Margin) -> Rest {
    let value = format!("{} % of the critical speed", number::show(100.0 * margin.share(), 0));
    Rest { is_typed: !source.job.driveline.margin.is_nothing(), ..usual("Allowed", value, margin.source()) }
}
