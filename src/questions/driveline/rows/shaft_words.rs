//! What the shafts and joints of a line are called, and how a shaft points in words.

use crate::driveline::Direction;
use crate::units::number::ordinal;
use crate::units::{Angle, System, limits, unit};

/// The name of a joint of so many, counted from 0.
pub fn joint_name(at: usize, many: usize) -> String {
    match at {
        0 => "front".into(),
        _ if at + 1 == many => "rear".into(),
        _ if many == 3 => "middle".into(),
        _ => ordinal(at),
    }
}

/// The name of a shaft of so many, the gearbox first, the axle's pinion last.
fn shaft_name(at: usize, many: usize) -> String {
    match at {
        0 => "gearbox".into(),
        _ if at + 1 == many => "nose".into(),
        _ if many == 3 => "shaft".into(),
        _ => format!("{} piece", ordinal(at - 1)),
    }
}

/// `gearbox 3° down`, `shaft 4.8° down, 1° right`, `nose 3° up`, `shaft level`: as it was taken.
pub fn sloping(at: usize, many: usize, shaft: Direction) -> String {
    format!("{} {}", shaft_name(at, many), leaning(at > 0 && at + 1 == many, shaft))
}

/// How a shaft points, an axle's by its nose.
fn leaning(is_nose: bool, shaft: Direction) -> String {
    let side = side_view(is_nose, shaft);
    if is_straight(shaft.plan()) { side } else { format!("{side}, {}", plan_view(shaft)) }
}

/// How a shaft points in side view: `3° down`.
pub fn side_view(is_nose: bool, shaft: Direction) -> String {
    told(shaft.side(), if is_nose { ["up", "down"] } else { ["down", "up"] }, "level")
}

/// How a shaft points in plan view: `1° right`.
pub fn plan_view(shaft: Direction) -> String {
    told(shaft.plan(), ["right", "left"], "straight")
}

/// Whether an angle is none that can be measured.
pub fn is_straight(angle: Angle) -> bool {
    unit::DEGREE.number(angle.abs()) < 0.005
}

fn told(angle: Angle, [positive, negative]: [&str; 2], none: &str) -> String {
    if is_straight(angle) {
        return none.into();
    }
    let way = if unit::DEGREE.number(angle) > 0.0 { positive } else { negative };
    // Both systems measure angles in degrees.
    format!("{} {way}", limits::say(angle.abs(), System::Metric))
}
