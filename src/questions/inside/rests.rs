//! What the figures of Inside rest on: the gear and speed looked at, the cut of the teeth, and what the synchronisers work against.

use super::read::LookedAt;
use crate::gearing::geometry::Cut;
use crate::job::InsideField;
use crate::questions::rests::{PRACTICE, by_setup, typed, typed_or, usual};
use crate::questions::{Analysis, Source, gears, pull};
use crate::sheet::Rest;
use crate::toothload::synchroniser::{Lining, clutch};
use crate::units::common::show_rpm;
use crate::units::{Length, Measured, System, number, show, unit};

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    if source.setups.iter().all(|analysis| analysis.setup.gearbox.is_none()) {
        return Vec::new();
    }
    let mut rests = vec![selected(source)];
    rests.extend(gears::rests::shift(source));
    rests.extend(looked_at(source));
    rests.push(time(source));
    rests.extend(cut(source));
    rests.extend(by_setup(source, |analysis| inertia(source, analysis)));
    rests.extend(by_setup(source, |analysis| clutch_plate(source, analysis)));
    rests.extend(cones(source));
    if source.setups.iter().any(|analysis| !analysis.inside().thrust.is_empty()) {
        rests.extend(pull::rests::engine(source).into_iter().next());
    }
    rests
}

fn selected(source: Source<'_>) -> Rest {
    let gear = source.conditions.inside.selected.to_string();
    typed_or(!source.job.inside.gear.is_nothing(), "Gear", gear, "where none is chosen")
}

/// The speed looked at, where it is not the shift rpm.
fn looked_at(source: Source<'_>) -> Option<Rest> {
    if source.job.inside.at.is_blank() {
        return None;
    }
    Some(match source.conditions.inside.at? {
        LookedAt::Input(input) => typed("Input looked at", format!("{} rpm", show_rpm(input))),
        LookedAt::Road(road) => typed("Road speed looked at", source.show(&road, 0)),
    })
}

fn time(source: Source<'_>) -> Rest {
    let time = show(&source.conditions.inside.shift_time, &unit::SECOND, 2);
    typed_or(!source.job.inside.shift_time.is_blank(), "Time to synchronise", time, PRACTICE)
}

/// How the teeth are cut, as far as it is given.
pub(in crate::questions) fn cut(source: Source<'_>) -> Vec<Rest> {
    let of =
        |rest: &dyn Fn(&Analysis, &Cut) -> Rest| by_setup(source, |analysis| Some(rest(analysis, analysis.setup.inside.cut.as_ref()?)));
    let angle = |label: &str, field: InsideField, degrees: f64, analysis: &Analysis| {
        let shown = format!("{}°", number::show(degrees, 1));
        typed_or(!is_blank(source, analysis, field), label, shown, "where none is given")
    };
    let length = |value: Option<Length>| {
        let decimals = if source.reader.units == System::Inch { 3 } else { 2 };
        value.map(|value| source.show(&value, decimals))
    };
    let mut rests = of(&|_, cut| typed("Pitch", pitch(source, cut)));
    rests.extend(of(&|analysis, cut| angle("Helix angle", InsideField::Helix, cut.helix_rad().to_degrees(), analysis)));
    rests.extend(by_setup(source, |analysis| {
        let straight = || usual("Reverse", "straight teeth", "its idler slides into mesh; common practice, no published source");
        analysis.setup.inside.takes_reverse_for_straight().then(straight)
    }));
    rests.extend(of(&|analysis, cut| angle("Pressure angle", InsideField::Pressure, cut.pressure_rad().to_degrees(), analysis)));
    rests.extend(by_setup(source, |analysis| Some(typed("Centre distance", length(analysis.setup.inside.centre)?))));
    rests.extend(by_setup(source, |analysis| Some(typed("Face width", length(analysis.setup.inside.face)?))));
    rests
}

/// Whether nothing is typed in a field of a setup.
fn is_blank(source: Source<'_>, analysis: &Analysis, field: InsideField) -> bool {
    let kept = source.job.setup(analysis.setup.id).and_then(|setup| field.kept(&setup.inside));
    kept.is_none_or(|kept| kept.text().trim().is_empty())
}

/// `module 2.540 mm`, for who reads inches `10.00 diametral pitch`.
fn pitch(source: Source<'_>, cut: &Cut) -> String {
    let millimetres = cut.normal_module().value * 1000.0;
    if source.reader.units == System::Inch {
        format!("{} diametral pitch", number::show(25.4 / millimetres, 2))
    } else {
        format!("module {} mm", number::show(millimetres, 3))
    }
}

fn inertia(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let reflected = analysis.inside().inertia.as_ref()?;
    let decimals = if source.reader.units == System::Inch { 2 } else { 5 };
    let shown = source.show(&reflected.at_input, decimals);
    let label = "Inertia at the input";
    Some(typed_or(
        !reflected.is_estimate,
        label,
        shown,
        format!("an estimate: gears as steel discs, common practice; clutch plate and shaft, {}", clutch::SOURCE),
    ))
}

/// The clutch plate that an estimate counts in.
fn clutch_plate(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    analysis.inside().inertia.as_ref().filter(|reflected| reflected.is_estimate)?;
    let shown = |length: &Length| show(length, Length::usual(source.reader.units), usize::from(source.reader.units == System::Inch));
    Some(match &analysis.setup.inside.clutch {
        Some(diameter) => typed("Clutch plate", shown(diameter)),
        None => usual("Clutch plate", shown(&clutch::usual_diameter()), "usual of a car of 1.5 to 2 litres, from memory"),
    })
}

/// The cones and the lining they are judged by, where any setup gives its cones.
fn cones(source: Source<'_>) -> Vec<Rest> {
    let decimals = if source.reader.units == System::Inch { 3 } else { 1 };
    let length = |value: &Length| show(value, Length::usual(source.reader.units), decimals);
    let mut rests = by_setup(source, |analysis| {
        let cone = analysis.setup.inside.cone.as_ref()?;
        Some(typed("Cones", format!("{} mean diameter, {} wide", length(&cone.mean_diameter), length(&cone.width))))
    });
    rests.extend(by_setup(source, |analysis| {
        let cone = analysis.setup.inside.cone.as_ref()?;
        let degrees = number::show(cone.half_angle.value.to_degrees(), 1);
        let shown = format!("{degrees}°, {}", number::show(cone.friction, 2));
        let label = "Cone angle and friction";
        Some(typed_or(analysis.setup.inside.is_cone_typed, label, shown, "from memory, no published source"))
    }));
    if let Some(lining) = source.conditions.inside.lining.as_ref().filter(|_| !rests.is_empty()) {
        let limits = super::rows::lining_words(lining);
        rests.push(typed_or(lining.name == Lining::OWN, "Lining", limits, Lining::SOURCE));
    }
    rests
}
