//! The answer in a sentence or two: how it fits cold and hot, whether that is what is wanted, and what to do.

use super::answer::{Fit, Turn};
use super::read::Seated;
use super::rows::{range, said, slip_said};
use crate::fits::seat::{Stands, Wanted};
use crate::problem::capital;
use crate::questions::{Source, Station, warmth};
use crate::sheet::Said;
use crate::units::Length;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let fit = Fit::of(&Seated::of(&source.job.bench));
    Station::at_bench(
        fit.filter(Fit::is_of_one_seat).map_or_else(|| "a bore and its shaft".into(), |fit| of_clearance(source, fit.clearance)),
    )
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let seated = Seated::of(&source.job.bench);
    let Some(fit) = Fit::of(&seated) else { return Said::of(half_said(source, &seated)) };
    if !fit.is_of_one_seat() {
        return Said::new(capital(&slip_said(source, &fit)));
    }
    let [_, working] = seated.temperatures;
    let warm = fit.warm.map_or_else(String::new, |warm| format!(", {} at {}", of_clearance(source, warm), warmth::said(source, working)));
    let first = format!("{} at the bench{warm}.", capital(&of_clearance(source, fit.clearance)));
    Said::of([first, wanted_said(source, &seated, &fit), hot_said(&fit), assembly_said(source, &fit)])
}

/// `0.0008 in of clearance`, `0.0012 in of interference`.
fn of_clearance(source: Source<'_>, clearance: Length) -> String {
    let what = if clearance < Length::default() { "interference" } else { "clearance" };
    format!("{} of {what}", said(source, clearance.abs()))
}

/// What is wanted, in words: `H7/g6 wants 0.0003 to 0.0016 in of clearance`.
fn wants(source: Source<'_>, wanted: &Wanted, [least, greatest]: [Length; 2]) -> String {
    let nothing = Length::default();
    let ends = match (least < nothing, greatest > nothing) {
        (false, _) => format!("{} of clearance", range(source, [least, greatest])),
        (true, false) => format!("{} of interference", range(source, [-greatest, -least])),
        (true, true) => format!("{} of interference to {} of clearance", said(source, -least), said(source, greatest)),
    };
    match wanted {
        Wanted::Code(code) => format!("{} wants {ends}", code.written()),
        Wanted::Range(_) => format!("wanted is {ends}"),
    }
}

fn wanted_said(source: Source<'_>, seated: &Seated, fit: &Fit) -> String {
    let Some(((wanted, _), (ends, stands))) = seated.wanted.as_ref().zip(fit.wanted) else {
        return if seated.problems.is_empty() { "Type the fit wanted to judge it.".into() } else { String::new() };
    };
    let wants = capital(&wants(source, wanted, [ends.least, ends.greatest]));
    match stands {
        Stands::Inside => format!("{wants}: this pair is inside it."),
        Stands::TooTight(by) => format!(
            "{wants}: it is {} too tight. Bring the bore to {}, or the shaft to {}.",
            said(source, by),
            range(source, fit.seat.bores_for(ends)),
            range(source, fit.seat.shafts_for(ends))
        ),
        Stands::TooLoose(by) => format!(
            "{wants}: it is {} too loose. Fit a shaft of {}, or sleeve the bore.",
            said(source, by),
            range(source, fit.seat.shafts_for(ends))
        ),
    }
}

fn hot_said(fit: &Fit) -> String {
    match fit.turns_when_hot() {
        Some(Turn::Grips) => "Hot it grips.",
        Some(Turn::Loose) => "Hot it comes loose.",
        None => "",
    }
    .into()
}

fn assembly_said(source: Source<'_>, fit: &Fit) -> String {
    let Some(assembly) = fit.assembly else { return String::new() };
    let [bore, _] = assembly.materials;
    format!("The shaft drops in with the {} at {}.", bore.word(), warmth::said(source, assembly.oven))
}

/// What can be said with one of the two measured.
fn half_said(source: Source<'_>, seated: &Seated) -> Option<String> {
    let (wanted, ends) = seated.wanted.as_ref()?;
    let wants = capital(&wants(source, wanted, [ends.least, ends.greatest]));
    match (&seated.bore, &seated.shaft) {
        (Some(bore), None) => {
            let shafts = [bore.mean() - ends.greatest, bore.mean() - ends.least];
            Some(format!("{wants}: this bore takes a shaft of {}.", range(source, shafts)))
        }
        (None, Some(shaft)) => {
            let bores = [shaft.mean() + ends.least, shaft.mean() + ends.greatest];
            Some(format!("{wants}: this shaft takes a bore of {}.", range(source, bores)))
        }
        _ => None,
    }
}
