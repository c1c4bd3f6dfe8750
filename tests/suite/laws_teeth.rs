//! Laws of what teeth bear: thrusts balance, a hand turns them, equal leads cancel them, setups exchange.

use layshaft::gearing::geometry::{Cut, Hand};
use layshaft::gearing::part::{Part, Shaft};
use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{Gear, Gearbox, Layout, Mesh};
use layshaft::toothload::bearing::{Rolling, damage, life_million_turns};
use layshaft::toothload::path::{MeshLoad, meshes};
use layshaft::toothload::reactions::{ShaftLoad, bearing_loads};
use layshaft::toothload::thrust::{Pushed, cancelling_helix, on_shaft};
use layshaft::units::common::millimetres;
use layshaft::units::unit;
use proptest::prelude::*;

use crate::nth;

const SHAFTS: [Shaft; 3] = [Shaft::Input, Shaft::Countershaft, Shaft::Output];

fn cut(module_mm: f64, helix: f64) -> Cut {
    Cut::new(millimetres(module_mm), unit::DEGREE.of(helix), unit::DEGREE.of(20.0)).unwrap()
}

fn boxed(counts: [u16; 4]) -> Gearbox {
    let [one, two, three, four] = counts;
    let gears = vec![Gear::Mesh(Mesh::new(three, four).unwrap())];
    Gearbox::new(Layout::InputReduced, Some(Mesh::new(one, two).unwrap()), gears, None).unwrap()
}

fn pushed(gearbox: &Gearbox, cuts: [Cut; 2], hands: [Hand; 2]) -> Vec<Pushed> {
    let loads: Vec<MeshLoad> = meshes(gearbox, Selected::Gear(nth(1)));
    let of = |load: &MeshLoad| {
        let at = usize::from(load.driver != Part::ConstantDriver);
        Pushed { load: *load, forces: load.forces(gearbox, unit::N_M.of(150.0), &cuts[at]).unwrap(), hand: hands[at] }
    };
    loads.iter().map(of).collect()
}

fn hand() -> impl Strategy<Value = Hand> {
    prop_oneof![Just(Hand::Left), Just(Hand::Right)]
}

proptest! {
    #[test]
    fn thrusts_balance_and_turn_with_the_hand(
        counts in [12_u16..60, 12_u16..60, 12_u16..60, 12_u16..60],
        modules in [1.5_f64..4.0, 1.5_f64..4.0],
        helices in [1.0_f64..40.0, 1.0_f64..40.0],
        hands in [hand(), hand()],
    ) {
        let gearbox = boxed(counts);
        let cuts = [cut(modules[0], helices[0]), cut(modules[1], helices[1])];
        let one = pushed(&gearbox, cuts, hands);
        let on = |meshes: &[Pushed]| SHAFTS.map(|shaft| on_shaft(shaft, meshes, Layout::InputReduced).value);
        let largest = one.iter().map(|mesh| mesh.forces.axial.value).fold(0.0, f64::max);
        prop_assert!(on(&one).iter().sum::<f64>().abs() <= 1e-12 * largest);
        let other = pushed(&gearbox, cuts, hands.map(Hand::of_mate));
        for (one, other) in on(&one).into_iter().zip(on(&other)) {
            prop_assert!((one + other).abs() <= 1e-12 * largest);
        }
        // The countershaft turns steadily: what drives it and what it drives are equal about its axis.
        let about = |at: usize, part: Part| {
            one[at].forces.tangential.value * cuts[at].reference_diameter(part.teeth(&gearbox).unwrap()).value
        };
        let (in_, out) = (about(0, Part::ConstantDriven), about(1, Part::Driver(nth(1))));
        prop_assert!((in_ - out).abs() <= 1e-12 * in_);
    }

    /// Both bearings together hold what the gears push with, and neither tips the shaft: forces and moments are nothing about either bearing.
    #[test]
    fn bearings_hold_their_shaft_in_balance(
        loads in prop::collection::vec((-0.5_f64..1.5, -9e3_f64..9e3, -5e3_f64..5e3, -4e3_f64..4e3, 0.01_f64..0.2), 1..5),
        span in 0.02_f64..0.5,
    ) {
        let newtons = |value: f64| unit::NEWTON.of(value);
        let on: Vec<ShaftLoad> = loads.iter().map(|(at, tangential, radial, axial, pitch_radius)| ShaftLoad {
            at: millimetres(1e3 * at * span),
            tangential: newtons(*tangential),
            radial: newtons(*radial),
            axial: newtons(*axial),
            pitch_radius: millimetres(1e3 * pitch_radius),
        }).collect();
        let [first, second] = bearing_loads(millimetres(1e3 * span), &on).unwrap();
        let sum = |of: &dyn Fn(&ShaftLoad) -> f64| on.iter().map(of).sum::<f64>();
        let size = sum(&|load| load.tangential.value.abs() + load.radial.value.abs() + load.axial.value.abs()) * 2.0;
        prop_assert!((first.tangential.value + second.tangential.value - sum(&|load| load.tangential.value)).abs() <= 1e-12 * size);
        prop_assert!((first.radial.value + second.radial.value - sum(&|load| load.radial.value)).abs() <= 1e-12 * size);
        for (about, own) in [(0.0, [0.0, span]), (span, [-span, 0.0])] {
            let held = |one: f64, two: f64| one * own[0] + two * own[1];
            let across = sum(&|load| load.tangential.value * (load.at.value - about));
            let along = sum(&|load| load.radial.value * (load.at.value - about) - load.axial.value * load.pitch_radius.value);
            prop_assert!((held(first.tangential.value, second.tangential.value) - across).abs() <= 1e-12 * size);
            prop_assert!((held(first.radial.value, second.radial.value) - along).abs() <= 1e-12 * size);
        }
    }

    /// Miner's sum over the rows of a duty cycle is the closed form (C / `P_m`)ᵖ at the mean load of ISO 281, and more of the same is no other cycle.
    #[test]
    fn a_duty_cycle_lasts_as_its_mean_load(
        rows in prop::collection::vec((0.01_f64..50.0, 50.0_f64..40e3), 1..7),
        rating in 5e3_f64..90e3,
        rolls in any::<bool>(),
    ) {
        let rolling = if rolls { Rolling::Rollers } else { Rolling::Balls };
        let (rows, rating): (Vec<_>, _) = (rows.iter().map(|(turns, load)| (*turns, unit::NEWTON.of(*load))).collect(), unit::NEWTON.of(rating));
        let turns: f64 = rows.iter().map(|row| row.0).sum();
        let wear: f64 = rows.iter().map(|(turns, load)| turns * load.value.powf(rolling.exponent())).sum();
        let mean = unit::NEWTON.of((wear / turns).powf(rolling.exponent().recip()));
        let closed = turns / life_million_turns(rating, mean, rolling);
        let summed = damage(rating, &rows, rolling);
        prop_assert!((summed - closed).abs() <= 1e-12 * closed, "{summed} {closed}");
        let twice: Vec<_> = rows.iter().chain(&rows).copied().collect();
        prop_assert!((damage(rating, &twice, rolling) - 2.0 * summed).abs() <= 1e-12 * summed);
    }

    #[test]
    fn the_cancelling_helix_cancels(
        counts in [12_u16..60, 12_u16..60, 12_u16..60, 12_u16..60],
        modules in [1.5_f64..4.0, 1.5_f64..4.0],
        helix in 1.0_f64..40.0,
        both in hand(),
    ) {
        let gearbox = boxed(counts);
        let constant = cut(modules[0], helix);
        let own = (cut(modules[1], 0.0), Part::Driver(nth(1)).teeth(&gearbox).unwrap());
        let found = cancelling_helix((&constant, Part::ConstantDriven.teeth(&gearbox).unwrap()), (&own.0, own.1));
        let Some(found) = found.filter(|found| unit::DEGREE.number(*found) < 50.0) else { return Ok(()) };
        let cuts = [constant, cut(modules[1], unit::DEGREE.number(found))];
        let left = on_shaft(Shaft::Countershaft, &pushed(&gearbox, cuts, [both; 2]), Layout::InputReduced).value;
        let largest = pushed(&gearbox, cuts, [both; 2])[0].forces.axial.value;
        prop_assert!(left.abs() <= 1e-9 * largest, "{left} of {largest}");
    }
}
