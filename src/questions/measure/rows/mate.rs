//! The rows of the gear with its mate: whether they run at this centre distance, with what backlash, tip clearance and contact.

use crate::problem::Explain;
use crate::questions::Source;
use crate::questions::measure::answer::{Known, MateFrom, WithMate, felt_otherwise, mate_problem};
use crate::questions::measure::read::Measured;
use crate::questions::measure::said;
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::in_millimetres;
use crate::units::number;

/// Fewer teeth than this in contact run roughly. Common practice.
const LEAST_CONTACT: f64 = 1.2;
/// Source of backlash.
const BACKLASH: &str = "thicknesses on the working circles, ISO 21771:2007; DIN 3967";

/// Whether it runs with the mate, and with what backlash.
pub(super) fn deciding(source: Source<'_>, measured: &Measured, known: &Known) -> Vec<Row> {
    let mut rows = Vec::new();
    if let Some((why, _)) = known.best().and_then(|best| mate_problem(measured, best)) {
        let says = format!("{}: {}", why.what(), why.what_to_do());
        rows.push(Row::of_one("mate", "With its mate", Cell::line([Piece::stop(says)])));
    }
    let Some(with) = &known.with_mate else { return rows };
    rows.push(Row::of_one("mate", format!("With the {}-tooth mate", with.mate.teeth), cell(source, known, with)));
    if let Some(apart) = felt_otherwise(with, &measured.mate, known.readings.give_or_take) {
        let says = format!(
            "the backlash felt is {} off what the spans leave: was it felt on the teeth, or is one span off?",
            said::length(source, apart.abs())
        );
        rows.push(Row::of_one("mate-felt", "Backlash felt", Cell::line([Piece::caution(says)])));
    }
    rows
}

fn cell(source: Source<'_>, known: &Known, with: &WithMate) -> Cell {
    let figure = backlash_figure(source, with).big();
    let cell = Cell::line([figure.into(), Piece::words("of backlash on the teeth")]);
    if with.binds(known.readings.give_or_take) {
        let wants =
            with.tightest.map_or_else(String::new, |centre| format!(": a centre distance of {} at least", said::length(source, centre)));
        return cell.and([Piece::stop(format!("they bind{wants}"))]);
    }
    if with.bottoms() {
        return cell.and([Piece::stop("a tip meets the other’s root: lower the tips, or set them apart")]);
    }
    if with.meshing.geometry.transverse_contact_ratio < LEAST_CONTACT {
        return cell.and([Piece::caution("fewer than 1.2 teeth share the load")]);
    }
    cell.and([Piece::good("they mesh at this centre distance")])
}

fn backlash_figure(source: Source<'_>, with: &WithMate) -> Figure {
    let meshing = &with.meshing;
    let figure = said::figure(source, "backlash", meshing.backlash.around);
    let (asked, have) = (meshing.geometry.shift_sum, meshing.flank_sum);
    let short = asked - have;
    let arc_mm = if short.abs() > 1e-12 { in_millimetres(meshing.backlash.around) / short } else { 0.0 };
    let arc = said::bare(source, crate::units::common::millimetres(arc_mm));
    let filled = format!("({} − {}) × {arc} = {}", number::show_signed(asked, 3), number::show_signed(have, 3), figure.text());
    let formula = "backlash = (profile shifts this centre distance asks for − those the flanks show) × 2 × working module × tan of the pressure angle";
    figure.by(formula, filled, BACKLASH)
}

/// What else there is to say of the two.
pub(super) fn rows(source: Source<'_>, known: &Known) -> Vec<Row> {
    let Some(with) = &known.with_mate else { return Vec::new() };
    let meshing = &with.meshing;
    let from = match with.from {
        MateFrom::Span => with.spanned.map_or_else(String::new, |over| format!("from its span over {over} teeth")),
        MateFrom::Backlash => "from the backlash felt".into(),
        MateFrom::CutToMatch => "taken as cut to match and unworn".into(),
    };
    let mut shift = Figure::number("measure.mate_profile_shift", with.mate.shift, 3);
    shift.shown = number::show_signed(with.mate.shift, 3);
    let normal = said::figure(source, "backlash_normal", meshing.backlash.normal);
    let [tip, root] = meshing.clearances;
    let clearance = [
        said::figure(source, "tip_clearance", tip).into(),
        Piece::words("over its tips,"),
        said::figure(source, "root_clearance", root).into(),
        Piece::words("over the mate’s"),
    ];
    let contact = Figure::number("measure.contact_ratio", meshing.geometry.transverse_contact_ratio, 2);
    let contact = contact.by(
        "contact ratio = length of the line of contact ÷ base pitch, across the shaft, tips shortened to keep their clearance",
        format!("{} teeth", number::show(meshing.geometry.transverse_contact_ratio, 2)),
        "ISO 21771:2007",
    );
    let mut rows = vec![
        Row::of_one("pair-shift", "Profile shift of the mate", Cell::line([shift.into(), Piece::words(from)])),
        Row::of_one("pair-normal", "Backlash by feeler", Cell::line([normal.into(), Piece::words("square to the flanks")])),
        Row::of_one("pair-clearance", "Room at the roots", Cell::line(clearance)),
        Row::of_one("pair-contact", "Teeth in contact", Cell::line([contact.into(), Piece::words("across the shaft")])),
    ];
    if let Some(tightest) = with.tightest {
        let line = [said::figure(source, "tightest_centre", tightest).into(), Piece::words("without any backlash")];
        rows.push(Row::of_one("pair-tightest", "Tightest centre distance", Cell::line(line)));
    }
    rows
}
