//! The tag of a finished box: what stands on it, and that its code is read back as the link to it, by another program's reader.

use layshaft::catalogue::Catalogue;
use layshaft::job::{Job, Setup, demo, link};
use layshaft::qr::{MARGIN, Square};
use layshaft::questions::tag::{Tag, tag};
use layshaft::questions::{OnShelf, Source, analyse_job, sheet_of};
use layshaft::sheet::{Reader, Words};
use layshaft::units::System;
use proptest::prelude::*;

use crate::any_job::job as any_job;

fn tag_of(job: &Job) -> Option<Tag> {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let answers = analyse_job(job, shelf.shelves());
    let source = Source::new(job, &answers, shelf.shelves(), Reader { units: job.units, words: Words::Us });
    tag(source, &sheet_of(source))
}

/// What a reader of another make sees in the square, four pixels a module, on white.
fn read_back(square: &Square) -> String {
    const PIXELS: usize = 4;
    let side = square.side() * PIXELS;
    let is_dark = |x: usize, y: usize| {
        let module = |at: usize| (at / PIXELS).checked_sub(MARGIN);
        module(x).zip(module(y)).and_then(|(x, y)| square.rows.get(y)?.get(x).copied()).unwrap_or(false)
    };
    let mut image = rqrr::PreparedImage::prepare_from_bitmap(side, side, is_dark);
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1);
    grids[0].decode().unwrap().1
}

/// Setup A of the demo job; its ratios are those of the gear table.
#[test]
fn the_demos_box_has_a_tag() {
    let job = demo::job();
    let tag = tag_of(&job).unwrap();
    assert_eq!(tag.about[..2], [job.title.clone(), job.car.clone()]);
    let box_of = &job.setups[0].gearbox;
    assert_eq!(tag.gears[0][..2], ["Constant pair".to_owned(), box_of.constant.clone()]);
    assert_eq!(tag.gears[1][..2], ["1st".to_owned(), box_of.gears[0].clone()]);
    assert_eq!(tag.gears.iter().map(|gear| gear[2].as_str()).collect::<Vec<_>>()[..5], ["", "2.467", "1.670", "1.244", "1.000"]);
    assert!(tag.fitted.iter().any(|(part, what)| part == "Ring and pinion" && what.starts_with("43/11 = 3.909")), "{:?}", tag.fitted);
}

/// What stands in an empty metric job is not what a job opens as that leaves it out: the speed of the dial's check, for one.
#[test]
fn an_empty_job_comes_back_in_either_units() {
    for units in [System::Inch, System::Metric] {
        let job = demo::empty(units);
        assert_eq!(link::open(&link::short_fragment(&job).unwrap()), Ok(job));
    }
}

/// The oil as it is typed, in place of the room to write it.
#[test]
fn its_oil_is_among_what_is_fitted() {
    let mut job = demo::job();
    assert_eq!(tag_of(&job).unwrap().room_for_oil(), " Oil:");
    job.setups[0].swap.oil = "GL-4 80W, 1.6 l".into();
    let tag = tag_of(&job).unwrap();
    assert_eq!(tag.room_for_oil(), "");
    assert!(tag.fitted.contains(&("Oil of the gearbox".into(), "GL-4 80W, 1.6 l".into())), "{:?}", tag.fitted);
    job.setups[0].swap.overdrive_oil = "30 engine oil, 0.9 l".into();
    job.setups[0].swap.axle_oil = "GL-5 90, 1.4 l".into();
    let fitted = tag_of(&job).unwrap().fitted;
    let oils: Vec<&str> = fitted.iter().filter_map(|(part, what)| part.starts_with("Oil of the").then_some(what.as_str())).collect();
    assert_eq!(oils, ["GL-4 80W, 1.6 l", "30 engine oil, 0.9 l", "GL-5 90, 1.4 l"]);
}

#[test]
fn the_code_on_it_is_read_back_as_the_link_to_this_box_alone() {
    let job = Job { customer: "Somebody".into(), notes: "knocks in reverse".into(), ..demo::job() };
    let tag = tag_of(&job).unwrap();
    let address = format!("https://shop.example/layshaft/{}", link::short_fragment(&tag.carried).unwrap());
    let read = read_back(&Square::of(&address).unwrap());
    assert_eq!(read, address);
    let opened = link::open(&read[read.find('#').unwrap()..]).unwrap();
    assert_eq!(opened, tag.carried);
    assert_eq!((opened.setups.len(), opened.customer.as_str(), opened.notes.as_str()), (1, "", ""));
    // A module of a code of 56 mm is to be half a millimetre at least, for a phone held in the hand (common practice, no published source).
    assert!(Square::of(&address).unwrap().side() <= 112, "{} characters", address.len());
}

#[test]
fn an_empty_job_has_none_and_a_long_text_no_code() {
    assert_eq!(tag_of(&demo::empty(layshaft::units::System::Metric)), None);
    assert_eq!(Square::of(&"9".repeat(9_000)), None);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    /// Whatever is typed, the short link opens as the job that it was made of.
    #[test]
    fn a_short_link_says_all_that_is_carried(job in any_job()) {
        prop_assert_eq!(link::open(&link::short_fragment(&job).unwrap()).unwrap(), job);
    }

    /// Any text comes back out of its square.
    #[test]
    fn any_text_is_read_back(text in "[ -~]{1,300}") {
        prop_assert_eq!(read_back(&Square::of(&text).unwrap()), text);
    }

    /// The outline has as many dark modules as the square.
    #[test]
    fn the_outline_is_the_square(text in "[a-z]{1,40}") {
        let square = Square::of(&text).unwrap();
        let dark: usize = square.rows.iter().flatten().filter(|dark| **dark).count();
        let path = square.path();
        let runs = path.split('h').skip(1).filter_map(|run| run.split('v').next()?.parse::<usize>().ok());
        prop_assert_eq!(runs.sum::<usize>(), dark);
    }
}

#[test]
fn a_setup_of_nothing_carries_nothing() {
    assert_eq!(serde_json::to_value(Setup::default()).unwrap().as_object().unwrap().len(), 11, "a member more: is it needed in a link?");
}
