//! How warm parts are at the bench and at work, and how much they grow: what fits and end play have in common.

use super::Source;
use super::rests::{typed_or, usual};
use super::setup::keep_or;
use crate::fits::{Material, temperature};
use crate::job::{Bench, BenchField, InputProblem};
use crate::sheet::Rest;
use crate::units::{Limits, ThermodynamicTemperature, Typed, limits, number};

/// How warm the parts were when they were measured, and how warm the box gets; the usual one stands in for one that cannot be read.
pub fn read(bench: &Bench, problems: &mut Vec<InputProblem>) -> [ThermodynamicTemperature; 2] {
    let mut warm = |typed: &Typed, field: BenchField, limits: &Limits<ThermodynamicTemperature>, usual| {
        let by = format!("{} is taken", limits::say(usual, typed.units));
        if typed.is_blank() { usual } else { keep_or(problems, field, typed.read(limits), &by).unwrap_or(usual) }
    };
    [
        warm(&bench.measured_at, BenchField::MeasuredAt, &limits::BENCH_TEMPERATURE, temperature::bench()),
        warm(&bench.warms_to, BenchField::WarmsTo, &limits::WORKING_TEMPERATURE, temperature::working()),
    ]
}

/// A temperature as it is read.
pub fn said(source: Source<'_>, at: ThermodynamicTemperature) -> String {
    source.show(&at, 0)
}

/// Both temperatures as what figures rest on.
pub fn rests(source: Source<'_>, [cold, hot]: [ThermodynamicTemperature; 2]) -> [Rest; 2] {
    let bench = &source.job.bench;
    let rest = |label: &str, text: &Typed, at, why: &str| typed_or(!text.is_blank(), label, said(source, at), why);
    [
        rest("Measured at", &bench.measured_at, cold, "ISO 1; a case still warm from washing measures long"),
        rest("Box warms to", &bench.warms_to, hot, "common practice, no published source"),
    ]
}

/// How much a material grows, as what figures rest on.
pub fn growth(label: &str, material: Material) -> Rest {
    let value = format!("{}, {} millionths for each K", material.word(), number::show(material.growth_ppm_per_k(), 1));
    usual(label, value, material.source())
}
