//! Work in slices: however it is parted the same is found, and a slice of an older question does nothing.

use layshaft::gearing::Layout;
use layshaft::gearing::identify::ladder::{LadderSearch, Wish};
use layshaft::gearing::identify::printed::figures;
use layshaft::sliced::{Progress, Runner, Sliced};
use proptest::prelude::*;

/// Counts to its end, a unit at a time.
#[derive(Clone, Debug)]
struct Count {
    at: u64,
    end: u64,
}

impl Sliced for Count {
    type Found = u64;

    fn advance(&mut self, budget: u64) -> Progress {
        self.at = self.at.saturating_add(budget).min(self.end);
        Progress { done: self.at, of: self.end, is_finished: self.at == self.end }
    }

    fn found(&self) -> u64 {
        self.at
    }
}

#[test]
fn a_slice_of_an_older_turn_does_nothing() {
    let mut runner = Runner::default();
    let first = runner.next_turn();
    assert_eq!(runner.slice(first, 1, || false), None);
    runner.begin(first, Some(Count { at: 0, end: 10 }));
    assert_eq!(runner.slice(first, 3, || false), Some(Progress { done: 3, of: 10, is_finished: false }));
    let second = runner.next_turn();
    assert_eq!(runner.slice(first, 3, || false), None);
    runner.begin(first, Some(Count { at: 0, end: 99 }));
    assert_eq!(runner.found(), Some(3), "stopped, it stays where it was");
    let mut looks = 0;
    let progress = runner.slice(second, 3, || {
        looks += 1;
        looks < 2
    });
    assert_eq!(progress, Some(Progress { done: 9, of: 10, is_finished: false }), "gone on with, two steps of time");
    assert!(runner.slice(second, 3, || true).unwrap().is_finished);
    runner.begin(second, None);
    assert_eq!(runner.found(), None);
}

#[test]
fn a_share_is_of_the_whole() {
    let share = |done, of, is_finished| Progress { done, of, is_finished }.share();
    assert!((share(3, 12, false) - 0.25).abs() < 1e-12);
    assert!((share(0, 0, false) - 1.0).abs() < 1e-12 && (share(3, 12, true) - 1.0).abs() < 1e-12);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn slices_find_what_one_go_finds(steps in prop::collection::vec(1_u64..5_000, 1..6)) {
        let search = || LadderSearch::new(Wish { fewest: 15, most: 40, ..Wish::new(Layout::InputReduced, figures("2.5 1.7 1.2 1.0").unwrap()) }).unwrap();
        let mut whole = search();
        prop_assert!(whole.advance(u64::MAX).is_finished);
        let mut runner = Runner::default();
        let turn = runner.next_turn();
        runner.begin(turn, Some(search()));
        for step in steps.iter().cycle() {
            if runner.slice(turn, *step, || false).unwrap().is_finished {
                break;
            }
        }
        prop_assert_eq!(runner.found(), Some(whole.found()));
    }
}
