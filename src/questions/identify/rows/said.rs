//! The answer in a sentence or two: what fits, and what to do next.

use super::super::answer::axle::{Axle, axle};
use super::super::answer::{self, Next, Sets, teeth};
use super::super::read::Evidence;
use super::sets::differences;
use super::{mates, printed, tag};
use crate::gearing::Ratio;
use crate::gearing::identify::counts::NextCount;
use crate::gearing::identify::reading::Interval;
use crate::gearing::identify::slips::{self, Slip, slip};
use crate::gearing::identify::tooth_pairs::{Counts, pairs_in};
use crate::gearing::identify::turns::NextTurn;
use crate::gearing::teeth::decimal;
use crate::problem::capital;
use crate::questions::alike::listed;
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
    let axles =
        evidence.axle.map(|interval| fit(axle(interval, evidence.axle_turned(), source.shelves.axles).ranked.fitting().count(), "axle"));
    let said = sets.into_iter().chain(axles).collect::<Vec<_>>().join(", ");
    Station::at_bench(if said.is_empty() { "from counts, turns, printed ratios".into() } else { said })
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let evidence = Evidence::of(&source.job.bench);
    let sets = answer::sets(&evidence, source.shelves.gear_sets);
    let of_box = sets.as_ref().map(|sets| box_said(source, &evidence, sets));
    let of_axle = evidence.axle.map(|interval| axle_said(source, &evidence, interval));
    let doubts = printed::doubts(&evidence).into_iter().chain(doubt_of_box(&evidence)).map(|doubt| sentence(&doubt));
    Said::of(doubts.chain(of_box.into_iter().chain(of_axle).flatten()).chain(tag::said(source, &evidence)))
}

fn box_said(source: Source<'_>, evidence: &Evidence, sets: &Sets) -> Vec<String> {
    if sets.fitting == 0
        && let Some(said) = mates::said(source, evidence)
    {
        return said;
    }
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
    let gear = next.selected.map_or_else(String::new, |selected| format!(" in {selected}"));
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

fn axle_said(source: Source<'_>, evidence: &Evidence, interval: Interval) -> Vec<String> {
    let found = axle(interval, evidence.axle_turned(), source.shelves.axles);
    if let Some(doubt) = doubt_of_axle(&found) {
        return vec![sentence(&doubt)];
    }
    let names: Vec<String> =
        found.ranked.fitting().filter_map(|at| source.shelves.axles.get(at)).map(|known| known.entry.title().to_owned()).collect();
    let ratio = |ratio| number::show(decimal(ratio), 3);
    let mut said = vec![format!("The axle’s ratio lies between {} and {}.", ratio(interval.least), ratio(interval.greatest))];
    said.push(if names.is_empty() {
        "No ring and pinion in the catalogue lies inside.".into()
    } else {
        fit_said("ring and pinion", &names)
    });
    said.extend(settling_said(&found, evidence, &names));
    said
}

/// `Turn the wheel 14 times and count the driveshaft: 54.60 turns is 39/10, 54.83 is 47/12.`
fn settling_said(found: &Axle, evidence: &Evidence, names: &[String]) -> Option<String> {
    if names.len() < 2 {
        return None;
    }
    let Some(settling) = &found.settling else {
        return Some("Turning does not tell them apart: count the teeth of ring and pinion.".into());
    };
    let wheel = if evidence.is_wheel_held { "the free wheel" } else { "both wheels" };
    let turn = format!("Turn {wheel} {} times and count the driveshaft", settling.wheel_turns);
    if names.len() > NAMED {
        return Some(format!("{turn} to a twentieth of a turn: that tells all {} apart.", in_words(names.len())));
    }
    let one = |(name, turns): (&String, &Ratio)| format!("{} is {name}", number::show(decimal(*turns), 2));
    let each: Vec<String> = names.iter().zip(&settling.shaft_turns).map(one).collect();
    Some(format!("{turn}: {}.", each.join(", ")))
}

/// What the reading of an axle may have been meant as: `the axle is 7.80 if the other wheel really was held, 3.90 (39/10) if both
/// turned: was it held?`
pub(super) fn doubt_of_axle(found: &Axle) -> Option<String> {
    let (slip, meant) = found.meant?;
    let pairs = pairs_in(&meant, &Counts::of_axle()).inside;
    let nearest = pairs.iter().min_by(|one, other| meant.off_centre(one.ratio()).total_cmp(&meant.off_centre(other.ratio())));
    let pair = nearest.map_or_else(String::new, |mesh| format!(" ({}/{})", mesh.driven, mesh.driver));
    let (read, meant) = (middle(found.interval), format!("{}{pair}", middle(meant)));
    Some(match slip {
        Slip::BothTurned => format!("the axle is {read} if the other wheel really was held, {meant} if both turned: was it held?"),
        Slip::OneHeld => format!("the axle is {read} if both wheels turned, {meant} if one of them stood still: did it?"),
        Slip::WrongWayRound => {
            format!("{read} is no axle; with the turns of driveshaft and wheel the other way round it is {meant}: which turned how often?")
        }
        Slip::TenTimesTooLarge | Slip::TenTimesTooSmall => {
            format!("{read} is no axle, {meant} would be one: is one of the turns ten times off?")
        }
    })
}

/// A doubt as a sentence, with its stop where it is no question.
fn sentence(doubt: &str) -> String {
    let stop = if doubt.ends_with('?') { "" } else { "." };
    format!("{}{stop}", capital(doubt))
}

/// What the turns of a box may have been meant as.
pub(super) fn doubt_of_box(evidence: &Evidence) -> Option<String> {
    let turned = evidence.turned?;
    let (slip, meant) = slip(turned.interval, slips::Turned::Gearbox)?;
    let (read, meant) = (middle(turned.interval), middle(meant));
    Some(match slip {
        Slip::WrongWayRound => {
            format!(
                "{read} is no usual gear; with the turns of input and output the other way round it is {meant}: which turned how often?"
            )
        }
        _ => format!("{read} is no usual gear, {meant} would be one: is one of the turns ten times off?"),
    })
}

/// The middle of what a reading leaves, to two decimals.
fn middle(interval: Interval) -> String {
    number::show(decimal((interval.least + interval.greatest) / Ratio::from_integer(2)), 2)
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
    format!("{counted} {what} in the catalogue {verb}: {}.", listed(names))
}

fn plural_of(what: &str) -> String {
    if what == "ring and pinion" { "rings and pinions".into() } else { format!("{what}s") }
}

fn plural(many: usize) -> &'static str {
    if many == 1 { "" } else { "s" }
}

/// A number as it stands in a sentence: in words up to twelve.
pub(in crate::questions) fn in_words(many: usize) -> String {
    const WORDS: [&str; 13] = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    WORDS.get(many).map_or_else(|| many.to_string(), |word| (*word).to_owned())
}
