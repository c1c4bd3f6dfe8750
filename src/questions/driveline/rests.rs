//! What the figures of Driveline rest on: the axle, what the tyre rolls, the speed, the tube, the share allowed.

use super::answer::Why;
use super::rows::{CRITICAL, limits_words};
use crate::driveline::{Margin, TubeMaterial};
use crate::questions::gears::rests::axle;
use crate::questions::rests::{PRACTICE, by_setup, typed, usual};
use crate::questions::{Analysis, Source, road};
use crate::sheet::Rest;
use crate::units::common::show_rpm;
use crate::units::number;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let mut rests = by_setup(source, |analysis| judged_at(source, analysis));
    rests.extend(by_setup(source, axle));
    rests.extend(road::rests::rolling(source));
    rests.extend(by_setup(source, |analysis| tube(source, analysis)));
    if source.setups.iter().any(|analysis| analysis.driveline().critical.is_some()) {
        rests.extend(by_setup(source, model));
        rests.push(usual(
            "Yokes and slip joint",
            "not counted: they lower the critical speed; type the longest length the shaft runs at",
            CRITICAL,
        ));
    }
    rests.extend(source.conditions.driveline.margin.map(|margin| allowed(source, margin)));
    if source.setups.iter().any(|analysis| analysis.setup.final_drive.is_some()) {
        let value = "renewed together; after any work on them set the backlash and read the pattern anew";
        rests.push(usual("Ring and pinion", value, PRACTICE));
    }
    if source.setups.iter().any(|analysis| analysis.driveline().joints.is_some()) {
        let from = "service manuals, a design guide that quotes SAE AE-7, an industrial handbook of cardan shafts";
        rests.push(usual("Joint angles", limits_words(), from));
        let is_driven = source.setups.iter().any(|analysis| analysis.setup.shaft.slopes.at_rest.is_some());
        let from = if is_driven {
            "as measured; the nose raised by what is typed for drive"
        } else {
            "as measured: leaf springs let the nose rise under drive"
        };
        rests.push(usual("Slopes", "at ride height, standing", from));
    }
    rests
}

fn judged_at(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let turning = analysis.driveline().turning?;
    let value = source.show(&turning.road, 0);
    Some(match turning.why {
        Why::Typed => typed("Judged at", value),
        Why::TopSpeed => usual("Judged at", value, "the car’s top speed"),
        Why::ShiftRpm => usual("Judged at", value, "the shift rpm in top gear, since engine and car are not typed"),
    })
}

fn tube(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let shaft = &analysis.setup.shaft;
    let (modulus, density) = shaft.made_of.filter(|_| analysis.driveline().critical.is_some())?.figures();
    let name = shaft.material.map_or("own material", TubeMaterial::word);
    let value = format!("{name}, {} GPa, {} kg/m³", number::show(modulus, 0), number::show(density, 0));
    let Some(material) = shaft.material else { return Some(typed("Tube", value)) };
    let is_typed = source.job.setup(analysis.setup.id).is_some_and(|setup| !setup.shaft.material.is_nothing());
    let from = match (is_typed, material) {
        (_, TubeMaterial::CarbonFibre) => "handbook values, from memory: type those of the laminate’s own sheet",
        (true, _) => "as chosen; handbook values, from memory",
        (false, _) => "taken where none is chosen; handbook values, from memory",
    };
    Some(Rest { is_typed, ..usual("Tube", value, from) })
}

/// Which model the critical speed is by, and what the other would give.
fn model(analysis: &Analysis) -> Option<Rest> {
    let (_, slowest) = analysis.driveline().critical?;
    let lumped = analysis.setup.shaft.pieces.get(slowest)?.critical_speed_lumped();
    let value = format!("mass spread along the tube; all of it at the middle, as some tables have it, gives {} rpm", show_rpm(lumped));
    Some(usual("Critical speed", value, CRITICAL))
}

fn allowed(source: Source<'_>, margin: Margin) -> Rest {
    let value = format!("{} % of the critical speed", number::show(100.0 * margin.share(), 0));
    Rest { is_typed: !source.job.driveline.margin.is_nothing(), ..usual("Allowed", value, margin.source()) }
}
