//! The customer's page says what the sheet says, for the setup that was chosen.

use layshaft::job::{Job, SetupId, demo};
use layshaft::questions::customer::{self, CustomerPage};
use layshaft::questions::{Shelves, Source, analyse_job, sheet_of};
use layshaft::sheet::{Reader, Words};

/// The page of the demo job as `change` leaves it.
fn page(change: impl FnOnce(&mut Job)) -> CustomerPage {
    let mut job = demo::job();
    change(&mut job);
    let answers = analyse_job(&job, Shelves::default());
    let source = Source::new(&job, &answers, Shelves::default(), Reader { units: job.units, words: Words::Uk });
    customer::page(source, &sheet_of(source)).unwrap()
}

fn answer<'a>(answers: &'a [(String, String)], question: &str) -> &'a str {
    answers.iter().find(|(asked, _)| asked == question).map_or("not asked", |(_, answer)| answer)
}

#[test]
fn the_first_setup_is_shown_where_none_is_chosen() {
    let page = page(|_| ());
    assert_eq!((page.letter, page.setup.as_str()), ('A', "As it came"));
    assert_eq!(answer(&page.fitted, "Crown wheel and pinion"), "43/11 = 3.909");
    assert_eq!(answer(&page.fitted, "Tyre"), "185/70R14");
}

#[test]
fn the_gears_of_the_chosen_setup_stand_in_the_table() {
    let page = page(|job| job.for_customer = Some(SetupId(3)));
    assert_eq!((page.letter, page.setup.as_str()), ('C', "Five-speed, overdrive 5th"));
    assert!(page.gears.iter().all(|line| line.len() == page.heads.len()));
    let names: Vec<&str> = page.gears.iter().map(|line| line[0].as_str()).collect();
    assert_eq!(names, ["1st", "2nd", "3rd", "4th", "5th", "Reverse"]);
    // By hand: 33/22 × 36/19 = 1188/418 = 2.8421; 33/22 × 20/35 = 660/770 = 0.8571.
    assert_eq!((page.gears[0][1].as_str(), page.gears[4][1].as_str()), ("2.842", "0.857"));
    // By hand: 2.8421 × 43/11 = 11.110.
    assert_eq!(page.gears[0][2], "11.110");
}

#[test]
fn what_to_expect_is_set_against_the_first_setup() {
    let page = page(|job| job.for_customer = Some(SetupId(3)));
    let cruise = answer(&page.expect, "Engine at 70 mph in top gear");
    // By hand: the fifth gear turns the engine 1/7 slower than a direct top; 3,907 ÷ 7 = 558.
    assert!(cruise.ends_with("rpm, 558 fewer than setup A"), "{cruise}");
    assert_eq!(answer(&page.expect, "Deepest drop on an upward change"), "32 % of the rpm, 1st to 2nd");
}

#[test]
fn cautions_of_the_chosen_setup_alone_are_named_with_their_place() {
    let five = page(|job| job.for_customer = Some(SetupId(3)));
    assert!(five.cautions.iter().any(|caution| caution.starts_with("Gears, Drop on the upward change")), "{:?}", five.cautions);
    assert!(!page(|_| ()).cautions.iter().any(|caution| caution.starts_with("Gears,")));
}

#[test]
fn a_setup_that_went_away_leaves_the_first_on_the_page() {
    assert_eq!(page(|job| job.for_customer = Some(SetupId(77))).letter, 'A');
}

#[test]
fn an_empty_job_has_a_page_too() {
    let page = page(|job| *job = demo::empty(job.units));
    assert_eq!(page.gears.len(), 4);
    assert!(page.gears.iter().flatten().skip(1).any(|text| text == "–"));
}
