//! What the figures of Speedometer rest on: dial, gears, road check, rule, axle and tyre.

use super::answer::Basis;
use super::rows::rule;
use crate::job::choice::Picked;
use crate::job::{Choice, SetupChoice};
use crate::questions::gears::rests::axle;
use crate::questions::rests::{PRACTICE, by_setup, typed, typed_or, usual};
use crate::questions::{Analysis, Source, road};
use crate::sheet::Rest;
use crate::sheet::said::{Said, mark};
use crate::speedometer::Dial;
use crate::units::{Measured, TurnsPerDistance, Velocity, number, show};

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let mut rests: Vec<Rest> = dial(source).into_iter().collect();
    rests.extend(by_setup(source, |analysis| Some(typed("Drive and driven teeth", analysis.setup.speedo.train?.to_string()))));
    rests.extend(by_setup(source, |analysis| road_check(source, analysis)));
    rests.extend(by_setup(source, |analysis| take_off(source, analysis)));
    rests.extend(source.conditions.speedo.check.map(|check| typed("Check at", source.show(&check, 0))));
    rests.extend(rule::band(source).map(|band| match source.conditions.speedo.law.picked() {
        Picked::One(_) => Rest { source: rule::about(band), ..typed("Rule", band.name) },
        _ => usual("Rule", band.name, rule::about(band)),
    }));
    if source.setups.iter().any(|analysis| matches!(analysis.speedo().basis, Some(Basis::Typed | Basis::Solved(_)))) {
        rests.extend(by_setup(source, axle));
        rests.extend(road::rests::rolling(source));
    }
    rests
}

/// What the dial expects, typed or solved.
fn dial(source: Source<'_>) -> Option<Rest> {
    let shared = &source.conditions.speedo;
    let unit = TurnsPerDistance::usual(source.reader.units);
    let constant = |dial: Dial| format!("{} {}", number::show((unit.take)(&dial.constant()), 0), unit.symbol);
    match (shared.dial, shared.solved) {
        (Some(dial), _) => Some(typed("Dial", constant(dial))),
        (None, Some(solved)) => {
            let from = Said::new(format!("solved from the road check of {}, its axle and tyre", mark(solved.column))).plain();
            Some(usual("Dial", constant(solved.dial), from))
        }
        (None, None) => None,
    }
}

/// Where the drive gear sits, of a setup with extra stages.
fn take_off(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let typed_in = source.job.setup(analysis.setup.id)?;
    let of_setup = Choice::Setup(analysis.setup.id, SetupChoice::TakeOff);
    let chosen = source.job.chosen(of_setup);
    let (_, says) = of_setup.options().into_iter().find(|(word, _)| *word == chosen)?;
    if typed_in.stages.is_empty() {
        return None;
    }
    Some(typed_or(!typed_in.speedo.take_off.is_nothing(), "Speedometer driven from", says, PRACTICE))
}

fn road_check(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let readings = &analysis.setup.speedo.readings;
    let unit = Velocity::usual(source.reader.units);
    let reading = |reading: &crate::speedometer::Reading| {
        format!("{} at a true {}", number::show((unit.take)(&reading.dial), 1), show(&reading.truth, unit, 1))
    };
    let text = readings.iter().map(reading).collect::<Vec<_>>().join("; ");
    (!readings.is_empty()).then(|| typed("Road check", text))
}
