//! The answer of Inside in a sentence: whose cluster turns slowest and why, which free gear spins fastest, which synchroniser works most.

use super::answer::{hardest, input_change};
use crate::gearing::part::Part;
use crate::gearing::{Layout, Mesh};
use crate::questions::alike::{Alike, by_figure};
use crate::questions::missing::{self, Want};
use crate::questions::{Analysis, Source};
use crate::sheet::Said;
use crate::sheet::said::marks;
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{number, unit};

/// The most groups of setups that are named one by one; of more, only the first and the last.
const MOST_NAMED: usize = 3;

/// What a setup must have before anything turns in it.
const TEETH: Want<'static> = ("the missing tooth counts", &|analysis| analysis.setup.gearbox.is_none());

/// The sentence.
pub fn said(source: Source<'_>) -> Said {
    if source.setups.iter().all(|analysis| analysis.setup.gears.iter().all(Option::is_none)) {
        return Said::new("Choose a gearbox, or type its tooth counts, to see what turns inside it.");
    }
    let lacking = missing::said(source, &[TEETH], "the speeds inside").unwrap_or_default();
    Said::of([cluster(source), free_gear(source), hardest_shift(source), lacking])
}

/// `At 6,500 rpm`, where a shift rpm is given.
fn at(source: Source<'_>) -> Option<String> {
    source.conditions.shift.map(|shift| format!("{} rpm", show_rpm(shift)))
}

/// `At 6,500 rpm the cluster turns slowest in [C], 4,333 rpm, by its 22/33 input pair; 25 % faster in [A], 45 % in [B].`
fn cluster(source: Source<'_>) -> String {
    let Some(at) = at(source) else { return String::new() };
    let speed = |analysis: &Analysis| Some(in_rpm(analysis.inside().fastest_countershaft.as_ref()?.speed).abs());
    let groups = by_figure(source, 0, speed);
    match groups.as_slice() {
        [] => String::new(),
        [one] => format!("At {at} the cluster turns {} rpm in {}{}.", one.shown, marks(&one.columns), highest_in(source, &one.columns)),
        [slow, .., fast] if groups.len() > MOST_NAMED => format!(
            "At {at} the cluster turns slowest in {}, {} rpm{}, and fastest in {}, {} rpm.",
            marks(&slow.columns),
            slow.shown,
            by_pair(source, &slow.columns),
            marks(&fast.columns),
            fast.shown
        ),
        [slow, others @ ..] => {
            let faster = |(place, other): (usize, &Alike)| {
                let share = share_more(other, slow);
                let faster = if place == 0 { " faster" } else { "" };
                format!("{share}{faster} in {}", marks(&other.columns))
            };
            let others: Vec<String> = others.iter().enumerate().map(faster).collect();
            let why = by_pair(source, &slow.columns);
            format!("At {at} the cluster turns slowest in {}, {} rpm{why}; {}.", marks(&slow.columns), slow.shown, others.join(", "))
        }
    }
}

/// `25 %`, by the two figures as they are shown; `slightly` where that rounds to nothing.
fn share_more(more: &Alike, less: &Alike) -> String {
    let share = number::show(100.0 * (more.value / less.value - 1.0), 0);
    if share == "0" { "slightly".into() } else { format!("{share} %") }
}

/// `, in 4th`: the gear in which a cluster that is geared to the output turns fastest, where all of some setups agree.
fn highest_in(source: Source<'_>, columns: &[usize]) -> String {
    let gear = |analysis: &Analysis| {
        let peak = analysis.inside().fastest_countershaft.as_ref()?;
        (analysis.setup.layout == Layout::OutputReduced).then(|| peak.gear.to_string())
    };
    same_of(source, columns, gear).map_or_else(String::new, |gear| format!(", in {gear}"))
}

/// `, by its 22/33 input pair`, where all of some setups have the same one.
fn by_pair(source: Source<'_>, columns: &[usize]) -> String {
    let pair = |analysis: &Analysis| {
        let Mesh { driver, driven } = analysis.setup.constant.filter(|_| analysis.setup.layout == Layout::InputReduced)?;
        Some(format!("{driver}/{driven}"))
    };
    let its = if columns.len() == 1 { "its" } else { "their" };
    same_of(source, columns, pair).map_or_else(String::new, |pair| format!(", by {its} {pair} input pair"))
}

/// What is said of every one of some setups, where it is one and the same.
fn same_of(source: Source<'_>, columns: &[usize], of: impl Fn(&Analysis) -> Option<String>) -> Option<String> {
    let mut each = columns.iter().map(|column| source.setups.get(*column).and_then(&of));
    let first = each.next()??;
    each.all(|other| other.as_ref() == Some(&first)).then_some(first)
}

/// `Fastest on its shaft is 5th in [C]: 5,296 rpm with 1st engaged.`
fn free_gear(source: Source<'_>) -> String {
    let speed = |analysis: &Analysis| Some(in_rpm(analysis.inside().fastest_idle.as_ref()?.speed).abs());
    let groups = by_figure(source, 0, speed);
    let Some(fastest) = groups.last() else { return String::new() };
    let which = |analysis: &Analysis| {
        let peak = analysis.inside().fastest_idle.as_ref()?;
        let (Part::Driver(gear) | Part::Driven(gear)) = peak.part else { return None };
        Some(format!("{gear} in {}: {} rpm with {} engaged", marks(&fastest.columns), fastest.shown, peak.gear))
    };
    same_of(source, &fastest.columns, which).map_or_else(String::new, |which| format!("Fastest on its shaft is {which}."))
}

/// `Hardest on the synchronisers is 1st to 2nd: the input changes by 2,100 rpm in [A] and [B], 2,069 in [C].`
fn hardest_shift(source: Source<'_>) -> String {
    let groups = by_figure(source, 0, |analysis| hardest(analysis.inside()).map(input_change));
    let which = |columns: &[usize]| {
        let which = |analysis: &Analysis| hardest(analysis.inside()).map(|shift| format!("{} to {}", shift.from, shift.to));
        same_of(source, columns, which)
    };
    let all: Vec<usize> = groups.iter().flat_map(|group| group.columns.iter().copied()).collect();
    let everywhere = which(&all);
    let many = groups.len();
    let named = groups.iter().rev().enumerate().filter(|(place, _)| many <= MOST_NAMED || *place == 0 || *place + 1 == many);
    let one = |(place, group): (usize, &Alike)| {
        let rpm = if place == 0 { " rpm" } else { "" };
        let from = if everywhere.is_some() { None } else { which(&group.columns) };
        let from = from.map_or_else(String::new, |shift| format!(" from {shift}"));
        format!("{}{rpm}{} in {}{from}", group.shown, joules(source, &group.columns), marks(&group.columns))
    };
    let named: Vec<String> = named.map(one).collect();
    match everywhere {
        _ if named.is_empty() => String::new(),
        Some(shift) => format!("Hardest on the synchronisers is {shift}: the input changes by {}.", named.join(", ")),
        None => format!("At the hardest shift for the synchronisers the input changes by {}.", named.join(", ")),
    }
}

/// ` (103 J)`, where all of some setups show the same slip work at their hardest shift.
fn joules(source: Source<'_>, columns: &[usize]) -> String {
    let work = |analysis: &Analysis| {
        let absorbed = hardest(analysis.inside())?.absorbed.filter(|_| analysis.inside().inertia.is_some())?;
        Some(number::show(unit::JOULE.number(absorbed.work), 1))
    };
    same_of(source, columns, work).map_or_else(String::new, |work| format!(" ({work} J)"))
}
