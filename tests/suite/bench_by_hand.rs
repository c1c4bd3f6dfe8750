//! The bench against arithmetic done apart from the program: turns as people say them, mates by the tooth sum, slips, what settles it.

use layshaft::gearing::geometry::Cut;
use layshaft::gearing::geometry::pair_cuts::{self, PairAt, PairCut};
use layshaft::gearing::identify::counts::Counted;
use layshaft::gearing::identify::misprint::{WrongOrder, misprints, wrong_order};
use layshaft::gearing::identify::printed::figures;
use layshaft::gearing::identify::reading::Interval;
use layshaft::gearing::identify::settle::by_wheel;
use layshaft::gearing::identify::slips::{Slip, Turned, slip};
use layshaft::gearing::identify::spoken::{Spoken, spoken};
use layshaft::gearing::identify::tag::meanings;
use layshaft::gearing::part::Part;
use layshaft::gearing::{FinalDrive, Layout, Mesh, Ratio, Teeth};
use layshaft::job::{Bench, Job, demo};
use layshaft::problem::Explain;
use layshaft::questions::build;
use layshaft::sheet::Words;
use layshaft::units::common::millimetres;
use layshaft::units::{System, Typed, number, unit};

use crate::any_job::figures as figures_of;
use crate::nth;

/// The answer of a question about that bench.
fn answer(bench: Bench, id: &str) -> String {
    let job = Job { bench, ..demo::empty(System::Inch) };
    build(&job, Words::Us).sections.into_iter().find(|section| section.id == id).map(|section| section.answer.plain()).unwrap()
}

/// What Identify answers in a job.
fn answer_of(job: &Job) -> String {
    build(job, Words::Us).sections.into_iter().find(|section| section.id == "identify").map(|section| section.answer.plain()).unwrap()
}

#[track_caller]
fn check_turns(said: &str, turns: (i128, i128), uncertainty: Option<(i128, i128)>) {
    let ratio = |(above, below)| Ratio::new(above, below);
    assert_eq!(spoken(said).unwrap(), Spoken { turns: ratio(turns), uncertainty: uncertainty.map(ratio) }, "{said}");
}

#[test]
fn turns_are_read_as_they_are_said() {
    for (said, turns) in [
        ("three and a quarter", (13, 4)),
        ("3 and three quarters", (15, 4)),
        ("4 1/4 turns", (17, 4)),
        ("4¼", (17, 4)),
        ("half a turn", (1, 2)),
        ("twenty one", (21, 1)),
        ("two thirds of a turn", (2, 3)),
        ("eleven turns", (11, 1)),
        ("4,2", (21, 5)),
    ] {
        check_turns(said, turns, None);
    }
    check_turns("nearly 3 1/2", (7, 2), Some((1, 8)));
    check_turns("about three and a half", (7, 2), Some((1, 8)));
    // half a spline of 21 is 1/42 of a turn
    check_turns("15 of 21 splines", (5, 7), Some((1, 42)));
    check_turns("2 turns and 15 of 21 splines", (19, 7), Some((1, 42)));
    for nonsense in ["a", "and", "three bananas", "1/0", "15 of 3 splines", "1/2 1/3 1/5 1/7 1/11 1/13 1/17 1/19 1/23 1/29 1/31 1/37 1/41"]
    {
        assert!(spoken(nonsense).unwrap_err().what().ends_with("is not a number of turns"), "{nonsense}");
    }
    assert_eq!(spoken(" ").unwrap_err().what(), "no turns are given");
}

/// Cluster 33-17-24-27 and a main gear of 36 on the 17: 36 + 17 = 53; 53 − 33 = 20, 53 − 24 = 29, 53 − 27 = 26. Ratios: 33/20 × 36/17 =
/// 3.494, 33/20 × 29/24 = 1.994, 33/20 × 26/27 = 1.589, direct.
#[test]
fn the_tooth_sum_gives_the_missing_mates() {
    let bench = Bench { constant: "?/33".into(), first: "36/17".into(), second: "?/24".into(), third: "?/27".into(), ..Bench::default() };
    let said = answer(bench.clone(), "identify");
    assert!(
        said.starts_with(
            "The case takes a tooth sum of 53 (17 + 36): the missing mates are 20 (the input pair), 29 (2nd) and 26 (3rd). \
             The ratios are then 3.49, 1.99, 1.59, 1.00."
        ),
        "{said}"
    );
    let job = Job { bench, ..demo::empty(System::Inch) };
    let sheet = build(&job, Words::Us);
    let all: Vec<_> = figures_of(&sheet, 0).collect();
    let value = |key: &str| all.iter().find(|figure| figure.key == key).map(|figure| figure.value).unwrap();
    let mates = ["identify.mate_constant", "identify.mate_gear_2", "identify.mate_gear_3"].map(|key| number::show(value(key), 0));
    assert_eq!(mates, ["20", "29", "26"]);
    assert!((value("identify.mates.gear_1") - 33.0 * 36.0 / (20.0 * 17.0)).abs() < 1e-9);
}

#[test]
fn whole_pairs_that_differ_in_sum_give_no_mates() {
    let bench = Bench { constant: "20/33".into(), first: "36/18".into(), second: "?/24".into(), ..Bench::default() };
    assert!(!answer(bench, "identify").contains("missing mate"));
}

/// 39 turns for 10 with one wheel held make 2 × 39 ÷ 10 = 7.80, with both turning 3.90; of pairs near that, 39/10 is nearest.
#[test]
fn an_axle_that_cannot_be_asks_whether_the_other_wheel_was_held() {
    let turned = |wheel: &str, shaft: &str, turns: &str| Bench {
        shaft_turns: shaft.into(),
        wheel_turns: turns.into(),
        wheel: layshaft::job::Chosen::read(wheel),
        ..Bench::default()
    };
    assert_eq!(
        answer(turned("held", "39", "10"), "identify"),
        "The axle is 7.80 if the other wheel really was held, 3.90 (39/10) if both turned: was it held?"
    );
    // 19 1/2 for 10 is 1.95; twice that is 3.90.
    assert_eq!(
        answer(turned("", "19 1/2", "10"), "identify"),
        "The axle is 1.95 if both wheels turned, 3.90 (39/10) if one of them stood still: did it?"
    );
    assert!(answer(turned("", "thirty nine", "ten"), "identify").starts_with("The axle’s ratio lies between 3.881 and 3.920."));
}

/// 39/10, 43/11, 35/9 and 47/12 are 3.9000, 3.9091, 3.8889 and 3.9167: the nearest two, 43/11 and 47/12, are 1/132 apart, so that
/// 14 turns of the wheel part them by 14/132 = 0.106 turns, more than the tenth that an eye may miss. 14 × 3.9 = 54.60.
#[test]
fn the_wheel_is_turned_as_often_as_settles_it() {
    let drives = [(39, 10), (43, 11), (35, 9), (47, 12)].map(|(ring, pinion)| FinalDrive::Pair(Mesh::new(pinion, ring).unwrap()));
    let settling = by_wheel(&drives, false).unwrap();
    assert_eq!((settling.wheel_turns, settling.shaft_turns[0]), (14, Ratio::new(273, 5)));
    assert_eq!(by_wheel(&drives, true).unwrap().wheel_turns, 28);
    // 41/10 and 43/11 are 0.191 apart: one turn would part them; as many as a pinion has teeth is too far to be worth it.
    assert_eq!(by_wheel(&[drives[1], FinalDrive::Pair(Mesh::new(10, 41).unwrap())], false).unwrap().wheel_turns, 1);
    // 39/10 and 43/11 are 1/110 apart: eleven turns, and the 43 comes to a whole turn.
    let settling = by_wheel(&drives[..2], false).unwrap();
    assert_eq!((settling.wheel_turns, settling.shaft_turns[1]), (11, Ratio::from_integer(43)));
    assert_eq!(by_wheel(&[drives[0], drives[0]], false), None);
}

#[test]
fn slips_are_named() {
    let read = |least: i128, greatest: i128| Interval { least: Ratio::new(least, 1000), greatest: Ratio::new(greatest, 1000) };
    let named = |interval, turned| slip(interval, turned).map(|(slip, _)| slip);
    assert_eq!(named(read(7760, 7840), Turned::AxleHeld), Some(Slip::BothTurned));
    assert_eq!(named(read(1940, 1960), Turned::Axle), Some(Slip::OneHeld));
    assert_eq!(named(read(3880, 3920), Turned::Axle), None);
    // 10 for 39 instead of 39 for 10: 0.256.
    assert_eq!(named(read(255, 257), Turned::Axle), Some(Slip::WrongWayRound));
    assert_eq!(named(read(38_900, 39_100), Turned::Axle), Some(Slip::TenTimesTooLarge));
    assert_eq!(named(read(24_600, 24_700), Turned::Gearbox), Some(Slip::TenTimesTooLarge));
    assert_eq!(named(read(404, 407), Turned::Gearbox), Some(Slip::WrongWayRound));
    assert_eq!(named(read(99, 101), Turned::Gearbox), Some(Slip::TenTimesTooSmall));
}

/// 25/30 with 37/18 is 30/25 × 37/18 = 2.4667, printed 2.47 and not 2.74; 46/13 is 3.538, and 46/18 would be 2.556.
#[test]
fn a_print_that_the_counts_contradict_is_a_caution() {
    let counted = |at, teeth| Counted { at: Some(at), teeth: Teeth::new(teeth).unwrap() };
    let counts = [
        counted(Part::ConstantDriver, 25),
        counted(Part::ConstantDriven, 30),
        counted(Part::Driver(nth(1)), 18),
        counted(Part::Driven(nth(1)), 37),
    ];
    let found = |text: &str| misprints(&figures(text).unwrap(), &counts, Layout::InputReduced);
    assert_eq!(found("2.47 1.67 1.24 1.00"), []);
    let wrong = found("2.74 1.67 1.24 1.00");
    assert_eq!((wrong.len(), wrong[0].gear, wrong[0].is_swapped), (1, nth(1), true));
    assert!(!found("2.56 1.67 1.24 1.00")[0].is_swapped);
    let bench = Bench { constant: "25/30".into(), first: "37/18".into(), ladder: "2.74 1.67 1.24 1.00".into(), ..Bench::default() };
    let said = answer(bench, "identify");
    assert!(said.starts_with("1st is printed 2.74 and counted 2.467: two digits of the print are swapped."), "{said}");
    assert_eq!(wrong_order(&figures("0.405 0.599 0.804 1.00").unwrap()), Some(WrongOrder::OutputPerInput));
    assert_eq!(wrong_order(&figures("0.82 1.00 1.37 1.97 3.65").unwrap()), Some(WrongOrder::TopFirst));
    assert_eq!(wrong_order(&figures("2.47 1.67 1.24 1.00").unwrap()), None);
}

#[test]
fn pairs_cut_otherwise_are_read() {
    let read = |text: &str| pair_cuts::read(text, System::Inch, 4);
    // Reverse slides into mesh and is straight where nothing else is said; the other gears are as the rest.
    let rest = Cut::new(millimetres(2.5), unit::DEGREE.of(28.0), Cut::usual_pressure_angle()).unwrap();
    let degrees = |pair: PairCut| pair.over(&rest).unwrap().helix_rad().to_degrees().round();
    assert_eq!((degrees(PairCut::nothing(PairAt::Reverse)), degrees(PairCut::nothing(PairAt::Gear(nth(2))))), (0.0, 28.0));
    let said = read("R 7 DP 20°; 1st 8 DP 0°").unwrap();
    assert_eq!(said.iter().map(|pair| degrees(*pair)).collect::<Vec<_>>(), [20.0, 0.0]);
    let cuts = read("1st 8 DP 0°; R 7 DP; 2nd x 0.3; 3 24° 17.5°; input x-0.1 10").unwrap();
    let module = |at: usize| cuts[at].module.map(|module| (module.value * 1e5).round() / 1e2);
    // 25.4 ÷ 8 = 3.175 mm, ÷ 7 = 3.629 mm, ÷ 10 = 2.54 mm.
    assert_eq!([module(0), module(1), module(2), module(4)], [Some(3.18), Some(3.63), None, Some(2.54)]);
    let at: Vec<PairAt> = cuts.iter().map(|cut| cut.at).collect();
    assert_eq!(at, [PairAt::Gear(nth(1)), PairAt::Reverse, PairAt::Gear(nth(2)), PairAt::Gear(nth(3)), PairAt::Constant]);
    assert_eq!([cuts[2].driver_shift, cuts[4].driver_shift], [Some(0.3), Some(-0.1)]);
    assert_eq!(cuts[0].helix.map(|helix| helix.value), Some(0.0));
    assert!((cuts[3].pressure.unwrap().value.to_degrees() - 17.5).abs() < 1e-9);
    for (text, what) in [
        ("9th 8 DP", "“9th 8 DP” does not begin with a gear of this box"),
        ("2nd", "“2nd” does not say what is cut otherwise"),
        ("2nd banana", "“banana” is neither a module nor a diametral pitch"),
        ("2nd x 9", "a profile shift of 9.00 cannot be"),
    ] {
        assert_eq!(read(text).unwrap_err().what(), what);
    }
}

#[test]
fn tags_are_read_in_either_order_and_in_part() {
    let read = |text: &str| -> Vec<String> {
        let shown = |drive: &FinalDrive| match drive {
            FinalDrive::Pair(mesh) => format!("{}/{}", mesh.driven, mesh.driver),
            FinalDrive::Plain(ratio) => ratio.to_string(),
        };
        meanings(text).unwrap().iter().map(shown).collect()
    };
    for text in ["10/43", "43 10", "43:10", "4310", "1043"] {
        assert_eq!(read(text), ["43/10"], "{text}");
    }
    // 3.54 = 177/50, 3.27 = 327/100.
    assert_eq!([read("3 54"), read("354"), read("3.54")].concat(), ["177/50", "177/50", "177/50"]);
    assert_eq!(read("3L27"), ["327/100"]);
    // 46 over 10 to 19: 4.60 down to 2.42, all of them usual.
    assert_eq!(read("46 1?").len(), 10);
    assert_eq!(read("9 41"), ["41/9"]);
    assert_eq!(read(""), Vec::<String>::new());
    for nonsense in ["12", "banana", "99 99 99", "1.2.3", "????"] {
        assert!(meanings(nonsense).is_err() || nonsense == "????", "{nonsense}");
    }
    let job = Job { bench: Bench { tag: "10/43".into(), ..Bench::default() }, ..demo::empty(System::Inch) };
    let section = build(&job, Words::Us).sections.into_iter().find(|section| section.id == "identify").unwrap();
    assert_eq!(section.answer.plain(), "The tag says 43/10 (4.30): a tag outlives a change of gears, so turn the axle to be sure.");
}

/// 9 1/2 turns in 52.8 ft, a hundredth of a mile, are 950 a mile. Setup A rolls 73.9685 in, 63,360 ÷ 73.9685 = 856.58 turns a mile;
/// its speedometer gears are 8 and 28: 950 ÷ 856.58 × 28 ÷ 8 = 3.8817.
#[test]
fn the_cable_tells_the_axle() {
    let mut job = demo::job();
    job.bench = Bench { cable: Typed::new("9 1/2 in 52.8 ft", System::Inch), ..Bench::default() };
    let sheet = build(&job, Words::Us);
    let found = figures_of(&sheet, 0).find(|figure| figure.key == "identify.cable.ratio").map(|figure| figure.value).unwrap();
    assert!((found - 3.881_7).abs() < 2e-4, "{found}");
    let section = sheet.sections.iter().find(|section| section.id == "identify").unwrap();
    assert!(section.answer.plain().starts_with("By the cable the axle is about 3.88, with the tire and gears of setup A."));
    job.bench = Bench { dial: Typed::new("950", System::Inch), ..Bench::default() };
    assert!(answer_of(&job).starts_with("If the dial reads true the axle is about 3.88"));
}
