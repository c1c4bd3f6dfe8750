//! The finder finds what going through everything by hand would find, whatever the catalogue and the wishes.

use std::sync::Arc;

use layshaft::finder::table::{AxleRow, Pair, Pairs, SetRow, TyreRow};
use layshaft::finder::{Given, Measure, Search, Stages, Table, Wish};
use layshaft::gearing::Layout;
use layshaft::units::common::{metres_per_second, rpm};
use proptest::prelude::*;

use crate::finder_ground::{all_costs, search};
use crate::nth;

/// Two figures worked out in another order of operations differ by no more than this.
const ROUNDING: f64 = 1e-7;

fn any_set() -> impl Strategy<Value = SetRow> {
    let gears = prop::collection::vec(1.05..1.9_f64, 1..6);
    (0.6..1.2_f64, gears, any::<[bool; 3]>(), 0..3_usize).prop_map(|(top, steps, [in_stock, is_two_shaft, is_fitted], housing)| {
        let mut ratios = vec![top];
        for step in steps {
            let next = ratios.last().copied().unwrap_or(1.0) * step;
            ratios.push(next);
        }
        ratios.reverse();
        let layout = if is_two_shaft { Layout::TwoShaft } else { Layout::InputReduced };
        SetRow { place: Some(0), meshes: vec![2; ratios.len()], ratios, layout, in_stock, housing, is_fitted, ..SetRow::default() }
    })
}

fn any_table() -> impl Strategy<Value = Table> {
    let axle = (2.5..5.5_f64, any::<[bool; 2]>()).prop_map(|(ratio, [in_stock, is_fitted])| AxleRow {
        place: Some(0),
        ratio,
        in_stock,
        is_fitted,
    });
    let tyre = (1.5..2.4_f64, any::<[bool; 2]>()).prop_map(|(circumference_m, [in_stock, is_fitted])| TyreRow {
        place: (!is_fitted).then_some(0),
        circumference_m,
        diameter_m: circumference_m / 3.05,
        in_stock,
    });
    let pair = (5..10_u16, 15..31_u16).prop_map(|(drive, driven)| Pair { ratio: f64::from(drive) / f64::from(driven), drive, driven });
    let pairs = |housing: &'static str| prop::collection::vec(pair.clone(), 0..12).prop_map(move |pairs| Pairs::new(housing, pairs));
    (
        prop::collection::vec(any_set(), 0..9),
        prop::collection::vec(axle, 0..9),
        prop::collection::vec(tyre, 0..70),
        (pairs("one"), pairs("two"), pairs("")),
    )
        .prop_map(|(sets, axles, tyres, (one, two, all))| {
            let pairs = vec![one, two, all];
            let mut table = Table { sets, axles, tyres, pairs_in_stock: pairs.clone(), pairs, ..Table::default() };
            table.sort();
            table
        })
}

fn any_wish() -> impl Strategy<Value = Wish> {
    let measure = prop_oneof![
        3 => (20.0..40.0_f64).prop_map(|speed| (Measure::CruiseRpm(metres_per_second(speed)), 3_000.0, 800.0)),
        2 => Just((Measure::FirstOverall, 11.0, 4.0)),
        2 => Just((Measure::LargestDrop, 0.3, 0.15)),
        1 => (1..7_usize).prop_map(|gear| (Measure::SpeedAtShift(nth(gear)), 25.0, 15.0)),
        1 => Just((Measure::Landing, 4_200.0, 700.0)),
        2 => Just((Measure::Speedometer, 0.0, 0.08)),
        1 => Just((Measure::TyreDiameter, 0.62, 0.1)),
        1 => Just((Measure::GearCount, 4.0, 1.0)),
    ];
    let range = (measure, -1.0..1.0_f64, 0.0..0.6_f64, 0..4_u8).prop_map(|((measure, middle, spread), shift, width, open)| {
        let centre = middle + shift * spread;
        let (least, greatest) = (centre - width * spread, centre + width * spread);
        match open {
            0 => (measure, f64::NEG_INFINITY, greatest),
            1 => (measure, least, f64::INFINITY),
            2 => (measure, centre, centre),
            _ => (measure, least, greatest),
        }
    });
    let flags = prop_oneof![
        4 => range,
        1 => Just((Measure::ToOrder, f64::NEG_INFINITY, 0.0)),
        1 => prop_oneof![Just(Measure::PartsChanged), Just(Measure::OtherGearSet), Just(Measure::OtherAxle), Just(Measure::OtherTyre)]
            .prop_map(|measure| (measure, f64::NEG_INFINITY, 0.0)),
        1 => (1..3_u8).prop_map(|most| (Measure::PartsChanged, f64::NEG_INFINITY, f64::from(most))),
        1 => any::<bool>().prop_map(|two_shafts| (Measure::OtherEnd { two_shafts }, f64::NEG_INFINITY, 0.0)),
        1 => Just((Measure::OtherLayout(Layout::InputReduced), f64::NEG_INFINITY, 0.0)),
    ];
    (flags, 0..4_u8, 1..=10_u8).prop_map(|((measure, least, greatest), must, weight)| {
        if must == 0 { Wish::must(measure, least, greatest) } else { Wish::prefer(measure, least, greatest, f64::from(weight)) }
    })
}

/// Wishes of which no two are about the speedometer: the pair can only suit one range.
fn any_wishes() -> impl Strategy<Value = Vec<Wish>> {
    prop::collection::vec(any_wish(), 0..6).prop_map(|wishes| {
        let mut has_one = false;
        wishes.into_iter().filter(|wish| wish.measure != Measure::Speedometer || !std::mem::replace(&mut has_one, true)).collect()
    })
}

fn given() -> Given {
    Given { shift: Some(rpm(6_000.0)), stages: Stages::fixed(1.1), stages_behind_take_off: 1.05, ..Given::default() }
}

fn is_near(a: f64, b: f64) -> bool {
    (a - b).abs() <= ROUNDING * (1.0 + a.abs().max(b.abs()))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// The list by musts and weights, the front, and the sentence "nothing meets all" are those of going through everything.
    #[test]
    fn equals_going_through_everything(table in any_table(), wishes in any_wishes()) {
        let table = Arc::new(table);
        let found = search(&table, &wishes, &given());
        let all = all_costs(&table, &given(), &wishes);
        prop_assert_eq!(found.progress.judged + found.progress.passed, all.len() as u64);
        let meets = all.iter().any(|(must, ..)| *must <= 0.0);
        prop_assert_eq!(found.meets, meets);

        let mut ranked: Vec<(f64, f64)> = all.iter().filter(|(must, ..)| !meets || *must <= 0.0).map(|(must, score, _)| (*must, *score)).collect();
        ranked.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        let mut listed: Vec<(f64, f64)> = found.results.iter().map(|one| (one.must_missed, one.score)).collect();
        listed.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        if found.on_front <= 1 || !meets {
            prop_assert_eq!(listed.len(), ranked.len().min(100));
            for (own, other) in listed.iter().zip(&ranked) {
                prop_assert!(is_near(own.0, other.0) && is_near(own.1, other.1), "{:?} is listed where {:?} belongs", own, other);
            }
        }
        prop_assert!(ranked.first().is_none_or(|best| is_near(best.1, listed[0].1)), "the best of all is not listed");
        if meets {
            front_is_right(&found, &all)?;
        }
    }

    /// Stopped after every few steps, and asked for its results in between, it comes to the same end.
    #[test]
    fn stopped_and_gone_on_with_is_the_same(table in any_table(), wishes in any_wishes(), slice in 20..900_u64) {
        let table = Arc::new(table);
        let straight = search(&table, &wishes, &given());
        let mut sliced = Search::new(Arc::clone(&table), wishes, given());
        let mut last = sliced.progress();
        while !last.done {
            let next = sliced.advance(slice);
            prop_assert!(next.judged >= last.judged && next.passed >= last.passed);
            if next.judged.is_multiple_of(7) {
                prop_assert!(sliced.found().results.len() <= 100);
            }
            last = next;
        }
        // Compared as text, for a figure that does not exist is no number and equal to nothing.
        prop_assert_eq!(format!("{:?}", sliced.found()), format!("{straight:?}"));
    }

    /// What bounds pass over would not have changed anything.
    #[test]
    fn passing_over_changes_nothing(table in any_table(), wishes in any_wishes()) {
        let table = Arc::new(table);
        let pruned = search(&table, &wishes, &given());
        let mut whole = Search::new(table, wishes, given()).exhaustive();
        let progress = whole.advance(u64::MAX);
        prop_assert_eq!(progress.passed + progress.judged, progress.total);
        prop_assert_eq!(format!("{:?}", whole.found().results), format!("{:?}", pruned.results));
    }
}

/// Every distinct cost on the true front is listed first, and nothing else is marked as being on it.
fn front_is_right(found: &layshaft::finder::Found, all: &[(f64, f64, Vec<f64>)]) -> Result<(), TestCaseError> {
    let admitted: Vec<&Vec<f64>> = all.iter().filter(|(must, ..)| *must <= 0.0).map(|(_, _, costs)| costs).collect();
    let beats = |a: &[f64], b: &[f64]| a.iter().zip(b).all(|(a, b)| a <= b) && a.iter().zip(b).any(|(a, b)| *a < b - ROUNDING);
    for one in found.results.iter().filter(|one| one.on_front) {
        let costs: Vec<f64> =
            found.wishes.iter().zip(&one.missed).filter(|(wish, _)| wish.weight().is_some()).map(|(_, steps)| *steps).collect();
        let slack: Vec<f64> = costs.iter().map(|cost| cost - ROUNDING * (1.0 + cost)).collect();
        prop_assert!(!admitted.iter().any(|other| beats(other, &slack)), "{:?} is beaten", costs);
    }
    let mut distinct: Vec<Vec<i64>> = Vec::new();
    for costs in &admitted {
        let beaten = admitted.iter().any(|other| other.iter().zip(*costs).all(|(a, b)| *a <= b + ROUNDING) && beats(other, costs));
        #[expect(clippy::cast_possible_truncation, reason = "costs are some thousands at most")]
        let rounded: Vec<i64> = costs.iter().map(|cost| (cost * 1e6).round() as i64).collect();
        if !beaten && !distinct.contains(&rounded) {
            distinct.push(rounded);
        }
    }
    // Costs that differ by rounding alone may count once here and twice there.
    prop_assert!(
        found.on_front >= 1 && found.on_front.abs_diff(distinct.len()) <= distinct.len() / 20 + 1,
        "{} on the front, {} by hand",
        found.on_front,
        distinct.len()
    );
    Ok(())
}
