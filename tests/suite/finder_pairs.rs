//! The best speedometer pair found by halving is the one that ranking the whole shelf finds.

use layshaft::finder::Table;
use layshaft::finder::table::Pairs;
use layshaft::speedometer::{Dial, Role, SpeedoGear, Wanted, rank_shelf};
use layshaft::units::TurnsPerDistance;
use proptest::prelude::*;
use uom::si::linear_number_density::per_meter;

use crate::finder_ground::{catalogue, speedo};

/// Two errors worked out in another order of operations differ by no more than this.
const ROUNDING: f64 = 1e-12;

fn pairs_of(gears: &[SpeedoGear]) -> Pairs {
    let entries = gears.iter().map(|gear| speedo(gear.role, gear.teeth, &gear.housing)).collect();
    Table::of(&catalogue([entries])).pairs.pop().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn halving_finds_what_ranking_finds(
        gears in prop::collection::vec((any::<bool>(), 4..40_u16, prop::sample::select(vec!["one", "two"])), 0..30),
        per_metre in 0.8..3.0_f64,
    ) {
        let gear = |(is_drive, teeth, housing): (bool, u16, &str)| speedo(if is_drive { Role::Drive } else { Role::Driven }, teeth, housing);
        let gears = catalogue([gears.into_iter().map(gear).collect()]).speedometer_gears();
        let shaft = TurnsPerDistance::new::<per_meter>(per_metre);
        let dial = Dial::default();
        let ranked = rank_shelf(&gears, &Wanted { shaft, dial, drive: None, adapters: false, in_stock: false, keep: 1 });
        let wanted = (dial.constant() / shaft).value;
        let halved = pairs_of(&gears).best(wanted, 0.0, 0.0);
        match (halved, ranked.best.first()) {
            (None, None) => {}
            (Some((_, error)), Some(best)) => prop_assert!((error.abs() - best.error.abs()).abs() <= ROUNDING, "{} for {}", error, best.error),
            (halved, best) => prop_assert!(false, "{:?} for {:?}", halved, best),
        }
    }
}
