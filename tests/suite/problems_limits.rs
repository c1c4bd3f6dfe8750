//! The bounds that a sentence names are bounds that are accepted, in every unit they can be typed in.

use layshaft::units::{Limits, Measured, System, Unit, limits, unit};

#[test]
fn every_printed_bound_is_accepted() {
    for row in limits::ALL {
        for (unit, range) in row.ranges() {
            assert!(!range.contains("  ") && !range.ends_with(' '), "{range:?}");
            let bounds = range.trim_end_matches(unit).trim_end();
            let (least, greatest) = bounds.split_once(" to ").unwrap();
            for bound in [least, greatest] {
                assert!(row.check(&format!("{bound} {unit}"), System::Metric).is_ok(), "{}: {bound} of {range}", row.word());
            }
        }
    }
}

/// By hand: 1 km/h is 0.6214 mph and 400 km/h are 248.5 mph; 0.25 m is 0.000 155 3 mi; 0.01 s is 10 ms; 0.1 m² is 1.076 ft².
#[test]
fn bounds_are_rounded_inwards_to_two_digits_at_least() {
    fn check<Q: Measured>(row: &Limits<Q>, unit: &Unit<Q>, range: &str) {
        assert_eq!(row.range_in(unit), range);
    }
    check(&limits::CRUISE_SPEED, &unit::MPH, "0.63 to 248 mph");
    check(&limits::ROLLED, &unit::MILE, "0.00016 to 3.7 mi");
    check(&limits::SYNCHRONISING_TIME, &unit::MS, "10 to 5,000 ms");
    check(&limits::DRAG_AREA, &unit::SQ_FT, "1.1 to 64 ft²");
    check(&limits::INERTIA, &unit::KG_M2, "0.0001 to 100 kg·m²");
    check(&limits::INPUT_INERTIA, &unit::KG_M2, "0.00001 to 2 kg·m²");
    check(&limits::GRIP, &unit::NUMBER, "0.05 to 2.5");
    check(&limits::HELIX, &unit::DEGREE, "0 to 50°");
}

/// By hand: 0.9 m² are 0.9 × 10.7639 = 9.6875 ft²; 2.6 m are 102.362 in; 0.57 m are 22.441 in; 1,000 turns/mile are 621.37 turns/km.
#[test]
fn a_value_taken_is_said_in_the_readers_units() {
    fn check<Q: Measured>(quantity: Q, inch: &str, metric: &str) {
        assert_eq!([System::Inch, System::Metric].map(|system| limits::say(quantity, system)), [inch, metric]);
    }
    check(unit::SQ_M.of(0.9), "9.69 ft²", "0.9 m²");
    check(unit::METRE.of(2.6), "102 in", "2,600 mm");
    check(unit::METRE.of(0.57), "22.4 in", "570 mm");
    check(unit::TURNS_MILE.of(1_000.0), "1,000 turns/mile", "621 turns/km");
    check(unit::SECOND.of(0.25), "0.25 s", "0.25 s");
    check(unit::RPM.of(6_525.0), "6,525 rpm", "6,525 rpm");
    check(unit::NUMBER.of(0.015), "0.015", "0.015");
    check(unit::PERCENT.of(0.0), "0 %", "0 %");
}
