//! What moves in a driveline beside figures worked by hand: the nose under drive, the axle hanging, the centre bearing on its shims; and the
//! tube that is bent, held, told by its bore or of a material of one's own.

use layshaft::driveline::inclinometer::{Reading, ReadingError, put, typed, zero};
use layshaft::driveline::slope::End;
use layshaft::job::{Choice, Field, Job, JobField, SetupChoice, ShaftField, demo};
use layshaft::questions::read_all;
use layshaft::sheet::{Piece, Row, Sheet};
use layshaft::units::unit;

use crate::any_job::{long_box, near_on as near, sheet};

/// One setup with an axle of 4.10 whose tyre rolls 2.105 m, a steel shaft of 60 in, 3 by 0.083 in, at 110 mph: 5,746.8 rpm, 601.80 rad/s.
fn job(shaft: &[(ShaftField, &str)]) -> Job {
    let tube = [(ShaftField::Lengths, "60"), (ShaftField::Outside, "3"), (ShaftField::Wall, "0.083")];
    long_box(&tube.iter().chain(shaft).copied().collect::<Vec<_>>())
}

fn sloping<'a>(slopes: [&'a str; 3], more: &[(ShaftField, &'a str)]) -> Job {
    let fields = [ShaftField::GearboxSlope, ShaftField::Slopes, ShaftField::PinionSlope];
    job(&fields.into_iter().zip(slopes).chain(more.iter().copied()).collect::<Vec<_>>())
}

fn row<'a>(sheet: &'a Sheet, key: &str) -> &'a Row {
    sheet.sections.iter().find(|section| section.id == "driveline").unwrap().rows.iter().find(|row| row.key == key).unwrap()
}

fn words(sheet: &Sheet, key: &str) -> String {
    let said = |piece: &Piece| match piece {
        Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => text.clone(),
        Piece::Figure(figure) => figure.shown.clone(),
        Piece::Verdict(verdict) => verdict.text.clone(),
    };
    row(sheet, key).cells[0].pieces().map(said).collect::<Vec<_>>().join(" ")
}

/// Gearbox 3° down, shaft 5° down, nose 1° up. Standing the rear joint works at 4° and √(16 − 4) = 3.464° are left. Under drive the nose
/// rises 2° to 3°: joints of 2 and 2°, nothing left, so the nose stays as it stands: setting it to 3° would count the rise twice.
#[test]
fn the_nose_that_rises_is_judged_under_drive() {
    let job = sloping(["3 down", "5 down", "1 up"], &[(ShaftField::Windup, "2")]);
    let sheet = sheet(&job);
    near(&sheet, "driveline.at_rest_joint_2_d", 4.0, 1e-9);
    near(&sheet, "driveline.left_over_at_rest_d", 3.464, 0.000_5);
    near(&sheet, "driveline.joint_2_d", 2.0, 1e-9);
    near(&sheet, "driveline.left_over_d", 0.0, 1e-6);
    near(&sheet, "driveline.nose_up_d", 1.0, 1e-9);
    let said = sheet.sections.iter().find(|section| section.id == "driveline").unwrap().answer.plain();
    assert!(said.contains("Joints at 2.0° and 2.0°, under drive: good."), "{said}");
}

/// The axle drops 4 in: the shaft runs 60 × cos 5° = 59.772 in along the car, tan 5° + 4 ÷ 59.772 = 0.15441, 8.778°; so long it is
/// 59.772 × √(1 + 0.15441²) = 60.480 in: 0.480 in out. Joints of 8.778 − 3 = 5.778°, with the nose at 1° of 7.778°. It whips at
/// 5,448 × (60 ÷ 60.480)² = 5,362 rpm.
#[test]
fn the_axle_hangs() {
    let hanging = |droop| sheet(&sloping(["3 down", "5 down", "3 up"], &[(ShaftField::Droop, droop)]));
    let by_drop = hanging("4 in; nose 1 up");
    near(&by_drop, "driveline.hanging_joint_1_d", 5.778, 0.001);
    near(&by_drop, "driveline.hanging_joint_2_d", 7.778, 0.001);
    near(&by_drop, "driveline.slides_in", 0.480, 0.001);
    assert!(words(&by_drop, "axle-droop").contains("it whips at 5,36"), "{}", words(&by_drop, "axle-droop"));
    let by_slope = hanging("8.778 down");
    near(&by_slope, "driveline.slides_in", 0.480, 0.001);
    near(&by_slope, "driveline.hanging_joint_2_d", 5.778, 0.001);
    // Past 30° a single joint binds, past 45° none turns.
    assert!(words(&hanging("36 down"), "axle-droop").contains("the front joint binds at 33.0° before the axle hangs free"));
    for (droop, part) in
        [("4 in; 1 up; 2 up", "two slopes"), ("nose", "does not say how much"), ("44.9 down; nose 44 down", "none turns through")]
    {
        let job = sloping(["3 up", "5 down", "3 up"], &[(ShaftField::Droop, droop)]);
        let problems: Vec<String> = read_all(&job)[0].problems.iter().map(layshaft::problem::Problem::sentence).collect();
        assert!(problems.iter().any(|problem| problem.contains(part)), "{droop}: {problems:?}");
    }
}

/// Two pieces of 30 in at 4° between ends of 3°: joints of 1, 0 and 1° leave √2. Each runs 760.14 mm along the car, so 1 mm turns it by
/// 0.0754° × cos² 4° = 0.0750°. Raised until the front piece lies at 3° and the rear at 5° nothing is left: 760.14 × (tan 4° − tan 3°) =
/// 13.3 mm; with 13 of 1 mm joints of 0.024, 1.950 and 1.974° leave √(0.024² − 1.950² + 1.974²) = 0.307°.
#[test]
fn a_centre_bearing_is_shimmed() {
    let two = |more: &[(ShaftField, &'static str)]| {
        let lengths = [(ShaftField::Lengths, "30 + 30")];
        sheet(&sloping(["3 down", "4 down; 4 down", "3 up"], &lengths.iter().chain(more).copied().collect::<Vec<_>>()))
    };
    let loose = two(&[]);
    near(&loose, "driveline.left_over_d", 1.414, 0.001);
    near(&loose, "driveline.shim_front_d", 0.075, 0.000_5);
    near(&loose, "driveline.shimmed_left_over_d", 0.307, 0.003);
    assert!(words(&loose, "centre-bearing").contains("raise it 0.512 in"), "{}", words(&loose, "centre-bearing"));
    // 13.3 ÷ 2.54 = 5.2.
    let shims = two(&[(ShaftField::Shim, "0.1")]);
    assert!(words(&shims, "centre-bearing").contains("put 5 more under it, 0.5 in"), "{}", words(&shims, "centre-bearing"));
}

/// π × 0.083 × 2.917 × 60 in³ of steel are 5,871 g; a run-out of 0.020 in makes 5,871 × 0.508 ÷ π = 949 g·mm, 6.1 times 5,871 × 16 ÷ 601.8 =
/// 156; × 601.8² it pulls 343.8 N, 77.3 lbf. More than 0.020 in is straightened.
#[test]
fn a_bent_tube_pulls() {
    let bent = |text| sheet(&job(&[(ShaftField::RunOut, text)]));
    let sheet = bent("0.020");
    near(&sheet, "driveline.run_out_gmm", 949.3, 1.0);
    near(&sheet, "driveline.run_out_pulls_lbf", 77.3, 0.2);
    assert!(words(&sheet, "shaft-run-out").contains("6.1 times"));
    assert!(!words(&sheet, "shaft-run-out").contains("straighten"));
    assert!(words(&bent("0.021"), "shaft-run-out").contains("over 0.02 in: straighten"));
}

/// Beams of 9.870, 15.42 and 22.37 (any textbook): held, 5,448 × 15.418 ÷ 9.870 = 8,511 and × 22.373 ÷ 9.870 = 12,350 rpm. A laminate of
/// 120 gigapascals and 1,600 kg/m³ whips at 1.6906 times the speed of steel: 9,210. A bore of 2.834 in is a wall of 0.083.
#[test]
fn other_tubes_and_other_ends() {
    let mut held = job(&[]);
    let id = held.setups[0].id;
    for (word, rpm) in [("one-held", 8_511.0), ("held", 12_350.0), ("", 5_448.0)] {
        held.choose(Choice::Setup(id, SetupChoice::ShaftEnds), word);
        near(&sheet(&held), "driveline.critical_rpm", rpm, 6.0);
    }
    near(&sheet(&job(&[(ShaftField::OwnMaterial, "120 GPa; 1,600 kg/m³")])), "driveline.critical_rpm", 9_210.0, 6.0);
    near(&sheet(&job(&[(ShaftField::Wall, "bore 2.834")])), "driveline.critical_rpm", 5_448.0, 3.0);
    for (field, text, part) in [
        (ShaftField::OwnMaterial, "120", "no modulus and density"),
        (ShaftField::OwnMaterial, "1; 1600", "no modulus and density"),
        (ShaftField::Wall, "bore 3", "The bore is as wide as the tube"),
        (ShaftField::Wall, "bore", "bore of the tube"),
        (ShaftField::Windup, "40", "rise of the nose"),
        (ShaftField::RunOut, "5", "run-out"),
        (ShaftField::Shim, "x", "shim"),
    ] {
        let problems: Vec<String> = read_all(&job(&[(field, text)]))[0].problems.iter().map(layshaft::problem::Problem::sentence).collect();
        assert!(problems.iter().any(|problem| problem.contains(part)), "{text}: {problems:?}");
    }
}

/// 5,746.8 rpm of the pinion beside what it is made for; the demo's direct fourth turns the shaft at the shift rpm of 6,500.
#[test]
fn the_pinion_and_every_gear() {
    for (most, part) in [("5,500", "over the 5,500 rpm it is made for"), ("6,000", "inside the 6,000 rpm")] {
        let mut job = job(&[]);
        job.type_text(Field::Job(JobField::PinionMost), most.into());
        assert!(words(&sheet(&job), "pinion-speed").contains(part));
    }
    let demo = sheet(&demo::job());
    near(&demo, "driveline.gear_4_rpm", 6_500.0, 1.0);
    // 10,130 rpm critical by hand: 64 %.
    assert!(words(&demo, "shaft-in-gears").contains("4th 6,500 64 %"), "{}", words(&demo, "shaft-in-gears"));
}

/// A phone that shows 0.3° too much reads 5.1° on a fall of 4.8°, and −4.5° turned end for end.
#[test]
fn a_phone_is_laid_on_the_tube() {
    let degrees = |angle| unit::DEGREE.number(angle);
    let readings = |mean: f64| [mean - 0.1, mean, mean + 0.1, mean - 0.1, mean + 0.1, mean];
    let first = Reading::of(&readings(5.1)).unwrap();
    // Deviations of 0.1 four times and of nothing twice: √(0.04 ÷ 5).
    assert!((degrees(first.spread) - 0.089_44).abs() < 1e-5);
    let turned = Reading::of(&readings(-4.5)).unwrap();
    let zero = zero(first.mean, turned.mean);
    assert!((degrees(first.from_zero(zero).fall(End::Rear)) - 4.8).abs() < 1e-9);
    assert_eq!(typed(first.from_zero(zero).fall(End::Rear), End::Rear), "4.8 down");
    assert_eq!(typed(first.from_zero(zero).fall(End::Front), End::Front), "4.8 up");
    // Upright against the gearbox's flange 93° are 3° down; against the axle's, 87° are 3° nose up.
    assert_eq!(typed(Reading::of(&readings(93.0)).unwrap().fall(End::Rear), End::Rear), "3.0 down");
    assert_eq!(typed(Reading::of(&readings(87.0)).unwrap().fall(End::Front), End::Front), "3.0 up");
    assert_eq!(typed(Reading::of(&readings(0.0)).unwrap().fall(End::Rear), End::Rear), "level");
    assert_eq!(Reading::of(&[]), Err(ReadingError::NoTilt));
    assert_eq!(Reading::of(&[f64::NAN; 9]), Err(ReadingError::NoTilt));
    assert!(matches!(Reading::of(&[1.0, 3.0, 1.0, 3.0, 1.0, 3.0]), Err(ReadingError::Moved(_))));
    for (text, pieces, after) in [
        ("", 1, "4.8 down"),
        ("3 down, 1 right", 1, "4.8 down, 1 right"),
        ("3 down", 2, "3 down; 4.8 down"),
        ("3 down; 5 down", 2, "4.8 down"),
        ("junk", 1, "4.8 down"),
    ] {
        assert_eq!(put(text, "4.8 down", pieces), after, "{text}");
    }
}
