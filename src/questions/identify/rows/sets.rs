//! The gear sets that a box can be: name, ratios, counts, and how far each is off.

use super::super::answer::{Sets, Standing};
use super::super::read::Evidence;
use super::{LISTED, more_row};
use crate::gearing::identify::counts::Mismatch;
use crate::gearing::identify::reading::size;
use crate::gearing::identify::turns;
use crate::gearing::speeds::Selected;
use crate::gearing::teeth::decimal;
use crate::gearing::{Gear, GearNumber, Gearbox, Ratio};
use crate::problem::Explain;
use crate::questions::{Known, Source};
use crate::sheet::catalogue::counts;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::number;

/// How many sets are listed where none fits.
const NEAREST: usize = 3;

/// The sets that fit, or the nearest; and counted pairs that cannot belong together.
pub(super) fn rows(source: Source<'_>, evidence: &Evidence, sets: &Sets) -> Vec<Row> {
    let listed = if sets.fitting > 0 { sets.fitting.min(LISTED) } else { NEAREST };
    let row = |(number, standing): (usize, &Standing)| {
        let known = source.shelves.gear_sets.get(standing.at)?;
        Some(set_row(number + 1, known, standing, evidence))
    };
    let mut rows: Vec<Row> = sets.ranked.iter().take(listed).enumerate().filter_map(row).collect();
    rows.extend(more_row("sets-more", sets.fitting));
    let clashes = sets.counts.iter().flat_map(|counts| &counts.clashes).enumerate();
    rows.extend(clashes.map(|(at, clash)| {
        let said = format!("{}; {}", clash.what(), clash.what_to_do());
        Row::of_one(format!("clash-{}", at + 1), "Do not belong together", Cell::line([Piece::caution(said)]))
    }));
    rows
}

fn set_row(number: usize, known: &Known<Gearbox>, standing: &Standing, evidence: &Evidence) -> Row {
    let off = differences(known, standing, evidence);
    let judged = if off.is_empty() { agreement(standing, evidence) } else { off.into_iter().map(Piece::words).collect() };
    let cell = Cell::line(ratios(&format!("identify.set_{number}"), &known.part)).and([Piece::words(counts(&known.entry))]).and(judged);
    Row::of_one(format!("set-{number}"), known.entry.title(), cell.offering(known.entry.clone()))
}

/// The ratios of a box, lowest gear first, each with how it came about.
pub(in crate::questions) fn ratios(key: &str, gearbox: &Gearbox) -> Vec<Piece> {
    let figure = |(gear, ratio): (GearNumber, Ratio)| {
        let figure = Figure::ratio(format!("{key}.gear_{}", gear.number()), size(ratio), 3);
        figure.by("i = driven teeth ÷ driving teeth, mesh by mesh", path(gearbox, gear), "plain kinematics").into()
    };
    gearbox.numbers().zip(gearbox.ratios()).map(figure).collect()
}

/// The meshes of a gear with what they come to: `30/25 × 37/18 = 2.4667`.
fn path(gearbox: &Gearbox, gear: GearNumber) -> String {
    let ratio = gearbox.ratio(gear).map_or(0.0, |ratio| decimal(size(ratio)));
    let meshes = match gear.of(gearbox.gears()) {
        Some(Gear::Mesh(mesh)) => gearbox.constant().into_iter().chain([*mesh]).collect(),
        _ => Vec::new(),
    };
    let filled: Vec<String> = meshes.iter().map(|mesh| format!("{}/{}", mesh.driven, mesh.driver)).collect();
    if filled.is_empty() { "direct = 1".into() } else { format!("{} = {}", filled.join(" × "), number::show(ratio, 4)) }
}

/// How a set agrees with each kind of evidence.
fn agreement(standing: &Standing, evidence: &Evidence) -> Vec<Piece> {
    let counts = standing.counts.as_ref().map(|_| match evidence.counted.len() {
        1 => "the count agrees".to_owned(),
        many => format!("all {many} counts agree"),
    });
    let turns = standing.turns.as_ref().and_then(|found| {
        let off = number::show(found.off_centre * 100.0, 1);
        Some(format!("{}, {off} % from the middle of the reading", *found.gears.first()?.as_ref()?))
    });
    let printed = standing.printed.map(|_| "rounds to the printed ratios".to_owned());
    [counts, turns, printed].into_iter().flatten().map(Piece::good).collect()
}

/// What a set has otherwise.
pub(super) fn differences(known: &Known<Gearbox>, standing: &Standing, evidence: &Evidence) -> Vec<String> {
    let counts = standing.counts.iter().flat_map(|found| &found.wrong).map(|wrong| mismatch(known, wrong));
    let turns = standing.turns.iter().filter(|found| !found.fits()).map(|found| turned(known, found));
    let printed = standing.printed.iter().filter(|found| !found.fits);
    let printed = printed.map(|_| printed_words(known, evidence));
    counts.chain(turns).chain(printed).collect()
}

fn mismatch(known: &Known<Gearbox>, wrong: &Mismatch) -> String {
    let at = wrong.at.map_or_else(|| "a gear".to_owned(), |part| format!("the {}", part.name(known.part.layout())));
    match wrong.has {
        Some(has) => format!("{has} teeth where {} were counted: {at}", wrong.counted),
        None => format!("no gear where {} were counted: {at}", wrong.counted),
    }
}

fn turned(known: &Known<Gearbox>, found: &turns::Match) -> String {
    let Some(selected) = found.gears.first().copied().flatten() else { return "no such gear".into() };
    let ratio = match selected {
        Selected::Gear(gear) => known.part.ratio(gear),
        Selected::Reverse => known.part.reverse_ratio(),
        Selected::Neutral => None,
    };
    let ratio = ratio.map_or_else(String::new, |ratio| format!(" is {}", number::show(decimal(size(ratio)), 3)));
    format!("its {}{ratio}, {} % outside the reading", selected, number::show(found.outside * 100.0, 1))
}

fn printed_words(known: &Known<Gearbox>, evidence: &Evidence) -> String {
    let ratios = known.part.ratios();
    if ratios.len() != evidence.printed.len() {
        return format!("{} gears where {} are printed", ratios.len(), evidence.printed.len());
    }
    let worst = known.part.numbers().zip(evidence.printed.iter().zip(ratios));
    let worst = worst.max_by(|(_, (one, ratio)), (_, (other, other_ratio))| one.off(*ratio).total_cmp(&other.off(*other_ratio)));
    worst.map_or_else(String::new, |(gear, (figure, ratio))| {
        format!("its {gear} is {} where {} is printed", number::show(decimal(size(ratio)), 3), figure.shown())
    })
}
