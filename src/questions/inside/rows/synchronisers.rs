//! What each synchroniser takes up at every shift.

use super::typed_row;
use crate::job::{InsideField, SetupField};
use crate::problem::{Explain, capital};
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::entries::entry;
use crate::questions::needs::{is_uncounted, uncounted_or};
use crate::sheet::{Cell, Figure, Piece, Row, ordinal};
use crate::toothload::synchroniser::{Lining, Reflected, Shift};
use crate::units::common::in_rpm;
use crate::units::{Measured, MomentOfInertia, System, Torque, number, unit};

/// Source of slip work and torque.
const SLIP: &str = "W = ½ J Δω², T = J Δω ÷ t, one inertia against a steady side (Khurmi and Gupta, Theory of Machines, ex. 10.34)";

/// A row for each up- and downshift.
pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    let many = source.most_gears();
    let up = (1..many).map(|to| (to - 1, to));
    let down = (1..many).rev().map(|from| (from, from - 1));
    up.chain(down)
        .map(|(from, to)| {
            let label = format!("Synchroniser, {} to {}", ordinal(from), ordinal(to));
            source.row(format!("sync-{}-{}", from + 1, to + 1), label, |analysis| cell(source, analysis, from, to))
        })
        .collect()
}

/// The inertia they work against: typed, estimated, or missing.
pub(super) fn inertia_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match &analysis.inside().inertia {
        Some(reflected) => {
            let usual = MomentOfInertia::usual(source.reader.units);
            let decimals = if source.reader.units == System::Inch { 2 } else { 5 };
            let figure = Figure::quantity("inside.input_inertia", &reflected.at_input, usual, decimals);
            let figure = if reflected.is_estimate { disc_working(figure, reflected) } else { figure };
            let words = if reflected.is_estimate {
                "at the input, an estimate from teeth, pitch and face width; the clutch plate is left out"
            } else {
                "at the input, as given"
            };
            Cell::line([figure.into(), Piece::words(words)])
        }
        None if is_uncounted(analysis) => Cell::absent("needs the inertia, or tooth counts for an estimate"),
        None => Cell::needed("needs the inertia, or module and face width for an estimate"),
    };
    entry(source, analysis, cell, SetupField::Inside(InsideField::Inertia), "inertia of all that hangs on the input")
}

/// The figure of an estimated inertia with how it was added up.
fn disc_working(figure: Figure, reflected: &Reflected) -> Figure {
    let inertia = &unit::KG_M2;
    let own = reflected.rows.iter().map(|row| format!("{} teeth {}", row.teeth, number::show((inertia.take)(&row.at_input), 6)));
    figure.by(
        "J = Σ own inertia × (its speed ÷ input speed)²; gears as solid steel discs",
        format!("{} kg·m²", own.collect::<Vec<_>>().join(" + ")),
        "common practice, no published source",
    )
}

fn cell(source: Source<'_>, analysis: &Analysis, from: usize, to: usize) -> Cell {
    if from.max(to) >= analysis.setup.gears.len() {
        return Cell::needed(format!("no {}", ordinal(from.max(to))));
    }
    let Some(shift) = analysis.inside().shifts.iter().find(|shift| shift.from == from && shift.to == to) else {
        return uncounted_or(analysis, "needs the whole gearbox and an input rpm");
    };
    let key = format!("inside.sync_{}_to_{}", from + 1, to + 1);
    let mut figure = Figure::number(format!("{key}_rpm"), in_rpm(shift.difference).abs(), 0);
    figure.unit = "rpm".into();
    let filled =
        format!("input from {} to {} rpm", number::show(in_rpm(shift.input_before), 0), number::show(in_rpm(shift.input_after), 0));
    let figure = figure.by("what the cone takes out = change of the input speed × its share at the gear", filled, SLIP);
    let cell = Cell::line([figure.into(), Piece::words("to take out")]);
    let Some(absorbed) = shift.absorbed else { return cell.and([Piece::words("no synchroniser: double-clutch")]) };
    if analysis.inside().inertia.is_none() {
        return cell;
    }
    let work = Figure::quantity(&format!("{key}_work"), &absorbed.work, &unit::JOULE, 1).small();
    let torque = Figure::quantity(&format!("{key}_torque"), &absorbed.mean_torque, torque_unit(source), 1).small();
    let power = Figure::quantity(&format!("{key}_power"), &absorbed.mean_power, &unit::WATT, 0).small();
    let time = number::show(unit::SECOND.number(source.conditions.inside.shift_time), 2);
    let at_cone = format!(
        "J at the cone {} kg·m², Δω {} rad/s, t {time} s",
        number::show(unit::KG_M2.number(shift.inertia), 5),
        number::show(shift.difference.value.abs(), 1)
    );
    let cell = cell.and([
        work.by("W = ½ J Δω²", at_cone.clone(), SLIP).into(),
        Piece::words("slip"),
        torque.by("T = J Δω ÷ t", at_cone.clone(), SLIP).into(),
        power.by("P = W ÷ t", at_cone, SLIP).into(),
    ]);
    stressed(source, cell, shift)
}

/// The rows in which the cones are typed, and what the lining is allowed.
pub(super) fn typed_rows(source: Source<'_>) -> [Row; 4] {
    let row = |label: &str, field: InsideField| typed_row(source, label, SetupField::Inside(field), "");
    let lining = source.row("lining", "Limits of the lining", |_| lining_cell(source.conditions.inside.lining.as_ref()));
    [
        typed_row(source, "Gears without a synchroniser", SetupField::Unsynchronised, "none"),
        row("Mean diameter of the cones", InsideField::ConeDiameter),
        row("Width of the lining", InsideField::ConeWidth),
        lining,
    ]
}

fn lining_cell(lining: Option<&Lining>) -> Cell {
    let Some(lining) = lining else { return Cell::absent("not judged: choose a lining") };
    let cell = Cell::line([Piece::words(lining_words(lining))]);
    if lining.name == Lining::OWN { cell } else { cell.and([Piece::words(Lining::SOURCE)]) }
}

/// The pairing of a lining and its limits.
pub(in crate::questions::inside) fn lining_words(lining: &Lining) -> String {
    let shown = |value: f64| number::show(value, 2);
    format!(
        "{}: sliding {} m/s, pressure {} N/mm², work {} J/mm², power {} W/mm²",
        lining.name,
        shown(lining.sliding_m_per_s),
        shown(lining.pressure_n_per_mm2),
        shown(lining.work_j_per_mm2),
        shown(lining.power_w_per_mm2)
    )
}

fn torque_unit(source: Source<'_>) -> &'static crate::units::Unit<Torque> {
    if source.reader.units == System::Inch { Torque::usual(System::Inch) } else { Torque::usual(System::Metric) }
}

/// What of the lining's limits is passed, where the cone is known.
fn stressed(source: Source<'_>, cell: Cell, shift: &Shift) -> Cell {
    let stress = shift.absorbed.and_then(|absorbed| absorbed.stress);
    let Some((stress, lining)) = stress.zip(source.conditions.inside.lining) else { return cell };
    let over = lining.exceeded(&stress);
    if over.is_empty() {
        return cell.and([Piece::good("inside the lining’s limits")]);
    }
    over.iter().fold(cell, |cell, over| cell.and([Piece::caution(format!("{}; {}", capital(&over.what()), over.what_to_do()))]))
}
