//! The speedometer's pictures: how far each dial reads from the truth, inside which band it may, and how far the shelf's pairs would.

use crate::chart::bars::{Bar, Bars, Zone};
use crate::chart::lines::{At, Band, Guide, Lines, Measure, Series};
use crate::chart::palette::Hue;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::dial::rows::rule::band;
use crate::speedometer::{Adapter, Candidate, Train};
use crate::units::{Measured, System, Velocity, number};

/// How many of the shelf's pairs are drawn.
const PAIRS: usize = 3;

/// The readings of every setup above the true speed, in the reader's unit.
pub fn readings(source: Source<'_>, focus: Option<usize>) -> Lines {
    let unit = Velocity::usual(source.reader.units);
    let speeds = true_speeds(source.reader.units);
    let line =
        |hue: Hue, name: String, error: f64| Series { hue, name, points: speeds.iter().map(|speed| (*speed, speed * error)).collect() };
    let fitted = |(slot, analysis): (usize, &Analysis)| {
        let fitted = analysis.speedo().fitted?;
        let offset = (unit.take)(&analysis.speedo().offset);
        let name = format!("{}/{}", fitted.train.drive(), fitted.train.driven());
        Some(Series { points: speeds.iter().map(|speed| (*speed, speed * fitted.error() + offset)).collect(), hue: Hue::Setup(slot), name })
    };
    let mut series = shelf_lines(source, focus, &line);
    series.extend(source.setups.iter().enumerate().filter_map(fitted));
    let check = source.conditions.speedo.check.map(|check| (unit.take)(&check));
    let guide = |check: f64| Guide { at: At::X(check), name: format!("check at {}", number::show(check, 0)), hue: Hue::Muted };
    Lines {
        title: "Speedometer readings above the true speed".into(),
        x: Measure { name: "true speed".into(), unit: unit.symbol.into(), decimals: 0, ends: speeds.last().map(|last| (0.0, *last)) },
        y: Measure { name: "reads above true".into(), unit: unit.symbol.into(), decimals: 1, ends: None },
        series,
        bands: allowed_band(source, &speeds).into_iter().collect(),
        guides: check.map(guide).into_iter().collect(),
        dots: Vec::new(),
        focus,
    }
}

/// The error of what is fitted to the setup brought forward, or to the first, and of the best the shelf holds for it,
/// with what the rule allows at the check speed.
pub fn shelf(source: Source<'_>, focus: Option<usize>) -> Bars {
    let slot = focus.unwrap_or(0);
    let bars = source.setups.get(slot).map(|analysis| shelf_bars(source, slot, analysis)).unwrap_or_default();
    Bars {
        title: "Speedometer error with each pair of the shelf".into(),
        measure: Measure { name: "reads high, below 0 low".into(), unit: "%".into(), decimals: 1, ends: None },
        bars,
        zone: allowed_share(source),
        focus,
    }
}

fn shelf_bars(source: Source<'_>, slot: usize, analysis: &Analysis) -> Vec<Bar> {
    let speedo = &analysis.speedo();
    let bar = |hue: Hue, name: String, error: f64| Bar { hue, name, value: error * 100.0, note: String::new() };
    let fitted = speedo.fitted.map(|fitted| bar(Hue::Setup(slot), format!("{} as fitted", gears(fitted.train)), fitted.error()));
    let others = speedo.pairs.best.iter().chain(&speedo.with_adapter);
    let others = others.filter(|candidate| analysis.setup.speedo.train != Some(candidate.train));
    fitted.into_iter().chain(others.map(|candidate| bar(Hue::Muted, shelf_name(source, candidate), candidate.error))).collect()
}

/// The gears of a candidate and the housing they fit: the same teeth may lie on the shelf for several.
fn shelf_name(source: Source<'_>, candidate: &Candidate) -> String {
    let housing = source.shelves.speedometer_gears.get(candidate.drive).map_or("", |gear| gear.housing.as_str());
    [gears(candidate.train).as_str(), housing].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// Drive and driven teeth, and the adapter's where there is one.
fn gears(train: Train) -> String {
    let pair = format!("{}/{}", train.drive(), train.driven());
    let Some((gearbox, cable)) = train.adapter().map(Adapter::counts) else { return pair };
    format!("{pair}, adapter {gearbox}/{cable}")
}

/// What the rule allows at the check speed, in percent of the true speed.
fn allowed_share(source: Source<'_>) -> Option<Zone> {
    let rule = band(source)?;
    let check = source.conditions.speedo.check?;
    let (least, greatest) = rule.allowed(check, source.reader.units)?;
    let percent = |reading: Velocity| 100.0 * (reading.value / check.value - 1.0);
    let zone = Zone { least: percent(least), greatest: percent(greatest), name: format!("allowed by {}", rule.name), hue: Hue::Ok };
    (zone.least.is_finite() && zone.greatest.is_finite()).then_some(zone)
}

fn true_speeds(units: System) -> Vec<f64> {
    let (step, last) = if units == System::Inch { (5.0, 24) } else { (10.0, 20) };
    (0..=last).map(|at| f64::from(at) * step).collect()
}

/// The best pairs of the shelf for the setup brought forward, or for the first; what is fitted already is not drawn twice.
fn shelf_lines(source: Source<'_>, focus: Option<usize>, line: &impl Fn(Hue, String, f64) -> Series) -> Vec<Series> {
    let Some(analysis) = source.setups.get(focus.unwrap_or(0)) else { return Vec::new() };
    let others = analysis.speedo().pairs.best.iter().filter(|candidate| analysis.setup.speedo.train != Some(candidate.train));
    others
        .take(PAIRS)
        .map(|candidate| line(Hue::Muted, format!("{}/{}", candidate.train.drive(), candidate.train.driven()), candidate.error))
        .collect()
}

/// What the rule allows, over the speeds it speaks of.
fn allowed_band(source: Source<'_>, speeds: &[f64]) -> Option<Band> {
    let unit = Velocity::usual(source.reader.units);
    let rule = band(source)?;
    let allowed = |speed: f64| {
        let (least, greatest) = rule.allowed((unit.make)(speed), source.reader.units)?;
        Some((speed, (unit.take)(&least) - speed, (unit.take)(&greatest) - speed))
    };
    let edges: Vec<(f64, f64, f64)> = speeds.iter().filter_map(|speed| allowed(*speed)).collect();
    (edges.len() > 1).then(|| Band {
        hue: Hue::Ok,
        name: format!("allowed by {}", rule.name),
        lower: edges.iter().map(|(speed, least, _)| (*speed, *least)).collect(),
        upper: edges.iter().map(|(speed, _, greatest)| (*speed, *greatest)).collect(),
    })
}
