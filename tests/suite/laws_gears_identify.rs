//! Identifying what lies on the bench: the true set is never lost, and the search back to tooth counts misses nothing.

use layshaft::gearing::identify::Candidate;
use layshaft::gearing::identify::counts::{Counted, by_counts};
use layshaft::gearing::identify::ladder::{Found, LadderSearch, Progress, Rank, Wish};
use layshaft::gearing::identify::printed::{Figure, by_printed, figures};
use layshaft::gearing::identify::reading::{Reading, size};
use layshaft::gearing::identify::tooth_pairs::{Counts, pairs_in};
use layshaft::gearing::identify::turns::{Turned, axles_by_turns, by_turns};
use layshaft::gearing::part::Part;
use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{FinalDrive, Gear, Gearbox, Layout, Mesh, Ratio, teeth::decimal};
use proptest::prelude::*;

use crate::any_gearbox::{built, gearbox, mesh};

fn config(cases: u32) -> ProptestConfig {
    ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() }
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
    #![proptest_config(config(256))]

    #[test]
    fn turns_always_contain_the_true_set(boxes in proptest::collection::vec(gearbox(), 1..12), which in any::<prop::sample::Index>(), gear in any::<prop::sample::Index>(), input in 5_i128..40, error in error(), known in any::<bool>()) {
        let at = which.index(boxes.len());
        let gear = gear.index(boxes[at].gears().len());
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

fn finish(wish: Wish, slice: usize) -> LadderSearch {
    let mut search = LadderSearch::new(wish).unwrap();
    while search.advance(slice) != Progress::Finished {}
    search
}

/// The search against the slow way: the same combinations, the same number, ranked.
#[track_caller]
fn check_complete(wish: &Wish) -> usize {
    let everything = Wish { keep: usize::MAX, ..wish.clone() };
    let search = finish(everything, 997);
    let outcome = search.outcome();
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
    assert_eq!(ranks(few.outcome().best), ranks(&outcome.best[..outcome.best.len().min(5)]));
    assert_eq!(few.outcome().count, outcome.count);
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
    assert!(whole.outcome().best.iter().any(|found| key(&combination(found)) == truth));
}

/// Four speeds to two decimals: 25/30 with 37/18, 32/23 and 28/27 is the one solution of all.
#[test]
fn four_speed_with_all_counts_misses_nothing() {
    let wish = Wish::new(Layout::InputReduced, figures("2.47 1.67 1.24 1.00").unwrap());
    assert_eq!(check_complete(&wish), 1);
    let found = finish(wish, 1);
    assert_eq!(found.outcome().sentence(), "one combination of teeth fits");
    assert_eq!(key(&combination(&found.outcome().best[0])), [(25, 30), (18, 37), (23, 32), (27, 28)]);
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
    #![proptest_config(config(64))]

    #[test]
    fn search_equals_the_slow_way(case in case()) {
        prop_assume!(LadderSearch::new(case.wish.clone()).is_ok());
        check_complete(&case.wish);
        if let Some(truth) = case.truth {
            let search = finish(Wish { keep: usize::MAX, ..case.wish }, 50);
            prop_assert!(search.outcome().best.iter().any(|found| key(&combination(found)) == truth));
        }
    }

    #[test]
    fn known_counts_only_take_away(case in case(), driver in any::<bool>()) {
        prop_assume!(LadderSearch::new(case.wish.clone()).is_ok());
        let all = finish(Wish { keep: usize::MAX, ..case.wish.clone() }, 1_000);
        let Some(first) = all.outcome().best.first().cloned() else { return Ok(()) };
        let Some(gear) = first.gears.iter().position(|gear| matches!(gear, Gear::Mesh(_))) else { return Ok(()) };
        let teeth_of = |found: &Found| match found.gears[gear] {
            Gear::Mesh(mesh) => if driver { mesh.driver } else { mesh.driven },
            Gear::Direct => unreachable!(),
        };
        let part = if driver { Part::Driver(gear) } else { Part::Driven(gear) };
        let known = vec![(part, teeth_of(&first))];
        let fewer = finish(Wish { keep: usize::MAX, known, ..case.wish }, 1_000);
        let expected: Vec<_> = all.outcome().best.iter().filter(|found| teeth_of(found) == teeth_of(&first)).map(|found| key(&combination(found))).collect();
        let found: Vec<_> = fewer.outcome().best.iter().map(|found| key(&combination(found))).collect();
        prop_assert_eq!(found.len() as u64, fewer.outcome().count);
        prop_assert_eq!(found, expected);
    }

    #[test]
    fn any_text_is_figures_or_a_sentence(text in ".{0,60}") {
        let _ = figures(&text);
        let _ = layshaft::gearing::identify::reading::turns(&text);
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
