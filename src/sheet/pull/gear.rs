//! Each gear on its own: top speed, the steepest grade held; and the cruise in top gear.

use super::super::{Cell, Figure, Piece, Source, ordinal};
use super::missing;
use crate::analysis::Analysis;
use crate::motion::grade::GradeBound;
use crate::motion::top_speed::Bound;
use crate::units::{Force, Measured, Power, Velocity};

/// Source of top speed and grade.
const BALANCE: &str = "thrust in the gear = rolling + air + grade resistance (40 CFR 1066.210 has the same terms)";

/// One gear, counted from 0.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis, gear: usize) -> Cell {
    if gear >= analysis.setup.gears.len() {
        return Cell::absent(format!("no {}", ordinal(gear)));
    }
    let Some(answers) = analysis.pull.gears.get(gear) else { return missing(source, analysis) };
    let key = |what: &str| format!("pull.gear_{}.{what}", gear + 1);
    let cell = match answers.top {
        Some(top) => {
            let figure = Figure::quantity(&key("top"), &top.speed, Velocity::usual(source.reader.units), 1);
            let why = match top.bound {
                Bound::RevLimit => "at the rev limit",
                Bound::Balance => "where thrust equals road load",
            };
            let fastest = analysis.pull.facts.as_ref().and_then(|facts| facts.top).is_some_and(|best| best.gear == gear + 1);
            let figure = if fastest { figure.big() } else { figure };
            let cell = Cell::line([figure.by("highest speed at which thrust covers road load", why, BALANCE).into(), Piece::words(why)]);
            if fastest { cell.and([Piece::good("top speed of the car")]) } else { cell }
        }
        None => Cell::absent("cannot hold any speed on the level"),
    };
    let Some(held) = answers.held.filter(|held| held.grade > 0.0) else { return cell };
    let bound = if held.bound == GradeBound::Grip { "held, by the tyres’ grip" } else { "steepest grade held" };
    cell.and([Figure::percent(&key("grade_held"), held.grade, 0).small().into(), Piece::words(bound)])
}

/// The cruise in top gear: how hard it works, what is left, where it must shift down.
pub(super) fn cruise_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(cruise) = &analysis.pull.cruise else {
        return if source.conditions.cruise.is_none() { Cell::absent("needs the cruise speed") } else { missing(source, analysis) };
    };
    let (Some(share), Some(reserve)) = (cruise.load_share, cruise.reserve) else {
        return Cell::absent("outside what the engine can turn in top gear");
    };
    let load = Figure::percent("pull.cruise_load", share, 0).big();
    let power = Figure::quantity("pull.cruise_power", &cruise.power, Power::usual(source.reader.units), 0).small();
    let left = Figure::quantity("pull.cruise_reserve", &reserve, Force::usual(source.reader.units), 0).small();
    let cell =
        Cell::line([load.into(), Piece::words("of full throttle"), power.into()]).and([left.into(), Piece::words("of thrust in reserve")]);
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
