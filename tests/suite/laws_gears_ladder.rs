//! From a printed ladder back to teeth: the search misses nothing, in whatever slices it is done.

use layshaft::gearing::identify::ladder::{Found, LadderSearch, Rank, Wish};
use layshaft::gearing::identify::printed::{Figure, figures};
use layshaft::gearing::part::Part;
use layshaft::gearing::{Gear, GearNumber, Layout, Mesh, Ratio};
use layshaft::sliced::Sliced;
use proptest::prelude::*;

/// A ratio printed with so many decimals, a half rounded up: whole numbers only, apart from the program's own rounding.
fn printed(driven: i128, driver: i128, decimals: u32) -> i128 {
    (2 * 10_i128.pow(decimals) * driven + driver) / (2 * driver)
}

fn figure(driven: i128, driver: i128, decimals: u32) -> Figure {
    Figure { value: Ratio::new(printed(driven, driver, decimals), 10_i128.pow(decimals)), decimals }
}

type Combination = (Option<Mesh>, Vec<Mesh>);

/// The slow way: every constant pair, every pair for every gear, kept where it prints so and all sums agree.
fn slow(wish: &Wish) -> Vec<Combination> {
    let counts = || wish.fewest..=wish.most;
    let meshes: Vec<Mesh> = counts().flat_map(|one| counts().filter_map(move |other| Mesh::new(one, other))).collect();
    let direct = |figure: &Figure| wish.layout != Layout::TwoShaft && figure.value == Ratio::from_integer(1);
    let geared: Vec<Figure> = wish.figures.iter().filter(|figure| !direct(figure)).copied().collect();
    let constants: Vec<Option<Mesh>> =
        if wish.layout == Layout::TwoShaft { vec![None] } else { meshes.iter().copied().map(Some).collect() };
    let mut all = Vec::new();
    for constant in constants {
        let (over, under) = constant.map_or((1, 1), |mesh| (i128::from(mesh.driven.count()), i128::from(mesh.driver.count())));
        let fitting = |figure: &Figure| {
            let scale = 10_i128.pow(figure.decimals);
            let wanted = (figure.value * scale).to_integer();
            let prints = |mesh: &&Mesh| {
                printed(over * i128::from(mesh.driven.count()), under * i128::from(mesh.driver.count()), figure.decimals) == wanted
            };
            meshes.iter().filter(prints).copied().collect::<Vec<_>>()
        };
        let mut partial: Vec<Vec<Mesh>> = vec![Vec::new()];
        for pairs in geared.iter().map(fitting) {
            let mut longer = Vec::new();
            for chosen in &partial {
                for mesh in &pairs {
                    let sums = || constant.iter().chain(chosen).chain([mesh]).map(|mesh| mesh.sum());
                    if sums().max() <= sums().min().map(|least| least + wish.tolerance) {
                        longer.push(chosen.iter().copied().chain([*mesh]).collect());
                    }
                }
            }
            partial = longer;
        }
        all.extend(partial.into_iter().map(|gears| (constant, gears)));
    }
    all
}

fn combination(found: &Found) -> Combination {
    let gears = found.gears.iter().filter_map(|gear| if let Gear::Mesh(mesh) = gear { Some(*mesh) } else { None });
    (found.constant, gears.collect())
}

fn key(combination: &Combination) -> Vec<(u16, u16)> {
    combination.0.iter().chain(&combination.1).map(|mesh| (mesh.driver.count(), mesh.driven.count())).collect()
}

fn finish(wish: Wish, slice: u64) -> LadderSearch {
    let mut search = LadderSearch::new(wish).unwrap();
    while !search.advance(slice).is_finished {}
    search
}

/// The search against the slow way: the same combinations, the same number, ranked.
#[track_caller]
fn check_complete(wish: &Wish) -> usize {
    let everything = Wish { keep: usize::MAX, ..wish.clone() };
    let search = finish(everything, 997);
    let outcome = search.found();
    let mut expected: Vec<_> = slow(wish).iter().map(key).collect();
    let mut found: Vec<_> = outcome.best.iter().map(|found| key(&combination(found))).collect();
    assert!(outcome.best.windows(2).all(|pair| pair[0].rank <= pair[1].rank));
    assert_eq!(outcome.count, expected.len() as u64);
    expected.sort();
    found.sort();
    assert!(found == expected, "{} found, {} expected", found.len(), expected.len());
    assert_eq!(outcome.nearest.is_some(), expected.is_empty());
    // The best few are the first of the whole ranking.
    let few = finish(Wish { keep: 5, ..wish.clone() }, 13);
    let ranks = |found: &[Found]| found.iter().map(|found| found.rank).collect::<Vec<Rank>>();
    assert_eq!(ranks(&few.found().best), ranks(&outcome.best[..outcome.best.len().min(5)]));
    assert_eq!(few.found().count, outcome.count);
    expected.len()
}

/// Five speeds with 12 to 60 teeth, as the brochure of an invented set would print them; it must be among what is found.
#[test]
fn five_speed_with_all_counts_misses_nothing() {
    let wish = Wish::new(Layout::InputReduced, figures("2.84 1.94 1.45 1.00 0.86").unwrap());
    let found = check_complete(&wish);
    assert!(found > 0);
    let whole = finish(Wish { keep: usize::MAX, ..wish }, 100);
    let truth: Vec<(u16, u16)> = vec![(22, 33), (19, 36), (24, 31), (28, 27), (35, 20)];
    assert!(whole.found().best.iter().any(|found| key(&combination(found)) == truth));
}

/// Four speeds to two decimals: 25/30 with 37/18, 32/23 and 28/27 is the one solution of all.
#[test]
fn four_speed_with_all_counts_misses_nothing() {
    let wish = Wish::new(Layout::InputReduced, figures("2.47 1.67 1.24 1.00").unwrap());
    assert_eq!(check_complete(&wish), 1);
    let found = finish(wish, 1);
    // One is left of one tooth sum; with sums a tooth apart, as helical pairs have them, there are more, so it proves no teeth.
    assert_eq!(
        found.found().sentence(),
        "one combination of one tooth sum rounds to these ratios; sums of helical pairs may differ by a tooth or two, and some lists cut figures off: count one pair to be sure"
    );
    let wish = Wish { tolerance: 1, ..Wish::new(Layout::InputReduced, figures("2.47 1.67 1.24 1.00").unwrap()) };
    assert!(finish(wish, u64::MAX).found().count > 1);
    assert_eq!(key(&combination(&found.found().best[0])), [(25, 30), (18, 37), (23, 32), (27, 28)]);
}

#[derive(Clone, Debug)]
struct Case {
    wish: Wish,
    truth: Option<Vec<(u16, u16)>>,
}

/// A ladder printed from real teeth (or, now and then, from none), with limits small enough for the slow way.
fn case() -> impl Strategy<Value = Case> {
    let teeth = 12_u16..=21;
    let gear = (12_u16..=21, 1_u32..=3);
    let layout = prop_oneof![Just(Layout::InputReduced), Just(Layout::OutputReduced), Just(Layout::TwoShaft)];
    (layout, teeth.clone(), teeth, proptest::collection::vec(gear, 1..=3), 0_u16..=2, any::<bool>(), 0_i128..20).prop_map(
        |(layout, a, b, gears, tolerance, direct, slip)| {
            let sum = a + b;
            let constant = (layout != Layout::TwoShaft).then_some((a, b));
            let (under, over) = constant.map_or((1, 1), |(a, b)| (i128::from(a), i128::from(b)));
            let pairs: Vec<(u16, u16)> = gears.iter().map(|(p, _)| (*p, sum.saturating_sub(*p))).collect();
            let real = pairs.iter().all(|(_, driven)| (12..=21).contains(driven)) && slip > 0;
            let mut figures: Vec<Figure> = pairs
                .iter()
                .zip(&gears)
                .map(|((p, q), (_, decimals))| figure(over * i128::from((*q).max(1)), under * i128::from(*p), *decimals))
                .collect();
            if slip == 0 {
                figures[0].value += Ratio::from_integer(2);
            }
            // A pair that happens to print exactly one is read as direct, so it is no part of the truth.
            let is_one = |figure: &Figure| layout != Layout::TwoShaft && figure.value == Ratio::from_integer(1);
            let lost = figures.iter().any(is_one);
            if direct && layout != Layout::TwoShaft {
                figures.push(Figure { value: Ratio::from_integer(1), decimals: 2 });
            }
            let truth = (real && !lost).then(|| constant.into_iter().chain(pairs).collect());
            Case { wish: Wish { fewest: 12, most: 21, tolerance, ..Wish::new(layout, figures) }, truth }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn search_equals_the_slow_way(case in case()) {
        prop_assume!(LadderSearch::new(case.wish.clone()).is_ok());
        check_complete(&case.wish);
        if let Some(truth) = case.truth {
            let search = finish(Wish { keep: usize::MAX, ..case.wish }, 50);
            prop_assert!(search.found().best.iter().any(|found| key(&combination(found)) == truth));
        }
    }

    #[test]
    fn known_counts_only_take_away(case in case(), driver in any::<bool>()) {
        prop_assume!(LadderSearch::new(case.wish.clone()).is_ok());
        let all = finish(Wish { keep: usize::MAX, ..case.wish.clone() }, 1_000);
        let Some(first) = all.found().best.first().cloned() else { return Ok(()) };
        let Some(gear) = first.gears.iter().position(|gear| matches!(gear, Gear::Mesh(_))) else { return Ok(()) };
        let teeth_of = |found: &Found| match found.gears[gear] {
            Gear::Mesh(mesh) => if driver { mesh.driver } else { mesh.driven },
            Gear::Direct | Gear::Printed(_) => unreachable!(),
        };
        let gear = GearNumber::at(gear);
        let part = if driver { Part::Driver(gear) } else { Part::Driven(gear) };
        let known = vec![(part, teeth_of(&first))];
        let fewer = finish(Wish { keep: usize::MAX, known, ..case.wish }, 1_000);
        let expected: Vec<_> = all.found().best.iter().filter(|found| teeth_of(found) == teeth_of(&first)).map(|found| key(&combination(found))).collect();
        let found: Vec<_> = fewer.found().best.iter().map(|found| key(&combination(found))).collect();
        prop_assert_eq!(found.len() as u64, fewer.found().count);
        prop_assert_eq!(found, expected);
    }

    #[test]
    fn any_text_is_figures_or_a_sentence(text in ".{0,60}") {
        let _ = figures(&text);
        let _ = layshaft::gearing::identify::reading::turns(&text);
    }
}
