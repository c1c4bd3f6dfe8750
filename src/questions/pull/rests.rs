//! What the figures of Pull rest on: the engine, the car, its losses, how it is driven, and the air.

use crate::gearing::Layout;
use crate::motion::car::{Car, Drive, Rotating, Sourced};
use crate::motion::curve::CurveOrigin;
use crate::motion::plan::Shifting;
use crate::motion::shift::Rule;
use crate::questions::gears::rests::axle;
use crate::questions::rests::{by_setup, of, typed, usual};
use crate::questions::{Analysis, Source, road};
use crate::sheet::Rest;
use crate::units::common::{metres_per_second, show_rpm};
use crate::units::{AngularVelocity, Area, Length, Mass, Measured, MomentOfInertia, Share, System, Velocity, number, show, unit};

/// Every value, once.
pub fn rests(source: Source<'_>) -> Vec<Rest> {
    let mut rests = engine(source);
    rests.extend(losses(source));
    rests.extend(source.conditions.pull.car.iter().flat_map(|car| of_car(source, car)));
    if source.conditions.pull.trailer > Mass::default() {
        rests.push(typed("Trailer", source.show(&source.conditions.pull.trailer, 0)));
    }
    rests.extend(driving(source));
    rests.extend(by_setup(source, axle));
    rests.extend(road::rests::rolling(source));
    rests
}

/// What an engine loses with height, and by which rule.
const THINNER_AIR: &str = "an engine without a blower, by the density of the air (Gagg and Farrar, SAE 1934, from memory)";

fn rpm(speed: AngularVelocity) -> String {
    format!("{} rpm", show_rpm(speed))
}

fn percent(share: f64) -> String {
    format!("{} %", number::show(100.0 * share, 0))
}

/// Where the curve comes from, and its peaks: the peak torque first.
pub fn engine(source: Source<'_>) -> Vec<Rest> {
    let pull = &source.conditions.pull;
    let Some(curve) = &pull.curve else { return Vec::new() };
    let (torque, power) = (curve.peak_torque(), curve.peak_power());
    let peak_torque = format!("{} at {}", source.show(&torque.torque, 0), rpm(torque.speed));
    let peak_power = format!("{} at {}", source.show(&power.power, 0), rpm(power.speed));
    let made = match curve.origin() {
        CurveOrigin::Points => "measured curve, as pasted",
        CurveOrigin::Generic => "curve through the peaks as typed; a peak that was not typed follows from the others",
    };
    let rest = |label: &str, value: String| Rest { source: made.into(), ..typed(label, value) };
    let mut rests = vec![rest("Peak torque", peak_torque), rest("Peak power", peak_power)];
    rests.extend(pull.correction.map(|correction| {
        usual("Correction of the curve", format!("× {}", number::show(correction.factor, 3)), correction.standard.name().to_owned())
    }));
    if pull.altitude.is_given() {
        let left = 100.0 * crate::motion::atmosphere::engine_share_at(pull.altitude.value);
        rests.extend([
            of("Height above the sea", &pull.altitude, source.show(&pull.altitude.value, 0)),
            usual("The engine at this height", format!("{} % of its torque", number::show(left, 0)), THINNER_AIR.to_owned()),
        ]);
    }
    rests.push(match pull.limit {
        Some(limit) => typed("Rev limit", rpm(limit)),
        None => usual("End of the curve", rpm(curve.range().to), "a guess at what the engine turns: no rev limit is typed"),
    });
    rests
}

/// The car, its losses, and the air it moves through.
fn of_car(source: Source<'_>, car: &Car) -> Vec<Rest> {
    let units = source.reader.units;
    let length_decimals = usize::from(units == System::Inch);
    let length = |length: &Length| show(length, Length::usual(units), length_decimals);
    let area = show(&car.drag_area.value, Area::usual(units), 2);
    let air = format!("{} kg/m³", number::show(car.air_density.value.value, 3));
    let mut rests = vec![typed("Mass with driver", show(&car.mass, Mass::usual(units), 0))];
    let of_setup = |analysis: &Analysis| car.with_box(analysis.setup.layout == Layout::TwoShaft);
    rests.extend(by_setup(source, |analysis| {
        let drive = of_setup(analysis).drive;
        Some(of("Driven wheels", &drive, drive_words(drive.value)))
    }));
    rests.extend(by_setup(source, |analysis| {
        let car = of_setup(analysis);
        let share = of("Weight on the driven axle", &car.driven_share, percent(car.driven_share.value));
        (car.drive.value != Drive::All).then_some(share)
    }));
    rests.extend([
        of("Wheelbase", &car.wheelbase, length(&car.wheelbase.value)),
        of("Height of the centre of gravity", &car.gravity_height, length(&car.gravity_height.value)),
        of("Drag area", &car.drag_area, area),
        of("Rolling resistance at a crawl", &car.rolling, number::show(car.rolling.value, 3)),
        of("Rolling resistance grows", &car.rolling_growth, growth(units, car.rolling_growth.value)),
        of("Grip of the tyres", &car.grip, number::show(car.grip.value, 2)),
        of("Rotating parts", &car.rotating, rotating(units, car.rotating.value)),
        of("Density of the air", &car.air_density, air),
    ]);
    rests
}

/// What the losses leave over, with a mass or without.
fn losses(source: Source<'_>) -> Vec<Rest> {
    let losses = source.conditions.pull.efficiencies;
    if source.conditions.pull.curve.is_none() {
        return Vec::new();
    }
    let mut rests = vec![of("Efficiency of each mesh", &losses.mesh, percent(losses.mesh.value))];
    rests.extend(by_setup(source, |analysis| {
        let axle = losses.with_box(analysis.setup.layout == Layout::TwoShaft).final_drive;
        Some(of("Efficiency of the axle", &axle, percent(axle.value)))
    }));
    rests
}

/// `as much again at 100 mph`; the growth is a share for each m/s.
fn growth(units: System, share_s_per_m: f64) -> String {
    format!("as much again at {}", show(&metres_per_second(1.0 / share_s_per_m), Velocity::usual(units), 0))
}

fn drive_words(drive: Drive) -> &'static str {
    match drive {
        Drive::Front => "front",
        Drive::Rear => "rear",
        Drive::All => "all",
    }
}

fn rotating(units: System, rotating: Rotating) -> String {
    match rotating {
        Rotating::MassFactor => "by rule".into(),
        Rotating::Given { engine, gearbox, wheels } => {
            let decimals = if units == System::Inch { 0 } else { 3 };
            let shown = |inertia: MomentOfInertia| show(&inertia, MomentOfInertia::usual(units), decimals);
            format!("engine {}, gearbox {}, wheels {}", shown(engine), shown(gearbox), shown(wheels))
        }
    }
}

/// How the car is driven.
fn driving(source: Source<'_>) -> Vec<Rest> {
    let pull = &source.conditions.pull;
    if pull.car.is_none() || pull.curve.is_none() {
        return Vec::new();
    }
    let run = &pull.run;
    let seconds = show(&run.shift_time.value, &unit::SECOND, 2);
    let Share(band) = run.band_share.value;
    let rule = match run.shifting {
        Shifting::Planned => {
            usual("Shift by", "the quickest run", "all shifts of a run chosen together, grip and time for a shift counted")
        }
        Shifting::By(Rule::EqualAcceleration) => typed("Shift by", "equal acceleration"),
        Shifting::By(Rule::EqualThrust) => typed("Shift by", "equal thrust"),
        Shifting::By(Rule::At(shift)) => typed("Shift at", rpm(shift)),
    };
    let speeds = run.speeds.iter().map(|speed| show(speed, Velocity::usual(source.reader.units), 0)).collect::<Vec<_>>().join(", ");
    let speeds =
        if source.job.pull.speeds.is_blank() { usual("Speeds timed", speeds, "the usual ones") } else { typed("Speeds timed", speeds) };
    let driving = [
        of("Standing start at", &run.launch, rpm(run.launch.value)),
        of("Time for a shift", &run.shift_time, seconds),
        rule,
        of_band(&run.band_share, band),
        speeds,
    ];
    // None are timed where none of what was typed can be read.
    driving.into_iter().filter(|rest| !rest.value.is_empty()).collect()
}

fn of_band(share: &Sourced<Share>, band: f64) -> Rest {
    of("Power band from", share, format!("{} of peak power", percent(band)))
}
