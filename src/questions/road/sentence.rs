//! The answer of Road speed in a sentence: what the engine turns at the cruise speed and why, how far 1st reaches, where shifts land.

use crate::gearing::teeth::decimal;
use crate::questions::alike::{Alike, by_figure, listed, rounded, say, together};
use crate::questions::missing::{self, ON_THE_ROAD};
use crate::questions::road::answer::InGear;
use crate::questions::short::cruise_text;
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::marks;
use crate::units::common::{in_millimetres, in_rpm, show_rpm};
use crate::units::{AngularVelocity, Measured, Velocity, number, show};

/// The most groups of setups that are named one by one; of more, only the first and the last.
const MOST_NAMED: usize = 3;

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    if source
        .setups
        .iter()
        .all(|analysis| ON_THE_ROAD.iter().take(2).all(|(_, lacking)| lacking(analysis)) && analysis.setup.tyre.is_none())
    {
        return Said::new("Choose a gearbox, an axle and a tyre to get road speeds.");
    }
    let lacking = missing::said(source, &ON_THE_ROAD, "road speeds").unwrap_or_default();
    Said::of([cruise(source), at_shift(source), outrun(source), lacking])
}

/// `[C] turns slowest at 70 mph in top, 3,348 rpm, by its 0.857 top gear; [A] and [B] turn 559 rpm more.`
fn cruise(source: Source<'_>) -> String {
    let at = cruise_text(source);
    let groups = by_figure(source, 0, |analysis| analysis.road().cruise_in_top().map(in_rpm));
    match groups.as_slice() {
        [] => String::new(),
        [one] => format!("{} {} rpm at {at} in top.", one.say("turns", "turn"), one.shown),
        [slowest, others @ ..] if groups.len() <= MOST_NAMED => {
            let more = |(place, other): (usize, &Alike)| {
                let by = other.less(slowest, 0);
                if place == 0 {
                    format!("{} {by} rpm more", other.say("turns", "turn"))
                } else {
                    format!("{} {by} more", marks(&other.columns))
                }
            };
            let others: Vec<String> = others.iter().enumerate().map(more).collect();
            let why = why_slower(source, &slowest.columns);
            format!("{} slowest at {at} in top, {} rpm{why}; {}.", slowest.say("turns", "turn"), slowest.shown, others.join(", "))
        }
        [slowest, .., fastest] => {
            let why = why_slower(source, &slowest.columns);
            format!(
                "{} slowest at {at} in top, {} rpm{why}; {} fastest, {} rpm.",
                slowest.say("turns", "turn"),
                slowest.shown,
                fastest.say("turns", "turn"),
                fastest.shown
            )
        }
    }
}

/// `, by its 0.857 top gear`: what all of some setups have that lowers their engine speed beside every other; nothing where that is
/// not one and the same for each.
fn why_slower(source: Source<'_>, slowest: &[usize]) -> String {
    let mut each = slowest.iter().filter_map(|column| Some(causes(source, source.setups.get(*column)?, slowest)));
    let first = each.next().unwrap_or_default();
    if first.is_empty() || each.any(|other| other != first) {
        return String::new();
    }
    format!(", by {} {}", if slowest.len() == 1 { "its" } else { "their" }, listed(&first))
}

/// What lowers a setup's engine speed beside every setup outside its group, told by what is shown of it.
fn causes(source: Source<'_>, own: &Analysis, group: &[usize]) -> Vec<String> {
    let others: Vec<&Analysis> = (0..).zip(source.setups).filter(|(column, _)| !group.contains(column)).map(|(_, other)| other).collect();
    let below = |decimals: usize, figure: &dyn Fn(&Analysis) -> Option<f64>| {
        let own = figure(own)?;
        let known: Vec<f64> = others.iter().filter_map(|other| figure(other)).collect();
        let is_below = !known.is_empty() && known.iter().all(|other| rounded(own, decimals) < rounded(*other, decimals));
        is_below.then(|| number::show(own, decimals))
    };
    let top = |analysis: &Analysis| Some(decimal(analysis.setup.steps.last()?.ratio?));
    let axle = |analysis: &Analysis| Some(decimal(analysis.setup.final_drive?.ratio()));
    let stages = |analysis: &Analysis| Some(decimal(analysis.setup.behind_gearbox()?) / axle(analysis)?);
    let tyre = |analysis: &Analysis| analysis.setup.rolling.as_ref().map(|rolling| -in_millimetres(rolling.circumference));
    let found = [
        below(3, &top).map(|ratio| format!("{ratio} top gear")),
        below(3, &axle).map(|ratio| format!("{ratio} axle")),
        below(3, &stages).map(|ratio| format!("extra stages ({ratio} in all)")),
        below(0, &tyre).map(|_| "taller tyres".to_owned()),
    ];
    found.into_iter().flatten().collect()
}

fn rpm(speed: AngularVelocity) -> String {
    format!("{} rpm", show_rpm(speed))
}

/// `At 6,500 rpm 1st reaches 54.6 mph in [B], 47.2 in [A], 41.0 in [C]; no shift lands below 4,400 rpm in [A] and [B], 4,431 in [C].`
fn at_shift(source: Source<'_>) -> String {
    let Some(shift) = source.conditions.shift else { return String::new() };
    let said: Vec<String> = [reach(source), landing(source)].into_iter().flatten().collect();
    if said.is_empty() { String::new() } else { format!("At {} {}.", rpm(shift), said.join("; ")) }
}

/// `1st reaches 54.6 mph in [B], 47.2 in [A]`, the furthest first.
fn reach(source: Source<'_>) -> Option<String> {
    let unit = Velocity::usual(source.reader.units);
    let groups = by_figure(source, 1, |analysis| Some((unit.take)(&analysis.road().gears.first()?.at_shift?)));
    match groups.as_slice() {
        [one] if one.columns.len() == 1 => alone(source, *one.columns.first()?),
        groups => each(groups.iter().rev(), unit.symbol).map(|each| format!("1st reaches {each}")),
    }
}

/// `54.6 mph in [B], 47.2 in [A]`; of many groups only the first and the last.
fn each<'a>(groups: impl Iterator<Item = &'a Alike> + Clone, unit: &str) -> Option<String> {
    let many = groups.clone().map(|_| 1_usize).sum::<usize>();
    let named = groups.enumerate().filter(|(place, _)| many <= MOST_NAMED || *place == 0 || *place + 1 == many);
    let one = |(place, group): (usize, &Alike)| {
        let unit = if place == 0 { format!(" {unit}") } else { String::new() };
        format!("{}{unit} in {}", group.shown, marks(&group.columns))
    };
    let named: Vec<String> = named.map(one).collect();
    (!named.is_empty()).then(|| named.join(", "))
}

/// How far the lowest and the highest gear of one setup reach: `1st reaches 47.2 mph and 4th reaches 116.5 mph`.
fn alone(source: Source<'_>, column: usize) -> Option<String> {
    let analysis = source.setups.get(column)?;
    let said = |in_gear: &InGear| Some(show(&in_gear.at_shift?, Velocity::usual(source.reader.units), 1));
    let first = format!("1st reaches {}", said(analysis.road().gears.first()?)?);
    let top = analysis.setup.steps.last().filter(|_| analysis.setup.steps.len() > 1);
    Some(match top.and_then(|top| Some((top.name(), said(analysis.road().steps.last()?)?))) {
        Some((top, speed)) => format!("{first} and {top} {speed}"),
        None => first,
    })
}

/// `no shift lands below 4,400 rpm in [A] and [B], 4,431 in [C]`, the lowest first.
fn landing(source: Source<'_>) -> Option<String> {
    let lowest = |analysis: &Analysis| {
        let landings = analysis.road().gears.iter().filter_map(|gear| gear.lands_at.map(in_rpm));
        landings.min_by(f64::total_cmp)
    };
    let groups = by_figure(source, 0, lowest);
    match groups.as_slice() {
        [one] if one.columns.len() == source.setups.len() => Some(format!("no shift lands below {} rpm", one.shown)),
        groups => each(groups.iter(), "rpm").map(|each| format!("no shift lands below {each}")),
    }
}

/// `[B] reaches 126 mph on tyres made for 112 (S).`
fn outrun(source: Source<'_>) -> String {
    let unit = Velocity::usual(source.reader.units);
    let found = together(source, |analysis| {
        let (symbol, limit) = analysis.setup.tyre.as_ref().and_then(crate::tyre::Tyre::speed_limit)?;
        let [fastest, limit] = [analysis.tyres().fastest?.speed, limit].map(|speed| rounded((unit.take)(&speed), 0));
        let said = || format!("{} {} on tyres made for {} ({symbol})", number::show(fastest, 0), unit.symbol, number::show(limit, 0));
        (fastest > limit).then(said)
    });
    found.iter().map(|(said, columns)| format!("{} {said}.", say(columns, "reaches", "reach"))).collect::<Vec<_>>().join(" ")
}
