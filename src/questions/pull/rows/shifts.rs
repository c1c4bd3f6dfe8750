//! When to shift, where each shift lands, and what shifting early or late costs.

use super::{end_words, row_key, why_not};
use crate::gearing::{GearNumber, Step};
use crate::motion::compare::{Landing, Place};
use crate::motion::shift::{Reason, Shift};
use crate::questions::Analysis;
use crate::questions::{Setup, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{Time, number, unit};

/// Source of the best shift point.
const BEST: &str = "least time is where the next gear accelerates as well, rotating masses counted; the textbooks’ equal thrust ignores them and comes a little late";

/// The upshift out of a step. Where stages are switched, not every setup shifts into the step that is next in the list, and each says
/// where it does.
pub(super) fn row(source: Source<'_>, step: &Step, next: &Step) -> Row {
    let is_plain = step.is_at_rest() && next.is_at_rest();
    let label = if is_plain { format!("Shift {} to {}", step.name(), next.name()) } else { format!("Shift up from {}", step.name()) };
    source.row(row_key("shift", step), label, |analysis| cell(source, analysis, (step, next), is_plain))
}

fn cell(source: Source<'_>, analysis: &Analysis, (step, next): (&Step, &Step), is_plain: bool) -> Cell {
    let setup = &analysis.setup;
    let Some(gear) = setup.number_of(step) else { return Cell::needed(format!("no {}", step.name())) };
    if setup.by_number(gear.next()).is_none() {
        return Cell::needed(if is_plain { format!("no {}", next.name()) } else { "no taller gear".into() });
    }
    let Some(shift) = analysis.pull().shifts.iter().find(|shift| shift.best.from == gear) else {
        return if analysis.pull().thrust.is_some() { Cell::absent(no_taller(setup, gear)) } else { why_not(source, analysis) };
    };
    let best = shift.best;
    let figure = Figure::number(format!("pull.shift_{}_rpm", step.key()), in_rpm(best.before), 0).in_unit("rpm");
    let thrust = shift.by_thrust.map_or_else(String::new, |thrust| format!("equal thrust: {} rpm", show_rpm(thrust.before)));
    let next = setup.gear_name(best.to);
    let why = match best.reason {
        Reason::Crossing => format!("from here {next} pulls harder"),
        Reason::Limit => format!("hold to {}", end_words(analysis)),
        Reason::Earliest => format!("as soon as {next} can be used"),
        Reason::Chosen => "as chosen".into(),
    };
    let figure = figure.big().by("acceleration in this gear = acceleration in the next, at one road speed", thrust, BEST);
    let cell = Cell::line([figure.into(), Piece::words(why)]).and_maybe(never_reached(source, analysis, &best));
    let into = if best.to > gear.next() {
        Some(format!("into {next}: {}", no_taller(setup, gear)))
    } else {
        (!is_plain).then(|| format!("into {next}"))
    };
    let cell = cell.and_maybe(into.map(Piece::words));
    let landing = analysis.facts().and_then(|facts| facts.landings.iter().find(|landing| landing.shift.from == gear));
    let cell = landing.map_or(cell.clone(), |landing| landing_lines(cell, landing, &step.key()));
    cost(shift.cost).into_iter().fold(cell, Cell::and)
}

/// Said of a shift above the speed that its gear comes to on the level.
fn never_reached(source: Source<'_>, analysis: &Analysis, shift: &Shift) -> Option<Piece> {
    let top = shift.from.of(&analysis.pull().gears)?.top?;
    let words = format!("not reached on the level: {} comes to {}", analysis.setup.gear_name(top.gear), source.show(&top.speed, 0));
    (shift.speed > top.speed * (1.0 + 1e-9)).then(|| Piece::words(words))
}

/// Said of a gear whose next gear turns the engine no slower.
fn no_taller(setup: &Setup, gear: GearNumber) -> String {
    format!("{} is no taller than {}: put the gears in order", setup.gear_name(gear.next()), setup.gear_name(gear))
}

fn landing_lines(cell: Cell, landing: &Landing, key: &str) -> Cell {
    let figure = Figure::number(format!("pull.shift_{key}_lands_rpm"), in_rpm(landing.shift.after), 0).small().in_unit("rpm");
    let share = landing.power_share.map(|share| Figure::percent(&format!("pull.shift_{key}_power"), share, 0).small());
    let mut line = vec![Piece::words("picks up at"), figure.into()];
    line.extend(share.into_iter().flat_map(|share| [share.into(), Piece::words("of peak power")]));
    cell.and(line).and([match landing.place {
        Place::Inside => Piece::good("in the power band"),
        Place::Below(by) => Piece::words(format!("{} rpm below the power band", show_rpm(by))),
        Place::Above(by) => Piece::words(format!("{} rpm above the power band", show_rpm(by))),
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
    let Some(facts) = analysis.facts() else { return Cell::needed("needs the engine and the car’s mass") };
    let band = format!("{} to {} rpm", show_rpm(facts.band.from), show_rpm(facts.band.to));
    match facts.in_band {
        Some(share) => Cell::line([Figure::percent("pull.in_band", share, 0).big().into(), Piece::words(band)]),
        None => Cell::absent(format!("the band is {band}; no run")),
    }
}
