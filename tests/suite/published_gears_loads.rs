//! Published tooth forces and bearing lives. Each row names its source.

use layshaft::gearing::Teeth;
use layshaft::gearing::geometry::Cut;
use layshaft::toothload::bearing::{self, Rolling};
use layshaft::toothload::forces::helical;
use layshaft::toothload::reactions::{ShaftLoad, bearing_loads};
use layshaft::units::common::{millimetres, rpm};
use layshaft::units::{Angle, Force, Length, Power, Torque};
use uom::si::{angle::degree, force, length, power, torque};

/// To so many decimals, as computed from the same inputs in double precision.
#[track_caller]
fn check(found: f64, expected: f64, decimals: i32) {
    assert!((found - expected).abs() <= 0.500_001 * 10_f64.powi(-decimals), "{found} is not {expected}");
}

fn angle(degrees: f64) -> Angle {
    Angle::new::<degree>(degrees)
}

fn pitch_cut(normal_pitch: f64, helix: f64) -> Cut {
    Cut::new(Cut::module_of_diametral_pitch(normal_pitch), angle(helix), angle(20.0)).unwrap()
}

fn torque_of(watts: f64, speed: f64) -> Torque {
    Torque::new::<torque::newton_meter>(watts / rpm(speed).value)
}

fn horsepower(value: f64) -> f64 {
    Power::new::<power::watt>(value * 745.699_871_582).value
}

fn teeth(count: u16) -> Teeth {
    Teeth::new(count).unwrap()
}

fn pounds(force: Force) -> f64 {
    force.get::<force::pound_force>()
}

fn newtons(value: f64) -> Force {
    Force::new::<force::newton>(value)
}

fn inch(value: f64) -> Length {
    Length::new::<length::inch>(value)
}

/// Shigley, 9th ed., example 13-9 (US edition): 1 hp at 1,800 rpm, 18 teeth, Pₙ 12, φₙ 20°, ψ 30°, bearings at 0 and 10 in, gear at
/// 13 in. It prints 40.4, 17.0, 23.3, 20.1, 3.1, 52.5, 12.1 lbf; and 49.6 for the whole from the rounded 40.4 (it is 49.68).
#[test]
fn helical_pinion_of_shigley_in_inches() {
    let cut = pitch_cut(12.0, 30.0);
    let diameter = cut.reference_diameter(teeth(18));
    check(diameter.get::<length::inch>(), 1.732_051, 6);
    let torque = torque_of(horsepower(1.0), 1_800.0);
    check(torque.get::<torque::pound_force_inch>(), 35.014_087, 5);
    let forces = helical(torque, diameter, &cut);
    check(pounds(forces.tangential), 40.430_786, 5);
    check(pounds(forces.radial), 16.992_114, 5);
    check(pounds(forces.axial), 23.342_725, 5);
    check(pounds(forces.whole()), 49.681_618, 5);
    let load = ShaftLoad {
        at: inch(13.0),
        tangential: forces.tangential,
        radial: forces.radial,
        axial: forces.axial,
        pitch_radius: diameter / 2.0,
    };
    let [first, second] = bearing_loads(inch(10.0), &[load]).unwrap();
    check(pounds(second.radial), 20.068_209, 5);
    check(pounds(first.radial), -3.076_095, 5);
    check(pounds(second.tangential), 52.560_021, 5);
    check(pounds(first.tangential), -12.129_236, 5);
    check(pounds(first.whole()), 3.076_095_f64.hypot(12.129_236), 5);
    assert_eq!(bearing_loads(inch(0.0), &[load]), None);
}

/// The same example in an older metric edition (from memory): 750 W, 14 teeth, mₙ 3; 164, 69, 94.7 and 202 N.
#[test]
fn helical_pinion_of_shigley_in_millimetres() {
    let cut = Cut::new(millimetres(3.0), angle(30.0), angle(20.0)).unwrap();
    let forces = helical(torque_of(750.0, 1_800.0), cut.reference_diameter(teeth(14)), &cut);
    check(forces.tangential.value, 164.085_98, 5);
    check(forces.radial.value, 68.961_502, 5);
    check(forces.axial.value, 94.735_085, 5);
    check(forces.whole().value, 201.629_94, 5);
}

/// Shigley, 8th ed., problem 13-35: 800 lbf on 18 and 32 teeth, Pₙ 4, ψ 30°. The manual's gear torque of 7,390 lbf·in takes the
/// diameter for the radius; it is 3,695.
#[test]
fn shaft_of_a_shigley_problem() {
    let cut = pitch_cut(4.0, 30.0);
    check(cut.reference_diameter(teeth(18)).get::<length::inch>(), 5.196_152, 6);
    let gear = cut.reference_diameter(teeth(32));
    check(gear.get::<length::inch>(), 9.237_604, 6);
    let forces = helical(Torque::new::<torque::pound_force_inch>(3_695.041_7), gear, &cut);
    check(pounds(forces.tangential), 800.0, 3);
    check(pounds(forces.radial), 336.221_3, 3);
    check(pounds(forces.axial), 461.880_2, 3);
    check(pounds(forces.whole()), 983.045_3, 3);
}

/// Wentzell, Machine Design, example 13.1, p. 280: 5 hp, 1,750 rpm, 24 teeth of transverse pitch 12, ψ 15°; its whole is in the
/// normal plane of tangential and radial force only, so the thrust is checked: 48.25 lbf.
#[test]
fn helical_gear_of_wentzell() {
    let cut = Cut::new(millimetres(25.4 / 12.0 * 15_f64.to_radians().cos()), angle(15.0), angle(20.0)).unwrap();
    let diameter = cut.reference_diameter(teeth(24));
    check(diameter.get::<length::inch>(), 2.0, 9);
    // The book takes 33,000 ft·lbf/min for 1 hp, which is the exact mechanical horsepower.
    let forces = helical(torque_of(horsepower(5.0), 1_750.0), diameter, &cut);
    check(pounds(forces.tangential), 180.072_4, 3);
    check(pounds(forces.axial), 48.250_27, 4);
    check(pounds(forces.radial), 67.853_05, 4);
}

/// A course problem (ME30602, sheet 7, question 5): 1 kW, 1,200 rpm, 18 teeth, mₙ 3, ψ 30°.
#[test]
fn helical_gear_of_a_course() {
    let cut = Cut::new(millimetres(3.0), angle(30.0), angle(20.0)).unwrap();
    let forces = helical(torque_of(1_000.0, 1_200.0), cut.reference_diameter(teeth(18)), &cut);
    check(forces.tangential.value, 255.244_86, 4);
    check(forces.radial.value, 107.273_45, 4);
    check(forces.axial.value, 147.365_69, 4);
}

/// Khurmi and Gupta, example 12.1, p. 393: a spur gear of 250 mm at 120 kW and 650 rpm; 15.01 kN in all.
#[test]
fn spur_gear_of_khurmi_and_gupta() {
    let cut = Cut::new(millimetres(5.0), angle(0.0), angle(20.0)).unwrap();
    let torque = torque_of(120_000.0, 650.0);
    check(torque.value, 1_762.947, 3);
    let forces = helical(torque, millimetres(250.0), &cut);
    check(forces.tangential.value, 14_103.576, 2);
    check(forces.whole().value, 15_008.713, 2);
    check(forces.axial.value, 0.0, 9);
}

fn kilonewtons(value: f64) -> Force {
    newtons(1_000.0 * value)
}

/// How long so many million turns take: 10⁶ L / (60 n), in hours.
fn hours_of(million_turns: f64, per_minute: f64) -> f64 {
    1e6 * million_turns / (60.0 * per_minute)
}

/// The steady load that wears as a duty cycle does, `P_m` = (Σ N P^p / Σ N)^(1/p).
fn mean_load(rows: &[(f64, Force)], rolling: Rolling) -> Force {
    let turns: f64 = rows.iter().map(|row| row.0).sum();
    let wear: f64 = rows.iter().map(|(turns, load)| turns * load.value.powf(rolling.exponent())).sum();
    newtons((wear / turns).powf(rolling.exponent().recip()))
}

/// Shigley, 8th ed., example 11-4, p. 564: 400 lbf thrust, 500 radial, C₀ 4,450, C₁₀ 7,900, 720 rpm; 16,150 h from rounded factors.
/// Wentzell, example 20.4, p. 436: Y at 0.1293; it prints 28,634,662 turns from P rounded to 1,095 (28,754,022).
#[test]
fn deep_groove_bearings() {
    let load = bearing::deep_groove_load(newtons(500.0), newtons(400.0), newtons(4_450.0));
    check(load.value, 890.942, 3);
    let life = bearing::life_million_turns(newtons(7_900.0), load, Rolling::Balls);
    check(hours_of(life, 720.0), 16_137.98, 1);
    check(bearing::deep_groove_factors(0.09).0, 0.284_615, 6);
    check(bearing::deep_groove_factors(0.09).1, 1.526_923, 6);
    check(bearing::deep_groove_factors(0.1293).1, 1.405, 3);
    // Little thrust: the radial load alone.
    check(bearing::deep_groove_load(newtons(500.0), newtons(50.0), newtons(4_450.0)).value, 500.0, 9);
}

/// Jindal, Machine Design, examples 18-2, 18-4, 18-10, 18-7, pp. 508–513.
#[test]
fn bearings_of_jindal() {
    for (load, life) in [(1_450.0, 57.296_938), (1_590.0, 43.455_430)] {
        check(bearing::life_million_turns(newtons(5_590.0), newtons(load), Rolling::Balls), life, 6);
    }
    let life = bearing::life_million_turns(kilonewtons(41.0), kilonewtons(20.0), Rolling::Balls);
    check(life, 8.615_125, 6);
    check(hours_of(life, 720.0), 199.424_190, 5);
    // 600 N at 1,440 rpm for two thirds of the time, 303.6 N at 720 for one third; C 1,430: 227.66 h at the mean 1,200 rpm.
    let mean = mean_load(&[(1_440.0 * 2.0, newtons(600.0)), (720.0, newtons(303.6))], Rolling::Balls);
    check(mean.value, 562.940_3, 4);
    let life = bearing::life_million_turns(newtons(1_430.0), mean, Rolling::Balls);
    check(life, 16.391_594, 5);
    check(hours_of(life, 1_200.0), 227.661_03, 4);
}

/// A course (sheet 5, questions 8 to 10): a roller bearing over three loads, and a ball bearing of 20.3 kN under two.
#[test]
fn duty_cycles_of_a_course() {
    let rows = [(0.3, kilonewtons(20.0)), (0.5, kilonewtons(25.0)), (0.2, kilonewtons(30.0))];
    let mean = mean_load(&rows, Rolling::Rollers);
    check(mean.value, 25_073.580, 3);
    for (rating, turns) in [(28.6, 1_550_597.0), (36.9, 3_625_490.0), (44.6, 6_819_121.0)] {
        check(1e6 * bearing::life_million_turns(kilonewtons(rating), mean, Rolling::Rollers), turns, 0);
    }
    let rating = kilonewtons(20.3);
    let used = bearing::damage(rating, &[(0.2, kilonewtons(18.0))], Rolling::Balls);
    let rest = (1.0 - used) * bearing::life_million_turns(rating, kilonewtons(30.0), Rolling::Balls);
    check(1e6 * rest, 266_630.63, 1);
    let cycle = bearing::damage(rating, &[(0.008, kilonewtons(18.0)), (0.012, kilonewtons(30.0))], Rolling::Balls);
    check(cycle.recip(), 22.569_247, 5);
    check(0.02e6 / cycle, 451_384.95, 1);
}

/// Wentzell, example 20.1, p. 431: 88.73 h. A solved problem with a rest in it: mean 1.663103, L₉₀ 37.00192 for 20 million turns at
/// 95 % with slope 1.17, 5.541926 kN (computed from its inputs; no answer shown).
#[test]
fn more_bearing_lives() {
    let life = bearing::life_million_turns(newtons(5_050.0), newtons(2_400.0), Rolling::Balls);
    check(hours_of(life, 1_750.0), 88.726_042, 5);
    let rows = [(1.0, kilonewtons(3.0)), (2.0, kilonewtons(2.0)), (3.0, kilonewtons(1.0)), (4.0, kilonewtons(0.0))];
    let mean = mean_load(&rows, Rolling::Balls);
    check(mean.value / 1e3, 1.663_103, 6);
}
