//! Identifying what lies on the bench: the true set is never lost.

use layshaft::gearing::GearNumber;
use layshaft::gearing::identify::Candidate;
use layshaft::gearing::identify::counts::{Counted, by_counts};
use layshaft::gearing::identify::printed::{Figure, by_printed, figures};
use layshaft::gearing::identify::reading::{Reading, size};
use layshaft::gearing::identify::tooth_pairs::{Counts, pairs_in};
use layshaft::gearing::identify::turns::{Turned, axles_by_turns, by_turns};
use layshaft::gearing::part::Part;
use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{FinalDrive, Gearbox, Layout, Ratio, teeth::decimal};
use proptest::prelude::*;

use crate::any_gearbox::{built, gearbox, mesh};

fn config() -> ProptestConfig {
    ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() }
}

fn candidates(boxes: &[Gearbox]) -> Vec<Candidate<'_>> {
    boxes.iter().map(|gearbox| Candidate { name: "a set", gearbox }).collect()
}

/// A part of a turn from −1 to 1.
fn error() -> impl Strategy<Value = Ratio> {
    (-100_i128..=100).prop_map(|hundredths| Ratio::new(hundredths, 100))
}

/// What is read when the input makes so many turns and the eye errs by that share of a fiftieth of a turn.
fn seen(ratio: Ratio, input: i128, error: Ratio) -> Option<Reading> {
    let uncertainty = Ratio::new(1, 50);
    let output = Ratio::from_integer(input) / size(ratio);
    Reading::new(Ratio::from_integer(input), output + error * uncertainty, uncertainty).ok()
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn turns_always_contain_the_true_set(boxes in proptest::collection::vec(gearbox(), 1..12), which in any::<prop::sample::Index>(), gear in any::<prop::sample::Index>(), input in 5_i128..40, error in error(), known in any::<bool>()) {
        let at = which.index(boxes.len());
        let gear = GearNumber::at(gear.index(boxes[at].gears().len()));
        let reading = seen(boxes[at].ratio(gear).unwrap(), input, error);
        prop_assume!(reading.is_some());
        let selected = known.then_some(Selected::Gear(gear));
        let found = by_turns(&[Turned { selected, interval: reading.unwrap().interval() }], &candidates(&boxes));
        prop_assert!(found.fitting().any(|candidate| candidate == at));
        prop_assert!(found.nearest().is_none());
    }

    #[test]
    fn axles_always_contain_the_true_one(drives in proptest::collection::vec(mesh(), 1..40), which in any::<prop::sample::Index>(), turns in 4_i128..20, error in error(), held in any::<bool>()) {
        let drives: Vec<FinalDrive> = drives.into_iter().map(FinalDrive::Pair).collect();
        let at = which.index(drives.len());
        let ratio = drives[at].ratio();
        // With one wheel held the free one makes two turns for one of the ring.
        let wheel = if held { ratio / Ratio::from_integer(2) } else { ratio };
        let reading = seen(wheel, turns, error);
        prop_assume!(reading.is_some());
        let reading = reading.unwrap();
        let interval = if held { reading.interval_with_one_wheel_held() } else { reading.interval() };
        let found = axles_by_turns(interval, &drives);
        prop_assert!(found.fitting().any(|candidate| candidate == at));
        let limits = Counts { driver: 12..=60, driven: 12..=60 };
        let FinalDrive::Pair(mesh) = drives[at] else { unreachable!() };
        prop_assert!(pairs_in(&interval, &limits).inside.contains(&mesh));
    }

    /// With the turns that are advised, two axles are told apart: no reading fits both.
    #[test]
    fn advised_turns_tell_apart(one in mesh(), other in mesh()) {
        prop_assume!(one.ratio() != other.ratio());
        let drives = [FinalDrive::Pair(one), FinalDrive::Pair(other)];
        let wide = layshaft::gearing::identify::reading::Interval { least: Ratio::new(1, 100), greatest: Ratio::from_integer(100) };
        let turns = axles_by_turns(wide, &drives).next.unwrap().input_turns;
        let [a, b] = drives.map(|drive| Ratio::from_integer(turns) / drive.ratio());
        prop_assert!(size(a - b) > Ratio::new(1, 10));
    }

    #[test]
    fn counts_keep_the_true_set(boxes in proptest::collection::vec(gearbox(), 1..12), which in any::<prop::sample::Index>(), take in proptest::collection::vec((any::<prop::sample::Index>(), any::<bool>()), 0..6)) {
        let at = which.index(boxes.len());
        let parts = Part::gears_of(&boxes[at]);
        let mut taken: Vec<Part> = Vec::new();
        let mut counted = Vec::new();
        for (index, placed) in take {
            let part = parts[index.index(parts.len())];
            if !taken.contains(&part) {
                taken.push(part);
                counted.push(Counted { at: placed.then_some(part), teeth: part.teeth(&boxes[at]).unwrap() });
            }
        }
        let sets = candidates(&boxes);
        let found = by_counts(&counted, &sets);
        prop_assert!(found.fitting().any(|candidate| candidate == at));
        prop_assert!(found.nothing.is_none());
        // What is advised next has at least two outcomes, and they are just the sets left.
        if let Some(next) = found.next.clone() {
            let mut all: Vec<usize> = next.outcomes.values().flatten().copied().collect();
            all.sort_unstable();
            let mut left: Vec<usize> = found.fitting().collect();
            left.sort_unstable();
            prop_assert!(next.outcomes.len() > 1);
            prop_assert_eq!(all, left);
        }
    }
}

/// A figure prints what it prints: 2.475 goes up to 2.48, and 1.0 is one with any number of decimals.
#[test]
fn rounding_by_hand() {
    let figure = Figure::read("2.47").unwrap();
    assert!(figure.prints(Ratio::new(2_465, 1_000)) && !figure.prints(Ratio::new(2_475, 1_000)));
    assert!(figure.prints(-Ratio::new(37, 15)));
    assert!((figure.off(Ratio::new(248, 100)) - 2.0).abs() < 1e-12);
    assert!(Figure::read("1.000").unwrap().is_one() && !Figure::read("1.001").unwrap().is_one());
    assert!((decimal(Figure::read("3,91:1").unwrap().value) - 3.91).abs() < 1e-12);
    assert_eq!(figures("2,47; 1,67; 1,24").unwrap().len(), 3);
    assert_eq!(figures("2.47, 1.67, 1.24, 1.00").unwrap().len(), 4);
}

#[test]
fn printed_ladders_rank_the_sets() {
    let boxes = [
        built(Layout::InputReduced, Some((27, 28)), &[(18, 37), (23, 32), (26, 29), (0, 0)], None),
        built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None),
        built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (0, 0)], None),
    ];
    let ranked = by_printed(&figures("2.47 1.67 1.24 1.00").unwrap(), &candidates(&boxes));
    assert_eq!(ranked.iter().map(|found| (found.candidate, found.fits)).collect::<Vec<_>>(), [(1, true), (0, false), (2, false)]);
    assert!(ranked[2].off.is_infinite());
}
