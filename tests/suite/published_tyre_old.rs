//! Old sizes, written as people write them: what they measure, and what a tyre rolls that was measured standing.
//!
//! Diameters of old tyres are from memory of standards and of the trade's lists, so they are held to a band of some 1 to 2 %.

use layshaft::tyre::size::Construction;
use layshaft::tyre::{self, Basis, How, Tyre};
use layshaft::units::System;
use layshaft::units::common::in_millimetres;

fn tyre(text: &str) -> Tyre {
    tyre::read(text, System::Inch).unwrap()
}

fn diameter_mm(text: &str) -> f64 {
    in_millimetres(tyre(text).diameter().unwrap().value)
}

fn rolled_mm(text: &str) -> f64 {
    in_millimetres(tyre(text).rolling().circumference)
}

#[track_caller]
fn near(found: f64, wanted: f64, tolerance: f64) {
    assert!((found - wanted).abs() <= tolerance, "found {found}, wanted {wanted} ± {tolerance}");
}

/// Bands in inches from memory. The widths end in 5 or are a truck's, so that the 82 and 92 % rule of the sixties is 5 to 12 % short.
#[test]
fn old_rims_are_not_low_sections() {
    for (text, least_in, greatest_in, ruled_in) in [
        ("4.75-19", 28.1, 28.9, 19.0 + 2.0 * 0.82 * 4.75),
        ("5.25-18", 28.0, 28.9, 18.0 + 2.0 * 0.82 * 5.25),
        ("5.25-21", 31.0, 31.8, 21.0 + 2.0 * 0.82 * 5.25),
        ("6.25-16", 27.7, 28.7, 16.0 + 2.0 * 0.82 * 6.25),
        ("7.50-16", 30.7, 32.1, 16.0 + 2.0 * 0.92 * 7.50),
        ("8.25-20", 37.5, 38.6, 20.0 + 2.0 * 0.82 * 8.25),
        ("10.00-20", 41.0, 41.9, 20.0 + 2.0 * 0.92 * 10.00),
    ] {
        let found_in = diameter_mm(text) / 25.4;
        assert!((least_in..=greatest_in).contains(&found_in), "{text}: {found_in}");
        assert!(found_in / ruled_in > 1.03, "{text}: {found_in} against {ruled_in} by the rule");
        let diameter = tyre(text).diameter().unwrap();
        assert_eq!(diameter.basis, Basis::Table);
        assert!(diameter.source.contains("from memory"), "{text}");
    }
    // A size that no table has, by hand: 17 + 2 × 1.00 × 4.25 = 25.5 in; the sixties' 8.55-15 stays 15 + 2 × 0.82 × 8.55 = 29.022 in.
    near(diameter_mm("4.25-17") / 25.4, 25.5, 1e-9);
    near(diameter_mm("8.55-15") / 25.4, 29.022, 1e-9);
}

/// A car's 8.25-15 of the sixties and a truck's are two tyres: 28.53 in (wheel-trade page) and 836 mm (UN R54, from memory).
#[test]
fn a_truck_of_the_same_name() {
    near(diameter_mm("8.25-15") / 25.4, 28.53, 1e-9);
    let other = tyre("8.25-15").dimensions().unwrap().other_diameters.first().cloned().unwrap();
    near(in_millimetres(other.value), 836.0, 1e-9);
    for text in ["8.25R15", "8.25-15LT", "8.25-15 C"] {
        near(diameter_mm(text), 836.0, 1e-9);
    }
}

/// UN R30 Annex 5 Table I, from memory: 5.20-13 582 mm, 6.70-15 710 mm, 6.45-13 600 mm.
#[test]
fn car_sizes_after_the_war() {
    for (text, mm) in [("5.20S13", 582.0), ("5.20-13", 582.0), ("6.70-15", 710.0), ("6.45-13", 600.0), ("5.90-14", 642.0)] {
        near(diameter_mm(text), mm, 0.0);
    }
}

/// Inch and millimetre marks of the same beaded edge tyre (old conversion lists, from memory) agree to 1.5 %.
#[test]
fn beaded_edge_marks_of_one_tyre() {
    for (mm, inch) in [("760x90", "30x3 1/2"), ("810x90", "32x3½"), ("815x105", "32x4"), ("875x105", "34 x 4"), ("895x135", "35×5")] {
        near(diameter_mm(mm) / diameter_mm(inch), 1.0, 0.015);
        assert_eq!((tyre(mm).diameter().unwrap().basis, tyre(inch).diameter().unwrap().basis), (Basis::Rule, Basis::Rule));
    }
    // By hand: 30 in are 762 mm, the rim 30 − 2 × 3.5 = 23 in or 584 mm, and it rolls 2.99 × 762 = 2,278 mm; 710 × 2.99 = 2,123 mm.
    near(rolled_mm("30x3 1/2"), 2_278.4, 0.05);
    near(in_millimetres(tyre("30x3 1/2").rim().unwrap().value), 584.0, 0.0);
    near(rolled_mm("710x90"), 2_122.9, 0.05);
    near(in_millimetres(tyre("710x90").rim().unwrap().value), 530.0, 0.0);
    assert_eq!(tyre("711x90").diameter().unwrap().basis, Basis::Approximate, "a mark that is none of the known ones says so");
    // A truck's high-pressure 32x6 gave way to 7.00-20 and is as tall (from memory), not 32 in.
    near(diameter_mm("32x6"), diameter_mm("7.00-20"), 0.0);
}

/// By hand: (728 + 742) / 2 = 735 mm, (722 + 734) / 2 = 728 mm; both sizes stand beside it.
#[test]
fn one_tyre_for_two_sizes() {
    near(diameter_mm("6.00/6.50-16"), 735.0, 1e-9);
    near(diameter_mm("5.25/5.50-18"), 728.0, 1e-9);
    let others: Vec<f64> =
        tyre("6.00/6.50-16").dimensions().unwrap().other_diameters.iter().map(|other| in_millimetres(other.value)).collect();
    assert_eq!(others, [728.0, 742.0]);
}

/// One row a way of writing: what it is read as.
#[test]
fn ways_of_writing() {
    for (typed, written) in [
        ("165S13", "165SR13"),
        ("5.20S13", "5.20S-13"),
        ("3.50-19", "3.50-19"),
        ("350-19", "3.50-19"),
        ("400-19", "4.00-19"),
        ("710x90", "710x90"),
        ("710 X 90", "710x90"),
        ("30x3 1/2", "30x3 1/2"),
        ("30x3½", "30x3 1/2"),
        ("30 x 3-1/2", "30x3 1/2"),
        ("30x3.5", "30x3 1/2"),
        ("LT235/85R16/E", "LT235/85R16 load range E"),
        ("185/70R-14", "185/70R14"),
        ("185/70-R14", "185/70R14"),
        ("185/70-14", "185/70-14"),
        ("4.40/4.50-21", "4.40/4.50-21"),
        ("185/70R14 88S front", "185/70R14 88S"),
        ("6.00-16 (radial)", "6.00R16"),
        ("6.00-16 crossply, spare", "6.00-16"),
    ] {
        assert_eq!(tyre(typed).size().unwrap().to_string(), written, "{typed}");
    }
    assert_eq!(tyre("185/70R14 88S front pair").passed_over(), Some("FRONT PAIR"));
    assert_eq!(tyre("6.00-16 radial").passed_over(), None);
    assert_eq!(tyre("6.00-16 radial").size().unwrap().construction, Construction::Radial);
    assert_eq!(tyre("185/70R14 front rolls 1,865 mm").rolling().how, How::Circumference);
}

/// A word, a sign or a phrase says what was measured; a bare number that no tyre has in inches is in millimetres.
#[test]
fn ways_of_measuring() {
    for text in ["OD 635 mm", "od 635", "Ø635", "Ø 635 mm", "⌀635mm", "635 mm O.D.", "O/D 635 mm", "diameter 25 in", "25 in tall"] {
        near(diameter_mm(text), 635.0, 1e-9);
    }
    let standing = rolled_mm("loaded radius 304.8 mm");
    for text in ["SLR 304.8 mm", "hub to ground 12 in", "12 in hub to ground", "hub-to-ground 304.8", "centre of hub to the road 12 in"] {
        near(rolled_mm(text), standing, 1e-9);
    }
    // A rolling radius is no standing one, by hand: 2π × 300 = 1,885.0 mm.
    for text in ["rolling radius 300 mm", "dynamic radius 300 mm", "DRR 300 mm"] {
        near(rolled_mm(text), 1_885.0, 0.05);
        assert_eq!(tyre(text).rolling().how, How::RollingRadius);
    }
}

/// R = F − (F − S) / 3, Jazar, Vehicle Dynamics, chapter 3, from memory; checked against standing radius and rolling circumference of
/// three sizes in the European tyre and rim standards manual, from memory.
#[test]
fn a_tyre_rolls_on_more_than_it_stands_on() {
    for (text, manual_mm) in [("195/65R15 SLR 292 mm", 1_935.0), ("205/55R16 SLR 291 mm", 1_927.0), ("175/65R14 SLR 269 mm", 1_781.0)] {
        near(rolled_mm(text) / manual_mm, 1.0, 0.006);
        // Without its size: about 5 % more than 2πS.
        let alone = text.split_once(' ').unwrap().1;
        near(rolled_mm(alone) / manual_mm, 1.0, 0.015);
    }
    // By hand: 317.5 − (317.5 − 292) / 3 = 309.0 mm, 2π of it 1,941.5 mm; alone 292 × (1 − 0.07 / 3) / 0.93 = 306.65 mm, 1,926.8 mm.
    near(rolled_mm("195/65R15 SLR 292 mm"), 1_941.5, 0.05);
    near(rolled_mm("SLR 292 mm"), 1_926.8, 0.1);
    near(rolled_mm("SLR 305 mm") / (std::f64::consts::TAU * 305.0), 1.05, 0.001);
    // Jazar, from memory: a diagonal tyre stands at 0.94 and rolls on 0.96 of its free radius; 5.60-15 is 650 mm across.
    near(rolled_mm("5.60-15 SLR 305.5 mm") / (std::f64::consts::TAU * 325.0), 0.96, 0.001);
    // A radius that the size cannot have leaves the size out of it: 317.5 mm is half of 635.
    near(rolled_mm("195/65R15 SLR 330 mm"), rolled_mm("SLR 330 mm"), 1e-9);
}

#[test]
fn how_sure_it_is_is_said() {
    for (text, words) in [
        ("SLR 305 mm", "from the loaded radius, ±1.5 %"),
        ("195/65R15 SLR 292 mm", "from the loaded radius, ±1.0 %"),
        ("195/65R15", "radial, 3.05 × diameter, by rule, ±1.5 %"),
        ("5.60-15", "diagonal, 2.99 × diameter, from a table, ±2.5 %"),
        ("rolls 1,878 mm", "measured circumference, ±0.5 %"),
    ] {
        assert_eq!(tyre(text).rolling().words(), words, "{text}");
    }
}
