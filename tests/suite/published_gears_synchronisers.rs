//! Published friction cones and synchronisers. Each row names its source.

use layshaft::gearing::Layout;
use layshaft::gearing::geometry::Cut;
use layshaft::gearing::speeds::Arrangement;
use layshaft::problem::Explain;
use layshaft::toothload::synchroniser::cone::{Sticking, sticking_angle};
use layshaft::toothload::synchroniser::inertia::disc;
use layshaft::toothload::synchroniser::{Cone, Lining, LiningKind, Reflected, Stress, Synchroniser, absorb, shifts};
use layshaft::units::common::{in_rpm, millimetres, rpm};
use layshaft::units::{Angle, Force, MomentOfInertia, Time, Torque};
use uom::si::{angle::degree, energy::joule, force::newton, moment_of_inertia::kilogram_square_meter, time::second, torque::newton_meter};

use crate::any_gearbox::built;
use crate::nth;

#[track_caller]
fn check(found: f64, expected: f64, decimals: i32) {
    assert!((found - expected).abs() <= 0.500_001 * 10_f64.powi(-decimals), "{found} is not {expected}");
}

fn cone(mean_mm: f64, width_mm: f64, half_deg: f64, friction: f64) -> Cone {
    Cone {
        mean_diameter: millimetres(mean_mm),
        width: millimetres(width_mm),
        half_angle: Angle::new::<degree>(half_deg),
        friction,
        cones: 1,
    }
}

fn newtons(value: f64) -> Force {
    Force::new::<newton>(value)
}

fn inertia(value: f64) -> MomentOfInertia {
    MomentOfInertia::new::<kilogram_square_meter>(value)
}

fn torque_of(kilowatts: f64, speed: f64) -> Torque {
    Torque::new::<newton_meter>(1e3 * kilowatts / rpm(speed).value)
}

/// Jindal, Machine Design, example 22-8, p. 594: 15.648 N·m, 3.85 s, 4,548 J.
/// Khurmi and Gupta, example 10.34, p. 316: 7.8 N·m, 4.1 s; it prints 1,674 J from rounded torque and time, 1,665.5 is exact.
#[test]
fn cone_clutches_bringing_a_flywheel_to_speed() {
    for (mean_mm, force, kg_m2, speed, torque, time, work) in
        [(90.0, 300.0, 0.4, 1_440.0, 15.647_998, 3.854_715, 4_547.914), (75.0, 180.0, 0.303_75, 1_000.0, 7.824, 4.065_520, 1_665.496)]
    {
        let cone = cone(mean_mm, 20.0, 15.0, 0.3);
        check(cone.torque(newtons(force)).value, torque, 3);
        let taken = cone.time(newtons(force), inertia(kg_m2), rpm(speed));
        check(taken.value, time, 5);
        check(absorb(inertia(kg_m2), rpm(speed), taken).work.get::<joule>(), work, 3);
    }
}

/// Khurmi and Gupta, example 10.32, p. 315: 45 kW, 1,000 rpm, 12.5°, 500 mm, μ 0.2, 0.1 N/mm²; 54.7 mm wide.
#[test]
fn pressure_on_a_cone() {
    let cone = cone(500.0, 54.713_4, 12.5, 0.2);
    let torque = torque_of(45.0, 1_000.0);
    check(torque.value, 429.718_35, 5);
    check(cone.normal_force(torque).value, 8_594.367, 3);
    check(cone.pressure(torque).value / 1e6, 0.1, 6);
}

/// Khurmi and Gupta, example 10.31, p. 314: 90 kW, 1,500 rpm, 20°, 375 mm, μ 0.2, 0.25 N/mm². It prints 52.2 mm from an
/// angular speed rounded to 156 rad/s; 51.88 mm is exact. Example 10.33, p. 315: 22.5 kW, 2,000 rpm, 15°, 0.35, μ 0.15, width a third
/// of the radius.
#[test]
fn cone_widths_from_pressure() {
    let torque = torque_of(90.0, 1_500.0);
    check(torque.value, 572.957_8, 4);
    let wide = cone(375.0, 51.876_45, 20.0, 0.2);
    check(wide.pressure(torque).value / 1e6, 0.25, 6);
    let small = cone(2.0 * 99.228_25, 99.228_25 / 3.0, 15.0, 0.15);
    check(small.pressure(torque_of(22.5, 2_000.0)).value / 1e6, 0.35, 5);
}

/// Bhandari, Design of Machine Elements, example 11.11 (inputs read, answers computed): 150 kg on 250 mm to 1,440 rpm in 40 s,
/// 12.5°, μ 0.2, mean radius twice the width of 42.05 mm: 35.34 N·m, 106.59 kJ.
#[test]
fn cone_clutch_of_bhandari() {
    let taken = absorb(inertia(150.0 * 0.0625), rpm(1_440.0), Time::new::<second>(40.0));
    check(taken.mean_torque.value, 35.342_92, 5);
    check(taken.work.get::<joule>(), 106_591.7, 0);
    check(taken.mean_power.value, 106_591.7 / 40.0, 1);
    let wheel = cone(4.0 * 42.046_6, 42.046_6, 12.5, 0.2);
    check(wheel.torque(newtons(454.829)).value, 35.342_92, 3);
}

/// A synchroniser made up from the formulas (no published example): μ 0.10, 600 N, 75 mm, 6.5°, J 0.004, 2,000 rpm, 10 mm wide.
#[test]
fn made_up_synchroniser() {
    let ring = cone(75.0, 10.0, 6.5, 0.1);
    check(ring.torque(newtons(600.0)).value, 19.875_761, 6);
    let time = ring.time(newtons(600.0), inertia(0.004), rpm(2_000.0));
    check(time.value, 0.042_149_7, 7);
    check(ring.area().value * 1e6, 2_356.194_5, 4);
    let gearbox = built(Layout::InputReduced, Some((20, 20)), &[(20, 40), (0, 0)], None);
    // Into direct from 2 : 1 the input drops from 4,000 to 2,000 rpm.
    let all = shifts(
        &gearbox,
        &Arrangement::usual(&gearbox),
        inertia(0.004),
        rpm(4_000.0),
        time,
        &[Synchroniser::Missing, Synchroniser::Cone(ring)],
    );
    let up = all.first().unwrap();
    check(in_rpm(up.difference), 2_000.0, 9);
    let absorbed = up.absorbed.unwrap();
    check(absorbed.work.get::<joule>(), 87.729_817, 6);
    let stress = absorbed.stress.unwrap();
    check(stress.work.value / 1e6, 0.037_233_7, 7);
    check(stress.power.value / 1e6, 0.883_367, 4);
    check(stress.sliding.value, 7.853_982, 6);
    check(stress.pressure.value / 1e6, 2.249_476, 5);
    // Down into 1st there is no synchroniser, and none is given work.
    let down = all.last().unwrap();
    assert_eq!((down.to, down.absorbed), (nth(1), None));
}

/// atan 0.10 = 5.710593°, atan 0.12 = 6.842773°: flatter cones stick.
#[test]
fn sticking_cones() {
    check(sticking_angle(0.10).get::<degree>(), 5.710_593, 6);
    check(sticking_angle(0.12).get::<degree>(), 6.842_773, 6);
    assert!(cone(75.0, 10.0, 6.5, 0.12).sticks() && !cone(75.0, 10.0, 6.5, 0.10).sticks());
    let said = Sticking(cone(75.0, 10.0, 6.5, 0.12));
    assert_eq!(said.what(), "a cone of 6.5° sticks at a friction of 0.12");
    assert_eq!(said.what_to_do(), "measure the cone again; it must be steeper than 6.8°");
}

/// By hand: a steel disc of 100 mm and 20 mm width weighs 7,850 · π/4 · 0.1² · 0.02 = 1.2331 kg, J = m d²/8 = 0.00154134 kg·m².
/// In a box of 20/40 and 20/40 with module 5 (100 and 200 mm): input gear 0.00154134 at 1; cluster gears 0.0246615 and 0.00154134
/// at 1/2; the loose 1st gear 0.0246615 at 1/4: in all 0.00154134 + 0.00655071 + 0.00154134 = 0.0096334 and the plate.
#[test]
fn inertia_by_hand() {
    check(disc(millimetres(100.0), millimetres(20.0)).value, 0.001_541_34, 8);
    let gearbox = built(Layout::InputReduced, Some((20, 40)), &[(20, 40), (0, 0)], None);
    let arrangement = Arrangement::usual(&gearbox);
    let cut = Cut::new(millimetres(5.0), Angle::new::<degree>(0.0), Angle::new::<degree>(20.0)).unwrap();
    let reflected = Reflected::estimated(&gearbox, &arrangement, &cut, millimetres(20.0), inertia(0.004));
    check(reflected.at_input.value, 0.004 + 0.009_633_40, 8);
    assert!(reflected.is_estimate && reflected.rows.len() == 4);
    // Into 1st (4 : 1) the cone sees 16 times that, and a quarter of the speed: the work is the input's.
    let all = shifts(&gearbox, &arrangement, reflected.at_input, rpm(4_000.0), Time::new::<second>(0.2), &[]);
    let down = all.iter().find(|shift| shift.to == nth(1)).unwrap();
    check(down.inertia.value, 16.0 * 0.013_633_39, 6);
    check(in_rpm(down.difference), -750.0, 9);
    let at_input = absorb(reflected.at_input, rpm(3_000.0), Time::new::<second>(0.2));
    check(down.absorbed.unwrap().work.value, at_input.work.value, 9);
}

#[test]
fn lining_past_its_limits_says_which_and_by_how_much() {
    let brass = Lining::of(LiningKind::Brass);
    let ring = cone(75.0, 10.0, 6.5, 0.1);
    let gearbox = built(Layout::InputReduced, Some((20, 20)), &[(20, 40), (0, 0)], None);
    let synchronisers = [Synchroniser::Unsized, Synchroniser::Cone(ring)];
    let all = shifts(&gearbox, &Arrangement::usual(&gearbox), inertia(0.004), rpm(4_000.0), Time::new::<second>(0.2), &synchronisers);
    let stress: Stress = all.first().unwrap().absorbed.unwrap().stress.unwrap();
    let over = brass.exceeded(&stress);
    assert_eq!(over.len(), 1);
    assert_eq!(over.first().unwrap().what(), "the synchroniser's sliding speed is 7.85 m/s, over the 5.00 m/s set as its limit");
}
