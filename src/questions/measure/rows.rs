//! The rows of Measure a gear: the gears that fit and those that do not, the next measurement, what the flanks have lost, the mate.

mod circles;
mod mate;

use super::answer::Known;
use super::read::Measured;
use super::said;
use crate::problem::{Explain, capital};
use crate::questions::Source;
use crate::questions::deciding::few;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::toothform::known::{Candidate, Reading};
use crate::toothform::{pins, span};
use crate::units::common::in_millimetres;
use crate::units::number;

/// How many of the gears that fit decide.
const FITTING: usize = 3;
/// Source of spans.
pub(super) const SPAN: &str = "DIN 3960; ISO 21771:2007";

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut all = rows(source);
    let decides =
        |key: &str| ["problem-", "doubt-", "fit-", "not-", "next", "lost", "mate", "span-at"].iter().any(|begins| key.starts_with(begins));
    all.retain(|row| decides(&row.key) && !row.waits());
    few(all, None)
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let measured = Measured::of(&source.job.bench);
    let mut rows: Vec<Row> = (1..)
        .zip(measured.problems.iter().take(2))
        .map(|(at, problem)| Row::of_one(format!("problem-{at}"), "Cannot be used", Cell::absent(problem.sentence())))
        .collect();
    let Some(known) = Known::of_measured(&measured) else { return rows };
    rows.extend(doubts(source, &known));
    rows.extend(gears(source, &measured, &known));
    rows.extend(next_row(source, &known));
    let Some(best) = known.best() else { return rows };
    rows.extend(lost_row(source, best));
    rows.extend(mate::deciding(source, &measured, &known));
    rows.extend(span_at(source, &known, best));
    rows.extend(residual_row(source, best));
    rows.extend(circles::rows(source, &measured, best));
    rows.extend(mate::rows(source, &known));
    rows
}

/// What makes a reading doubtful though a gear fits: a pin in the wrong place, jaws off the flanks, a narrow face.
fn doubts(source: Source<'_>, known: &Known) -> Vec<Row> {
    let mut says: Vec<String> = known.pin.iter().map(|why| format!("{}: {}", why.what(), why.what_to_do())).collect();
    if let Some((best, over)) = known.best().and_then(|best| Some((best, best.spanned?))) {
        says.extend(span_doubts(source, known, best, over));
    }
    (1..)
        .zip(says)
        .map(|(at, says)| Row::of_one(format!("doubt-{at}"), "Measured in its place?", Cell::line([Piece::caution(says)])))
        .collect()
}

fn span_doubts(source: Source<'_>, known: &Known, best: &Candidate, over: u16) -> Vec<String> {
    let worn = best.worn();
    let read = span::over_teeth(&worn, over);
    let touches = span::contact_diameter(&worn, read);
    let better = span::teeth_to_span(&worn);
    let mut says = Vec::new();
    if touches >= best.tip.unwrap_or_else(|| worn.tip_diameter()) {
        says.push(format!("over {over} teeth the jaws touch beyond the tips: measure over {better}"));
    } else if in_millimetres(read) <= 0.0 || touches <= worn.root_diameter() {
        says.push(format!("over {over} teeth the jaws touch below the flanks: measure over {better}"));
    }
    let least = span::least_face_width(&worn, read);
    if let Some(face) = known.readings.face.filter(|face| *face < least) {
        let (face, least) = (said::length(source, face), said::length(source, least));
        says.push(format!("a face of {face} is too narrow for the span over {over} teeth, which wants {least}: measure over balls"));
    }
    says
}

fn gears(source: Source<'_>, measured: &Measured, known: &Known) -> Vec<Row> {
    let fitting = (1..).zip(known.found.fitting.iter().take(FITTING)).map(|(at, candidate)| {
        let line = [shift_figure(source, at, candidate).into(), Piece::words("profile shift"), Piece::good(worst_said(source, candidate))];
        Row::of_one(format!("fit-{at}"), said::gear(candidate, measured.hand), Cell::line(line))
    });
    let room = if known.found.fitting.len() > 1 { 0 } else { 2 };
    let others = (1..).zip(known.found.others.iter().take(room)).map(|(at, candidate)| {
        let off = candidate.worst_reading().map_or_else(String::new, |residual| said::off(source, residual));
        Row::of_one(format!("not-{at}"), said::gear(candidate, measured.hand), Cell::line([Piece::words(format!("no: {off}"))]))
    });
    fitting.chain(others).collect()
}

/// `fits within 0.0003 in`: the reading that is farthest off, where any is held against another.
fn worst_said(source: Source<'_>, candidate: &Candidate) -> String {
    let held = candidate.residuals.iter().filter(|residual| matches!(residual.of, Reading::BasePitch | Reading::Pins | Reading::Print));
    held.max_by(|a, b| a.times.total_cmp(&b.times)).map_or_else(|| "fits".into(), |worst| format!("fits: {}", said::off(source, worst)))
}

fn shift_figure(source: Source<'_>, at: usize, candidate: &Candidate) -> Figure {
    let mut figure = Figure::number(format!("measure.fit_{at}.profile_shift"), candidate.gear.shift, 3);
    figure.shown = number::show_signed(candidate.gear.shift, 3);
    let gear = &candidate.gear;
    if let Some(tip) = candidate.tip.filter(|_| candidate.lost.is_none_or(|lost| in_millimetres(lost) > 0.0)) {
        let [tip, reference, module] = [tip, gear.reference_diameter(), gear.cut.normal_module()].map(|length| said::bare(source, length));
        let filled = format!("({tip} − {reference}) ÷ (2 × {module}) − {} = {}", number::show(gear.cut.addendum(), 1), figure.shown);
        return figure.by("x = (tip diameter − pitch diameter) ÷ (2 × module) − addendum", filled, "ISO 21771:2007; tips of full height");
    }
    if let Some(over) = candidate.spanned {
        let without = span::over_teeth(&gear.with_shift(0.0), over);
        let more = span::thinning(gear, 1.0);
        let [read, without, more] = [span::over_teeth(gear, over), without, more].map(|length| said::bare(source, length));
        let filled = format!("({read} − {without}) ÷ {more} = {}", figure.shown);
        return figure.by("x = (span − span without profile shift) ÷ (2 × module × sin of the pressure angle)", filled, SPAN);
    }
    figure
}

fn next_row(source: Source<'_>, known: &Known) -> Option<Row> {
    let next = known.next.as_ref()?;
    let cell = Cell::line([Piece::words(format!("{} would read", said::measure(source, next.measure)))]);
    let each = (1..).zip(known.found.fitting.iter().zip(&next.would_read));
    let cell = each.fold(cell, |cell, (at, (candidate, read))| {
        let figure = said::figure(source, &format!("next.{at}"), *read);
        cell.and([figure.into(), Piece::words(format!("for {}", said::briefly(candidate)))])
    });
    Some(Row::of_one("next", "Measure next", cell))
}

fn lost_row(source: Source<'_>, best: &Candidate) -> Option<Row> {
    let lost = best.lost?;
    let over = best.spanned;
    let figure = said::figure(source, "flanks_lost", lost);
    let gear = &best.gear;
    let cell = match over {
        Some(over) => {
            let whole = span::over_teeth(gear, over);
            let [whole, now] = [whole, span::over_teeth(&best.worn(), over)].map(|length| said::bare(source, length));
            let filled = format!("{whole} − {now} = {}", figure.text());
            let figure = figure.by(format!("lost = span over {over} teeth of a gear as high as this − span as it is"), filled, SPAN);
            Cell::line([figure.into(), Piece::words("over the span, wear and the backlash it was cut with")])
        }
        None => Cell::line([figure.into(), Piece::words("off the thickness, wear and the backlash it was cut with")]),
    };
    let cell = cell.and_maybe(
        best.cut_down
            .map(|low| Piece::caution(format!("the tips are {} low: chipped, turned down, or measured short", said::length(source, low)))),
    );
    Some(Row::of_one("lost", "Flanks have lost", cell))
}

/// Over how many teeth the span went, what it would read unworn, and where the jaws touch.
fn span_at(source: Source<'_>, known: &Known, best: &Candidate) -> Option<Row> {
    let over = best.spanned.unwrap_or_else(|| span::teeth_to_span(&best.gear));
    let whole = span::over_teeth(&best.gear, over);
    let touches = span::contact_diameter(&best.gear, whole);
    let told = known.readings.spans.iter().any(Option::is_some);
    let label = if told { format!("Span over {over} teeth, unworn") } else { format!("Span over {over} teeth would read") };
    let line = [
        said::figure(source, "span_unworn", whole).into(),
        Piece::words("touching on a circle of"),
        said::figure(source, "span_touches", touches).small().into(),
    ];
    best.has_shift.then(|| Row::of_one("span-at", label, Cell::line(line)))
}

/// What every reading is off against the likeliest.
fn residual_row(source: Source<'_>, best: &Candidate) -> Option<Row> {
    let said: Vec<String> = best.residuals.iter().map(|residual| said::off(source, residual)).collect();
    let cell = said.into_iter().fold(Cell::default(), |cell, said| cell.and([Piece::words(capital(&said))]));
    (!best.residuals.is_empty()).then(|| Row::of_one("readings", "Readings against the likeliest", cell))
}

/// The usual pin of a gear and what it would read.
fn pins_row(source: Source<'_>, best: &Candidate) -> Option<Row> {
    let gear = best.worn();
    let pin = pins::usual_pin(&gear);
    let laid = pins::lay(&gear, pin).ok()?;
    let what = if gear.cut.helix_rad() > 0.0 && !gear.teeth.count().is_multiple_of(2) { "balls" } else { "pins" };
    let line = [
        said::figure(source, "over_usual_pins", laid.over).into(),
        Piece::words(format!("over two {what} of {}", said::length(source, pin))),
    ];
    Some(Row::of_one("usual-pins", "Over pins, as it is", Cell::line(line)))
}
