//! How large the working angles of a line may be, as published and as common practice has it.

use crate::units::common::{in_rpm, rpm};
use crate::units::{Angle, AngularVelocity, unit};

/// The largest working angle at a shaft speed in rpm, in degrees.
///
/// Source: rules of a driveline maker (3.2, 3.7, 4.2 and 5.0° at 5,000, 4,500, 4,000 and 3,500 rpm), carried on by the ladder of the trade
/// that usually names SAE AE-7 (from memory). Computed: each holds the shaft's angular acceleration near 1,000 rad/s².
const LADDER: [(f64, f64); 8] =
    [(1_500.0, 11.5), (2_000.0, 8.67), (2_500.0, 7.0), (3_000.0, 5.83), (3_500.0, 5.0), (4_000.0, 4.25), (4_500.0, 3.67), (5_000.0, 3.25)];

/// The largest working angle at a shaft speed.
///
/// Between two rows in a straight line; below 1,500 rpm as there; above 5,000 rpm the angle times the speed stays what it is at 5,000,
/// which holds the acceleration.
pub fn largest_angle(speed: AngularVelocity) -> Angle {
    let rpm = in_rpm(speed).abs();
    let first = LADDER.first().map_or(0.0, |(_, degrees)| *degrees);
    let last = LADDER.last().map_or(0.0, |(at, degrees)| at * degrees / rpm);
    let between = LADDER.windows(2).find_map(|pair| match pair {
        [(from, high), (to, low)] if (*from..=*to).contains(&rpm) => Some(high + (low - high) * (rpm - from) / (to - from)),
        _ => None,
    });
    let is_slow = LADDER.first().is_some_and(|(least, _)| rpm < *least);
    unit::DEGREE.of(if is_slow { first } else { between.unwrap_or(last) })
}

/// How fast a shaft may turn with its largest working angle: the inverse of [`largest_angle`]. None for an angle that no speed allows.
///
/// ```
/// use layshaft::driveline::joint_limits::fastest;
/// use layshaft::units::{common::in_rpm, unit};
/// // 16,250 ÷ 2; half way from 5° at 3,500 rpm to 4.25° at 4,000; no speed.
/// let rpm = |degrees| fastest(unit::DEGREE.of(degrees)).map(|speed| in_rpm(speed).round());
/// assert_eq!([2.0, 4.625, 12.0].map(rpm), [Some(8_125.0), Some(3_750.0), None]);
/// ```
pub fn fastest(angle: Angle) -> Option<AngularVelocity> {
    let degrees = unit::DEGREE.number(angle.abs());
    let between = LADDER.windows(2).find_map(|pair| match pair {
        [(from, high), (to, low)] if (*low..=*high).contains(&degrees) => Some(from + (to - from) * (high - degrees) / (high - low)),
        _ => None,
    });
    let beyond = LADDER.last().filter(|(_, least)| degrees > 0.0 && degrees < *least).map(|(at, least)| at * least / degrees);
    between.or(beyond).map(rpm)
}

/// The least working angle that keeps the needles of a joint rolling: half a degree.
///
/// Source: a driveline design guide that quotes SAE AE-7, and service manuals of vehicles.
pub fn least_angle() -> Angle {
    unit::DEGREE.of(0.5)
}

/// How far the two ends of a shaft may differ: a degree. Source: as [`least_angle`].
pub fn most_difference() -> Angle {
    unit::DEGREE.of(1.0)
}

/// The largest resultant of a line of joints: the angle of a single joint whose speed swings by 0.0027, just under 3°.
///
/// Source: an industrial handbook of cardan shafts, section 3.
pub fn most_left_over() -> Angle {
    super::Joint::of_swing(0.0027).angle()
}

/// The working angle at which a single joint of a car begins to bind: about 30° (from memory; the maker’s own figure holds before it).
pub fn binding_angle() -> Angle {
    unit::DEGREE.of(30.0)
}
