//! Orders of bearings, joints, tyres, teeth and firing against what is published, each with its source.

use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{FinalDrive, Gearbox, Layout, Ratio};
use layshaft::sound::{Moment, Orders, Origin, Pair, RollingBearing, Rotating};
use layshaft::units::common::{in_rpm, metres, rpm, wheel_speed};
use layshaft::units::{Angle, AngularVelocity, unit};

use crate::any_gearbox::built;
use crate::nth;

#[track_caller]
fn close(is: f64, wanted: f64, within: f64) {
    assert!((is - wanted).abs() <= within, "{is} is not {wanted} ± {within}");
}

fn inches(elements: u16, element: f64, circle: f64) -> RollingBearing {
    RollingBearing::new(elements, unit::INCH.of(element), unit::INCH.of(circle), Angle::default()).unwrap()
}

/// The data set of a university's bearing laboratory, 6205-2RS (from memory, recomputed from its geometry, nine balls of 0.3126 in on
/// 1.537 in): inner 5.4152, outer 3.5848, rolling element 4.7135, which is twice the spin of a ball. Its cage is printed 0.39828; the
/// geometry gives 0.398308.
#[test]
fn the_orders_of_a_deep_groove_bearing() {
    let bearing = inches(9, 0.3126, 1.537);
    close(bearing.inner(), 5.415_2, 5e-5);
    close(bearing.outer(), 3.584_8, 5e-5);
    close(bearing.element(), 4.713_5, 1e-4);
    close(bearing.cage(), 0.398_308, 5e-7);
}

/// A monitoring page's 6205 at 1,500 rpm, nine balls of 7.94 mm on 38.5 mm: cage 9.92, outer 89.31 and inner 135.69 Hz printed with d/D
/// rounded to 0.2062; unrounded 9.922, 89.299 and 135.701.
#[test]
fn the_tones_of_a_bearing_at_1500_rpm() {
    let bearing = RollingBearing::new(9, unit::MM.of(7.94), unit::MM.of(38.5), Angle::default()).unwrap();
    let per_second = 1_500.0 / 60.0;
    close(per_second * bearing.cage(), 9.922_078, 1e-5);
    close(per_second * bearing.outer(), 89.298_701, 1e-5);
    close(per_second * bearing.inner(), 135.701_299, 1e-5);
    close(per_second * bearing.spin(), 58.032_909, 1e-5);
}

/// A bearing maker's table of orders, 9104: cage .398, balls 2.339, outer 3.578, inner 5.422, 1,200 rpm gives a cage of 7.96 Hz. The
/// ratio follows from the outer race: r = 1 − 2 × 3.578 ÷ 9 = 0.2049.
#[test]
fn a_makers_table_of_orders() {
    let bearing = inches(9, 0.2049, 1.0);
    close(bearing.outer(), 3.578, 5e-4);
    close(bearing.inner(), 5.422, 5e-4);
    close(bearing.cage(), 0.398, 5e-4);
    close(bearing.spin(), 2.338, 2e-3);
    close(20.0 * bearing.cage(), 7.96, 0.01);
}

/// Two-gear box of 13 teeth driving 26, direct second; ring and pinion of a plain ratio.
fn rotating(gearbox: &Gearbox, axle: Ratio, cylinders: u8) -> Rotating<'_> {
    Rotating { gearbox, stages: &[], stages_in: &[], axle: Some(FinalDrive::Plain(axle)), cylinders, bearings: &[], has_driveshaft: true }
}

fn hertz(orders: &Orders, selected: Selected, origin: Origin, moment: Moment) -> f64 {
    unit::HERTZ.number(orders.tone(selected, origin).unwrap().frequency(moment))
}

fn direct_box() -> Gearbox {
    built(Layout::InputReduced, Some((13, 26)), &[(20, 30), (0, 0)], None)
}

/// A service manual: at 40 mph a tyre of 7 Hz and an axle of 3.08 give a shaft of 22 Hz (21.56 unrounded), 44 Hz at its joints (43.12) and
/// 14 Hz of the tyre's second order.
#[test]
fn a_manuals_shaft_and_joints() {
    let gearbox = direct_box();
    let orders = Orders::of(&rotating(&gearbox, Ratio::new(308, 100), 4));
    let output = rpm(7.0 * 3.08 * 60.0);
    let moment = Moment { engine: output, output };
    let top = Selected::Gear(nth(2));
    close(hertz(&orders, top, Origin::Tyre, moment), 7.0, 1e-9);
    close(hertz(&orders, top, Origin::Driveshaft, moment), 21.56, 1e-9);
    close(hertz(&orders, top, Origin::Joint, moment), 43.12, 1e-9);
}

/// A trade sheet: P205/65R15 at 60 mph, axle 2.78, a free diameter of 25.492 in: 13.19 Hz of the tyre (printed 13.195 with π cut to 3.14),
/// 36.66 Hz of the shaft.
#[test]
fn a_trade_sheets_tyre_and_shaft() {
    let gearbox = direct_box();
    let orders = Orders::of(&rotating(&gearbox, Ratio::new(278, 100), 4));
    let wheel = wheel_speed(unit::MPH.of(60.0), metres(std::f64::consts::PI * 25.492_126 * 0.025_4));
    let output = wheel * 2.78;
    let moment = Moment { engine: output, output };
    close(hertz(&orders, Selected::Gear(nth(2)), Origin::Tyre, moment), 13.185_846, 1e-5);
    close(hertz(&orders, Selected::Gear(nth(2)), Origin::Driveshaft, moment), 36.656_651, 1e-5);
}

/// Whine of 13 teeth, as worked out in a forum (printed cut off): 216.66, 433.33 and 866.66 Hz at 1,000, 2,000 and 4,000 rpm, order 13.
#[test]
fn thirteen_teeth() {
    let gearbox = direct_box();
    let orders = Orders::of(&rotating(&gearbox, Ratio::from_integer(4), 4));
    let pair = Origin::Pair(Pair::Constant);
    for (speed, wanted) in [(1_000.0, 216.666_667), (2_000.0, 433.333_333), (4_000.0, 866.666_667)] {
        let moment = Moment { engine: rpm(speed), output: rpm(speed) };
        close(hertz(&orders, Selected::Gear(nth(2)), pair, moment), wanted, 1e-6);
    }
    let tone = |origin| orders.tone(Selected::Gear(nth(2)), origin).unwrap();
    close(tone(pair).per(tone(Origin::Engine)).unwrap(), 13.0, 1e-12);
}

/// Firing of a four-stroke engine, order 2, 3 and 4 of 4, 6 and 8 cylinders: 80, 120 and 160 Hz at 2,400 rpm.
#[test]
fn firing() {
    let gearbox = direct_box();
    let moment = Moment { engine: rpm(2_400.0), output: AngularVelocity::default() };
    for (cylinders, wanted) in [(4, 80.0), (6, 120.0), (8, 160.0)] {
        let orders = Orders::of(&rotating(&gearbox, Ratio::from_integer(4), cylinders));
        close(hertz(&orders, Selected::Neutral, Origin::Firing, moment), wanted, 1e-9);
    }
    close(in_rpm(moment.engine), 2_400.0, 1e-9);
}
