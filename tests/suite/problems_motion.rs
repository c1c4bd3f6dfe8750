//! Curves that are none, cars that do not move, limits beyond the curve: each says what is wrong and what the sheet can still answer.

use layshaft::motion::curve::rows::{Quantity, RowError, Separator, read};
use layshaft::motion::curve::{CurveError, generic};
use layshaft::motion::run::{Course, Start, Stopped, run};
use layshaft::motion::shift::{self, Rule};
use layshaft::motion::{Car, CurvePoint, EngineCurve, Gears, MotionError, Pull, Vehicle, cruise, grade, top_speed};
use layshaft::problem::{Explain, Problem};
use layshaft::units::{AngularVelocity, Length, Mass, Power, System, Time, Torque};
use proptest::prelude::*;
use uom::si::{length::meter, power::kilowatt, time::second, torque::newton_meter};

use crate::nth;
use crate::published_motion::{check, curve, in_rpm, kg, mps, rpm, sample_car, sample_curve, sample_gears};

fn points(rows: &[(f64, f64)]) -> Vec<CurvePoint> {
    rows.iter().map(|(speed, torque)| CurvePoint { speed: rpm(*speed), torque: Torque::new::<newton_meter>(*torque) }).collect()
}

#[track_caller]
fn check_sentence(error: &impl Explain, what: &str) {
    let sentence = Problem::stop("engine", error).sentence();
    assert!(sentence.starts_with(what), "{sentence}");
    assert!(sentence.ends_with('.') && !sentence.contains(".."), "{sentence}");
}

#[test]
fn points_that_make_no_curve() {
    for (rows, expected, what) in [
        (vec![], CurveError::NoPoints, "No torque curve is given. Give peak torque"),
        (vec![(3000.0, 100.0)], CurveError::OnePoint(3000.0), "The torque curve has one point only, at 3,000 rpm."),
        (vec![(1000.0, 90.0), (1000.0, 95.0)], CurveError::Repeated(1000.0), "The torque curve has 1,000 rpm twice."),
        (
            vec![(1000.0, 90.0), (2000.0, -1.0)],
            CurveError::Torque { speed_rpm: 2000.0, torque_nm: -1.0 },
            "The torque at 2,000 rpm is −1.0 N·m",
        ),
        (vec![(1000.0, 0.0), (2000.0, 0.0)], CurveError::NoTorque, "The torque curve is nothing everywhere."),
        (vec![(0.0, 90.0), (2000.0, 100.0)], CurveError::Speed(0.0), "0 rpm is no engine speed."),
    ] {
        let error = EngineCurve::through(&points(&rows)).unwrap_err();
        assert_eq!(std::mem::discriminant(&error), std::mem::discriminant(&expected));
        check_sentence(&error, what);
        assert!(error.what_to_do().contains("ratios, road speeds and rpm drops stand without it"));
    }
    let falling = EngineCurve::through(&points(&[(3000.0, 90.0), (2000.0, 95.0)])).unwrap_err();
    check_sentence(&falling, "The torque curve goes back from 3,000 rpm to 2,000 rpm. List the rows of one pull from the lowest rpm up");
    for torque in [f64::NAN, f64::INFINITY] {
        assert!(EngineCurve::through(&points(&[(1000.0, torque), (2000.0, 90.0)])).is_err());
    }
}

#[test]
fn gaps_are_told() {
    let curve = curve(&[(1000.0, 90.0), (1500.0, 95.0), (2000.0, 100.0), (5000.0, 90.0), (5500.0, 80.0)]);
    let gaps: Vec<(f64, f64)> = curve.gaps().iter().map(|gap| (in_rpm(gap.from).round(), in_rpm(gap.to).round())).collect();
    assert_eq!(gaps, [(2000.0, 5000.0)]);
    assert!(sample_curve().gaps().is_empty());
}

#[test]
fn peaks_that_cannot_be() {
    let (nm, kw) = (|value| Torque::new::<newton_meter>(value), |value| Power::new::<kilowatt>(value));
    // 80 kW at 5,000 rpm is 152.8 N·m
    let beyond = generic::from_peaks((nm(120.0), rpm(3000.0)), (kw(80.0), rpm(5000.0))).unwrap_err();
    check_sentence(&beyond, "The peak power asks for 152.8 N·m at its speed, more than the peak torque of 120.0 N·m.");
    let crossed = generic::from_peaks((nm(120.0), rpm(5000.0)), (kw(50.0), rpm(4000.0))).unwrap_err();
    check_sentence(&crossed, "The power peak at 4,000 rpm is not above the torque peak at 5,000 rpm.");
    assert_eq!(generic::from_torque(nm(0.0), rpm(3000.0)).unwrap_err(), CurveError::NoTorque);
    assert!(matches!(generic::from_torque(nm(f64::NAN), rpm(f64::NAN)).unwrap_err(), CurveError::Speed(_)));
}

/// The law puts the power peak at twice 13,000 rpm, which is not refused; 21,000 rpm are beyond the table of limits.
#[test]
fn only_a_speed_that_was_given_is_refused() {
    let peak = Torque::new::<newton_meter>(60.0);
    assert!(generic::from_torque(peak, rpm(13_000.0)).is_ok());
    let table = layshaft::units::limits::ENGINE_SPEED;
    assert!(table.allow(rpm(CurveError::FASTEST_RPM)) && !table.allow(rpm(CurveError::FASTEST_RPM + 1.0)));
    let beyond = generic::from_torque(peak, rpm(21_000.0)).unwrap_err();
    check_sentence(&beyond, "21,000 rpm is no engine speed.");
}

/// One pasted text: separator, quantity with its unit, whether assumed, and torque (N·m) at one rpm.
#[track_caller]
fn check_rows(text: &str, separator: Separator, quantity: Quantity, assumed: bool, at: f64, torque: f64) {
    let pasted = read(text, System::Inch);
    assert_eq!(pasted.problems, [], "{text}");
    let detected = pasted.detected.unwrap();
    assert_eq!((detected.separator, detected.quantity, detected.assumed), (separator, quantity, assumed), "{text}");
    let curve = pasted.curve.unwrap();
    check(text, curve.torque(rpm(at)).unwrap().get::<newton_meter>(), torque, 1e-8);
}

#[test]
fn pasted_rows_in_any_dress() {
    use Quantity::{Power, Torque};
    use Separator::{Blanks, Comma, Semicolon, Tab};
    // 100 lbf·ft is 135.58179483314 N·m; 100 hp at 5,000 rpm is 105.0422624 lbf·ft = 142.418184750 N·m
    let pound_feet = 135.581_794_833_140_04;
    check_rows("rpm,torque (lbf·ft)\n3000,100\n4000,90", Comma, Torque("lbf·ft"), false, 3000.0, pound_feet);
    check_rows("RPM\tTorque [Nm]\n3,000\t135,5\n4,000\t120", Tab, Torque("N·m"), false, 3000.0, 135.5);
    check_rows("n;Drehmoment Nm\n3000;135,5\n4000;120,0", Semicolon, Torque("N·m"), false, 3000.0, 135.5);
    check_rows("Engine speed rpm  Torque lb ft\n 3000   100\n 4000 90", Blanks, Torque("lbf·ft"), false, 3000.0, pound_feet);
    check_rows("rpm lb ft\n3000 100\n4000 90", Blanks, Torque("lbf·ft"), false, 3000.0, pound_feet);
    check_rows("3000 100\n4000 90", Blanks, Torque("lbf·ft"), true, 3000.0, pound_feet);
    check_rows("3000, 100\n4000, 90", Comma, Torque("lbf·ft"), true, 3000.0, pound_feet);
    check_rows("# invented\nhp,rpm\n100,5000\n80,6000", Comma, Power("hp"), false, 5000.0, 142.418_184_750_298_62);
    // 49.480084 kW at 3,500 rpm is 135 N·m (reference, section 11); PS 67.274192
    check_rows("rpm;kW\n3500;49,480084\n4000;50", Semicolon, Power("kW"), false, 3500.0, 134.999_999_2);
    check_rows("\"Engine speed, rpm\",\"Power, PS\"\n3500,67.274192\n4000,68", Comma, Power("PS"), false, 3500.0, 134.999_999_7);
    check_rows("rpm,mkg\n3000,10\n4000,9", Comma, Torque("kgf·m"), false, 3000.0, 98.0665);
    // with both, torque is taken
    check_rows("rpm,hp,lb-ft\n3000,57,100\n4000,69,90", Comma, Torque("lbf·ft"), false, 3000.0, pound_feet);
}

#[test]
fn pasted_rows_with_faults_name_their_lines() {
    let pasted = read("rpm,Nm\n1000,90\n2000,much\n3000\n2500,110\n2500,111\n4000,-5\n", System::Metric);
    let told: Vec<String> = pasted.problems.iter().map(|problem| Problem::caution("engine", problem).sentence()).collect();
    assert_eq!(
        told.iter().map(|text| text.split_once(". ").unwrap().0).collect::<Vec<_>>(),
        [
            "Line 3: “much” is not a number",
            "Line 4: there is one column where 2 are needed",
            "Line 7: the torque at 4,000 rpm is −5.0 N·m, and full throttle cannot give less than nothing",
        ]
    );
    assert!(pasted.curve.is_err());
    let nothing = read("no numbers here", System::Metric);
    assert_eq!(nothing.curve, Err(CurveError::NoPoints));
    assert!(matches!(nothing.problems[0].error, RowError::NotANumber { .. }));
    // a line left out leaves the rest standing
    let rest = read("1000 90\nx y\n2000 100", System::Metric);
    assert_eq!((rest.problems.len(), rest.points.len(), rest.curve.is_ok()), (1, 2, true));
}

fn pull(limit: Option<AngularVelocity>) -> Result<Pull, MotionError> {
    Pull::new(&sample_curve(), &sample_gears("wide4"), sample_car(1.0).efficiencies, limit)
}

#[test]
fn mass_nothing_leaves_thrust_and_shifts() {
    let pull = pull(None).unwrap();
    for mass in [0.0, -5.0, f64::NAN] {
        let error = Vehicle::new(pull.clone(), Car { mass: kg(mass), ..sample_car(1.0) }).unwrap_err();
        assert!(matches!(error, MotionError::Mass(_)));
        assert!(error.what_to_do().contains("thrust, road speeds and the equal-thrust shift stand without it"));
    }
    check_sentence(
        &Vehicle::new(pull.clone(), Car { mass: Mass::default(), ..sample_car(1.0) }).unwrap_err(),
        "The mass of the car is nothing.",
    );
    // what is promised is there: thrust and the textbook shift need no mass
    assert!(pull.gear(nth(1)).unwrap().thrust(mps(10.0)).is_some());
    assert_eq!(shift::equal_thrust(&pull).len(), 3);
}

#[test]
fn a_shift_above_the_curve_is_worked_to_its_end() {
    let beyond = pull(Some(rpm(7000.0))).unwrap();
    check_sentence(&beyond.cautions()[0], "A shift or rev limit of 7,000 rpm lies above the end of the torque curve, 6,500 rpm.");
    check("limit", in_rpm(beyond.limit()), 6500.0, 1e-9);
    check_sentence(
        &pull(Some(rpm(900.0))).unwrap_err(),
        "The rev limit of 900 rpm is not above the first point of the torque curve, 1,000 rpm.",
    );
    let vehicle = Vehicle::new(beyond, sample_car(1.0)).unwrap();
    assert!(shift::shifts(&vehicle, Rule::At(rpm(9000.0))).iter().all(|shift| in_rpm(shift.before) < 6500.1));
}

#[test]
fn a_car_too_weak_to_move_says_with_what() {
    let weak = curve(&[(1000.0, 1.0), (6000.0, 1.0)]);
    let car = sample_car(1.0);
    let vehicle = Vehicle::new(Pull::new(&weak, &sample_gears("wide4"), car.efficiencies, None).unwrap(), car).unwrap();
    let course = Course {
        start: Start::Standing { launch: rpm(3000.0) },
        shifts: shift::shifts(&vehicle, Rule::EqualAcceleration),
        shift_time: Time::new::<second>(0.5),
        speeds: vec![mps(10.0)],
        distances: vec![Length::new::<meter>(100.0)],
        band: None,
        trace_step: Some(mps(0.5)),
    };
    let found = run(&vehicle, &course).unwrap();
    let Stopped::TooWeak(error) = found.stopped else { panic!("{:?}", found.stopped) };
    check_sentence(&error, "The car does not move: 41 N at the wheels against a road load of 144 N.");
    assert_eq!((found.to_speed, found.over_distance), (vec![None], vec![None]));
    // the rest still answers: no top speed, a grade below nothing, a cruise that cannot be held
    assert_eq!(top_speed::best(&vehicle), None);
    assert!(grade::started(&vehicle, nth(1), rpm(3000.0)).unwrap().grade < 0.0);
    assert!(cruise::in_gear(&vehicle, nth(4), mps(20.0)).unwrap().load_share.unwrap() > 1.0);
    assert_eq!(cruise::tallest_that_holds(&vehicle, mps(20.0)), None);
}

#[test]
fn starts_that_cannot_be() {
    let vehicle = Vehicle::new(pull(None).unwrap(), sample_car(1.0)).unwrap();
    let course = |start| Course {
        start,
        shifts: vec![],
        shift_time: Time::default(),
        speeds: vec![mps(12.0)],
        distances: vec![],
        band: None,
        trace_step: None,
    };
    assert_eq!(run(&vehicle, &course(Start::Rolling { gear: nth(9), speed: mps(5.0) })).unwrap_err(), MotionError::NoSuchGear(nth(9)));
    let fast = run(&vehicle, &course(Start::Rolling { gear: nth(1), speed: mps(30.0) })).unwrap_err();
    check_sentence(&fast, "In gear 1 the engine would turn 12,662 rpm.");
    let launch = run(&vehicle, &course(Start::Standing { launch: rpm(500.0) })).unwrap();
    check_sentence(&launch.caution.unwrap(), "A launch at 500 rpm lies outside the torque curve or past the limit; 1,000 rpm is used.");
    assert!(launch.to_speed[0].is_some());
}

#[test]
fn gears_and_cars_that_cannot_be() {
    let build = |gears: Gears| Pull::new(&sample_curve(), &gears, sample_car(1.0).efficiencies, None).unwrap_err();
    check_sentence(&build(Gears { ratios: vec![], ..sample_gears("wide4") }), "There is no forward gear.");
    check_sentence(&build(Gears { ratios: vec![3.4, -1.0], ..sample_gears("wide4") }), "The ratio of gear 2 cannot be.");
    check_sentence(&build(Gears { final_drive: 0.0, ..sample_gears("wide4") }), "A final drive of 0.000 cannot be.");
    let flat = Gears { rolling_radius: Length::new::<meter>(f64::NAN), ..sample_gears("wide4") };
    assert!(matches!(build(flat), MotionError::Radius(_)));
    let mut car = sample_car(1.0);
    car.rolling.value = f64::NAN;
    assert!(matches!(Vehicle::new(pull(None).unwrap(), car).unwrap_err(), MotionError::CarValue { word: "rolling resistance", .. }));
    assert!(matches!(Vehicle::on_grade(pull(None).unwrap(), sample_car(1.0), -0.1).unwrap_err(), MotionError::CarValue { .. }));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_answered(text in "(([0-9]{0,5}|[a-zA-Z·,.;\"'\\-−]{0,6}|\\PC{0,3})[ ,;\t\n]){0,30}", inch in any::<bool>()) {
        let pasted = read(&text, if inch { System::Inch } else { System::Metric });
        for problem in &pasted.problems {
            prop_assert!(problem.line <= text.lines().count());
            prop_assert!(!problem.what().is_empty() && !problem.what_to_do().is_empty());
        }
    }

    /// No car and no engine, however odd, makes the room panic or answer with what is no number.
    #[test]
    fn any_car_is_answered(
        rows in prop::collection::vec((1.0..30_000.0_f64, -10.0..1000.0_f64), 0..6),
        ratios in prop::collection::vec(-0.5..6.0_f64, 0..6),
        mass in -10.0..5000.0_f64, grip in 0.0..3.0_f64, grade in -0.1..0.6_f64, launch in 0.0..9000.0_f64, shift_time in 0.0..3.0_f64,
    ) {
        let mut rows = rows;
        rows.sort_by(|a, b| a.0.total_cmp(&b.0));
        let Ok(curve) = EngineCurve::through(&points(&rows)) else { return Ok(()) };
        let gears = Gears { ratios, final_drive: 3.9, rolling_radius: Length::new::<meter>(0.3), meshes: vec![] };
        let Ok(pull) = Pull::new(&curve, &gears, sample_car(1.0).efficiencies, None) else { return Ok(()) };
        let Ok(vehicle) = Vehicle::on_grade(pull, Car { mass: kg(mass), ..sample_car(grip) }, grade) else { return Ok(()) };
        for rule in [Rule::EqualAcceleration, Rule::EqualThrust, Rule::At(rpm(launch))] {
            let shifts = shift::shifts(&vehicle, rule);
            for shift in &shifts {
                prop_assert!(in_rpm(shift.before).is_finite());
                let _ = shift::cost(&vehicle, shift, rpm(500.0));
            }
            let course = Course {
                start: Start::Standing { launch: rpm(launch) },
                shifts,
                shift_time: Time::new::<second>(shift_time),
                speeds: vec![mps(5.0), mps(20.0), mps(200.0)],
                distances: vec![Length::new::<meter>(1.0), Length::new::<meter>(1000.0)],
                band: Some(curve.band(0.9)),
                trace_step: None,
            };
            let found = run(&vehicle, &course).unwrap();
            for moment in found.to_speed.iter().chain(&found.over_distance).flatten() {
                prop_assert!(moment.time.get::<second>().is_finite() && moment.time.get::<second>() >= 0.0);
            }
        }
        let _ = (top_speed::per_gear(&vehicle), grade::held(&vehicle, nth(1)), cruise::tallest_that_holds(&vehicle, mps(25.0)));
    }
}
