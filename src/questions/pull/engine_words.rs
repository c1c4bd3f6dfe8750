//! What the engine is taken for, in words: where its curve comes from, what was taken for what in pasted rows, how it was corrected.

use crate::job::Job;
use crate::motion::curve::rows::{Detected, Quantity};
use crate::motion::curve::{Band, CurveOrigin, EngineCurve};
use crate::questions::Conditions;
use crate::units::common::in_rpm;
use crate::units::{AngularVelocity, number};

/// The engine in a few sentences; what to type where there is none.
pub fn words(job: &Job, conditions: &Conditions) -> String {
    let pull = &conditions.pull;
    let Some(curve) = &pull.curve else {
        return "Give the engine’s peak torque or power, or paste a measured curve, and the car’s mass.".into();
    };
    let mut said = vec![peaks(curve)];
    said.extend(pull.detected.as_ref().map(columns));
    said.extend(
        pull.correction
            .map(|correction| format!("Torque and power are × {} to {}.", number::show(correction.factor, 3), correction.standard.name())),
    );
    if curve.origin() == CurveOrigin::Generic && job.pull.standard.value().is_some() {
        said.push("Peaks are taken as they are typed: only measured rows are corrected.".into());
    }
    said.extend(curve.gaps().iter().map(gap));
    said.join(" ")
}

fn rpm(speed: AngularVelocity) -> String {
    number::show(in_rpm(speed), 0)
}

/// `Measured curve, 1,000 to 6,500 rpm; most torque at 3,500 rpm, 20 % more than at peak power; most power at 5,300 rpm.`
fn peaks(curve: &EngineCurve) -> String {
    let made = match curve.origin() {
        CurveOrigin::Points => "Measured curve",
        CurveOrigin::Generic => "Generic curve through the peaks",
    };
    let (range, torque, power) = (curve.range(), curve.peak_torque(), curve.peak_power());
    let rise =
        curve.torque_rise().map_or_else(String::new, |rise| format!(", {} % more than at peak power", number::show(rise * 100.0, 0)));
    format!(
        "{made}, {} to {} rpm; most torque at {} rpm{rise}; most power at {} rpm.",
        rpm(range.from),
        rpm(range.to),
        rpm(torque.speed),
        rpm(power.speed)
    )
}

/// `Columns taken: 1 for rpm, 2 for torque in lbf·ft (unit assumed: no head names it).`
fn columns(detected: &Detected) -> String {
    let quantity = match detected.quantity {
        Quantity::Torque(unit) => format!("torque in {unit}"),
        Quantity::Power(unit) => format!("power in {unit}"),
    };
    let assumed = if detected.assumed { " (unit assumed: no head names it)" } else { "" };
    format!("Columns taken: {} for rpm, {} for {quantity}{assumed}.", detected.speed_column, detected.value_column)
}

fn gap(gap: &Band) -> String {
    format!("Between {} and {} rpm there is no point: the curve is a guess there; add rows.", rpm(gap.from), rpm(gap.to))
}
