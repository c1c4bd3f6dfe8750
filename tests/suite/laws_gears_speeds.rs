//! What must hold of every gearbox: engaged gears do not slip, meshing teeth pass each other at one speed.

use layshaft::gearing::GearNumber;
use layshaft::gearing::part::{Part, Shaft};
use layshaft::gearing::speeds::{Arrangement, ReverseMesh, Selected, Share, Side, Turning, overrun, peaks};
use layshaft::gearing::{Gear, Gearbox, Layout, Ratio, teeth::decimal};
use layshaft::units::common::{in_rpm, rpm};
use proptest::prelude::*;

use crate::any_gearbox::{built, gearbox};
use crate::nth;

fn config() -> ProptestConfig {
    ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() }
}

fn arrangement() -> impl Strategy<Value = (Gearbox, Arrangement)> {
    (gearbox(), proptest::collection::vec(any::<bool>(), 8), any::<bool>()).prop_map(|(gearbox, loose, constant)| {
        let sides = loose.into_iter().map(|driver| if driver { Side::Driver } else { Side::Driven });
        let reverse = if constant { ReverseMesh::Constant } else { ReverseMesh::Sliding };
        let mut arrangement =
            GearNumber::lowest(8).zip(sides).fold(Arrangement::usual(&gearbox), |all, (gear, side)| all.with_loose(gear, side));
        arrangement.reverse = reverse;
        (gearbox, arrangement)
    })
}

fn everything(gearbox: &Gearbox) -> Vec<Selected> {
    let forward = gearbox.numbers().map(Selected::Gear);
    forward.chain([Selected::Neutral]).chain(gearbox.reverse().map(|_| Selected::Reverse)).collect()
}

/// z₁·n₁ + z₂·n₂ = 0: the pitch lines of two meshing gears move together, so that with one tooth force between them
/// (T = F·r on either side) the power that goes into an ideal mesh comes out of it, Σ T·ω = 0.
fn pitch_lines_agree(turning: &Turning, one: Part, other: Part) -> bool {
    let (Some(one), Some(other)) = (turning.part(one), turning.part(other)) else { return true };
    let line = |turns: &layshaft::gearing::speeds::Turns| turns.speed * Ratio::from_integer(turns.teeth.unwrap().count().into());
    line(one) + line(other) == Share::REST
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn every_mesh_balances((gearbox, arrangement) in arrangement()) {
        for selected in everything(&gearbox) {
            let turning = Turning::new(&gearbox, &arrangement, selected).unwrap();
            prop_assert!(pitch_lines_agree(&turning, Part::ConstantDriver, Part::ConstantDriven));
            for gear in gearbox.numbers() {
                prop_assert!(pitch_lines_agree(&turning, Part::Driver(gear), Part::Driven(gear)), "gear {gear}, {selected:?}");
            }
            let in_mesh = arrangement.reverse == ReverseMesh::Constant || selected == Selected::Reverse;
            if in_mesh && turning.part(Part::IdlerEntry).is_some() {
                let last = if turning.part(Part::IdlerExit).is_some() { Part::IdlerExit } else { Part::IdlerEntry };
                prop_assert!(pitch_lines_agree(&turning, Part::ReverseDriver, Part::IdlerEntry));
                prop_assert!(pitch_lines_agree(&turning, last, Part::ReverseDriven));
            }
        }
    }

    #[test]
    fn what_is_engaged_does_not_slip((gearbox, arrangement) in arrangement()) {
        for selected in everything(&gearbox) {
            let turning = Turning::new(&gearbox, &arrangement, selected).unwrap();
            for turns in &turning.parts {
                if turns.in_path || !turns.loose {
                    prop_assert_eq!(turns.slip, Share::REST, "{:?} in {:?}", turns.part, selected);
                }
            }
        }
    }

    #[test]
    fn output_turns_by_the_ratio((gearbox, arrangement) in arrangement()) {
        for selected in everything(&gearbox) {
            let turning = Turning::new(&gearbox, &arrangement, selected).unwrap();
            let output = turning.part(Part::Shaft(Shaft::Output)).unwrap().speed;
            prop_assert_eq!(output, turning.ratio.map_or(Share::OUTPUT, |ratio| Share::INPUT / ratio));
        }
    }

    #[test]
    fn speed_told_from_either_end_is_one((gearbox, arrangement) in arrangement(), engine in 500.0_f64..9_000.0) {
        for gear in gearbox.numbers() {
            let turning = Turning::new(&gearbox, &arrangement, Selected::Gear(gear)).unwrap();
            let forth = turning.at_input(rpm(engine));
            let back = turning.at_output(forth.1);
            prop_assert!((in_rpm(back.0) - engine).abs() <= 1e-12 * engine);
        }
    }

    #[test]
    fn peaks_are_the_highest_of_all((gearbox, arrangement) in arrangement()) {
        let engine = rpm(6_500.0);
        let slips = gearbox.numbers().flat_map(|gear| {
            let turning = Turning::new(&gearbox, &arrangement, Selected::Gear(gear)).unwrap();
            let at = turning.at_input(engine);
            turning.parts.iter().filter(|turns| turns.loose).map(|turns| in_rpm(turns.slip_at(at)).abs()).collect::<Vec<_>>()
        });
        let greatest = slips.fold(f64::NEG_INFINITY, f64::max);
        let found = peaks::highest_slip(&gearbox, &arrangement, engine).map_or(f64::NEG_INFINITY, |peak| in_rpm(peak.speed).abs());
        prop_assert!(found.total_cmp(&greatest).is_eq());
    }

    #[test]
    fn downshift_from_its_safe_speed_just_reaches_the_limit(gearbox in gearbox(), engine in 500.0_f64..9_000.0) {
        for shift in overrun::downshifts_at_engine(&gearbox, rpm(engine), rpm(6_500.0)) {
            prop_assert!((in_rpm(shift.safe_before()) * decimal(shift.step) - 6_500.0).abs() < 1e-8);
            let output = rpm(engine) / decimal(gearbox.ratio(shift.from).unwrap());
            let same = overrun::downshifts_at_output(&gearbox, output, rpm(6_500.0)).into_iter().find(|other| other.from == shift.from);
            prop_assert!((in_rpm(same.unwrap().after) - in_rpm(shift.after)).abs() <= 1e-9 * engine);
        }
    }
}

/// The box of the mock-up: 25 to 30, then 37/18, 32/23, 28/27 and direct. At 6,500 rpm in 2nd by hand:
/// cluster 6,500·25/30 = 5,416.7 backwards; 1st gear 5,416.7·18/37 = 2,635.1; 2nd and output 5,416.7·23/32 = 3,893.2;
/// 3rd gear 5,416.7·27/28 = 5,223.2; so 3rd runs 1,330.0 ahead of the mainshaft and 1st 1,258.1 behind.
#[test]
fn three_figures_by_hand() {
    let gearbox = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None);
    let arrangement = Arrangement::usual(&gearbox);
    let turning = Turning::new(&gearbox, &arrangement, Selected::Gear(nth(2))).unwrap();
    let at = turning.at_input(rpm(6_500.0));
    let check = |part, speed: f64, slip: f64| {
        let turns = turning.part(part).unwrap();
        assert!((in_rpm(turns.speed_at(at)) - speed).abs() < 0.05, "{part:?}: {}", in_rpm(turns.speed_at(at)));
        assert!((in_rpm(turns.slip_at(at)) - slip).abs() < 0.06, "{part:?}: {}", in_rpm(turns.slip_at(at)));
    };
    check(Part::Shaft(Shaft::Countershaft), -5_416.67, 0.0);
    check(Part::Driven(nth(1)), 2_635.14, -1_258.09);
    check(Part::Driven(nth(2)), 3_893.23, 0.0);
    check(Part::Driven(nth(3)), 5_223.21, 1_329.98);
    // The fastest loose gear: in top 1st stands still against 6,500 of the mainshaft by 6,500 − 2,635.1 = 3,864.9; in 1st
    // 3rd runs 5,223.2 − 2,635.1 = 2,588.1 ahead. The larger is in top.
    let peak = peaks::highest_slip(&gearbox, &arrangement, rpm(6_500.0)).unwrap();
    assert_eq!((peak.part, peak.gear), (Part::Driven(nth(1)), nth(4)));
    assert!((in_rpm(peak.speed) + 3_864.86).abs() < 0.05);
}

/// Reduced at the output the countershaft hangs on the wheels: 20·30 behind, in direct it runs at output · 30/20, 1.5 times.
#[test]
fn output_reduced_countershaft_follows_the_wheels() {
    let gearbox = built(Layout::OutputReduced, Some((20, 30)), &[(18, 32), (0, 0)], None);
    let arrangement = Arrangement::usual(&gearbox);
    let peak = peaks::highest_countershaft(&gearbox, &arrangement, rpm(6_000.0)).unwrap();
    assert_eq!(peak.gear, nth(2));
    assert!((in_rpm(peak.speed) + 9_000.0).abs() < 1e-9);
    // Coasting in neutral at 2,000 rpm of the output with the engine idling at 800: the loose 1st gear turns
    // 2,000 · 30/20 · 32/18 = 5,333.3 with the wheels, 4,533.3 ahead of its input shaft.
    let turning = Turning::new(&gearbox, &arrangement, Selected::Neutral).unwrap();
    let first = turning.part(Part::Driver(nth(1))).unwrap();
    assert!((in_rpm(first.slip_at((rpm(800.0), rpm(2_000.0)))) - 4_533.333).abs() < 1e-3);
}

/// A sliding idler stands still in forward gears; one in constant mesh turns the loose reverse gear backwards.
#[test]
fn reverse_idler_by_hand() {
    let reverse = layshaft::gearing::Reverse::Geared(layshaft::gearing::ReverseGears {
        pair: layshaft::gearing::Mesh::new(18, 36).unwrap(),
        idler: layshaft::gearing::Idler::Plain(layshaft::gearing::Teeth::new(20)),
    });
    let gearbox = built(Layout::InputReduced, Some((20, 40)), &[(20, 40), (0, 0)], Some(reverse));
    let sliding = Arrangement::usual(&gearbox);
    let idler = |arrangement: &Arrangement, selected| {
        let turning = Turning::new(&gearbox, arrangement, selected).unwrap();
        in_rpm(turning.part(Part::IdlerEntry).unwrap().speed_at(turning.at_input(rpm(4_000.0))))
    };
    assert!(idler(&sliding, Selected::Gear(nth(1))).abs() < 1e-9);
    // Countershaft 4,000 · 20/40 = 2,000 backwards, idler 2,000 · 18/20 = 1,800 forwards.
    assert!((idler(&sliding, Selected::Reverse) - 1_800.0).abs() < 1e-9);
    let mut constant = sliding;
    constant.reverse = ReverseMesh::Constant;
    assert!((idler(&constant, Selected::Gear(nth(1))) - 1_800.0).abs() < 1e-9);
    let turning = Turning::new(&gearbox, &constant, Selected::Gear(nth(1))).unwrap();
    let driven = turning.part(Part::ReverseDriven).unwrap();
    // Reverse gear 1,800 · 20/36 = 1,000 backwards, the mainshaft in 1st (4 : 1) 1,000 forwards: 2,000 apart.
    assert!((in_rpm(driven.slip_at(turning.at_input(rpm(4_000.0)))) + 2_000.0).abs() < 1e-9);
}

#[test]
fn gear_that_is_not_there_has_no_speeds() {
    let gearbox = built(Layout::TwoShaft, None, &[(12, 38)], None);
    let arrangement = Arrangement::usual(&gearbox);
    assert_eq!(Turning::new(&gearbox, &arrangement, Selected::Gear(nth(2))), None);
    assert_eq!(Turning::new(&gearbox, &arrangement, Selected::Reverse), None);
    assert!(peaks::highest_countershaft(&gearbox, &arrangement, rpm(6_000.0)).is_none());
    assert!(matches!(gearbox.gears(), [Gear::Mesh(_)]));
}

#[test]
fn downshift_beyond_the_limit_says_what_to_do() {
    use layshaft::problem::Explain;
    let gearbox = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None);
    let shifts = overrun::downshifts_at_engine(&gearbox, rpm(6_500.0), rpm(6_500.0));
    let top = shifts.last().unwrap();
    assert!(top.is_over());
    // 6,500 · 56/45 = 8,088.9 (third is 30/25 · 28/27 = 56/45); slow to 6,500 · 45/56 = 5,223.2.
    assert_eq!(top.what(), "changing down from 4th to 3rd at 6,500 rpm would spin the engine to 8,089 rpm, 1,589 over the limit");
    assert_eq!(top.what_to_do(), "slow to 5,223 rpm in 4th before changing down");
}

/// At 6,500 rpm in 2nd: the constant pair 25 · 6,500 / 60 = 2,708.3 Hz; 2nd 23 · 5,416.7 / 60 = 2,076.4 Hz; 25 and 30 meet again
/// after their least common multiple, 150 meshes, 18.06 times a second.
#[test]
fn meshes_by_hand() {
    use layshaft::gearing::speeds::meshes::meetings;
    let gearbox = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None);
    let turning = Turning::new(&gearbox, &Arrangement::usual(&gearbox), Selected::Gear(nth(2))).unwrap();
    let all = meetings(&gearbox, &turning, ReverseMesh::Sliding, turning.at_input(rpm(6_500.0)));
    assert_eq!(all.iter().map(|meeting| meeting.in_path).collect::<Vec<_>>(), [true, false, true, false]);
    let hertz = |frequency: layshaft::units::Frequency| frequency.get::<uom::si::frequency::hertz>();
    assert!((hertz(all[0].frequency) - 2_708.333).abs() < 1e-3);
    assert!((hertz(all[0].repeat) - 18.055_6).abs() < 1e-3);
    assert!((hertz(all[2].frequency) - 2_076.389).abs() < 1e-3);
}
