//! What the engine is taken for, in words: where its curve comes from, what was taken for what in pasted rows, how it was corrected.

use crate::motion::curve::rows::{Detected, Done, Quantity, Reading};
use crate::motion::curve::{Band, CurveOrigin, EngineCurve};
use crate::questions::Source;
use crate::units::common::show_rpm;
use crate::units::{AngularVelocity, number};

/// The engine in a few sentences; what to type where there is none.
pub fn words(source: Source<'_>) -> String {
    let pull = &source.conditions.pull;
    let Some(curve) = &pull.curve else {
        return "Give the engine’s peak torque or power, or paste a measured curve, and the car’s mass.".into();
    };
    let mut said = vec![peaks(curve)];
    said.extend(pull.detected.as_ref().map(columns));
    said.extend(
        pull.correction
            .map(|correction| format!("Torque and power are × {} to {}.", number::show(correction.factor, 3), correction.standard.name())),
    );
    if curve.origin() == CurveOrigin::Generic && source.job.pull.standard.value().is_some() {
        said.push("Peaks are taken as they are typed: only measured rows are corrected.".into());
    }
    said.extend(curve.gaps().iter().map(gap));
    said.join(" ")
}

fn rpm(speed: AngularVelocity) -> String {
    show_rpm(speed)
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
    let columns = format!("Columns taken: {} for rpm, {} for {quantity}{assumed}.", detected.speed_column, detected.value_column);
    let others = detected.others.iter().map(other);
    std::iter::once(columns).chain(others).chain(detected.done.iter().map(done)).collect::<Vec<_>>().join(" ")
}

/// `They could also be 1 for rpm, 3 for power in kW: name the columns in a head line.`
fn other(reading: &Reading) -> String {
    let quantity = match reading.quantity {
        Quantity::Torque(unit) => format!("torque in {unit}"),
        Quantity::Power(unit) => format!("power in {unit}"),
    };
    let (speed, value) = (reading.speed_column, reading.value_column);
    format!("They could also be {speed} for rpm, {value} for {quantity}: name the columns in a head line.")
}

/// What was done to the rows, as a sentence.
fn done(done: &Done) -> String {
    let rows = |many: usize| if many == 1 { "1 row".to_owned() } else { format!("{many} rows") };
    match done {
        Done::Swapped => "Rows and columns were swapped.".into(),
        Done::LineOfRows => "The line was cut into rows at its semicolons.".into(),
        Done::Reversed => "The rows went from the highest rpm down and were turned round.".into(),
        Done::Sorted => "The rows were put in order of rpm.".into(),
        Done::OneSweep { rising, left_out } => {
            format!(
                "One pull was taken, the {} one; {} of the others left out.",
                if *rising { "rising" } else { "falling" },
                rows(*left_out)
            )
        }
        Done::Averaged { rows: many } => format!("{} at a repeated rpm averaged.", rows(*many)),
        Done::AtRestLeftOut { rows: many } => format!("{} at standstill left out.", rows(*many)),
        Done::ThousandsOfRpm => "Engine speeds were read as thousands of rpm.".into(),
        Done::DecimalComma { column } => format!("The comma in column {column} was read as a decimal point."),
        Done::BroughtToEngine { efficiency } => {
            format!("Figures of the wheels: divided by {}, what comes through the axle, to be the engine’s.", number::show(*efficiency, 2))
        }
    }
}

fn gap(gap: &Band) -> String {
    format!("Between {} and {} rpm there is no point: the curve is a guess there; add rows.", rpm(gap.from), rpm(gap.to))
}
