//! Torque and power side by side: power is torque times speed, so the two columns tell each other's units.

use super::Quantity;
use super::columns::Candidate;
use super::table::Row;
use crate::motion::{in_newton_metres, in_rpm};

/// Units that go together, the commonest first. Kilowatts with pounds-feet come last: they differ from metric horsepower with
/// newton metres by 0.3 % only, and nobody mixes them so.
const TOGETHER: [(&str, &str); 8] =
    [("lbf·ft", "hp"), ("N·m", "kW"), ("N·m", "PS"), ("kgf·m", "PS"), ("N·m", "hp"), ("lbf·ft", "PS"), ("kgf·m", "hp"), ("lbf·ft", "kW")];

/// How near torque and power must agree, as a share: hp and PS are 1.4 % apart.
const NEAR: f64 = 0.007;

/// The candidates as they are; where units are assumed and a column of torque agrees with one of power, those that agree, in the units
/// that go together best.
pub(super) fn that_agree(candidates: Vec<Candidate>, rows: &[Row]) -> Vec<Candidate> {
    let is_torque = |candidate: &&Candidate| matches!(candidate.figures.quantity(), Quantity::Torque(_));
    let torques = || candidates.iter().filter(is_torque);
    let powers = || candidates.iter().filter(|candidate| !is_torque(candidate));
    if !candidates.iter().any(|candidate| candidate.assumed) {
        return candidates;
    }
    let mut agreeing: Vec<(usize, Candidate, Candidate)> = torques()
        .flat_map(|torque| powers().map(move |power| (*torque, *power)))
        .filter(|(torque, power)| agree(torque, power, rows))
        .filter_map(|(torque, power)| Some((rank(&torque, &power)?, torque, power)))
        .collect();
    if agreeing.is_empty() {
        return candidates;
    }
    agreeing.sort_by_key(|(rank, ..)| *rank);
    agreeing.into_iter().flat_map(|(_, torque, power)| [torque.known(), power.known()]).collect()
}

fn rank(torque: &Candidate, power: &Candidate) -> Option<usize> {
    let (Quantity::Torque(of_torque), Quantity::Power(of_power)) = (torque.figures.quantity(), power.figures.quantity()) else {
        return None;
    };
    TOGETHER.iter().position(|pair| *pair == (of_torque, of_power))
}

/// Whether two readings of one speed column, of different columns of figures, give the same torque on the whole.
fn agree(torque: &Candidate, power: &Candidate, rows: &[Row]) -> bool {
    let (a, b) = (torque.reading(), power.reading());
    if a.speed_column != b.speed_column || a.value_column == b.value_column {
        return false;
    }
    // summed with the speed: as powers, so that coarse rounding at low speed counts for little
    let sum = |candidate: &Candidate| -> f64 {
        let points = rows.iter().filter_map(|row| candidate.point(row).ok());
        points.map(|point| in_newton_metres(point.torque) * in_rpm(point.speed)).filter(|power| power.is_finite()).sum()
    };
    let (of_torque, of_power) = (sum(torque), sum(power));
    of_torque > 0.0 && (of_power / of_torque - 1.0).abs() <= NEAR
}
