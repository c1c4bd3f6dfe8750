//! The standing start and the rolling one: thrust, clutch, times and ways.

use super::{gear, plan, why_not, with_trailer};
use crate::gearing::GearNumber;
use crate::motion::Pull as Thrust;
use crate::motion::compare::Facts;
use crate::motion::plan::Plan;
use crate::motion::run::{Moment, Stopped};
use crate::problem::Explain;
use crate::questions::Analysis;
use crate::questions::{Source, Station};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::{in_rpm, rpm};
use crate::units::{Length, Measured, System, Torque, Unit, Velocity, number, unit};

/// Source of every time of a run.
const RUN: &str = "m·dv/dt = thrust − road load, integrated over speed in every gear; rotating masses counted (Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, from memory)";

/// Source of the thrust at the launch.
const THRUST: &str =
    "wheel thrust from engine torque, losses as an efficiency (Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, from memory)";
/// Source of the heat in the clutch.
const CLUTCH: &str = "heat of a slipping clutch (Shigley, Mechanical Engineering Design, clutch chapter, from memory), integrated with the road load until the clutch locks";

/// The time to that speed, for every setup.
pub(super) fn station(source: Source<'_>) -> Station {
    let Some((at, speed)) = source.conditions.pull.run.named_speed() else { return Station::default() };
    let seconds = |analysis: &Analysis| {
        let moment = analysis.facts()?.reached(at)?;
        Some(number::show(unit::SECOND.number(moment.time), 1))
    };
    Station::of(source, format!("0 to {}, s", source.show(&speed, 0)), seconds)
}

/// The rows that decide: the time to the named speed, over the usual distance and of the rolling start, and the clutch.
pub(super) fn deciding(source: Source<'_>) -> Vec<Row> {
    let usual = usize::from(source.reader.units == System::Metric);
    let time = source.conditions.pull.run.named_speed().map(|(at, speed)| to_speed_row(source, at, speed));
    let rows = [Some(distance_row(source, usual)), Some(clutch_row(source)), roll_row(source)];
    time.into_iter().chain(rows.into_iter().flatten()).collect()
}

/// The rows.
pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    let mut rows = vec![source.row("launch", "Standing start", |analysis| launch_cell(source, analysis)), clutch_row(source)];
    let speeds = &source.conditions.pull.run.speeds;
    rows.extend(speeds.iter().enumerate().map(|(at, speed)| to_speed_row(source, at, *speed)));
    rows.extend((0..DISTANCES.len()).map(|at| distance_row(source, at)));
    rows.extend(roll_row(source));
    rows
}

/// The distances of a standing start, as they are called.
const DISTANCES: [&str; 2] = ["Quarter mile", "One km"];

fn to_speed_row(source: Source<'_>, at: usize, speed: Velocity) -> Row {
    let label = format!("0 to {}", source.show(&speed, 0));
    source.row(format!("to-speed-{}", at + 1), label, |analysis| to_speed_cell(source, analysis, at))
}

fn distance_row(source: Source<'_>, at: usize) -> Row {
    let label = *DISTANCES.get(at).unwrap_or(&"");
    source.row(format!("distance-{}", at + 1), label, |analysis| distance_cell(source, analysis, at))
}

fn roll_row(source: Source<'_>) -> Option<Row> {
    let (from, to, _) = source.conditions.pull.run.roll?;
    let label = format!("{} to {}, rolling", source.show(&from, 0), source.show(&to, 0));
    Some(source.row("roll", label, |analysis| roll_cell(source, analysis)))
}

fn clutch_row(source: Source<'_>) -> Row {
    source.row("clutch", "Clutch, each start", |analysis| clutch_cell(source, analysis))
}

fn launch_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(facts) = analysis.facts() else { return why_not(source, analysis) };
    cautions(analysis).fold(start_cell(source, analysis, facts), |cell, caution| cell.and([Piece::caution(caution)]))
}

/// Where engine speeds asked for lie outside the curve, and what is used instead.
fn cautions(analysis: &Analysis) -> impl Iterator<Item = String> {
    let of_limit = analysis.pull().thrust.iter().flat_map(Thrust::cautions);
    let of_run = analysis.facts().into_iter().filter_map(|facts| facts.run.as_ref()?.caution.as_ref());
    of_limit.chain(of_run).map(|why| format!("{}: {}", why.what(), why.what_to_do()))
}

fn start_cell(source: Source<'_>, analysis: &Analysis, facts: &Facts) -> Cell {
    let held = held_rpm(source, analysis);
    let is_held_by_tyres = analysis.pull().vehicle.as_ref().is_some_and(|vehicle| facts.launch_thrust >= vehicle.grip_limit());
    let words = if is_held_by_tyres { "limited by grip".into() } else { format!("by the engine at {} rpm", number::show(held, 0)) };
    let cell = Cell::line([thrust_figure(source, analysis, facts, held).into(), Piece::words(words)]);
    let Some(start) = analysis.pull().gears.first().and_then(|gear| gear.started) else { return cell };
    let grade = gear::grade_figure(source, analysis, &start, "pull.start_grade");
    let mut line = vec![Piece::words("starts on a grade of"), grade.into()];
    let trailer = with_trailer(source);
    line.extend(trailer.strip_prefix(", ").map(Piece::words));
    cell.and(line)
}

/// The engine speed held at the launch, in rpm.
fn held_rpm(source: Source<'_>, analysis: &Analysis) -> f64 {
    let launch = source.conditions.pull.run.launch.value;
    analysis.pull().thrust.as_ref().map_or_else(|| in_rpm(launch), |thrust| thrust.held_launch_rpm(launch))
}

/// The heat a start puts into the clutch, and how long it slips.
fn clutch_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(facts) = analysis.facts() else { return why_not(source, analysis) };
    let (Some(energy), Some(locked)) = (facts.clutch_energy, facts.lock_up) else {
        return Cell::line([Piece::caution("the clutch never locks: a lower 1st, more launch rpm or less mass")]);
    };
    let held = number::show(held_rpm(source, analysis), 0);
    let heat = Figure::quantity("pull.clutch_heat", &energy, &unit::KJ, 0).by(
        "heat = Σ clutch torque × (engine speed − shaft speed) × time, from rest to lock-up",
        format!("engine held at {held} rpm, locked at {} after {} s", source.show(&locked.speed, 0), slip_s(&locked)),
        CLUTCH,
    );
    let slip = Figure::quantity("pull.clutch_slip", &locked.time, &unit::SECOND, 1).small();
    let at = source.quantity("pull.lock_up", &locked.speed, 0).small();
    Cell::line([heat.big().into(), Piece::words("of heat")]).and([Piece::words("slips for"), slip.into(), Piece::words("to"), at.into()])
}

fn slip_s(locked: &Moment) -> String {
    number::show(seconds(*locked), 2)
}

/// Thrust at the launch, the engine held at so many rpm.
fn thrust_figure(source: Source<'_>, analysis: &Analysis, facts: &Facts, held_rpm: f64) -> Figure {
    let figure = source.quantity("pull.launch_thrust", &facts.launch_thrust, 0).big();
    let parts = analysis.pull().thrust.as_ref().and_then(|thrust| {
        let radius = analysis.setup.rolling.as_ref()?.radius();
        Some((thrust.curve().torque(rpm(held_rpm))?, thrust.gear(GearNumber::FIRST)?, radius))
    });
    let (Some((torque, first, radius)), Some(vehicle)) = (parts, &analysis.pull().vehicle) else { return figure };
    let (of_torque, of_length) = (Torque::usual(source.reader.units), length_unit(source));
    let filled = format!(
        "{} {} × {} × {} ÷ {} {}; the tyres hold {}",
        number::show((of_torque.take)(&torque), 1),
        of_torque.symbol,
        number::show(first.overall, 3),
        number::show(first.efficiency, 3),
        number::show((of_length.take)(&radius), 3),
        of_length.symbol,
        source.show(&vehicle.grip_limit(), 0)
    );
    figure.by("F = T·i·η ÷ r: torque × overall ratio × efficiency ÷ rolling radius; no more than the tyres hold", filled, THRUST)
}

/// The unit of ways along the road.
fn length_unit(source: Source<'_>) -> &'static Unit<Length> {
    if source.reader.units == System::Inch { &unit::FOOT } else { &unit::METRE }
}

fn to_speed_cell(source: Source<'_>, analysis: &Analysis, at: usize) -> Cell {
    let Some(facts) = analysis.facts() else { return why_not(source, analysis) };
    let plan = match facts.to_speed.get(at) {
        Some(Ok(plan)) => plan,
        Some(Err(stopped)) => return Cell::absent(out_of_reach(*stopped)),
        None => return Cell::absent("out of reach"),
    };
    let moment = plan.reached;
    let of = |analysis: &Analysis| analysis.facts()?.reached(at);
    let first = source.setups.first().filter(|first| first.setup.id != analysis.setup.id).and_then(of).map(seconds);
    let figure = Figure::quantity(&format!("pull.to_speed_{}", at + 1), &moment.time, &unit::SECOND, 1).big().against(first, 1);
    let figure = figure.by(
        "t = Σ ∫ moving mass dv ÷ (thrust − road load), gear by gear, shifts between",
        plan::in_words(&analysis.setup, plan),
        RUN,
    );
    Cell::line([figure.into(), way(source, &moment, &format!("pull.to_speed_{}_way", at + 1))])
}

fn seconds(moment: Moment) -> f64 {
    unit::SECOND.number(moment.time)
}

fn way(source: Source<'_>, moment: &Moment, key: &str) -> Piece {
    Figure::quantity(key, &moment.distance, length_unit(source), 0).small().into()
}

pub(in super::super) fn out_of_reach(stopped: Stopped) -> &'static str {
    match stopped {
        Stopped::Balance { .. } => "out of reach: thrust equals road load below it",
        Stopped::RevLimit { .. } => "out of reach: top gear ends below it",
        Stopped::TooWeak(_) => "the car does not move off",
        Stopped::ClutchNeverLocks { .. } => "the clutch never locks",
        Stopped::Finished => "out of reach",
    }
}

fn over_distance(analysis: &Analysis, at: usize) -> Option<&Plan> {
    analysis.over_distances().get(at)?.as_ref().ok()
}

fn distance_cell(source: Source<'_>, analysis: &Analysis, at: usize) -> Cell {
    if analysis.facts().is_none() {
        return why_not(source, analysis);
    }
    let Some(plan) = over_distance(analysis, at) else { return Cell::absent("the car does not get that far") };
    let moment = plan.reached;
    let of = |analysis: &Analysis| over_distance(analysis, at).map(|plan| plan.reached);
    let first = source.setups.first().filter(|first| first.setup.id != analysis.setup.id).and_then(of).map(seconds);
    let name = if at == 0 { "pull.quarter_mile" } else { "pull.one_km" };
    let figure = Figure::quantity(name, &moment.time, &unit::SECOND, 1).big().against(first, 1);
    let figure =
        figure.by("t = Σ ∫ moving mass dv ÷ (thrust − road load) until the way is covered", plan::in_words(&analysis.setup, plan), RUN);
    let speed = source.quantity(&format!("{name}_at"), &moment.speed, 1).small();
    Cell::line([figure.into(), Piece::words("at"), speed.into()])
}

fn roll_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    if analysis.facts().is_none() {
        return why_not(source, analysis);
    }
    let plan = match &analysis.roll() {
        Some(Ok(Ok(plan))) => plan,
        Some(Ok(Err(stopped))) => return Cell::absent(out_of_reach(*stopped)),
        Some(Err(why)) => return Cell::absent(format!("{}: {}", why.what(), why.what_to_do())),
        None => return why_not(source, analysis),
    };
    let moment = plan.reached;
    let gear = plan.held.first().map_or(moment.gear, |held| held.gear);
    let figure = Figure::quantity("pull.roll", &moment.time, &unit::SECOND, 1).big().by(
        "t = ∫ moving mass dv ÷ (thrust − road load) between the two speeds",
        format!("{}; {} m covered", plan::in_words(&analysis.setup, plan), number::show(unit::METRE.number(moment.distance), 0)),
        RUN,
    );
    let (from, to) = (analysis.setup.gear_name(gear), analysis.setup.gear_name(moment.gear));
    let gears = if moment.gear == gear { format!("in {from}") } else { format!("from {from} to {to}") };
    Cell::line([figure.into(), Piece::words(gears)])
}
