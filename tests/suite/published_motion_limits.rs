//! Top speed, grades, grip and clutch work against the reference outputs named in `published_motion`.

use layshaft::motion::run::run;
use layshaft::motion::{Drive, Pull, Sourced, Vehicle, cruise, grade, top_speed, traction};
use layshaft::units::Area;
use uom::si::{
    area::square_meter,
    energy::joule,
    force::newton,
    time::second,
    velocity::{kilometer_per_hour, meter_per_second},
};

use crate::nth;
use crate::published_motion::{
    CLOSED, ENDLESS_GRIP, RUN, check, in_rpm, kg, mps, number, oracle, sample, sample_car, sample_curve, sample_gears, standing,
};

/// O4: top speed per gear on three grades, with gears at their limit, an overdrive slower than direct, and one with no balance at all.
#[test]
fn top_speed_in_every_gear() {
    for row in oracle("O4_top_speed")["outputs"]["per_gear"].as_array().unwrap() {
        let vehicle = sample(row["set"].as_str().unwrap(), ENDLESS_GRIP, number(row, "grade"));
        let found = top_speed::in_gear(&vehicle, nth(usize::try_from(row["gear"].as_u64().unwrap()).unwrap()));
        let Some(expected) = row["v_mps"].as_f64() else {
            assert_eq!(found, None, "no balance");
            continue;
        };
        let found = found.unwrap();
        check("top speed", found.speed.get::<meter_per_second>(), expected, CLOSED);
        check("rpm", in_rpm(found.engine), number(row, "n_rpm"), CLOSED);
        let limit = row["limited_by"].as_str() == Some("redline");
        assert_eq!(found.bound == top_speed::Bound::RevLimit, limit);
        assert!(limit || found.left_over.get::<newton>().abs() < 1e-6);
    }
    // rows 8.5 and 8.8
    assert_eq!(top_speed::best(&sample("od5", ENDLESS_GRIP, 0.0)).unwrap().gear, nth(5));
    let uphill = top_speed::best(&sample("wide4", ENDLESS_GRIP, 0.10)).unwrap();
    assert_eq!(uphill.gear, nth(3));
    check("8.8", uphill.speed.get::<kilometer_per_hour>(), 122.452, 1e-5);
}

/// O9: steepest grade at the torque peak of each gear; flag F14: grip governs in first.
#[test]
fn grades_by_thrust_and_grip() {
    for row in oracle("O9_gradeability")["outputs"]["steady_grade_at_torque_peak"].as_array().unwrap() {
        let vehicle = sample(row["set"].as_str().unwrap(), 0.75, 0.0);
        let gear = nth(usize::try_from(row["gear"].as_u64().unwrap()).unwrap());
        let speed = mps(number(row, "v_mps"));
        let at_speed = cruise::in_gear(&vehicle, gear, speed).unwrap().downshift_grade.unwrap();
        check("grade", at_speed, number(row, "grade"), CLOSED);
        check("thrust", vehicle.pull().gear(gear).unwrap().thrust(speed).unwrap().get::<newton>(), number(row, "thrust_N"), CLOSED);
        let best = grade::held(&vehicle, gear).unwrap();
        check("grip", best.by_grip, 0.429_850_746_268_656_7, CLOSED);
        assert_eq!(best.bound == grade::GradeBound::Grip, number(row, "grade") > 0.43);
        assert!(best.by_thrust.unwrap() >= at_speed - 1e-12, "the best speed pulls at least as well");
    }
}

/// O8: greatest thrust and acceleration at the limit, and the grade grip allows.
#[test]
fn grip_limits() {
    let oracle = oracle("O8_traction_limit");
    let drive = |name: &str, grip: f64| {
        let mut car = sample_car(grip);
        let (drive, share) = match name {
            "rear" => (Drive::Rear, 0.48),
            "front" => (Drive::Front, 0.52),
            _ => (Drive::All, 0.48),
        };
        (car.drive, car.driven_share) = (Sourced::given(drive), Sourced::given(share));
        car
    };
    for row in oracle["outputs"]["cases"].as_array().unwrap() {
        let (grade, car) = (number(row, "grade"), drive(row["drive"].as_str().unwrap(), number(row, "mu")));
        let thrust = traction::greatest_thrust(&car, grade);
        check("thrust", thrust.get::<newton>(), number(row, "F_max_N"), CLOSED);
        let a = thrust.get::<newton>() / 1050.0 - layshaft::motion::GRAVITY_M_PER_S2 * grade.atan().sin();
        check("acceleration", a, number(row, "a_mps2"), CLOSED);
    }
    for row in oracle["outputs"]["max_grade_by_adhesion"].as_array().unwrap() {
        for name in ["rear", "front", "all"] {
            let car = drive(name, number(row, "mu"));
            check(name, traction::greatest_grade(&car, kg(0.0)), number(row, &format!("{name}_tan")), CLOSED);
        }
    }
}

/// O12: clutch slip in closed form against the run's integral, with neither drag nor driveline loss as the closed form has it.
#[test]
fn clutch_slip_work() {
    let oracle = oracle("O12_clutch_slip");
    for row in oracle["outputs"].as_array().unwrap() {
        let (set, slope) = (row["set"].as_str().unwrap(), number(row, "grade"));
        let mut car = sample_car(ENDLESS_GRIP);
        car.drag_area = Sourced::given(Area::new::<square_meter>(0.0));
        car.efficiencies.final_drive = Sourced::given(1.0);
        let pull = Pull::new(&sample_curve(), &sample_gears(set), car.efficiencies, None).unwrap();
        let vehicle = Vehicle::on_grade(pull, car, slope).unwrap();
        let run = run(&vehicle, &standing(&vehicle, 0.0, &[13.0], &[])).unwrap();
        check("slip time", run.lock_up().unwrap().time.get::<second>(), number(row, "slip_time_s"), RUN);
        check("clutch energy", run.legs[0].work.clutch.get::<joule>(), number(row, "slip_energy_J"), RUN);
    }
}
