//! Published rolling circumferences, turns per mile and wear.

use std::f64::consts::PI;

use layshaft::tyre::{self, How, RADIAL_FACTOR, Rolling, Tyre};
use layshaft::units::common::{in_millimetres, in_rpm, millimetres, rolling_speed, rpm, wheel_speed};
use layshaft::units::{System, TurnsPerDistance, Unit, unit};

fn tyre(text: &str) -> Tyre {
    tyre::read(text, System::Inch).unwrap()
}

#[track_caller]
fn near(found: f64, printed: f64, tolerance: f64) {
    assert!((found - printed).abs() <= tolerance, "found {found}, printed {printed} ± {tolerance}");
}

fn per(unit: &Unit<TurnsPerDistance>, rolling: &Rolling) -> f64 {
    unit.number(rolling.turns())
}

/// Computed from the diameter by the ISO rule: free turns per mile, 3.05 × D, turns per km and mile by 3.05.
#[track_caller]
fn worked(text: &str, free_per_mile: f64, circumference_mm: f64, per_km: f64, per_mile: f64) {
    let (tyre, half) = (tyre(text), 0.05 + 1e-9);
    let rolling = tyre.rolling();
    assert_eq!(rolling.how, How::Radial);
    near(in_millimetres(rolling.circumference), circumference_mm, 0.5);
    near(per(&unit::TURNS_KM, &rolling), per_km, half);
    near(per(&unit::TURNS_MILE, &rolling), per_mile, half);
    let free = tyre.alternatives().into_iter().find(|way| way.how == How::Free).unwrap();
    near(per(&unit::TURNS_MILE, &free), free_per_mile, half);
}

#[test]
fn worked_vectors() {
    worked("155/80R13", 886.3, 1763.0, 567.2, 912.9);
    worked("175/65R14", 877.2, 1781.0, 561.4, 903.5);
    worked("205/60R15", 817.0, 1912.0, 522.9, 841.6);
    worked("195/65R15", 806.7, 1937.0, 516.3, 831.0);
    worked("P215/65R15", 775.0, 2016.0, 496.0, 798.3);
    worked("205/55R16", 810.6, 1928.0, 518.8, 834.9);
    worked("225/45R17", 808.0, 1934.0, 517.1, 832.3);
    worked("P225/75R15", 712.5, 2193.0, 456.0, 733.9);
    worked("LT245/75R16", 661.8, 2361.0, 423.6, 681.7);
}

#[test]
fn the_factors() {
    // European Commission vehicle simulator 4.3.7: rolling over free radius 3.05 / 3.14 = 0.97134 (read); with π itself 0.970845 (computed).
    let rounded_pi = 314.0 / 100.0;
    near(RADIAL_FACTOR / rounded_pi, 0.97134, 0.000_005);
    near(RADIAL_FACTOR / PI, 0.970_845, 0.000_000_5);
    // A personal car page uses 0.97 of the free circumference: within 0.1 %.
    near(RADIAL_FACTOR / PI, 0.97, 0.001);
    // Diagonal 2.99 to 3.0, from memory and unsure.
    near(tyre::DIAGONAL_FACTOR, 2.995, 0.006);
    // Computed: turns/mile = 20168.11 / D_in free, 20773.8 / D_in loaded radial; turns/km = 318309.9 / D_mm and 327868.9 / D_mm.
    let one = tyre("diameter 25 in");
    near(per(&unit::TURNS_MILE, &one.rolling()) * 25.0, 20_773.8, 0.05);
    let free = one.alternatives().into_iter().find(|way| way.how == How::Free).unwrap();
    near(per(&unit::TURNS_MILE, &free) * 25.0, 20_168.11, 0.005);
    near(per(&unit::TURNS_KM, &free) * 635.0, 318_309.9, 0.05);
    near(per(&unit::TURNS_KM, &one.rolling()) * 635.0, 327_868.9, 0.05);
}

/// Car-club technical answer of 3 July 2016 on 175/65R15.
#[test]
fn a_measured_tyre() {
    let (listed, ruled) = (tyre("867 turns/mile"), tyre("175/65R15"));
    // Effective diameter 63360 / 867 / π = 23.26 in; by rule 609 mm, 866.4 turns per mile; free 841.2.
    near(in_millimetres(listed.rolling().circumference) / 25.4 / PI, 23.26, 0.005);
    near(in_millimetres(ruled.diameter().unwrap().value), 609.0, 1e-9);
    near(per(&unit::TURNS_MILE, &ruled.rolling()), 866.4, 0.05);
    near(per(&unit::TURNS_MILE, &ruled.alternatives()[1]), 841.2, 0.05);
    // 1/8 in worn off: the odometer runs about 1 % high; 0.25 / 23.26 = 1.07 %.
    let new = listed.rolling();
    let worn = new.worn(millimetres(3.175));
    near(100.0 * (new.circumference / worn.circumference).value - 100.0, 1.07, 0.02);
}

/// Tyre-trade glossaries: 63,360 over turns per mile is the rolling circumference in inches.
#[test]
fn turns_and_circumference_are_inverse() {
    for (text, circumference_mm) in
        [("856 turns/mile", 63_360.0 / 856.0 * 25.4), ("532 rev/km", 1e6 / 532.0), ("10 turns 18.79 m", 1_879.0)]
    {
        near(in_millimetres(tyre(text).rolling().circumference), circumference_mm, 1e-6);
    }
    // By hand: 2π × 11.4 in = 71.63 in is what it stands on; a radial rolls 5.02 % more, 75.22 in.
    near(in_millimetres(tyre("loaded radius 11.4 in").rolling().circumference) / 25.4, 75.22, 0.01);
}

/// A hydraulics formula page: ratio 10, 1680 rpm, 15 mph → 15.0 in with its rounded 168; exact constant 168.0676 (computed).
#[test]
fn road_speed_constants() {
    let around = |radius_mm: f64| millimetres(2.0 * PI * radius_mm);
    let mph = unit::MPH.number(rolling_speed(rpm(168.0), around(15.0 * 25.4)));
    near(mph, 15.0, 15.0 * 0.0005);
    near(168.0 * 15.0 / mph, 168.0676, 0.0001);
    // The same page: ratio 10, 1500 rpm, 20 km/h → 353.7 mm exact; constant 2652.58.
    let km_h = unit::KM_H.number(rolling_speed(rpm(150.0), around(353.7)));
    near(km_h, 20.0, 0.002);
    near(150.0 * 353.7 / km_h, 2652.58, 0.005);
    near(in_rpm(wheel_speed(unit::MPH.of(60.0), around(15.0 * 25.4))), 60.0 * 168.0676 / 15.0, 0.001);
}
