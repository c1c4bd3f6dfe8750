//! Each pair of a mixture, whether it can mesh, and the ratios that come of it.

use super::answer::{fits_first, mixed, names};
use crate::catalogue::case::CaseFit;
use crate::gearing::Mesh;
use crate::gearing::mix::{Fit, Mixed, Pair, Place};
use crate::gearing::teeth::decimal;
use crate::job::Gearbox;
use crate::problem::{Explain, capital};
use crate::questions::alike::listed;
use crate::questions::identify::rows::said::in_words;
use crate::questions::identify::rows::sets::ratios;
use crate::questions::{Source, Station, case};
use crate::sheet::said::mark;
use crate::sheet::{Cell, Figure, Piece, Row, Said};
use crate::units::number;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let said = match mixed(&source.job.bench, source.shelves.known_sets) {
        Some(Ok(mixed)) if mixed.can_mesh() => "every pair can mesh",
        Some(Ok(_)) => "not all pairs can mesh",
        _ => "parts of several sets",
    };
    Station::at_bench(said)
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    match mixed(&source.job.bench, source.shelves.known_sets) {
        None => Said::default(),
        Some(Err(why)) => Said::new(format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()))),
        Some(Ok(mixed)) => Said::of([judged(&mixed), ratios_said(&mixed), case_said(source, &mixed)]),
    }
}

fn judged(mixed: &Mixed) -> String {
    let apart: Vec<&Pair> = mixed.pairs.iter().filter(|pair| !pair.fit.can_mesh()).collect();
    let shifted: Vec<String> = mixed.pairs.iter().filter(|pair| pair.fit != Fit::Shares).map(|pair| pair_name(pair.place)).collect();
    match apart.as_slice() {
        [] if shifted.is_empty() => "Every pair can mesh.".into(),
        [] => format!("Every pair can mesh, but {} only if the gears were cut for it.", listed(&shifted)),
        [pair] => format!("{}: {}.", capital(&pair.what()), pair.what_to_do()),
        pairs => {
            let names: Vec<String> = pairs.iter().map(|pair| pair_name(pair.place)).collect();
            format!("{} pairs cannot mesh: {}.", capital(&in_words(pairs.len())), listed(&names))
        }
    }
}

fn ratios_said(mixed: &Mixed) -> String {
    let shown: Vec<String> = mixed.gearbox.ratios().iter().map(|ratio| number::show(decimal(*ratio).abs(), 2)).collect();
    let would = if mixed.can_mesh() { "The ratios are" } else { "The ratios would be" };
    format!("{would} {}.", shown.join(", "))
}

/// Whether they go into A's case, where a setup has gears.
fn case_said(source: Source<'_>, mixed: &Mixed) -> String {
    match fits_first(source, mixed) {
        Some(CaseFit::Named { .. }) => format!("They go into {}’s case.", mark(0)),
        Some(CaseFit::BySums { .. }) => format!("They go into {}’s case by their tooth sums.", mark(0)),
        Some(CaseFit::No(misfit)) => format!("They do not go into {}’s case ({}).", mark(0), misfit.reason()),
        Some(CaseFit::Unknown) | None => String::new(),
    }
}

/// The rows: each pair, then the ratios, which a setup can take where every pair can mesh.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let bench = &source.job.bench;
    match mixed(bench, source.shelves.known_sets) {
        None => Vec::new(),
        Some(Err(why)) => {
            let said = format!("{}. {}.", capital(&why.what()), capital(&why.what_to_do()));
            vec![Row::of_one("problem", "Cannot be used", Cell::absent(said))]
        }
        Some(Ok(mixed)) => {
            let cell = Cell::line(ratios("mesh", &mixed.gearbox));
            let cell = if mixed.can_mesh() { cell.offering(Gearbox::counted(name(names(bench)), &mixed.gearbox).as_set()) } else { cell };
            let fit = fits_first(source, &mixed).map(|fit| Row::of_one("case", "A’s case", case::told(&fit)));
            mixed.pairs.iter().map(pair_row).chain(fit).chain([Row::of_one("ratios", "Ratios", cell)]).collect()
        }
    }
}

fn pair_row(pair: &Pair) -> Row {
    let Mesh { driver, driven } = pair.mesh;
    let key = match pair.place {
        Place::Constant => "constant".to_owned(),
        Place::Gear(gear) => format!("gear_{}", gear.number()),
    };
    let sum = Figure::number(format!("mesh.{key}_sum"), f64::from(pair.mesh.sum()), 0);
    let sum = sum.by("sum = driving teeth + driven teeth", format!("{driver} + {driven} = {}", pair.mesh.sum()), "plain counting");
    let verdict = match pair.fit {
        Fit::Shares => Piece::good(format!("as the case’s {}", pair.wanted_sum)),
        Fit::WithShift(_) => Piece::caution(format!("the case takes {}: {}", pair.wanted_sum, pair.what_to_do())),
        _ => Piece::stop(format!("the case takes {}: {}", pair.wanted_sum, pair.what_to_do())),
    };
    let cell = Cell::line([Piece::words(format!("{driver} drives {driven}, sum")), sum.into(), verdict]);
    let label = if pair.place == Place::Constant { "Constant pair".into() } else { pair_name(pair.place) };
    Row::of_one(key.replace('_', "-"), label, cell)
}

fn pair_name(place: Place) -> String {
    match place {
        Place::Constant => "the constant pair".into(),
        Place::Gear(gear) => gear.to_string(),
    }
}

/// What the mixture is called: by the sets it comes from.
fn name(sets: [&str; 3]) -> String {
    let mut once: Vec<&str> = Vec::new();
    for set in sets {
        if !once.contains(&set) {
            once.push(set);
        }
    }
    if once.len() == 1 { once.concat() } else { format!("Mixed: {}", once.join(" + ")) }
}
