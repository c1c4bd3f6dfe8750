//! The pictures of Driveline: the shaft's speed over the road speed, its joints, and the critical speed over the length.

use super::answer::shaft_speed;
use crate::chart::lines::{At, Dot, Guide, Lines, Measure, Series};
use crate::chart::palette::Hue;
use crate::questions::{Analysis, Source};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{Length, Measured, Velocity, number};

pub mod joints;

/// Points to a curve.
const POINTS: u32 = 48;
/// How far past the speed it is judged at a shaft is shown.
const PAST: f64 = 1.15;

/// The speed of every setup's shaft over the road speed, with its critical speed and what is allowed of it.
pub fn speed(source: Source<'_>, focus: Option<usize>) -> Option<Lines> {
    let unit = Velocity::usual(source.reader.units);
    let judged = |analysis: &Analysis| analysis.driveline().turning.map(|turning| (unit.take)(&turning.road));
    let fastest = source.setups.iter().filter_map(judged).reduce(f64::max)? * PAST;
    let line = |(slot, analysis): (usize, &Analysis)| {
        let (circumference, behind) = (analysis.setup.rolling.as_ref()?.circumference, analysis.setup.behind_shaft()?);
        let at = |road: f64| (road, in_rpm(shaft_speed((unit.make)(road), circumference, behind)));
        Some(Series { hue: Hue::Setup(slot), name: String::new(), points: vec![at(0.0), at(fastest)] })
    };
    let mut named: Vec<String> = Vec::new();
    let dot = |(slot, analysis): (usize, &Analysis)| {
        let turning = analysis.driveline().turning?;
        let shown = show_rpm(turning.shaft);
        // What several setups share is named once.
        let name = if named.contains(&shown) { String::new() } else { shown.clone() };
        named.push(shown);
        Some(Dot { at: ((unit.take)(&turning.road), in_rpm(turning.shaft)), name, hue: Hue::Setup(slot) })
    };
    Some(Lines {
        title: "Speed of the driveshaft".into(),
        x: Measure { name: "road speed".into(), unit: unit.symbol.into(), decimals: 0, ends: None },
        y: Measure { name: "shaft speed".into(), unit: "rpm".into(), decimals: 0, ends: None },
        series: source.setups.iter().enumerate().filter_map(line).collect(),
        bands: Vec::new(),
        guides: guides(source),
        dots: source.setups.iter().enumerate().filter_map(dot).collect(),
        focus,
    })
}

/// The lowest critical speed of all setups and what is allowed of it, each once.
fn guides(source: Source<'_>) -> Vec<Guide> {
    let lowest = |speed: fn(&Analysis) -> Option<f64>| source.setups.iter().filter_map(speed).reduce(f64::min);
    let guide = |value: f64, name: &str, hue: Hue| Guide { at: At::Y(value), name: format!("{name} {}", number::show(value, 0)), hue };
    let allowed = lowest(|analysis| analysis.driveline().allowed.map(in_rpm)).map(|value| guide(value, "allowed", Hue::Caution));
    let critical = lowest(|analysis| Some(in_rpm(analysis.driveline().critical?.0))).map(|value| guide(value, "critical", Hue::Stop));
    allowed.into_iter().chain(critical).collect()
}

/// The critical speed of every setup's tube over the length of a piece, with a dot at the pieces there are.
pub fn length(source: Source<'_>, focus: Option<usize>) -> Option<Lines> {
    let unit = Length::usual(source.reader.units);
    let lengths: Vec<f64> =
        source.setups.iter().flat_map(|analysis| &analysis.setup.shaft.lengths).map(|length| (unit.take)(length)).collect();
    let (least, most) = (lengths.iter().copied().reduce(f64::min)? * 0.7, lengths.iter().copied().reduce(f64::max)? * 1.25);
    let critical = |analysis: &Analysis, length: f64| {
        let shaft = analysis.setup.shaft.piece((unit.make)(length))?.ok()?;
        Some((length, in_rpm(shaft.critical_speed())))
    };
    let along = || (0..=POINTS).map(|at| least + (most - least) * f64::from(at) / f64::from(POINTS));
    let line = |(slot, analysis): (usize, &Analysis)| {
        let points: Vec<(f64, f64)> = along().filter_map(|length| critical(analysis, length)).collect();
        (!points.is_empty()).then(|| Series { hue: Hue::Setup(slot), name: String::new(), points })
    };
    let dots = |(slot, analysis): (usize, &Analysis)| {
        let own = analysis.setup.shaft.lengths.iter().filter_map(|length| critical(analysis, (unit.take)(length)));
        own.map(|at| Dot { at, name: number::show(at.1, 0), hue: Hue::Setup(slot) }).collect::<Vec<_>>()
    };
    let needed = source.setups.iter().filter_map(|analysis| Some(in_rpm(analysis.driveline().turning?.shaft)));
    let needed = needed.zip(std::iter::repeat(source.conditions.driveline.margin?.share())).map(|(rpm, share)| rpm / share);
    let guide =
        needed.reduce(f64::max).map(|rpm| Guide { at: At::Y(rpm), name: format!("needed {}", number::show(rpm, 0)), hue: Hue::Caution });
    let series: Vec<Series> = source.setups.iter().enumerate().filter_map(line).collect();
    (!series.is_empty()).then(|| Lines {
        title: "Critical speed over the length of a piece".into(),
        x: Measure { name: "between joint centres".into(), unit: unit.symbol.into(), decimals: 1, ends: None },
        y: Measure { name: "critical speed".into(), unit: "rpm".into(), decimals: 0, ends: None },
        series,
        bands: Vec::new(),
        guides: guide.into_iter().collect(),
        dots: source.setups.iter().enumerate().flat_map(dots).collect(),
        focus,
    })
}
