//! The rows of the joints: the slopes as typed, the angles they make, what is left over, and what would mend it.

use uom::si::angular_acceleration::radian_per_second_squared;

use super::shaft_words::{joint_name, sloping};
use crate::driveline::{Direction, Joint, Line, joint_limits};
use crate::job::{SetupChoice, SetupField, ShaftField};
use crate::questions::alike::listed;
use crate::questions::driveline::answer::{Finding, Joints};
use crate::questions::entries::{choice, entry};
use crate::questions::{Analysis, Source};
use crate::sheet::{Cell, EntryKind, Figure, Piece, Row};
use crate::units::common::show_rpm;
use crate::units::{Angle, AngularAcceleration, number, unit};

const DIRECTIONS: &str = "angle between two directions in space (vector geometry)";
const HOOKE: &str = "Hooke’s joint (any textbook of the theory of machines)";
/// Source of what several leave.
const RESULTANT: &str = "handbooks of cardan shafts; to second order in the angles";
/// Source of the angle that a speed allows.
const LADDER: &str = "a driveline maker’s rules; past them the trade’s ladder that names SAE AE-7, from memory";
/// Source of how alike the ends must be.
const MANUALS: &str = "service manuals, and a design guide that quotes SAE AE-7";

pub(super) fn deciding(source: Source<'_>) -> [Row; 2] {
    [
        source.row("slopes", "Slopes of gearbox, shaft, axle nose", |analysis| slopes_cell(source, analysis)),
        source.row("joint-angles", "Joints work at", angles_cell),
    ]
}

pub(super) fn others(source: Source<'_>) -> [Row; 6] {
    [
        source.row("shaft-yokes", "Yokes of the shaft", |analysis| {
            choice(source, analysis, Cell::default(), SetupChoice::ShaftYokes, "yokes of the shaft")
        }),
        source.row("joint-limit", "Largest joint angle at its speed", limit_cell),
        source.row("joint-ends", "The two ends differ by", ends_cell),
        source.row("pinion-slope", "Axle nose up, to leave least", best_cell),
        source.row("joint-swing", "Pinion speed over a turn", swing_cell),
        source.row("joint-acceleration", "Angular acceleration by the joints", acceleration_cell),
    ]
}

fn slopes_cell(source: Source<'_>, analysis: &Analysis) -> Cell {
    let slopes = &analysis.setup.shaft.slopes;
    let pieces = slopes.pieces.iter().copied().enumerate().map(|(at, piece)| sloping(at + 1, slopes.pieces.len() + 2, piece));
    let last = slopes.pieces.len() + 1;
    let said: Vec<String> = slopes
        .gearbox
        .map(|gearbox| sloping(0, last + 1, gearbox))
        .into_iter()
        .chain(pieces)
        .chain(slopes.pinion.map(|pinion| sloping(last.max(2), last.max(2) + 1, pinion)))
        .collect();
    let cell = if said.is_empty() { Cell::default() } else { Cell::line([Piece::words(said.join(", "))]) };
    [ShaftField::GearboxSlope, ShaftField::Slopes, ShaftField::PinionSlope].into_iter().fold(cell, |cell, field| {
        let (label, field) = (field.row().label, SetupField::Shaft(field));
        let take = format!("take the {label}, setup {}", analysis.setup.letter);
        entry(source, analysis, cell, field, label).with_entry(EntryKind::Tilt(field), take, "")
    })
}

/// What of the slopes is still needed.
fn needs(analysis: &Analysis) -> Cell {
    let slopes = &analysis.setup.shaft.slopes;
    let lacking =
        [("the gearbox", slopes.gearbox.is_none()), ("the shaft", slopes.pieces.is_empty()), ("the axle’s nose", slopes.pinion.is_none())];
    let lacking: Vec<String> = lacking.into_iter().filter(|(_, is_lacking)| *is_lacking).map(|(what, _)| what.to_owned()).collect();
    if lacking.is_empty() {
        return Cell::absent("needs slopes that make a line");
    }
    Cell::needed(format!("needs the slope of {}", listed(&lacking)))
}

fn with_joints(analysis: &Analysis, cell: impl Fn(&Joints) -> Cell) -> Cell {
    analysis.driveline().joints.as_ref().map_or_else(|| needs(analysis), cell)
}

pub(super) fn degrees(angle: Angle) -> String {
    format!("{}°", number::show(unit::DEGREE.number(angle), 1))
}

pub(super) fn figure(key: &str, angle: Angle) -> Figure {
    Figure::quantity(&format!("driveline.{key}"), &angle, &unit::DEGREE, 1)
}

fn angles_cell(analysis: &Analysis) -> Cell {
    with_joints(analysis, |joints| {
        let many = joints.angles.len();
        let angle = |(at, angle): (usize, &Angle)| [angle_figure(joints, at, *angle).into(), Piece::words(joint_name(at, many))];
        let angles: Vec<Piece> = joints.angles.iter().enumerate().flat_map(angle).collect();
        let left = figure("left_over", joints.left_over).by("β² = |β₁² ∠ 2α₁ − β₂² ∠ 2α₂ + …|", left_over_filled(joints), RESULTANT);
        let cell = Cell::line(angles).and([Piece::words("left over"), left.into()]);
        let findings = joints.findings();
        let cell = findings.iter().fold(cell, |cell, finding| cell.and([verdict(joints, *finding)]));
        match (findings.as_slice(), joints.at_speed) {
            ([], Some(at_speed)) => {
                let (allowed, rpm) = (degrees(at_speed.allowed), show_rpm(at_speed.shaft));
                cell.and([Piece::good(format!("inside the {allowed} that {rpm} rpm allows, little left over"))])
            }
            ([], None) => cell.and([up_to(joints).map_or_else(|| Piece::caution(SHARP), Piece::good)]),
            _ => cell.and_maybe(mend(joints).map(Piece::words)),
        }
    })
}

fn angle_figure(joints: &Joints, at: usize, angle: Angle) -> Figure {
    let shafts = joints.line.shafts();
    let many = shafts.len();
    let told = |at: usize| shafts.get(at).map(|shaft| sloping(at, many, *shaft)).unwrap_or_default();
    let figure = figure(&format!("joint_{}", at + 1), angle);
    let filled = format!("{}, {}: {}", told(at), told(at + 1), degrees(angle));
    let formula = "tan β = |a × b| ÷ (a · b), a and b = (1, tan plan angle, −tan side angle)";
    figure.big().by(formula, filled, DIRECTIONS)
}

fn left_over_filled(joints: &Joints) -> String {
    let shafts = joints.line.shafts();
    let bend = |pair: &[Direction]| {
        let [front, rear] = pair else { return String::new() };
        let (side, plan) = front.bend_to(*rear);
        // Which way up or right makes no difference to twice the angle.
        let way = 2.0 * (unit::RADIAN.number(plan) / unit::RADIAN.number(side)).atan().to_degrees();
        // A joint in line bends no way at all.
        let way = if way.is_finite() { way } else { 0.0 };
        format!("{}² ∠ {}°", degrees(front.angle_to(*rear)), number::show(way, 0))
    };
    let bends: Vec<String> = shafts.windows(2).map(bend).collect();
    format!("{}, yokes {}: {}", bends.join(" and "), joints.line.yokes().word(), degrees(joints.left_over))
}

fn verdict(joints: &Joints, finding: Finding) -> Piece {
    let said = said_of(joints, finding);
    match finding {
        Finding::Binds(_) => Piece::stop(said),
        Finding::TooLarge(_) => Piece::caution(format!("{said}: bring it nearer in line")),
        Finding::Uneven(_) | Finding::AddUp | Finding::LeftOver | Finding::Idle(_) => Piece::caution(said),
    }
}

/// What is wrong, in words.
fn said_of(joints: &Joints, finding: Finding) -> String {
    let of = |joint: usize| joints.angles.get(joint).copied().unwrap_or_default();
    let name = |joint: usize| joint_name(joint, joints.angles.len());
    match finding {
        Finding::Binds(joint) => {
            format!("the {} joint binds at {}, about 30° is the end of a single joint", name(joint), degrees(of(joint)))
        }
        Finding::TooLarge(joint) => {
            let at_speed = joints.at_speed.map(|at_speed| (degrees(at_speed.allowed), show_rpm(at_speed.shaft)));
            let (allowed, rpm) = at_speed.unwrap_or_default();
            format!("{} at the {} is over the {allowed} that {rpm} rpm allows", degrees(of(joint)), name(joint))
        }
        Finding::Uneven(difference) => format!("the ends differ by {}, 1° at most", degrees(difference)),
        Finding::AddUp => format!("with these yokes the joints add up, {} is left over", degrees(joints.left_over)),
        Finding::LeftOver => format!("{} is left over, 3° at most", degrees(joints.left_over)),
        Finding::Idle(joint) => format!("under 0.5° at the {} its needles do not roll", name(joint)),
    }
}

/// What would mend it: `wedge the axle 1.2° nose up and 0.4° is left`; nothing where no change of the pinion does.
fn mend(joints: &Joints) -> Option<String> {
    let is_about = |finding: &Finding| matches!(finding, Finding::Uneven(_) | Finding::AddUp | Finding::LeftOver);
    if !joints.findings().iter().any(is_about) {
        return None;
    }
    if let Some((yokes, left)) = joints.yokes {
        return Some(format!("set the yokes {} and {} is left", yokes.word(), degrees(left)));
    }
    let change = unit::DEGREE.number(joints.mended.change);
    let way = if change > 0.0 { "up" } else { "down" };
    let left = degrees(joints.mended.left_over);
    (change != 0.0).then(|| format!("wedge the axle {} nose {way} and {left} is left", degrees(joints.mended.change.abs())))
}

fn limit_cell(analysis: &Analysis) -> Cell {
    with_joints(analysis, |joints| {
        let Some(at_speed) = joints.at_speed else { return Cell::needed("needs the shaft’s speed") };
        let rpm = show_rpm(at_speed.shaft);
        let filled = format!("at {rpm} rpm: {}", degrees(at_speed.allowed));
        let formula = "5° at 3,500 rpm, 4.25 at 4,000, 3.67 at 4,500, 3.25 at 5,000; above, angle × rpm = 16,250";
        let figure = figure("joint_allowed", at_speed.allowed).by(formula, filled, LADDER);
        Cell::line([figure.into(), Piece::words(format!("at {rpm} rpm, and no less than 0.5°"))])
    })
}

fn ends_cell(analysis: &Analysis) -> Cell {
    with_joints(analysis, |joints| {
        let Some(difference) = joints.difference() else { return Cell::absent("more than two joints: what is left over decides") };
        let filled = joints.angles.iter().map(|angle| degrees(*angle)).collect::<Vec<String>>().join(" − ");
        let figure = figure("joint_difference", difference).by("β₁ − β₂, without sign; 1° at most", filled, MANUALS);
        Cell::line([figure.into(), Piece::words("1° at most")])
    })
}

fn best_cell(analysis: &Analysis) -> Cell {
    with_joints(analysis, |joints| {
        let mended = joints.mended;
        let way = |up: Angle| if unit::DEGREE.number(up) < 0.0 { "down" } else { "up" };
        let filled = format!("{} left over now, {} then", degrees(joints.left_over), degrees(mended.left_over));
        let figure =
            figure("nose_up", mended.nose_up).by("the slope, in tenths of a degree, at which least is left over", filled, RESULTANT);
        let change = unit::DEGREE.number(mended.change);
        let words = if change == 0.0 {
            "as it is".to_owned()
        } else {
            format!("{} {} from now, {} left over", degrees(mended.change.abs()), way(mended.change), degrees(mended.left_over))
        };
        Cell::line([figure.into(), Piece::words(words)])
    })
}

fn swing_cell(analysis: &Analysis) -> Cell {
    with_joints(analysis, |joints| {
        let formula = "highest − lowest of the products of (a · w) ÷ (b · w) over a turn, w across both pins of a cross";
        let filled = format!("{} % for a single joint of {}", percent(Joint::at(joints.left_over).swing()), degrees(joints.left_over));
        let pinion = Figure::percent("driveline.pinion_swing", joints.swing, 2).by(formula, filled, HOOKE);
        let first = first_joint(&joints.line);
        let (least, most) = first.speed_limits();
        let filled = format!("{} to {} times the gearbox’s speed", number::show(least, 4), number::show(most, 4));
        let shaft = Figure::percent("driveline.shaft_swing", first.swing(), 2).by("1 ÷ cos β − cos β", filled, HOOKE);
        Cell::line([pinion.into(), Piece::words("from lowest to highest")]).and([Piece::words("the shaft itself"), shaft.into()])
    })
}

fn percent(share: f64) -> String {
    number::show(100.0 * share, 2)
}

fn first_joint(line: &Line) -> Joint {
    line.joints().first().copied().unwrap_or_else(|| Joint::at(Angle::default()))
}

fn acceleration_cell(analysis: &Analysis) -> Cell {
    with_joints(analysis, |joints| {
        let Some(at_speed) = joints.at_speed else { return Cell::needed("needs the shaft’s speed") };
        let rpm = show_rpm(at_speed.shaft);
        let figure = |key: &str, acceleration: AngularAcceleration| {
            let figure =
                Figure::number(format!("driveline.{key}_rads2"), acceleration.get::<radian_per_second_squared>(), 0).in_unit("rad/s²");
            let filled = format!("at {rpm} rpm: {} rad/s²", figure.shown);
            figure.by("about ω² × β², β in radians; here exact for a single joint", filled, HOOKE)
        };
        let (pinion, piece) = (figure("pinion_shaken", at_speed.pinion), figure("shaft_shaken", at_speed.piece));
        Cell::line([pinion.into(), Piece::words("at the pinion; smooth up to 300 to 500 (from memory)")])
            .and([piece.into(), Piece::words("of the shaft; 1,000 at most (from memory)")])
    })
}

/// What the joints do, as a sentence, and whether one works too sharply; none where the slopes are not known.
pub(in crate::questions) fn said(analysis: &Analysis) -> Option<(String, bool)> {
    let joints = analysis.driveline().joints.as_ref()?;
    let angles: Vec<String> = joints.angles.iter().map(|angle| degrees(*angle)).collect();
    let driven = if joints.windup > Angle::default() { ", under drive" } else { "" };
    let angles = format!("Joints at {}{driven}", listed(&angles));
    let Some(worst) = joints.findings().first().copied() else {
        let good = if joints.at_speed.is_some() { Some("good".into()) } else { up_to(joints) };
        return Some((format!("{angles}: {}.", good.as_deref().unwrap_or(SHARP)), good.is_none()));
    };
    let mend = mend(joints).map_or_else(String::new, |mend| format!("; {mend}"));
    let is_dangerous = matches!(worst, Finding::Binds(_) | Finding::TooLarge(_));
    Some((format!("{angles}: {}{mend}.", said_of(joints, worst)), is_dangerous))
}

/// Said of an angle that no speed allows.
const SHARP: &str = "sharper than any shaft speed allows";

/// `good up to 8,125 rpm of the shaft`; none for an angle that no speed allows.
fn up_to(joints: &Joints) -> Option<String> {
    let largest = joints.angles.iter().fold(Angle::default(), |most, angle| if *angle > most { *angle } else { most });
    Some(format!("good up to {} rpm of the shaft", show_rpm(joint_limits::fastest(largest)?)))
}

/// The limits that the joints are held to, as they are named among what figures rest on.
pub fn limits_words() -> String {
    let least = degrees(joint_limits::least_angle());
    format!("at least {least}, the two ends within 1°, at most 3° left over")
}
