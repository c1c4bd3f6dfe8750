//! The gear table: teeth, ratio, road speed at the shift and the rpm the next gear picks up, a row a gear.

use super::{no_ratio, plus_minus, ratio_figure, step_figure, sums_cell};
use crate::gearing::{GearNumber, Step};
use crate::job::SetupField;
use crate::questions::deciding::few_of;
use crate::questions::entries as typed;
use crate::questions::missing::{self, ON_THE_ROAD, Want};
use crate::questions::road::rows::{landing, past_top_speed, speed_at_shift, step_speed, switched};
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Piece, Row};

/// A row a gear, the pair every ratio is made with, the tooth sums, extra stages, and what is missing.
const MOST_ROWS: usize = 10;

/// The rows that decide: the pair every ratio is made with, the gears, the tooth sums, the extra stages, and what is missing.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    deciding_with(source, |source, analysis, gear| past_top_speed(source, analysis, gear).is_some())
}

/// As [`deciding`], without a word on which speeds the engine does not reach.
pub fn deciding_without_engine(source: Source<'_>) -> Vec<Row> {
    deciding_with(source, |_, _, _| false)
}

/// Whether a gear's speed at the shift is out of the engine's reach.
type OutOfReach = fn(Source<'_>, &Analysis, GearNumber) -> bool;

fn deciding_with(source: Source<'_>, is_out_of_reach: OutOfReach) -> Vec<Row> {
    let mut rows: Vec<Row> = typed::constant_rows(source).into_iter().filter(|row| row.key == "constant" && has_constant(source)).collect();
    rows.extend(GearNumber::lowest(source.most_gears()).map(|gear| {
        source.row(format!("gear-{}", gear.number()), gear, |analysis| {
            let cell = cell(source, analysis, gear, is_out_of_reach);
            typed::entry(source, analysis, cell, SetupField::Gear(gear.place()), &format!("teeth of {gear}"))
        })
    }));
    rows.push(source.row("sums", "Tooth sums", sums_cell));
    rows.extend(typed::stage_rows(source));
    few_of(rows, missing::row(source, &road_wants(source), "road speeds"), MOST_ROWS)
}

fn has_constant(source: Source<'_>) -> bool {
    source.setups.iter().any(|analysis| analysis.setup.layout != crate::gearing::Layout::TwoShaft)
}

/// What road speeds need besides the gears, whose fields stand in the table itself.
fn road_wants(source: Source<'_>) -> Vec<Want<'static>> {
    let [_, behind_gears @ ..] = ON_THE_ROAD;
    let mut wants: Vec<Want<'static>> = behind_gears.to_vec();
    if source.conditions.shift.is_none() {
        wants.push(("the shift rpm", &|_| true));
    }
    wants
}

fn cell(source: Source<'_>, analysis: &Analysis, gear: GearNumber, is_out_of_reach: OutOfReach) -> Cell {
    let Some(ratio) = ratio_figure(analysis, gear) else { return no_ratio(analysis, gear) };
    let printed = analysis.setup.printed(gear).map(|printed| Piece::words(format!("{} as printed", plus_minus(printed))));
    let cell = Cell::line([Piece::from(ratio)].into_iter().chain(printed).collect::<Vec<_>>());
    let key = format!("gears.gear_{}", gear.number());
    let speed = speed_at_shift(source, analysis, gear, &key);
    let landing = landing(source, analysis, gear, &key).filter(|_| speed.is_some());
    let cell = match speed {
        Some(speed) if is_out_of_reach(source, analysis, gear) => cell.and([speed.small().into(), Piece::words("out of reach")]),
        Some(speed) => cell.and([Piece::from(speed.small())]),
        None => cell,
    };
    let cell = cell.and_maybe(landing.map(|landing| [Piece::words("then"), landing.into()]));
    switched(analysis, gear).fold(cell, |cell, (at, step)| cell.and(step_line(source, analysis, (at, step))))
}

/// `overdrive: 1.081 92.1 mph`: the gear with a stage switched in.
fn step_line(source: Source<'_>, analysis: &Analysis, (at, step): (usize, &Step)) -> Vec<Piece> {
    let mut line = vec![Piece::words(format!("{}:", step.called()))];
    line.extend(step_figure(analysis, step).map(Piece::from));
    let speed = step_speed(source, analysis, (at, step), &format!("gears.gear_{}", step.key()));
    line.extend(speed.map(|speed| Piece::from(speed.small())));
    line
}
