//! What is typed at the bench and cannot be used is said.

use layshaft::gearing::{Gearbox, Layout};
use layshaft::job::Bench;
use layshaft::problem::{Explain, Severity};
use layshaft::questions::identify::answer::{from_counts, limit_problems, mixed};

use crate::any_gearbox::built;

#[test]
fn counts_of_unknown_place_are_counts() {
    let said = |text: &str| {
        let mut problems = Vec::new();
        from_counts(&Bench { anywhere: text.into(), ..Bench::default() }, &[], &mut problems);
        problems.into_iter().map(|problem| problem.sentence()).collect::<Vec<_>>()
    };
    assert_eq!(said("18, 37 23"), [""; 0]);
    assert_eq!(said("abc"), ["“abc” is not a tooth count. Type a count from 8 to 150."]);
    assert_eq!(said("18.5"), ["“18.5” is not a tooth count. Type a count from 8 to 150."]);
    assert_eq!(said("18 5"), ["Gears of 8 to 150 teeth only; “5” was typed. Check the count."]);
}

#[test]
fn a_bad_tooth_limit_says_which_limit_is_taken() {
    let bench = |fewest: &str, most: &str| Bench { fewest: fewest.into(), most: most.into(), ..Bench::default() };
    assert_eq!(limit_problems(&bench("15", "")), []);
    let problems = limit_problems(&bench("5", "200"));
    let said: Vec<String> = problems.iter().map(layshaft::problem::Problem::sentence).collect();
    assert!(problems.iter().all(|problem| problem.severity == Severity::Caution));
    assert!(said[0].contains("“5” was typed: the usual limit of 12 is taken."), "{said:?}");
    assert!(said[1].contains("“200” was typed: the usual limit of 60 is taken."), "{said:?}");
    let figures = || layshaft::gearing::identify::printed::figures("2.47 1.67 1.24 1.00").unwrap();
    for (fewest, most) in [("5", "40"), ("12", "200"), ("few", "many")] {
        assert!(layshaft::questions::identify::answer::ladder_search(&bench(fewest, most), figures()).is_ok(), "{fewest} to {most}");
    }
}

#[test]
fn a_set_that_is_gone_is_named() {
    let wide = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None);
    let find = |name: &str| (name == "wide").then(|| Gearbox::clone(&wide));
    let bench = |cluster: &str, input: &str| Bench { mix_cluster: cluster.into(), mix_input: input.into(), ..Bench::default() };
    assert!(mixed(&bench("", "wide"), find).is_none());
    assert!(mixed(&bench("wide", ""), find).unwrap().is_ok());
    for gone in [bench("sold", ""), bench("wide", "sold")] {
        let why = mixed(&gone, find).unwrap().unwrap_err();
        assert_eq!(
            (why.what().as_str(), why.what_to_do().as_str()),
            ("“sold” is no gear set of the catalogue any longer", "choose another set")
        );
    }
}
