//! The rows of the bearings: how long they last, and what they hold gear by gear.

use super::bearings::{Bearings, Held, Life, unplaced};
use super::rows::name;
use crate::job::{InsideField, SetupField};
use crate::questions::alike::listed;
use crate::questions::inside::rows::typed_row;
use crate::questions::needs::uncounted_or;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row, ordinal};
use crate::units::{Force, Measured, Time, number, unit};

/// Source of the lives.
const ISO: &str = "basic rating life L₁₀ of ISO 281:2007, added up by Palmgren and Miner; oil, dirt and misalignment often decide instead";
/// Source of the loads.
const STATICS: &str = "a rigid shaft on two points; forces after Shigley, Mechanical Engineering Design, section 13-16";
/// Lives longer than this many hours are said to be so.
const MOST_HOURS: f64 = 100_000.0;
/// What each bearing is called.
const ENDS: [(&str, &str); 2] = [("front", "the front one"), ("rear", "the rear one")];

/// The rows in which bearings and places are typed.
pub(super) fn typed_rows(source: Source<'_>) -> [Row; 2] {
    let row = |label: &str, field: InsideField| typed_row(source, label, SetupField::Inside(field), "");
    [row("Bearings of the cluster", InsideField::Bearings), row("Where its gears sit", InsideField::Places)]
}

/// Whether any setup's bearings are typed.
pub(super) fn are_typed(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.setup.inside.bearings.is_some())
}

/// How long they last.
pub(super) fn life_row(source: Source<'_>) -> Row {
    source.row("bearing-life", "Bearings last", |analysis| match bearings(analysis).and_then(|bearings| Some((bearings, bearings.life?))) {
        Some((bearings, life)) => life_cell(bearings, life),
        None => missing(source, analysis),
    })
}

/// What they hold in every gear.
pub(super) fn held_rows(source: Source<'_>) -> Vec<Row> {
    let row = |gear: usize| {
        source.row(format!("bearings-{}", gear + 1), format!("Bearings in {}", ordinal(gear)), |analysis| {
            match bearings(analysis).and_then(|bearings| bearings.gears.get(gear).copied().flatten()) {
                Some(held) if held.turns > 0.0 => held_cell(source, held, gear),
                Some(_) => Cell::absent("nothing: direct"),
                None if gear >= analysis.setup.gears.len() => Cell::absent("no such gear"),
                None => missing(source, analysis),
            }
        })
    };
    let many = if are_typed(source) { source.most_gears() } else { 0 };
    (0..many).map(row).collect()
}

fn bearings(analysis: &Analysis) -> Option<&Bearings> {
    analysis.teeth().bearings.as_ref()
}

fn missing(source: Source<'_>, analysis: &Analysis) -> Cell {
    let inside = &analysis.setup.inside;
    if inside.cut.is_none() {
        return uncounted_or(analysis, "needs module or pitch");
    }
    if inside.bearings.is_none() {
        return Cell::needed("needs the bearings of the cluster: place, rating C and kind of both");
    }
    let unplaced: Vec<String> = unplaced(&analysis.setup).into_iter().map(|at| name(source, at)).collect();
    if unplaced.is_empty() {
        return uncounted_or(analysis, "needs the engine’s torque and the shift rpm");
    }
    // Said whatever the other setups lack: the bearings are typed, and nothing comes of them.
    Cell::absent(format!("needs the place of {} along the cluster", listed(&unplaced)))
}

/// The hours both reach together, and each alone.
fn life_cell(bearings: &Bearings, life: Life) -> Cell {
    let each: Vec<String> = ENDS.iter().zip(life.each).map(|((end, _), life)| format!("{end} {}", said(life))).collect();
    let formula = "L = 10⁶ turns × (C ÷ P)ᵖ; each gear uses up its share; both together (Σ L^−e)^(−1/e)";
    let figure = Figure::quantity("teeth.bearings.together", &life.both, &unit::HOUR, 0).by(formula, each.join(", "), ISO);
    let ends = ENDS.iter().zip(life.each).map(|((end, _), life)| format!("{end} {}", said(life)));
    let thrust = match bearings.takes_thrust.and_then(|place| ENDS.get(place)) {
        Some((_, end)) => format!("thrust taken by {end}"),
        None => "thrust is left to the washers".into(),
    };
    Cell::line([figure.into(), Piece::words("both together")])
        .and([Piece::words(ends.collect::<Vec<_>>().join(", "))])
        .and([Piece::words(thrust)])
}

fn said(life: Option<Time>) -> String {
    match life.map(|life| unit::HOUR.number(life)) {
        Some(hours) if hours < MOST_HOURS => format!("{} h", number::show(hours, 0)),
        Some(_) => format!("over {} h", number::show(MOST_HOURS, 0)),
        None => "without load".into(),
    }
}

fn held_cell(source: Source<'_>, held: Held, gear: usize) -> Cell {
    let unit = Force::usual(source.reader.units);
    let thrust = format!("thrust {} {}", number::show((unit.take)(&held.thrust), 0), unit.symbol);
    let pieces = ENDS.iter().zip(held.radial).flat_map(|((end, _), radial)| {
        let key = format!("teeth.gear_{}.bearing_{end}", gear + 1);
        let figure = Figure::quantity(&key, &radial, unit, 0).small();
        [Piece::words(*end), figure.by("moments about the other bearing", thrust.clone(), STATICS).into()]
    });
    Cell::line(pieces.collect::<Vec<_>>())
}
