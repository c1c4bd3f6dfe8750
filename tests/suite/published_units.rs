//! Units against their exact definitions, and typed texts against what they mean.
//!
//! Everything follows from the inch of 25.4 mm, the pound of 0.45359237 kg and standard gravity of 9.80665 m/s²
//! (NIST SP 811, Appendix B, from memory; the values as in two public registries of constants, read).

use layshaft::units::{
    Acceleration, Angle, AngularVelocity, Area, Energy, Force, Frequency, Length, Limits, Mass, Measured, MomentOfInertia, Power, Pressure,
    System, ThermodynamicTemperature, Time, Torque, TurnsPerDistance, Unit, UnitError, Velocity, common, read, unit,
};

/// Two roundings of a double at most.
const EXACT: f64 = 4e-16;

/// Limits that allow everything.
fn anything<Q: Measured>() -> Limits<Q> {
    Limits { word: "value", unit: Q::usual(System::Metric), least: -1e15, greatest: 1e15, why: "a test" }
}

/// The unit of that symbol.
#[track_caller]
fn named<Q: Measured>(symbol: &str) -> &'static Unit<Q> {
    Q::units().iter().find(|unit| unit.symbol == symbol).unwrap()
}

/// A text is so many of a unit, to a relative tolerance.
#[track_caller]
fn check_to<Q: Measured>(text: &str, unit: &'static str, wanted: f64, tolerance: f64) {
    let quantity: Q = read(text, System::Inch, &anything()).unwrap();
    let found = named::<Q>(unit).number(quantity);
    assert!((found - wanted).abs() <= tolerance * wanted.abs().max(1.0), "{text} is {found} {unit}, not {wanted}");
}

#[track_caller]
fn check<Q: Measured>(text: &str, unit: &'static str, wanted: f64) {
    check_to::<Q>(text, unit, wanted, EXACT);
}

/// NIST SP 811, Appendix B.8 (from memory), all exact.
#[test]
fn lengths_areas_speeds() {
    check::<Length>("1 in", "mm", 25.4);
    check::<Length>("1 ft", "m", 0.3048);
    check::<Length>("1 mile", "m", 1_609.344);
    check::<Length>("1 thou", "µm", 25.4);
    check::<Length>("10 mm", "cm", 1.0);
    check::<Length>("1 km", "m", 1_000.0);
    check::<Area>("1 ft²", "m²", 0.092_903_04);
    check::<Area>("1 in²", "mm²", 645.16);
    check::<Velocity>("1 mph", "m/s", 0.447_04);
    check::<Velocity>("1 mph", "km/h", 1.609_344);
    check::<Velocity>("36 km/h", "m/s", 10.0);
    check::<Acceleration>("1 g", "m/s²", 9.806_65);
    check::<Acceleration>("1 ft/s²", "m/s²", 0.3048);
    check::<TurnsPerDistance>("1609.344 turns/mile", "turns/km", 1_000.0);
}

/// NIST SP 811, Appendix B.8 (from memory): pound, hundredweight, pound-force, kilogram-force, pound-force foot, all exact.
#[test]
fn masses_forces_torques() {
    check::<Mass>("1 lb", "kg", 0.453_592_37);
    check::<Mass>("1 cwt", "kg", 50.802_345_44);
    check::<Mass>("1 t", "kg", 1_000.0);
    check::<Force>("1 lbf", "N", 4.448_221_615_260_5);
    check::<Force>("1 kgf", "N", 9.806_65);
    check::<Torque>("1 lbf·ft", "N·m", 1.355_817_948_331_400_4);
    check::<Torque>("12 lbf·in", "lbf·ft", 1.0);
    check::<Torque>("1 kgf·m", "N·m", 9.806_65);
    check::<MomentOfInertia>("1 lb·in²", "kg·m²", 0.453_592_37 * 0.000_645_16);
}

/// NIST SP 811, Appendix B.8 (from memory): 550 ft·lbf/s, 75 kgf·m/s (its rounded 745.6999 and 735.499 W were read elsewhere),
/// conventional inch of mercury, pound per square inch.
#[test]
fn power_pressure_energy() {
    check::<Power>("1 hp", "W", 745.699_871_582_270_2);
    check::<Power>("1 PS", "W", 735.498_75);
    check_to::<Power>("1 hp", "PS", 1.013_869_665_4, 1e-10);
    check::<Energy>("1 kJ", "J", 1_000.0);
    check::<Pressure>("1 inHg", "kPa", 3.386_388_640_341);
    check::<Pressure>("1 bar", "kPa", 100.0);
    check_to::<Pressure>("1 psi", "kPa", 6.894_757, 5e-8);
    check::<Pressure>("1 N/mm²", "bar", 10.0);
}

/// Plain definitions: the turn, the minute, the fixed points of the two temperature scales.
#[test]
fn turns_times_temperatures() {
    check::<AngularVelocity>("60 rpm", "rad/s", std::f64::consts::TAU);
    check::<Angle>("180°", "rad", std::f64::consts::PI);
    check::<Time>("1 h", "min", 60.0);
    check::<Frequency>("50 Hz", "Hz", 50.0);
    for (fahrenheit, celsius) in [("32 °F", 0.0), ("212 °F", 100.0), ("-40 °F", -40.0), ("59 °F", 15.0)] {
        check_to::<ThermodynamicTemperature>(fahrenheit, "°C", celsius, 1e-12);
    }
}

/// 135 N·m at 3,500 rpm is 49.480084 kW, 66.353886 hp, 67.274192 PS, 99.570891 lbf·ft (computed to forty digits from the definitions
/// above); at 33,000 / 2π = 5,252.113 rpm torque in lbf·ft equals power in hp.
#[test]
fn power_from_torque_and_speed() {
    let kilowatts = 135.0 * 3_500.0 * std::f64::consts::PI / 30_000.0;
    check_to::<Power>(&format!("{kilowatts} kW"), "kW", 49.480_084, 1e-7);
    check_to::<Power>(&format!("{kilowatts} kW"), "hp", 66.353_886, 1e-7);
    check_to::<Power>(&format!("{kilowatts} kW"), "PS", 67.274_192, 1e-7);
    check_to::<Torque>("135 N·m", "lbf·ft", 99.570_891, 1e-7);
    let watts = 1.355_817_948_331_400_4 * 100.0 * 5_252.113_122_032_546 * std::f64::consts::PI / 30.0;
    check_to::<Power>(&format!("{watts} W"), "hp", 100.0, 1e-12);
}

/// The ways people type one length: what each means follows from its digits alone.
#[test]
fn the_same_number_in_many_hands() {
    for text in ["2 1/4 in", "2-1/4\"", "2.25 inches", "2,25 in", "9/4 in", "57.15 mm", "57,15mm", "0.05715 m", "2 1/4", " +2.25 ″ "] {
        check_to::<Length>(text, "mm", 57.15, EXACT);
    }
    for text in ["6,500", "6500", "6 500 rpm", "6'500 U/min", "6\u{a0}500 rev/min", "6500 1/min", "6500.0 r/min"] {
        check::<AngularVelocity>(text, "rpm", 6_500.0);
    }
    check::<AngularVelocity>("600 1/min", "rpm", 600.0);
    check::<AngularVelocity>("6 500 1/min", "rpm", 6_500.0);
    check::<Length>("1.234.567,5 mm", "mm", 1_234_567.5);
    check::<Length>("1,234,567.5 mm", "mm", 1_234_567.5);
    check::<Length>("19,05 mm", "mm", 19.05);
    check::<Length>("−0,5 mm", "mm", -0.5);
    check::<Length>("- 1/2 mm", "mm", -0.5);
    check::<Torque>("231 lbf·ft", "N·m", 231.0 * 1.355_817_948_331_400_4);
    check::<Torque>("231 lb-ft", "N·m", 231.0 * 1.355_817_948_331_400_4);
    check::<Torque>("313 Nm", "N·m", 313.0);
}

/// A comma before three digits marks thousands where the limits allow that, decimals where they do not.
#[test]
fn the_limits_decide_what_a_comma_marks() {
    let narrow = Limits { word: "ratio", unit: &unit::RPM, least: 0.1, greatest: 20.0, why: "a test" };
    let found: AngularVelocity = read("3,909", System::Inch, &narrow).unwrap();
    assert!((common::in_rpm(found) - 3.909).abs() < 1e-12);
    check::<AngularVelocity>("3,909", "rpm", 3_909.0);
}

/// What is no number is said so, and never read as another number.
#[test]
fn texts_that_are_no_number() {
    for text in [
        "abc",
        "-",
        "+",
        "1/0",
        "1e9",
        "37/18/22",
        "1.2.3",
        "1,2,3",
        "1,23,456",
        "12.34.5,6",
        "185 70 14",
        "1 2",
        "12\t34",
        "NaN",
        "inf",
        "👍",
        ",",
        ".",
    ] {
        let found = read::<AngularVelocity>(text, System::Inch, &anything());
        assert!(matches!(found, Err(UnitError::NotANumber { .. })), "{text}: {found:?}");
    }
    assert!(matches!(read::<Length>("3 furlongs", System::Inch, &anything()), Err(UnitError::UnknownUnit { .. })));
    assert!(matches!(read::<Length>(" \u{a0} ", System::Inch, &anything()), Err(UnitError::Blank(_))));
}
