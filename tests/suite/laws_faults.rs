//! What always holds of the ranking of causes, whatever is said and tried.

use layshaft::faults::{Table, Told, rank};
use proptest::prelude::*;

/// Anything that can be said and tried, by places in the table.
fn told() -> impl Strategy<Value = Told> {
    let table = Table::built_in();
    let (symptoms, conditions, tests) = (table.symptoms.len(), table.conditions.len(), table.tests.len());
    (
        proptest::collection::btree_set(0..symptoms, 1..4),
        proptest::collection::btree_set(0..conditions, 0..6),
        proptest::collection::btree_map(0..tests, any::<bool>(), 0..8),
    )
        .prop_map(|(symptoms, conditions, results)| Told { symptoms, conditions, results })
}

fn place(told: &Told, cause: &str) -> Option<usize> {
    rank(Table::built_in(), told).iter().position(|ranked| ranked.cause.id == cause)
}

proptest! {
    /// A test that speaks against a cause never brings it up the list, and one that speaks for it never down.
    #[test]
    fn a_result_never_goes_the_wrong_way(told in told(), chosen in any::<prop::sample::Index>()) {
        let table = Table::built_in();
        let ranked = rank(table, &told);
        let cause = ranked[chosen.index(ranked.len())].cause;
        for (test, shows) in &cause.shows {
            let mut untried = told.clone();
            untried.results.remove(test);
            let before = place(&untried, &cause.id);
            for answer in [true, false] {
                let mut tried = untried.clone();
                tried.results.insert(*test, answer);
                let after = place(&tried, &cause.id);
                prop_assert!(if answer == *shows { after <= before } else { after >= before }, "{}: {before:?} to {after:?}", cause.id);
            }
        }
    }

    /// The points are the sum of what is shown of them, and the list falls.
    #[test]
    fn points_are_the_sum_of_their_shares(told in told()) {
        let ranked = rank(Table::built_in(), &told);
        for one in &ranked {
            prop_assert_eq!(one.points, one.shares.iter().map(|share| share.points).sum::<i32>());
        }
        prop_assert!(ranked.is_sorted_by(|one, next| one.points >= next.points));
    }

    /// Whatever order it is said and ticked in, the answer is the same.
    #[test]
    fn the_order_of_what_is_said_does_not_matter(told in told(), seed in any::<u64>()) {
        let table = Table::built_in();
        let mut names: Vec<&str> = told.symptoms.iter().map(|at| table.symptoms[*at].id.as_str()).collect();
        names.extend(told.conditions.iter().map(|at| table.conditions[*at].id.as_str()));
        let mut lines: Vec<String> = told.results.iter().map(|(at, yes)| {
            format!("[x] {} | got {}", table.tests[*at].ask, if *yes { "yes" } else { "no" })
        }).collect();
        let straight = crate::faults_by_hand::section(&names.join("; "), &lines.join("\n"));
        let turn = usize::try_from(seed % 97).unwrap();
        let (by, many) = (turn % names.len().max(1), lines.len().max(1));
        names.rotate_left(by);
        lines.rotate_left(turn % many);
        lines.reverse();
        let other = crate::faults_by_hand::section(&names.join("; "), &lines.join("\n"));
        prop_assert_eq!(straight.answer, other.answer);
        prop_assert_eq!(straight.rows, other.rows);
    }
}
