//! The customer's page says what the sheet says, for the setup that was chosen.

use layshaft::job::{Field, Job, SetupId, demo};
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
    // By hand: the fifth gear turns the engine 1/7 slower than a direct top, 3,906.5 ÷ 7 = 558; as both are shown, 3,907 − 3,348 = 559,
    // which is what the answer sentence and the few words say too.
    assert!(cruise.ends_with("rpm, 559 fewer than with “As it came”"), "{cruise}");
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

#[test]
fn why_is_said_with_the_names_of_the_setups() {
    let why = page(|job| job.for_customer = Some(SetupId(3))).why;
    // By hand: the five-speed's top is 20/35 ÷ 22/33 = 0.857 of the engine's turns.
    assert!(why.iter().any(|sentence| sentence.starts_with("“Five-speed, overdrive 5th” has 5 gears, top 0.857")), "{why:?}");
    assert!(why.iter().all(|sentence| sentence.contains("“Five-speed, overdrive 5th”") && !sentence.contains('[')), "{why:?}");
    assert!(!why.iter().any(|sentence| sentence.contains("case")), "whose case it is, is the shop's matter: {why:?}");
    let alone = page(|job| job.setups.truncate(1)).why;
    assert!(alone.iter().all(|sentence| !sentence.contains("Close") && !sentence.contains('[')), "{alone:?}");
}

/// With 60 hp the demo car does not reach what its top gear would do at 6,500 rpm.
#[test]
fn a_speed_that_the_car_does_not_reach_is_said_so() {
    let page = page(|job| job.pull.peak_power.text = "60".into());
    let speeds: Vec<&str> = page.gears.iter().map(|line| line[3].as_str()).collect();
    assert!(speeds[0].ends_with("mph") && speeds[0].starts_with("47.2"), "{speeds:?}");
    assert!(speeds[3].starts_with("past its top speed, "), "{speeds:?}");
}

/// Whatever is left blank, four fields at a time since each page takes a whole sheet: no sentence on the page asks for it.
#[test]
fn no_prompt_of_an_empty_field_is_on_the_page() {
    for fields in Field::all(&demo::job()).chunks(4) {
        let page = page(|job| fields.iter().for_each(|field| job.type_text(*field, String::new())));
        let said = format!("{:?}{:?}{:?}{:?}{:?}", page.fitted, page.why, page.gears, page.expect, page.speedometer);
        for prompt in ["needs ", "not known", "Press ", "to be filled", "type ", "missing"] {
            assert!(!said.contains(prompt), "{fields:?}: “{prompt}” in {said}");
        }
    }
    let empty = page(|job| *job = demo::empty(job.units));
    assert!(empty.fitted.is_empty() && empty.why.is_empty() && empty.offer.is_empty(), "{empty:?}");
}

#[test]
fn the_note_and_the_quote_stand_on_it_and_the_notes_of_the_shop_do_not() {
    let page = page(|job| {
        job.notes = "pays late".into();
        job.quote.note = " Ready on Friday.\n\nBring the old box. ".into();
        job.quote.lines = "Labour: 450 EUR\nSeal: 12.50".into();
        job.quote.valid = "31 December".into();
    });
    assert_eq!(page.note, ["Ready on Friday.", "Bring the old box."]);
    // By hand: 450 + 12.50 = 462.50.
    assert_eq!((page.offer.total().as_str(), page.offer.valid.as_str()), ("462.50 EUR", "31 December"));
    assert!(!format!("{page:?}").contains("pays late"));
}
