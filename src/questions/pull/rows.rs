//! Pull at the wheels: which set suits this engine, this car and this use?

mod against;
mod gear;
mod run;
mod shifts;
pub mod text;

use crate::problem::{Explain, capital};
use crate::questions::Analysis;
use crate::questions::{Source, Station, needs};
use crate::sheet::{Cell, Row, ordinal};
use crate::units::{Force, Mass, Measured, Velocity, number};

/// The time to the first of the speeds asked for, for every setup.
pub fn station(source: Source<'_>) -> Station {
    run::station(source)
}

/// The rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let mut rows = run::rows(source);
    rows.extend((0..source.most_gears().saturating_sub(1)).map(|gear| {
        let label = format!("Shift {} to {}", ordinal(gear), ordinal(gear + 1));
        source.row(format!("shift-{}", gear + 1), label, |analysis| shifts::cell(source, analysis, gear + 1))
    }));
    rows.push(source.row("in-band", "Run inside the power band", shifts::in_band_cell));
    rows.extend((0..source.most_gears()).map(|gear| {
        source.row(format!("gear-{}", gear + 1), format!("{}: top speed, grade", ordinal(gear)), |analysis| {
            gear::cell(source, analysis, gear)
        })
    }));
    rows.push(source.row("cruise", format!("Top gear at {}", crate::questions::short::cruise_text(source)), |analysis| {
        gear::cruise_cell(source, analysis)
    }));
    if source.setups.len() > 1 {
        rows.push(source.row("against", "Against A", |analysis| against::cell(source, analysis)));
    }
    rows
}

/// Why a setup has no answer here: what was refused, or what is still missing.
fn missing(source: Source<'_>, analysis: &Analysis) -> Cell {
    if let Some(refused) = &analysis.pull().refused {
        return Cell::absent(format!("{}: {}", capital(&refused.what()), refused.what_to_do()));
    }
    if source.conditions.pull.curve.is_none() {
        return Cell::absent("needs the engine’s torque or power");
    }
    if analysis.pull().thrust.is_none() {
        return Cell::absent(needs(analysis));
    }
    Cell::absent("needs the car’s mass")
}

/// What the trailer adds to a grade or a cruise: `, with the trailer of 1,000 lb`; nothing without one.
fn with_trailer(source: Source<'_>) -> String {
    let trailer = source.conditions.pull.trailer;
    if trailer > Mass::default() { format!(", with the trailer of {}", mass_text(source, trailer)) } else { String::new() }
}

/// A mass in the reader's unit: `2,600 lb`.
fn mass_text(source: Source<'_>, mass: Mass) -> String {
    let unit = Mass::usual(source.reader.units);
    format!("{} {}", number::show((unit.take)(&mass), 0), unit.symbol)
}

/// A force in the reader's unit: `310 lbf`.
fn force_text(source: Source<'_>, force: Force) -> String {
    let unit = Force::usual(source.reader.units);
    format!("{} {}", number::show((unit.take)(&force), 0), unit.symbol)
}

/// A speed in the reader's unit: `60 mph`.
fn speed_text(source: Source<'_>, speed: Velocity) -> String {
    let unit = Velocity::usual(source.reader.units);
    format!("{} {}", number::show((unit.take)(&speed), 0), unit.symbol)
}
