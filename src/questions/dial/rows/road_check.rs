//! The road check of a setup: readings typed, and what they say.

use super::{READS, where_it_lies};
use crate::gearing::teeth::decimal;
use crate::job::SetupField;
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::entries::entry;
use crate::sheet::{Cell, Figure, Piece};
use crate::speedometer::road_check::RoadCheck;
use crate::speedometer::{Candidate, Train, Verdict};
use crate::units::{Measured, Velocity, number};

/// Source of the fit.
const FIT: &str = "least squares (any textbook of statistics); what counts as an offset is common practice, no published source";

/// The readings and what they say.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match &analysis.speedo().road_check {
        Some(check) => found(source, analysis, check),
        None => Cell::line([Piece::words("dial and true speed at steady speeds, such as 60 57; 40 38.2; 60 in 63 s to the mile")]),
    };
    entry(source, analysis, cell, SetupField::RoadCheck, "road check: dial and true speeds")
}

fn found(source: Source<'_>, analysis: &Analysis, check: &RoadCheck) -> Cell {
    let unit = Velocity::usual(source.reader.units);
    let share = check.ratio - 1.0;
    let figure = Figure::percent("road_check.error", share, 1);
    let filled = format!("Σ dial × true ÷ Σ true² = {}", number::show(check.ratio_through_zero, 4));
    let figure = figure.by("dial = ratio × true + offset, by least squares", filled, FIT);
    let offset = Figure::quantity("road_check.offset", &check.offset, unit, 1);
    let cell = Cell::line([figure.into(), Piece::words("of true"), offset.into(), Piece::words("whatever the speed")]);
    mended(source, analysis, check, cell.and([verdict(check)]))
}

fn verdict(check: &RoadCheck) -> Piece {
    match check.verdict {
        Verdict::True => Piece::good("reads true as far as these readings show"),
        Verdict::Ratio => Piece::caution("a steady share: gears, tyre or axle, so gears mend it"),
        Verdict::Offset => Piece::caution("a steady amount: a bent needle or a dial off its zero, so gears do not mend it"),
        Verdict::RatioAndOffset => Piece::caution("a share and a steady amount: mend the dial first, then the gears"),
        Verdict::Unsteady => Piece::caution(unsteady(check)),
        Verdict::OneSpeed => Piece::words("one speed only: a second, well apart, tells a share from a steady amount"),
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

/// The driven count that mends a share with the drive gear that is fitted, and the best pairs of the shelf with what they leave.
fn mended(source: Source<'_>, analysis: &Analysis, check: &RoadCheck, cell: Cell) -> Cell {
    if !check.gears_mend_it() {
        return cell;
    }
    let Some(train) = analysis.setup.speedo.train else {
        return cell.and([Piece::words("type the gears fitted to see which pair mends it")]);
    };
    let wanted = number::show(check.driven_wanted(train.driven()), 2);
    let mut cell = cell.and([Piece::words(format!("{wanted} driven teeth on the {}-tooth drive would be exact", train.drive()))]);
    for (at, candidate) in analysis.speedo().mending.iter().enumerate() {
        cell = cell.and(mending_line(source, analysis, check, (train, candidate), at + 1));
    }
    cell
}

/// `fit 6 drive, 20 driven: 0.4 % left, Curlew, in stock`.
fn mending_line(
    source: Source<'_>,
    analysis: &Analysis,
    check: &RoadCheck,
    (fitted, candidate): (Train, &Candidate),
    place: usize,
) -> Vec<Piece> {
    let [before, now] = [fitted, candidate.train].map(|train| number::show(decimal(train.ratio()), 4));
    let filled = format!("{} × {now} ÷ {before} − 1 = {} %", number::show(check.ratio, 4), number::show(100.0 * candidate.error, 1));
    let figure = Figure::percent(&format!("road_check.left_{place}"), candidate.error, 1).small();
    let figure = figure.by("error left = ratio found × new drive ÷ driven, over that fitted, − 1", filled, READS);
    vec![
        Piece::words(format!("fit {} drive, {} driven:", candidate.train.drive(), candidate.train.driven())),
        figure.into(),
        Piece::words(format!("left, {}", where_it_lies(source, analysis, candidate))),
    ]
}
