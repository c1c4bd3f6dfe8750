//! Speedometer: what does it read, and which drive and driven gears would make it true?

use crate::gearing::teeth::decimal;
use crate::job::{SetupChoice, SetupField};
use crate::questions::Analysis;
use crate::questions::dial::answer::{Basis, Switched};
use crate::questions::entries::{choice, entry};
use crate::questions::missing::{self, Want};
use crate::questions::{Source, Station, deciding, needs};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::speedometer::{Judgement, Speedometer};
use crate::units::{Length, Measured, System, TurnsPerDistance, Velocity, number, show, unit};

pub mod fit;
mod road_check;
pub mod rule;
mod shelf;

/// Source of what a dial reads.
const READS: &str = "kinematics of drive gear, driven gear and dial constant; trade examples of choosing speedometer gears";

/// How far the dial is off, for every setup.
pub fn station(source: Source<'_>) -> Station {
    let check = source.conditions.speedo.check;
    Station::of(source, "reads, % of true", |analysis| Some(number::show_signed(analysis.speedo().error(check)? * 100.0, 1)))
}

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let first = [fitted(source), road_check(source)].into_iter().chain(take_off(source));
    let few = first.chain([reads(source), fit(source), shelf::wanted(source), shelf::adapter(source)]);
    deciding::few(few.collect(), missing::row(source, &wants(source), "what the dial reads"))
}

/// All rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let odometer = format!("Odometer over 100 {}", if source.reader.units == System::Inch { "miles" } else { "km" });
    vec![
        fitted(source),
        road_check(source),
        reads(source),
        fit(source),
        source.row("tests", format!("At the test speeds of {}", rule::name(source)), |analysis| rule::tests_cell(source, analysis)),
        source.row("odometer", odometer, |analysis| rule::odometer_cell(source, analysis)),
        shelf::wanted(source),
        shelf::drives(source),
        shelf::pairs(source),
        shelf::adapter(source),
        source.row("cable-turns", "Cable turns: needed and actual", |analysis| cable_cell(source, analysis)),
        source.row("direction", "Cable turns", |analysis| direction_cell(source, analysis)),
    ]
}

fn fitted(source: Source<'_>) -> Row {
    source.row("fitted", "Drive and driven teeth", |analysis| fitted_cell(source, analysis))
}

fn road_check(source: Source<'_>) -> Row {
    source.row("road-check", "Road check", |analysis| road_check::cell(source, analysis))
}

fn reads(source: Source<'_>) -> Row {
    source.row("reads", format!("Reads at a true {}", check_text(source)), |analysis| reads_cell(source, analysis))
}

fn fit(source: Source<'_>) -> Row {
    source.row("fit", "Fit", |analysis| fit::cell(source, analysis))
}

/// What must be typed before it is known what the dial reads.
pub(super) fn wants(source: Source<'_>) -> Vec<Want<'static>> {
    let mut wants: Vec<Want<'static>> = vec![("the drive and driven teeth", &|analysis| analysis.setup.speedo.train.is_none())];
    if source.conditions.speedo.known_dial().is_none() {
        wants.push(("a road check or the number on the dial", &|analysis| analysis.speedo().basis.is_none()));
        return wants;
    }
    wants.push(("the ring and pinion", &|analysis| analysis.speedo().basis.is_none() && analysis.setup.final_drive.is_none()));
    wants.push(("the extra stages", &|analysis| analysis.speedo().basis.is_none() && analysis.setup.stages.is_none()));
    wants.push(("the tyre", &|analysis| analysis.speedo().basis.is_none() && analysis.setup.tyre.is_none()));
    wants
}

/// The check speed in the reader's unit.
fn check_text(source: Source<'_>) -> String {
    let unit = Velocity::usual(source.reader.units);
    source
        .conditions
        .speedo
        .check
        .map_or_else(|| "check speed".into(), |check| format!("{} {}", number::show((unit.take)(&check), 0), unit.symbol))
}

fn distance(source: Source<'_>) -> &'static crate::units::Unit<Length> {
    if source.reader.units == System::Inch { &unit::MILE } else { &unit::KM }
}

fn fitted_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match analysis.setup.speedo.train {
        Some(train) => {
            let adapter = train.adapter().map_or_else(String::new, |adapter| {
                let (gearbox, cable) = adapter.counts();
                format!(", adapter {gearbox} to {cable}")
            });
            Cell::default().and([Piece::words(format!("{} drive, {} driven{adapter}", train.drive(), train.driven()))])
        }
        None => Cell::needed("type drive and driven teeth, such as 8/28"),
    };
    entry(source, analysis, cell, SetupField::SpeedoGears, "speedometer drive and driven teeth")
}

fn reads_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let speedo = &analysis.speedo();
    let (Some(fitted), Some(reads), Some(check)) = (speedo.fitted, speedo.reads, source.conditions.speedo.check) else {
        return Cell::needed(missing(source, analysis));
    };
    let figure = source.quantity("speedometer.reads", &reads, 1).big();
    let error = speedo.error(Some(check)).unwrap_or_default();
    let cell = Cell::line([
        working(source, analysis, &fitted, figure).into(),
        Figure::percent("speedometer.error", error, 1).small().into(),
        Piece::words(if error < 0.0 { "of true, slow" } else { "of true, fast" }),
    ]);
    let cell = cell.and_maybe(verdict(source, analysis, check));
    speedo.switched.iter().fold(cell, |cell, stage| switched_lines(source, cell, stage, (&fitted, check)))
}

/// What the dial reads with a stage in that stands behind the drive gear: it cannot be true both in and out.
fn switched_lines(source: Source<'_>, cell: Cell, stage: &Switched, (fitted, check): (&Speedometer, Velocity)) -> Cell {
    let reads = fitted.reads() * stage.factor;
    let key = format!("speedometer.reads_stage_{}", stage.at + 1);
    let filled = format!("{} × {} × {}", check_text(source), number::show(fitted.reads(), 4), number::show(stage.factor, 4));
    let figure = source.quantity(&key, &(check * reads), 1).small();
    let figure = figure.by("reading = reading with the stage out × ratio of the stage in ÷ out", filled, READS);
    let error = Figure::percent(&key.replace("reads", "error"), reads - 1.0, 1).small();
    let cell = cell.and([Piece::words(format!("with {} in:", stage.called)), figure.into(), error.into()]);
    let text = format!("driven from before the {}: it cannot read true both in and out; drive it from behind", stage.called);
    if stage.on_the_move { cell.and([Piece::caution(text)]) } else { cell }
}

/// Where the drive gear sits; asked of setups with extra stages alone.
fn take_off(source: Source<'_>) -> Option<Row> {
    let has_stages = |analysis: &Analysis| analysis.setup.stages.as_ref().is_none_or(|stages| !stages.is_empty());
    let cell = |analysis: &Analysis| {
        if has_stages(analysis) {
            choice(source, analysis, Cell::default(), SetupChoice::TakeOff, "where the speedometer is driven from")
        } else {
            Cell::absent("the driveshaft: there are no extra stages")
        }
    };
    source.setups.iter().any(has_stages).then(|| source.row("take-off", "Driven from", cell))
}

fn working(source: Source<'_>, analysis: &Analysis, fitted: &Speedometer, figure: Figure) -> Figure {
    if analysis.speedo().basis == Some(Basis::RoadCheck) {
        let offset = analysis.speedo().offset;
        let unit = Velocity::usual(source.reader.units);
        let more = if offset == Velocity::default() { String::new() } else { format!(" + {}", show(&offset, unit, 1)) };
        let filled = format!("{} × {}{more} = {}", check_text(source), number::show(fitted.reads(), 4), figure.text());
        return figure.by(
            "reading = true speed × dial ÷ true of the road check, + what the needle shows too much",
            filled,
            "the road check",
        );
    }
    let turns = TurnsPerDistance::usual(source.reader.units);
    let filled = format!(
        "{} × {} {} × {} ÷ {} {} = {}",
        check_text(source),
        number::show((turns.take)(&fitted.shaft), 1),
        turns.symbol,
        number::show(decimal(fitted.train.ratio()), 4),
        number::show((turns.take)(&fitted.dial.constant()), 1),
        turns.symbol,
        figure.text()
    );
    figure.by("reading = true speed × output shaft turns × drive ÷ driven teeth ÷ dial constant", filled, READS)
}

/// Inside or outside the rule, and by how much; what to fit stands in its own row.
fn verdict(source: Source<'_>, analysis: &Analysis, check: Velocity) -> Option<Piece> {
    let Some(band) = rule::band(source) else { return Some(Piece::words(rule::NO_RULE)) };
    let by = |speed: Velocity| source.show(&speed, 1);
    let judgement = analysis.speedo().judgement(band, check, source.conditions.speedo.units)?;
    Some(match judgement {
        Judgement::Inside { .. } => Piece::good(format!("inside {}; local rules decide", band.name)),
        judgement if !judgement.is_clearly_outside() && judgement.is_outside() => {
            Piece::good(format!("on the edge of {}, closer than a dial can be read; local rules decide", band.name))
        }
        Judgement::TooLow(low) => Piece::caution(format!("{} under {}{}; local rules decide", by(low), band.name, fit::advice(analysis))),
        Judgement::TooHigh(high) => {
            Piece::caution(format!("{} over what {} allows{}; local rules decide", by(high), band.name, fit::advice(analysis)))
        }
        Judgement::NotCovered => Piece::words(format!("{} does not cover this speed", band.name)),
    })
}

fn cable_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some((fitted, _)) = analysis.speedo().fitted.zip(analysis.speedo().shaft) else {
        return Cell::needed(if analysis.speedo().fitted.is_some() { needs(analysis) } else { missing(source, analysis) });
    };
    let unit = TurnsPerDistance::usual(source.reader.units);
    let wanted = Figure::quantity("speedometer.cable_wanted", &fitted.dial.constant(), unit, 0);
    let filled = format!("{} × {}", number::show((unit.take)(&fitted.shaft), 1), number::show(decimal(fitted.train.ratio()), 4));
    let had = Figure::quantity("speedometer.cable", &fitted.cable(), unit, 0).by(
        "cable turns = output shaft turns × drive ÷ driven teeth",
        filled,
        READS,
    );
    Cell::line([had.into(), Piece::words("of")]).and([wanted.into(), Piece::words("needed by the dial")])
}

fn direction_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = match analysis.speedo().cable {
        Some(cable) => Cell::line([Piece::words(format!(
            "{}, seen from the gearbox along the cable; {} from the dial",
            cable.word(),
            cable.from_other_end().word()
        ))]),
        None => Cell::line([Piece::Absent("choose the hand of the gear and the side".into())]),
    };
    let cell = choice(source, analysis, cell, SetupChoice::SpeedoHand, "hand of the drive gear");
    choice(source, analysis, cell, SetupChoice::SpeedoTap, "side of the driven gear and way of the cable")
}

fn missing(source: Source<'_>, analysis: &Analysis) -> String {
    if analysis.setup.speedo.train.is_none() {
        return "needs the gears fitted".into();
    }
    if source.conditions.speedo.known_dial().is_none() {
        return "needs a road check or the number on the dial".into();
    }
    if source.conditions.speedo.check.is_none() && analysis.speedo().fitted.is_some() {
        return "needs the check speed".into();
    }
    needs(analysis)
}
