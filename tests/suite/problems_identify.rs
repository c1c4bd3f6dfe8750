//! What the bench is told when counts, turns or printed ratios cannot be, and what would do.

use layshaft::gearing::identify::Candidate;
use layshaft::gearing::identify::counts::{Counted, by_counts};
use layshaft::gearing::identify::ladder::{LadderSearch, Wish};
use layshaft::gearing::identify::printed::figures;
use layshaft::gearing::identify::reading::{Reading, by_eye, turns};
use layshaft::gearing::identify::tooth_pairs::{Counts, pairs_in};
use layshaft::gearing::identify::turns::{Turned, axles_by_turns, by_turns};
use layshaft::gearing::part::Part;
use layshaft::gearing::speeds::Selected;
use layshaft::gearing::{FinalDrive, Gearbox, Layout, Mesh, Ratio, Teeth};
use layshaft::problem::Explain;
use layshaft::sliced::{Progress, Sliced};

use crate::any_gearbox::built;
use crate::nth;

#[track_caller]
fn check(error: &impl Explain, what: &str, what_to_do: &str) {
    assert_eq!(error.what(), what);
    assert_eq!(error.what_to_do(), what_to_do);
}

fn boxes() -> [Gearbox; 3] {
    [
        built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None),
        built(Layout::InputReduced, Some((27, 28)), &[(18, 37), (23, 32), (26, 29), (0, 0)], None),
        built(Layout::InputReduced, Some((27, 28)), &[(18, 37), (24, 31), (27, 28), (0, 0)], None),
    ]
}

fn candidates(boxes: &[Gearbox; 3]) -> Vec<Candidate<'_>> {
    ["wide", "close", "closer"].into_iter().zip(boxes).map(|(name, gearbox)| Candidate { name, gearbox }).collect()
}

fn counted(at: Part, teeth: u16) -> Counted {
    Counted { at: Some(at), teeth: Teeth::new(teeth).unwrap() }
}

fn whole(value: i128) -> Ratio {
    Ratio::from_integer(value)
}

#[test]
fn counts_that_no_set_has() {
    let boxes = boxes();
    let found = by_counts(&[counted(Part::ConstantDriver, 25), counted(Part::Driven(nth(1)), 36)], &candidates(&boxes));
    check(
        found.nothing.as_ref().unwrap(),
        "no set has all these counts; wide comes nearest, off by one count",
        "count again: it has 37 for 36",
    );
    assert_eq!(found.next, None);
}

#[test]
fn counts_that_cannot_exist_together() {
    let boxes = boxes();
    let all = [
        counted(Part::ConstantDriver, 25),
        counted(Part::ConstantDriven, 30),
        counted(Part::Driver(nth(2)), 23),
        counted(Part::Driven(nth(2)), 37),
    ];
    let found = by_counts(&all, &candidates(&boxes));
    check(
        found.clashes.first().unwrap(),
        "the constant pair sums to 55 and the 2nd pair to 60, which cannot share one centre distance",
        "count both again: with 55 the other sum would be 53 to 57; or parts of two sets are mixed",
    );
}

/// Of close and closer, 2nd and 3rd tell them apart; the one that stands first is asked for. A gear that lies by itself counts too.
#[test]
fn next_gear_to_count() {
    let boxes = boxes();
    let found = by_counts(&[Counted { at: None, teeth: Teeth::new(37).unwrap() }], &candidates(&boxes));
    assert_eq!(found.fitting().count(), 3);
    let next = found.next.unwrap();
    assert_eq!(next.outcomes.values().map(Vec::len).max(), Some(2));
    let found = by_counts(&[counted(Part::ConstantDriver, 27)], &candidates(&boxes));
    let next = found.next.unwrap();
    assert_eq!(next.part, Part::Driver(nth(2)));
    assert_eq!(next.outcomes.len(), 2);
}

#[test]
fn turns_that_tell_nothing() {
    check(&turns("").unwrap_err(), "no turns are given", "type turns up to 100,000, such as 10 or 4.2 or 4 1/5");
    check(&turns("ten").unwrap_err(), "“ten” is not a number of turns", "type turns up to 100,000, such as 10 or 4.2 or 4 1/5");
    check(
        &Reading::new(whole(0), whole(4), by_eye()).unwrap_err(),
        "an end that does not turn tells no ratio",
        "turn on until both ends have moved, and type both counts",
    );
    check(
        &Reading::new(whole(1), turns("0.4").unwrap(), turns("1/2").unwrap()).unwrap_err(),
        "an uncertainty of 0.5 turns is no smaller than the 0.4 turns counted",
        "turn further: with 13 turns of the other end a tenth of the reading is uncertain",
    );
    check(
        &Reading::new(whole(1), whole(1), whole(-1)).unwrap_err(),
        "an uncertainty cannot be less than nothing",
        "type 0 for an exact count, or a part of a turn such as 0.05",
    );
}

/// Ten turns gave 4 and about a fifth, to a twentieth: 10/4.25 = 2.353 to 10/4.15 = 2.410, by hand.
#[test]
fn ten_turns_of_the_input() {
    let reading = Reading::new(whole(10), turns("4 1/5").unwrap(), by_eye()).unwrap();
    let interval = reading.interval();
    assert_eq!((interval.least, interval.greatest), (Ratio::new(40, 17), Ratio::new(200, 83)));
    let boxes = boxes();
    let found = by_turns(&[Turned { selected: Some(Selected::Gear(nth(1))), interval }], &candidates(&boxes));
    // Firsts are 2.467, 2.132 and 2.132: none fits, and wide is 2.4 % away from the interval.
    let nearest = found.nearest().unwrap();
    assert_eq!(nearest.candidate, 0);
    assert!((nearest.outside - 0.023_67).abs() < 1e-4, "{}", nearest.outside);
    assert_eq!(found.next, None);
}

/// One wheel held, four turns of the free one, 7.85 of the pinion: the ratio is 2 · 7.85 / 4 = 3.925, so 43 to 11 (3.909) fits to a
/// twentieth of a turn of the pinion (3.9 to 3.95) and 41 to 11 (3.727) does not.
#[test]
fn axle_with_one_wheel_held() {
    let reading = Reading::with_uncertainties(turns("7.85").unwrap(), whole(4), by_eye(), whole(0)).unwrap();
    let interval = reading.interval_with_one_wheel_held();
    assert_eq!((interval.least, interval.greatest), (Ratio::new(39, 10), Ratio::new(79, 20)));
    let drives = [(11, 41), (11, 43), (9, 35)].map(|(driver, driven)| FinalDrive::Pair(Mesh::new(driver, driven).unwrap()));
    let found = axles_by_turns(interval, &drives);
    assert_eq!(found.fitting().collect::<Vec<_>>(), [1]);
    let pairs = pairs_in(&interval, &Counts::of_axle()).inside;
    // By hand: pinion 8 wants 31.2 to 31.6, none; 9 wants 35.1 to 35.55, none; 10 wants 39 to 39.5: 39 is the smallest.
    assert_eq!(pairs.first(), Mesh::new(10, 39).as_ref());
    assert!(pairs.contains(&Mesh::new(11, 43).unwrap()));
    let nothing = pairs_in(&interval, &Counts { driver: 9..=9, driven: 25..=61 });
    assert_eq!((nothing.inside.len(), nothing.nearest), (0, Mesh::new(9, 35)));
}

#[test]
fn printed_ratios_that_cannot_be() {
    check(
        &figures(" ").unwrap_err(),
        "no printed ratios are given",
        "type the ratios as they are printed, lowest gear first, such as 2.47 1.67 1.24 1.00",
    );
    check(
        &figures("2.47 1.6x").unwrap_err(),
        "“1.6x” is not a ratio from 0.1 to 20",
        "type the ratios as they are printed, lowest gear first, such as 2.47 1.67 1.24 1.00",
    );
    check(&figures("9 8 7 6 5 4 3 2 1").unwrap_err(), "9 ratios are more than a gearbox has", "type the forward gears only, at most eight");
    let wish = |text: &str| Wish::new(Layout::InputReduced, figures(text).unwrap());
    check(&LadderSearch::new(wish("1.00")).unwrap_err(), "a direct gear tells nothing of the teeth", "add the ratio of a lower gear");
    check(
        &LadderSearch::new(Wish { fewest: 40, most: 20, ..wish("2.47") }).unwrap_err(),
        "no gear has 40 to 20 teeth",
        "type limits from 8 to 150, the fewer first, such as 12 to 60",
    );
    check(
        &LadderSearch::new(Wish { tolerance: 9, ..wish("2.47") }).unwrap_err(),
        "tooth sums that differ by 9 do not share a centre distance",
        "allow 0 to 4",
    );
}

/// Between 12 and 20 teeth a pair gives at most 20/12, and two of them 25/9 = 2.778: 3.00 cannot be had, and the nearest is just that.
#[test]
fn ladder_with_no_solution_tells_the_nearest() {
    let wish = Wish { fewest: 12, most: 20, ..Wish::new(Layout::InputReduced, figures("3.00 1.00").unwrap()) };
    let mut search = LadderSearch::new(wish).unwrap();
    assert_eq!(search.advance(1), Progress { done: 1, of: 81, is_finished: false });
    assert_eq!(search.found().sentence(), "0 found so far");
    assert_eq!(search.found().nearest, None);
    assert!(search.advance(u64::MAX).is_finished);
    let outcome = search.found();
    assert_eq!(outcome.sentence(), "no combination of one tooth sum inside the limits rounds to these ratios");
    check(
        &outcome.nearest.unwrap(),
        "no combination of one tooth sum inside the limits rounds to these ratios",
        "widen the limits or check the figures; the nearest is 12 to 20, 12 to 20, whose 1st is 2.7778 where 3.00 is printed",
    );
}

#[test]
fn several_solutions_are_said_plainly() {
    let mut search = LadderSearch::new(Wish::new(Layout::InputReduced, figures("2.5 1.7 1.2 1.0").unwrap())).unwrap();
    while !search.advance(64).is_finished {}
    let outcome = search.found();
    assert!(outcome.count > 1 && outcome.complete);
    assert!(outcome.sentence().ends_with("combinations of one tooth sum round to these ratios: the figures alone cannot tell them apart"));
    let sets: Vec<Gearbox> = outcome.best.iter().map(|found| found.gearbox(search.layout()).unwrap()).collect();
    assert!(sets.iter().all(|gearbox| layshaft::gearing::check::doubts(gearbox).is_empty()));
}

#[test]
fn one_ratio_is_read_alike_in_a_ladder_and_alone() {
    for (text, value) in
        [(".67", Ratio::new(67, 100)), ("2.47 : 1", Ratio::new(247, 100)), ("2,47:1", Ratio::new(247, 100)), ("2.47", Ratio::new(247, 100))]
    {
        assert_eq!(layshaft::gearing::read::final_drive(text), Ok(FinalDrive::Plain(value)), "{text}");
        assert_eq!(figures(text).unwrap().first().map(|figure| figure.value), Some(value), "{text}");
    }
    let shown: Vec<String> =
        figures("2.47 : 1  1.67:1 .83 : 1").unwrap().iter().map(layshaft::gearing::identify::printed::Figure::shown).collect();
    assert_eq!(shown, ["2.47", "1.67", "0.83"]);
}
