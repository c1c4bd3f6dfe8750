//! Published gear geometry. Each row names its source.

use layshaft::gearing::geometry::undercut::{fewest_teeth_for_a_rack, least_shift};
use layshaft::gearing::geometry::{Cut, Geometry, GeometryError, Setting, geometry, involute};
use layshaft::gearing::hunting::{Hunting, mesh_frequency};
use layshaft::gearing::{Mesh, Teeth};
use layshaft::problem::Explain;
use layshaft::units::common::{in_millimetres, millimetres, rpm};
use layshaft::units::{Angle, Length};
use uom::si::angle::degree;

/// Half a unit in the last printed place.
#[track_caller]
fn check(found: f64, printed: f64, decimals: i32) {
    assert!((found - printed).abs() <= 0.5 * 10_f64.powi(-decimals) * 1.000_001, "{found} is not printed as {printed}");
}

fn cut(module_mm: f64, helix_deg: f64, pressure_deg: f64) -> Cut {
    Cut::new(millimetres(module_mm), Angle::new::<degree>(helix_deg), Angle::new::<degree>(pressure_deg)).unwrap()
}

fn setting(driver: u16, driven: u16, cut: Cut) -> Setting {
    Setting { mesh: Mesh::new(driver, driven).unwrap(), cut, centre: None, driver_shift: None, face_width: None }
}

fn inches(length: Length) -> f64 {
    length.get::<uom::si::length::inch>()
}

fn both(lengths: [Length; 2]) -> [f64; 2] {
    lengths.map(in_millimetres)
}

fn solved(setting: &Setting) -> Geometry {
    geometry(setting).unwrap()
}

/// Shigley, example 13-1 (from memory, recomputed): 16 and 40 teeth of diametral pitch 2, 20°, set 1/4 in further apart.
/// One edition prints 22.56° for the working angle, which is 22.6005°.
#[test]
fn spread_pair_of_shigley() {
    let coarse = cut(in_millimetres(Cut::module_of_diametral_pitch(2.0)), 0.0, 20.0);
    let at_reference = solved(&setting(16, 40, coarse));
    check(inches(at_reference.base_diameters[0]), 7.517_541, 6);
    check(inches(at_reference.base_diameters[1]), 18.793_852, 6);
    let spread = solved(&Setting { centre: Some(millimetres(14.25 * 25.4)), ..setting(16, 40, coarse) });
    check(inches(spread.working_diameters[0]), 8.142_857, 6);
    check(inches(spread.working_diameters[1]), 20.357_143, 6);
    check(spread.working_pressure_rad.to_degrees(), 22.600_512, 6);
}

/// Shigley, example 13-2 (inputs read, results from memory): 18 teeth, ψ 25°, φₙ 20°, transverse pitch 6.
#[test]
fn helical_gear_of_shigley() {
    let normal_pitch = 6.0 / 25_f64.to_radians().cos();
    check(normal_pitch, 6.620_268, 6);
    let helical = cut(25.4 / normal_pitch, 25.0, 20.0);
    check(inches(helical.reference_diameter(Teeth::new(18).unwrap())), 3.0, 9);
    check(helical.transverse_pressure_rad().to_degrees(), 21.88, 2);
    check(helical.virtual_teeth(18.0), 24.179_392, 6);
}

/// Jindal, Machine Design, example 26-1, p. 698: 20 and 50 teeth, αₙ 20°, β 15°, mₙ 4.
#[test]
fn helical_pair_of_jindal() {
    let pair = solved(&setting(20, 50, cut(4.0, 15.0, 20.0)));
    check(in_millimetres(pair.transverse_module), 4.14, 2);
    check(pair.transverse_pressure_rad.to_degrees(), 20.647, 3);
    check(both(pair.tip_diameters)[0], 90.8, 1);
    check(both(pair.tip_diameters)[1], 215.055_236, 6);
    check(both(pair.root_diameters)[0], 72.8, 1);
    check(both(pair.root_diameters)[1], 197.055_236, 6);
    check(in_millimetres(pair.reference_centre), 144.938_665, 6);
}

/// A profile-shift table for helical gears in the normal system: mₙ 3, αₙ 20°, β 30°, 12 and 60 teeth on 125 mm, 20 mm wide.
/// The table misprints the working involute as 0.23405 (it is 0.023405) and its radial module cell (it is 3.464102).
#[test]
fn shifted_helical_pair() {
    let helical = cut(3.0, 30.0, 20.0);
    let wanted = Setting {
        centre: Some(millimetres(125.0)),
        driver_shift: Some(0.098_09),
        face_width: Some(millimetres(20.0)),
        ..setting(12, 60, helical)
    };
    let pair = solved(&wanted);
    check(in_millimetres(pair.transverse_module), 3.464_102, 6);
    check(in_millimetres(pair.reference_centre), 124.707_7, 4);
    check(pair.transverse_pressure_rad.to_degrees(), 22.795_88, 5);
    check(involute(pair.transverse_pressure_rad), 0.022_414, 6);
    check(pair.working_pressure_rad.to_degrees(), 23.112_6, 4);
    check(involute(pair.working_pressure_rad), 0.023_405, 6);
    check(pair.shift_sum, 0.098_089_6, 7);
    check(both(pair.reference_diameters)[0], 41.569, 3);
    check(both(pair.reference_diameters)[1], 207.846, 3);
    check(both(pair.base_diameters)[0], 38.322, 3);
    check(both(pair.base_diameters)[1], 191.611, 3);
    check(both(pair.working_diameters)[0], 41.667, 3);
    check(both(pair.working_diameters)[1], 208.333, 3);
    check(both(pair.tip_diameters)[0], 48.154, 3);
    check(both(pair.tip_diameters)[1], 213.842, 3);
    check(both(pair.root_diameters)[0], 34.658, 3);
    check(both(pair.root_diameters)[1], 200.346, 3);
    check(pair.transverse_contact_ratio, 1.294, 3);
    check(pair.overlap_ratio.unwrap(), 1.061, 3);
    check(pair.total_contact_ratio(), pair.transverse_contact_ratio + pair.overlap_ratio.unwrap(), 12);
}

/// A published ISO 21771:2007 sheet: 31 and 30 teeth, αₙ 20°, mₙ 3.5 on 116.5 mm; the helix is not printed, 21.000° follows from
/// its other figures.
#[test]
fn iso_sheet_to_nine_digits() {
    let pair = solved(&Setting { centre: Some(millimetres(116.5)), ..setting(31, 30, cut(3.5, 21.0, 20.0)) });
    check(pair.transverse_pressure_rad.to_degrees(), 21.299_064_286, 9);
    check(in_millimetres(pair.reference_centre), 114.344_728_071, 9);
    check(pair.working_pressure_rad.to_degrees(), 23.870_760_965, 9);
    check(involute(pair.working_pressure_rad), 0.025_905_238, 9);
    check(involute(pair.transverse_pressure_rad), 0.018_126_095, 9);
    check(pair.shift_sum, 0.651_877_131, 9);
}

/// A course problem after Shigley (ME30602, sheet 7, question 4): 21 and 28 teeth of pitch 3, 20°.
#[test]
fn contact_ratio_of_a_course() {
    let pair = solved(&setting(21, 28, cut(25.4 / 3.0, 0.0, 20.0)));
    check(inches(pair.path_of_approach + pair.path_of_recess), 1.577_98, 5);
    check(pair.transverse_contact_ratio, 1.603_57, 5);
}

/// Khurmi and Gupta, example 12.3, p. 398: 30 and 80 teeth of 12 mm, addendum 10 mm; it prints 52.3, 55.61 and "1.5".
#[test]
fn path_of_contact_of_khurmi_and_gupta() {
    let stub = cut(12.0, 0.0, 20.0).with_heights(10.0 / 12.0, 1.25);
    let pair = solved(&setting(30, 80, stub));
    let path_mm = in_millimetres(pair.path_of_approach + pair.path_of_recess);
    check(path_mm, 52.258_239, 6);
    check(path_mm / 20_f64.to_radians().cos(), 55.612_056, 6);
    check(pair.transverse_contact_ratio, 1.475_156, 6);
}

/// Khurmi and Gupta, examples 12.4 and 12.5, pp. 399–400: 20 and 40 teeth of 5 mm; the sliding speed (ω₁ + ω₂ times the way to the pitch point) at 1.2 m/s and at 2,000 rpm of the pinion.
#[test]
fn sliding_of_khurmi_and_gupta() {
    let pair = solved(&setting(20, 40, cut(5.0, 0.0, 20.0)));
    check(pair.transverse_contact_ratio, 1.635_186, 6);
    let sliding = |pinion_rad_per_s: f64, way: Length| pinion_rad_per_s * 1.5 * in_millimetres(way);
    check(sliding(1_200.0 / 50.0, pair.path_of_approach), 455.271_9, 4);
    let fast = 2_000.0 / 60.0 * std::f64::consts::TAU;
    check(sliding(fast, pair.path_of_approach), 3_972.997, 3);
    check(sliding(fast, pair.path_of_recess), 3_609.683, 3);
}

/// Bevan, example 6, p. 338: module 1 (any unit), 28 and 45 teeth at 14.5° and 20°. Its companion prints 6.092 and 4.97 because
/// it halves 45 to 22.
#[test]
fn path_of_contact_of_bevan() {
    for (pressure, path, arc) in [(14.5, 6.103_499, 2.006_723), (20.0, 4.980_029, 1.686_926)] {
        let pair = solved(&setting(28, 45, cut(1.0, 0.0, pressure)));
        check(in_millimetres(pair.path_of_approach + pair.path_of_recess), path, 6);
        check(pair.transverse_contact_ratio, arc, 6);
    }
}

/// Bevan, example 4, p. 334, and Khurmi and Gupta, example 12.9, p. 410: fewest full-depth teeth at 20°.
#[test]
fn fewest_teeth() {
    let full = cut(3.0, 0.0, 20.0);
    check(fewest_teeth_for_a_rack(&full), 17.097_26, 5);
    // At just that count no shift is wanted: by hand 1 − 18 · sin² 20° / 2 = −0.0528 for 18 teeth.
    check(least_shift(&full, Teeth::new(18).unwrap()), -0.052_8, 4);
    // By the rule of thumb (17 − z) ÷ 17 twelve teeth want 0.294; it is 1 − 6 sin² 20°.
    check(least_shift(&full, Teeth::new(12).unwrap()), 0.298_133, 6);
    // 2 h* / sin² α: books print 17 or 18 at 20°, 32 at 14.5°; stub teeth of 0.8.
    for (pressure, whole, stub) in
        [(14.5, 31.902_9, 25.522), (17.5, 22.118_0, 17.694), (20.0, 17.097_3, 13.678), (22.5, 13.656_9, 10.925), (25.0, 11.197_8, 8.958)]
    {
        check(fewest_teeth_for_a_rack(&cut(3.0, 0.0, pressure)), whole, 4);
        check(fewest_teeth_for_a_rack(&cut(3.0, 0.0, pressure).with_heights(0.8, 1.0)), stub, 3);
    }
}

#[test]
fn wrong_centre_distance_says_which_would_do() {
    let far = geometry(&Setting { centre: Some(millimetres(95.0)), ..setting(30, 25, cut(3.0, 0.0, 20.0)) }).unwrap_err();
    assert_eq!(far.what(), "at a centre distance of 95.00 mm the teeth do not reach each other");
    assert_eq!(far.what_to_do(), "check module and helix angle: these counts want about 82.50 mm");
    let tight = geometry(&Setting { centre: Some(millimetres(70.0)), ..setting(30, 25, cut(3.0, 0.0, 20.0)) }).unwrap_err();
    assert_eq!(tight.what(), "at a centre distance of 70.00 mm the flanks cannot meet");
    let nothing = geometry(&Setting { centre: Some(millimetres(f64::NAN)), ..setting(30, 25, cut(3.0, 0.0, 20.0)) });
    assert_eq!(nothing, Err(GeometryError::NoLength));
}

/// 10 teeth to the inch of diameter is a module of 2.54 mm, by definition.
#[test]
fn pitch_as_it_is_typed() {
    use layshaft::units::System;
    let read = |text: &str, system| Cut::read_module(text, system).map(|module| (in_millimetres(module) * 1e6).round() / 1e6);
    assert_eq!(read("10", System::Inch), Ok(2.54));
    assert_eq!(read("10 DP", System::Metric), Ok(2.54));
    assert_eq!(read("2,5", System::Metric), Ok(2.5));
    assert_eq!(read("m2.5", System::Inch), Ok(2.5));
    assert_eq!(read("2.75 mm", System::Inch), Ok(2.75));
    let wrong = read("fine", System::Inch).unwrap_err();
    assert_eq!(wrong.what(), "“fine” is neither a module nor a diametral pitch");
    assert_eq!(read("100 DP", System::Inch).unwrap_err().what(), "a normal module of 0.254 mm cannot be");
    for text in ["0", "-3", "", "m", "1/0", "🦀", "10 DP DP", "1e9"] {
        assert!(read(text, System::Inch).is_err(), "{text}");
    }
}

/// Pairs whose counts have 1, 20 and 18 in common, driven at 1,800 and 3,600 rpm (recomputed): mesh frequencies of 690, 600 and 1,080 Hz, the same
/// teeth meeting 0.447761, 10 and 20 times a second. A glossary prints 30 and 600 Hz for the last two by multiplying with the common factor.
#[test]
fn how_often_the_same_teeth_meet() {
    for ((driver, driven, speed), mesh_hz, repeat_hz, common) in
        [((23, 67, 1_800.0), 690.0, 0.447_761, 1), ((20, 60, 1_800.0), 600.0, 10.0, 20), ((18, 54, 3_600.0), 1_080.0, 20.0, 18)]
    {
        let mesh = Mesh::new(driver, driven).unwrap();
        check(mesh_frequency(mesh.driver, rpm(speed)).value, mesh_hz, 6);
        check(mesh_frequency(mesh.driver, rpm(speed)).value / f64::from(Hunting::of(mesh).meshes(mesh)), repeat_hz, 6);
        assert_eq!(Hunting::of(mesh).common_factor, common);
    }
}
