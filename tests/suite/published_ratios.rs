//! Published gearboxes and speeds, from the typed text to the shown figure; published ladders of gears.
//!
//! The exact ratios themselves stand in `published_gears_trains`; here they go through the whole job to the sheet.

use layshaft::gearing::ladder::Character;
use layshaft::gearing::{Ladder, Layout, Ratio};
use layshaft::job::Job;
use layshaft::questions::road::answer::{engine_speed, road_speed};
use layshaft::units::common::{in_rpm, metres, rpm};
use layshaft::units::{System, Typed, Unit, Velocity, unit};

use crate::any_job::{figure, sheet, typed};
use crate::nth;

const INPUT: Layout = Layout::InputReduced;

/// What the sheet of a job shows under each key.
#[track_caller]
fn check(job: &Job, rows: &[(&str, &str)]) {
    let sheet = sheet(job);
    for (key, shown) in rows {
        assert_eq!(figure(&sheet, 0, key).text(), *shown, "{key}");
    }
}

/// Jindal, Machine Design, 1st ed. 2010, example 29-2, p. 751 (read in a companion of worked solutions): prints 5.109, 2.291, 1, 5.676;
/// every forward pair sums to 70.
#[test]
fn three_speed_box_of_jindal() {
    let job = typed(INPUT, "23/47", &["50/20", "37/33", "direct"], ["50/18", ""], "", "");
    check(
        &job,
        &[("gear_1.ratio", "5.109"), ("gear_2.ratio", "2.291"), ("gear_3.ratio", "1.000"), ("reverse.ratio", "5.676"), ("tooth_sum", "70")],
    );
}

/// Lecture text on automobile gearboxes: 3rd pair 24 and 36 gives 1.333, reverse 18 and 38; the other counts rebuilt to its
/// specification (first 4, tooth sum 60).
#[test]
fn four_speed_box_of_a_lecture() {
    let job = typed(INPUT, "20/40", &["40/20", "32/28", "24/36", "direct"], ["38/18", "22"], "", "");
    check(
        &job,
        &[("gear_1.ratio", "4.000"), ("gear_2.ratio", "2.286"), ("gear_3.ratio", "1.333"), ("reverse.ratio", "4.222"), ("tooth_sum", "60")],
    );
    check(&job, &[("spread", "4.00")]);
}

/// A vehicle workshop manual's data page (read): 5th 39 to 29 is 0.744, final drive 18 to 61 is 3.389. Its product 2.521 multiplies
/// rounded numbers; exact is 1769/702 = 2.519943. The four gears below are invented.
#[test]
fn five_speed_box_with_the_top_gear_of_a_workshop_manual() {
    let job = typed(Layout::TwoShaft, "", &["38/11", "35/18", "40/31", "34/35", "29/39"], ["", ""], "18/61", "");
    check(&job, &[("gear_5.ratio", "0.744"), ("gear_5.overall", "2.520")]);
}

/// A motorcycle workshop manual (read): primary 18 to 28, gear 16 to 24. It prints 2.325 because it cuts 28/18 to 1.55; exact is 7/3.
#[test]
fn gear_and_stage_of_a_motorcycle_manual() {
    let job = typed(INPUT, "18/28", &["24/16"], ["", ""], "1", "");
    check(&job, &[("gear_1.ratio", "2.333"), ("gear_1.overall", "2.333")]);
}

/// Singh, Automobile Engineering, vol. 1 (from memory): clutch pinion 14, lay gear 36, lay 18, main 32, axle 3.7, tyre radius 0.355 m
/// (2π × 0.355 m = 2230.53 mm): 16.914 overall, 19.78 km/h at 2,500 rpm.
#[test]
fn lay_gear_of_singh() {
    let mut job = typed(INPUT, "14/36", &["32/18", "direct"], ["", ""], "3,7", "2230.53 mm circumference");
    job.shift = Typed::new("2500 rpm", System::Metric);
    check(&job, &[("gear_1.ratio", "4.571"), ("gear_1.overall", "16.914"), ("gear_1.at_shift_kmh", "19.8 km/h")]);
    assert!((figure(&sheet(&job), 0, "gear_1.at_shift_kmh").value - 19.780_9).abs() < 5e-5);
}

/// A trade page on gear ratios (read): 65 mph, axle 3.08, direct, 30 in tyre (π × 30 in = 94.2478 in). It prints 2,242 with its
/// constant of 336; exact is 2,243.14.
#[test]
fn cruising_rpm_of_a_trade_page() {
    let mut job = typed(INPUT, "25/30", &["direct"], ["", ""], "3.08", "94.2478 in circumference");
    job.cruise = Typed::new("65 mph", System::Metric);
    check(&job, &[("cruise_rpm", "2,243 rpm")]);
    let found = figure(&sheet(&job), 0, "cruise_rpm").value;
    assert!((found - 2_243.14).abs() < 0.01 && (found / 2_242.24 - 1.0).abs() < 4.1e-4, "{found}");
}

fn hundredths(ratio: f64, scale: i128) -> Ratio {
    #[expect(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "printed ratios have four digits at most")]
    Ratio::new((ratio * scale as f64).round() as i128, scale)
}

/// University course on vehicle dynamics, propulsion force, example 4 (inputs read, outputs computed from v = 0.120 π r n / i):
/// 185/60R14 of nominal radius 0.2888 m, final drive 3.944.
#[test]
fn speeds_of_a_course() {
    let rows = [
        (3.78, 7.302_97, 4.537_86, 43.818),
        (2.12, 13.021_34, 8.091_08, 78.128),
        (1.46, 18.907_69, 11.748_70, 113.446),
        (1.03, 26.801_20, 16.653_49, 160.807),
        (0.84, 32.863_37, 20.420_35, 197.180),
    ];
    let circumference = metres(0.2888) * std::f64::consts::TAU;
    for (gear, per_thousand_km_per_h, per_thousand_mph, at_six_thousand) in rows {
        let overall = hundredths(gear, 100) * hundredths(3.944, 1_000);
        let speed = |engine: f64, unit: &Unit<Velocity>| unit.number(road_speed(rpm(engine), overall, circumference));
        let close = |found: f64, wanted: f64, half_a_digit: f64| {
            assert!((found - wanted).abs() <= half_a_digit, "gear {gear}: {found}, not {wanted}");
        };
        close(speed(1_000.0, &unit::KM_H), per_thousand_km_per_h, 6e-6);
        close(speed(1_000.0, &unit::MPH), per_thousand_mph, 6e-6);
        close(speed(6_000.0, &unit::KM_H), at_six_thousand, 6e-4);
    }
}

/// A problem text on upshifts (inputs read, outputs computed): 3rd 1.24, 4th 0.75, final drive 3.94, radius 10 in, 40 mph:
/// 3,284.44 to 1,986.56 rpm.
#[test]
fn an_upshift_at_forty() {
    let around = unit::INCH.of(10.0) * std::f64::consts::TAU;
    let at_forty = |gear: f64| in_rpm(engine_speed(unit::MPH.of(40.0), hundredths(gear, 100) * hundredths(3.94, 100), around));
    assert!((at_forty(1.24) - 3_284.44).abs() < 0.01, "{}", at_forty(1.24));
    assert!((at_forty(0.75) - 1_986.56).abs() < 0.01, "{}", at_forty(0.75));
}

/// Mannering and others, Principles of Highway Engineering, problem 2.7 (inputs read, book from memory): 130 mph, overall 2.5,
/// radius 12.6 in, slip 3 %: 4,469.2 rpm. Slip is not the sheet's, so it is put on here.
#[test]
fn engine_speed_at_top_speed() {
    let around = unit::INCH.of(12.6) * std::f64::consts::TAU;
    let found = in_rpm(engine_speed(unit::MPH.of(130.0), Ratio::new(5, 2), around)) / 0.97;
    assert!((found - 4_469.2).abs() < 0.05, "{found}");
}

/// One published ladder: ratios, spread, steps, rpm after each upshift at 6,000, and what it is like.
#[track_caller]
fn ladder(ratios: &[f64], spread: f64, steps: &[f64], after: &[f64], character: Character) {
    let ladder = Ladder::new(ratios.iter().map(|ratio| hundredths(*ratio, 1_000)));
    let close = |found: f64, wanted: f64, tolerance: f64| assert!((found - wanted).abs() <= tolerance, "{found}, not {wanted}");
    close(layshaft::gearing::teeth::decimal(ladder.spread().unwrap()), spread, 5e-5);
    for (found, wanted) in ladder.steps().into_iter().zip(steps) {
        close(layshaft::gearing::teeth::decimal(found), *wanted, 5e-5);
    }
    for (found, wanted) in ladder.drops().into_iter().zip(after) {
        close(6_000.0 * (1.0 - found), *wanted, 0.5);
    }
    assert_eq!((ladder.steps().len(), ladder.character()), (steps.len(), character));
}

/// Ratios as printed in the source named; spread, steps and rpm follow from them by division.
#[test]
fn published_ladders() {
    // University course on vehicle dynamics (read).
    ladder(
        &[3.78, 2.12, 1.46, 1.03, 0.84],
        4.5,
        &[1.7830, 1.4521, 1.4175, 1.2262],
        &[3_365.0, 4_132.0, 4_233.0, 4_893.0],
        Character::Progressive,
    );
    // Exam problem on a rear-wheel-drive car, after Yu, exercise 1.10 (read).
    ladder(
        &[3.79, 2.17, 1.41, 1.00, 0.86],
        4.4070,
        &[1.7465, 1.5390, 1.4100, 1.1628],
        &[3_435.0, 3_899.0, 4_255.0, 5_160.0],
        Character::Progressive,
    );
    // Problem text on a front-wheel-drive car (read): 3rd to 4th falls further than 2nd to 3rd.
    ladder(
        &[3.25, 1.96, 1.24, 0.75, 0.58],
        5.6034,
        &[1.6582, 1.5806, 1.6533, 1.2931],
        &[3_618.0, 3_796.0, 3_629.0, 4_640.0],
        Character::Uneven(nth(3)),
    );
    // Teaching notes on a six-speed box (read; approximate by their own words): the last step grows.
    ladder(
        &[3.5, 2.0, 1.4, 1.0, 0.85, 0.65],
        5.3846,
        &[1.75, 1.4286, 1.4, 1.1765, 1.3077],
        &[3_429.0, 4_200.0, 4_286.0, 5_100.0, 4_588.0],
        Character::Uneven(nth(5)),
    );
    // Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, example 1 (from memory).
    ladder(
        &[4.28, 2.79, 1.83, 1.36, 1.00],
        4.28,
        &[1.5341, 1.5246, 1.3456, 1.36],
        &[3_911.0, 3_935.0, 4_459.0, 4_412.0],
        Character::Progressive,
    );
    // Jazar, Vehicle Dynamics, driveline chapter (from memory).
    ladder(
        &[3.827, 2.36, 1.685, 1.312, 1.00, 0.793],
        4.8260,
        &[1.6216, 1.4006, 1.2843, 1.3120, 1.2610],
        &[3_700.0, 4_284.0, 4_672.0, 4_573.0, 4_758.0],
        Character::Progressive,
    );
}

/// The laws of ladders with worked numbers: geometric (Heisler, Advanced Vehicle Technology, 2nd ed., section 3.8.3; Liu, Hybrid Electric
/// Vehicle System Modeling and Control, 2nd ed., equation 10.22; both read), progressive (Naunheimer and others, Automotive
/// Transmissions, ch. 4, from memory), harmonic and arithmetic (Liu, equations 10.23 and 10.20).
#[test]
fn ladders_by_rule() {
    let character = |ratios: &[f64]| Ladder::new(ratios.iter().map(|ratio| hundredths(*ratio, 1_000_000))).character();
    assert_eq!(character(&[4.0, 2.674_961, 1.788_854, 1.196_279, 0.8]), Character::Geometric);
    assert_eq!(character(&[3.4, 2.261_097, 1.503_695, 1.0]), Character::Geometric);
    assert_eq!(character(&[4.0, 2.318_614, 1.478_392, 1.036_916, 0.8]), Character::Progressive);
    assert_eq!(character(&[3.4, 2.055_543, 1.366_995, 1.0]), Character::Progressive);
    assert_eq!(character(&[3.8, 2.361_251, 1.584_617, 1.148_498, 0.899_001, 0.76]), Character::Progressive);
    assert_eq!(character(&[4.0, 2.0, 1.333_333, 1.0, 0.8]), Character::Progressive);
    assert_eq!(character(&[4.0, 3.2, 2.4, 1.6, 0.8]), Character::Uneven(nth(2)));
    assert_eq!(character(&[4.0, 2.0, 2.0, 1.0]), Character::Inverted(nth(2)));
    assert_eq!(character(&[4.0, 2.0]), Character::Short);
}
