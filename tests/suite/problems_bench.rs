//! What is typed at the bench and cannot be used is said.

use layshaft::catalogue::{Column, Entry, PartKind};
use layshaft::gearing::{Gearbox, Layout};
use layshaft::job::Bench;
use layshaft::problem::{Explain, Problem, Severity};
use layshaft::questions::Known;
use layshaft::questions::identify::answer::wish;
use layshaft::questions::identify::read::Evidence;
use layshaft::questions::mesh::answer::mixed;

use crate::any_gearbox::built;

fn said(bench: &Bench) -> Vec<String> {
    Evidence::of(bench).problems.iter().map(Problem::sentence).collect()
}

#[test]
fn counts_of_unknown_place_are_counts() {
    let said = |text: &str| said(&Bench { anywhere: text.into(), ..Bench::default() });
    assert_eq!(said("18, 37 23"), [""; 0]);
    assert_eq!(said("abc"), ["“abc” is not a tooth count. Type a count from 8 to 150."]);
    assert_eq!(said("18.5"), ["“18.5” is not a tooth count. Type a count from 8 to 150."]);
    assert_eq!(said("18 5"), ["Gears of 8 to 150 teeth only; “5” was typed. Check the count."]);
}

#[test]
fn a_bad_tooth_limit_says_which_limit_is_taken() {
    let bench = |fewest: &str, most: &str| Bench {
        fewest: fewest.into(),
        most: most.into(),
        ladder: "2.47 1.67 1.24 1.00".into(),
        ..Bench::default()
    };
    assert_eq!(said(&bench("15", "")), [""; 0]);
    let evidence = Evidence::of(&bench("5", "200"));
    let said = said(&bench("5", "200"));
    assert!(evidence.problems.iter().all(|problem| problem.severity == Severity::Caution));
    assert!(said[0].contains("“5” was typed: the usual limit of 12 is taken."), "{said:?}");
    assert!(said[1].contains("“200” was typed: the usual limit of 60 is taken."), "{said:?}");
    for (fewest, most, limits) in [("5", "40", (12, 40)), ("12", "200", (12, 60)), ("few", "many", (12, 60))] {
        let wish = wish(&Evidence::of(&bench(fewest, most))).unwrap();
        assert_eq!((wish.fewest, wish.most), limits, "{fewest} to {most}");
    }
}

/// Every problem stands at the field that is wrong.
#[test]
fn problems_stand_at_their_field() {
    let axle = |shaft: &str, wheel: &str, uncertainty: &str| {
        let bench =
            Bench { shaft_turns: shaft.into(), wheel_turns: wheel.into(), wheel_uncertainty: uncertainty.into(), ..Bench::default() };
        Evidence::of(&bench).problems.into_iter().map(|problem| problem.field.path()).collect::<Vec<_>>()
    };
    assert_eq!(axle("", "", ""), [""; 0]);
    assert_eq!(axle("10", "2 1/2", ""), [""; 0]);
    assert_eq!(axle("plenty", "2 1/2", ""), ["bench-shaft-turns"]);
    assert_eq!(axle("10", "", ""), ["bench-wheel-turns"]);
    assert_eq!(axle("10", "0", ""), ["bench-wheel-turns"]);
    assert_eq!(axle("10", "2", "3"), ["bench-wheel-uncertainty"]);
}

#[test]
fn a_set_that_is_gone_is_named() {
    let wide: Gearbox = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None);
    let shelf = [Known { entry: Entry::new(PartKind::GearSet).with(Column::Name, "wide"), part: wide }];
    let bench = |cluster: &str, input: &str| Bench { mix_cluster: cluster.into(), mix_input: input.into(), ..Bench::default() };
    assert!(mixed(&bench("", "wide"), &shelf).is_none());
    assert!(mixed(&bench("wide", ""), &shelf).unwrap().is_ok());
    for gone in [bench("sold", ""), bench("wide", "sold")] {
        let why = mixed(&gone, &shelf).unwrap().unwrap_err();
        assert_eq!(
            (why.what().as_str(), why.what_to_do().as_str()),
            ("“sold” is no gear set of the catalogue any longer", "choose another set")
        );
    }
}
