//! Fits and clearances beside figures worked by hand, the ways people write them, and what cannot be used.

use layshaft::fits::readings::{Readings, nominal};
use layshaft::job::{BenchField, Choice, Field, FitsField, Job, JobChoice, JobField, demo};
use layshaft::questions::{bench, build};
use layshaft::sheet::{Section, Sheet, Words};
use layshaft::units::common::{in_millimetres, millimetres};
use layshaft::units::{System, Typed, limits};

use crate::any_job::near;

fn job(units: System, [bore, shaft, wanted]: [&str; 3]) -> Job {
    let mut job = demo::empty(units);
    for (field, text) in [(FitsField::Bore, bore), (FitsField::Shaft, shaft), (FitsField::Wanted, wanted)] {
        job.type_text(Field::Job(JobField::Bench(BenchField::Fits(field))), text.into());
    }
    job
}

fn section(sheet: &Sheet) -> &Section {
    sheet.sections.iter().find(|section| section.id == "fits").unwrap()
}

fn said(job: &Job) -> String {
    section(&build(job, Words::Us)).answer.plain()
}

/// Two depths of a bore: 25.013 and 25.014, mean 25.0135, taper 0.001, out of round 0.002. Shaft 24.9855: 0.028 mm of clearance, inside
/// the 0.007 to 0.041 of H7/g6. 70 K warmer in aluminium: 0.028 + 25.0135 × 22·10⁻⁶ × 70 − 24.9855 × 11.7·10⁻⁶ × 70 = 0.0461.
#[test]
fn a_shaft_that_runs_in_its_bore() {
    let job = job(System::Metric, ["25.012 25.014; 25.013 25.015", "24.985 24.986", "H7/g6"]);
    near(&job, "fits.bore_mean_mm", 25.0135, 1e-9);
    near(&job, "fits.bore_taper_mm", 0.001, 1e-9);
    near(&job, "fits.bore_round_mm", 0.002, 1e-9);
    near(&job, "fits.clearance_mm", 0.028, 1e-9);
    near(&job, "fits.clearance_least_mm", 0.026, 1e-9);
    near(&job, "fits.clearance_greatest_mm", 0.030, 1e-9);
    near(&job, "fits.wanted_least_mm", 0.007, 1e-9);
    near(&job, "fits.wanted_greatest_mm", 0.041, 1e-9);
    near(&job, "fits.clearance_hot_mm", 0.0461, 5e-5);
    assert_eq!(
        said(&job),
        "0.028 mm of clearance at the bench, 0.046 mm of clearance at 90 °C. H7/g6 wants 0.007 to 0.041 mm of clearance: this pair is inside it."
    );
}

/// 1.0002 − 0.9992 = 0.0010 in. 1.5 to 2.5 thou: 0.0005 too tight, bore 0.9992 + 0.0015 = 1.0007 to 1.0017, shaft 1.0002 − 0.0025 = 0.9977 to
/// 0.9987. 0.2 to 0.6 thou: 0.0004 too loose, shaft 0.9996 to 1.0000.
#[test]
fn what_to_do_about_it() {
    let tight = job(System::Inch, ["1.0002", "0.9992", "1.5 to 2.5 thou"]);
    for (key, wanted) in [("bore_least", 1.0007), ("bore_greatest", 1.0017), ("shaft_least", 0.9977), ("shaft_greatest", 0.9987)] {
        near(&tight, &format!("fits.{key}_in"), wanted, 1e-9);
    }
    assert!(
        said(&tight).ends_with(
            "Wanted is 0.0015 to 0.0025 in of clearance: it is 0.0005 in too tight. \
             Bring the bore to 1.0007 to 1.0017 in, or the shaft to 0.9977 to 0.9987 in."
        ),
        "{}",
        said(&tight)
    );
    let loose = job(System::Inch, ["1.0002", "0.9992", "0.2-0.6 thou"]);
    near(&loose, "fits.shaft_least_in", 0.9996, 1e-9);
    assert!(
        said(&loose).ends_with("it is 0.0004 in too loose. Fit a shaft of 0.9996 to 1.0000 in, or sleeve the bore."),
        "{}",
        said(&loose)
    );
}

/// A bearing 0.020 mm over its bore in aluminium: 70 K warmer it is loose by −0.020 + 71.98 × 22·10⁻⁶ × 70 − 72 × 11.7·10⁻⁶ × 70 = 0.0319.
/// It drops in at 20 + (0.020 + 0.050) ÷ (71.98 × 22·10⁻⁶) = 64.2 °C, or chilled by 0.070 ÷ (72 × 11.7·10⁻⁶) = 83.1 K to −63.1 °C.
#[test]
fn a_bearing_in_aluminium() {
    let mut job = job(System::Metric, ["71.980", "72.000", "interference 0.01 to 0.03"]);
    near(&job, "fits.clearance_mm", -0.020, 1e-9);
    near(&job, "fits.clearance_hot_mm", 0.0319, 5e-5);
    near(&job, "fits.oven_dc", 64.2, 0.05);
    near(&job, "fits.chill_dc", -63.1, 0.05);
    assert_eq!(
        said(&job),
        "0.020 mm of interference at the bench, 0.032 mm of clearance at 90 °C. Wanted is 0.010 to 0.030 mm of interference: this pair is inside it. \
         Hot it comes loose. The shaft drops in with the aluminum at 64 °C."
    );
    // In cast iron it stays: −0.020 + 71.98 × 11.4·10⁻⁶ × 70 − 0.0590 = −0.0215.
    job.choose(Choice::Job(JobChoice::FitsBore), "cast-iron");
    near(&job, "fits.clearance_hot_mm", -0.0215, 5e-5);
    assert!(!said(&job).contains("loose"), "{}", said(&job));
}

/// A bronze bush in a steel gear grows more than the gear: 0.005 + 20.005 × 11.7·10⁻⁶ × 70 − 20 × 17.6·10⁻⁶ × 70 = −0.0033.
#[test]
fn what_grips_when_hot() {
    let mut job = job(System::Metric, ["20.005", "20.000", "0 to 0.02"]);
    job.choose(Choice::Job(JobChoice::FitsBore), "steel");
    job.choose(Choice::Job(JobChoice::FitsShaft), "bronze");
    near(&job, "fits.clearance_hot_mm", -0.0033, 5e-5);
    assert!(said(&job).contains("Hot it grips."), "{}", said(&job));
}

/// One of the two alone says what the other must be: 25.010 less 0.041 and 0.007.
#[test]
fn one_of_the_two_alone() {
    assert_eq!(
        said(&job(System::Metric, ["25.010", "", "H7/g6"])),
        "H7/g6 wants 0.007 to 0.041 mm of clearance: this bore takes a shaft of 24.969 to 25.003 mm."
    );
    assert_eq!(
        said(&job(System::Metric, ["", "24.990", "H7/g6"])),
        "H7/g6 wants 0.007 to 0.041 mm of clearance: this shaft takes a bore of 24.997 to 25.031 mm."
    );
    assert_eq!(said(&job(System::Metric, ["25.010", "", ""])), "");
}

/// The nearest whole mm, or sixteenth of an inch: 1.0003 in is 25.4 mm, 25.013 mm is 25, 0.6255 in is 5/8 in = 15.875 mm.
#[test]
fn the_size_that_is_meant() {
    for (diameter, size) in [(25.408, 25.4), (25.013, 25.0), (15.888, 15.875), (71.98, 72.0)] {
        assert!((in_millimetres(nominal(millimetres(diameter))) - size).abs() < 1e-9, "{diameter}");
    }
}

/// Readings as people write them.
#[test]
fn readings_as_they_are_written() {
    let mean = |text: &str, system| in_millimetres(Readings::read(&Typed::new(text, system), &limits::FIT_DIAMETER).unwrap().mean());
    for text in ["25.012 25.014", "25.012, 25.014 mm", "25,012; 25,014", "25.012mm 25.014mm", "25.012\n25.014"] {
        assert!((mean(text, System::Metric) - 25.013).abs() < 1e-9, "{text}: {}", mean(text, System::Metric));
    }
    assert!((mean("1.0002 1.0004", System::Inch) - 1.0003 * 25.4).abs() < 1e-9);
    // Each in its own unit is no mixing.
    assert!((mean("25.4 mm 1.0000 in", System::Inch) - 25.4).abs() < 1e-9);
}

fn problems(texts: [&str; 3]) -> Vec<String> {
    bench::problems(&job(System::Metric, texts)).iter().map(layshaft::problem::Problem::sentence).collect()
}

/// What cannot be used is said with what to do.
#[test]
fn what_cannot_be_used_is_said() {
    for (texts, part) in [
        (["25", "", "H7/zz9"], "“zz9” is not a shaft of ISO 286 known here. Type a letter from c to u and a grade from 4 to 12, as g6."),
        (["25", "", "Q7/g6"], "“Q7” is not a hole of ISO 286 known here. Type a letter from C to U and a grade from 4 to 12, as H7."),
        (["25", "", "H7/g33"], "“g33” is not a shaft of ISO 286 known here."),
        (["25", "", "H7"], "“H7” is not a fit. Type hole and shaft, as H7/g6."),
        (["20", "", "H7/t6"], "ISO 286 has no t6 at this size in the tables here. Choose another fit, or type the range of clearance."),
        (["25", "", "snug"], "“snug” is neither a fit nor a range of clearance. Type a code such as H7/g6, or both ends"),
        (["25", "", "2 to 6"], "“2” is outside what the clearance can be"),
        (
            ["25.02 24.02", "", ""],
            "the readings “25.02 24.02” are too far apart to be of one diameter. Check each for its point and its unit",
        ),
        (["bore 25", "", ""], "“bore 25” is not a diameter"),
        // Inches in a place of mm.
        (["0.985", "", ""], "“0.985” is outside what the diameter can be. Type 1 to 250 mm"),
    ] {
        let said = problems(texts);
        assert!(said.iter().any(|said| said.to_lowercase().contains(&part.to_lowercase())), "{texts:?}: {said:?}");
    }
    assert_eq!(problems(["25.01", "25", "g6/H7"]), [""; 0]);
    assert_eq!(problems(["25.01", "25", "h7 / g6"]), [""; 0]);
}

/// A bore and a shaft that are not of one seat, and readings that scatter more than the fit allows, are asked about.
#[test]
fn slips_are_asked_about() {
    assert_eq!(
        said(&job(System::Metric, ["25.02", "2.498", "H7/g6"])),
        "Bore and shaft are 22.522 mm apart: is the point of one of them in its place?"
    );
    assert!(said(&job(System::Metric, ["40", "1.574", ""])).ends_with("is the shaft in inches?"));
    let rows = build(&job(System::Metric, ["25.000 25.040", "24.98", "H7/g6"]), Words::Us);
    let doubt = section(&rows).rows.iter().find(|row| row.key == "bore-scatter").map(|row| format!("{:?}", row.cells[0])).unwrap();
    assert!(doubt.contains("the readings of the bore lie 0.040 mm apart, and the fit allows 0.034 mm in all"), "{doubt}");
}
