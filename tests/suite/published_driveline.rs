//! Driveshafts against handbook models and rows, each with its source.

use layshaft::driveline::shaft::allowed_unbalance_g_mm;
use layshaft::driveline::{Material, Shaft, ShaftError};
use layshaft::units::common::{in_millimetres, in_rpm, millimetres, rpm};
use layshaft::units::{Length, Mass};
use uom::si::length::inch;
use uom::si::mass::kilogram;

#[track_caller]
fn close(is: f64, wanted: f64, within: f64) {
    assert!((is - wanted).abs() <= within, "{is} is not {wanted} ± {within}");
}

fn inches(length: f64, outside: f64, wall: f64, material: Material) -> Shaft {
    let inches = |value: f64| Length::new::<inch>(value);
    Shaft::new(inches(length), inches(outside), inches(wall), material).unwrap()
}

fn metric(length: f64, outside: f64, wall: f64) -> Shaft {
    Shaft::new(millimetres(length), millimetres(outside), millimetres(wall), Material::steel()).unwrap()
}

/// A driveshaft exercise of a machine-design textbook: steel tube of 4 ft, 3 in outside, 1/8 in wall, E 29·10⁶ psi, 0.00883 slug/in³;
/// printed 5,800 rpm with the mass lumped at mid-span, and 5,795 rpm for aluminium (E 10·10⁶ psi, 0.00305 slug/in³). The uniform tube
/// whips at 8,262 and 8,255 rpm by the closed form: the printed answers are 30 % low by their model.
#[test]
fn both_models_of_a_textbooks_tube() {
    let slugs_per_cubic_inch = |value: f64| value * 14.593_903 / 0.0254_f64.powi(3);
    let psi = |value: f64| value * 6_894.757_293 / 1e9;
    let steel = inches(48.0, 3.0, 0.125, Material::of(psi(29e6), slugs_per_cubic_inch(0.008_83)));
    let aluminium = inches(48.0, 3.0, 0.125, Material::of(psi(10e6), slugs_per_cubic_inch(0.003_05)));
    close(in_rpm(steel.critical_speed_lumped()), 5_799.92, 0.5);
    close(in_rpm(aluminium.critical_speed_lumped()), 5_794.998, 0.5);
    close(in_rpm(steel.critical_speed()), 8_262.30, 0.5);
    close(in_rpm(aluminium.critical_speed()), 8_255.29, 0.5);
}

/// The closed form for 206 gigapascals and 7,850 kg/m³, K = 1.2070·10⁸ rpm·mm (computed; a maker's technical sheet prints 1.21·10⁸).
#[test]
fn steel_tubes_by_the_closed_form() {
    close(in_rpm(metric(1_500.0, 76.2, 2.1).critical_speed()), 5_623.87, 0.05);
    close(in_rpm(metric(750.0, 76.2, 2.1).critical_speed()), 22_495.46, 0.2);
    close(in_rpm(metric(1_550.0, 76.2, 2.1).critical_speed()), 5_266.89, 0.05);
}

/// 60 in, 3 in by 0.083 in, steel, worked by hand: √(3² + 2.834²) = 4.1270 in = 104.83 mm; 1.2070·10⁸ × 104.83 ÷ 1,524² = 5,448 rpm.
/// 4 in by 0.083: √(16 + 14.699) = 5.5407 in = 140.73 mm, so 7,314 rpm.
#[test]
fn the_long_shaft_of_a_long_box() {
    close(in_rpm(inches(60.0, 3.0, 0.083, Material::steel()).critical_speed()), 5_448.0, 3.0);
    close(in_rpm(inches(60.0, 4.0, 0.083, Material::steel()).critical_speed()), 7_314.0, 4.0);
}

#[test]
fn the_longest_and_the_widest_bring_it_to_the_speed_wanted() {
    let shaft = metric(1_500.0, 76.2, 2.1);
    let longest = shaft.longest_for(rpm(6_500.0));
    close(in_rpm(metric(in_millimetres(longest), 76.2, 2.1).critical_speed()), 6_500.0, 1e-6);
    let outside = shaft.outside_for(rpm(6_500.0)).unwrap();
    close(in_rpm(metric(1_500.0, in_millimetres(outside), 2.1).critical_speed()), 6_500.0, 1e-6);
}

/// Balance grades: 10 kg at 4,000 rpm, G 16 allows 381.972 g·mm and G 40 954.930; 8 kg at 6,500 rpm, G 16, 188.0477 (computed);
/// 2 kg at 10,000 rpm, G 6.3, is printed as 12 g·mm in a tool-maker's catalogue after ISO 1940-1.
#[test]
fn unbalance_by_grade() {
    let kg = |value: f64| Mass::new::<kilogram>(value);
    close(allowed_unbalance_g_mm(kg(10.0), rpm(4_000.0), 16.0), 381.972, 0.001);
    close(allowed_unbalance_g_mm(kg(10.0), rpm(4_000.0), 40.0), 954.930, 0.001);
    close(allowed_unbalance_g_mm(kg(8.0), rpm(6_500.0), 16.0), 188.047_7, 0.000_1);
    close(allowed_unbalance_g_mm(kg(2.0), rpm(10_000.0), 6.3), 12.0, 0.05);
}

#[test]
fn what_is_no_tube_is_said() {
    let tube = |length: f64, outside: f64, wall: f64| {
        Shaft::new(millimetres(length), millimetres(outside), millimetres(wall), Material::steel()).map(|_| ())
    };
    assert_eq!(tube(1_500.0, 76.2, 40.0), Err(ShaftError::WallThickerThanRadius));
    assert_eq!(tube(0.0, 76.2, 2.1), Err(ShaftError::Nothing));
    assert_eq!(tube(1_500.0, 76.2, 38.1), Ok(()));
}
