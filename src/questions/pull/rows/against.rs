//! Close or wide, to be read out on the phone: what a setup gains and gives up against A, from the figures alone.

use super::why_not;
use crate::motion::compare::{Difference, Facts, difference};
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::alike::rounded;
use crate::questions::short::cruise_text;
use crate::sheet::{Cell, Piece};
use crate::units::{Measured, Velocity, number, unit};

/// What this setup gains and gives up against the first.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(first) = source.setups.first() else { return Cell::default() };
    if first.setup.id == analysis.setup.id {
        return Cell::needed("reference");
    }
    let (Some(a), Some(b)) = (first.facts(), analysis.facts()) else { return why_not(source, analysis) };
    let mut lines = sentences(source, &difference(a, b));
    lines.extend(as_shown(source, a, b));
    if lines.is_empty() {
        return Cell::absent("no difference");
    }
    lines.into_iter().fold(Cell::default(), |cell, line| cell.and([Piece::words(line)]))
}

fn sentences(source: Source<'_>, difference: &Difference) -> Vec<String> {
    let mut lines = Vec::new();
    let (shorter, percent) = (difference.first_overall_share > 0.0, (difference.first_overall_share * 100.0).abs());
    if percent >= 0.5 {
        lines.push(format!(
            "1st is {} % {}",
            number::show(percent, 0),
            if shorter { "shorter: easier to set off" } else { "taller: harder to set off" }
        ));
    }
    if let Some(share) = difference.clutch_energy_share.filter(|share| share.abs() >= 0.005) {
        lines.push(format!(
            "{} % {} clutch heat each start",
            number::show(share.abs() * 100.0, 0),
            if share > 0.0 { "more" } else { "less" }
        ));
    }
    let points = |share: f64| {
        let shown = number::show(share.abs() * 100.0, 0);
        let word = if shown == "1" { "point" } else { "points" };
        (share.abs() >= 0.005 && share.is_finite()).then(|| format!("{shown} {word}"))
    };
    if let Some(by) = points(difference.start_grade) {
        lines.push(format!("starts on a grade {by} {}", if difference.start_grade > 0.0 { "steeper" } else { "less steep" }));
    }
    if difference.landings_inside != 0 {
        let (many, more) = (difference.landings_inside.unsigned_abs(), difference.landings_inside > 0);
        let lands = if many == 1 { "shift lands" } else { "shifts land" };
        lines.push(format!("{many} {} {lands} in the power band", if more { "more" } else { "fewer" }));
    }
    if let Some((share, by)) = difference.in_band.and_then(|share| Some((share, points(share)?))) {
        lines.push(format!("{by} {} of the run in the power band", if share > 0.0 { "more" } else { "less" }));
    }
    if let Some(rpm) = difference.cruise_rpm.filter(|rpm| rpm.abs() >= 0.5) {
        lines.push(format!("{} rpm {} at {}", number::show(rpm.abs(), 0), if rpm > 0.0 { "more" } else { "less" }, cruise_text(source)));
    }
    lines
}

/// The times and the top speed, as they differ by what is shown of them.
fn as_shown(source: Source<'_>, a: &Facts, b: &Facts) -> Vec<String> {
    let by = |a: f64, b: f64| Some(rounded(b, 1) - rounded(a, 1)).filter(|by| by.abs() >= 0.05);
    let seconds = |facts: &Facts, at: usize| facts.reached(at).map(|moment| unit::SECOND.number(moment.time));
    let time = |(at, speed): (usize, &Velocity)| {
        let by = by(seconds(a, at)?, seconds(b, at)?)?;
        let word = if by < 0.0 { "quicker" } else { "slower" };
        Some(format!("0 to {}: {} s {word}", source.show(speed, 0), number::show(by.abs(), 1)))
    };
    let unit = Velocity::usual(source.reader.units);
    let top = a.top.zip(b.top).and_then(|(a, b)| by((unit.take)(&a.speed), (unit.take)(&b.speed)));
    let top =
        top.map(|by| format!("top speed {} {} {}", number::show(by.abs(), 1), unit.symbol, if by > 0.0 { "higher" } else { "lower" }));
    source.conditions.pull.run.speeds.iter().enumerate().filter_map(time).chain(top).collect()
}
