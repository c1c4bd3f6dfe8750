//! The engine, read and checked: pasted rows or peaks, and the correction to a standard.

use super::Reader;
use crate::job::PullField;
use crate::motion::atmosphere::{self, Air, Correction};
use crate::motion::car::Defaults;
use crate::motion::curve::rows::{self, Detected, MeasuredAt, Told};
use crate::motion::curve::{CurveError, EngineCurve, generic};
use crate::questions::gap::Gap;
use crate::units::{AngularVelocity, Power, Pressure, Share, ThermodynamicTemperature, Torque, limits};

/// The engine's curve: pasted rows first, else through its peaks.
/// Figures that were measured at the wheels, as is chosen or as their head says, are brought to the engine by `axle`, the share that comes through the
/// final drive: on a chassis dynamometer the box runs in its direct gear.
pub(super) fn curve(reader: &mut Reader<'_>, axle: f64) -> (Option<EngineCurve>, Option<Detected>) {
    let rows = &reader.pull.rows;
    if !rows.is_blank() {
        let told = Told { system: rows.units, ..Told::default() };
        let pasted = rows::read_as(&rows.text, &told);
        let chosen = reader.pull.curve_at.value();
        let measured_at = chosen.or(pasted.detected.as_ref().and_then(|detected| detected.measured_at));
        let at_wheels = measured_at == Some(MeasuredAt::Wheels);
        let brought = at_wheels.then(|| rows::read_as(&rows.text, &Told { wheel_efficiency: Some(axle), ..told }));
        let mut pasted = brought.unwrap_or(pasted);
        if let Some(detected) = &mut pasted.detected {
            detected.measured_at = measured_at;
        }
        for problem in &pasted.problems {
            reader.warn(PullField::Rows, problem);
        }
        let curve = pasted.curve.map_err(|why| reader.refuse(PullField::Rows, &why)).ok();
        peaks_under_rows(reader);
        return (curve, pasted.detected);
    }
    (peaks(reader), None)
}

/// The peaks as typed: torque, its speed, power, its speed.
type Peaks = (Option<Torque>, Option<AngularVelocity>, Option<Power>, Option<AngularVelocity>);

fn read_peaks(reader: &mut Reader<'_>) -> Peaks {
    (
        reader.get(PullField::PeakTorque, &limits::TORQUE),
        reader.get(PullField::PeakTorqueAt, &limits::ENGINE_SPEED),
        reader.get(PullField::PeakPower, &limits::POWER),
        reader.get(PullField::PeakPowerAt, &limits::ENGINE_SPEED),
    )
}

/// Says of each peak beside pasted rows that it is not used.
fn peaks_under_rows(reader: &mut Reader<'_>) {
    let (torque, torque_at, power, power_at) = read_peaks(reader);
    let read = [
        (torque.is_some(), PullField::PeakTorque, "peak torque"),
        (torque_at.is_some(), PullField::PeakTorqueAt, "rpm of peak torque"),
        (power.is_some(), PullField::PeakPower, "peak power"),
        (power_at.is_some(), PullField::PeakPowerAt, "rpm of peak power"),
    ];
    for (_, field, which) in read.into_iter().filter(|(is_read, ..)| *is_read) {
        reader.warn(field, &Gap::PeakUnderRows { which });
    }
}

/// A generic curve through what is known of the peaks; none where one of them cannot be read.
fn peaks(reader: &mut Reader<'_>) -> Option<EngineCurve> {
    let (torque, torque_at, power, power_at) = read_peaks(reader);
    lone_peaks(reader);
    let unread = |reader: &Reader<'_>, field, is_read: bool| !is_read && !reader.is_blank(field);
    if unread(reader, PullField::PeakTorque, torque.is_some())
        || unread(reader, PullField::PeakTorqueAt, torque_at.is_some())
        || unread(reader, PullField::PeakPower, power.is_some())
        || unread(reader, PullField::PeakPowerAt, power_at.is_some())
    {
        return None;
    }
    let power = power.zip(power_at);
    let torque_at = torque_at.unwrap_or_else(|| Defaults::peak_torque_at(power.map(|(_, at)| at)).value);
    let made: Result<EngineCurve, CurveError> = match (torque.map(|torque| (torque, torque_at)), power) {
        (Some(torque), Some(power)) => generic::from_peaks(torque, power),
        (Some((torque, at)), None) => generic::from_torque(torque, at),
        (None, Some((power, at))) => generic::from_power(power, at),
        (None, None) => return None,
    };
    made.map_err(|why| reader.refuse(if torque.is_some() { PullField::PeakTorque } else { PullField::PeakPower }, &why)).ok()
}

/// Says of a peak without its speed, or a speed without its peak, that it is not used.
fn lone_peaks(reader: &mut Reader<'_>) {
    let lone = |reader: &Reader<'_>, field, other| !reader.is_blank(field) && reader.is_blank(other);
    if lone(reader, PullField::PeakPower, PullField::PeakPowerAt) {
        reader.warn(PullField::PeakPower, &Gap::PowerWithoutSpeed);
    }
    if lone(reader, PullField::PeakPowerAt, PullField::PeakPower) {
        reader.warn(PullField::PeakPowerAt, &Gap::SpeedWithoutPeak { peak: "power" });
    }
    if lone(reader, PullField::PeakTorqueAt, PullField::PeakTorque) {
        reader.warn(PullField::PeakTorqueAt, &Gap::SpeedWithoutPeak { peak: "torque" });
    }
}

/// The correction to a standard, where one is chosen and the air of the test is given.
pub(super) fn correction(reader: &mut Reader<'_>) -> Option<Correction> {
    let standard = reader.pull.standard.value();
    let nothing = "nothing is corrected";
    let pressure: Option<Pressure> = reader.get_or(PullField::AirPressure, &limits::AIR_PRESSURE, nothing);
    let temperature: Option<ThermodynamicTemperature> = reader.get_or(PullField::AirTemperature, &limits::AIR_TEMPERATURE, nothing);
    let humidity: Option<Share> = reader.get_or(PullField::AirHumidity, &limits::HUMIDITY, nothing);
    let Some(standard) = standard else {
        let air = [PullField::AirPressure, PullField::AirTemperature, PullField::AirHumidity];
        if let Some(given) = air.into_iter().find(|field| !reader.is_blank(*field)) {
            reader.warn(given, &Gap::AirWithoutStandard);
        }
        return None;
    };
    if let Some(missing) = [PullField::AirPressure, PullField::AirTemperature].into_iter().find(|field| reader.is_blank(*field)) {
        reader.warn(missing, &Gap::AirUnknown);
    }
    let humidity = if reader.is_blank(PullField::AirHumidity) { 0.0 } else { humidity?.0 };
    let correction = atmosphere::correction(standard, &Air { pressure: pressure?, temperature: temperature?, humidity })?;
    if let Some((least, greatest)) = correction.allowed.filter(|_| !correction.is_allowed()) {
        reader.warn(PullField::AirPressure, &Gap::CorrectionBeyond { factor: correction.factor, least, greatest });
    }
    Some(correction)
}
