//! The rows of what moves: the nose under drive, the line with the axle hanging, the centre bearing on its shims.

use super::joints::{degrees, figure};
use super::shaft_words::joint_name;
use crate::driveline::travel::{CentreBearing, Hanging};
use crate::driveline::{Joint, Line, joint_limits};
use crate::job::{SetupField, ShaftField};
use crate::questions::entries::entry;
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, Figure, Piece, Row};
use crate::units::common::show_rpm;
use crate::units::{Angle, Length, Measured, System, limits, unit};

/// Source of what moves.
const GEOMETRY: &str = "plain geometry; the rear joint goes straight down";

pub(super) fn rows(source: Source<'_>) -> [Row; 3] {
    [
        source.row("axle-windup", "Under drive the nose rises", |analysis| windup_cell(source, analysis)),
        source.row("axle-droop", "Axle hanging: drop, or slope of the shaft", |analysis| droop_cell(source, analysis)),
        source.row("centre-bearing", "Centre bearing, shims", |analysis| bearing_cell(source, analysis)),
    ]
}

fn with_entry(source: Source<'_>, analysis: &Analysis, cell: Cell, field: ShaftField) -> Cell {
    let field = SetupField::Shaft(field);
    entry(source, analysis, cell, field, field.row().label)
}

fn windup_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let slopes = &analysis.setup.shaft.slopes;
    let cell = match (&slopes.at_rest, &slopes.line) {
        (Some(rest), Some(_)) => {
            let left = figure("left_over_at_rest", rest.resultant()).by("as left over, the nose as it stands", joints_of(rest), GEOMETRY);
            let angles = angles(rest, "at_rest_joint");
            Cell::line([Piece::words("standing, joints at")].into_iter().chain(angles).collect::<Vec<_>>())
                .and([left.into(), Piece::words("left over standing; all else here is under drive")])
        }
        _ => Cell::default(),
    };
    with_entry(source, analysis, cell, ShaftField::Windup)
}

/// The working angles of a line, each with the name of its joint.
fn angles(line: &Line, key: &str) -> Vec<Piece> {
    let joints = line.joints();
    let many = joints.len();
    let one =
        |(at, joint): (usize, Joint)| [figure(&format!("{key}_{}", at + 1), joint.angle()).into(), Piece::words(joint_name(at, many))];
    joints.into_iter().enumerate().flat_map(one).collect()
}

fn joints_of(line: &Line) -> String {
    line.joints().into_iter().map(|joint| degrees(joint.angle())).collect::<Vec<String>>().join(", ")
}

fn droop_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let cell = analysis.setup.shaft.slopes.hanging.as_ref().map_or_else(Cell::default, |(hanging, line)| {
        let joints = line.joints();
        let many = joints.len();
        let cell = Cell::line(angles(line, "hanging_joint"));
        let cell = slides(source, analysis, hanging).into_iter().fold(cell, Cell::and);
        let binding = joint_limits::binding_angle();
        let sharpest = joints.iter().enumerate().find(|(_, joint)| joint.angle() > binding);
        let verdict = sharpest.map(|(at, joint)| {
            let at = joint_name(at, many);
            Piece::stop(format!("the {at} joint binds at {} before the axle hangs free: a strap, or a wider joint", degrees(joint.angle())))
        });
        cell.and_maybe(verdict)
    });
    with_entry(source, analysis, cell, ShaftField::Droop)
}

/// How long the last piece is then, how far its slip joint slides, and what its critical speed comes to.
fn slides(source: Source<'_>, analysis: &Analysis, hanging: &Hanging) -> Vec<Vec<Piece>> {
    let shaft = &analysis.setup.shaft;
    let (Some(long), Some(now)) = (hanging.length, shaft.lengths.last().copied()) else { return Vec::new() };
    let unit = Length::usual(source.reader.units);
    let decimals = if source.reader.units == System::Inch { 2 } else { 1 };
    let out = long - now;
    let filled = format!("{} − {}", crate::units::show(&long, unit, decimals), crate::units::show(&now, unit, decimals));
    let formula = "L′ − L, L′ = x × √(1 + down′² + right²)";
    let figure = Figure::quantity("driveline.slides", &out.abs(), unit, decimals).by(formula, filled, GEOMETRY);
    let way = if out < Length::default() {
        "the slip joint slides in so far"
    } else {
        "the slip joint slides out so far: leave enough spline engaged"
    };
    let slides = vec![figure.into(), Piece::words(way)];
    let whips = shaft.piece(long).and_then(Result::ok).filter(|_| out > Length::default()).map(|piece| {
        let rpm = show_rpm(piece.critical_speed());
        vec![Piece::words(format!("so long it whips at {rpm} rpm"))]
    });
    std::iter::once(slides).chain(whips).collect()
}

fn bearing_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let shaft = &analysis.setup.shaft;
    if shaft.lengths.len() != 2 {
        return Cell::absent("for a shaft of two pieces");
    }
    let cell = match &analysis.driveline().bearing {
        Some(bearing) => shimmed(source, analysis, bearing),
        None => Cell::needed("needs the slopes and lengths of both pieces"),
    };
    with_entry(source, analysis, cell, ShaftField::Shim)
}

fn shimmed(source: Source<'_>, analysis: &Analysis, bearing: &CentreBearing) -> Cell {
    let typed = analysis.setup.shaft.shim;
    let shim = typed.unwrap_or_else(crate::questions::driveline::answer::usual_shim);
    let each = limits::say(shim, source.reader.units);
    let turned = |key: &str, angle: Angle| {
        let filled = format!("{each} over what the piece runs along the car");
        Figure::quantity(&format!("driveline.{key}"), &angle.abs(), &unit::DEGREE, 2).by("tan γ = shim ÷ x", filled, GEOMETRY)
    };
    let [front, rear] = bearing.each;
    let one = format!("each {each} of shim turns the front piece");
    let cell =
        Cell::line([Piece::words(one), turned("shim_front", front).into(), Piece::words("and the rear"), turned("shim_rear", rear).into()]);
    let many = bearing.shims.unsigned_abs();
    let left = figure("shimmed_left_over", bearing.line.resultant()).by("as left over, with the shims", joints_of(&bearing.line), GEOMETRY);
    if many == 0 {
        return cell.and([Piece::words("as it is least is left over")]);
    }
    let height = limits::say(shim * f64::from(many), source.reader.units);
    let way = match (typed, bearing.shims > 0) {
        (None, true) => format!("raise it {height}:"),
        (None, false) => format!("lower it {height}:"),
        (Some(_), true) => format!("put {many} more under it, {height}:"),
        (Some(_), false) => format!("take {many} out, {height}:"),
    };
    cell.and([Piece::words(way), left.into(), Piece::words("left over")])
}
