//! The rows of the bearings: how long they last, and what they hold gear by gear, shaft by shaft.

use super::bearings::{Bearings, Held, Life, shaft_of, unplaced};
use super::rows::name;
use crate::gearing::GearNumber;
use crate::gearing::part::Shaft;
use crate::job::{InsideField, SetupField};
use crate::questions::alike::listed;
use crate::questions::inside::rows::typed_row;
use crate::questions::needs::uncounted_or;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::{Force, Measured, Time, limits, number, unit};

const ISO: &str = "basic rating life L₁₀ of ISO 281:2007, added up by Palmgren and Miner; oil, dirt and misalignment often decide instead";
const STATICS: &str = "a rigid shaft on two points; forces after Shigley, Mechanical Engineering Design, section 13-16";
/// Source of what taper bearings hold.
const TAPER: &str = "two taper bearings against each other, ISO 281:2007 and common catalogue practice (from memory); no preload, no play";
/// Lives longer than this many hours are said to be so.
const MOST_HOURS: f64 = 100_000.0;
/// What each bearing is called.
const ENDS: [(&str, &str); 2] = [("front", "the front one"), ("rear", "the rear one")];

/// A shaft whose bearings can be typed.
struct Shafted {
    field: InsideField,
    /// Between the words of its keys; empty for the one that was there first.
    key: &'static str,
    /// What it is called.
    words: &'static str,
    /// Which it is of a setup's box.
    shaft: fn(&Analysis) -> Shaft,
}

/// The countershaft (of a two-shaft box the input shaft), the mainshaft, the input shaft.
const SHAFTS: [Shafted; 3] = [
    Shafted { field: InsideField::Bearings, key: "", words: "cluster", shaft: |analysis| shaft_of(analysis.setup.layout) },
    Shafted { field: InsideField::MainBearings, key: "main_", words: "mainshaft", shaft: |_| Shaft::Output },
    Shafted { field: InsideField::InputBearings, key: "input_", words: "input shaft", shaft: |_| Shaft::Input },
];

/// The rows in which bearings and places are typed.
pub(super) fn typed_rows(source: Source<'_>) -> Vec<Row> {
    let row = |label: &str, field: InsideField| typed_row(source, label, SetupField::Inside(field), "");
    let bearings = SHAFTS.iter().map(|of| row(&format!("Bearings of the {}", of.words), of.field));
    bearings.chain([row("Where its gears sit", InsideField::Places)]).collect()
}

/// How long they last, for each shaft whose bearings any setup has typed.
pub(super) fn life_rows(source: Source<'_>) -> Vec<Row> {
    let row = |of: &Shafted| {
        let label = if of.key.is_empty() { "Bearings last".to_owned() } else { format!("Bearings of the {} last", of.words) };
        source.row(format!("{}bearing-life", of.key.replace('_', "-")), label, |analysis| {
            match bearings(analysis, of).and_then(|bearings| Some((bearings, bearings.life?))) {
                Some((bearings, life)) => life_cell(of, bearings, life),
                None => missing(source, analysis, of),
            }
        })
    };
    typed(source).map(row).collect()
}

/// What they hold in every gear.
pub(super) fn held_rows(source: Source<'_>) -> Vec<Row> {
    let row = |of: &'static Shafted, gear: GearNumber| {
        let label = if of.key.is_empty() { "Bearings".to_owned() } else { format!("Bearings of the {}", of.words) };
        source.row(format!("{}bearings-{}", of.key.replace('_', "-"), gear.number()), format!("{label} in {gear}"), |analysis| {
            match bearings(analysis, of).and_then(|bearings| gear.of(&bearings.gears).copied().flatten()) {
                Some(held) if held.is_loaded() => held_cell(source, analysis, of, held, gear),
                Some(_) => Cell::absent("nothing: direct"),
                None if gear.place() >= analysis.setup.gears.len() => Cell::absent("no such gear"),
                None => missing(source, analysis, of),
            }
        })
    };
    typed(source).flat_map(|of| GearNumber::lowest(source.most_gears()).map(move |gear| row(of, gear))).collect()
}

/// The shafts whose bearings any setup has typed.
fn typed(source: Source<'_>) -> impl Iterator<Item = &'static Shafted> {
    SHAFTS.iter().filter(move |of| source.setups.iter().any(|analysis| is_typed(analysis, of)))
}

fn is_typed(analysis: &Analysis, of: &Shafted) -> bool {
    let [main, input] = analysis.setup.inside.upper_bearings;
    match of.field {
        InsideField::MainBearings => main.is_some(),
        InsideField::InputBearings => input.is_some(),
        _ => analysis.setup.inside.bearings.is_some(),
    }
}

fn bearings<'a>(analysis: &'a Analysis, of: &Shafted) -> Option<&'a Bearings> {
    analysis.teeth().bearings_of((of.shaft)(analysis)).filter(|_| is_typed(analysis, of))
}

fn missing(source: Source<'_>, analysis: &Analysis, of: &Shafted) -> Cell {
    if analysis.setup.inside.cut.is_none() {
        return uncounted_or(analysis, "needs module or pitch");
    }
    if !is_typed(analysis, of) {
        return Cell::needed(format!(
            "needs the bearings of the {}: place, rating C and kind (ball, roller, needle or taper) of both",
            of.words
        ));
    }
    let unplaced: Vec<String> = unplaced(&analysis.setup, (of.shaft)(analysis)).into_iter().map(|at| name(source, at)).collect();
    if unplaced.is_empty() {
        return uncounted_or(analysis, "needs the engine’s torque and the shift rpm");
    }
    // Said whatever the other setups lack: the bearings are typed, and nothing comes of them.
    Cell::absent(format!("needs the place of {} along the {}", listed(&unplaced), of.words))
}

/// The hours both reach together, and each alone.
fn life_cell(of: &Shafted, bearings: &Bearings, life: Life) -> Cell {
    let each: Vec<String> = ENDS.iter().zip(life.each).map(|((end, _), life)| format!("{end} {}", said(life))).collect();
    let formula = "L = 10⁶ turns × (C ÷ P)ᵖ; each gear uses up its share; both together (Σ L^−e)^(−1/e)";
    let key = format!("teeth.{}bearings.together", of.key);
    let figure = Figure::quantity(&key, &life.both, &unit::HOUR, 0).by(formula, each.join(", "), ISO);
    let are_tapers = bearings.bearings.iter().all(|bearing| bearing.taper.is_some());
    let thrust = match bearings.takes_thrust.and_then(|place| ENDS.get(place)) {
        _ if are_tapers => format!("taper bearings {}", if is_back_to_back(bearings) { "back to back" } else { "face to face" }),
        Some((_, end)) => format!("thrust taken by {end}"),
        None => "thrust is left to the washers".into(),
    };
    Cell::line([figure.into(), Piece::words("both together")]).and([Piece::words(each.join(", "))]).and([Piece::words(thrust)])
}

fn is_back_to_back(bearings: &Bearings) -> bool {
    bearings.bearings.iter().filter_map(|bearing| bearing.taper).any(|taper| taper.back_to_back)
}

fn said(life: Option<Time>) -> String {
    match life.map(|life| unit::HOUR.number(life)) {
        Some(hours) if hours < MOST_HOURS => format!("{} h", number::show(hours, 0)),
        Some(_) => format!("over {} h", number::show(MOST_HOURS, 0)),
        None => "without load".into(),
    }
}

fn held_cell(source: Source<'_>, analysis: &Analysis, of: &Shafted, held: Held, gear: GearNumber) -> Cell {
    let unit = Force::usual(source.reader.units);
    let thrust = format!("thrust {} {}", number::show((unit.take)(&held.thrust.abs()), 0), unit.symbol);
    let pieces = ENDS.iter().zip(held.radial).flat_map(|((end, _), radial)| {
        let key = format!("teeth.gear_{}.{}bearing_{end}", gear.number(), of.key);
        let figure = Figure::quantity(&key, &radial, unit, 0).small();
        [Piece::words(*end), figure.by("moments about the other bearing", thrust.clone(), STATICS).into()]
    });
    let cell = Cell::line(pieces.collect::<Vec<_>>());
    let Some(lines) = bearings(analysis, of).and_then(|bearings| taper_lines(source, of, bearings, held, gear)) else { return cell };
    lines.into_iter().fold(cell, Cell::and)
}

/// What taper bearings make of it: the thrust each pushes its shaft out with, what it holds along the shaft, its equivalent load.
fn taper_lines(source: Source<'_>, of: &Shafted, bearings: &Bearings, held: Held, gear: GearNumber) -> Option<Vec<Vec<Piece>>> {
    let tapers = bearings.tapers(&held, 1.0)?;
    let unit = Force::usual(source.reader.units);
    let shown = |force: Force| number::show((unit.take)(&force), 0);
    let [one, two] = tapers.induced.map(shown);
    let each = ENDS.iter().enumerate().filter_map(|(place, (end, _))| {
        let (induced, axial, equivalent) = (*tapers.induced.get(place)?, *tapers.axial.get(place)?, *tapers.equivalent.get(place)?);
        let (radial, taper) = (*held.radial.get(place)?, bearings.bearings.get(place)?.taper?);
        let figure = |what: &str, force: Force| {
            Figure::quantity(&format!("teeth.gear_{}.{}bearing_{end}_{what}", gear.number(), of.key), &force, unit, 0).small()
        };
        let of_cone = format!("{} ÷ (2 × {})", shown(radial), limits::shown(taper.axial_factor));
        let mixed = if equivalent > radial {
            format!("0.4 × {} + {} × {}", shown(radial), limits::shown(taper.axial_factor), shown(axial))
        } else {
            format!("{} ÷ {} is not beyond {}", shown(axial), shown(radial), number::show(taper.threshold, 3))
        };
        let filled = format!("{one} from the front one, {two} from the rear one, thrust {} {}", shown(held.thrust.abs()), unit.symbol);
        Some(vec![
            Piece::words(format!("{end}:")),
            figure("induced", induced).by("induced thrust = radial load ÷ (2 Y)", of_cone, TAPER).into(),
            Piece::words("induced,"),
            figure("axial", axial)
                .by("axial load = what the other induces, with the shaft’s thrust or against it; at least its own", filled, TAPER)
                .into(),
            Piece::words("axial,"),
            figure("equivalent", equivalent).by("P = radial load, or 0.4 × radial load + Y × axial load beyond e", mixed, TAPER).into(),
            Piece::words("equivalent"),
        ])
    });
    let net = match tapers.pressed.and_then(|place| ENDS.get(place)) {
        Some((_, end)) => format!("the net thrust goes to {end}"),
        None => "hand of the teeth not typed: each is taken as if the thrust pressed it".into(),
    };
    Some(each.chain([vec![Piece::words(net)]]).collect())
}
