//! The joints of a driveshaft beside figures worked by hand: angles, what is left over, what mends it; and slopes as people say them.

use layshaft::driveline::slope::{End, read_one};
use layshaft::driveline::{Lean, Slope};
use layshaft::job::{Choice, Field, Job, SetupChoice, SetupField, ShaftField, demo};
use layshaft::questions::{of_id, read_all};
use layshaft::sheet::{Piece, Row, Sheet, Tone};
use layshaft::units::{System, unit};

use crate::any_job::{figure, long_box, near_on as near, sheet};

/// One setup with an axle of 4.10 whose tyre rolls 2.105 m, its shaft of 60 in at 110 mph (5,746.8 rpm), and its slopes.
fn sloping(gearbox: &str, shaft: &str, nose: &str) -> Job {
    long_box(&[
        (ShaftField::Lengths, "60"),
        (ShaftField::GearboxSlope, gearbox),
        (ShaftField::Slopes, shaft),
        (ShaftField::PinionSlope, nose),
    ])
}

fn said(job: &Job) -> String {
    sheet(job).sections.iter().find(|section| section.id == "driveline").unwrap().answer.plain()
}

fn row<'a>(sheet: &'a Sheet, key: &str) -> Option<&'a Row> {
    sheet.sections.iter().find(|section| section.id == "driveline").unwrap().rows.iter().find(|row| row.key == key)
}

fn cautions(sheet: &Sheet) -> Vec<String> {
    let pieces = row(sheet, "joint-angles").into_iter().flat_map(|row| row.cells[0].pieces());
    pieces
        .filter_map(|piece| if let Piece::Verdict(verdict) = piece { Some(verdict) } else { None })
        .filter(|verdict| verdict.tone != Tone::Good)
        .map(|verdict| verdict.text.clone())
        .collect()
}

/// Gearbox 3° down, shaft 5° down, nose 3° up: both joints work at 2°, and nothing is left. 16,250 ÷ 5,746.8 = 2.83° are allowed.
#[test]
fn equal_joints_leave_nothing() {
    let job = sloping("3 down", "5 down", "3 up");
    let sheet = sheet(&job);
    near(&sheet, "driveline.joint_1_d", 2.0, 1e-9);
    near(&sheet, "driveline.joint_2_d", 2.0, 1e-9);
    near(&sheet, "driveline.left_over_d", 0.0, 1e-6);
    near(&sheet, "driveline.pinion_swing_percent", 0.0, 1e-9);
    near(&sheet, "driveline.joint_allowed_d", 2.828, 0.001);
    // 1 ÷ cos 2° − cos 2° = 0.001219.
    near(&sheet, "driveline.shaft_swing_percent", 0.121_9, 0.000_1);
    assert!(cautions(&sheet).is_empty());
    assert!(said(&job).starts_with("A: Joints at 2.0° and 2.0°: good."), "{}", said(&job));
}

/// The nose at 1° up: joints of 2 and 4°, √(16 − 4) = 3.464° left over. At 601.80 rad/s that is 362,170 × 0.060460² = 1,324 rad/s².
/// The nose 2° further up leaves nothing.
#[test]
fn a_low_nose_is_wedged_up() {
    let job = sloping("3 down", "5 down", "1 up");
    let sheet = sheet(&job);
    near(&sheet, "driveline.joint_2_d", 4.0, 1e-9);
    near(&sheet, "driveline.joint_difference_d", 2.0, 1e-9);
    near(&sheet, "driveline.left_over_d", 3.464, 0.000_5);
    near(&sheet, "driveline.pinion_shaken_rads2", 1_324.0, 2.0);
    near(&sheet, "driveline.nose_up_d", 3.0, 1e-9);
    let cautions = cautions(&sheet);
    assert_eq!(
        cautions,
        ["4.0° at the rear is over the 2.8° that 5,747 rpm allows: bring it nearer in line", "the ends differ by 2.0°, 1° at most"]
    );
    let said = said(&job);
    for part in ["Joints at 2.0° and 4.0°", "wedge the axle 2.0° nose up and 0.0° is left", "by a shop that does shafts"] {
        assert!(said.contains(part), "{part} in {said}");
    }
}

/// The shaft runs 2° to the right, gearbox and nose 3° and straight: a = (1, 0, −0.05241), b = (1, 0.03492, −0.05241);
/// |a × b| = 0.03497, a · b = 1.00275, tan β = 0.03487: 1.9973° at both ends. In mm, a drop of 5.23 in over 60 in is 5.00°.
#[test]
fn sideways_and_by_offsets() {
    let sheet_of = |shaft: &str| sheet(&sloping("3 down", shaft, "3 up"));
    let sideways = sheet_of("3 down, 2 right");
    near(&sideways, "driveline.joint_1_d", 1.997_3, 0.000_1);
    near(&sideways, "driveline.left_over_d", 0.0, 1e-6);
    for dropped in ["5.23 in down", "5,23\" down", "132.84 mm", "down 13.284 cm"] {
        near(&sheet_of(dropped), "driveline.joint_2_d", 2.0, 0.002);
    }
}

/// Two pieces: the front one in line with the gearbox, the rear at 2° to it and to the nose: −2² + 2² leave nothing. With the rear
/// piece's yokes turned they add to √8 = 2.83°.
#[test]
fn three_joints_and_turned_yokes() {
    let mut job = sloping("3 down", "3 down; 5 down", "3 up");
    let id = job.setups[0].id;
    job.type_text(Field::Setup(id, SetupField::Shaft(ShaftField::Lengths)), "30 + 30".into());
    near(&sheet(&job), "driveline.joint_1_d", 0.0, 1e-9);
    near(&sheet(&job), "driveline.joint_3_d", 2.0, 1e-9);
    near(&sheet(&job), "driveline.left_over_d", 0.0, 1e-6);
    assert!(cautions(&sheet(&job)).is_empty(), "{:?}", cautions(&sheet(&job)));
    job.choose(Choice::Setup(id, SetupChoice::ShaftYokes), "last-turned");
    near(&sheet(&job), "driveline.left_over_d", 2.828, 0.001);
    let said = said(&job);
    assert!(said.contains("the joints add up, 2.8° is left over; set the yokes in line and 0.0° is left"), "{said}");
}

/// Asked before anything else is typed: 2° go up to 16,250 ÷ 2 = 8,125 rpm; 12° no speed allows.
#[test]
fn without_a_speed_it_is_said_how_far_the_angles_go() {
    for (shaft, said) in
        [("5 down", "Joints at 2.0° and 2.0°: good up to 8,125 rpm of the shaft."), ("15 down", "sharper than any shaft speed")]
    {
        let mut job = demo::empty(System::Inch);
        let id = job.setups[0].id;
        let fields = [ShaftField::GearboxSlope, ShaftField::Slopes, ShaftField::PinionSlope];
        for (field, text) in fields.into_iter().zip(["3 down", shaft, "3 up"]) {
            job.type_text(Field::Setup(id, SetupField::Shaft(field)), text.into());
        }
        let answer = self::said(&job);
        assert!(answer.contains(said), "{answer}");
    }
}

/// At rest a joint's needles dent the cross: half a degree keeps them rolling.
#[test]
fn a_straight_line_is_cautioned() {
    let sheet = sheet(&sloping("3 down", "3 down", "3 up"));
    assert_eq!(cautions(&sheet), ["under 0.5° at the front its needles do not roll", "under 0.5° at the rear its needles do not roll"]);
}

#[test]
fn slopes_are_read_as_people_say_them() {
    for (text, end, side, plan) in [
        ("3 down", End::Rear, 3.0, 0.0),
        ("3", End::Rear, 3.0, 0.0),
        ("-3", End::Rear, -3.0, 0.0),
        ("−2.5°", End::Rear, -2.5, 0.0),
        ("2 1/2 up", End::Rear, -2.5, 0.0),
        ("2,5 deg up", End::Rear, -2.5, 0.0),
        ("2 (down)", End::Rear, 2.0, 0.0),
        ("down 3, right 1", End::Rear, 3.0, 1.0),
        ("3° down 1.5° left", End::Rear, 3.0, -1.5),
        ("1 right", End::Rear, 0.0, 1.0),
        ("level", End::Rear, 0.0, 0.0),
        ("level, 2 left", End::Rear, 0.0, -2.0),
        ("0", End::Front, 0.0, 0.0),
        ("3 up", End::Front, 3.0, 0.0),
        ("nose 3 up", End::Front, 3.0, 0.0),
        ("3 down", End::Front, -3.0, 0.0),
        ("rear 3 down", End::Front, 3.0, 0.0),
        ("3 nose up", End::Rear, 3.0, 0.0),
        ("3u 1r", End::Front, 3.0, 1.0),
    ] {
        let lean = |degrees: f64| Lean::Angle(unit::DEGREE.of(degrees));
        let read = read_one(text, end).unwrap_or_else(|why| panic!("{text}: {why:?}"));
        let same = |one: Lean, other: Lean| matches!((one, other), (Lean::Angle(one), Lean::Angle(other)) if (one - other).abs() < unit::DEGREE.of(1e-9));
        let wanted = Slope { side: lean(side), plan: lean(plan) };
        assert!(same(read.side, wanted.side) && same(read.plan, wanted.plan), "{text}: {read:?}");
    }
}

/// What is no slope is said beside its field, its text stays, and the rest of the sheet stands.
#[test]
fn what_is_no_slope_is_said() {
    use ShaftField as F;
    for (field, text, part) in [
        (F::GearboxSlope, "47 down", "“47” is outside what the slope can be. Type -45 to 45°"),
        (F::GearboxSlope, "steep", "“steep” is not understood in a slope"),
        (F::Slopes, "3 down up", "“3 down up” says both ways at once"),
        (F::Slopes, "-3 down", "“-3 down” says both ways at once"),
        (F::Slopes, "3 down right", "“3 down right” does not say how much"),
        (F::Slopes, "down", "“down” does not say how much"),
        (F::Slopes, "3 4", "“3 4” gives two slopes for one shaft"),
        (F::Slopes, "3 bananas", "is no unit for the slope"),
        (F::Slopes, "3 down; 4 down", "2 slopes for a shaft of 1 piece. Type a slope for each length"),
        (F::Slopes, "61 in down", "“61 in down” is more than the shaft is long"),
        (F::PinionSlope, "2 in up", "“2 in up” is an offset, not an angle"),
        (F::PinionSlope, "3 & up", "“&” is not understood"),
        (F::PinionSlope, "42 down", "Joint 2 would work at 47°, which none turns through"),
    ] {
        let mut job = sloping("3 down", "5 down", "3 up");
        let id = job.setups[0].id;
        let at = Field::Setup(id, SetupField::Shaft(field));
        job.type_text(at, text.into());
        let problems: Vec<String> = read_all(&job)[0].problems.iter().map(layshaft::problem::Problem::sentence).collect();
        assert!(problems.iter().any(|problem| problem.replace('−', "-").contains(part)), "{text}: {problems:?}");
        assert_eq!(job.text(at), Some(text));
        let sheet = sheet(&job);
        assert!(row(&sheet, "joint-angles").is_none_or(|row| row.cells[0].pieces().all(|piece| !piece.says())), "{text}");
        assert_eq!(figure(&sheet, 0, "driveline.shaft_rpm").shown, "5,747");
    }
}

/// Nothing typed is nothing said; some of it says what is missing; no more than eight rows decide.
#[test]
fn what_is_missing_is_told_and_rows_are_few() {
    let none = sheet(&sloping("", "", ""));
    assert!(row(&none, "joint-angles").is_none());
    let some = sheet(&sloping("3 down", "", ""));
    assert!(row(&some, "joint-angles").is_none());
    let full = sheet(&demo::job());
    let section = full.sections.iter().find(|section| section.id == "driveline").unwrap();
    assert!(section.decide <= 8 && row(&full, "joint-angles").is_some());
    assert!(of_id("driveline").unwrap().pictures.iter().any(|drawn| drawn.id == "shaft-joints"));
}
