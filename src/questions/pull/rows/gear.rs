//! Each gear on its own: top speed, the steepest grades held and started on; and the cruise in top gear.

use super::{end_words, why_not, with_trailer};
use crate::gearing::Step;
use crate::motion::grade::{GradeBound, Steepest};
use crate::motion::top_speed::Bound;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::sheet::{Cell, Figure, Piece};
use crate::units::common::show_rpm;
use crate::units::number;

/// Source of top speed and grade.
const BALANCE: &str = "thrust in the gear = rolling + air + grade resistance (40 CFR 1066.210 has the same terms)";

/// Source of the steepest grade.
const GRADE: &str = "W·(f·cos θ + sin θ) = F solved for θ; grip with the load moved to the rear (Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, from memory; Jazar, Vehicle Dynamics, eq. 2.116 to 2.120)";

/// The car's top speed, the gear it is reached in, and what ends it.
pub(super) fn top_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(facts) = analysis.facts() else { return why_not(source, analysis) };
    let Some(top) = facts.top else { return Cell::absent("cannot hold any speed on the level") };
    let figure = source.quantity("pull.top", &top.speed, 1).big();
    let why = bound_words(analysis, top.bound);
    let figure = figure.by("highest speed at which thrust covers road load, in any gear", why.clone(), BALANCE);
    Cell::line([figure.into(), Piece::words(format!("in {}, {why}{}", analysis.setup.gear_name(top.gear), with_trailer(source)))])
}

fn bound_words(analysis: &Analysis, bound: Bound) -> String {
    match bound {
        Bound::RevLimit => format!("at {}", end_words(analysis)),
        Bound::Balance => "where thrust equals road load".into(),
    }
}

/// One step: a gear, or a gear with a stage switched in.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis, step: &Step) -> Cell {
    let Some(number) = analysis.setup.number_of(step) else { return Cell::needed(format!("no {}", step.name())) };
    let Some(answers) = number.of(&analysis.pull().gears) else { return why_not(source, analysis) };
    let key = |what: &str| format!("pull.gear_{}.{what}", step.key());
    let cell = match answers.top {
        Some(top) => {
            let figure = source.quantity(&key("top"), &top.speed, 1);
            let why = bound_words(analysis, top.bound);
            let fastest = analysis.facts().and_then(|facts| facts.top).is_some_and(|best| best.gear == number);
            let figure = if fastest { figure.big() } else { figure };
            let cell =
                Cell::line([figure.by("highest speed at which thrust covers road load", why.clone(), BALANCE).into(), Piece::words(why)]);
            if fastest { cell.and([Piece::good("top speed of the car")]) } else { cell }
        }
        None => Cell::absent("cannot hold any speed on the level"),
    };
    let cell = answers.held.iter().filter(|held| held.grade > 0.0).fold(cell, |cell, held| {
        let words = format!("steepest grade held{}{}", by_grip(held), with_trailer(source));
        cell.and([grade_figure(source, analysis, held, &key("grade_held")).small().into(), Piece::words(words)])
    });
    let Some(started) = answers.started else { return cell };
    if started.grade <= 0.0 {
        return cell.and([Piece::words(format!("does not start on the level{}", with_trailer(source)))]);
    }
    let words = format!("steepest grade started on{}{}", by_grip(&started), with_trailer(source));
    cell.and([grade_figure(source, analysis, &started, &key("grade_started")).small().into(), Piece::words(words)])
}

pub(super) fn by_grip(steepest: &Steepest) -> &'static str {
    if steepest.bound == GradeBound::Grip { ", limited by grip" } else { "" }
}

/// A steepest grade with how it came about.
pub(super) fn grade_figure(source: Source<'_>, analysis: &Analysis, steepest: &Steepest, key: &str) -> Figure {
    let figure = Figure::percent(key, steepest.grade, 0);
    let Some(car) = analysis.pull().vehicle.as_ref().map(crate::motion::Vehicle::car) else { return figure };
    let percent = |grade: f64| format!("{} %", number::show(grade * 100.0, 0));
    let filled = format!(
        "F = {} at {} rpm, W of {}, f = {}: {} by thrust, {} by grip",
        source.show(&steepest.net, 0),
        show_rpm(steepest.engine),
        source.show(&(car.mass + source.conditions.pull.trailer), 0),
        number::show(car.rolling.value, 3),
        steepest.by_thrust.map_or_else(|| "any grade".into(), percent),
        percent(steepest.by_grip)
    );
    let formula = if key.contains("start") {
        "grade = tan(asin(0.9·F ÷ (W·√(1 + f²))) − atan f), F thrust of which a tenth is left to pick up speed, W weight, f rolling resistance; 0.9 of what grip holds may be less"
    } else {
        "grade = tan(asin(F ÷ (W·√(1 + f²))) − atan f), F thrust less what grows with speed, W weight, f rolling resistance; grip may allow less"
    };
    figure.by(formula, filled, GRADE)
}

/// The cruise in top gear: how hard it works, what is left, where it must shift down.
pub(super) fn cruise_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(cruise) = &analysis.pull().cruise else {
        return if source.conditions.cruise.is_none() { Cell::needed("needs the cruise speed") } else { why_not(source, analysis) };
    };
    let (Some(share), Some(reserve)) = (cruise.load_share, cruise.reserve) else {
        return Cell::absent("outside what the engine can turn in top gear");
    };
    let thrust = cruise.thrust.map_or_else(String::new, |thrust| source.show(&thrust, 0));
    let (load, engine) = (source.show(&cruise.load, 0), show_rpm(cruise.engine));
    let share_figure = Figure::percent("pull.cruise_load", share, 0).big().by(
        "road load ÷ thrust at full throttle",
        format!("{load} ÷ {thrust} at {engine} rpm"),
        BALANCE,
    );
    let power = source.quantity("pull.cruise_power", &cruise.power, 0).small();
    let left = source.quantity("pull.cruise_reserve", &reserve, 0).small();
    let left = left.by("thrust at full throttle − road load", format!("{thrust} − {load} at {engine} rpm"), BALANCE);
    let cell = Cell::line([share_figure.into(), Piece::words(format!("of full throttle{}", with_trailer(source))), power.into()])
        .and([left.into(), Piece::words("in reserve")]);
    if share > 1.0 {
        return cell.and([Piece::caution("top gear does not hold this speed on the level: cruise in a lower gear, or shorten the axle")]);
    }
    match cruise.downshift_grade {
        Some(grade) => {
            cell.and([Piece::words("shift down on a grade over"), Figure::percent("pull.cruise_downshift_grade", grade, 1).small().into()])
        }
        None => cell,
    }
}
