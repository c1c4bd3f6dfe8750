//! The answer in a sentence or two: which gear it is, what its flanks have lost, whether it runs with the mate; or what to measure next.

use std::f64::consts::PI;

use super::answer::{Known, MateFrom, WithMate, mate_problem};
use super::read::Measured;
use super::said;
use crate::gearing::geometry::Cut;
use crate::problem::{Explain, capital};
use crate::questions::alike::listed;
use crate::questions::identify::rows::said::in_words;
use crate::questions::{Source, Station};
use crate::sheet::Said;
use crate::toothform::known::{Candidate, Reading};
use crate::toothform::{CutGear, Pitch, across, pair, span};
use crate::units::common::{in_millimetres, millimetres};
use crate::units::{Length, limits, number};

/// How many gears a sentence names.
const NAMED: usize = 3;

/// What stands beside the question.
pub fn station(source: Source<'_>) -> Station {
    let measured = Measured::of(&source.job.bench);
    let known = Known::of_measured(&measured);
    let said = known.as_ref().and_then(|known| match known.found.fitting.as_slice() {
        [] => None,
        [best] => Some(said::gear(best, measured.hand)),
        [best, others @ ..] => Some(format!("{} or {} more", said::gear(best, measured.hand), others.len())),
    });
    Station::at_bench(said.unwrap_or_else(|| "from a caliper, a micrometer and ink".into()))
}

/// Over how many teeth to measure, and what the print is: what stands below the fields.
pub fn where_to_measure(source: Source<'_>) -> String {
    let measured = Measured::of(&source.job.bench);
    let Some(readings) = measured.readings else {
        return "Count the teeth first: the page then says over how many to measure. For the helix, ink the tips, roll the gear along a straight-edge on paper, and measure the marks against the shaft.".into();
    };
    let best = Known::of_measured(&measured).and_then(|known| known.best().map(|best| (best.gear, best.spanned)));
    let gear = best.map_or_else(|| usual_gear(&measured), |(gear, _)| Some(gear));
    let over = best.and_then(|(_, spanned)| spanned).or_else(|| gear.map(|gear| span::teeth_to_span(&gear)));
    let Some(over) = over else { return String::new() };
    let face = gear.filter(|gear| gear.cut.helix_rad() > 0.0).map(|gear| span::least_face_width(&gear, span::over_teeth(&gear, over)));
    let wide = face.map_or_else(String::new, |face| format!(" The face must be wider than {}.", said::length(source, face)));
    let odd = if readings.teeth.count().is_multiple_of(2) {
        ""
    } else {
        " Over the tips of an odd count, take the largest reading: no tooth lies opposite another."
    };
    format!("Span: jaws flat on the flanks over {over} teeth, then {}, the least of several readings.{wide}{odd}", over + 1)
}

/// A gear of that count cut as is usual, where nothing else is known.
fn usual_gear(measured: &Measured) -> Option<CutGear> {
    let readings = measured.readings?;
    let helix = readings.print.unwrap_or_default();
    let cut = Cut::new(millimetres(2.0), helix, Cut::usual_pressure_angle()).ok()?;
    Some(CutGear { teeth: readings.teeth, cut, shift: 0.0 })
}

/// The answer.
pub fn answer(source: Source<'_>) -> Said {
    let measured = Measured::of(&source.job.bench);
    let Some(known) = Known::of_measured(&measured) else { return Said::of(nothing_yet(&measured)) };
    match known.found.fitting.as_slice() {
        [] => Said::of([contradiction(source, &measured, &known)]),
        [only] => {
            let first = format!("These are {}{}.", said::gear(only, measured.hand), shift_said(only));
            Said::of([first, lost_said(source, only), mate_said(source, &measured, &known, only)])
        }
        [best, ..] => Said::of([several(source, &measured, &known), mate_said(source, &measured, &known, best)]),
    }
}

fn nothing_yet(measured: &Measured) -> Option<String> {
    let over = usual_gear(measured).map(|gear| span::teeth_to_span(&gear))?;
    Some(format!("Measure over the tips, and the span over {over} and {} teeth: three readings name most gears.", over + 1))
}

/// `, profile shift +0.21`.
fn shift_said(candidate: &Candidate) -> String {
    if !candidate.has_shift {
        return String::new();
    }
    if candidate.gear.shift.abs() < 0.015 {
        return ", without profile shift".into();
    }
    format!(", profile shift {}", number::show_signed(candidate.gear.shift, 2))
}

fn lost_said(source: Source<'_>, candidate: &Candidate) -> String {
    if let Some(low) = candidate.cut_down {
        return format!("For teeth so thick its tips are {} low: chipped, turned down, or measured short.", said::length(source, low));
    }
    match candidate.lost {
        Some(lost) if lost > Length::default() => {
            format!("Over the span the flanks have lost {}: wear, and the backlash they were cut with.", said::length(source, lost))
        }
        _ => String::new(),
    }
}

/// All that fit, and what would tell them apart.
fn several(source: Source<'_>, measured: &Measured, known: &Known) -> String {
    let fitting = &known.found.fitting;
    let mut names: Vec<String> = fitting.iter().take(NAMED).map(said::briefly).collect();
    let helix = fitting.first().map_or_else(String::new, |best| said::cut(&best.gear.cut, measured.hand, false));
    let more = fitting.len().saturating_sub(NAMED);
    if more > 0 {
        names.push(format!("{more} more"));
    }
    let next = match &known.next {
        Some(next) => format!("To tell them apart, measure {}.", said::measure(source, next.measure)),
        None => "No reading tells them apart by more than it can be off: use the likeliest, or lay it beside a known gear.".into(),
    };
    format!("{} fit, all {helix}: {}. {next}", capital(&in_words(fitting.len())), listed(&names))
}

/// Nothing fits: which reading contradicts the others.
fn contradiction(source: Source<'_>, measured: &Measured, known: &Known) -> String {
    if let Some((Reading::Centre, candidate)) = &known.found.without {
        return no_such_centre(source, measured, candidate);
    }
    if let Some((of, candidate)) = &known.found.without {
        let name = said::reading(*of);
        let again = match &known.pin {
            Some(why) if *of == Reading::Pins => format!("{}: {}.", capital(&why.what()), why.what_to_do()),
            _ if *of == Reading::Tips => tips_said(source, known, candidate),
            _ => "Read that one again.".into(),
        };
        return format!(
            "These readings contradict one another: without {name} it would be {}. {again}",
            said::gear(candidate, measured.hand)
        );
    }
    let Some(nearest) = known.found.others.first() else {
        return no_such_helix(source, known);
    };
    let off = nearest.worst_reading().map_or_else(String::new, |residual| said::off(source, residual));
    format!(
        "No standard gear fits these readings. The nearest is {}: {off}. Check the count and each unit.",
        said::gear(nearest, measured.hand)
    )
}

/// What a reading over the tips that contradicts all others can come from.
fn tips_said(source: Source<'_>, known: &Known, candidate: &Candidate) -> String {
    let gear = candidate.worn();
    let would_read = across::over_tips(&gear, gear.tip_diameter(), known.readings.face);
    match known.readings.over_tips {
        Some(read) if read < would_read => {
            format!(
                "The tips read {} low: chipped, turned down, or not across the gear. Read them again.",
                said::length(source, would_read - read)
            )
        }
        Some(read) => {
            format!(
                "The tips read {} high: is it the right gear, and the right unit? Read them again.",
                said::length(source, read - would_read)
            )
        }
        None => String::new(),
    }
}

/// No pitch has such a helix: how short a lead can be, or what to check.
fn no_such_helix(source: Source<'_>, known: &Known) -> String {
    let teeth = known.readings.teeth;
    if known.readings.lead.is_none() {
        return format!("No standard gear of {teeth} teeth has a helix as steep as this print: check the print and the count.");
    }
    // L = π z mₙ / sin β: the finest pitch at the steepest helix.
    let finest_mm = Pitch::all().map(|pitch| in_millimetres(pitch.module())).fold(f64::INFINITY, f64::min);
    let least_mm = PI * f64::from(teeth.count()) * finest_mm / limits::HELIX.greatest.to_radians().sin();
    let least = said::length(source, millimetres(least_mm));
    format!("No standard gear of {teeth} teeth has so short a lead: the shortest is {least}. Check the lead and the count.")
}

/// The gear is known, but not with that mate at that centre distance: the nearest that would do.
fn no_such_centre(source: Source<'_>, measured: &Measured, candidate: &Candidate) -> String {
    let gear = said::gear(candidate, measured.hand);
    let Some((teeth, centre)) = measured.mate.teeth.zip(measured.mate.centre) else { return format!("These are {gear}.") };
    let mate = CutGear { teeth, ..candidate.worn() }.with_shift(0.0);
    let wants = pair::tightest_centre([candidate.worn(), mate]);
    let wants =
        wants.map_or_else(String::new, |wants| format!(": {} would do, the mate without profile shift", said::length(source, wants)));
    format!("These are {gear}, but no profile shift brings them to a {teeth}-tooth mate at {}{wants}.", said::length(source, centre))
}

fn mate_said(source: Source<'_>, measured: &Measured, known: &Known, best: &Candidate) -> String {
    if let Some((why, tightest)) = mate_problem(measured, best) {
        let wants = tightest
            .map_or_else(String::new, |centre| format!(": without profile shift of the mate they want {}", said::length(source, centre)));
        return format!("With the mate it cannot run: {}{wants}.", why.what());
    }
    known.with_mate.as_ref().map_or_else(String::new, |with| with_said(source, known, with))
}

fn with_said(source: Source<'_>, known: &Known, with: &WithMate) -> String {
    let teeth = with.mate.teeth;
    if with.binds(known.readings.give_or_take) {
        let wants = with
            .tightest
            .map_or_else(String::new, |centre| format!(": it wants a centre distance of {} at least", said::length(source, centre)));
        return format!("With the {teeth}-tooth mate it binds{wants}.");
    }
    let play = said::length(source, with.meshing.backlash.around.max(Length::default()));
    match with.from {
        MateFrom::Span => format!("With the {teeth}-tooth mate it has {play} of backlash."),
        MateFrom::Backlash => format!("The {teeth}-tooth mate then has a profile shift of {}.", number::show_signed(with.mate.shift, 2)),
        MateFrom::CutToMatch => format!("With a {teeth}-tooth mate cut to match and unworn it has {play} of backlash."),
    }
}
