//! The answer of Teeth in a sentence: the weakest pair of each setup, and which pair bears most more than A's.

use super::rows::{most_against_first, name};
use crate::gearing::geometry::pair_cuts::PairAt;
use crate::questions::alike::rounded;
use crate::questions::missing::{self, Want};
use crate::questions::{Analysis, Source, Station};
use crate::sheet::Said;
use crate::sheet::said::marks;
use crate::units::{number, show, unit};

/// What a setup needs before its teeth can be judged.
const WANTS: [Want<'static>; 3] = [
    ("the missing tooth counts", &|analysis| analysis.setup.gearbox.is_none()),
    ("module or pitch", &|analysis| analysis.setup.inside.cut.is_none()),
    ("the face width", &|analysis| analysis.setup.inside.face.is_none() && analysis.teeth().weakest().is_none()),
];

/// The weakest pair, for every setup.
pub fn station(source: Source<'_>) -> Station {
    Station::of(source, "weakest pair in bending", |analysis| Some(name(source, analysis.teeth().weakest()?.at)))
}

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    let lacking = missing::said(source, &WANTS, "what its teeth bear").unwrap_or_default();
    let has_torque = source.setups.iter().any(|analysis| analysis.teeth().torque.is_some());
    let torque = match (has_torque, source.conditions.inside.by_grip) {
        (true, _) => String::new(),
        (false, true) => "Type the engine’s curve and the car’s weight in Pull to get what the tyres hold.".into(),
        (false, false) => "Type the engine’s torque to see what its teeth bear.".into(),
    };
    Said::of([weakest(source), most_more(source), bearings(source), lacking, torque])
}

/// `Weakest in bending: 1st in [A] and [B], 2nd in [C].`
fn weakest(source: Source<'_>) -> String {
    let mut groups: Vec<(PairAt, Vec<usize>)> = Vec::new();
    for (column, analysis) in source.setups.iter().enumerate() {
        let Some(weakest) = analysis.teeth().weakest() else { continue };
        match groups.iter_mut().find(|(at, _)| *at == weakest.at) {
            Some((_, columns)) => columns.push(column),
            None => groups.push((weakest.at, vec![column])),
        }
    }
    let parts: Vec<String> = groups.iter().map(|(at, columns)| format!("{} in {}", name(source, *at), marks(columns))).collect();
    if parts.is_empty() { String::new() } else { format!("Weakest in bending: {}.", parts.join(", ")) }
}

/// `Against [A]: 2nd bears 16 % more in [B], no pair bears more in [C].`: of each other setup the pair that bears most more.
fn most_more(source: Source<'_>) -> String {
    let mut more: Vec<More> = Vec::new();
    let mut no_more: Vec<usize> = Vec::new();
    for (column, analysis) in source.setups.iter().enumerate() {
        let Some((share, at)) = most_against_first(source, analysis) else { continue };
        let percent = rounded(100.0 * share, 0);
        match more.iter_mut().find(|known| known.at == at && known.percent.total_cmp(&percent).is_eq()) {
            _ if percent < 1.0 => no_more.push(column),
            Some(known) => known.columns.push(column),
            None => more.push(More { percent, at, columns: vec![column] }),
        }
    }
    crate::order::by(&mut more, |one, other| other.percent.total_cmp(&one.percent));
    let says = |more: &More| {
        let (name, percent) = (name(source, more.at), number::show(more.percent, 0));
        format!("{name} bears {percent} % more in {}", marks(&more.columns))
    };
    let mut parts: Vec<String> = more.iter().take(MOST_NAMED).map(says).collect();
    if !no_more.is_empty() {
        parts.push(format!("no pair bears more in {}", marks(&no_more)));
    }
    if parts.is_empty() { String::new() } else { format!("Against [A]: {}.", parts.join(", ")) }
}

/// `Bearings last 2,310 h in [A], 1,850 h in [B].`: those of the shaft that wears out first.
fn bearings(source: Source<'_>) -> String {
    let shortest = |analysis: &Analysis| {
        let lives = analysis.teeth().bearings.iter().filter_map(|bearings| Some(bearings.life?.both));
        lives.reduce(|least, next| if next < least { next } else { least })
    };
    let lives = source.setups.iter().enumerate().filter_map(|(column, analysis)| Some((column, shortest(analysis)?)));
    let parts: Vec<String> = lives.map(|(column, life)| format!("{} in {}", show(&life, &unit::HOUR, 0), marks(&[column]))).collect();
    if parts.is_empty() { String::new() } else { format!("Bearings last {}.", parts.join(", ")) }
}

/// The setups whose pair bears most more than A's, and by how much.
struct More {
    percent: f64,
    at: PairAt,
    columns: Vec<usize>,
}

/// The most amounts that are named.
const MOST_NAMED: usize = 3;
