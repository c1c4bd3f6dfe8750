//! Pasted curves as people have them: each is understood, and what was taken and done is said. Figures worked by hand beside them.

use layshaft::motion::CurvePoint;
use layshaft::motion::curve::rows::{Detected, Done, MeasuredAt, Pasted, Quantity, Reading, RowError, Separator, Told, read, read_as};
use layshaft::problem::Explain;
use layshaft::units::System;
use uom::si::torque::newton_meter;

use crate::published_motion::{in_rpm, rpm};

/// 1 lbf·ft in N·m, exact (0.453 592 37 kg × 9.806 65 m/s² × 0.3048 m).
const POUND_FOOT: f64 = 1.355_817_948_331_400_4;

fn pairs(points: &[CurvePoint]) -> Vec<(f64, f64)> {
    let tenth = |value: f64| (value * 10.0).round() / 10.0;
    points.iter().map(|point| (tenth(in_rpm(point.speed)), tenth(point.torque.get::<newton_meter>()))).collect()
}

#[track_caller]
fn read_well(text: &str, system: System) -> (Pasted, Detected) {
    let pasted = read(text, system);
    assert_eq!(pasted.problems, [], "{text}");
    assert!(pasted.curve.is_ok(), "{text}: {:?}", pasted.curve);
    let detected = pasted.detected.clone().unwrap();
    (pasted, detected)
}

/// A text that gives 1,500 rpm with 105 and 2,000 rpm with 110 lbf·ft, and what was done to it.
#[track_caller]
fn check(text: &str, separator: Separator, done: &[Done]) {
    let (pasted, detected) = read_well(text, System::Inch);
    assert_eq!(detected.separator, separator, "{text}");
    assert_eq!(detected.done, done, "{text}");
    let points = pairs(&pasted.points);
    // 105 × 1.355818 = 142.36 and 110 × 1.355818 = 149.14 N·m
    assert_eq!(points[..2], [(1500.0, 142.4), (2000.0, 149.1)], "{text}");
}

#[test]
fn rows_in_every_order_and_dress() {
    use Separator::{At, Bar, Blanks, Colon, Comma, Semicolon, Tab};
    check("105 lb ft @ 1500 rpm\n110 lb ft @ 2000 rpm", At, &[]);
    check("105 lb ft at 1500 rpm\n110 lb ft at 2000 rpm", At, &[]);
    check("1500: 105\n2000: 110", Colon, &[]);
    check("1500 rpm: 105 lb-ft\n2000 rpm: 110 lb-ft", Colon, &[]);
    check("| rpm | lb ft |\n|-----|------:|\n| 1500 | 105 |\n| 2000 | 110 |", Bar, &[]);
    check("1500|105\n2000|110", Bar, &[]);
    check("1500 105; 2000 110; 2500 108", Blanks, &[Done::LineOfRows]);
    check("1500:105;2000:110", Colon, &[Done::LineOfRows]);
    check("1500,105; 2000,110", Comma, &[Done::LineOfRows]);
    check("rpm\t1500\t2000\t2500\nlb ft\t105\t110\t108", Tab, &[Done::Swapped]);
    check("rpm 1500 2000 2500\nlb ft 105 110 108", Blanks, &[Done::Swapped]);
    check("1500;2000;2500\n105;110;108", Semicolon, &[Done::Swapped]);
    check("rpm,lb ft\n2000,110\n1500,105", Comma, &[Done::Reversed]);
    check("rpm,lb ft\n2000,110\n3000,108\n1500,105\n2500,109\n4000,100\n3500,104", Comma, &[Done::Sorted]);
    check("rpm,lb ft\n0,0\n1500,105\n2000,110", Comma, &[Done::AtRestLeftOut { rows: 1 }]);
    // 109 and 111 are 110 on average
    check("rpm,lb ft\n1500,105\n2000,109\n2000,111\n2500,108", Comma, &[Done::Averaged { rows: 1 }]);
    check("rpm x1000,lb ft\n1.5,105\n2.0,110", Comma, &[Done::ThousandsOfRpm]);
    check("1500 rpm 105 lb ft\n2000 rpm 110 lb ft", Blanks, &[]);
}

#[test]
fn of_an_up_and_down_pull_the_rise_is_taken() {
    let done = [Done::OneSweep { rising: true, left_out: 3 }];
    check("1500 105\n2000 110\n3000 108\n2800 90\n2000 80\n1500 70", Separator::Blanks, &done);
    // jitter of a few rpm is no turn
    check("1500 105\n2000 110\n3000 108\n2990 108\n4000 100", Separator::Blanks, &[]);
    // three pulls one after another: one is enough
    let thrice = "1500 105\n2000 110\n3000 108\n1500 104\n2000 109\n3000 107\n1500 103\n2000 108\n3000 106";
    check(thrice, Separator::Blanks, &[Done::OneSweep { rising: true, left_out: 6 }]);
}

#[test]
fn a_road_speed_is_never_taken_for_an_engine_speed() {
    for text in
        ["Speed (mph), RPM, Torque (lb ft)\n20, 1500, 105\n27, 2000, 110", "Speed (mph) RPM Torque (lb ft)\n20 1500 105\n27 2000 110"]
    {
        let (pasted, detected) = read_well(text, System::Inch);
        assert_eq!((detected.speed_column, detected.value_column), (2, 3), "{text}");
        assert_eq!(pairs(&pasted.points), [(1500.0, 142.4), (2000.0, 149.1)], "{text}");
    }
    // a head that says only “speed”: 1,500 and 2,000 are an engine's, 20 and 27 are not
    let (_, detected) = read_well("Speed, Torque (Nm)\n1500, 105\n2000, 110", System::Metric);
    assert_eq!(detected.speed_column, 1);
    let roads = read("Speed, Torque (Nm)\n20, 105\n27, 110", System::Metric);
    assert_eq!(roads.problems[0].error, RowError::RoadSpeedOnly);
    assert!(roads.problems[0].what_to_do().contains("engine rpm"));
    assert!(roads.curve.is_err());
}

#[test]
fn a_comma_before_three_digits_is_what_gives_an_engine() {
    // 14.517 × 9.80665 = 142.363 N·m; 14,517 mkg would be a thousand times that
    let (pasted, detected) = read_well("rpm;mkg\n2000;14,517\n3000;15,102", System::Metric);
    assert_eq!(detected.done, [Done::DecimalComma { column: 2 }]);
    // 15.102 × 9.80665 = 148.100
    assert_eq!(pairs(&pasted.points), [(2000.0, 142.4), (3000.0, 148.1)]);
    // a comma that can only be decimal tells of its neighbours
    let (pasted, _) = read_well("rpm;Nm\n2000;101,25\n3000;104,125", System::Metric);
    assert_eq!(pairs(&pasted.points), [(2000.0, 101.3), (3000.0, 104.1)]);
    // a lorry's thousand is a thousand
    let (pasted, detected) = read_well("rpm;Nm\n1000;1,250\n1500;1,310", System::Metric);
    assert_eq!((pairs(&pasted.points), detected.done), (vec![(1000.0, 1250.0), (1500.0, 1310.0)], vec![]));
}

#[test]
fn figures_no_engine_has_are_told() {
    let pasted = read("rpm;Nm\n2000;14517\n3000;15102", System::Metric);
    assert!(pasted.curve.is_err());
    assert!(matches!(pasted.problems[0].error, RowError::Beyond { .. }));
    assert_eq!(pasted.problems[0].what(), "line 2: “14517” is outside what the torque of an engine can be");
    assert!(pasted.problems[0].what_to_do().contains("1 to 5,000 N·m"));
}

#[test]
fn where_two_readings_are_possible_the_others_are_offered() {
    let text = "3000 100\n4000 90";
    let (_, detected) = read_well(text, System::Inch);
    assert!(detected.assumed);
    assert_eq!(detected.quantity, Quantity::Torque("lbf·ft"));
    let kilowatts = Reading { speed_column: 1, value_column: 2, quantity: Quantity::Power("kW") };
    assert!(detected.others.contains(&kilowatts), "{:?}", detected.others);
    let chosen = read_as(text, &Told { system: System::Inch, reading: Some(kilowatts), wheel_efficiency: None });
    // 100 kW at 3,000 rpm are 100,000/(100π) = 318.31 N·m
    assert_eq!(pairs(&chosen.points)[0], (3000.0, 318.3));
    assert!(!chosen.detected.unwrap().assumed, "a person chose it");
    // one that is not offered changes nothing
    let odd = Reading { speed_column: 7, ..kilowatts };
    assert_eq!(read_as(text, &Told { system: System::Inch, reading: Some(odd), wheel_efficiency: None }), read(text, System::Inch));
    // heads that say all leave no doubt
    assert_eq!(read_well("rpm,Nm\n3000,100\n4000,90", System::Inch).1.others, []);
}

#[test]
fn torque_and_power_side_by_side_tell_their_units() {
    // 100 N·m at 3,000 rpm are 10,000π W = 31.416 kW = 42.71 PS = 42.13 hp; 90 N·m at 4,000 rpm 37.699 kW = 51.26 PS = 50.56 hp
    for (text, power) in [
        ("RPM, Power, Torque\n3000, 31.4, 100\n4000, 37.7, 90", "kW"),
        ("RPM, Power, Torque\n3000, 42.7, 100\n4000, 51.3, 90", "PS"),
        ("RPM, Power, Torque\n3000, 42.1, 100\n4000, 50.6, 90", "hp"),
    ] {
        let (pasted, detected) = read_well(text, System::Inch);
        assert_eq!((detected.quantity, detected.assumed), (Quantity::Torque("N·m"), false), "{text}");
        assert_eq!(pairs(&pasted.points), [(3000.0, 100.0), (4000.0, 90.0)], "{text}");
        assert!(detected.others.iter().any(|other| other.quantity == Quantity::Power(power)), "{text}: {:?}", detected.others);
    }
    // 100 lbf·ft at 3,000 rpm are 100 × 3,000/5,252.1 = 57.1 hp
    let (_, detected) = read_well("RPM, Power, Torque\n3000, 57.1, 100\n4000, 68.5, 90", System::Metric);
    assert_eq!((detected.quantity, detected.assumed), (Quantity::Torque("lbf·ft"), false));
}

#[test]
fn figures_of_the_wheels_are_brought_to_the_engine() {
    let text = "rpm,whp\n3000,50\n4000,60";
    let (_, detected) = read_well(text, System::Inch);
    assert_eq!((detected.measured_at, detected.quantity), (Some(MeasuredAt::Wheels), Quantity::Power("hp")));
    for (head, at) in [("wheel power (kW)", Some(MeasuredAt::Wheels)), ("flywheel kW", Some(MeasuredAt::Engine)), ("kW", None)] {
        assert_eq!(read_well(&format!("rpm,{head}\n3000,50\n4000,60"), System::Inch).1.measured_at, at, "{head}");
    }
    let told = Told { system: System::Inch, reading: None, wheel_efficiency: Some(0.9) };
    let pasted = read_as("rpm,Nm\n3000,90\n4000,81", &told);
    // 90/0.9 = 100, 81/0.9 = 90
    assert_eq!(pairs(&pasted.points), [(3000.0, 100.0), (4000.0, 90.0)]);
    assert_eq!(pasted.detected.unwrap().done, [Done::BroughtToEngine { efficiency: 0.9 }]);
}

#[test]
fn heads_of_other_things_are_left_alone() {
    let (pasted, detected) = read_well("Time s;RPM;AFR;Boost;Torque Nm\n1;1500;12,5;0,1;105\n2;2000;12,7;0,2;110", System::Metric);
    assert_eq!((detected.speed_column, detected.value_column, detected.head_line), (2, 5, Some(1)));
    assert_eq!(pairs(&pasted.points), [(1500.0, 105.0), (2000.0, 110.0)]);
    assert!((pasted.curve.unwrap().torque(rpm(1500.0)).unwrap().get::<newton_meter>() - 105.0).abs() < 1e-9);
    assert!((POUND_FOOT * 105.0 - 142.36).abs() < 0.01);
}
