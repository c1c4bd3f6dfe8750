//! When to shift, where each shift lands, and what shifting early or late costs.

use super::{end_words, speed_text, why_not};
use crate::motion::compare::{Landing, Place};
use crate::motion::shift::{Reason, Shift};
use crate::questions::Analysis;
use crate::questions::Source;
use crate::sheet::ordinal;
use crate::sheet::{Cell, Figure, Piece};
use crate::units::common::in_rpm;
use crate::units::{Time, number, unit};

/// Source of the best shift point.
const BEST: &str = "least time is where the next gear accelerates as well, rotating masses counted; the textbooks’ equal thrust ignores them and comes a little late";

/// The upshift out of a gear, counted from 1.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis, gear: usize) -> Cell {
    if gear >= analysis.setup.gears.len() {
        return Cell::needed(format!("no {}", ordinal(gear)));
    }
    let Some(shift) = analysis.pull().shifts.iter().find(|shift| shift.best.from == gear) else {
        return if analysis.pull().thrust.is_some() { Cell::absent(no_taller(gear)) } else { why_not(source, analysis) };
    };
    let best = shift.best;
    let mut figure = Figure::number(format!("pull.shift_{gear}_rpm"), in_rpm(best.before), 0);
    figure.unit = "rpm".into();
    let thrust = shift.by_thrust.map_or_else(String::new, |thrust| format!("equal thrust: {} rpm", number::show(in_rpm(thrust.before), 0)));
    let next = ordinal(best.to.saturating_sub(1));
    let why = match best.reason {
        Reason::Crossing => format!("from here {next} pulls harder"),
        Reason::Limit => format!("hold to {}", end_words(analysis)),
        Reason::Earliest => format!("as soon as {next} can be used"),
        Reason::Chosen => "as chosen".into(),
    };
    let figure = figure.big().by("acceleration in this gear = acceleration in the next, at one road speed", thrust, BEST);
    let cell = Cell::line([figure.into(), Piece::words(why)]).and_maybe(never_reached(source, analysis, &best));
    let skips = best.to > gear + 1;
    let cell = if skips { cell.and([Piece::words(format!("into {}: {}", ordinal(best.to - 1), no_taller(gear)))]) } else { cell };
    let landing = analysis.pull().facts.as_ref().and_then(|facts| facts.landings.iter().find(|landing| landing.shift.from == gear));
    let cell = landing.map_or(cell.clone(), |landing| landing_lines(cell, landing, gear));
    cost(shift.cost).into_iter().fold(cell, Cell::and)
}

/// Said of a shift above the speed that its gear comes to on the level.
fn never_reached(source: Source<'_>, analysis: &Analysis, shift: &Shift) -> Option<Piece> {
    let top = analysis.pull().gears.get(shift.from.checked_sub(1)?)?.top?;
    let words = format!("not reached on the level: {} comes to {}", ordinal(top.gear.saturating_sub(1)), speed_text(source, top.speed));
    (shift.speed > top.speed * (1.0 + 1e-9)).then(|| Piece::words(words))
}

/// Said of a gear, counted from 1, whose next gear turns the engine no slower.
fn no_taller(gear: usize) -> String {
    format!("{} is no taller than {}: put the gears in order", ordinal(gear), ordinal(gear.saturating_sub(1)))
}

fn landing_lines(cell: Cell, landing: &Landing, gear: usize) -> Cell {
    let mut figure = Figure::number(format!("pull.shift_{gear}_lands_rpm"), in_rpm(landing.shift.after), 0).small();
    figure.unit = "rpm".into();
    let share = landing.power_share.map(|share| Figure::percent(&format!("pull.shift_{gear}_power"), share, 0).small());
    let mut line = vec![Piece::words("picks up at"), figure.into()];
    line.extend(share.into_iter().flat_map(|share| [share.into(), Piece::words("of peak power")]));
    cell.and(line).and([match landing.place {
        Place::Inside => Piece::good("in the power band"),
        Place::Below(by) => Piece::words(format!("{} rpm below the power band", number::show(in_rpm(by), 0))),
        Place::Above(by) => Piece::words(format!("{} rpm above the power band", number::show(in_rpm(by), 0))),
    }])
}

/// `500 rpm early costs 0.02 s, late 0.03 s`.
fn cost(cost: Option<crate::motion::shift::ShiftCost>) -> Option<[Piece; 1]> {
    let cost = cost?;
    let seconds = |time: Time| number::show(unit::SECOND.number(time), 2);
    let text = match (cost.early, cost.late) {
        (Some(early), Some(late)) => format!("500 rpm early costs {} s, late {} s", seconds(early), seconds(late)),
        (Some(early), None) => format!("500 rpm early costs {} s", seconds(early)),
        (None, Some(late)) => format!("500 rpm late costs {} s", seconds(late)),
        (None, None) => return None,
    };
    Some([Piece::words(text)])
}

/// The share of a run's time spent inside the power band.
pub(super) fn in_band_cell(analysis: &Analysis) -> Cell {
    let Some(facts) = &analysis.pull().facts else { return Cell::needed("needs the engine and the car’s mass") };
    let band = format!("{} to {} rpm", number::show(in_rpm(facts.band.from), 0), number::show(in_rpm(facts.band.to), 0));
    match facts.in_band {
        Some(share) => Cell::line([Figure::percent("pull.in_band", share, 0).big().into(), Piece::words(band)]),
        None => Cell::absent(format!("the band is {band}; no run")),
    }
}
