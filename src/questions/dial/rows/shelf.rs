//! The shelf: the exact driven count, what every drive gear wants, the pairs in the order they are proposed in, and adapters.

use super::fit::where_it_lies;
use super::{READS, missing};
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::speedometer::{Adapter, Candidate};
use crate::units::{Measured, Velocity, number};

pub(super) fn wanted(source: Source<'_>) -> Row {
    source.row("wanted", "Driven teeth that read true", |analysis| wanted_cell(source, analysis))
}

pub(super) fn drives(source: Source<'_>) -> Row {
    source.row("drives", "Driven teeth for each drive on the shelf", |analysis| drives_cell(source, analysis))
}

pub(super) fn pairs(source: Source<'_>) -> Row {
    source.row("shelf", "Pairs on the shelf", |analysis| pairs_cell(source, analysis))
}

pub(super) fn adapter(source: Source<'_>) -> Row {
    source.row("adapter", "With an adapter", |analysis| adapter_cell(source, analysis))
}

fn wanted_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(fitted) = analysis.speedo().fitted else { return Cell::needed(missing(source, analysis)) };
    let exact = number::show(fitted.driven_wanted(), 2);
    let filled = format!("{} ÷ {} = {exact}", fitted.train.drive(), number::show(fitted.wanted_ratio(), 4));
    let formula = "driven teeth = drive teeth × output shaft turns ÷ dial constant";
    let figure = Figure::number("speedometer.driven_wanted", fitted.driven_wanted(), 2).by(formula, filled, READS);
    let nearest = fitted
        .driven_to_fit(true)
        .map_or_else(String::new, |train| format!("with the {}-tooth drive; {} never reads slow", train.drive(), train.driven()));
    Cell::line([figure.into(), Piece::words(nearest)])
}

/// The exact driven count for every drive gear of the shelf that has a driven gear to go with it.
fn drives_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let drives = &analysis.speedo().drives;
    if drives.is_empty() {
        return no_pairs(source, analysis);
    }
    let line = drives.iter().map(|choice| {
        let (exact, nearest) = (number::show(choice.driven, 2), choice.nearest.train.driven());
        let wanted = f64::from(choice.drive) / choice.driven;
        let filled = format!("{} ÷ {} = {exact}; nearest on the shelf {nearest}", choice.drive, number::show(wanted, 4));
        let figure = Figure::number(format!("speedometer.driven_for_{}", choice.drive), choice.driven, 2)
            .small()
            .in_unit(format!("for {}", choice.drive));
        Piece::from(figure.by("driven teeth = drive teeth × output shaft turns ÷ dial constant", filled, READS))
    });
    Cell::line(line.collect::<Vec<_>>())
}

/// Why the shelf offers nothing.
fn no_pairs(source: Source<'_>, analysis: &Analysis) -> Cell {
    if analysis.speedo().basis.is_none() {
        Cell::needed(missing(source, analysis))
    } else {
        Cell::absent("nothing on the shelf fits together")
    }
}

fn pairs_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let best = &analysis.speedo().pairs.best;
    if best.is_empty() {
        return no_pairs(source, analysis);
    }
    let mut cell = Cell::default();
    for (at, candidate) in best.iter().take(3).enumerate() {
        cell = cell.and(candidate_line(source, analysis, candidate, &format!("speedometer.shelf_{}", at + 1)));
    }
    cell.and([Piece::words(format!("best of {} pairs judged", analysis.speedo().pairs.judged))])
}

fn candidate_line(source: Source<'_>, analysis: &Analysis, candidate: &Candidate, key: &str) -> Vec<Piece> {
    let shown = source.conditions.speedo.check.map(|check| check * (1.0 + candidate.error));
    let unit = Velocity::usual(source.reader.units);
    let mut line = vec![Piece::words(format!("{} drive, {} driven:", candidate.train.drive(), candidate.train.driven()))];
    line.extend(shown.map(|shown| Piece::from(Figure::quantity(&format!("{key}_reads"), &shown, unit, 1))));
    line.push(Piece::words(where_it_lies(source, analysis, candidate)));
    line
}

fn adapter_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(candidate) = &analysis.speedo().with_adapter else {
        return if analysis.speedo().basis.is_none() {
            Cell::needed(missing(source, analysis))
        } else {
            Cell::absent("none is better than the best pair")
        };
    };
    let counts = candidate.train.adapter().map(Adapter::counts);
    let mut line = candidate_line(source, analysis, candidate, "speedometer.adapter");
    line.extend(counts.map(|(gearbox, cable)| Piece::words(format!("through an adapter {gearbox} to {cable}"))));
    Cell::line(line)
}
