//! The bounds that a sentence names are bounds that are accepted, in every unit they can be typed in.

use std::collections::BTreeSet;

use layshaft::units::{
    Angle, AngularVelocity, Area, Length, Limits, Mass, Measured, MomentOfInertia, Plain, Power, Pressure, Share, System,
    ThermodynamicTemperature, Time, Torque, TurnsPerDistance, Typed, Velocity, limits,
};

/// Types each printed bound of every row of one quantity, in each of its units; the words of those rows.
fn typed_back<Q: Measured>() -> Vec<&'static str> {
    let here = |row: &&Limits| Q::units().iter().any(|unit| unit.symbol == row.unit);
    let rows: Vec<&Limits> = limits::ALL.iter().filter(here).collect();
    for row in &rows {
        for unit in Q::units() {
            let range = row.range_in(unit);
            assert!(!range.contains("  ") && !range.ends_with(' '), "{range:?}");
            let bounds = range.trim_end_matches(unit.symbol).trim_end();
            let (least, greatest) = bounds.split_once(" to ").unwrap();
            for bound in [least, greatest] {
                let text = format!("{bound} {}", unit.symbol);
                assert!(Typed::new(text, System::Metric).read::<Q>(row).is_ok(), "{}: {bound} of {range}", row.word);
            }
        }
    }
    rows.iter().map(|row| row.word).collect()
}

#[test]
fn every_printed_bound_is_accepted() {
    let walked = [
        typed_back::<Angle>(),
        typed_back::<AngularVelocity>(),
        typed_back::<Area>(),
        typed_back::<Length>(),
        typed_back::<Mass>(),
        typed_back::<MomentOfInertia>(),
        typed_back::<Plain>(),
        typed_back::<Power>(),
        typed_back::<Pressure>(),
        typed_back::<Share>(),
        typed_back::<ThermodynamicTemperature>(),
        typed_back::<Time>(),
        typed_back::<Torque>(),
        typed_back::<TurnsPerDistance>(),
        typed_back::<Velocity>(),
    ];
    let walked: BTreeSet<&str> = walked.into_iter().flatten().collect();
    assert!(limits::ALL.iter().all(|row| walked.contains(row.word)), "{walked:?}");
}

/// By hand: 1 km/h is 0.6214 mph and 400 km/h are 248.5 mph; 0.25 m is 0.000 155 3 mile; 0.01 s is 10 ms; 0.1 m² is 1.076 ft².
#[test]
fn bounds_are_rounded_inwards_to_two_digits_at_least() {
    fn check<Q: Measured>(row: &Limits, unit: &str, range: &str) {
        let unit = Q::units().iter().find(|each| each.symbol == unit).unwrap();
        assert_eq!(row.range_in(unit), range);
    }
    check::<Velocity>(&limits::CRUISE_SPEED, "mph", "0.63 to 248 mph");
    check::<Length>(&limits::ROLLED, "mile", "0.00016 to 3.7 mile");
    check::<Time>(&limits::SYNCHRONISING_TIME, "ms", "10 to 5,000 ms");
    check::<Area>(&limits::DRAG_AREA, "ft²", "1.1 to 64 ft²");
    check::<MomentOfInertia>(&limits::INERTIA, "kg·m²", "0.0001 to 100 kg·m²");
    check::<MomentOfInertia>(&limits::INPUT_INERTIA, "kg·m²", "0.00001 to 2 kg·m²");
    check::<Plain>(&limits::GRIP, "", "0.05 to 2.5");
    check::<Angle>(&limits::HELIX, "°", "0 to 50°");
}
