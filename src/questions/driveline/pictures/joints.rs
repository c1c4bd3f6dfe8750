//! The pictures of the joints: the line from the side and from above, to scale, and the speed over one turn.

use crate::chart::lines::{Lines, Measure, Series};
use crate::chart::palette::Hue;
use crate::chart::views::{Joint, View, Views};
use crate::driveline::{Direction, Line};
use crate::questions::driveline::answer::{Joints, over_a_turn};
use crate::questions::driveline::rows::shaft_words::{is_straight, joint_name, plan_view, side_view, sloping};
use crate::questions::{Analysis, Source};
use crate::units::{Angle, Length, Measured, number, unit};

/// How long the gearbox and the axle's nose are drawn, as a share of the shaft.
const STUB: f64 = 0.18;
/// Steps of a turn.
const STEPS: u32 = 72;

/// The setup that is drawn: the one brought forward where its line is known, else the first whose is.
fn drawn(source: Source<'_>, focus: Option<usize>) -> Option<(usize, &Analysis, &Joints)> {
    let of = |slot: usize| source.setups.get(slot).and_then(|analysis| Some((slot, analysis, analysis.driveline().joints.as_ref()?)));
    focus.and_then(of).or_else(|| (0..source.setups.len()).find_map(of))
}

/// The line of one setup from the side, and from above where it runs sideways.
pub fn line(source: Source<'_>, focus: Option<usize>) -> Option<Views> {
    let (slot, analysis, joints) = drawn(source, focus)?;
    let length_unit = Length::usual(source.reader.units);
    let (rods, is_to_scale) = rods(analysis, &joints.line, |length| length_unit.number(length));
    let shafts = joints.line.shafts();
    let many = shafts.len();
    let view = |name: &str, up: &dyn Fn(Direction) -> f64, says: &dyn Fn(usize, Direction) -> String| View {
        name: name.to_owned(),
        ends: ends(shafts, &rods, up),
        rods: shafts.iter().enumerate().map(|(at, shaft)| says(at, *shaft)).collect(),
    };
    let named = |at: usize, shaft: Direction| {
        let whole = sloping(at, many, Direction::default());
        let name = whole.trim_end_matches("level").trim_end();
        format!("{name} {}", side_view(at + 1 == many, shaft))
    };
    let side = view("from the side", &|shaft| -tangent(shaft.side()), &named);
    let is_offset = !shafts.iter().all(|shaft| is_straight(shaft.plan()));
    let plan = is_offset.then(|| view("from above, right is down", &|shaft| -tangent(shaft.plan()), &|_, shaft| plan_view(shaft)));
    let angles = joints.angles.iter().enumerate();
    Some(Views {
        title: format!("Joints of setup {}", analysis.setup.letter),
        hue: Hue::Setup(slot),
        unit: if is_to_scale { length_unit.symbol.into() } else { String::new() },
        joints: angles
            .map(|(at, angle)| Joint {
                name: joint_name(at, joints.angles.len()),
                says: format!("{}°", number::show(unit::DEGREE.number(*angle), 1)),
            })
            .collect(),
        views: std::iter::once(side).chain(plan).collect(),
    })
}

fn tangent(angle: Angle) -> f64 {
    unit::RADIAN.number(angle).tan()
}

/// How far each shaft runs along the car, gearbox and nose as stubs, and whether the lengths of the pieces are known.
fn rods(analysis: &Analysis, line: &Line, number: impl Fn(Length) -> f64) -> (Vec<f64>, bool) {
    let pieces = line.shafts().len().saturating_sub(2);
    let lengths = &analysis.setup.shaft.lengths;
    let is_to_scale = lengths.len() == pieces;
    let inner = line.shafts().iter().skip(1).take(pieces).enumerate().map(|(at, shaft)| {
        let length = lengths.get(at).filter(|_| is_to_scale).map_or(1.0, |length| number(*length));
        length / (1.0 + tangent(shaft.side()).powi(2) + tangent(shaft.plan()).powi(2)).sqrt()
    });
    let inner: Vec<f64> = inner.collect();
    let stub = STUB * inner.iter().sum::<f64>();
    (std::iter::once(stub).chain(inner).chain([stub]).collect(), is_to_scale)
}

/// The ends of the rods in one view, from the front end of the gearbox's stub; the first joint lies at nothing.
fn ends(shafts: &[Direction], rods: &[f64], up: &dyn Fn(Direction) -> f64) -> Vec<(f64, f64)> {
    let first = shafts.first().zip(rods.first()).map_or((0.0, 0.0), |(shaft, rod)| (-rod, -rod * up(*shaft)));
    let mut ends = vec![first];
    let mut at = first;
    for (shaft, rod) in shafts.iter().zip(rods) {
        at = (at.0 + rod, at.1 + rod * up(*shaft));
        ends.push(at);
    }
    ends
}

/// The speed of every setup's pinion over a turn of its gearbox, and of the shaft of the one brought forward.
pub fn over_one_turn(source: Source<'_>, focus: Option<usize>) -> Option<Lines> {
    let (shown, ..) = drawn(source, focus)?;
    let line = |(slot, analysis): (usize, &Analysis)| {
        let joints = analysis.driveline().joints.as_ref()?;
        let turns = over_a_turn(&joints.line, STEPS);
        let points = |which: fn(&[f64; 2]) -> f64| {
            turns.iter().map(|(turn, ratios)| (unit::DEGREE.number(*turn), 100.0 * (which(ratios) - 1.0))).collect::<Vec<_>>()
        };
        let shaft = (slot == shown).then(|| Series {
            hue: Hue::Muted,
            name: format!("shaft of {}", analysis.setup.letter),
            points: points(|[shaft, _]| *shaft),
        });
        let pinion = Series { hue: Hue::Setup(slot), name: "pinion".into(), points: points(|[_, pinion]| *pinion) };
        Some(shaft.into_iter().chain([pinion]))
    };
    Some(Lines {
        title: "Speed over one turn of the gearbox’s output".into(),
        x: Measure { name: "turned".into(), unit: "°".into(), decimals: 0, ends: Some((0.0, 360.0)) },
        y: Measure { name: "faster or slower than the gearbox".into(), unit: "%".into(), decimals: 2, ends: None },
        series: source.setups.iter().enumerate().filter_map(line).flatten().collect(),
        focus,
        ..Lines::default()
    })
}
