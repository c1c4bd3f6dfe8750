//! Inside the box: what turns, how fast, and what must each synchroniser do?

mod cut;
mod speeds;
mod synchronisers;

use super::typed::entry;
use super::{Cell, Section, Source, ordinal};
use crate::analysis::Analysis;
use crate::gearing::speeds::Selected;
use crate::job::{InsideField, SetupField};
use crate::units::common::in_rpm;
use crate::units::number;

/// Source of every speed of a train.
const TRAIN: &str = "n₂ = −n₁ × z₁ ÷ z₂ at each mesh (any textbook of the theory of machines, for instance Khurmi and Gupta, ch. 13)";

/// The section.
pub(super) fn section(source: Source<'_>) -> Section {
    let gear = selected_words(source);
    let shift = source.conditions.shift.map_or_else(|| "the shift rpm".into(), |shift| number::show(in_rpm(shift), 0));
    let mut rows = vec![
        source.row("cluster", format!("Countershaft in {gear}"), speeds::countershaft_cell),
        source.row("fastest", format!("Fastest at {shift}"), speeds::fastest_cell),
        source.row("idle", format!("Idle gears in {gear}"), speeds::idle_cell),
        source.row("neutral", format!("Coasting in neutral at {}", super::short::cruise_text(source)), |analysis| {
            speeds::neutral_cell(source, analysis)
        }),
        source.row("downshifts", format!("Downshift arriving from {shift}"), speeds::downshift_cell),
        source.row("meshes", format!("Teeth meet in {gear}"), speeds::mesh_cell),
        source.row("hunting", "Same teeth meet again", cut::hunting_cell),
    ];
    rows.extend(source_rows(source));
    rows.push(source.row("geometry", "Fit of the pairs", cut::geometry_cell));
    rows.push(source.row("thrust", format!("Thrust at peak torque in {gear}"), |analysis| cut::thrust_cell(source, analysis)));
    rows.push(source.row("inertia", "Turned by the synchronisers", |analysis| synchronisers::inertia_cell(source, analysis)));
    rows.extend(synchronisers::rows(source));
    let ask = "What turns inside the box, how fast, and what must each synchroniser do?".into();
    Section { id: "inside", title: "Inside the box".into(), ask, rows }
}

/// The rows in which the cut of the gears and the cones are typed.
fn source_rows(source: Source<'_>) -> [super::Row; 2] {
    let cut = source.row("cut", "Cut of the gears", |analysis| {
        let fields = [
            (InsideField::Pitch, "normal module or diametral pitch"),
            (InsideField::Helix, "helix angle"),
            (InsideField::Pressure, "pressure angle"),
            (InsideField::Centre, "centre distance"),
            (InsideField::Face, "face width"),
        ];
        typed_cell(source, analysis, "module or pitch, helix angle, pressure angle, centre distance, face width", &fields)
    });
    let cones = source.row("cones", "Synchroniser cones", |analysis| {
        let fields = [(InsideField::ConeDiameter, "mean cone diameter"), (InsideField::ConeWidth, "width of the lining")];
        let cell = typed_cell(source, analysis, "mean diameter, width of the lining; gears without one", &fields);
        entry(source, analysis, cell, SetupField::Unsynchronised, "gears without a synchroniser")
    });
    [cut, cones]
}

fn typed_cell(source: Source<'_>, analysis: &Analysis, words: &str, fields: &[(InsideField, &str)]) -> Cell {
    let cell = Cell::line([super::Piece::words(words)]);
    fields.iter().fold(cell, |cell, (field, label)| entry(source, analysis, cell, SetupField::Inside(*field), label))
}

/// The gear selected, in words.
fn selected_words(source: Source<'_>) -> String {
    match source.conditions.inside.selected {
        Selected::Gear(gear) => ordinal(gear),
        Selected::Neutral => "neutral".into(),
        Selected::Reverse => "reverse".into(),
    }
}
