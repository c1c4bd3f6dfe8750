//! The cut of the gears: hunting teeth, how the pairs fit their centre distance, and the thrust they give.

use super::speeds::pair_name;
use super::typed_row;
use crate::gearing::Teeth;
use crate::gearing::geometry::{Geometry, GeometryError, undercut};
use crate::job::{InsideField, SetupField};
use crate::problem::{Explain, capital};
use crate::questions::Analysis;
use crate::questions::Source;
use crate::questions::inside::answer::Pair;
use crate::questions::needs::uncounted_or;
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::{Force, Measured, number, unit};

/// Source of a pair's geometry.
const ISO: &str = "ISO 21771:2007";

fn name(analysis: &Analysis, pair: &Pair) -> String {
    pair.gear.map_or_else(|| analysis.setup.layout.constant_pair().into(), String::from)
}

fn key(pair: &Pair) -> String {
    pair.gear.map_or_else(|| "constant".into(), |gear| format!("gear_{}", gear.number()))
}

/// When the same two teeth of a pair meet again.
pub(super) fn hunting_cell(analysis: &Analysis) -> Cell {
    if analysis.inside().pairs.is_empty() {
        return uncounted_or(analysis, "needs the whole gearbox");
    }
    analysis.inside().pairs.iter().fold(Cell::default(), |cell, pair| {
        let figure = Figure::number(format!("inside.{}.turns_to_repeat", key(pair)), f64::from(pair.hunting.driver_turns), 0).small();
        let worked = Worked::of(f64::from(pair.mesh.driven.count()), 0).over(f64::from(pair.hunting.common_factor), 0);
        let figure = figure.worked(
            "turns of the driver = driven teeth ÷ greatest common factor",
            worked,
            "greatest common factor of the two counts (Foiles, Gear frequencies using the Euclidean algorithm)",
        );
        let words = if pair.hunting.is_hunting() { "hunting".into() } else { format!("common factor {}", pair.hunting.common_factor) };
        cell.and([Piece::words(name(analysis, pair)), figure.into(), Piece::words(words)])
    })
}

/// The rows in which the cut of the gears is typed.
pub(in crate::questions) fn typed_rows(source: Source<'_>) -> [Row; 6] {
    let row = |label: &str, field: InsideField, blank: &str| typed_row(source, label, SetupField::Inside(field), blank);
    [
        row("Module or pitch", InsideField::Pitch, ""),
        row("Helix angle", InsideField::Helix, "0°"),
        row("Pressure angle", InsideField::Pressure, "20°"),
        row("Centre distance", InsideField::Centre, "as the counts give"),
        row("Face width", InsideField::Face, ""),
        row("Pairs cut otherwise", InsideField::PairCuts, "none"),
    ]
}

/// How the pairs fit their centre distance, as far as any setup tells how its gears are cut.
pub(super) fn geometry_rows(source: Source<'_>) -> Vec<Row> {
    if source.setups.iter().all(|analysis| analysis.setup.inside.cut.is_none()) {
        return vec![source.row("geometry", "Fit of the pairs", |analysis| {
            let until = "tooth sums alone decide until module or pitch is given";
            if is_pitch_blank(source, analysis) { Cell::needed(until) } else { Cell::absent(UNREAD) }
        })];
    }
    vec![
        source.row("geometry", "Working pressure angle", |analysis| pairs_cell(source, analysis, working_angle, true)),
        source.row("shift-sum", "Profile shift of both gears", |analysis| {
            undercut_lines(analysis, pairs_cell(source, analysis, shift_sum, false))
        }),
        source.row("contact", "Contact ratio", |analysis| pairs_cell(source, analysis, contact, false)),
    ]
}

/// What is missing where the pitch is typed and there is no cut all the same.
const UNREAD: &str = "needs pitch, helix and pressure angle that can be read";

fn is_pitch_blank(source: Source<'_>, analysis: &Analysis) -> bool {
    source.job.setup(analysis.setup.id).is_none_or(|setup| setup.inside.pitch.is_blank())
}

/// A line for each pair; what cannot be is said once, in the first of the rows.
fn pairs_cell(source: Source<'_>, analysis: &Analysis, line: fn(&Pair, &Geometry) -> Vec<Piece>, first: bool) -> Cell {
    if analysis.setup.inside.cut.is_none() {
        return if is_pitch_blank(source, analysis) { Cell::needed("needs module or pitch") } else { Cell::absent(UNREAD) };
    }
    analysis.inside().pairs.iter().fold(Cell::default(), |cell, pair| match &pair.geometry {
        Some(Ok(geometry)) => {
            let mut pieces = vec![Piece::words(name(analysis, pair))];
            pieces.extend(line(pair, geometry));
            cell.and(pieces)
        }
        Some(Err(why)) => cell.and([refusal(analysis, pair, why, first)]),
        None => cell,
    })
}

fn working_angle(pair: &Pair, geometry: &Geometry) -> Vec<Piece> {
    let degrees = &unit::DEGREE;
    let shown = |radians: f64, decimals| number::show(radians.to_degrees(), decimals);
    let mut figure =
        Figure::number(format!("inside.{}.working_pressure_d", key(pair)), geometry.working_pressure_rad.to_degrees(), 2).small();
    degrees.symbol.clone_into(&mut figure.unit);
    let filled = format!(
        "reference centre {} mm, working centre {} mm, transverse pressure angle {}°",
        number::show(geometry.reference_centre.value * 1000.0, 3),
        number::show(geometry.centre.value * 1000.0, 3),
        shown(geometry.transverse_pressure_rad, 2)
    );
    vec![figure.by("cos α_wt = cos α_t × reference centre ÷ working centre", filled, ISO).into()]
}

fn shift_sum(pair: &Pair, geometry: &Geometry) -> Vec<Piece> {
    let filled = format!(
        "α_wt {}°, α_t {}°, z₁ + z₂ = {}",
        number::show(geometry.working_pressure_rad.to_degrees(), 2),
        number::show(geometry.transverse_pressure_rad.to_degrees(), 2),
        pair.mesh.sum()
    );
    let figure = Figure::number(format!("inside.{}.shift_sum", key(pair)), geometry.shift_sum, 3).small();
    vec![figure.by("inv α_wt = inv α_t + 2 Σx tan α_n ÷ (z₁ + z₂)", filled, ISO).into(), Piece::words("modules")]
}

fn contact(pair: &Pair, geometry: &Geometry) -> Vec<Piece> {
    let whole = Figure::number(format!("inside.{}.contact_ratio", key(pair)), geometry.total_contact_ratio(), 2).small();
    let across = Figure::number(format!("inside.{}.transverse_contact_ratio", key(pair)), geometry.transverse_contact_ratio, 2).small();
    let overlap =
        geometry.overlap_ratio.map_or_else(|| "face width not given".into(), |overlap| format!("overlap {}", number::show(overlap, 2)));
    let filled = format!("{} + {overlap}", across.shown);
    let formula = "ε_γ = ε_α + ε_β";
    vec![
        whole.by(formula, filled.clone(), ISO).into(),
        Piece::words("of it"),
        across.by("ε_α = path of contact ÷ base pitch", filled, ISO).into(),
        Piece::words("across"),
    ]
}

fn refusal(analysis: &Analysis, pair: &Pair, why: &GeometryError, first: bool) -> Piece {
    let name = capital(&name(analysis, pair));
    if first {
        Piece::caution(format!("{name}: {}; {}", why.what(), why.what_to_do()))
    } else {
        Piece::Absent(format!("{name}: not at that centre distance"))
    }
}

/// The gears that want a positive shift against undercut.
fn undercut_lines(analysis: &Analysis, cell: Cell) -> Cell {
    let Some(cut) = &analysis.setup.inside.cut else { return cell };
    let fewest = undercut::fewest_teeth_for_a_rack(cut);
    let pairs = analysis.inside().pairs.iter().flat_map(|pair| [pair.mesh.driver, pair.mesh.driven]);
    let mut few: Vec<u16> = pairs.map(Teeth::count).filter(|teeth| f64::from(*teeth) < fewest.floor()).collect();
    crate::order::by(&mut few, Ord::cmp);
    few.dedup();
    if few.is_empty() {
        return cell;
    }
    let few = few.iter().map(u16::to_string).collect::<Vec<_>>().join(" and ");
    cell.and([Piece::words(format!("{few} teeth: below {} a gear wants a positive shift against undercut", number::show(fewest, 1)))])
}

/// The thrust of every mesh of the path at the engine's peak torque.
pub(super) fn thrust_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    if analysis.inside().thrust.is_empty() {
        return uncounted_or(analysis, "needs the cut of the gears and the engine’s torque");
    }
    let unit = Force::usual(source.reader.units);
    analysis.inside().thrust.iter().enumerate().fold(Cell::default(), |cell, (at, (part, forces))| {
        let axial = Figure::quantity(&format!("inside.mesh_{}_axial", at + 1), &forces.axial, unit, 0).small();
        let filled = format!(
            "tangential {} {}, radial {} {}",
            number::show((unit.take)(&forces.tangential), 0),
            unit.symbol,
            number::show((unit.take)(&forces.radial), 0),
            unit.symbol
        );
        let axial = axial.by("F_a = F_t tan β; F_t = 2 T ÷ d", filled, "Shigley, Mechanical Engineering Design, ch. 13");
        cell.and([Piece::words(pair_name(analysis.setup.layout, *part)), axial.into()])
    })
}
