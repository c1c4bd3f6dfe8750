//! What must hold of the tones of any driveline, and of any ranking of them.

use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{FinalDrive, GearNumber, Gearbox, Ratio};
use layshaft::sound::by_ear::{leaders, rank};
use layshaft::sound::tell_apart::test;
use layshaft::sound::tone::Times;
use layshaft::sound::{Clutch, GoesWith, Heard, Kind, Load, Moment, Orders, Origin, Pair, RollingBearing, Rotating};
use layshaft::units::common::rpm;
use layshaft::units::unit;
use proptest::prelude::*;
use proptest::sample::select;

use crate::any_gearbox::gearbox as any_box;
use crate::nth;

fn orders(gearbox: &Gearbox, axle: i128) -> Orders {
    let axle = FinalDrive::Plain(Ratio::new(axle, 10));
    Orders::of(&Rotating { gearbox, stages: &[], stages_in: &[], axle: Some(axle), cylinders: 4, bearings: &[], has_driveshaft: true })
}

fn in_gear(gearbox: &Gearbox, gear: GearNumber, engine: f64) -> Moment {
    let ratio = layshaft::gearing::teeth::decimal(gearbox.ratio(gear).unwrap());
    Moment { engine: rpm(engine), output: rpm(engine) / ratio }
}

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(other.abs()).max(1.0)
}

fn heard() -> impl Strategy<Value = Heard> {
    let kinds = vec![Kind::Whine, Kind::Growl, Kind::Rumble, Kind::Clatter, Kind::Boom, Kind::WheelShake, Kind::FloorShake];
    let gears =
        || proptest::collection::vec(prop_oneof![(1..9_usize).prop_map(|gear| Selected::Gear(nth(gear))), Just(Selected::Neutral)], 0..3);
    let load = proptest::option::of(select(vec![Load::Pulling, Load::Coasting, Load::Both]));
    let with = proptest::option::of(select(vec![GoesWith::Engine, GoesWith::Shaft, GoesWith::Wheel]));
    let clutch = proptest::option::of(select(vec![Clutch::Goes, Clutch::Stays, Clutch::Comes]));
    let pitch = proptest::option::of((5.0..5_000.0_f64).prop_map(|hertz| unit::HERTZ.of(hertz)));
    (proptest::option::of(select(kinds)), gears(), gears(), load, with, clutch, pitch).prop_map(
        |(kind, there, gone, load, goes_with, clutch, pitch)| Heard {
            selected: Selected::Gear(nth(1)),
            stands: false,
            kind,
            there,
            gone,
            load,
            goes_with,
            clutch,
            pitch,
        },
    )
}

proptest! {
    /// Orders do not hang on the speed, frequencies go with it.
    #[test]
    fn tones_go_with_the_speed(gearbox in any_box(), axle in 20..60_i128, engine in 600.0..9_000.0_f64, gear in 0..8_usize) {
        let orders = orders(&gearbox, axle);
        let gear = GearNumber::at(gear % gearbox.gears().len());
        let tones = orders.tones(Selected::Gear(gear));
        let [slow, fast] = [engine, 2.0 * engine].map(|engine| in_gear(&gearbox, gear, engine));
        let crank = orders.tone(Selected::Gear(gear), Origin::Engine).unwrap();
        for tone in tones {
            let [slow, fast] = [slow, fast].map(|moment| unit::HERTZ.number(tone.frequency(moment)));
            prop_assert!(close(2.0 * slow, fast), "{tone:?}");
            let order = tone.per(crank).unwrap();
            prop_assert!(close(order * engine / 60.0, slow), "{tone:?}: {order}");
        }
    }

    /// A pair meets as often told by its driven gear, and one that hangs on the engine whines at the same order in every gear.
    #[test]
    fn pairs_are_alike_from_either_side(gearbox in any_box(), axle in 20..60_i128, engine in 600.0..9_000.0_f64) {
        let orders = orders(&gearbox, axle);
        for gear in gearbox.numbers() {
            let selected = Selected::Gear(gear);
            let moment = in_gear(&gearbox, gear, engine);
            for tone in orders.tones(selected).iter().filter(|tone| tone.mesh.is_some()) {
                let driven = f64::from(tone.mesh.unwrap().driven.count());
                let by_driven = driven * unit::HERTZ.number(tone.side_steps(moment)[1]);
                prop_assert!(close(by_driven, unit::HERTZ.number(tone.frequency(moment))), "{tone:?}");
                prop_assert!(matches!(tone.times, Times::Counted(times) if times.is_integer()));
            }
            if gearbox.constant().is_some() && gearbox.layout() == layshaft::gearing::Layout::InputReduced {
                let constant = orders.tone(selected, Origin::Pair(Pair::Constant)).unwrap();
                let teeth = f64::from(gearbox.constant().unwrap().driver.count());
                prop_assert!(close(unit::HERTZ.number(constant.frequency(moment)), teeth * engine / 60.0));
            }
        }
    }

    /// Outer and inner race together strike once for each ball; the cage is the outer race shared out; a ball meets both races.
    #[test]
    fn bearings_add_up(elements in 5..20_u16, share in 0.05..0.15_f64, contact in 0.0..40.0_f64) {
        let bearing = RollingBearing::new(elements, unit::MM.of(100.0 * share), unit::MM.of(100.0), unit::DEGREE.of(contact)).unwrap();
        prop_assert!(close(bearing.outer() + bearing.inner(), f64::from(elements)));
        prop_assert!(close(bearing.cage() * f64::from(elements), bearing.outer()));
        prop_assert!(close(bearing.element(), 2.0 * bearing.spin()));
        prop_assert!(bearing.outer() < bearing.inner() && bearing.cage() < 0.5);
    }

    /// Whatever is said, everything that turns is ranked, the best first, and any two have a test.
    #[test]
    fn any_noise_is_ranked(gearbox in any_box(), heard in heard(), engine in 600.0..9_000.0_f64) {
        let orders = orders(&gearbox, 39);
        let moment = in_gear(&gearbox, nth(1), engine);
        let suspects = rank(&heard, &orders, moment);
        prop_assert_eq!(suspects.len(), orders.tones(Selected::Gear(nth(1))).len());
        prop_assert!(suspects.windows(2).all(|two| two[0].points >= two[1].points && two[0].points.is_finite()));
        prop_assert!(leaders(&suspects).len() <= suspects.len());
        for two in suspects.windows(2) {
            let first = test([&two[0].tone, &two[1].tone], &heard, &orders, moment);
            // The same test the other way round, but for which is which.
            let second = test([&two[1].tone, &two[0].tone], &heard, &orders, moment);
            prop_assert_eq!(std::mem::discriminant(&first), std::mem::discriminant(&second));
        }
    }

    /// A pitch that is met moves its part up, never down.
    #[test]
    fn a_pitch_that_is_met_helps(gearbox in any_box(), heard in heard(), engine in 600.0..9_000.0_f64, which in 0..40_usize) {
        let orders = orders(&gearbox, 39);
        let moment = in_gear(&gearbox, nth(1), engine);
        let place = |heard: &Heard, origin: Origin| rank(heard, &orders, moment).iter().position(|suspect| suspect.tone.origin == origin);
        let tones: Vec<_> =
            orders.tones(Selected::Gear(nth(1))).iter().filter(|tone| !matches!(tone.origin, Origin::AnyBearing(_))).collect();
        let tone = tones[which % tones.len()];
        let silent = Heard { pitch: None, ..heard };
        let met = Heard { pitch: Some(tone.frequency(moment)), ..silent.clone() };
        prop_assert!(place(&met, tone.origin).unwrap() <= place(&silent, tone.origin).unwrap().max(tones.len()));
        let points = |heard: &Heard| rank(heard, &orders, moment).into_iter().find(|suspect| suspect.tone.origin == tone.origin).unwrap().points;
        prop_assert!(points(&met) > points(&silent) + 7.9);
    }
}
