//! What each synchroniser takes up at every shift.

use super::typed_row;
use crate::gearing::GearNumber;
use crate::job::{InsideField, SetupField};
use crate::problem::{Explain, capital};
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::entries::entry;
use crate::questions::inside::answer::{hardest, input_change};
use crate::questions::needs::{is_uncounted, uncounted_or};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::toothload::synchroniser::{Lining, Reflected, Shift, clutch};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{Length, Measured, MomentOfInertia, System, Torque, number, show, unit};

/// Source of slip work and torque.
const SLIP: &str = "W = ½ J Δω², T = J Δω ÷ t, one inertia against a steady side (Khurmi and Gupta, Theory of Machines, ex. 10.34)";

/// A row for each up- and downshift.
pub(super) fn rows(source: Source<'_>) -> Vec<Row> {
    let row = |(from, to): (GearNumber, GearNumber)| {
        let key = format!("sync-{}-{}", from.number(), to.number());
        source.row(key, format!("Synchroniser, {from} to {to}"), |analysis| cell(source, analysis, from, to))
    };
    GearNumber::shifts(source.most_gears()).map(row).collect()
}

/// The inertia they work against: typed, estimated, or missing.
pub(super) fn inertia_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match &analysis.inside().inertia {
        Some(reflected) => {
            let usual = MomentOfInertia::usual(source.reader.units);
            let decimals = if source.reader.units == System::Inch { 2 } else { 5 };
            let figure = Figure::quantity("inside.input_inertia", &reflected.at_input, usual, decimals);
            let figure = if reflected.is_estimate { disc_working(figure, reflected) } else { figure };
            let words = match (reflected.is_estimate, reflected.rows.is_empty(), analysis.setup.inside.cut.zip(analysis.setup.inside.face))
            {
                (false, ..) => "at the input, as given".to_owned(),
                (true, true, None) => {
                    "at the input, an estimate: clutch plate and input shaft; the gears come in with pitch and face width".into()
                }
                (true, true, Some(_)) => "at the input, an estimate: clutch plate and input shaft; no gear turns with them".into(),
                (true, false, _) => "at the input, an estimate: gears by pitch and face width, clutch plate and input shaft".into(),
            };
            let plate = (reflected.is_estimate && analysis.setup.inside.clutch.is_none()).then(|| {
                let diameter =
                    show(&clutch::usual_diameter(), Length::usual(source.reader.units), usize::from(source.reader.units == System::Inch));
                Piece::words(format!("a clutch plate of {diameter} is taken: type yours"))
            });
            Cell::line([figure.into(), Piece::words(words)]).and_maybe(plate)
        }
        None if is_uncounted(analysis) => Cell::absent("needs the inertia, or the clutch plate, or tooth counts for an estimate"),
        None => Cell::needed("needs the inertia, or the clutch plate, or pitch and face width for an estimate"),
    };
    entry(source, analysis, cell, SetupField::Inside(InsideField::Inertia), "inertia of all that hangs on the input")
}

/// The figure of an estimated inertia with how it was added up.
fn disc_working(figure: Figure, reflected: &Reflected) -> Figure {
    let inertia = &unit::KG_M2;
    let own = reflected.rows.iter().map(|row| format!("{} teeth {}", row.teeth, number::show((inertia.take)(&row.at_input), 6)));
    let beside = format!("plate and shaft {}", number::show((inertia.take)(&reflected.beside_gears), 6));
    let all: Vec<String> = std::iter::once(beside).chain(own).collect();
    figure.by(
        "J = clutch plate + input shaft + Σ own inertia × (its speed ÷ input speed)²; gears as solid steel discs",
        format!("{} kg·m²", all.join(" + ")),
        format!("gears: common practice, no published source; plate and shaft: {}", clutch::SOURCE),
    )
}

fn cell(source: Source<'_>, analysis: &Analysis, from: GearNumber, to: GearNumber) -> Cell {
    if from.max(to).place() >= analysis.setup.gears.len() {
        return Cell::needed(format!("no {}", from.max(to)));
    }
    let Some(shift) = analysis.inside().shifts.iter().find(|shift| shift.from == from && shift.to == to) else {
        return uncounted_or(analysis, "needs the whole gearbox and an input rpm");
    };
    let key = format!("inside.sync_{}_to_{}", from.number(), to.number());
    let figure = Figure::number(format!("{key}_rpm"), in_rpm(shift.difference).abs(), 0).in_unit("rpm");
    let filled = format!("input from {} to {} rpm", show_rpm(shift.input_before), show_rpm(shift.input_after));
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
    stressed(source, analysis, cell, shift)
}

/// The rows in which the cones are typed, and what the lining is allowed.
pub(super) fn typed_rows(source: Source<'_>) -> [Row; 8] {
    let row = |label: &str, field: InsideField| typed_row(source, label, SetupField::Inside(field), "");
    let lining = source.row("lining", "Limits of the lining", |_| lining_cell(source.conditions.inside.lining.as_ref()));
    [
        typed_row(source, "Gears without a synchroniser", SetupField::Unsynchronised, "none"),
        row("Mean diameter of the cones", InsideField::ConeDiameter),
        row("Width of the lining", InsideField::ConeWidth),
        row("Angle of the cones", InsideField::ConeAngle),
        row("Friction of the cones", InsideField::ConeFriction),
        row("Cones of each synchroniser", InsideField::Cones),
        row("Clutch plate", InsideField::ClutchDiameter),
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

/// Whether a judgement of a lining rests on anything that was not typed: inertia, angle and friction of the cones, limits.
fn rests_on_usual(analysis: &Analysis, lining: &Lining) -> bool {
    let is_given = analysis.inside().inertia.as_ref().is_some_and(|inertia| !inertia.is_estimate);
    !is_given || !analysis.setup.inside.is_cone_typed || lining.name != Lining::OWN
}

/// The synchroniser that works hardest, by the change of the input's speed, and what it takes up.
pub(super) fn worst_cell(analysis: &Analysis) -> Cell {
    let Some(shift) = hardest(analysis.inside()) else { return Cell::needed("needs the whole gearbox and an input rpm") };
    let figure = Figure::number("inside.worst_sync_input_rpm", input_change(shift), 0).in_unit("rpm");
    let filled = format!("{} and {} rpm", show_rpm(shift.input_before), show_rpm(shift.input_after));
    let figure = figure.by("work = ½ J Δω² of the input, whatever turns at the cone: the widest change is the hardest", filled, SLIP);
    let cell = Cell::line([Piece::words(format!("{}, from {}", shift.to, shift.from)), figure.into(), Piece::words("of the input")]);
    cell.and_maybe(shift.absorbed.filter(|_| analysis.inside().inertia.is_some()).map(|absorbed| {
        let work = Figure::quantity("inside.worst_sync_work", &absorbed.work, &unit::JOULE, 1).small();
        [work.by("W = ½ J Δω²", "at the cone of that gear", SLIP).into(), Piece::words("slip")]
    }))
}

/// What of the lining's limits is passed, where the cone is known.
fn stressed(source: Source<'_>, analysis: &Analysis, cell: Cell, shift: &Shift) -> Cell {
    let stress = shift.absorbed.and_then(|absorbed| absorbed.stress);
    let Some((stress, lining)) = stress.zip(source.conditions.inside.lining) else { return cell };
    let over = lining.exceeded(&stress);
    let by = if rests_on_usual(analysis, &lining) { ", by usual values" } else { "" };
    if over.is_empty() {
        let said = format!("inside the lining’s limits{by}");
        // No tick rests on an estimate, or on limits from memory.
        return cell.and([if by.is_empty() { Piece::good(said) } else { Piece::words(said) }]);
    }
    over.iter().fold(cell, |cell, over| cell.and([Piece::caution(format!("{}; {}", capital(&over.what()), over.what_to_do()))]))
}
