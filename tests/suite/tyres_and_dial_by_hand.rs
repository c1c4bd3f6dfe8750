//! What the tyres carry and stand, and what the chosen rule says of a dial, worked out by hand on the demo job.
//!
//! Setup A reads 0.956701 of the truth: 856.5808 turns/mile × 43/11 × 8/28 ÷ 1,000; setup C 1.019093 with 7/23.

use layshaft::job::{Choice, Job, JobChoice, demo};
use layshaft::questions;
use layshaft::sheet::Piece;
use layshaft::units::{System, Typed};

use crate::any_job::{figure, figures, rows, sheet};

/// A figure of setup A as it is shown.
#[track_caller]
fn check(job: &Job, key: &str, shown: &str) {
    check_in(job, 0, key, shown);
}

#[track_caller]
fn check_in(job: &Job, column: usize, key: &str, shown: &str) {
    assert_eq!(figure(&sheet(job), column, key).text(), shown, "{key}");
}

/// Everything a row says of one setup.
fn said(job: &Job, column: usize, row: &str) -> String {
    let sheet = sheet(job);
    let cell = &rows(&sheet).find(|found| found.key == row).unwrap().cells[column];
    let pieces = cell.pieces().map(|piece| match piece {
        Piece::Figure(figure) => figure.text(),
        Piece::Words(text) | Piece::Absent(text) | Piece::Needed(text) => text.clone(),
        Piece::Verdict(verdict) => format!("! {}", verdict.text),
    });
    pieces.collect::<Vec<_>>().join(" | ")
}

fn with_tyre(text: &str) -> Job {
    let mut job = demo::job();
    job.setups[0].tyre = Typed::new(text, System::Inch);
    job
}

/// Load index 88 is 560 kg (Japanese trade glossary): 560 ÷ 0.45359237 = 1,234.6 lb; four carry 2,240 kg, 4,938.4 lb.
/// No tyre is 2,105 mm high, so a bare length as long is what it rolls: 2,105 ÷ 3.05 = 690.2 mm high as a radial.
#[test]
fn a_length_longer_than_any_tyre_is_high_is_the_way_rolled() {
    for text in ["2.105 m", "2105 mm", "82.87 in"] {
        let rolled = layshaft::tyre::read(text, layshaft::units::System::Inch).unwrap().rolling().circumference.value;
        assert!((rolled - 2.105).abs() < 2e-4, "{text}: {rolled}");
    }
    // 1.85 m may be either, and is asked about.
    assert!(layshaft::tyre::read("1.85 m", layshaft::units::System::Inch).is_err());
}

#[test]
fn four_tyres_against_the_car() {
    let mut job = with_tyre("185/70R14 88S");
    check(&job, "tyre.load_limit_lb", "1,235 lb");
    check(&job, "tyre.four_carry_lb", "4,938 lb");
    assert!(!said(&job, 0, "tyre-load").contains('!'), "2,600 lb is carried");
    // 6,000 − 4,938.4 = 1,061.6 lb.
    job.pull.mass = Typed::new("6,000", System::Inch);
    assert!(
        said(&job, 0, "tyre-load").contains("! the car is 1,062 lb heavier than four such tires may carry"),
        "{}",
        said(&job, 0, "tyre-load")
    );
    job.pull.mass = Typed::default();
    assert!(!said(&job, 0, "tyre-load").contains("on four"), "without a mass there is nothing to compare");
    job.units = System::Metric;
    check(&job, "tyre.load_limit_kg", "560 kg");
}

/// Load indices 120 and 116 are 1,400 and 1,250 kg (ISO 4000-1, from memory).
#[test]
fn a_pair_on_one_hub() {
    let job = Job { units: System::Metric, ..with_tyre("LT235/85R16 120/116Q") };
    check(&job, "tyre.load_limit_kg", "1,400 kg");
    check(&job, "tyre.pair_load_limit_kg", "1,250 kg");
    assert_eq!(said(&with_tyre("185/70R14"), 0, "tyre-load"), "no load index given");
    assert_eq!(said(&with_tyre("205/60ZR15"), 0, "tyre-speed"), "Z alone only says above 240 km/h: ask the tire’s maker");
}

/// S is 180 km/h (Japanese trade glossary), 111.8 mph. At 6,500 rpm in 4th the car does 116.5 mph, at a limit of 6,000 rpm 107.5 mph.
#[test]
fn the_speed_symbol_against_the_top_speed() {
    let mut job = with_tyre("185/70R14 88S");
    check(&job, "tyre.speed_limit_mph", "112 mph");
    assert!(said(&job, 0, "tyre-speed").contains("! the top speed, in 4th, is 5 mph faster"), "{}", said(&job, 0, "tyre-speed"));
    job.pull.limit = Typed::new("6,000", System::Inch);
    check(&job, "tyre.fastest_mph", "108 mph");
    assert!(!said(&job, 0, "tyre-speed").contains('!'), "the shift rpm is no longer asked");
    job.pull.mass = Typed::default();
    assert!(said(&job, 0, "tyre-speed").contains("! 4th at the shift rpm is 5 mph faster"), "{}", said(&job, 0, "tyre-speed"));
}

/// UN R39 tests at 40, 80 and 120 km/h on the dial: 40 ÷ 0.956701 = 41.81 km/h true, 1.8 too low; 40 ÷ 1.019093 = 39.25, inside by 0.7.
#[test]
fn readings_at_the_test_speeds() {
    let mut job = Job { units: System::Metric, ..demo::job() };
    check(&job, "speedometer.test_1_true_kmh", "41.8 km/h");
    assert!(said(&job, 0, "tests").starts_with("40 km/h on the dial: | 41.8 km/h | true, reads 1.8 km/h too low"));
    assert!(said(&job, 2, "tests").starts_with("40 km/h on the dial: | 39.3 km/h | true, inside by 0.7 km/h"));
    // SAE J2976 tests at a true 25, 45 and 65 mph and allows 1 % low, 4 % high: 65 × 0.956701 = 62.2 mph, 65 × 0.99 − 62.2 = 2.2 too low.
    job.units = System::Inch;
    job.choose(Choice::Job(JobChoice::Law), "un-r39");
    // 40 km/h ÷ 1.609344 = 24.9 mph.
    assert!(said(&job, 2, "tests").starts_with("24.9 mph (40 km/h) on the dial: | 24.4 mph | true, inside by 0.5 mph"));
    job.choose(Choice::Job(JobChoice::Law), "sae-j2976");
    check(&job, "speedometer.test_3_reads_mph", "62.2 mph");
    assert!(said(&job, 0, "tests").contains("on the dial, reads 2.2 mph too low"), "{}", said(&job, 0, "tests"));
    // 49 CFR 393.82 speaks of 50 mph alone: at 60 the dial is not judged, at 50 it shows 47.8, inside 45 to 55.
    job.choose(Choice::Job(JobChoice::Law), "us-49-cfr-393-82");
    assert!(said(&job, 0, "tests").contains("47.8 mph | on the dial, inside by 2.8 mph"), "{}", said(&job, 0, "tests"));
}

/// ADR 18/00 to 18/02 allow 4 % (Australian motoring-club pages): 95.7 of 100 is outside, 101.9 inside.
#[test]
fn the_odometer_is_judged() {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::Law), "un-r39");
    // UN R39 says nothing on odometers (press article): the figure stands alone.
    assert_eq!(said(&job, 0, "odometer"), "95.7 mi");
    job.choose(Choice::Job(JobChoice::Law), "adr-18-00");
    // ADR 18/00 allows a dial 10 % either way: it says nothing of 4.3 %, and the odometer is the caution.
    assert!(said(&job, 0, "odometer").contains("! outside ADR 18/00 to 18/02: 4 %"), "{}", said(&job, 0, "odometer"));
    assert!(said(&job, 2, "odometer").contains("inside ADR 18/00 to 18/02"));
}

/// Drive teeth ÷ 0.298643 (1,000 ÷ 3,348.45): 7 wants 23.44 driven teeth, 4 wants 13.39.
#[test]
fn every_drive_gear_wants_a_driven_count() {
    let job = demo::job();
    check(&job, "speedometer.driven_for_7", "23.44 for 7");
    check(&job, "speedometer.driven_for_4", "13.39 for 4");
}

/// A tenth too high with 8/28: 28 × 1.1 = 30.8 would be exact; 8/30 leaves 1.1 × 28/30 − 1 = +2.7 %, 61.6 at 60, and only the driven gear
/// is changed for it.
#[test]
fn a_road_check_names_the_mending_gear() {
    let mut job = demo::job();
    job.setups[0].speedo.road_check = Typed::new("33 30; 55 50; 77 70", System::Inch);
    let fit =
        "fit the 30-tooth driven gear, keep the 8-tooth drive: | 61.6 mph | 2.7 % | driven gear only, a ten-minute job; Curlew, in stock";
    check(&job, "speedometer.driven_wanted", "30.80");
    assert_eq!(said(&job, 0, "fit"), fit);
    // The tyre is not asked: the road has answered for it.
    job.setups[0].tyre = Typed::default();
    assert_eq!(said(&job, 0, "fit"), fit);
    // A steady amount is not mended by gears.
    job.setups[0].speedo.road_check = Typed::new("34 30; 54 50; 74 70", System::Inch);
    assert!(said(&job, 0, "fit").starts_with("keep 8 drive, 28 driven"), "{}", said(&job, 0, "fit"));
}

/// A new 205/60R15 is 619.6 to 636.8 mm across (UN R30 paragraph 6.1.4, from memory).
#[test]
fn a_measured_diameter_beside_its_size() {
    let job = Job { units: System::Metric, ..with_tyre("205/60R15 diameter 610 mm") };
    check(&job, "tyre.new_least_mm", "620 mm");
    check(&job, "tyre.new_greatest_mm", "637 mm");
    assert!(said(&job, 0, "tyre").ends_with("when new: smaller than that is worn, or another size"));
}

#[test]
fn a_tread_depth_that_cannot_be_read_is_not_a_new_tyre() {
    let mut job = demo::job();
    job.setups[0].tread_lost = Typed::new("deep", System::Inch);
    let read = questions::read_all(&job);
    assert!(read[0].tyre.is_some() && read[0].rolling.is_none());
    assert_eq!(said(&job, 0, "rolls"), "needs the tread worn off");
    assert!(said(&job, 0, "cruise").contains("needs the tread worn off"));
    assert!(figures(&sheet(&job), 0).all(|figure| !figure.key.starts_with("gear_1.at_shift")));
}

#[test]
fn a_check_speed_is_called_a_road_speed() {
    let mut job = demo::job();
    job.speedo.check = Typed::new("900", System::Inch);
    let problems = questions::Conditions::of(&job).problems;
    let said = problems.iter().find(|problem| problem.field.path() == "speedo-check").map(layshaft::problem::Problem::sentence);
    assert!(said.as_deref().is_some_and(|said| said.contains("outside what the road speed can be")), "{said:?}");
}
