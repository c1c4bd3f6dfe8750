//! Runs against closed forms (constant force, constant power, straight-line thrust), and the quadrature rule against polynomials.

use layshaft::motion::quadrature::integral;
use layshaft::motion::run::{Course, Start, Stopped, run};
use layshaft::motion::{Car, Gears, MotionError, Pull, Rotating, Sourced, Vehicle};
use layshaft::units::{Area, Length, MassDensity, MomentOfInertia, Time};
use uom::si::{
    area::square_meter, length::meter, mass_density::kilogram_per_cubic_meter, moment_of_inertia::kilogram_square_meter, time::second,
    velocity::meter_per_second,
};

use crate::nth;
use crate::published_motion::{CLOSED, ENDLESS_GRIP, check, curve, kg, mps, number, oracle, rpm};

/// A car of one gear whose thrust in newtons is its engine's torque in N·m, and whose engine turns 30/π rpm for each m/s.
fn plain_car(points: &[(f64, f64)], mass_kg: f64, rolling: f64, drag_area_m2: f64) -> Vehicle {
    let mut car = Car::of_mass(kg(mass_kg));
    (car.rolling, car.rolling_growth) = (Sourced::given(rolling), Sourced::given(0.0));
    car.drag_area = Sourced::given(Area::new::<square_meter>(drag_area_m2));
    car.air_density = Sourced::given(MassDensity::new::<kilogram_per_cubic_meter>(1.225));
    car.grip = Sourced::given(ENDLESS_GRIP);
    car.efficiencies.mesh = Sourced::given(1.0);
    car.efficiencies.final_drive = Sourced::given(1.0);
    let none = MomentOfInertia::new::<kilogram_square_meter>(0.0);
    car.rotating = Sourced::given(Rotating::Given { engine: none, gearbox: none, wheels: none });
    let gears = Gears { ratios: vec![1.0], final_drive: 1.0, rolling_radius: Length::new::<meter>(1.0), meshes: vec![] };
    Vehicle::new(Pull::new(&curve(points), &gears, car.efficiencies, None).unwrap(), car).unwrap()
}

fn course(start: Start, speeds: &[f64], distances: &[f64]) -> Course {
    Course {
        start,
        shifts: vec![],
        shift_time: Time::default(),
        speeds: speeds.iter().map(|v| mps(*v)).collect(),
        distances: distances.iter().map(|s| Length::new::<meter>(*s)).collect(),
        band: None,
        trace_step: None,
    }
}

const RPM_PER_MPS: f64 = 30.0 / std::f64::consts::PI;

/// O1: constant force with quadratic drag, v = vt·tanh(t/τ): 60 mph in 10.0477 s after 137.317 m.
#[test]
fn constant_force_with_drag() {
    let oracle = oracle("O1_constant_force_quadratic_drag");
    let rolling = 150.0 / (1100.0 * layshaft::motion::GRAVITY_M_PER_S2);
    let vehicle = plain_car(&[(10.0, 3200.0), (1500.0, 3200.0)], 1100.0, rolling, 0.75);
    let (to_speed, at_time) = (oracle["outputs"]["to_speed"].as_array().unwrap(), oracle["outputs"]["at_time"].as_array().unwrap());
    let speeds: Vec<f64> = to_speed.iter().map(|row| number(row, "v_mps")).collect();
    let distances: Vec<f64> = at_time.iter().map(|row| number(row, "s_m")).collect();
    let run = run(&vehicle, &course(Start::Standing { launch: rpm(100.0) }, &speeds, &distances)).unwrap();
    for (found, row) in run.to_speed.iter().zip(to_speed) {
        check("time", found.unwrap().time.get::<second>(), number(row, "t_s"), CLOSED);
        check("distance", found.unwrap().distance.get::<meter>(), number(row, "s_m"), CLOSED);
    }
    for (found, row) in run.over_distance.iter().zip(at_time) {
        check("time", found.unwrap().time.get::<second>(), number(row, "t_s"), CLOSED);
        check("speed", found.unwrap().speed.get::<meter_per_second>(), number(row, "v_mps"), CLOSED);
    }
}

/// O1: the car never passes its terminal speed, and comes to any distance: s = (m/c)·ln cosh(t/τ) solved for t at 5 km.
#[test]
fn terminal_speed_is_held() {
    let rolling = 150.0 / (1100.0 * layshaft::motion::GRAVITY_M_PER_S2);
    let vehicle = plain_car(&[(10.0, 3200.0), (1500.0, 3200.0)], 1100.0, rolling, 0.75);
    let terminal = number(&oracle("O1_constant_force_quadratic_drag")["outputs"], "vt_mps");
    let run = run(&vehicle, &course(Start::Standing { launch: rpm(100.0) }, &[terminal + 0.1], &[5_000.0, 50_000.0])).unwrap();
    assert_eq!(run.to_speed, [None]);
    assert_eq!(run.stopped, Stopped::Balance { gear: nth(1) });
    let tau = number(&oracle("O1_constant_force_quadratic_drag")["outputs"], "tau_s");
    for (found, distance) in run.over_distance.iter().zip([5_000.0_f64, 50_000.0]) {
        // cosh(t/τ) = exp(s·c/m); acosh(e^x) = x + ln(1 + √(1 − e^(−2x)))
        let x = distance * 0.459_375 / 1100.0;
        let expected = tau * (x + (1.0 - (-2.0 * x).exp()).sqrt().ln_1p());
        check("time", found.unwrap().time.get::<second>(), expected, 1e-8);
    }
}

/// O13: straight-line thrust a − b·v, v = (a/b)(1 − exp(−b·t/m)).
#[test]
fn straight_line_thrust() {
    // 4000 − 80 v at v = 0.01 and 49 m/s; below 0.01 m/s the thrust is held, which moves nothing to 1e-6
    let at = |v: f64| (v * RPM_PER_MPS, 4000.0 - 80.0 * v);
    let vehicle = plain_car(&[at(0.01), at(49.0)], 1200.0, 0.0, 0.0);
    let rows = oracle("O13_linear_thrust")["outputs"].clone();
    let distances: Vec<f64> = rows.as_array().unwrap().iter().map(|row| number(row, "s_m")).collect();
    let run = run(&vehicle, &course(Start::Standing { launch: rpm(0.01 * RPM_PER_MPS) }, &[], &distances)).unwrap();
    for (found, row) in run.over_distance.iter().zip(rows.as_array().unwrap()) {
        check("time", found.unwrap().time.get::<second>(), number(row, "t_s"), 1e-6);
        check("speed", found.unwrap().speed.get::<meter_per_second>(), number(row, "v_mps"), 1e-6);
    }
}

/// O2: constant power from 10 m/s with drag, with and without rolling resistance, by the quadrature itself.
#[test]
fn constant_power() {
    let outputs = oracle("O2_constant_power")["outputs"].clone();
    let (m, p, c, v0) = (1100.0, 60_000.0, 0.459_375, 10.0);
    for (key, steady) in [("R0", 0.0), ("R154_N", 154.0)] {
        for row in outputs[key].as_array().unwrap() {
            let found = integral(
                |v| {
                    let pace = m / (p / v - steady - c * v * v);
                    [pace, v * pace]
                },
                v0,
                number(row, "v_mps"),
                1e-12,
            );
            assert!(found.converged);
            check("time", found.value[0], number(row, "t_s"), CLOSED);
            check("distance", found.value[1], number(row, "s_m"), CLOSED);
        }
    }
    // row 6.4: without losses t = m(v² − v0²)/2P
    let found = integral(|v| [m * v / p], v0, 20.0, 1e-12);
    check("2.75 s", found.value[0], 2.75, CLOSED);
}

/// O2 through the whole room: an engine of constant power, its curve a fine table, from a rolling start.
#[test]
fn constant_power_from_a_rolling_start() {
    let points: Vec<(f64, f64)> = (0..=400).map(|at| 9.0 + 0.1 * f64::from(at)).map(|v| (v * RPM_PER_MPS, 60_000.0 / v)).collect();
    let rolling = 154.0 / (1100.0 * layshaft::motion::GRAVITY_M_PER_S2);
    let vehicle = plain_car(&points, 1100.0, rolling, 0.75);
    let outputs = oracle("O2_constant_power")["outputs"].clone();
    let rows = outputs["R154_N"].as_array().unwrap();
    let speeds: Vec<f64> = rows.iter().map(|row| number(row, "v_mps")).collect();
    let run = run(&vehicle, &course(Start::Rolling { gear: nth(1), speed: mps(10.0) }, &speeds, &[])).unwrap();
    for (found, row) in run.to_speed.iter().zip(rows) {
        check("time", found.unwrap().time.get::<second>(), number(row, "t_s"), 1e-6);
        check("distance", found.unwrap().distance.get::<meter>(), number(row, "s_m"), 1e-6);
    }
}

/// A 15-point Kronrod rule is exact for polynomials up to degree 22 (QUADPACK, from memory); ∫x²² over −1..2 = (2²³ + 1)/23.
#[test]
fn quadrature_is_exact_for_polynomials() {
    for degree in 0..=22_i32 {
        let found = integral(|x: f64| [x.powi(degree)], -1.0, 2.0, 1.0);
        let expected = (2.0_f64.powi(degree + 1) - (-1.0_f64).powi(degree + 1)) / f64::from(degree + 1);
        check(&format!("x^{degree}"), found.value[0], expected, 1e-13);
    }
}

/// The pole of 1/(1 − x) is no trouble for the halving: ∫ over 0..1−1e-9 = ln 1e9.
#[test]
fn quadrature_halves_towards_a_pole() {
    let found = integral(|x: f64| [1.0 / (1.0 - x)], 0.0, 1.0 - 1e-9, 1e-11);
    assert!(found.converged, "{found:?}");
    check("ln", found.value[0], 1e9_f64.ln(), 1e-7);
}

/// Rows 8.1 to 8.3: constant power against rolling resistance and drag, the one real root of c·v³ + R·v − P·η = 0 (Cardano; key O4).
///
/// The curve is a fine table of constant power, so the tolerance is that of the table.
#[test]
fn top_speed_of_constant_power() {
    for row in oracle("O4_top_speed")["outputs"]["cubic"].as_array().unwrap() {
        let at_wheels = 0.92 * number(row, "P_engine_W");
        let points: Vec<(f64, f64)> = (0..=500).map(|at| 20.0 + 0.1 * f64::from(at)).map(|v| (v * RPM_PER_MPS, at_wheels / v)).collect();
        let top = layshaft::motion::top_speed::in_gear(&plain_car(&points, 1050.0, 0.014, 0.756), nth(1)).unwrap();
        check("top speed", top.speed.get::<meter_per_second>(), number(row, "v_mps"), 1e-8);
    }
}

/// A car too weak to move is a run that says so.
#[test]
fn too_weak_to_move() {
    let vehicle = plain_car(&[(10.0, 100.0), (1500.0, 100.0)], 1100.0, 0.02, 0.75);
    let run = run(&vehicle, &course(Start::Standing { launch: rpm(100.0) }, &[10.0], &[100.0])).unwrap();
    assert!(matches!(run.stopped, Stopped::TooWeak(MotionError::TooWeak { .. })));
    assert_eq!((run.to_speed, run.over_distance), (vec![None], vec![None]));
}
