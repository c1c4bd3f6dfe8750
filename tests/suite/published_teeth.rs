//! Bending, contact and sliding of teeth beside published rows and closed forms.

use layshaft::gearing::geometry::{Cut, Geometry, Setting, geometry};
use layshaft::gearing::{Mesh, Teeth};
use layshaft::toothform::{CutGear, lewis};
use layshaft::toothload::forces::helical;
use layshaft::toothload::{sliding, strength};
use layshaft::units::common::{millimetres, rpm};
use layshaft::units::{Velocity, unit};

fn spur(module_mm: f64) -> Cut {
    Cut::new(millimetres(module_mm), unit::DEGREE.of(0.0), unit::DEGREE.of(20.0)).unwrap()
}

/// Lewis form factors of full-depth 20° teeth. Source: Shigley, Mechanical Engineering Design, table 14-2 (from memory); the table's tool is not
/// known to the last radius, so that 6 % is left.
#[test]
fn form_factors_of_a_table() {
    for (teeth, y) in [
        (12, 0.245),
        (14, 0.277),
        (16, 0.296),
        (18, 0.309),
        (20, 0.322),
        (24, 0.337),
        (28, 0.353),
        (34, 0.371),
        (43, 0.397),
        (60, 0.422),
        (100, 0.447),
        (150, 0.460),
    ] {
        let gear = CutGear { teeth: Teeth::new(teeth).unwrap(), cut: spur(3.0), shift: 0.0 };
        let ours = lewis::form_factor(&gear, 0.38).unwrap();
        assert!((ours / y - 1.0).abs() < 0.06, "{teeth} teeth: {ours:.4}, the table {y}");
        assert!((lewis::form_factor_of_helical(&gear, 0.38).unwrap() - ours).abs() < 1e-12);
    }
}

/// Shigley, example 14-1 (from memory, recomputed): 16 teeth of 8 DP, 1.5 in wide, Y 0.296, a factor of 1.523599 for its speed (cut teeth,
/// Barth's rule, which is not the one used here): 364.2691 lbf bend it with 10,000 psi.
#[test]
fn bending_of_shigley() {
    let inch = |value: f64| millimetres(25.4 * value);
    let stress = strength::bending(unit::LBF.of(364.269_1), inch(1.5), inch(0.125), 0.296, 1.523_599);
    assert!((stress.value / 6_894.757_293 - 10_000.0).abs() < 0.1, "{}", stress.value / 6_894.757_293);
}

/// Jindal, Machine Design, example 26-2, p. 698: 5 kW at 1,200 rpm on 25 teeth, mₙ 4, β 20°: 747.78 N along the pitch line, 289.64 apart and
/// 272.2 along the shaft.
#[test]
fn forces_of_jindal() {
    let cut = Cut::new(millimetres(4.0), unit::DEGREE.of(20.0), unit::DEGREE.of(20.0)).unwrap();
    let torque = unit::N_M.of(5_000.0 / rpm(1_200.0).value);
    let forces = helical(torque, cut.reference_diameter(Teeth::new(25).unwrap()), &cut);
    for (force, by_book) in [(forces.tangential, 747.783_6), (forces.radial, 289.638_3), (forces.axial, 272.171_0)] {
        assert!((force.value - by_book).abs() < 5e-4, "{} {by_book}", force.value);
    }
}

/// More profile shift, a stronger root.
#[test]
fn profile_shift_strengthens_a_root() {
    let of = |shift| lewis::form_factor(&CutGear { teeth: Teeth::new(18).unwrap(), cut: spur(3.0), shift }, 0.38).unwrap();
    assert!(of(-0.2) < of(0.0) && of(0.0) < of(0.2) && of(0.2) < of(0.5));
    // Where the tip has come to a point, as that of 18 teeth has by 1.2, the root is as strong as before, though the tip bears nothing.
    assert!(of(0.5) < of(0.9) && of(1.2) > of(0.2));
}

/// 20 and 40 teeth of module 5.
fn pair() -> (Mesh, Cut, Geometry) {
    let (mesh, cut) = (Mesh::new(20, 40).unwrap(), spur(5.0));
    let setting = Setting { mesh, cut, centre: None, driver_shift: None, face_width: Some(millimetres(50.0)) };
    (mesh, cut, geometry(&setting).unwrap())
}

/// Two steel cylinders of the flanks' curves, 100 sin 20° ÷ 2 = 17.101 and 34.202 mm, pressed by 5,000 ÷ cos 20° = 5,320.9 N over 50 mm:
/// 189.8 × √(5,320.9 ÷ 50 × (1 ÷ 17.101 + 1 ÷ 34.202)) = 579.88 N/mm²; shared by √((4 − 1.635186) ÷ 3) = 0.887847: 514.85 N/mm².
#[test]
fn contact_is_that_of_two_cylinders() {
    let (mesh, cut, geometry) = pair();
    let stress = strength::contact(unit::NEWTON.of(5_000.0), millimetres(50.0), mesh, &cut, &geometry, 1.0);
    assert!((stress.value / 1e6 - 514.85).abs() < 0.02, "{}", stress.value / 1e6);
}

/// 25 m/s: √((5.56 + 5) ÷ 5.56) = 1.378.
#[test]
fn the_factor_for_speed() {
    let factor = strength::speed_factor(Velocity::new::<uom::si::velocity::meter_per_second>(25.0));
    assert!((factor - 1.378_144).abs() < 1e-5, "{factor}");
}

/// Source: Khurmi and Gupta, Theory of Machines, 14th ed., example 12.5: 20 and 40 teeth, module 5, addendum 5, 2,000 rpm: 3,973 and 3,610 mm/s.
/// The path of contact over the base pitch is 0.856768 and 0.778418, so `H_v` = π (1/20 + 1/40)(1 − 1.635186 + 0.734052 + 0.605935) = 0.166065.
#[test]
fn sliding_of_a_textbook() {
    let (mesh, cut, geometry) = pair();
    let mut speeds = sliding::speeds(&geometry, [rpm(2_000.0), rpm(-1_000.0)]).map(|speed| speed.value * 1_000.0);
    speeds.sort_by(|one, other| other.total_cmp(one));
    assert!((speeds[0] - 3_972.997).abs() < 0.01 && (speeds[1] - 3_609.683).abs() < 0.01, "{speeds:?}");
    let loss = sliding::loss(&geometry, mesh, &cut, 0.06);
    assert!((loss - 0.06 * 0.166_065).abs() < 1e-6, "{loss}");
}
