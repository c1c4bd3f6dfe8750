//! The likeliest gear in full: its circles, helix and lead, base pitch, thickness, chord.

use super::pins_row;
use crate::gearing::geometry::undercut::least_shift;
use crate::questions::Source;
use crate::questions::measure::read::Measured;
use crate::questions::measure::said::{self, angle};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::toothform::known::Candidate;
use crate::units::{Length, number, unit};

pub(super) fn rows(source: Source<'_>, measured: &Measured, best: &Candidate) -> Vec<Row> {
    let gear = &best.gear;
    let one = |key: &str, label: &str, length: Length, words: &str| {
        Row::of_one(key, label, Cell::line([said::figure(source, &key.replace('-', "_"), length).into(), Piece::words(words)]))
    };
    let mut rows = vec![
        one("pitch-diameter", "Pitch diameter", gear.reference_diameter(), ""),
        one("base-diameter", "Base diameter", gear.base_diameter(), ""),
        one(
            "tip-diameter",
            "Tip diameter",
            best.tip.unwrap_or_else(|| gear.tip_diameter()),
            if best.tip.is_some() { "as measured" } else { "tips of full height" },
        ),
        one("root-diameter", "Root diameter", gear.root_diameter(), "as the rack leaves it"),
        one("base-pitch", "Base pitch", gear.base_pitch(), "what a span grows by with each tooth"),
        one("thickness", "Tooth thickness", gear.normal_thickness(), "on the pitch circle, square to the tooth, without backlash"),
    ];
    let [chord, height] = gear.chord();
    let line =
        [said::figure(source, "chord", chord).into(), Piece::words("at a height of"), said::figure(source, "chord_height", height).into()];
    rows.push(Row::of_one("chord", "Gear tooth caliper", Cell::line(line)));
    rows.extend(helix_row(source, measured, best));
    rows.extend(pins_row(source, best));
    rows.extend(undercut_row(best));
    rows
}

fn helix_row(source: Source<'_>, measured: &Measured, best: &Candidate) -> Option<Row> {
    let gear = &best.gear;
    let lead = gear.lead()?;
    let shown = gear.helix_at(best.tip.unwrap_or_else(|| gear.tip_diameter()));
    let helix = Figure::quantity("measure.helix", &gear.cut.helix(), &unit::DEGREE, 2);
    let helix = match (measured.readings.and_then(|readings| readings.print), best.tip) {
        (Some(print), Some(tip)) => {
            let (print_deg, degrees) = (unit::DEGREE.number(print), unit::DEGREE.number(gear.cut.helix()));
            let [tip, module] = [tip, gear.cut.normal_module()].map(|length| said::bare(source, length));
            let z = gear.teeth;
            let filled =
                format!("sin β = {z} × {module} × tan {}° ÷ {tip}; about {}°", number::show(print_deg, 1), number::show(degrees, 2));
            helix.by(
                "sin β = teeth × module × tan (printed angle) ÷ tip diameter",
                filled,
                "the lead is one on every circle (gear geometry)",
            )
        }
        _ => helix,
    };
    let line = [helix.into(), Piece::words(format!("on the pitch circle, {} on the tips", angle(shown)))];
    let cell = Cell::line(line).and([said::figure(source, "lead", lead).into(), Piece::words("of lead")]);
    Some(Row::of_one("helix", "Helix", cell))
}

fn undercut_row(best: &Candidate) -> Option<Row> {
    let least = least_shift(&best.gear.cut, best.gear.teeth);
    let is_undercut = best.has_shift && best.gear.shift < least - 0.005;
    let cell = Cell::line([Piece::words(format!("a rack would undercut it below a profile shift of {}", number::show_signed(least, 2)))]);
    is_undercut.then(|| Row::of_one("undercut", "Undercut", cell))
}
