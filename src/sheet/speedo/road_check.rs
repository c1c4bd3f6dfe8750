//! The road check of a setup: readings typed, and what they say.

use super::super::typed::entry;
use super::super::{Cell, Figure, Piece, Source};
use crate::analysis::Analysis;
use crate::job::SetupField;
use crate::speedometer::road_check::RoadCheck;
use crate::speedometer::{SpeedoGear, Verdict};
use crate::units::{Measured, Velocity, number};

/// Source of the fit.
const FIT: &str = "least squares (any textbook of statistics); what counts as an offset is common practice, no published source";

/// The readings and what they say.
pub(super) fn cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match &analysis.speedo.road_check {
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
    cell.and([verdict(check)]).and_maybe(mend(analysis, check))
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

/// The driven count that mends a share, with the drive gear that is fitted.
fn mend(analysis: &Analysis, check: &RoadCheck) -> Option<Piece> {
    let train = analysis.setup.speedo.train.filter(|_| check.gears_mend_it())?;
    let wanted = check.driven_wanted(train.driven());
    let whole = (SpeedoGear::LEAST..=SpeedoGear::GREATEST).rev().find(|teeth| f64::from(*teeth) <= wanted)?;
    Some(Piece::words(format!("fit {whole} driven teeth in place of {} ({} would be exact)", train.driven(), number::show(wanted, 2))))
}
