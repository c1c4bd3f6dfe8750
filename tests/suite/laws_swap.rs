//! What holds of every swap: outlines against a fine search, splines that agree both ways, shafts whose ends meet.

use layshaft::swap::{Agreement, Outline, Pattern, ShaftChange, Spline};
use layshaft::units::System;
use layshaft::units::common::{in_millimetres, millimetres};
use proptest::prelude::*;

use crate::any_job::text;

fn line(stations: &[(u16, u16)]) -> String {
    stations.iter().map(|(at, height)| format!("{at}: {height}")).collect::<Vec<_>>().join("; ")
}

/// Stations at different distances, in any order.
fn stations() -> impl Strategy<Value = Vec<(u16, u16)>> {
    proptest::collection::btree_map(0_u16..900, 10_u16..400, 2..7).prop_map(|all| all.into_iter().collect::<Vec<_>>()).prop_shuffle()
}

fn outline(stations: &[(u16, u16)]) -> Outline {
    Outline::read(&line(stations), System::Metric).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    /// Nowhere on a fine grid is there less room than is said.
    #[test]
    fn the_least_room_is_the_least(case in stations(), tunnel in stations()) {
        let (case, tunnel) = (outline(&case), outline(&tunnel));
        let least = case.room_below(&tunnel);
        for at in (0..=1_800).map(|half| millimetres(f64::from(half) / 2.0)) {
            let Some(room) = tunnel.heights_at(at).zip(case.heights_at(at)).map(|(above, below)| above[0] - below[1]) else { continue };
            prop_assert!(least.is_some_and(|(_, least)| room >= least - millimetres(1e-9)), "{at:?}: {room:?}, {least:?}");
        }
    }

    #[test]
    fn the_order_of_stations_and_holes_does_not_matter(all in stations()) {
        let mut turned = all.clone();
        turned.reverse();
        prop_assert_eq!(outline(&all), outline(&turned));
        let holes = |all: &[(u16, u16)]| Pattern::read(&line(all), System::Metric).unwrap();
        prop_assert_eq!(holes(&all).meets(&holes(&turned)), Some((all.len(), all.len())));
    }

    /// Two splines agree as they do the other way round, and each with itself.
    #[test]
    fn splines_agree_both_ways(counts in [4_u16..=80, 4_u16..=80], sizes in [8.0..120.0_f64, 8.0..120.0_f64]) {
        let of = |at: usize| Spline::read(&format!("{} x {:.2}", counts[at], sizes[at]), System::Metric).unwrap();
        prop_assert_eq!(of(0).beside(&of(1)), of(1).beside(&of(0)));
        prop_assert_eq!(of(0).beside(&of(0)), Agreement::BySize);
    }

    /// Box and shaft together end where they did, and what slip the old shaft loses is what the new one is shorter.
    #[test]
    fn the_joints_stand_where_they_stood(longer in -200.0..200.0_f64, old in 500.0..2_000.0_f64, slip in 0.0..60.0_f64) {
        let change = ShaftChange { longer: millimetres(longer), slip: millimetres(slip) };
        let new = in_millimetres(change.between_joints(millimetres(old)));
        prop_assert!((new + longer - old).abs() < 1e-9);
        prop_assert!((in_millimetres(change.slip_of_old()) + longer - slip).abs() < 1e-9);
    }

    #[test]
    fn any_text_is_answered(text in text()) {
        let _answers = (Spline::read(&text, System::Inch).map(|spline| spline.standards()), Outline::read(&text, System::Inch), Pattern::read(&text, System::Metric));
    }
}
