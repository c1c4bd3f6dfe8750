//! Curves, runs and shift points (limits in `published_motion_limits`) against reference outputs worked in 40-digit arithmetic.
//!
//! `tests/data/motion_oracle.json` was made with mpmath and checked by a second route with scipy (`how` in each of its keys).
//! Closed forms are held to 1e-9, runs to 1e-8 (relative).

use layshaft::motion::run::{Course, Start, run};
use layshaft::motion::shift::{self, Reason, Rule};
use layshaft::motion::{Car, CurvePoint, Drive, EngineCurve, Gears, Pull, Rotating, Sourced, Vehicle};
use layshaft::units::{AngularVelocity, Area, Length, Mass, MassDensity, Measured, MomentOfInertia, Time, Torque, Velocity};
use serde_json::Value;
use uom::si::{
    angular_velocity::revolution_per_minute, area::square_meter, length::meter, mass::kilogram, mass_density::kilogram_per_cubic_meter,
    moment_of_inertia::kilogram_square_meter, power::kilowatt, time::second, torque::newton_meter, velocity::meter_per_second,
};

use crate::nth;

/// Relative tolerance of closed forms.
pub(crate) const CLOSED: f64 = 1e-9;
/// Relative tolerance of runs.
pub(crate) const RUN: f64 = 1e-8;

#[track_caller]
pub(crate) fn check(what: &str, found: f64, expected: f64, relative: f64) {
    let apart = (found - expected).abs();
    assert!(
        apart <= relative * expected.abs().max(1e-12),
        "{what}: {found} against {expected}, {:e} apart (relative)",
        apart / expected.abs()
    );
}

pub(crate) fn oracle(key: &str) -> Value {
    let all: Value = serde_json::from_str(include_str!("../data/motion_oracle.json")).unwrap();
    all.get(key).unwrap().clone()
}

pub(crate) fn number(value: &Value, key: &str) -> f64 {
    value.get(key).and_then(Value::as_f64).unwrap()
}

fn list(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().filter_map(Value::as_f64).collect()
}

pub(crate) fn rpm(value: f64) -> AngularVelocity {
    AngularVelocity::new::<revolution_per_minute>(value)
}

pub(crate) fn in_rpm(value: AngularVelocity) -> f64 {
    value.get::<revolution_per_minute>()
}

pub(crate) fn mps(value: f64) -> Velocity {
    Velocity::new::<meter_per_second>(value)
}

pub(crate) fn kg(value: f64) -> Mass {
    Mass::new::<kilogram>(value)
}

pub(crate) fn curve(points: &[(f64, f64)]) -> EngineCurve {
    let points: Vec<CurvePoint> =
        points.iter().map(|(speed, torque)| CurvePoint { speed: rpm(*speed), torque: Torque::new::<newton_meter>(*torque) }).collect();
    EngineCurve::through(&points).unwrap()
}

/// The torque table of O6.
pub(crate) fn sample_curve() -> EngineCurve {
    let inputs = oracle("O6_pchip_torque_curve")["inputs"].clone();
    let points: Vec<(f64, f64)> = list(&inputs["rpm"]).into_iter().zip(list(&inputs["T_Nm"])).collect();
    curve(&points)
}

/// The car of O4 to O12: 1050 kg, f 0.014, drag area 0.756 m², engine 0.15 kg·m², wheels 3.2 kg·m², rear drive; no loss in a mesh, 8 % behind.
pub(crate) fn sample_car(grip: f64) -> Car {
    let mut car = Car::of_mass(kg(1050.0));
    car.drive = Sourced::given(Drive::Rear);
    car.driven_share = Sourced::given(0.48);
    car.wheelbase = Sourced::given(Length::new::<meter>(2.4));
    car.gravity_height = Sourced::given(Length::new::<meter>(0.52));
    (car.rolling, car.rolling_growth) = (Sourced::given(0.014), Sourced::given(0.0));
    car.drag_area = Sourced::given(Area::new::<square_meter>(0.756));
    car.grip = Sourced::given(grip);
    car.efficiencies.mesh = Sourced::given(1.0);
    car.efficiencies.final_drive = Sourced::given(0.92);
    car.air_density = Sourced::given(MassDensity::new::<kilogram_per_cubic_meter>(1.225));
    let inertia = MomentOfInertia::new::<kilogram_square_meter>;
    car.rotating = Sourced::given(Rotating::Given { engine: inertia(0.15), gearbox: inertia(0.0), wheels: inertia(3.2) });
    car
}

/// Grip beyond anything the engine gives.
pub(crate) const ENDLESS_GRIP: f64 = 1e5;

pub(crate) fn sample_gears(set: &str) -> Gears {
    let ratios = match set {
        "wide4" => vec![3.40, 2.10, 1.38, 1.00],
        "close4" => vec![2.60, 1.85, 1.34, 1.00],
        _ => vec![3.40, 2.05, 1.40, 1.00, 0.82],
    };
    Gears { ratios, final_drive: 3.90, rolling_radius: Length::new::<meter>(0.30), meshes: vec![] }
}

pub(crate) fn sample(set: &str, grip: f64, grade: f64) -> Vehicle {
    let car = sample_car(grip);
    let pull = Pull::new(&sample_curve(), &sample_gears(set), car.efficiencies, Some(rpm(6200.0))).unwrap();
    Vehicle::on_grade(pull, car, grade).unwrap()
}

/// A standing start at 3,000 rpm, shifting by equal thrust.
pub(crate) fn standing(vehicle: &Vehicle, shift_time_s: f64, speeds: &[f64], distances: &[f64]) -> Course {
    Course {
        start: Start::Standing { launch: rpm(3000.0) },
        shifts: shift::shifts(vehicle, Rule::EqualThrust),
        shift_time: Time::new::<second>(shift_time_s),
        speeds: speeds.iter().map(|v| mps(*v)).collect(),
        distances: distances.iter().map(|s| Length::new::<meter>(*s)).collect(),
        band: None,
        trace_step: None,
    }
}

/// O6: the monotone cubic equals scipy's `PchipInterpolator`, and the power peak between points is found.
#[test]
fn torque_curve_is_the_monotone_cubic_of_scipy() {
    let (curve, oracle) = (sample_curve(), oracle("O6_pchip_torque_curve"));
    for row in oracle["outputs"]["values"].as_array().unwrap() {
        let at = rpm(number(row, "rpm"));
        check("torque", curve.torque(at).unwrap().get::<newton_meter>(), number(row, "T_Nm"), CLOSED);
        check("power", curve.power(at).unwrap().get::<kilowatt>(), number(row, "P_kW"), CLOSED);
    }
    let peak = &oracle["outputs"]["peak_power"];
    check("power peak", in_rpm(curve.peak_power().speed), number(peak, "rpm"), CLOSED);
    check("peak power", curve.peak_power().power.get::<kilowatt>(), number(peak, "P_kW"), CLOSED);
    // the table's own greatest torque, 135 N·m at 3,500 rpm, is a turning point of the curve
    check("torque peak", in_rpm(curve.peak_torque().speed), 3500.0, CLOSED);
    check("peak torque", curve.peak_torque().torque.get::<newton_meter>(), 135.0, CLOSED);
}

/// O5: full runs through the gears, with slip, shift time and grip, against quadrature in 40 digits and DOP853 in time.
#[test]
fn runs_through_the_gears() {
    let oracle = oracle("O5_acceleration_run");
    let rows = oracle["outputs"].as_array().unwrap();
    assert_eq!(rows.len(), 8);
    for row in rows {
        let set = row["set"].as_str().unwrap();
        let vehicle = sample(set, if row["traction_limit_N"].is_null() { ENDLESS_GRIP } else { 0.75 }, 0.0);
        let asked = |key: &str, of: &str| -> Vec<f64> { row[key].as_array().unwrap().iter().map(|row| number(row, of)).collect() };
        let course = standing(&vehicle, number(row, "shift_time_s"), &asked("to_speed", "v_mps"), &asked("to_distance", "s_m"));
        let run = run(&vehicle, &course).unwrap();
        assert!(run.evidence.converged, "{set}");
        for (found, expected) in run.to_speed.iter().zip(row["to_speed"].as_array().unwrap()) {
            let found = found.unwrap();
            check("time to speed", found.time.get::<second>(), number(expected, "t_s"), RUN);
            check("distance to speed", found.distance.get::<meter>(), number(expected, "s_m"), RUN);
            assert_eq!(Some(found.gear.number() as u64), expected["gear"].as_u64());
        }
        for (found, expected) in run.over_distance.iter().zip(row["to_distance"].as_array().unwrap()) {
            let found = found.unwrap();
            check("time over distance", found.time.get::<second>(), number(expected, "t_s"), RUN);
            check("speed over distance", found.speed.get::<meter_per_second>(), number(expected, "v_mps"), RUN);
        }
        let lock_up = run.lock_up().unwrap();
        check("lock-up", lock_up.speed.get::<meter_per_second>(), number(row, "v_sync_mps"), CLOSED);
        for (found, expected) in course.shifts.iter().zip(row["shifts"].as_array().unwrap()) {
            check("shift", found.speed.get::<meter_per_second>(), number(expected, "v_mps"), CLOSED);
            check("after", in_rpm(found.after), number(expected, "n_after_same_speed_rpm"), CLOSED);
            let redline = expected["reason"].as_str() == Some("redline");
            assert_eq!(found.reason == Reason::Limit, redline);
        }
    }
}

/// O3: shift points on the table curve by both rules (flag F11: equal acceleration is the quicker one).
#[test]
fn shift_points_on_the_table_curve() {
    let oracle = oracle("O3_shift_points_closed_form");
    for row in oracle["outputs"]["pchip_curve_car_of_O5"].as_array().unwrap() {
        let vehicle = sample(row["set"].as_str().unwrap(), ENDLESS_GRIP, 0.0);
        let from: usize = row["shift"].as_str().unwrap().split('-').next().unwrap().parse().unwrap();
        for (rule, name) in [(Rule::EqualThrust, "thrust_rule"), (Rule::EqualAcceleration, "accel_rule")] {
            let shift = shift::shifts(&vehicle, rule).into_iter().find(|shift| shift.from == nth(from)).unwrap();
            check(name, shift.speed.get::<meter_per_second>(), number(row, &format!("{name}_v_mps")), CLOSED);
            check(name, in_rpm(shift.before), number(row, &format!("{name}_rpm")), CLOSED);
            let redline = row[format!("{name}_reason")].as_str() == Some("redline");
            assert_eq!(shift.reason == Reason::Limit, redline);
            assert!(redline || shift.residual.abs() < 1e-9, "residual {}", shift.residual);
        }
    }
}

/// O3: closed forms of the equal-thrust shift for a straight and a parabolic torque curve.
#[test]
fn shift_points_in_closed_form() {
    let oracle = oracle("O3_shift_points_closed_form");
    let efficiencies = sample_car(1.0).efficiencies;
    // straight: T = 180 − 0.015 n; two points make the monotone cubic straight. Range to 8,000 rpm so that no limit is met.
    let straight = curve(&[(500.0, 172.5), (8000.0, 60.0)]);
    for row in oracle["outputs"]["linear"].as_array().unwrap() {
        let gears = Gears { ratios: vec![number(row, "i_lo"), number(row, "i_hi")], ..sample_gears("wide4") };
        let shift = shift::equal_thrust(&Pull::new(&straight, &gears, efficiencies, None).unwrap())[0];
        check("speed", shift.speed.get::<meter_per_second>(), number(row, "v_mps"), CLOSED);
        check("before", in_rpm(shift.before), number(row, "n_before_rpm"), CLOSED);
        check("after", in_rpm(shift.after), number(row, "n_after_rpm"), CLOSED);
        // rows 7.1 and 7.2: with a 6,200 rpm limit the answer is the limit
        let limited = shift::equal_thrust(&Pull::new(&straight, &gears, efficiencies, Some(rpm(6200.0))).unwrap())[0];
        assert_eq!(limited.reason, Reason::Limit);
        check("limit", in_rpm(limited.before), 6200.0, CLOSED);
    }
    // parabola: the generic shape through peak power alone is the cubic power law of that row
    let law = layshaft::motion::curve::generic::from_power(layshaft::units::Power::new::<kilowatt>(66.0), rpm(5500.0)).unwrap();
    for row in oracle["outputs"]["parabola"].as_array().unwrap() {
        let gears = Gears { ratios: vec![number(row, "i_lo"), number(row, "i_hi")], ..sample_gears("wide4") };
        let shift = shift::equal_thrust(&Pull::new(&law, &gears, efficiencies, None).unwrap())[0];
        if number(row, "n_before_rpm") <= 1.2 * 5500.0 {
            check("before", in_rpm(shift.before), number(row, "n_before_rpm"), CLOSED);
            check("after", in_rpm(shift.after), number(row, "n_after_rpm"), CLOSED);
        } else {
            assert_eq!(shift.reason, Reason::Limit, "the shape ends at 1.2 times the power peak");
        }
    }
}

/// O14: the units a torque or a power may be typed in.
#[test]
fn units_of_torque_and_power() {
    let oracle = oracle("O14_units");
    let power = |symbol: &str| (layshaft::units::Power::units().iter().find(|unit| unit.symbol == symbol).unwrap().make)(1.0);
    let torque = |symbol: &str| (Torque::units().iter().find(|unit| unit.symbol == symbol).unwrap().make)(1.0);
    check("hp", power("hp").get::<uom::si::power::watt>(), number(&oracle, "hp_W"), CLOSED);
    check("PS", power("PS").get::<uom::si::power::watt>(), number(&oracle, "PS_W"), CLOSED);
    check("lbf·ft", torque("lbf·ft").get::<newton_meter>(), number(&oracle, "lbfft_Nm"), CLOSED);
    let at = |value: f64| layshaft::motion::torque_of(power("hp"), rpm(value));
    check("hp = lbf·ft · rpm / 5252", at(number(&oracle, "hp_lbfft_rpm")).get::<newton_meter>(), number(&oracle, "lbfft_Nm"), CLOSED);
}
