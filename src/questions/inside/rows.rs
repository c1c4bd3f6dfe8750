//! Inside the box: what turns, how fast, and what must each synchroniser do?

pub(in crate::questions) mod cut;
mod downshifts;
mod speeds;
mod synchronisers;

pub(super) use synchronisers::lining_words;

use crate::job::SetupField;
use crate::questions::entries::entry;
use crate::questions::{Source, Station};
use crate::sheet::{Cell, Row};
use crate::units::common::show_rpm;

/// Source of every speed of a train.
const TRAIN: &str = "n₂ = −n₁ × z₁ ÷ z₂ at each mesh (any textbook of the theory of machines, for instance Khurmi and Gupta, ch. 13)";

/// The fastest the countershaft turns at the shift rpm, for every setup.
pub fn station(source: Source<'_>) -> Station {
    Station::of(source, "fastest cluster, rpm", speeds::fastest_countershaft)
}

/// The rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let gear = source.conditions.inside.selected;
    let shift = source.conditions.shift.map_or_else(|| "the shift rpm".into(), |shift| format!("{} rpm", show_rpm(shift)));
    let cruise = crate::questions::short::cruise_text(source);
    let mut rows = vec![
        source.row("cluster", format!("Countershaft in {gear}"), speeds::countershaft_cell),
        source.row("fastest", format!("Fastest at {shift}"), speeds::fastest_cell),
        source.row("idle", format!("Idle gears on their shafts in {gear}"), speeds::idle_cell),
        source.row("neutral", format!("Coasting in neutral at {cruise}"), |analysis| speeds::neutral_cell(source, analysis)),
        source.row("downshifts", format!("Downshift at {shift}"), downshifts::at_shift_cell),
        source.row("cruise-downshifts", format!("Downshift at {cruise}"), downshifts::at_cruise_cell),
        source.row("meshes", format!("Teeth meet in {gear}"), speeds::mesh_cell),
        source.row("cruise-meshes", format!("Teeth meet in top at {cruise}"), speeds::cruise_mesh_cell),
        source.row("hunting", "Turns until the same teeth meet", cut::hunting_cell),
    ];
    rows.extend(cut::typed_rows(source));
    rows.extend(cut::geometry_rows(source));
    rows.push(source.row("thrust", format!("Axial thrust at peak torque in {gear}"), |analysis| cut::thrust_cell(source, analysis)));
    rows.extend(synchronisers::typed_rows(source));
    rows.push(source.row("inertia", "Turned by the synchronisers", |analysis| synchronisers::inertia_cell(source, analysis)));
    rows.push(source.row("sync-worst", "Synchroniser that works hardest", synchronisers::worst_cell));
    rows.extend(synchronisers::rows(source));
    rows
}

/// A row in which one text of each setup is typed, with what a blank one is taken for.
pub(in crate::questions) fn typed_row(source: Source<'_>, label: &str, field: SetupField, blank: &str) -> Row {
    source.row(field.path(), label, |analysis| {
        let text = source.job.text(crate::job::Field::Setup(analysis.setup.id, field)).unwrap_or_default();
        let cell =
            if text.trim().is_empty() && !blank.is_empty() { Cell::line([crate::sheet::Piece::words(blank)]) } else { Cell::default() };
        entry(source, analysis, cell, field, &label.to_lowercase())
    })
}
