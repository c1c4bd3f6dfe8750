//! Speedometer: what does it read, and which drive and driven gears would make it true?

use crate::gearing::teeth::decimal;
use crate::job::{SetupChoice, SetupField};
use crate::questions::Analysis;
use crate::questions::entries::{choice, entry};
use crate::questions::{Source, Station, needs};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::speedometer::{Candidate, Judgement, Speedometer};
use crate::units::{Length, Measured, System, TurnsPerDistance, Velocity, number, unit};

mod road_check;
pub mod rule;

/// Source of what a dial reads.
const READS: &str = "kinematics of drive gear, driven gear and dial constant; trade examples of choosing speedometer gears";

/// How far the dial is off, for every setup.
pub fn station(source: Source<'_>) -> Station {
    Station::of(source, "reads, % of true", |analysis| Some(number::show_signed(analysis.speedo().fitted?.error() * 100.0, 1)))
}

/// The rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let check = check_text(source);
    let rows: Vec<Row> = vec![
        source.row("fitted", "Drive and driven teeth", |analysis| fitted_cell(source, analysis)),
        source.row("reads", format!("Reads at a true {check}"), |analysis| reads_cell(source, analysis)),
        source.row("tests", format!("At the test speeds of {}", rule_name(source)), |analysis| rule::tests_cell(source, analysis)),
        source.row(
            "odometer",
            format!("Odometer over 100 {}", if source.reader.units == System::Inch { "miles" } else { "km" }),
            |analysis| rule::odometer_cell(source, analysis),
        ),
        source.row("wanted", "Driven teeth that read true", wanted_cell),
        source.row("drives", "Driven teeth for each drive on the shelf", |analysis| drives_cell(source, analysis)),
        source.row("shelf", "Fit from the shelf", |analysis| shelf_cell(source, analysis)),
        source.row("adapter", "With an adapter", |analysis| adapter_cell(source, analysis)),
        source.row("cable-turns", "Cable wanted and had", |analysis| cable_cell(source, analysis)),
        source.row("road-check", "Road check", |analysis| road_check::cell(source, analysis)),
        source.row("direction", "Cable turns", |analysis| direction_cell(source, analysis)),
    ];
    rows
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
    let (Some(fitted), Some(reads)) = (speedo.fitted, speedo.reads) else { return Cell::needed(missing(source, analysis)) };
    let unit = Velocity::usual(source.reader.units);
    let figure = Figure::quantity("speedometer.reads", &reads, unit, 1).big();
    let error = Figure::percent("speedometer.error", fitted.error(), 1).small();
    let cell = Cell::line([
        working(source, &fitted, figure).into(),
        error.into(),
        Piece::words(if fitted.error() < 0.0 { "of true, low" } else { "of true, high" }),
    ]);
    cell.and([verdict(source, analysis, &fitted)])
}

fn working(source: Source<'_>, fitted: &Speedometer, figure: Figure) -> Figure {
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

/// What the rule is called that is judged by.
fn rule_name(source: Source<'_>) -> &'static str {
    source.conditions.speedo.band.map_or("a rule", |band| band.name)
}

/// Inside or outside the rule, by how much, and what to fit.
fn verdict(source: Source<'_>, analysis: &Analysis, fitted: &Speedometer) -> Piece {
    let rule = rule_name(source);
    let unit = Velocity::usual(source.reader.units);
    let by = |speed: Velocity| format!("{} {}", number::show((unit.take)(&speed), 1), unit.symbol);
    let fit = || fit_text(analysis, fitted);
    match analysis.speedo().judgement {
        Some(Judgement::Inside { .. }) => Piece::good(format!("inside {rule}; local rules decide")),
        Some(Judgement::TooLow(low)) => {
            let share = number::show(-fitted.error() * 100.0, 1);
            Piece::caution(format!("reads {share} % low, {} under {rule}{}; local rules decide", by(low), fit()))
        }
        Some(Judgement::TooHigh(high)) => Piece::caution(format!("{} over what {rule} allows{}; local rules decide", by(high), fit())),
        Some(Judgement::NotCovered) => Piece::words(format!("{rule} does not speak of this speed")),
        None => Piece::words("not judged"),
    }
}

/// `: fit 6 drive, 20 driven`, where the shelf has something better.
fn fit_text(analysis: &Analysis, fitted: &Speedometer) -> String {
    let better = analysis.speedo().proposed().filter(|candidate| candidate.error.abs() < fitted.error().abs());
    better.map_or_else(String::new, |candidate| format!(": fit {} drive, {} driven", candidate.train.drive(), candidate.train.driven()))
}

fn wanted_cell(analysis: &Analysis) -> Cell {
    let Some(fitted) = analysis.speedo().fitted else { return Cell::needed("needs the gears fitted") };
    let filled =
        format!("{} ÷ {} = {}", fitted.train.drive(), number::show(fitted.wanted_ratio(), 4), number::show(fitted.driven_wanted(), 2));
    let figure = Figure::number("speedometer.driven_wanted", fitted.driven_wanted(), 2).by(
        "driven teeth = drive teeth × output shaft turns ÷ dial constant",
        filled,
        READS,
    );
    let nearest = fitted
        .driven_to_fit(true)
        .map_or_else(String::new, |train| format!("with the {}-tooth drive; {} never reads low", train.drive(), train.driven()));
    Cell::line([figure.into(), Piece::words(nearest)])
}

/// The exact driven count for every drive gear of the shelf that has a driven gear to go with it.
fn drives_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let drives = &analysis.speedo().drives;
    let Some(shaft) = analysis.speedo().shaft.filter(|_| !drives.is_empty()) else { return Cell::needed(no_pairs(analysis)) };
    let wanted = source.conditions.speedo.dial.map_or(f64::NAN, |dial| (dial.constant() / shaft).value);
    let line = drives.iter().map(|choice| {
        let (exact, nearest) = (number::show(choice.driven, 2), choice.nearest.train.driven());
        let filled = format!("{} ÷ {} = {exact}; nearest on the shelf {nearest}", choice.drive, number::show(wanted, 4));
        let mut figure = Figure::number(format!("speedometer.driven_for_{}", choice.drive), choice.driven, 2).small();
        figure.unit = format!("for {}", choice.drive);
        Piece::from(figure.by("driven teeth = drive teeth × output shaft turns ÷ dial constant", filled, READS))
    });
    Cell::line(line.collect::<Vec<_>>())
}

/// Why the shelf offers nothing.
fn no_pairs(analysis: &Analysis) -> String {
    if analysis.speedo().shaft.is_none() { needs(analysis) } else { "nothing on the shelf fits together".into() }
}

fn shelf_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let best = &analysis.speedo().pairs.best;
    if best.is_empty() {
        return Cell::needed(no_pairs(analysis));
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

/// `Curlew, in stock`.
fn where_it_lies(source: Source<'_>, analysis: &Analysis, candidate: &Candidate) -> String {
    let gears = source.shelves.speedometer_gears;
    let stock = [Some(candidate.drive), Some(candidate.driven), candidate.adapter].into_iter().flatten().filter_map(|at| gears.get(at));
    let stock = if stock.into_iter().all(|gear| gear.in_stock) { "in stock" } else { "to be got" };
    let housing = gears.get(candidate.drive).map_or("", |gear| gear.housing.as_str());
    let fitted = analysis.setup.speedo.train == Some(candidate.train);
    format!("{housing}, {}", if fitted { "as fitted" } else { stock })
}

fn adapter_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(candidate) = &analysis.speedo().with_adapter else { return Cell::absent("none is better than the best pair") };
    let counts = candidate.train.adapter().map(crate::speedometer::Adapter::counts);
    let mut line = candidate_line(source, analysis, candidate, "speedometer.adapter");
    line.extend(counts.map(|(gearbox, cable)| Piece::words(format!("through an adapter {gearbox} to {cable}"))));
    Cell::line(line)
}

fn cable_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let (Some(fitted), Some(_)) = (analysis.speedo().fitted, analysis.speedo().shaft) else {
        return Cell::needed(missing(source, analysis));
    };
    let unit = TurnsPerDistance::usual(source.reader.units);
    let wanted = Figure::quantity("speedometer.cable_wanted", &fitted.dial.constant(), unit, 0);
    let filled = format!("{} × {}", number::show((unit.take)(&fitted.shaft), 1), number::show(decimal(fitted.train.ratio()), 4));
    let had = Figure::quantity("speedometer.cable", &fitted.cable(), unit, 0).by(
        "cable turns = output shaft turns × drive ÷ driven teeth",
        filled,
        READS,
    );
    Cell::line([had.into(), Piece::words("of")]).and([wanted.into(), Piece::words("wanted by the dial")])
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
    if source.conditions.speedo.dial.is_none() {
        return "needs what the dial expects".into();
    }
    needs(analysis)
}
