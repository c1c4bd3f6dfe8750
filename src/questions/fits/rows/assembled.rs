//! What a seat wants to be made or put together: the size of reamer that is sold, the force of a press fit, a set of needles.

use super::{bare, figure, said};
use crate::fits::drills::{self, Drill};
use crate::fits::needles::NeedleSet;
use crate::fits::press::{FRICTION, Press};
use crate::fits::seat::Stands;
use crate::questions::fits::answer::Fit;
use crate::questions::fits::read::Seated;
use crate::questions::{Source, small};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::millimetres;
use crate::units::{Length, Pressure, System, number, unit};

/// A bush on a shaft is given a thousandth of its diameter, never less than a thousandth of an inch (common practice, no published source).
const BUSH_SHARE: f64 = 0.001;
/// The room of a gear on its needles: 0.015 to 0.073 mm (a maker's manual).
const NEEDLE_ROOM_MM: [f64; 2] = [0.015, 0.073];
/// Source of a press fit.
const LAME: &str = "Shigley, Mechanical Engineering Design, equations 7-39 and 7-49 (Lamé), the shaft taken as solid";

/// The rows, as far as something is asked of them.
pub(super) fn rows(source: Source<'_>, seated: &Seated, fit: Option<&Fit>) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(fit.and_then(|fit| press_row(source, seated, fit)));
    rows.extend(fit.and_then(|fit| reamer_row(source, fit)));
    rows.extend(bush_row(source, seated));
    rows.extend(needle_row(source, seated));
    rows
}

fn press_row(source: Source<'_>, seated: &Seated, fit: &Fit) -> Option<Row> {
    let (materials, [outside, length]) = (seated.materials?, seated.press?);
    let [least, _] = fit.seat.clearances();
    let diameter = fit.seat.shaft.mean();
    let press = Press { interference: -least, diameter, outside, length, materials };
    if least >= Length::default() {
        return None;
    }
    let Some((pressure, force)) = press.pressure().zip(press.force()) else {
        return Some(Row::of_one("press", "To press in", Cell::absent("the outside is not larger than the bore: measure it again")));
    };
    let shown = source.quantity("fits.press_force", &force, 0).big();
    let pressing = Figure::quantity("fits.press_pressure", &pressure, of_metal(source), 0);
    let filled = format!(
        "π × {} × {} × {} × {} = {}",
        number::show(FRICTION, 2),
        pressing.text(),
        bare(source, length),
        bare(source, diameter),
        shown.text()
    );
    let shown = shown.by("force = π × friction × pressure × length × diameter", filled, LAME);
    let words = Piece::words("at the end of the stroke, dry steel up to twice that;");
    let cell = Cell::line([shown.into(), words, pressing.into(), Piece::words("between the parts")]);
    Some(Row::of_one("press", "To press in", cell.and([Piece::words("guard and glasses; press on the ring that is tight")])))
}

/// Pressures in metal are read in psi or N/mm².
fn of_metal(source: Source<'_>) -> &'static crate::units::Unit<Pressure> {
    if source.reader.units == System::Inch { &unit::PSI } else { &unit::N_MM2 }
}

/// The reamer that is sold next to the bore wanted.
fn reamer_row(source: Source<'_>, fit: &Fit) -> Option<Row> {
    let (range, stands) = fit.wanted?;
    if !matches!(stands, Stands::TooTight(_)) {
        return None;
    }
    Some(Row::of_one("reamer", "Reamer", sold(source, fit.seat.bores_for(range))))
}

/// The size in a range that is sold, or those next to it.
fn sold(source: Source<'_>, [least, greatest]: [Length; 2]) -> Cell {
    let is_metric = source.reader.units == System::Metric;
    let [_, above] = drills::next_in(least, is_metric);
    if let Some(drill) = above.filter(|drill| drill.diameter <= greatest) {
        return Cell::line([Piece::words(named(source, &drill)), Piece::good("is sold and lies inside")]);
    }
    let [below, _] = drills::next_in(least, is_metric);
    let [_, above] = drills::next_in(greatest, is_metric);
    let next = |drill: Option<Drill>| drill.map_or_else(|| "none".to_owned(), |drill| named(source, &drill));
    Cell::line([Piece::words(format!(
        "no size sold lies inside: next below {}, next above {}; an adjustable reamer or a hone does it",
        next(below),
        next(above)
    ))])
}

fn named(source: Source<'_>, drill: &Drill) -> String {
    format!("{}, {}", drill.name, said(source, drill.diameter))
}

/// The bore of a bush for a shaft, where no other fit is wanted.
fn bush_row(source: Source<'_>, seated: &Seated) -> Option<Row> {
    if seated.wanted.is_some() || seated.bore.is_some() || seated.needle.is_some() {
        return None;
    }
    let shaft = seated.shaft.as_ref()?.mean();
    let room = (shaft * BUSH_SHARE).max(unit::THOU.of(1.0));
    let bore = figure(source, "bush_bore", shaft + room).big();
    let filled = format!("{} + {} = {}", bare(source, shaft), bare(source, room), bore.text());
    let bore = bore.by("bore = shaft + a thousandth of it, at least 0.001 in", filled, "common practice, no published source");
    let cell = Cell::line([bore.into(), Piece::words("once it is pressed in: it shrinks in its hole, so ream it last")]);
    Some(Row::of_one("bush", "A bush for this shaft", cell))
}

fn needle_row(source: Source<'_>, seated: &Seated) -> Option<Row> {
    let needle = seated.needle?;
    let Some((shaft, bore)) = seated.shaft.as_ref().zip(seated.bore.as_ref()) else {
        return Some(Row::of_one("needles", "Needles", Cell::needed("needs the shaft they run on and the bore around them")));
    };
    let set = NeedleSet { shaft: shaft.mean(), bore: bore.mean(), needle };
    let room = figure(source, "needle_room", set.clearance()).big();
    let (digits, [around, thick]) = (small::decimals(source), [set.shaft, needle].map(|length| small::in_usual(source, length)));
    let worked = small::worked(source, set.bore).minus(around, digits).minus(2.0, 0).times(thick, digits);
    let room = room.worked("room = bore − shaft − twice the needle", worked, "plain subtraction");
    let [least, greatest] = NEEDLE_ROOM_MM.map(millimetres);
    let verdict = if set.clearance() < Length::default() {
        Piece::stop(format!(
            "they do not go in: 4 mm is {} fatter than 5/32 in",
            said(source, unit::MM.of(4.0) - unit::INCH.of(5.0 / 32.0))
        ))
    } else if set.clearance() < least {
        Piece::caution("less room than is usual")
    } else if set.clearance() > greatest {
        Piece::caution("more room than is usual: shaft, bore or needles are worn, or needles of the other unit")
    } else {
        Piece::good("as is usual for a gear on needles")
    };
    let most = set.most();
    let many = seated.needles.unwrap_or(most);
    let gap = figure(source, "needle_gap", set.gap(many));
    let count = Figure::number("fits.needles_most", f64::from(most), 0);
    let full = [
        count.into(),
        Piece::words("go round;"),
        Piece::words(format!("with {many} in a row")),
        gap.into(),
        Piece::words("of gap is left"),
    ];
    let wrong = (many > most).then(|| Piece::stop("so many do not go into a row"));
    let few = (many < most).then(|| Piece::caution("a row that is not full lets them tip: count again, or a spacer is missing"));
    let cell = Cell::line([room.into(), Piece::words("of room across")]).and([verdict]).and(full).and_maybe(wrong).and_maybe(few);
    Some(Row::of_one("needles", "Needles", cell))
}
