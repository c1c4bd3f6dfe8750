//! Shifting down and going down: how fast each lower gear may be taken, the gear for a descent, and reverse.

use super::{driven, end_words, gear, row_key, why_not, with_trailer};
use crate::gearing::Step;
use crate::motion::{Vehicle, descent};
use crate::questions::pull::answer::CRAWL_RPM;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{Velocity, number};

/// Source of what an engine holds back.
const BRAKING: &str = "friction of an engine as a mean effective pressure (Heywood, Internal Combustion Engine Fundamentals, eq. 13.6, from memory), as a share of the 9 bar of peak torque (common practice, no published source); what the closed throttle adds is left out";
/// Source of the highest speed of a gear.
const SPEED: &str = "road speed without slip (Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, from memory; plain kinematics)";

/// The rows.
pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    let steps = driven(source);
    let down = |(step, next): (&&Step, &&Step)| {
        let label = format!("Shift down into {}", step.name());
        source.row(row_key("down", step), label, |analysis| down_cell(source, analysis, step, next))
    };
    let mut rows: Vec<Row> = steps.iter().zip(steps.iter().skip(1)).map(down).collect();
    if let Some(speed) = source.conditions.pull.run.speeds.first() {
        let label = format!("Down a hill at {}, throttle closed", source.show(speed, 0));
        rows.push(source.row("descent", label, |analysis| descent_cell(source, analysis, *speed)));
    }
    rows.push(source.row("reverse", "Reverse", |analysis| reverse_cell(source, analysis)));
    rows
}

/// `up to 75.3 mph`, and what the engine then turns in each gear above: `4,890 rpm in 3rd · 3,910 rpm in 4th`.
fn down_cell(source: Source<'_>, analysis: &Analysis, step: &Step, next: &Step) -> Cell {
    let Some(gear) = analysis.setup.number_of(step) else { return Cell::needed(format!("no {}", step.name())) };
    if analysis.setup.by_number(gear.next()).is_none() {
        return Cell::needed(format!("no {}", next.name()));
    }
    let Some(thrust) = &analysis.pull().thrust else { return why_not(source, analysis) };
    let Some(into) = thrust.gear(gear) else { return why_not(source, analysis) };
    let limit = show_rpm(thrust.limit());
    let figure = source.quantity(&format!("pull.down_{}", step.key()), &into.fastest, 1).big();
    let filled = format!("{limit} rpm, {}; overall ratio {}", end_words(analysis), number::show(into.overall, 3));
    let figure = figure.by("highest engine speed ÷ overall ratio × what the tyre rolls", filled, SPEED);
    let higher = thrust.gears().iter().filter(|from| from.gear > gear && from.overall < into.overall);
    let turns = |from: &crate::motion::pull::GearPull| {
        let rpm = in_rpm(from.engine_speed(into.fastest));
        let past = rpm > in_rpm(thrust.limit()) * (1.0 + 1e-9);
        (!past).then(|| format!("{} rpm in {}", number::show(rpm, 0), analysis.setup.gear_name(from.gear)))
    };
    let from: Vec<String> = higher.filter_map(turns).collect();
    Cell::line([Piece::words("up to"), figure.into()]).and([Piece::words(from.join(" · "))])
}

/// `17 % in 1st · 10 % in 2nd`: the grade on which each gear keeps the speed.
fn descent_cell(source: Source<'_>, analysis: &Analysis, speed: Velocity) -> Cell {
    let Some(vehicle) = &analysis.pull().vehicle else { return why_not(source, analysis) };
    let mut line: Vec<Piece> = Vec::new();
    for gear in vehicle.pull().gears() {
        let Some(grade) = descent::kept(vehicle, gear.gear, speed) else { continue };
        let figure = Figure::percent(&format!("pull.descent_{}", analysis.setup.gear_key(gear.gear)), grade, 0);
        let formula = "W·(sin θ − f·cos θ) = T·i ÷ (r·η) + air drag, T what turning the engine takes";
        let dot = if line.is_empty() { "keeps this speed on" } else { "·" };
        line.push(Piece::words(dot));
        line.push(figure.by(formula, filled(vehicle, gear, speed), BRAKING).into());
        line.push(Piece::words(format!("in {}", analysis.setup.gear_name(gear.gear))));
    }
    if line.is_empty() {
        return Cell::absent("no gear turns the engine within its curve at this speed");
    }
    Cell::line(line).and([Piece::words(format!("steeper: a lower gear, or the brakes{}", with_trailer(source)))])
}

fn filled(vehicle: &Vehicle, gear: &crate::motion::pull::GearPull, speed: Velocity) -> String {
    let engine = gear.engine_speed(speed);
    let peak = vehicle.pull().curve().peak_torque().torque;
    let share = (descent::braking_torque(peak, engine) / peak).get::<uom::si::ratio::percent>();
    format!("T = {} % of peak torque at {} rpm", number::show(share, 0), show_rpm(engine))
}

fn reverse_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    if analysis.pull().vehicle.is_none() {
        return why_not(source, analysis);
    }
    let Some(reverse) = &analysis.pull().reverse else { return Cell::needed("needs the outer gears of reverse") };
    let crawl = source.quantity("pull.reverse_crawl", &reverse.crawl, 1).big();
    let crawl = crawl.by("engine speed ÷ overall ratio × what the tyre rolls", format!("{} rpm", number::show(CRAWL_RPM, 0)), SPEED);
    let cell = Cell::line([crawl.into(), Piece::words(format!("at {} rpm", number::show(CRAWL_RPM, 0)))]);
    match &reverse.started {
        Some(started) if started.grade > 0.0 => {
            let figure = gear::grade_figure(source, analysis, started, "pull.reverse_grade_started").small();
            let words = format!("steepest grade started on, backing up it{}{}", gear::by_grip(started), with_trailer(source));
            cell.and([figure.into(), Piece::words(words)])
        }
        _ => cell.and([Piece::words(format!("does not start on the level{}", with_trailer(source)))]),
    }
}
