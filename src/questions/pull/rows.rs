//! Pull at the wheels: which set suits this engine, this car and this use?

mod against;
mod down;
mod gear;
pub(super) mod plan;
pub(super) mod run;
mod shifts;
pub mod text;

use super::sentence::{WANTS, refusal};
use crate::gearing::Step;
use crate::questions::deciding::few;
use crate::questions::missing::{self, Want};
use crate::questions::{Analysis, Source, Station, needs};
use crate::sheet::{Cell, Row};
use crate::units::Mass;

/// The time to the first of the speeds asked for, for every setup.
pub fn station(source: Source<'_>) -> Station {
    run::station(source)
}

/// The rows that decide: the named speed, the distance of the trade, when to shift, the clutch, the top speed, the cruise.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut rows = run::deciding(source);
    if let Some(plan) = plan::row(source) {
        rows.insert(1.min(rows.len()), plan);
    }
    rows.push(source.row("top", "Top speed", |analysis| gear::top_cell(source, analysis)));
    rows.push(cruise_row(source));
    few(rows, missing(source))
}

/// What engine, car and setups lack.
fn missing(source: Source<'_>) -> Option<Row> {
    let pull = &source.conditions.pull;
    let mut wants: Vec<Want<'_>> = Vec::new();
    if pull.curve.is_none() {
        wants.push(("the engine’s torque or power", &|_| true));
    }
    if pull.car.is_none() {
        wants.push(("the car’s mass", &|_| true));
    }
    wants.extend(WANTS);
    missing::row(source, &wants, "times and grades")
}

/// The rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let mut rows = run::rows(source);
    let steps = driven(source);
    rows.extend(steps.iter().zip(steps.iter().skip(1)).map(|(step, next)| shifts::row(source, step, next)));
    rows.push(in_band_row(source));
    rows.extend(steps.iter().map(|step| {
        source.row(row_key("gear", step), format!("{}: top speed, grade", step.name()), |analysis| gear::cell(source, analysis, step))
    }));
    rows.push(cruise_row(source));
    rows.extend(down::rows(source));
    if source.setups.len() > 1 {
        rows.push(source.row("against", "Against A", |analysis| against::cell(source, analysis)));
    }
    rows
}

/// The steps of all setups that a run can use.
fn driven(source: Source<'_>) -> Vec<&Step> {
    source.steps().into_iter().filter(|step| step.on_the_move).collect()
}

/// `gear-3`, `gear-3-overdrive`.
fn row_key(of: &str, step: &Step) -> String {
    format!("{of}-{}", step.key().replace('_', "-"))
}

fn in_band_row(source: Source<'_>) -> Row {
    let last = source.conditions.pull.run.speeds.iter().copied().max_by(|a, b| a.value.total_cmp(&b.value));
    let label =
        last.map_or_else(|| "Time in the power band".into(), |last| format!("Time in the power band, 0 to {}", source.show(&last, 0)));
    source.row("in-band", label, shifts::in_band_cell)
}

fn cruise_row(source: Source<'_>) -> Row {
    let label = format!("Top gear at {}", crate::questions::short::cruise_text(source));
    source.row("cruise", label, |analysis| gear::cruise_cell(source, analysis))
}

/// Why a setup has no answer here: what was refused, or what is still missing.
fn why_not(source: Source<'_>, analysis: &Analysis) -> Cell {
    if let Some(refused) = &analysis.pull().refused {
        return Cell::absent(refusal(refused));
    }
    if source.conditions.pull.curve.is_none() {
        return Cell::needed("needs the engine’s torque or power");
    }
    if analysis.pull().thrust.is_none() {
        return Cell::needed(needs(analysis));
    }
    Cell::needed("needs the car’s mass")
}

/// What ends a gear: the rev limit, or the end of the curve where none is typed.
fn end_words(analysis: &Analysis) -> &'static str {
    let is_given = analysis.pull().thrust.as_ref().is_some_and(crate::motion::Pull::is_limit_given);
    if is_given { "the rev limit" } else { "the end of the curve" }
}

/// What the trailer adds to a grade or a cruise: `, with the trailer of 1,000 lb`; nothing without one.
fn with_trailer(source: Source<'_>) -> String {
    let trailer = source.conditions.pull.trailer;
    if trailer > Mass::default() { format!(", with the trailer of {}", source.show(&trailer, 0)) } else { String::new() }
}
