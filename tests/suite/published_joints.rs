//! Hooke's joints and lines of them against textbooks, handbooks and the rules of the trade, each with its source.
//!
//! “Companion” is a worked-solutions companion to the book named, read in place of the book's page.

use layshaft::driveline::{Direction, Joint, Line, Yokes, joint_limits};
use layshaft::units::common::rpm;
use layshaft::units::{Angle, AngularAcceleration, unit};
use uom::si::angular_acceleration::radian_per_second_squared;

fn degrees(value: f64) -> Angle {
    unit::DEGREE.of(value)
}

fn joint(angle: f64) -> Joint {
    Joint::at(degrees(angle))
}

#[track_caller]
fn close(is: f64, wanted: f64, within: f64) {
    assert!((is - wanted).abs() <= within, "{is} is not {wanted} ± {within}");
}

#[track_caller]
fn angle(is: Angle, wanted: f64, within: f64) {
    close(unit::DEGREE.number(is), wanted, within);
}

fn rad_s2(is: AngularAcceleration) -> f64 {
    is.get::<radian_per_second_squared>()
}

/// Angle; swing 1 ÷ cos β − cos β; greatest acceleration over ω²; its turn: computed from the closed forms.
#[test]
fn one_joint_by_its_closed_forms() {
    for (at, swing, acceleration, turn) in [
        (1.0, 0.000_305, 0.000_305, 44.991),
        (3.0, 0.002_743, 0.002_743, 44.921),
        (5.0, 0.007_625, 0.007_625, 44.782),
        (10.0, 0.030_619, 0.030_626, 44.123),
        (20.0, 0.124_485, 0.124_966, 41.459),
        (30.0, 0.288_675, 0.294_571, 37.021),
    ] {
        close(joint(at).swing(), swing, 6e-7);
        close(rad_s2(joint(at).greatest_acceleration(rpm(60.0 / std::f64::consts::TAU))), acceleration, 6e-7);
        angle(joint(at).turn_of_greatest_acceleration(), turn, 6e-4);
    }
}

/// Bevan, The Theory of Machines (3rd ed.), example 1 of the chapter on joints, companion: 1,000 rpm and 20° give 104.7, 111.4 and
/// 98.4 rad/s and 1,370 rad/s².
#[test]
fn a_textbooks_joint_at_20_degrees() {
    let omega = 1_000.0 * std::f64::consts::TAU / 60.0;
    let (least, most) = joint(20.0).speed_limits();
    close(omega, 104.7, 0.05);
    close(omega * most, 111.4, 0.05);
    close(omega * least, 98.4, 0.05);
    close(rad_s2(joint(20.0).greatest_acceleration(rpm(1_000.0))), 1_370.4, 0.05);
}

/// Khurmi and Gupta, Theory of Machines (14th ed. 2009), companion: example 9.2, 1,500 rpm and 20°, prints 3,080 rad/s² with ω rounded
/// to 157; example 9.4, a swing of 12 % at 19.64°; example 9.6, of ±5 % at 18.0°.
#[test]
fn more_of_the_textbooks() {
    close(rad_s2(joint(20.0).greatest_acceleration(rpm(1_500.0))), 3_083.4, 0.05);
    angle(Joint::of_swing(0.12).angle(), 19.64, 0.005);
    angle(Joint::of_swing(0.10).angle(), 17.964_236, 1e-6);
}

/// Side and plan angle of one shaft against a level one: tan² β = tan² s + tan² p (computed with vectors); √(s² + p²) is off.
#[test]
fn compound_angles_are_exact() {
    for (side, plan, wanted) in [(3.0, 2.0, 3.603_527), (4.0, 3.0, 4.994_169), (5.0, 5.0, 7.053_227), (30.0, 20.0, 34.313_577)] {
        let shaft = Direction::new(degrees(side), degrees(plan));
        angle(Direction::default().angle_to(shaft), wanted, 1e-6);
        angle(shaft.angle_to(Direction::default()), wanted, 1e-6);
    }
}

fn one_piece(gearbox: f64, shaft: f64, pinion: f64, yokes: Yokes) -> Line {
    let [gearbox, shaft, pinion] = [gearbox, shaft, pinion].map(|side| Direction::new(degrees(side), Angle::default()));
    Line::new(gearbox, &[shaft], pinion, yokes).unwrap()
}

/// 4° and 3.5° in phase leave √(4² − 3.5²) = 1.936492°; computed exactly the output swings by 0.00114396; at 4,000 rpm ω² × β²
/// is 200.43 rad/s², a little less than exact.
#[test]
fn unequal_angles_leave_a_rest() {
    let line = one_piece(0.0, 4.0, 0.5, Yokes::InLine);
    angle(line.resultant(), 1.936_492, 1e-6);
    close(line.swing(), 0.001_143_96, 2e-8);
    close(rad_s2(Joint::at(line.resultant()).greatest_acceleration(rpm(4_000.0))), 200.43, 0.05);
}

/// A quarter turn off, two joints multiply: 1 ÷ (cos β₁ × cos β₂) at most.
#[test]
fn yokes_a_quarter_turn_off_multiply() {
    let line = one_piece(0.0, 4.0, 0.5, Yokes::FirstTurned);
    let most = 1.0 / (degrees(4.0).value.cos() * degrees(3.5).value.cos());
    close(line.swing(), most - 1.0 / most, 1e-8);
    angle(line.resultant(), 4.0_f64.hypot(3.5), 1e-6);
}

/// Rules of a driveline maker: 3.2° at 5,000 rpm, 3.7 at 4,500, 4.2 at 4,000, 5.0 at 3,500. Slower, the ladder of the trade that usually
/// names SAE AE-7 (from memory): 5.83° at 3,000, 7 at 2,500, 8.67 at 2,000, 11.5 at 1,500.
#[test]
fn the_largest_angle_at_a_speed() {
    for (speed, wanted, within) in [
        (5_000.0, 3.2, 0.051),
        (4_500.0, 3.7, 0.051),
        (4_000.0, 4.2, 0.051),
        (3_500.0, 5.0, 0.051),
        (3_000.0, 5.83, 1e-9),
        (2_500.0, 7.0, 1e-9),
        (2_000.0, 8.67, 1e-9),
        (1_500.0, 11.5, 1e-9),
        (500.0, 11.5, 1e-9),
    ] {
        angle(joint_limits::largest_angle(rpm(speed)), wanted, within);
    }
    // Each of the ladder keeps the acceleration near 1,000 rad/s² (computed); past its end the same holds.
    for speed in [1_500.0, 2_500.0, 3_500.0, 4_200.0, 5_000.0, 6_500.0, 8_000.0] {
        let acceleration = rad_s2(Joint::at(joint_limits::largest_angle(rpm(speed))).greatest_acceleration(rpm(speed)));
        assert!((780.0..1_040.0).contains(&acceleration), "{speed}: {acceleration}");
    }
}

/// An industrial handbook of cardan shafts, section 3: a line may swing by 0.0027, a resultant of 2.9765°, printed as 3°.
#[test]
fn what_a_line_may_have_left_over() {
    angle(joint_limits::most_left_over(), 2.976_5, 5e-5);
}
