//! The rows of Driveline: what is typed of the shaft, how fast it turns, how fast it may, what would do, and what its joints do.

use super::answer::{Instead, Turning, Why};
use crate::driveline::shaft::allowed_unbalance_g_mm;
use crate::driveline::{Ends, Margin};
use crate::gearing::GearNumber;
use crate::gearing::teeth::decimal;
use crate::job::{SetupChoice, SetupField, ShaftField};
use crate::questions::entries::{choice, entry};
use crate::questions::road::rows::a_minute;
use crate::questions::{Analysis, Source, Station, needs_behind};
use crate::sheet::{Cell, Figure, Piece, Row, Worked};
use crate::units::common::{in_rpm, show_rpm};
use crate::units::number::ordinal;
use crate::units::{AngularVelocity, Length, Measured, System, Torque, Velocity, number, show, unit};

pub(super) mod joints;
pub mod shaft_words;
mod travel;
mod turning;

pub use joints::limits_words;

/// Source of the critical speed.
pub const CRITICAL: &str = "uniform tube free to tilt at both joints, first bending mode (any textbook of vibrations)";
/// Source of the same where an end is held.
const HELD: &str =
    "uniform tube held stiffly, first bending mode (any textbook of vibrations); no bearing is quite stiff, so in truth lower";
/// Source of the shaft's speed.
const KINEMATICS: &str = "no slip of the tyres; plain kinematics";
/// The balance grade of driveshafts, in mm/s.
const GRADE: f64 = 16.0;
/// The share of the yield torque over which a tube is cautioned: half, as parts that are shocked are kept (common practice).
const OFTEN_SHOCKED: f64 = 0.5;

/// The shaft's speed as a share of its critical speed, for every setup.
pub fn station(source: Source<'_>) -> Station {
    Station::of(source, "shaft, % of critical", |analysis| Some(number::show(100.0 * analysis.driveline().share()?, 0)))
}

/// The rows that decide.
pub fn deciding(source: Source<'_>) -> Vec<Row> {
    let mut rows = typed(source);
    rows.extend([
        source.row("turns", turns_label(source), |analysis| turns_cell(source, analysis)),
        source.row("critical", "Critical speed", |analysis| critical_cell(source, analysis)),
    ]);
    if source.setups.iter().any(|analysis| is_over(source, analysis)) {
        rows.push(instead_row(source));
    }
    rows.extend(joints::deciding(source));
    rows.retain(Row::says_something);
    rows
}

/// The other rows.
pub fn rows(source: Source<'_>) -> Vec<Row> {
    let mut rows = vec![
        source.row("shaft-material", "Tube of", |analysis| {
            let cell = choice(source, analysis, Cell::default(), SetupChoice::ShaftMaterial, "material of the tube");
            let own = SetupField::Shaft(ShaftField::OwnMaterial);
            entry(source, analysis, cell, own, "modulus and density of an own material")
        }),
        source.row("shaft-ends", "Ends of the shaft", |analysis| {
            choice(source, analysis, Cell::default(), SetupChoice::ShaftEnds, "ends of the shaft")
        }),
    ];
    rows.push(instead_row(source));
    rows.push(turning::every_gear(source));
    rows.extend(joints::others(source));
    rows.extend(travel::rows(source));
    rows.extend([
        source.row("joints", "Joints shake it at", |analysis| joints_cell(source, analysis)),
        source.row("torque", "Torque at the tube", |analysis| torque_cell(source, analysis)),
        source.row("balance", "Unbalance allowed, G 16", balance_cell),
        turning::run_out(source),
    ]);
    rows.extend(turning::pinion(source));
    rows
}

fn instead_row(source: Source<'_>) -> Row {
    source.row("instead", "What would do", |analysis| instead_cell(source, analysis))
}

/// Whether a setup turns its shaft faster than is allowed.
fn is_over(source: Source<'_>, analysis: &Analysis) -> bool {
    let allowed = source.conditions.driveline.margin.map_or(1.0, Margin::share);
    analysis.driveline().share().is_some_and(|share| share > allowed)
}

fn typed(source: Source<'_>) -> Vec<Row> {
    let row = |key: &str, label: &str, field: ShaftField| {
        source.row(key, label, |analysis| entry(source, analysis, Cell::default(), SetupField::Shaft(field), field.row().label))
    };
    vec![
        row("shaft-length", "Joint to joint (two pieces: 30 + 34)", ShaftField::Lengths),
        row("shaft-outside", "Outside of the tube", ShaftField::Outside),
        row("shaft-wall", "Wall of the tube (or bore 2.8 in)", ShaftField::Wall),
    ]
}

fn turns_label(source: Source<'_>) -> String {
    source.conditions.driveline.at.map_or_else(|| "Shaft turns".into(), |at| format!("Shaft turns at {}", speed(source, at)))
}

fn speed(source: Source<'_>, speed: Velocity) -> String {
    source.show(&speed, 0)
}

fn rpm(key: &str, speed: AngularVelocity) -> Figure {
    Figure::number(format!("{key}_rpm"), in_rpm(speed), 0).in_unit("rpm")
}

/// Why the shaft is judged at a road speed: `at the top speed of 118 mph`.
pub fn why(source: Source<'_>, turning: &Turning) -> String {
    let at = speed(source, turning.road);
    match turning.why {
        Why::Typed => format!("at {at}"),
        Why::TopSpeed => format!("at the top speed of {at}"),
        Why::ShiftRpm => format!("at {at}, the shift rpm in top gear"),
    }
}

fn turns_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(turning) = &analysis.driveline().turning else { return Cell::needed(turning_needs(source, analysis)) };
    let length = Length::usual(source.reader.units);
    let circumference = analysis.setup.rolling.as_ref().map(|rolling| rolling.circumference).unwrap_or_default();
    let behind = analysis.setup.behind_shaft().map_or(0.0, decimal);
    let figure = rpm("driveline.shaft", turning.shaft);
    let unit = Velocity::usual(source.reader.units);
    let worked = Worked::of((unit.take)(&turning.road), 0).in_unit(unit.symbol);
    let worked = worked.over((length.take)(&circumference), if source.reader.units == System::Inch { 2 } else { 0 }).in_unit(length.symbol);
    let worked = worked.times(behind, 4).times_unseen(a_minute(unit.of(1.0), length));
    let figure = figure.big().worked("shaft rpm = road speed ÷ what the tyre rolls at each turn × axle ratio", worked, KINEMATICS);
    let cell = Cell::line([figure.into()]);
    if turning.why == Why::Typed { cell } else { cell.and([Piece::words(why(source, turning))]) }
}

fn turning_needs(source: Source<'_>, analysis: &Analysis) -> String {
    if analysis.setup.rolling.is_some() && analysis.setup.behind_shaft().is_some() {
        let is_unread = !source.conditions.driveline.is_blank;
        return if is_unread { "needs the speed to judge it at" } else { "needs a speed to judge it at, or the shift rpm" }.into();
    }
    needs_behind(analysis, GearNumber::FIRST)
}

/// What of the shaft is still needed.
pub fn shaft_needs(analysis: &Analysis) -> String {
    let shaft = &analysis.setup.shaft;
    match (shaft.lengths.is_empty(), shaft.tube.is_none()) {
        (true, true) => "needs the shaft’s length, and its tube’s outside and wall",
        (true, false) => "needs the shaft’s length",
        (false, true) => "needs the tube’s outside and wall",
        (false, false) => "needs a tube that can be",
    }
    .into()
}

fn critical_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let driveline = analysis.driveline();
    let Some((critical, at)) = driveline.critical else { return Cell::needed(shaft_needs(analysis)) };
    let cell = Cell::line([critical_figure(source, analysis, critical, at).big().into()]);
    let cell = if analysis.setup.shaft.pieces.len() > 1 {
        cell.and([Piece::words(format!("of the {} piece; a centre bearing gives, so in truth lower", ordinal(at)))])
    } else {
        cell
    };
    let Some(share) = driveline.share() else { return cell };
    let percent = Figure::percent("driveline.share", share, 0);
    cell.and([Piece::words("the shaft turns at"), percent.into(), Piece::words("of it")]).and_maybe(verdict(source, share))
}

fn critical_figure(source: Source<'_>, analysis: &Analysis, critical: AngularVelocity, at: usize) -> Figure {
    let shafts = &analysis.setup.shaft;
    let length = Length::usual(source.reader.units);
    let decimals = if source.reader.units == System::Inch { 3 } else { 1 };
    let shown = |value: Length| show(&value, length, decimals);
    let figure = rpm("driveline.critical", critical);
    let (Some((outside, wall)), Some(material), Some(ends), Some(long)) =
        (shafts.tube, shafts.made_of, shafts.ends, shafts.lengths.get(at))
    else {
        return figure;
    };
    let (modulus, density) = material.figures();
    let bore = outside - wall * 2.0;
    let filled = format!(
        "L = {}, D = {}, d = {}, E = {} GPa, ρ = {} kg/m³: {} rpm",
        shown(*long),
        shown(outside),
        shown(bore),
        number::show(modulus, 0),
        number::show(density, 0),
        figure.shown
    );
    if ends == Ends::Joints {
        return figure.by("n = 30 ÷ π × (π ÷ L)² × √(E ÷ ρ) × √(D² + d²) ÷ 4", filled, CRITICAL);
    }
    let filled = format!("k = {}, {filled}", number::show(ends.mode(), 4));
    figure.by("n = 30 ÷ π × (k ÷ L)² × √(E ÷ ρ) × √(D² + d²) ÷ 4", filled, HELD)
}

fn verdict(source: Source<'_>, share: f64) -> Option<Piece> {
    let margin = source.conditions.driveline.margin?;
    let allowed = number::show(100.0 * margin.share(), 0);
    Some(if share >= 1.0 {
        Piece::stop("past its critical speed: it would whip and break")
    } else if share > margin.share() {
        Piece::caution(format!("over the {allowed} % allowed: shorter, wider or two pieces"))
    } else {
        Piece::good(format!("inside the {allowed} % allowed"))
    })
}

fn instead_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let driveline = analysis.driveline();
    if driveline.critical.is_none() {
        return Cell::needed(shaft_needs(analysis));
    }
    let Some(instead) = driveline.instead else { return Cell::needed(turning_needs(source, analysis)) };
    let length = Length::usual(source.reader.units);
    let decimals = usize::from(source.reader.units == System::Inch);
    let longest = Figure::quantity("driveline.longest", &instead.longest, length, decimals);
    let cell = Cell::line([Piece::words("a piece of this tube up to"), longest.into()]);
    let cell = cell.and_maybe(instead.outside.map(|outside| {
        let outside = Figure::quantity("driveline.outside", &outside, length, decimals + 1);
        [Piece::words("at this length and wall, an outside of at least"), outside.into()]
    }));
    cell.and_maybe(pieces(&instead, analysis).map(Piece::words))
}

/// `or two pieces with a centre bearing`, where more pieces are wanted than there are.
pub fn pieces(instead: &Instead, analysis: &Analysis) -> Option<String> {
    let words = ["one piece", "two pieces", "three pieces"];
    let wanted = words.get(instead.pieces.checked_sub(1)?)?;
    (instead.pieces > analysis.setup.shaft.pieces.len()).then(|| format!("or {wanted} of this tube, with a centre bearing between"))
}

fn joints_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let driveline = analysis.driveline();
    let Some((critical, _)) = driveline.critical else { return Cell::needed(shaft_needs(analysis)) };
    let half = critical * 0.5;
    let figure = rpm("driveline.half_critical", half);
    let worked = Worked::of(in_rpm(critical), 0).over(2.0, 0);
    let figure = figure.worked("a joint pushes twice a turn, so it meets the first bending at half the critical speed", worked, CRITICAL);
    let cell = Cell::line([figure.into()]);
    cell.and_maybe(
        driveline
            .road_at(half)
            .map(|road| [Piece::words(format!("at {} on the road: keep the joints’ angles small and equal", speed(source, road)))]),
    )
}

fn torque_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let Some(torqued) = analysis.driveline().torque else { return Cell::needed("needs the engine’s torque and the gears") };
    let unit = Torque::usual(source.reader.units);
    let figure = Figure::quantity("driveline.torque", &torqued.torque, unit, 0);
    let by = if torqued.by_grip { "in 1st, all that the tyres hold" } else { "in 1st at the engine’s peak" };
    let cell = Cell::line([figure.into(), Piece::words(by)]);
    let Some(yields) = torqued.yields else { return cell };
    let share = (torqued.torque / yields).value;
    let figure = Figure::quantity("driveline.yield_torque", &yields, unit, 0).by(
        "T = τ × π ÷ 16 × (D⁴ − d⁴) ÷ D",
        format!("τ = {} MPa", shear_mpa(analysis).unwrap_or_default()),
        "torsion of a tube (any textbook of strength of materials); shear yield 0.577 of the tensile, which is from memory",
    );
    let cell = cell.and([Piece::words("the tube yields at"), figure.into()]);
    let percent = number::show(100.0 * share, 0);
    cell.and([if share > OFTEN_SHOCKED {
        Piece::caution(format!("{percent} % of what the tube bears, before any shock: a wider or thicker tube"))
    } else {
        Piece::words(format!("{percent} % of it, before any shock"))
    }])
}

fn shear_mpa(analysis: &Analysis) -> Option<String> {
    let shear = analysis.setup.shaft.shear_yield()?;
    Some(number::show(shear.get::<uom::si::pressure::megapascal>(), 0))
}

fn balance_cell(analysis: &Analysis) -> Cell {
    let (shafts, turning) = (&analysis.setup.shaft, analysis.driveline().turning);
    if shafts.pieces.is_empty() {
        return Cell::needed(shaft_needs(analysis));
    }
    let Some(turning) = turning else { return Cell::needed("needs the shaft’s speed") };
    let figure = |(at, piece): (usize, &crate::driveline::Shaft)| {
        let mass = piece.mass();
        let figure = Figure::number(format!("driveline.unbalance_{}_gmm", at + 1), allowed_unbalance_g_mm(mass, turning.shaft, GRADE), 0)
            .in_unit("g·mm");
        let filled = format!("{} kg × 16 mm/s ÷ ω at {} rpm", number::show(unit::KG.number(mass), 2), show_rpm(turning.shaft));
        Piece::from(figure.by("U = m × G ÷ ω", filled, "ISO 21940-11; G 16 for driveshafts from memory; tube alone, yokes not counted"))
    };
    let cell = shafts.pieces.iter().enumerate().map(figure).fold(Cell::default(), |cell, piece| cell.and([piece]));
    cell.and([Piece::words("half at each end; have it balanced by a shop that does shafts")])
}
