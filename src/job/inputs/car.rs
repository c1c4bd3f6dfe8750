//! The inputs about engine, car and run. All but mass and torque may stay blank: what is taken then is [`Defaults`]', and said.

use super::{GEARS, Kind, Row, inputs, quantity, whole};
use crate::gearing::Layout;
use crate::job::{Job, Pull};
use crate::motion::car::Defaults;
use crate::units::{AngularVelocity, Plain, Power, Share, System, limits, unit};

inputs! {
    /// The texts about engine, car and run.
    PullField of pull: Pull;

    /// Mass with driver and load.
    Mass at mass: quantity("mass", "mass with driver", &limits::MASS).needed();
    /// Share of the weight on the driven axle.
    DrivenShare at driven_share: quantity("driven-share", "weight on the driven axle", &limits::SHARE)
        .or(driven_share);
    /// Distance between the axles.
    Wheelbase at wheelbase: quantity("wheelbase", "wheelbase", &limits::WHEELBASE)
        .or(|job| limits::bare(Defaults::wheelbase().value, job.units));
    /// Height of the centre of gravity.
    GravityHeight at gravity_height: quantity("gravity-height", "height of the centre of gravity", &limits::GRAVITY_HEIGHT)
        .or(|job| limits::bare(Defaults::gravity_height().value, job.units));
    /// Drag coefficient times frontal area.
    DragArea at drag_area: quantity("drag-area", "drag area", &limits::DRAG_AREA)
        .or(|job| limits::bare(Defaults::drag_area().value, job.units));
    /// Rolling resistance over weight.
    Rolling at rolling: quantity("rolling-resistance", "rolling resistance", &limits::ROLLING)
        .or(|job| limits::bare(Plain(Defaults::rolling().value), job.units));
    /// Greatest grip of the tyres over load.
    Grip at grip: quantity("grip", "grip of the tyres", &limits::GRIP).or(|job| limits::bare(Plain(Defaults::grip().value), job.units));
    /// Share that one gear mesh passes on.
    MeshEfficiency at mesh_efficiency: quantity("mesh-efficiency", "efficiency of each mesh", &limits::SHARE)
        .or(|job| limits::bare(Share(Defaults::efficiencies(false).mesh.value), job.units));
    /// Share that the final drive passes on.
    AxleEfficiency at axle_efficiency: quantity("axle-efficiency", "efficiency of the axle", &limits::SHARE)
        .or(|job| limits::bare(Share(Defaults::efficiencies(two_shafts(job)).final_drive.value), job.units));
    /// Inertia of engine, flywheel and clutch cover.
    EngineInertia at engine_inertia: quantity("engine-inertia", "inertia of engine and flywheel", &limits::INERTIA).or(by_rule);
    /// Inertia of the box, reduced to its input shaft.
    BoxInertia at box_inertia: quantity("box-inertia", "inertia of the gearbox, at its input", &limits::INERTIA).or(by_rule);
    /// Inertia of all wheels together.
    WheelInertia at wheel_inertia: quantity("wheel-inertia", "inertia of all wheels", &limits::INERTIA).or(by_rule);
    /// Mass of a trailer.
    Trailer at trailer: quantity("trailer", "trailer", &limits::TRAILER).or(|_| "none".into());
    /// Height above the sea of where the car is driven.
    Altitude at altitude: quantity("altitude", "height above the sea", &limits::ALTITUDE)
        .or(|job| limits::bare(Defaults::altitude().value, job.units));
    /// Rows of a dynamometer or points of a curve: rpm and torque or power.
    Rows at rows: Row::new("dyno-rows", "rpm and torque or power, a point a line; a head line names the units", Kind::Lines);
    /// Peak torque.
    PeakTorque at peak_torque: quantity("peak-torque", "peak torque", &limits::TORQUE);
    /// Engine speed of peak torque.
    PeakTorqueAt at peak_torque_at: quantity("peak-torque-at", "torque peak at", &limits::ENGINE_SPEED).or(peak_torque_at);
    /// Peak power.
    PeakPower at peak_power: quantity("peak-power", "peak power", &limits::POWER);
    /// Engine speed of peak power.
    PeakPowerAt at peak_power_at: quantity("peak-power-at", "power peak at", &limits::ENGINE_SPEED);
    /// The engine speed that is not to be passed.
    Limit at limit: quantity("rev-limit", "rev limit", &limits::ENGINE_SPEED).or(|_| "none".into());
    /// The share of peak power that still counts as the power band.
    BandShare at band_share: quantity("band-share", "power band from", &limits::SHARE)
        .or(|job| limits::bare(Share(Defaults::band_share().value), job.units));
    /// Barometric pressure of the test.
    AirPressure at air_pressure: quantity("air-pressure", "air pressure of the test", &limits::AIR_PRESSURE);
    /// Air temperature of the test.
    AirTemperature at air_temperature: quantity("air-temperature", "air temperature", &limits::AIR_TEMPERATURE);
    /// Relative humidity of the test.
    AirHumidity at air_humidity: quantity("air-humidity", "relative humidity", &limits::HUMIDITY).or(|_| "0".into());
    /// Engine speed held at a standing start.
    Launch at launch: quantity("launch", "standing start at", &limits::ENGINE_SPEED)
        .or(|job| limits::bare(unit::RPM.of(Defaults::launch_rpm().value), job.units));
    /// Time without thrust in each shift.
    ShiftTime at shift_time: quantity("shift-time", "time for a shift", &limits::SHIFT_TIME)
        .or(|job| limits::bare(unit::SECOND.of(Defaults::shift_time_s().value), job.units));
    /// The speeds whose time is asked for, separated by semicolons.
    Speeds at speeds: Row::new("run-speeds", "speeds to time, separated by ;", Kind::Quantities(&limits::ROAD_SPEED))
        .or(|job| usual_speeds(job.units).into());
    /// The speed at which a rolling start begins.
    RollFrom at roll_from: quantity("roll-from", "rolling start from", &limits::ROAD_SPEED);
    /// The speed at which a rolling start ends.
    RollTo at roll_to: quantity("roll-to", "rolling start to", &limits::ROAD_SPEED);
    /// The gear of a rolling start.
    RollGear at roll_gear: whole("roll-gear", "rolling start in gear", GEARS).or(|_| "top".into());
}

/// What stands on the driven axle, by the driven wheels.
fn driven_share(job: &Job) -> String {
    let usual = || Defaults::drive(two_shafts(job)).value;
    let drive = if job.pull.drive.is_nothing() { Some(usual()) } else { job.pull.drive.value() };
    drive.map_or_else(String::new, |drive| limits::bare(Share(Defaults::driven_share(drive).value), job.units))
}

/// What stands in for inertias that are not typed.
fn by_rule(_: &Job) -> String {
    "by rule".into()
}

/// Where peak torque is put when only its amount is typed; nothing where that is not typed either.
fn peak_torque_at(job: &Job) -> String {
    let typed = &job.pull;
    if typed.peak_torque.is_blank() {
        return String::new();
    }
    let power = typed.peak_power.read::<Power>(&limits::POWER).ok();
    let power_at = power.and_then(|_| typed.peak_power_at.read::<AngularVelocity>(&limits::ENGINE_SPEED).ok());
    limits::bare(Defaults::peak_torque_at(power_at).value, job.units)
}

/// Whether the box of the first setup has two shafts.
fn two_shafts(job: &Job) -> bool {
    job.setups.first().is_some_and(|setup| setup.gearbox.layout == Layout::TwoShaft)
}

/// The speeds that are timed where none are asked for, as they would be typed in these units.
pub fn usual_speeds(units: System) -> &'static str {
    match units {
        System::Inch => "30; 60; 100",
        System::Metric => "50; 100; 160",
    }
}
