//! The answer of Pull in a sentence: who is quickest to the named speed, by how much and how, and who spares the clutch.

use super::rows::plan::without_the_shift;
use super::rows::run::out_of_reach;
use crate::gearing::GearNumber;
use crate::gearing::teeth::decimal;
use crate::motion::plan::Plan;
use crate::problem::{Explain, capital};
use crate::questions::alike::{Alike, by_figure, say, together};
use crate::questions::missing::{self, Want};
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::{mark, marks};
use crate::units::{Velocity, number, unit};

/// The most groups of setups that are named one by one; of more, only the quickest and the slowest.
const MOST_NAMED: usize = 3;
/// How far apart the heat in the clutch must be before it is spoken of.
const WORTH_SAYING: f64 = 1.1;

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    if let Some(first) = first_needs(source) {
        return Said::new(first);
    }
    let Some((at, speed)) = source.conditions.pull.run.named_speed() else { return Said::default() };
    let speed = source.show(&speed, 0);
    let groups = by_figure(source, 1, |analysis| seconds(analysis, at));
    let quickest = quickest(source, &groups, at, &speed);
    let spared = spared(source, &groups, at, &speed);
    Said::of([quickest, spared, unreached(source, at, &speed), clutch(source), refused(source), lacking(source).unwrap_or_default()])
}

/// What engine and car still need, before anything can be said of a setup.
fn first_needs(source: Source<'_>) -> Option<String> {
    let pull = &source.conditions.pull;
    match (pull.curve.is_some(), pull.car.is_some()) {
        (true, true) => None,
        (false, true) => Some("Type the engine’s peak torque or power, or paste its curve, to see how it pulls.".into()),
        (true, false) => Some("Type the car’s mass to get times, grades and top speed.".into()),
        (false, false) => Some("Type the engine’s peak torque or power and the car’s mass to see how it pulls.".into()),
    }
}

/// What a setup needs before it can be run.
pub(super) const WANTS: [Want<'static>; 5] = missing::ON_THE_ROAD;

fn lacking(source: Source<'_>) -> Option<String> {
    missing::said(source, &WANTS, "its times")
}

/// Why no run can be worked out, the first of all reasons.
fn refused(source: Source<'_>) -> String {
    let refused = (0..).zip(source.setups).find_map(|(column, analysis)| Some((column, analysis.pull().refused.as_ref()?)));
    refused.map_or_else(String::new, |(column, why)| format!("{}: {}; {}.", mark(column), why.what(), why.what_to_do()))
}

/// Time to the speed at that place, in seconds.
fn seconds(analysis: &Analysis, at: usize) -> Option<f64> {
    Some(unit::SECOND.number(way(analysis, at)?.reached.time))
}

/// The way to the speed at that place.
fn way(analysis: &Analysis, at: usize) -> Option<&Plan> {
    analysis.facts()?.to_speed.get(at)?.as_ref().ok()
}

/// `[B] is quickest to 60 mph, 7.4 s, holding 1st to 54 mph. [A] takes 0.1 s longer, [C] 0.9 s, with one more shift.`
fn quickest(source: Source<'_>, groups: &[Alike], at: usize, speed: &str) -> String {
    match groups {
        [] => String::new(),
        [one] if one.columns.len() == 1 => format!("{} {speed} in {} s{}.", one.say("reaches", "reach"), one.shown, top(source, one)),
        [all] => format!("{} alike to {speed}, {} s.", all.say("is", "are"), all.shown),
        [first, others @ ..] if groups.len() <= MOST_NAMED => {
            let how = others.first().and_then(|second| holding(source, first, second, at)).unwrap_or_default();
            let longer = |(place, other): (usize, &Alike)| {
                let by = other.less(first, 1);
                let takes = if place == 0 {
                    format!("{} {by} s longer", other.say("takes", "take"))
                } else {
                    format!("{} {by} s", marks(&other.columns))
                };
                format!("{takes}{}", more_shifts(source, first, other, at).unwrap_or_default())
            };
            let others: Vec<String> = others.iter().enumerate().map(longer).collect();
            format!("{} quickest to {speed}, {} s{how}. {}.", first.say("is", "are"), first.shown, others.join("; "))
        }
        [first, .., last] => format!(
            "{} quickest to {speed}, {} s; {} slowest, {} s{}.",
            first.say("is", "are"),
            first.shown,
            last.say("is", "are"),
            last.shown,
            more_shifts(source, first, last, at).unwrap_or_default()
        ),
    }
}

/// `, and tops out at 116.5 mph`.
fn top(source: Source<'_>, one: &Alike) -> String {
    let top = one.columns.first().and_then(|column| source.setups.get(*column)?.facts()?.top);
    top.map_or_else(String::new, |top| format!(" and tops out at {}", source.show(&top.speed, 1)))
}

/// The first setup of a group.
fn first_of<'a>(source: Source<'a>, group: &Alike) -> Option<&'a Analysis> {
    source.setups.get(*group.columns.first()?)
}

/// `, with one more shift`, where every setup of the slower group shifts oftener on the way than every one of the quicker.
fn more_shifts(source: Source<'_>, quicker: &Alike, slower: &Alike, at: usize) -> Option<String> {
    let shifts =
        |group: &Alike| group.columns.iter().map(|column| shifts_before(source.setups.get(*column)?, at)).collect::<Option<Vec<usize>>>();
    let more = shifts(slower)?.into_iter().min()?.checked_sub(shifts(quicker)?.into_iter().max()?)?;
    match more {
        0 => None,
        1 => Some(", with one more shift".into()),
        many => Some(format!(", with {many} more shifts")),
    }
}

/// How many shifts are over when the speed is reached.
fn shifts_before(analysis: &Analysis, at: usize) -> Option<usize> {
    Some(way(analysis, at)?.shifts.len())
}

/// `In [B] hold 3rd to 3,210 rpm and reach 60 mph without the shift.`, of the quickest.
fn spared(source: Source<'_>, groups: &[Alike], at: usize, speed: &str) -> String {
    let first = groups.first().and_then(|group| group.columns.first()).copied();
    let words = first.and_then(|column| Some((column, spared_by(source.setups.get(column)?, at, speed)?)));
    words.map_or_else(String::new, |(column, words)| format!("In {} {words}.", mark(column)))
}

fn spared_by(analysis: &Analysis, at: usize, speed: &str) -> Option<String> {
    without_the_shift(&analysis.setup, way(analysis, at)?, speed)
}

/// How the quickest gains on the next where both shift as often: by holding a taller gear longer, or by a shorter one.
fn holding(source: Source<'_>, quicker: &Alike, slower: &Alike, at: usize) -> Option<String> {
    let (quick, slow) = (first_of(source, quicker)?, first_of(source, slower)?);
    if quicker.columns.len() > 1 || shifts_before(quick, at)? != shifts_before(slow, at)? {
        return None;
    }
    let overall = |analysis: &Analysis| {
        let steps = analysis.setup.driven().map(|step| analysis.setup.overall(step).map(decimal));
        steps.collect::<Option<Vec<f64>>>()
    };
    let (own, other) = (overall(quick)?, overall(slow)?);
    let gears = own.iter().zip(&other).take(shifts_before(quick, at)? + 1);
    let (gear, (own, other)) =
        GearNumber::lowest(own.len()).zip(gears).find(|(_, (own, other))| number::show(**own, 2) != number::show(**other, 2))?;
    let name = quick.setup.gear_name(gear);
    if name != slow.setup.gear_name(gear) {
        return None;
    }
    if own > other {
        let share = number::show(100.0 * (own / other - 1.0), 0);
        return (share != "0").then(|| format!(", with a {} {share} % shorter than {}", name, mark(*slower.columns.first().unwrap_or(&0))));
    }
    let left = shifted_at(quick, at, gear)?;
    let speed = |left: Velocity| source.show(&left, 0);
    (left > shifted_at(slow, at, gear)? && speed(left) != speed(shifted_at(slow, at, gear)?))
        .then(|| format!(", holding {name} to {}", speed(left)))
}

/// The speed at which a gear is left on the way.
fn shifted_at(analysis: &Analysis, at: usize, gear: GearNumber) -> Option<Velocity> {
    way(analysis, at)?.shifts.iter().find(|shift| shift.from == gear).map(|shift| shift.speed)
}

/// `[C] does not get to 100 mph: the car does not move off.`
fn unreached(source: Source<'_>, at: usize, speed: &str) -> String {
    let stopped = together(source, |analysis| {
        let facts = analysis.facts().filter(|_| seconds(analysis, at).is_none())?;
        Some(facts.to_speed.get(at).and_then(|way| way.as_ref().err()).map_or("out of reach", |stopped| out_of_reach(*stopped)))
    });
    let sentence = |(why, columns): &(&str, Vec<usize>)| {
        let why = why.strip_prefix("out of reach: ").unwrap_or(why);
        let get = say(columns, "does not get", "do not get");
        if why == "out of reach" { format!("{get} to {speed}.") } else { format!("{get} to {speed}: {why}.") }
    };
    stopped.iter().map(sentence).collect::<Vec<_>>().join(" ")
}

/// Who spares the clutch at each start, where that is worth saying.
fn clutch(source: Source<'_>) -> String {
    let heat = |analysis: &Analysis| Some(unit::KJ.number(analysis.facts()?.clutch_energy?));
    let groups = by_figure(source, 0, heat);
    match groups.as_slice() {
        [least, .., most] if most.value >= WORTH_SAYING * least.value => format!(
            "{} easiest on the clutch, {} kJ each start; {} hardest, {} kJ.",
            least.say("is", "are"),
            least.shown,
            most.say("is", "are"),
            most.shown
        ),
        _ => String::new(),
    }
}

/// The reason as it stands at the head of a cell.
pub(super) fn refusal(why: &impl Explain) -> String {
    format!("{}: {}", capital(&why.what()), why.what_to_do())
}
