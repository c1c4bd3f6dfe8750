//! The rows of fasteners: torque, pull, how far they must be screwed in, and the hole for an insert.

use super::super::read::Set;
use crate::fits::drills;
use crate::fits::fastener::{Fastener, PROOF_SHARE, ThreadIn};
use crate::questions::Source;
use crate::questions::endplay::rows::decimals;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::{Force, Length, Measured as _, System, Torque, number, show, unit};

/// Source of the torque.
const TORQUE: &str = "Shigley, Mechanical Engineering Design, 8-8; K varies by a quarter";

pub(super) fn rows(source: Source<'_>, set: &Set) -> Vec<Row> {
    let row = |(number, fastener): (usize, &Fastener)| {
        let label = format!("{} {}", fastener.name, fastener.thread.name).trim().to_owned();
        Row::of_one(format!("fastener-{number}"), label, cell(source, number, fastener))
    };
    (1..).zip(&set.fasteners).map(row).collect()
}

fn cell(source: Source<'_>, number: usize, fastener: &Fastener) -> Cell {
    let torque = torque(source, number, fastener);
    let is_light = fastener.into == ThreadIn::LightAlloy;
    let words = format!("{} in {}, {}", fastener.grade.name, fastener.into.word(), if fastener.is_oiled { "oiled" } else { "dry" });
    let needed = fastener.engagement();
    let length = |key: &str, length: Length| source.quantity(&format!("setting.fastener_{number}.{key}"), &length, decimals(source) - 1);
    let wants = length("engagement", needed);
    let filled = format!(
        "{} × {} = {}",
        number::show(fastener.into.diameters(), 1),
        source.show(&fastener.thread.diameter, decimals(source) - 1),
        wants.text()
    );
    let wants =
        wants.by("screwed in = diameter × 2 in aluminium, 1.5 in cast iron, 1 in steel", filled, "common practice, no published source");
    let cell = Cell::line([torque.into(), Piece::words(words)]);
    let cell = cell.and([Piece::words("screwed in by"), wants.into(), Piece::words("or more")]);
    let short = fastener.engaged.filter(|engaged| *engaged < needed * 0.999);
    let cell = cell.and_maybe(short.map(|_| Piece::caution("too short for this torque: the thread goes first")));
    let light = is_light.then(|| Piece::words("in aluminium the manual’s torque rules where it is lower"));
    let hole = fastener.thread.insert_hole();
    let [_, above] = drills::next_in(hole, source.reader.units == System::Metric);
    let drill = above.map(|drill| {
        vec![Piece::words(format!("wire insert: drill {},", drill.name)), length("insert_hole", hole).into(), Piece::words("at least")]
    });
    let order = (!fastener.order.is_empty()).then(|| Piece::words(format!("tighten in the order {}", fastener.order)));
    let cell = cell.and_maybe(light).and_maybe(order);
    cell.and_maybe(drill)
}

fn torque(source: Source<'_>, number: usize, fastener: &Fastener) -> Figure {
    let unit = Torque::usual(source.reader.units);
    let figure = Figure::quantity(&format!("setting.fastener_{number}.torque"), &fastener.torque(), unit, 0).big();
    let clamp = Force::usual(source.reader.units);
    // Millimetres in a metre, inches in a foot.
    let arm = if source.reader.units == System::Metric { "1,000" } else { "12" };
    let filled = format!(
        "{} × {} × {} ÷ {arm} = {}; pull = {} of {}, on {}",
        number::show(fastener.friction(), 2),
        show(&fastener.clamp(), clamp, 0),
        source.show(&fastener.thread.diameter, decimals(source) - 1),
        figure.text(),
        number::show(PROOF_SHARE, 2),
        show(&fastener.proof_load(), clamp, 0),
        show(&fastener.thread.stress_area(), &unit::SQ_MM, 1),
    );
    figure.by("T = K × pull × diameter; pull = 0.75 × proof load", filled, TORQUE)
}
