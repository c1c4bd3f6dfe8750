//! The cut of the gears: hunting teeth, how the pairs fit their centre distance, and the thrust they give.

use super::super::{Cell, Figure, Piece, Source, ordinal};
use crate::analysis::Analysis;
use crate::analysis::inside::Pair;
use crate::gearing::geometry::undercut;
use crate::problem::{Explain, capital};
use crate::units::common::unit;
use crate::units::{Angle, Force, Measured, number};

/// Source of a pair's geometry.
const ISO: &str = "ISO 21771:2007: inv α_wt = inv α_t + 2 Σx tan α_n ÷ (z₁ + z₂)";

fn name(pair: &Pair) -> String {
    pair.gear.map_or_else(|| "constant pair".into(), ordinal)
}

fn key(pair: &Pair) -> String {
    pair.gear.map_or_else(|| "constant".into(), |gear| format!("gear_{}", gear + 1))
}

/// When the same two teeth of a pair meet again.
pub(super) fn hunting_cell(analysis: &Analysis) -> Cell {
    if analysis.inside.pairs.is_empty() {
        return Cell::absent("needs the whole gearbox");
    }
    analysis.inside.pairs.iter().fold(Cell::default(), |cell, pair| {
        let filled = format!("{} ÷ {}, common factor {}", pair.mesh.driven, pair.mesh.driver, pair.hunting.common_factor);
        let figure = Figure::number(format!("inside.{}.turns_to_repeat", key(pair)), f64::from(pair.hunting.driver_turns), 0).small();
        let figure = figure.by(
            "turns of the driver = driven teeth ÷ greatest common factor",
            filled,
            "greatest common factor of the two counts (Foiles, Gear frequencies using the Euclidean algorithm)",
        );
        let words = if pair.hunting.is_hunting() {
            "turns: every tooth meets every other".into()
        } else {
            format!("turns: common factor {}", pair.hunting.common_factor)
        };
        cell.and([Piece::words(name(pair)), figure.into(), Piece::words(words)])
    })
}

/// How each pair fits its centre distance.
pub(super) fn geometry_cell(analysis: &Analysis) -> Cell {
    let Some(cut) = &analysis.setup.inside.cut else { return Cell::absent("needs module or pitch; until then tooth sums alone decide") };
    let undercut = |pair: &Pair| {
        [pair.mesh.driver, pair.mesh.driven]
            .into_iter()
            .filter(|teeth| f64::from(teeth.count()) < undercut::fewest_teeth_for_a_rack(cut).floor())
            .map(|teeth| teeth.to_string())
            .collect::<Vec<_>>()
    };
    analysis
        .inside
        .pairs
        .iter()
        .fold(Cell::default(), |cell, pair| {
            let cell = match &pair.geometry {
                Some(Ok(geometry)) => {
                    let degrees = unit::<Angle>("°");
                    let shift = Figure::number(format!("inside.{}.shift_sum", key(pair)), geometry.shift_sum, 3).small();
                    let working = (degrees.make)(geometry.working_pressure_rad.to_degrees());
                    let filled = format!(
                        "working pressure angle {} °, reference centre {} mm",
                        number::show((degrees.take)(&working), 2),
                        number::show(geometry.reference_centre.value * 1000.0, 3)
                    );
                    let contact = Figure::number(format!("inside.{}.contact_ratio", key(pair)), geometry.total_contact_ratio(), 2).small();
                    let overlap = geometry
                        .overlap_ratio
                        .map_or_else(|| "face width not given".into(), |overlap| format!("of it {} by overlap", number::show(overlap, 2)));
                    cell.and([
                        Piece::words(name(pair)),
                        Piece::words("Σx"),
                        shift.by("Σx from the working pressure angle", filled, ISO).into(),
                        Piece::words("contact ratio"),
                        contact.into(),
                        Piece::words(overlap),
                    ])
                }
                Some(Err(why)) => cell.and([Piece::caution(format!("{}: {}; {}", capital(&name(pair)), why.what(), why.what_to_do()))]),
                None => cell,
            };
            let few = undercut(pair);
            if few.is_empty() {
                cell
            } else {
                cell.and([Piece::words(format!("{} teeth need a positive shift against undercut", few.join(" and ")))])
            }
        })
        .and([Piece::words("at the centre distance given, else at the reference one")])
}

/// The thrust of every mesh of the path at the engine's peak torque.
pub(super) fn thrust_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    if analysis.inside.thrust.is_empty() {
        return Cell::absent("needs the cut of the gears and the engine’s torque");
    }
    let unit = Force::usual(source.reader.units);
    analysis.inside.thrust.iter().enumerate().fold(Cell::default(), |cell, (at, (part, forces))| {
        let axial = Figure::quantity(&format!("inside.mesh_{}_axial", at + 1), &forces.axial, unit, 0).small();
        let filled = format!(
            "tangential {} {}, radial {} {}",
            number::show((unit.take)(&forces.tangential), 0),
            unit.symbol,
            number::show((unit.take)(&forces.radial), 0),
            unit.symbol
        );
        let axial = axial.by("F_a = F_t tan β; F_t = 2 T ÷ d", filled, "Shigley, Mechanical Engineering Design, ch. 13");
        cell.and([Piece::words(part.name(analysis.setup.layout)), axial.into(), Piece::words("along the shaft")])
    })
}
