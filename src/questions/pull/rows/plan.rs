//! When to shift on the way to a goal: the plan, what it does without, and what shifting early costs.

use super::why_not;
use crate::motion::plan::{Held, Plan};
use crate::motion::shift::Shift;
use crate::questions::pull::answer::AWAY_RPM;
use crate::questions::{Analysis, Setup, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::{in_rpm, rpm, show_rpm};
use crate::units::{Velocity, number, unit};

use super::run::out_of_reach;

/// Source of a plan.
const PLAN: &str = "all shifts chosen together for the least time to this goal, grip and the time of each shift counted (dynamic programming, R. Bellman, 1957)";

/// What is said of a plan beside the plan itself, the gravest first.
const MOST_NOTES: usize = 2;

/// The shifts on the way to the named speed.
pub(super) fn row(source: Source<'_>) -> Option<Row> {
    let (at, speed) = source.conditions.pull.run.named_speed()?;
    let label = format!("When to shift, 0 to {}", source.show(&speed, 0));
    Some(source.row("plan", label, |analysis| cell(source, analysis, at, speed)))
}

fn cell(source: Source<'_>, analysis: &Analysis, at: usize, speed: Velocity) -> Cell {
    let Some(facts) = analysis.facts() else { return why_not(source, analysis) };
    let plan = match facts.to_speed.get(at) {
        Some(Ok(plan)) => plan,
        Some(Err(stopped)) => return Cell::absent(out_of_reach(*stopped)),
        None => return Cell::absent("out of reach"),
    };
    let cell = Cell::line(held_pieces(&analysis.setup, plan));
    let spared = without_the_shift(&analysis.setup, plan, &source.show(&speed, 0));
    let said = spared.into_iter().chain(skipped(&analysis.setup, plan)).chain(held_by_grip(analysis, plan));
    let early = analysis.pull().vehicle.as_ref().and_then(|vehicle| plan.cost_of_early(vehicle, rpm(AWAY_RPM)));
    let early = early.map(|time| unit::SECOND.number(time)).filter(|cost| *cost >= 0.005);
    let early = early.map(|cost| format!("{} rpm early each time costs {} s", number::show(AWAY_RPM, 0), number::show(cost, 2)));
    let gain = plan.gain().map(|time| unit::SECOND.number(time)).filter(|gain| *gain >= 0.05);
    let gain = gain.map(|gain| format!("{} s quicker than shifting where the next gear pulls harder", number::show(gain, 1)));
    said.chain(gain).chain(early).take(MOST_NOTES).fold(cell, with_words)
}

fn with_words(cell: Cell, words: String) -> Cell {
    cell.and([Piece::words(words)])
}

/// `1st to 6,420 · 2nd to 6,300 rpm, then 3rd`.
fn held_pieces(setup: &Setup, plan: &Plan) -> Vec<Piece> {
    let left: Vec<&Held> = plan.held.iter().filter(|held| held.next.is_some()).collect();
    let Some(last) = plan.held.last() else { return vec![Piece::words("already there")] };
    let figure = |held: &Held| {
        let figure = Figure::number(format!("pull.plan_{}_rpm", setup.gear_key(held.gear)), in_rpm(held.to), 0);
        let formula = "the shift speeds with which the run takes the least time";
        Piece::from(figure.by(formula, in_words(setup, plan), PLAN))
    };
    if left.is_empty() {
        return vec![Piece::words(format!("{} to", setup.gear_name(last.gear))), figure(last), Piece::words("rpm, no shift")];
    }
    let mut pieces = Vec::new();
    for held in left {
        let dot = if pieces.is_empty() { "" } else { "· " };
        pieces.extend([Piece::words(format!("{dot}{} to", setup.gear_name(held.gear))), figure(held)]);
    }
    pieces.push(Piece::words(format!("rpm, then {}", setup.gear_name(last.gear))));
    pieces
}

/// A plan as plain words: `1st to 6,420 rpm, 2nd to 6,300 rpm, 4,100 rpm in 3rd at the end`.
pub(super) fn in_words(setup: &Setup, plan: &Plan) -> String {
    let rpm = |held: &Held| show_rpm(held.to);
    let one = |held: &Held| match held.next {
        Some(_) => format!("{} to {} rpm", setup.gear_name(held.gear), rpm(held)),
        None => format!("{} rpm in {} at the end", rpm(held), setup.gear_name(held.gear)),
    };
    plan.held.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// `hold 3rd to 3,210 rpm and reach 60 mph without the shift`, where shifts judged one by one would shift once more.
pub(in super::super) fn without_the_shift(setup: &Setup, plan: &Plan, goal: &str) -> Option<String> {
    let last = plan.held.last()?;
    let is_spared = plan.left_out.iter().any(|shift| shift.to > last.gear);
    let rpm = show_rpm(last.to);
    is_spared.then(|| format!("hold {} to {rpm} rpm and reach {goal} without the shift", setup.gear_name(last.gear)))
}

/// `the tyres hold 1st back as much as 2nd: shift early`, where a shift comes long before the next gear pulls harder.
fn held_by_grip(analysis: &Analysis, plan: &Plan) -> Option<String> {
    let (facts, vehicle) = (analysis.facts()?, analysis.pull().vehicle.as_ref()?);
    let is_early = |shift: &&Shift| {
        let point = facts.landings.iter().find(|landing| landing.shift.from == shift.from);
        point.is_some_and(|point| in_rpm(point.shift.before) - in_rpm(shift.before) > AWAY_RPM)
    };
    let by_grip = |shift: &&Shift| {
        let upper = vehicle.pull().gear(shift.to).and_then(|upper| upper.thrust(shift.speed));
        upper.is_some_and(|thrust| thrust >= vehicle.grip_limit())
    };
    let shift = plan.shifts.iter().filter(is_early).find(by_grip)?;
    Some(format!(
        "the tyres hold {} back as much as {}: shift early",
        analysis.setup.gear_name(shift.from),
        analysis.setup.gear_name(shift.to)
    ))
}

/// `skip 2nd: its shift costs more than it gains`.
fn skipped(setup: &Setup, plan: &Plan) -> Option<String> {
    let last = plan.held.last()?;
    let skipped: Vec<String> = plan.left_out.iter().filter(|shift| shift.to < last.gear).map(|shift| setup.gear_name(shift.to)).collect();
    match skipped.as_slice() {
        [] => None,
        [one] => Some(format!("skip {one}: its shift costs more than it gains")),
        many => Some(format!("skip {}: their shifts cost more than they gain", many.join(" and "))),
    }
}
