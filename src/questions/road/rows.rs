//! Road speed: how fast in each gear, and where does each shift land?

use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Step};
use crate::questions::Analysis;
use crate::questions::alike::rounded;
use crate::questions::gears::rows::plus_minus;
use crate::questions::short::cruise_text;
use crate::questions::{Source, Station, needs, needs_in};
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::{Length, Measured, System, Unit, Velocity, number, unit};

mod tyres;

/// Source of road speed in a gear.
const KINEMATICS: &str = "road speed without slip (Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, from memory; plain kinematics)";

/// Engine speed in top gear at the cruise speed, for every setup.
pub fn station(source: Source<'_>) -> Station {
    let label = format!("rpm at {}", cruise_text(source));
    Station::of(source, label, |analysis| Some(show_rpm(analysis.road().cruise_in_top()?)))
}

/// A row for each forward gear, then the cruise and the tyres.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let shift = source.conditions.shift.map_or_else(|| "shift rpm".into(), |shift| format!("{} rpm", show_rpm(shift)));
    let mut rows: Vec<Row> = GearNumber::lowest(source.most_gears())
        .map(|gear| {
            let label = format!("{gear} at {shift}");
            source.row(format!("gear-{}", gear.number()), label, |analysis| speed_cell(source, analysis, gear))
        })
        .collect();
    let label = format!("Top gear at {}", cruise_text(source));
    rows.push(source.row("cruise", label, |analysis| cruise_cell(source, analysis)));
    rows.extend(tyres::rows(source));
    rows
}

fn speed_cell(source: Source<'_>, analysis: &Analysis, gear: GearNumber) -> Cell {
    let Some(in_gear) = gear.of(&analysis.road().gears) else { return Cell::needed(format!("no {gear}")) };
    let Some(per_thousand) = in_gear.per_thousand else { return Cell::needed(needs_in(analysis, gear)) };
    let key = format!("gear_{}", gear.number());
    let small = source.quantity(&format!("{key}.per_1000"), &per_thousand, 1).small();
    let small = speed_working(source, analysis, overall_of(analysis, gear), small, 1000.0);
    let at_shift = speed_at_shift(source, analysis, gear, &key);
    let at_shift = at_shift.map_or_else(|| Piece::Needed("needs the shift rpm".into()), |speed| speed.big().into());
    let cell = Cell::line([at_shift, small.into(), Piece::words("per 1,000 rpm")]);
    let cell = cell
        .and_maybe(analysis.setup.printed(gear).map(|printed| [Piece::words(format!("{}, as the ratio is printed", plus_minus(printed)))]));
    let cell = cell
        .and_maybe(past_top_speed(source, analysis, gear).map(|top| [Piece::words(format!("out of reach: the car tops out at {top}"))]));
    let cell = cell.and_maybe(landing(source, analysis, gear, &key).map(|landing| [Piece::words("then"), landing.into()]));
    switched(analysis, gear).fold(cell, |cell, (at, step)| cell.and(step_line(source, analysis, (at, step))))
}

/// The steps of a gear with a stage in, each with its place among all steps of the setup.
pub fn switched(analysis: &Analysis, gear: GearNumber) -> impl Iterator<Item = (usize, &Step)> {
    analysis.setup.steps.iter().enumerate().filter(move |(_, step)| step.gear == gear && !step.is_at_rest())
}

/// `overdrive: 92.1 mph, 14.2 mph per 1,000 rpm`.
fn step_line(source: Source<'_>, analysis: &Analysis, (at, step): (usize, &Step)) -> Vec<Piece> {
    let mut line = vec![Piece::words(format!("{}:", step.called()))];
    let key = format!("gear_{}", step.key());
    line.extend(step_speed(source, analysis, (at, step), &key).map(Piece::from));
    let per_thousand = analysis.road().steps.get(at).and_then(|step| step.per_thousand);
    line.extend(per_thousand.into_iter().flat_map(|speed| {
        let figure = source.quantity(&format!("{key}.per_1000"), &speed, 1).small();
        let overall = analysis.setup.overall(step).map_or(0.0, decimal);
        [speed_working(source, analysis, overall, figure, 1000.0).into(), Piece::words("per 1,000 rpm")]
    }));
    line
}

/// Road speed of a step at the shift rpm; its key begins with `key`.
pub fn step_speed(source: Source<'_>, analysis: &Analysis, (at, step): (usize, &Step), key: &str) -> Option<Figure> {
    let (speed, shift) = analysis.road().steps.get(at)?.at_shift.zip(source.conditions.shift)?;
    let figure = source.quantity(&format!("{key}.at_shift"), &speed, 1);
    let overall = analysis.setup.overall(step).map_or(0.0, decimal);
    Some(speed_working(source, analysis, overall, figure, in_rpm(shift)))
}

fn overall_of(analysis: &Analysis, gear: GearNumber) -> f64 {
    gear.of(&analysis.gears().overall).copied().flatten().map_or(0.0, decimal)
}

/// Road speed of a gear at the shift rpm; its key begins with `key`.
pub fn speed_at_shift(source: Source<'_>, analysis: &Analysis, gear: GearNumber, key: &str) -> Option<Figure> {
    let (speed, shift) = gear.of(&analysis.road().gears)?.at_shift.zip(source.conditions.shift)?;
    let figure = source.quantity(&format!("{key}.at_shift"), &speed, 1);
    Some(speed_working(source, analysis, overall_of(analysis, gear), figure, in_rpm(shift)))
}

/// The car's top speed, where a gear at the shift rpm would be faster and engine and car are known.
pub fn past_top_speed(source: Source<'_>, analysis: &Analysis, gear: GearNumber) -> Option<String> {
    let unit = Velocity::usual(source.reader.units);
    let at_shift = gear.of(&analysis.road().gears)?.at_shift?;
    let top = analysis.tyres().fastest.filter(|fastest| fastest.is_top_speed)?.speed;
    let shown = |speed: &Velocity| rounded((unit.take)(speed), 1);
    (shown(&at_shift) > shown(&top)).then(|| crate::units::show(&top, unit, 1))
}

fn speed_working(source: Source<'_>, analysis: &Analysis, overall: f64, figure: Figure, engine_rpm: f64) -> Figure {
    let circumference = analysis.road().circumference.unwrap_or_default();
    let length = Length::usual(source.reader.units);
    let of_one = a_minute(Velocity::usual(source.reader.units).of(1.0), length);
    let worked = Worked::of(engine_rpm, 0).in_unit("rpm").times((length.take)(&circumference), 2).in_unit(length.symbol).over(overall, 4);
    let unit = if source.reader.units == System::Inch { "in/min" } else { "mm/min" };
    let worked = worked.between(0, unit, of_one.recip());
    figure.worked("speed = engine rpm × what the tyre rolls at each turn ÷ overall ratio", worked, KINEMATICS)
}

/// The rpm that the next gear picks up after a shift at the shift rpm; its key begins with `key`.
pub fn landing(source: Source<'_>, analysis: &Analysis, gear: GearNumber, key: &str) -> Option<Figure> {
    let lands_at = gear.of(&analysis.road().gears)?.lands_at?;
    let ratio = |gear: GearNumber| gear.of(&analysis.gears().ratios).copied().flatten().map_or(0.0, decimal);
    let shift = source.conditions.shift.map_or(0.0, in_rpm);
    let figure = Figure::number(format!("{key}.lands_at_rpm"), in_rpm(lands_at), 0).small().in_unit("rpm");
    let worked = Worked::of(shift, 0).times(ratio(gear.next()), 4).over(ratio(gear), 4);
    Some(figure.worked("rpm after the shift = rpm before × next ratio ÷ this ratio", worked, KINEMATICS))
}

fn cruise_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(speed) = analysis.road().cruise_in_top() else {
        return Cell::needed(if source.conditions.cruise.is_none() { "needs the cruise speed".into() } else { needs(analysis) });
    };
    let cruising = |analysis: &Analysis| analysis.road().cruise_in_top().map(in_rpm);
    let lowest = source.setups.iter().filter_map(cruising).fold(f64::INFINITY, f64::min);
    let alone = source.setups.iter().filter_map(cruising).filter(|other| (other - lowest).abs() < 0.5).count() == 1;
    let Some(figure) = cruise_figure(source, analysis, "cruise_rpm") else { return Cell::needed(needs(analysis)) };
    let mut line: Vec<Piece> = vec![figure.big().into()];
    line.extend(analysis.setup.steps.last().filter(|top| !top.is_at_rest()).map(|top| Piece::words(format!("in {}", top.name()))));
    if source.setups.len() > 1 && alone && (in_rpm(speed) - lowest).abs() < 0.5 {
        line.push(Piece::words("lowest"));
    }
    Cell::line(line)
}

/// Engine speed in top gear at the cruise speed.
pub fn cruise_figure(source: Source<'_>, analysis: &Analysis, key: &str) -> Option<Figure> {
    let speed = analysis.road().cruise_in_top()?;
    let overall = analysis.setup.steps.last().and_then(|top| analysis.setup.overall(top)).map_or(0.0, decimal);
    let circumference = analysis.road().circumference.unwrap_or_default();
    let length = Length::usual(source.reader.units);
    let mut figure = Figure::number(key, in_rpm(speed), 0);
    let filled = format!(
        "{} = {} {}/min; ÷ {} {} × {} = {} rpm",
        cruise_text(source),
        number::show(source.conditions.cruise.map_or(0.0, |cruise| a_minute(cruise, length)), 0),
        length.symbol,
        number::show((length.take)(&circumference), 2),
        length.symbol,
        number::show(overall, 4),
        figure.shown
    );
    figure = figure.by("engine rpm = road speed ÷ what the tyre rolls at each turn × overall ratio", filled, KINEMATICS);
    figure.unit = "rpm".into();
    Some(figure)
}

/// The way covered in a minute.
pub fn a_minute(speed: Velocity, length: &Unit<Length>) -> f64 {
    (length.take)(&(speed * unit::MINUTE.of(1.0)))
}
