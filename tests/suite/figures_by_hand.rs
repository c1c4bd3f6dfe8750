//! The demo job's figures against arithmetic done apart from the program, and the same figures as another program reads them.
//!
//! 185/70R14: 14 × 25.4 = 355.6, taken as 356; 185 × 0.70 = 129.5, taken as 130; 356 + 2 × 130 = 616 mm; 616 × 3.05 = 1,878.8 mm a turn,
//! which is 1,609,344 ÷ 1,878.8 = 856.58 turns a mile. The shown figures of setup A are those of the design's drawing, too.

use layshaft::job::{BenchField, Field, Job, JobField, SetupField, demo, file};
use layshaft::questions::{build, figures_of_file};
use layshaft::sheet::Words;
use layshaft::sheet::export::csv;
use layshaft::units::System;

use crate::any_job::{figure, figures, sheet};

/// Half of the last digit of the arithmetic below.
const RELATIVE: f64 = 2e-5;

/// A figure of a column as it is shown, and its value worked out by hand.
#[track_caller]
fn check(job: &Job, column: usize, key: &str, shown: &str, by_hand: f64) {
    let sheet = sheet(job);
    let found = figure(&sheet, column, key);
    assert_eq!(found.text(), shown, "{key}");
    assert!((found.value / by_hand - 1.0).abs() < RELATIVE, "{key} is {}, not {by_hand}", found.value);
}

#[test]
fn setup_a_in_inches() {
    let job = demo::job();
    // 30/25 × 37/18 = 1110/450; × 43/11 = 47730/4950.
    check(&job, 0, "gear_1.ratio", "2.467", 1110.0 / 450.0);
    check(&job, 0, "gear_1.overall", "9.642", 47_730.0 / 4_950.0);
    check(&job, 0, "first_overall", "9.64", 47_730.0 / 4_950.0);
    // 30/25 × 32/23 = 960/575 and 30/25 × 28/27 = 840/675.
    check(&job, 0, "gear_2.ratio", "1.670", 960.0 / 575.0);
    check(&job, 0, "gear_3.ratio", "1.244", 840.0 / 675.0);
    // Drops: 1 − (32/23)/(37/18) = 1 − 576/851; 1 − (28/27)/(32/23) = 1 − 644/864; 1 − 675/840.
    check(&job, 0, "gear_1.drop_percent", "32 %", 27_500.0 / 851.0);
    check(&job, 0, "gear_2.drop_percent", "25 %", 22_000.0 / 864.0);
    check(&job, 0, "gear_3.drop_percent", "20 %", 16_500.0 / 840.0);
    // 6,500 × 60 ÷ 9.642424 ÷ 856.5808 = 47.2183 mph; at 1,000 rpm 60,000 ÷ 9.642424 ÷ 856.5808 = 7.26435.
    check(&job, 0, "gear_1.at_shift_mph", "47.2 mph", 390_000.0 / (9.642_424 * 856.580_8));
    check(&job, 0, "gear_1.per_1000_mph", "7.3 mph", 60_000.0 / (9.642_424 * 856.580_8));
    // Top gear is 43/11: 390,000 ÷ 3.909091 ÷ 856.5808 = 116.472 mph.
    check(&job, 0, "gear_4.at_shift_mph", "116.5 mph", 390_000.0 / (3.909_091 * 856.580_8));
    // 70 mph is 70/60 miles a minute: × 856.5808 × 3.909091 = 3,906.53 rpm.
    check(&job, 0, "cruise_rpm", "3,907 rpm", 70.0 / 60.0 * 856.580_8 * 3.909_091);
    // 6,500 × 576/851 = 4,399.53 rpm.
    check(&job, 0, "gear_1.lands_at_rpm", "4,400 rpm", 6_500.0 * 576.0 / 851.0);
    // Reverse: 30/25 × 33/16 = 990/400.
    check(&job, 0, "reverse.ratio", "2.475", 990.0 / 400.0);
    check(&job, 0, "rolling_circumference_in", "73.97 in", 1_878.8 / 25.4);
    check(&job, 0, "tooth_sum", "55", 55.0);
}

#[test]
fn setups_b_and_c_and_how_they_differ() {
    let job = demo::job();
    // 28/27 × 37/18 × 43/11 = 44548/5346; 33/22 × 36/19 × 43/11 = 51084/4598.
    check(&job, 1, "first_overall", "8.33", 44_548.0 / 5_346.0);
    check(&job, 2, "first_overall", "11.11", 51_084.0 / 4_598.0);
    // 3rd to 4th of C: 33/22 × 27/28 = 891/616, so 1 − 616/891.
    check(&job, 2, "gear_3.drop_percent", "31 %", 27_500.0 / 891.0);
    // 5th of C: 33/22 × 20/35 = 660/770; × 43/11 = 3.350649; 70/60 × 856.5808 × 3.350649 = 3,348.45 rpm.
    check(&job, 2, "gear_5.ratio", "0.857", 660.0 / 770.0);
    check(&job, 2, "cruise_rpm", "3,348 rpm", 70.0 / 60.0 * 856.580_8 * 3.350_649);
    // 8.33296 − 9.64242 = −1.30946; 11.11005 − 9.64242 = 1.46763; 3,348 − 3,907 = −559, as the two are read.
    let sheet = sheet(&job);
    let difference = |column, key| figure(&sheet, column, key).difference.clone();
    assert_eq!(difference(1, "short.first_overall").as_deref(), Some("−1.31"));
    assert_eq!(difference(2, "short.first_overall").as_deref(), Some("+1.47"));
    assert_eq!(difference(2, "short.cruise_rpm").as_deref(), Some("−559"));
    assert_eq!((difference(0, "short.first_overall"), difference(1, "short.cruise_rpm")), (None, None));
}

#[test]
fn setup_a_in_metric() {
    let job = Job { units: System::Metric, ..demo::job() };
    // 6,500 ÷ 9.642424 × 1.8788 m × 60 ÷ 1,000 = 75.9904 km/h; what was typed as 70 stays 70 mph, 112.654 km/h.
    check(&job, 0, "gear_1.at_shift_kmh", "76.0 km/h", 6_500.0 / 9.642_424 * 1.878_8 * 0.06);
    check(&job, 0, "cruise_rpm", "3,907 rpm", 70.0 / 60.0 * 856.580_8 * 3.909_091);
    check(&job, 0, "rolling_circumference_mm", "1,879 mm", 1_878.8);
}

#[test]
fn figures_of_a_file_for_scripts() {
    let of_demo = figures_of_file(&file::to_text(&demo::job())).unwrap();
    assert!(of_demo.is_sound);
    let text = of_demo.json;
    let read: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert_eq!(read["title"], demo::job().title);
    let setups = read["setups"].as_array().unwrap();
    assert_eq!(setups.iter().map(|setup| setup["letter"].as_str().unwrap()).collect::<String>(), "ABC");
    let value = |column: usize, key: &str| setups[column]["figures"][key].as_f64().unwrap();
    assert!((value(0, "gear_1.at_shift_mph") - 47.218_3).abs() < 1e-3 && (value(2, "cruise_rpm") - 3_348.45).abs() < 0.05);
    let sheet = build(&demo::job(), Words::Us);
    for (column, setup) in setups.iter().enumerate() {
        for figure in figures(&sheet, column) {
            // Reading decimal digits back may miss by the last bit.
            let read = setup["figures"][&figure.key].as_f64().unwrap();
            assert!((read - figure.value).abs() <= 1e-15 * figure.value.abs(), "{}", figure.key);
        }
    }
    let cautions = setups[2]["cautions"].as_array().unwrap();
    assert!(cautions.iter().any(|caution| caution == "3rd to 4th falls further than 2nd to 3rd"), "{cautions:?}");
    assert_eq!(
        figures_of_file("{}").unwrap_err(),
        "the text is not a job (it names no schema): choose a file that was saved as a job here"
    );
}

/// Every field that does not read is named, wherever it stands.
#[test]
fn problems_of_a_file_for_scripts() {
    let mut job = demo::job();
    let b = job.setups[1].id;
    job.type_text(Field::Job(JobField::Cruise), "fast".into());
    job.type_text(Field::Setup(b, SetupField::FinalDrive), "43/x11".into());
    job.type_text(Field::Job(JobField::Bench(BenchField::InputTurns)), "0".into());
    job.type_text(Field::Job(JobField::Bench(BenchField::OutputTurns)), "4".into());
    let told = figures_of_file(&file::to_text(&job)).unwrap();
    assert!(!told.is_sound);
    let read: serde_json::Value = serde_json::from_str(&told.json).unwrap();
    let problems = read["problems"].as_array().unwrap();
    let says = |setup: Option<&str>, part: &str| {
        problems.iter().any(|problem| problem["setup"].as_str() == setup && problem["says"].as_str().unwrap().contains(part))
    };
    assert!(says(None, "fast") && says(Some("B"), "43/x11"), "{problems:#?}");
    assert!(problems.iter().any(|problem| problem["field"].as_str().unwrap().contains("turns")), "{problems:#?}");
}

#[test]
fn the_table_for_spreadsheets() {
    let mut job = demo::job();
    job.setups[1].name = "=1+1, \"close\"".into();
    let table = csv(&job, &build(&job, Words::Us));
    let mut lines = table.split("\r\n");
    assert_eq!(lines.next(), Some("section,row,As it came,\"'=1+1, \"\"close\"\"\",\"Five-speed, overdrive 5th\""));
    let first = lines.find(|line| line.starts_with("Gears,1st,")).unwrap();
    assert_eq!(
        first,
        "Gears,1st,\"2.467; 47.2 mph; then 4,400 rpm; 37/18\",\"2.132; 54.6 mph; then 4,400 rpm; 37/18\",\"2.842; 41.0 mph; then 4,431 rpm; 36/19\""
    );
    assert!(table.ends_with("\r\n"));
}
