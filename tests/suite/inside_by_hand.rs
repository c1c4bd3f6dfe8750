//! The inside of the box, worked out by hand beside the program's figures.

use layshaft::job::{Choice, Field, Job, JobChoice, JobField, demo};
use layshaft::questions::build;
use layshaft::sheet::{Cell, Piece, Sheet, Tone, Words};
use layshaft::units::Typed;

/// A figure of setup A.
fn figure(sheet: &Sheet, key: &str) -> f64 {
    let rows = sheet.sections.iter().filter(|section| section.id == "inside").flat_map(|section| &section.rows);
    let mut pieces = rows.filter_map(|row| row.cells.first()).flat_map(Cell::pieces);
    pieces.find_map(|piece| if let Piece::Figure(figure) = piece { (figure.key == key).then_some(figure.value) } else { None }).unwrap()
}

#[track_caller]
fn check(sheet: &Sheet, key: &str, by_hand: f64) {
    let value = figure(sheet, key);
    assert!((value - by_hand).abs() <= by_hand.abs() * 1e-9, "{key}: {value}, by hand {by_hand}");
}

/// Curlew four, wide: input pair 25 on 30; 1st 18 on 37, 2nd 23 on 32, 3rd 27 on 28; shift rpm 6,500.
#[test]
fn speeds_in_second_at_the_shift_rpm() {
    let sheet = build(&demo::job(), Words::Us);
    // 6,500 × 25 ÷ 30 = 5,416.7, and 5,416.7 × 23 ÷ 32 = 3,893.2.
    check(&sheet, "inside.countershaft_rpm", 6_500.0 * 25.0 / 30.0);
    check(&sheet, "inside.output_rpm", 6_500.0 * 25.0 / 30.0 * 23.0 / 32.0);
    // 1st turns 5,416.7 × 18 ÷ 37 = 2,635.1, the output 3,893.2: 1,258.1 apart.
    check(&sheet, "inside.idle_gear_1_rpm", 5_416.666_666_666_667 * (23.0 / 32.0 - 18.0 / 37.0));
    // 25 teeth of an input turning 6,500 a minute.
    check(&sheet, "inside.mesh_constant_hz", 25.0 * 6_500.0 / 60.0);
    // From 3rd into 2nd the engine goes by (32/23) ÷ (28/27).
    check(&sheet, "inside.downshift_3_to_2_rpm", 6_500.0 * 32.0 / 23.0 * 27.0 / 28.0);
    // 25 and 30 share the factor 5: after 30 ÷ 5 turns of the driver the same teeth meet.
    check(&sheet, "inside.constant.turns_to_repeat", 6.0);
}

/// In top, direct, the box turns with the driveshaft; the pinion's 11 teeth meet as often as it turns.
#[test]
fn a_road_speed_instead_of_an_input_speed() {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::InsideGear), "4");
    job.type_text(Field::Job(JobField::InsideAt), "70 mph".into());
    let sheet = build(&job, Words::Us);
    let output = figure(&sheet, "inside.output_rpm");
    // 70 mph = 31.2928 m/s; 1.8788 m a turn; 43 ÷ 11: 31.2928 ÷ 1.8788 × 60 × 43 ÷ 11 = 3,906.5 (the tyre's figure has five digits).
    assert!((output - 3_906.5).abs() < 0.2, "{output}");
    check(&sheet, "inside.cruise_mesh_final_hz", output * 11.0 / 60.0);
}

/// What a driver must not do is said in its row and not counted against the setup; limits that cannot be read are said.
#[test]
fn judgements_of_the_inside() {
    let sheet = build(&demo::job(), Words::Us);
    let inside = sheet.sections.iter().find(|section| section.id == "inside").unwrap();
    assert_eq!(inside.cautions().count(), 0);
    let tones = inside.rows.iter().flat_map(|row| &row.cells).flat_map(Cell::pieces);
    assert!(tones.filter(|piece| matches!(piece, Piece::Verdict(verdict) if verdict.tone == Tone::Driving)).count() >= 3);
    let mut job: Job = demo::job();
    job.inside.lining_limits = "5 3".into();
    job.inside.at = Typed::new("900 mph", job.units);
    let problems = layshaft::questions::Conditions::of(&job).problems;
    for field in ["lining-limits", "inside-at"] {
        assert!(problems.iter().any(|problem| problem.field.path() == field), "{field}: {problems:?}");
    }
}
