//! Splines by their standards' formulas and rows, each with its source.

use layshaft::swap::standard::Pitch;
use layshaft::swap::{Agreement, Form, Spline};
use layshaft::units::common::in_millimetres;
use layshaft::units::{Length, System, unit};

#[track_caller]
fn close(is: Length, inches: f64) {
    let is = unit::INCH.number(is);
    assert!((is - inches).abs() <= 5e-7, "{is} in is not {inches} in");
}

/// 26 teeth of 24/48: pitch diameter N ÷ P = 1.083333 in and filleted root (N − 1.8) ÷ P = 1.008333 in, by the formulas of ANSI B92.1 as a
/// machinery handbook has them (from memory; recomputed).
#[test]
fn sizes_of_a_spline_of_26_teeth() {
    let pitch = Pitch::Diametral(24.0);
    close(pitch.diameter(26), 1.083_333_3);
    close(pitch.fillet_root(26), 1.008_333_3);
    // (26 − 1.35) ÷ 24 and (26 + 1) ÷ 24
    close(pitch.flat_root(26), 1.027_083_3);
    close(pitch.outside(26), 1.125);
}

/// ISO 4156 at 30°, module 2 and 24 teeth: D = 48, outside m·(z + 1) = 50, flat root m·(z − 1.5) = 45, filleted m·(z − 1.8) = 44.4 mm
/// (formulas from memory).
#[test]
fn sizes_of_a_module_spline() {
    let pitch = Pitch::Module(2.0);
    let sizes = [pitch.diameter(24), pitch.outside(24), pitch.flat_root(24), pitch.fillet_root(24)].map(in_millimetres);
    for (is, wanted) in sizes.into_iter().zip([48.0, 50.0, 45.0, 44.4]) {
        assert!((is - wanted).abs() < 1e-9, "{is} is not {wanted}");
    }
}

fn names(text: &str) -> Vec<String> {
    Spline::read(text, System::Inch).unwrap().standards().into_iter().map(|standard| standard.name).collect()
}

/// The take-off shafts of farm tractors: type 2 has 21 involute splines on 1 3/8 in, type 3 has 20 on 1 3/4 in (ISO 500-3, from memory):
/// (21 + 1) ÷ 16 and (20 + 1) ÷ 12.
#[test]
fn tractor_shafts_are_found_by_count_and_diameter() {
    assert_eq!(names("21 x 1 3/8")[0], "16/32 involute, ANSI B92.1");
    assert_eq!(names("20 x 1 3/4")[0], "12/24 involute, ANSI B92.1");
}

/// Rows of ISO 14 (from memory): 6 × 23 × 26 and 8 × 32 × 36; the root may stand in front or behind.
#[test]
fn straight_sides_are_found_by_their_root() {
    assert_eq!(names("6 x 23 x 26 mm")[0], "6 × 23 × 26 straight-sided, ISO 14");
    assert_eq!(names("8 x 36 x 32 mm")[0], "8 × 32 × 36 straight-sided, ISO 14");
    // SAE, 10 splines, class C: root 0.81 × 1.125 = 0.911 in (handbook table, from memory).
    assert!(names("10 x 1 1/8 x 0.911").contains(&"10 C straight-sided, SAE".to_owned()));
    // Ten teeth of 10/20 would be 1.1 in over the tops, 2.2 % less: no involute pitch has 1.125.
    assert!(names("10 x 1 1/8").is_empty());
}

/// 25 teeth: 26 ÷ 20 = 1.3 in = 33.02 mm, and 26 × 1.25 = 32.5 mm: a caliper alone cannot part 32.6 mm, and both are named, the nearer first.
#[test]
fn near_twins_are_both_named() {
    assert_eq!(names("25 x 32.6 mm"), ["module 1.25 involute, ISO 4156", "20/40 involute, ANSI B92.1"]);
}

#[test]
fn a_form_that_is_said_is_kept_to() {
    let read = |text: &str| Spline::read(text, System::Metric).unwrap();
    assert_eq!(read("10 straight-sided x 28.6").form, Some(Form::Straight));
    assert_eq!(read("10 straight x 28.6").beside(&read("10 involute x 28.6")), Agreement::OtherForm);
    assert!(read("21 straight x 1 3/8 in").standards().is_empty());
    assert_eq!(read("10 splines x 1 1/8 in").count, 10);
}
