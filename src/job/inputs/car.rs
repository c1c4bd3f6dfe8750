//! What is typed about engine, car and run. All but mass and torque may stay blank: what is taken then is [`Defaults`]', and said.

use super::{GEARS, Kind, Row, quantity, whole};
use crate::gearing::Layout;
use crate::job::Job;
use crate::job::choice::{Chosen, ShiftBy};
use crate::job::document::document;
use crate::motion::atmosphere::Standard;
use crate::motion::car::Defaults;
use crate::motion::car::Drive;
use crate::motion::curve::rows::MeasuredAt;
use crate::units::Typed;
use crate::units::{AngularVelocity, Plain, Power, Share, System, limits, unit};

document! {
    /// The texts about engine, car and run, and what is chosen. All but mass and torque or power may stay blank.
    pub struct Pull, PullField of pull {}
    left out while blank {
        /// Mass with driver and load.
        mass: Typed, Mass: quantity("mass", "mass with driver", &limits::MASS).needed();
        /// Share of the weight on the driven axle.
        driven_share: Typed, DrivenShare: quantity("driven-share", "weight on the driven axle", &limits::SHARE).or(driven_share);
        /// Distance between the axles.
        wheelbase: Typed, Wheelbase: quantity("wheelbase", "wheelbase", &limits::WHEELBASE)
            .or(|job| limits::bare(Defaults::wheelbase().value, job.units));
        /// Height of the centre of gravity.
        gravity_height: Typed, GravityHeight: quantity("gravity-height", "height of the centre of gravity", &limits::GRAVITY_HEIGHT)
            .or(|job| limits::bare(Defaults::gravity_height().value, job.units));
        /// Drag coefficient times frontal area.
        drag_area: Typed, DragArea: quantity("drag-area", "drag area", &limits::DRAG_AREA)
            .or(|job| limits::bare(Defaults::drag_area().value, job.units));
        /// Rolling resistance over weight.
        rolling: Typed, Rolling: quantity("rolling-resistance", "rolling resistance", &limits::ROLLING)
            .or(|job| limits::bare(Plain(Defaults::rolling().value), job.units));
        /// Greatest grip of the tyres over load.
        grip: Typed, Grip: quantity("grip", "grip of the tyres", &limits::GRIP)
            .or(|job| limits::bare(Plain(Defaults::grip().value), job.units));
        /// Share that one gear mesh passes on.
        mesh_efficiency: Typed, MeshEfficiency: quantity("mesh-efficiency", "efficiency of each mesh", &limits::SHARE)
            .or(|job| limits::bare(Share(Defaults::efficiencies(false).mesh.value), job.units));
        /// Share that the final drive passes on.
        axle_efficiency: Typed, AxleEfficiency: quantity("axle-efficiency", "efficiency of the axle", &limits::SHARE)
            .or(|job| limits::bare(Share(Defaults::efficiencies(two_shafts(job)).final_drive.value), job.units));
        /// Inertia of engine, flywheel and clutch cover.
        engine_inertia: Typed, EngineInertia: quantity("engine-inertia", "inertia of engine and flywheel", &limits::INERTIA).or(by_rule);
        /// Inertia of the box, reduced to its input shaft.
        box_inertia: Typed, BoxInertia: quantity("box-inertia", "inertia of the gearbox, at its input", &limits::INERTIA).or(by_rule);
        /// Inertia of all wheels together.
        wheel_inertia: Typed, WheelInertia: quantity("wheel-inertia", "inertia of all wheels", &limits::INERTIA).or(by_rule);
        /// Mass of a trailer.
        trailer: Typed, Trailer: quantity("trailer", "trailer", &limits::TRAILER).or(|_| "none".into());
        /// Height above the sea of where the car is driven.
        altitude: Typed, Altitude: quantity("altitude", "height above the sea", &limits::ALTITUDE)
            .or(|job| limits::bare(Defaults::altitude().value, job.units));
        /// Rows of a dynamometer or points of a curve: rpm and torque or power.
        rows: Typed, Rows: Row::new("dyno-rows", "rpm and torque or power, a point a line; a head line names the units", Kind::Lines);
        /// The engine's greatest torque, from a data sheet.
        peak_torque: Typed, PeakTorque: quantity("peak-torque", "peak torque", &limits::TORQUE);
        /// Engine speed of peak torque.
        peak_torque_at: Typed, PeakTorqueAt: quantity("peak-torque-at", "torque peak at", &limits::ENGINE_SPEED).or(peak_torque_at);
        /// The engine's greatest power, from a data sheet.
        peak_power: Typed, PeakPower: quantity("peak-power", "peak power", &limits::POWER);
        /// Engine speed of peak power.
        peak_power_at: Typed, PeakPowerAt: quantity("peak-power-at", "power peak at", &limits::ENGINE_SPEED);
        /// The engine speed that is not to be passed.
        limit: Typed, Limit: quantity("rev-limit", "rev limit", &limits::ENGINE_SPEED).or(|_| "none".into());
        /// The share of peak power that still counts as the power band.
        band_share: Typed, BandShare: quantity("band-share", "power band from", &limits::SHARE)
            .or(|job| limits::bare(Share(Defaults::band_share().value), job.units));
        /// Barometric pressure of the test.
        air_pressure: Typed, AirPressure: quantity("air-pressure", "air pressure of the test", &limits::AIR_PRESSURE);
        /// Air temperature of the test.
        air_temperature: Typed, AirTemperature: quantity("air-temperature", "air temperature", &limits::AIR_TEMPERATURE);
        /// Relative humidity of the test.
        air_humidity: Typed, AirHumidity: quantity("air-humidity", "relative humidity", &limits::HUMIDITY).or(|_| "0".into());
        /// Engine speed held at a standing start.
        launch: Typed, Launch: quantity("launch", "standing start at", &limits::ENGINE_SPEED)
            .or(|job| limits::bare(unit::RPM.of(Defaults::launch_rpm().value), job.units));
        /// Time without thrust in each shift.
        shift_time: Typed, ShiftTime: quantity("shift-time", "time for a shift", &limits::SHIFT_TIME)
            .or(|job| limits::bare(unit::SECOND.of(Defaults::shift_time_s().value), job.units));
        /// The speeds whose time is asked for, separated by semicolons.
        speeds: Typed, Speeds: Row::new("run-speeds", "speeds to time, separated by ;", Kind::Quantities(&limits::ROAD_SPEED))
            .or(|job| usual_speeds(job.units).into());
        /// The speed at which a rolling start begins.
        roll_from: Typed, RollFrom: quantity("roll-from", "rolling start from", &limits::ROAD_SPEED);
        /// The speed at which a rolling start ends.
        roll_to: Typed, RollTo: quantity("roll-to", "rolling start to", &limits::ROAD_SPEED);
        /// The gear of a rolling start.
        roll_gear: Typed, RollGear: whole("roll-gear", "rolling start in gear", GEARS).or(|_| "top".into());
    }
    always written {
        /// The driven wheels; blank for what is usual for the layout.
        drive: Chosen<Drive>;
        /// Where a measured curve was measured; blank for what its head says, else at the engine.
        curve_at: Chosen<MeasuredAt>;
        /// The standard that a measured curve is corrected to.
        standard: Chosen<Standard>;
        /// The rule of the upshifts; blank for the quickest run.
        rule: Chosen<ShiftBy>;
    }
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
