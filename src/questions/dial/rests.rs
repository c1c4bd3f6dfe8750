//! What the figures of Speedometer rest on: dial, gears, road check, rule, axle and tyre.

use super::answer::Basis;
use super::rows::rule;
use crate::job::choice::Chosen;
use crate::questions::gears::rests::axle;
use crate::questions::rests::{by_setup, typed, usual};
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
    rests.extend(source.conditions.speedo.check.map(|check| typed("Check at", show(&check, Velocity::usual(source.reader.units), 0))));
    rests.extend(rule::band(source).map(|band| match source.conditions.speedo.law {
        Chosen::One(_) => Rest { source: rule::about(band), ..typed("Rule", band.name) },
        _ => usual("Rule", band.name, rule::about(band)),
    }));
    if source.setups.iter().any(|analysis| matches!(analysis.speedo().basis, Some(Basis::Typed | Basis::Solved { .. }))) {
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

fn road_check(source: Source<'_>, analysis: &Analysis) -> Option<Rest> {
    let readings = &analysis.setup.speedo.readings;
    let unit = Velocity::usual(source.reader.units);
    let reading = |reading: &crate::speedometer::Reading| {
        format!("{} at a true {}", number::show((unit.take)(&reading.dial), 1), show(&reading.truth, unit, 1))
    };
    let text = readings.iter().map(reading).collect::<Vec<_>>().join("; ");
    (!readings.is_empty()).then(|| typed("Road check", text))
}
