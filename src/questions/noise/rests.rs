//! What the answer about a noise rests on.

use super::answer::{Noise, usual_idle};
use super::names;
use super::read::Told;
use crate::gearing::speeds::Selected;
use crate::job::inputs::noise::USUAL_CYLINDERS;
use crate::questions::Source;
use crate::questions::rests::{PRACTICE, typed, typed_or, usual};
use crate::sheet::Rest;
use crate::sound::Origin;
use crate::sound::orders::ANY_BEARING;
use crate::units::common::show_rpm;
use crate::units::number;

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let told = Told::of(source.job);
    let Ok(noise) = Noise::of(source, &told) else { return Vec::new() };
    let mut rests = Vec::new();
    rests.extend(
        names::road(source, &noise).map(|road| typed_or(told.is_at_typed, "Heard at", road, "the cruise speed, where no other is typed")),
    );
    rests.push(if source.job.bench.noise.cylinders.trim() == told.cylinders.to_string() {
        typed("Cylinders", told.cylinders.to_string())
    } else {
        usual("Cylinders", USUAL_CYLINDERS.to_string(), "where none are typed; four-stroke")
    });
    if noise.heard.selected == Selected::Neutral && !noise.heard.stands {
        let idle = format!("{} rpm", show_rpm(usual_idle()));
        rests.push(usual("Idle while it rolls in neutral", idle, PRACTICE));
    }
    if noise.suspects.iter().any(|suspect| matches!(suspect.tone.origin, Origin::AnyBearing(_))) {
        let strikes = format!("{} strikes a turn", number::show(ANY_BEARING, 1));
        let why = "0.4 for each ball of an outer race (a balancer’s manual, ± 20 %), nine balls (common practice, no published source)";
        rests.push(usual("A bearing whose geometry is not given", strikes, why));
    }
    if noise.analysis.setup.stages.as_ref().is_some_and(|stages| !stages.is_empty()) {
        rests.push(if noise.stages_in.is_empty() {
            usual("Extra stages", "at rest", "where no other is chosen")
        } else {
            typed("Extra stages", format!("{} in", noise.called))
        });
    }
    rests.push(usual("Slip of clutch and tyres", "none", "real tyres slip by a percent or two under power"));
    rests.push(usual(
        "Which part fits",
        "points for each thing said",
        "common practice, no published source; tried on made-up recordings only, never on a car",
    ));
    rests
}
