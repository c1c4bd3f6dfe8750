//! The pictures of Pull: thrust over speed, the run over time and over distance, and which part of the engine each gear uses.

use crate::chart::lines::{At, Band, Dot, Guide, Lines, Measure, Series};
use crate::chart::palette::Hue;
use crate::gearing::{GearNumber, Step};
use crate::motion::run::{Moment, Run};
use crate::questions::pull::answer::{followed, traced};
use crate::questions::{Analysis, Source};
use crate::units::common::{in_rpm, metres_per_second, rpm};
use crate::units::{Force, Length, Measured, Power, System, Unit, Velocity, number, unit};

/// Points to a curve.
const POINTS: u32 = 48;
/// The grades whose road load is drawn, rise over run.
const GRADES: [f64; 3] = [0.0, 0.1, 0.2];

/// Thrust in every gear over road speed, with the road load on the level and on grades, and the tyres' grip.
pub fn thrust(source: Source<'_>, focus: Option<usize>) -> Lines {
    let (speed, force) = (Velocity::usual(source.reader.units), Force::usual(source.reader.units));
    let mut series = Vec::new();
    for (slot, analysis) in source.setups.iter().enumerate() {
        let gears = analysis.pull().thrust.iter().flat_map(crate::motion::Pull::gears);
        series.extend(gears.map(|gear| {
            let points = even(gear.slowest.value, gear.fastest.value).filter_map(|v| {
                let at = metres_per_second(v);
                Some(((speed.take)(&at), (force.take)(&gear.thrust(at)?)))
            });
            Series { hue: Hue::Setup(slot), name: short_name(analysis, gear.gear), points: points.collect() }
        }));
    }
    let reach = series.iter().flat_map(|line| &line.points).map(|(x, _)| *x).fold(0.0, f64::max);
    let loads = road_loads(source, reach);
    let grip = source.setups.iter().find_map(|analysis| analysis.pull().vehicle.as_ref()).map(crate::motion::Vehicle::grip_limit);
    let guide = |grip: Force| Guide { at: At::Y((force.take)(&grip)), name: "grip of the driven wheels".into(), hue: Hue::Caution };
    series.extend(loads);
    Lines {
        title: "Thrust at the wheels".into(),
        x: Measure { name: "road speed".into(), unit: speed.symbol.into(), decimals: 0, ends: None },
        y: Measure { name: "thrust".into(), unit: force.symbol.into(), decimals: 0, ends: None },
        series,
        guides: grip.map(guide).into_iter().collect(),
        focus,
        ..Lines::default()
    }
}

/// What the step is called on a picture that a run knows by a number.
fn short_name(analysis: &Analysis, number: GearNumber) -> String {
    analysis.setup.by_number(number).map_or_else(String::new, Step::short_name)
}

fn even(from: f64, to: f64) -> impl Iterator<Item = f64> {
    (0..=POINTS).map(move |at| from + (to - from) * f64::from(at) / f64::from(POINTS))
}

/// Road load over speed; the car is one, whatever the setup.
fn road_loads(source: Source<'_>, reach: f64) -> Vec<Series> {
    let (speed, force) = (Velocity::usual(source.reader.units), Force::usual(source.reader.units));
    let Some(vehicle) = source.setups.iter().find_map(|analysis| analysis.pull().vehicle.as_ref()) else { return Vec::new() };
    let on = |grade: f64| {
        let vehicle = vehicle.on(grade).ok()?;
        let points = even(0.0, reach).map(|x| (x, (force.take)(&vehicle.road_load((speed.make)(x)))));
        let name = if grade > 0.0 { format!("{} % grade", number::show(grade * 100.0, 0)) } else { "road load, level".into() };
        Some(Series { hue: if grade > 0.0 { Hue::Muted } else { Hue::Ink }, name, points: points.collect() })
    };
    GRADES.into_iter().filter_map(on).collect()
}

/// Speed over time from a standing start.
pub fn run(source: Source<'_>, focus: Option<usize>) -> Lines {
    let time = &unit::SECOND;
    let x = Measure { name: "time".into(), unit: time.symbol.into(), decimals: 1, ends: None };
    standing(source, focus, x, |moment| (time.take)(&moment.time))
}

/// Speed over the way covered from a standing start.
pub fn run_over_distance(source: Source<'_>, focus: Option<usize>) -> Lines {
    let length = way(source);
    let x = Measure { name: "distance".into(), unit: length.symbol.into(), decimals: 0, ends: None };
    standing(source, focus, x, |moment| (length.take)(&moment.distance))
}

/// Speed of a standing start over what `along` tells of each moment.
fn standing(source: Source<'_>, focus: Option<usize>, x: Measure, along: impl Fn(&Moment) -> f64) -> Lines {
    let speed = Velocity::usual(source.reader.units);
    let runs = source.setups.iter().enumerate().filter_map(|(slot, analysis)| {
        let run = traced(analysis.pull(), analysis.facts()?, source.conditions)?;
        let points = run.trace.iter().map(|moment| (along(moment), (speed.take)(&moment.speed)));
        Some(Series { hue: Hue::Setup(slot), name: String::new(), points: points.collect() })
    });
    let asked = source.conditions.pull.run.speeds.iter();
    let guides = asked.map(|asked| Guide { at: At::Y((speed.take)(asked)), name: number::show((speed.take)(asked), 0), hue: Hue::Muted });
    Lines {
        title: format!("Standing start: speed over {}", x.name),
        x,
        y: Measure { name: "road speed".into(), unit: speed.symbol.into(), decimals: 1, ends: None },
        series: runs.collect(),
        guides: guides.collect(),
        focus,
        ..Lines::default()
    }
}

/// How far every other setup is behind setup A where both have covered the same distance of a quarter mile: below nought it is ahead.
pub fn gap_to_a(source: Source<'_>, focus: Option<usize>) -> Option<Lines> {
    let length = way(source);
    let mut runs = source.setups.iter().enumerate().map(|(slot, analysis)| (slot, quarter_mile(analysis)));
    let (_, first) = runs.next()?;
    let first = first?;
    let series = runs.filter_map(|(slot, run)| {
        let run = run?;
        let points = run.moments().filter_map(|moment| {
            let behind = moment.time - first.time_at(moment.distance)?;
            Some(((length.take)(&moment.distance), (unit::SECOND.take)(&behind)))
        });
        Some(Series { hue: Hue::Setup(slot), name: String::new(), points: points.collect() })
    });
    let series: Vec<Series> = series.collect();
    (!series.is_empty()).then(|| Lines {
        title: "Quarter mile: time behind A".into(),
        x: Measure { name: "distance".into(), unit: length.symbol.into(), decimals: 0, ends: None },
        y: Measure { name: "behind A".into(), unit: unit::SECOND.symbol.into(), decimals: 2, ends: None },
        series,
        guides: vec![Guide { at: At::Y(0.0), name: "A".into(), hue: Hue::Setup(0) }],
        focus,
        ..Lines::default()
    })
}

/// The run that the quarter mile's time is of.
fn quarter_mile(analysis: &Analysis) -> Option<Run> {
    followed(analysis.pull(), analysis.over_distances().first()?.as_ref().ok()?)
}

/// The unit of a way driven.
fn way(source: Source<'_>) -> &'static Unit<Length> {
    if source.reader.units == System::Inch { &unit::FOOT } else { &unit::METRE }
}

/// Power over engine speed with the power band shaded, and a dot where each shift picks up.
pub fn band(source: Source<'_>, focus: Option<usize>) -> Lines {
    let power = Power::usual(source.reader.units);
    let curve = source.conditions.pull.curve.as_ref();
    let at = |n: f64| curve.and_then(|curve| curve.power(rpm(n))).map(|value| (n, (power.take)(&value)));
    let range = curve.map(crate::motion::EngineCurve::range);
    let points: Vec<(f64, f64)> = range.iter().flat_map(|range| even(in_rpm(range.from), in_rpm(range.to))).filter_map(at).collect();
    let shaded = curve
        .map(|curve| curve.band_to(source.conditions.pull.run.band_share.value.0, source.conditions.pull.limit.unwrap_or(curve.range().to)))
        .map(|band| {
            let inside: Vec<(f64, f64)> = even(in_rpm(band.from), in_rpm(band.to)).filter_map(at).collect();
            let lower = inside.iter().map(|(n, _)| (*n, 0.0)).collect();
            Band { hue: Hue::Ok, name: "power band".into(), lower, upper: inside }
        });
    let mut dots = Vec::new();
    for (slot, analysis) in source.setups.iter().enumerate() {
        let landings = analysis.facts().into_iter().flat_map(|facts| &facts.landings);
        dots.extend(landings.filter_map(|landing| {
            let name = short_name(analysis, landing.shift.to);
            Some(Dot { at: at(in_rpm(landing.shift.after))?, name, hue: Hue::Setup(slot) })
        }));
    }
    Lines {
        title: "Where each shift picks up".into(),
        x: Measure { name: "engine speed".into(), unit: "rpm".into(), decimals: 0, ends: None },
        y: Measure { name: "power".into(), unit: power.symbol.into(), decimals: 0, ends: None },
        series: vec![Series { hue: Hue::Ink, name: "engine".into(), points }],
        bands: shaded.into_iter().collect(),
        guides: Vec::new(),
        dots,
        focus,
    }
}
