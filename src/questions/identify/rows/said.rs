//! The answer in a sentence or two: what fits, and what to do next.

use super::super::answer::{self, Next, Sets, axle::axle, teeth};
use super::super::read::Evidence;
use super::sets::{differences, gear_name};
use crate::gearing::identify::counts::NextCount;
use crate::gearing::identify::reading::Interval;
use crate::gearing::identify::turns::NextTurn;
use crate::gearing::teeth::decimal;
use crate::problem::capital;
use crate::questions::{Source, Station};
use crate::sheet::Said;
use crate::units::number;

/// How many are named one by one.
const NAMED: usize = 4;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let evidence = Evidence::of(&source.job.bench);
    let fit = |many: usize, what: &str| format!("{many} {what}{} fit{}", plural(many), if many == 1 { "s" } else { "" });
    let sets = answer::sets(&evidence, source.shelves.gear_sets).map(|sets| fit(sets.fitting, "gear set"));
    let axles = evidence.axle.map(|interval| fit(axle(interval, source.shelves.axles).ranked.fitting().count(), "axle"));
    let said = sets.into_iter().chain(axles).collect::<Vec<_>>().join(", ");
    Station::at_bench(if said.is_empty() { "from counts, turns, printed ratios".into() } else { said })
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let evidence = Evidence::of(&source.job.bench);
    let sets = answer::sets(&evidence, source.shelves.gear_sets);
    let of_box = sets.as_ref().map(|sets| box_said(source, &evidence, sets));
    let of_axle = evidence.axle.map(|interval| axle_said(source, interval));
    Said::of(of_box.into_iter().chain(of_axle).flatten())
}

fn box_said(source: Source<'_>, evidence: &Evidence, sets: &Sets) -> Vec<String> {
    if sets.fitting == 0 {
        let teeth = teeth(source, evidence).and_then(Result::ok).map(|outcome| format!("{}.", capital(&super::teeth::said(&outcome))));
        return std::iter::once(nothing_said(source, evidence, sets)).chain(teeth).collect();
    }
    let fitting = sets.ranked.iter().take(sets.fitting).filter_map(|standing| source.shelves.gear_sets.get(standing.at));
    let names: Vec<String> = fitting.map(|known| known.entry.title().to_owned()).collect();
    let mut said = vec![fit_said("gear set", &names)];
    said.extend(sets.next.as_ref().map(|next| match next {
        Next::Count(next) => count_said(source, sets, next),
        Next::Turn(next) => turn_said(next),
    }));
    said
}

/// That nothing fits, and what comes nearest.
fn nothing_said(source: Source<'_>, evidence: &Evidence, sets: &Sets) -> String {
    let best = sets.ranked.first().and_then(|standing| Some((source.shelves.gear_sets.get(standing.at)?, standing)));
    let Some((known, standing)) = best else { return "There is no gear set in the catalogue to compare with.".into() };
    let off = differences(known, standing, evidence).join("; ");
    format!("No gear set in the catalogue fits; {} comes nearest: {off}.", known.entry.title())
}

fn count_said(source: Source<'_>, sets: &Sets, next: &NextCount) -> String {
    let first = sets.ranked.first().and_then(|standing| source.shelves.gear_sets.get(standing.at));
    let part = next.part.name(first.map(|known| known.part.layout()).unwrap_or_default());
    let left = next.outcomes.values().map(Vec::len).max().unwrap_or_default();
    format!("Count the {part} next: {}.", settles(sets.fitting, left))
}

fn turn_said(next: &NextTurn) -> String {
    let gear = next.selected.map_or_else(String::new, |selected| format!(" in {}", gear_name(selected)));
    let groups = if next.groups == 2 { "tells the two apart".into() } else { format!("parts them into {} groups", next.groups) };
    format!("Turn the input {} times{gear} next and read the output to a twentieth of a turn: it {groups}.", next.input_turns)
}

/// What a measurement does to those that are left, of which so many remain at most.
fn settles(many: usize, left: usize) -> String {
    match (many, left) {
        (2, 1) => "it tells the two apart".into(),
        (_, 1) => format!("it tells all {} apart", in_words(many)),
        _ => format!("it leaves {} at most", in_words(left)),
    }
}

fn axle_said(source: Source<'_>, interval: Interval) -> Vec<String> {
    let found = axle(interval, source.shelves.axles);
    let names: Vec<String> =
        found.ranked.fitting().filter_map(|at| source.shelves.axles.get(at)).map(|known| known.entry.title().to_owned()).collect();
    let ratio = |ratio| number::show(decimal(ratio), 3);
    let mut said = vec![format!("The axle’s ratio lies between {} and {}.", ratio(interval.least), ratio(interval.greatest))];
    said.push(if names.is_empty() {
        "No ring and pinion in the catalogue lies inside.".into()
    } else {
        fit_said("ring and pinion", &names)
    });
    said.extend(found.ranked.next.map(|next| {
        let turns = number::show(count_to_show(next.input_turns), 0);
        format!("Turn the driveshaft {turns} times and read the wheel to a twentieth of a turn: that tells them apart.")
    }));
    said
}

#[expect(clippy::cast_precision_loss, reason = "turns that a person can make")]
fn count_to_show(turns: i128) -> f64 {
    turns as f64
}

/// `One gear set in the catalogue fits: A.`, `Two gear sets in the catalogue fit: A and B.`, `12 gear sets in the catalogue fit.`
pub(in crate::questions) fn fit_said(what: &str, names: &[String]) -> String {
    let many = names.len();
    let verb = if many == 1 { "fits" } else { "fit" };
    let what = if many == 1 { what.to_owned() } else { plural_of(what) };
    let counted = capital(&in_words(many));
    if many > NAMED {
        return format!("{counted} {what} in the catalogue {verb}.");
    }
    format!("{counted} {what} in the catalogue {verb}: {}.", joined(names))
}

fn plural_of(what: &str) -> String {
    if what == "ring and pinion" { "rings and pinions".into() } else { format!("{what}s") }
}

fn plural(many: usize) -> &'static str {
    if many == 1 { "" } else { "s" }
}

/// `A`, `A and B`, `A, B and C`.
pub(in crate::questions) fn joined(names: &[String]) -> String {
    match names.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
        None => String::new(),
    }
}

/// A number as it stands in a sentence: in words up to twelve.
pub(in crate::questions) fn in_words(many: usize) -> String {
    const WORDS: [&str; 13] = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    WORDS.get(many).map_or_else(|| many.to_string(), |word| (*word).to_owned())
}
