//! The road check of a setup: readings typed, and what they say.

use crate::job::SetupField;
use crate::questions::entries::entry;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece};
use crate::speedometer::Verdict;
use crate::speedometer::road_check::RoadCheck;
use crate::units::{Measured, Velocity, number};

const FIT: &str = "least squares (any textbook of statistics); what counts as an offset is common practice, no published source";

/// The readings and what they say.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match &analysis.speedo().road_check {
        Some(check) => found(source, analysis, check),
        None => Cell::line([Piece::words("dial and true speed, or 60 in 63 s to the mile")]),
    };
    entry(source, analysis, cell, SetupField::RoadCheck, "road check: dial and true speeds")
}

fn found(source: Source<'_>, analysis: &Analysis, check: &RoadCheck) -> Cell {
    let unit = Velocity::usual(source.reader.units);
    let figure = Figure::percent("road_check.error", check.ratio - 1.0, 1);
    let filled = format!("Σ dial × true ÷ Σ true² = {}", number::show(check.ratio_through_zero, 4));
    let figure = figure.by("dial = ratio × true + offset, by least squares", filled, FIT);
    let mut line = vec![figure.into(), Piece::words(if check.ratio < 1.0 { "of true, slow" } else { "of true, fast" })];
    if check.offset != Velocity::default() {
        line.extend([Figure::quantity("road_check.offset", &check.offset, unit, 1).into(), Piece::words("more at every speed")]);
    }
    let cell = Cell::line(line).and([verdict(check)]);
    let cell = cell.and_maybe(analysis.speedo().disagrees.map(disagrees));
    if analysis.setup.speedo.train.is_none() {
        return cell.and([Piece::words("type the gears fitted to see what mends it")]);
    }
    cell
}

/// What the typed constant makes of the same car is another thing: the road counts.
fn disagrees(over: f64) -> Piece {
    let apart = number::show(100.0 * (over - 1.0).abs(), 0);
    let more = if over > 1.0 { "more" } else { "less" };
    Piece::caution(format!(
        "the dial as typed, with this axle and tyre, would show {apart} % {more}: one of them is not what is typed; the road check counts"
    ))
}

fn verdict(check: &RoadCheck) -> Piece {
    match check.verdict {
        Verdict::True => Piece::good("reads true as far as these readings show"),
        Verdict::Ratio => Piece::words("same error at every speed: change the driven gear"),
        Verdict::Offset => Piece::caution("too much or too little by the same amount at every speed: set the needle, gears do not mend it"),
        Verdict::RatioAndOffset => Piece::caution("a share and a steady amount: set the needle first, then change the gears"),
        Verdict::Unsteady => Piece::caution(unsteady(check)),
        Verdict::OneSpeed => Piece::words("add a reading at another speed to rule out a bent needle"),
    }
}

fn unsteady(check: &RoadCheck) -> String {
    let places = check.fell_back.iter().map(|at| (at + 1).to_string()).collect::<Vec<_>>().join(", ");
    if places.is_empty() {
        "the readings do not lie on a line: a sticking or swinging dial, or a slip in writing; read it again".into()
    } else {
        format!("the dial fell back at reading {places}: it sticks or slips; read it again")
    }
}
