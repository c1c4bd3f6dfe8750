//! The parts that are in the car: a wish may ask that they stay, that few of them change, or that what comes goes into their case.

use std::sync::Arc;

use layshaft::catalogue::{Catalogue, Column, Entry};
use layshaft::finder::{Found, Given, Measure, Table};
use layshaft::gearing::Layout;
use layshaft::job::{Job, Wish, WishKind, Wishes};
use layshaft::questions::find::onto_sheet::{self, Into};
use layshaft::questions::find::{Asked, words};
use layshaft::questions::{OnShelf, Source, analyse_job};
use layshaft::sheet::{Reader, Words};
use layshaft::units::System;

use crate::any_job::typed;
use crate::finder_ground::{axle, catalogue, gear_set, search, tyre};

/// A rear-drive car with a box, an axle and a tyre that no shelf has.
fn car() -> Job {
    let mut job = typed(Layout::InputReduced, "26/29", &["35/20", "30/25", "direct"], ["", ""], "39/10", "165/80R13");
    job.setups[0].gearbox.name = "the customer’s own".into();
    job
}

/// Boxes of sum 55 as A’s and one of sum 60, two axles, a tyre; all in stock.
fn shelf() -> Catalogue {
    let close =
        gear_set("Close three", "26/29", &["33/22", "29/26", "direct"], true).with(Column::Price, "480").with(Column::Currency, "EUR");
    let longer = gear_set("Longer case", "29/31", &["38/22", "33/27", "direct"], true);
    let front = gear_set("For the front", "", &["35/20", "30/25", "27/28"], true).with(Column::Layout, "two-shaft");
    let priced = |ratio, price: &str| axle(ratio, true).with(Column::Price, price).with(Column::Currency, "EUR");
    let tyre: Entry = tyre("175/70R13", true).with(Column::Price, "95.50").with(Column::Currency, "EUR");
    catalogue([vec![close, longer, front], vec![priced("41/10", "310"), priced("37/10", "")], vec![tyre]])
}

/// What a search finds of those wishes in that car.
fn found(job: &mut Job, wishes: &[(WishKind, &str)]) -> Found {
    let rows = wishes.iter().map(|(kind, most)| Wish::new(*kind, System::Metric).between("", most)).collect();
    job.wishes = Wishes { rows, ..Wishes::default() };
    let shelf = shelf();
    let known = OnShelf::of(&shelf);
    let answers = analyse_job(job, known.shelves());
    let reader = Reader { units: System::Metric, words: Words::Uk };
    let source = Source::new(job, &answers, known.shelves(), reader);
    let given = Given::of_source(source);
    let asked = Asked::of(&job.wishes, &given, answers.conditions.cruise);
    assert_eq!(asked.problems, []);
    search(&Arc::new(Table::of(&shelf)), &asked.wishes, &given)
}

/// The parts of every result that meets all musts, by name.
fn names(job: &Job, found: &Found) -> Vec<[String; 3]> {
    assert!(found.meets);
    let mut names: Vec<[String; 3]> = found.results.iter().map(|one| onto_sheet::names(one, &shelf(), job)).collect();
    names.sort();
    names
}

/// Three boxes of the same end (A’s own, close, longer), three axles, two tyres are 18; the box for the front is none of them.
#[test]
fn a_box_for_the_other_end_is_never_found() {
    let mut job = car();
    let all = found(&mut job, &[]);
    assert!(all.meets);
    assert_eq!(all.results.len(), 18);
    assert!(names(&job, &all).iter().all(|[set, ..]| set != "For the front"));
    let own = &mut job.setups[0].gearbox;
    (own.layout, own.constant, own.gears[2]) = (Layout::TwoShaft, String::new(), "28/27".into());
    let front = found(&mut job, &[]);
    assert!(names(&job, &front).iter().all(|[set, ..]| set == "For the front" || set == "the customer’s own"));
}

#[test]
fn what_is_kept_stays_though_no_shelf_has_it() {
    let mut job = car();
    let kept = found(&mut job, &[(WishKind::KeepGearSet, ""), (WishKind::KeepTyre, "")]);
    let own = |axle: &str| ["the customer’s own".to_owned(), axle.to_owned(), "165/80R13".to_owned()];
    assert_eq!(names(&job, &kept), [own("37/10"), own("39/10"), own("41/10")]);
    let kept = found(&mut job, &[(WishKind::KeepAxle, ""), (WishKind::KeepTyre, "")]);
    assert_eq!(kept.results.len(), 3);
    assert!(names(&job, &kept).iter().all(|[_, axle, _]| axle == "39/10"));
}

/// At most one part changed: nothing, one of two boxes, one of two axles, the one tyre: 1 + 2 + 2 + 1 = 6 of the 18.
#[test]
fn at_most_one_part_is_changed() {
    let mut job = car();
    let few = found(&mut job, &[(WishKind::FewParts, "1")]);
    assert_eq!(names(&job, &few).len(), 6);
    assert_eq!(found(&mut job, &[(WishKind::FewParts, "0")]).results.len(), 1);
    let at = few.wishes.iter().position(|wish| wish.measure == Measure::PartsChanged).unwrap();
    assert!(few.results.iter().all(|one| one.figures[at] <= 1.0));
}

/// Sums of 55 share A’s case, sums of 60 do not.
#[test]
fn what_goes_into_the_case_is_found_alone() {
    let mut job = car();
    let fits = found(&mut job, &[(WishKind::SameCase, "")]);
    assert!(names(&job, &fits).iter().all(|[set, ..]| set != "Longer case"));
    assert_eq!(fits.results.len(), 12);
}

/// Close three and 41/10 on the old tyre: 480 + 310 = 790; with four tyres of 95.50 it is 1,172. The 37/10 has no price.
#[test]
fn what_is_new_is_added_up() {
    let mut job = car();
    let all = found(&mut job, &[]);
    let cost = |wanted: [&str; 3]| {
        let one = all.results.iter().find(|one| onto_sheet::names(one, &shelf(), &job) == wanted.map(str::to_owned)).unwrap();
        onto_sheet::cost(one, &shelf())
    };
    assert_eq!(cost(["Close three", "41/10", "165/80R13"]).as_deref(), Some("790.00 EUR"));
    assert_eq!(cost(["Close three", "41/10", "175/70R13"]).as_deref(), Some("1,172.00 EUR"));
    assert_eq!(cost(["Close three", "37/10", "165/80R13"]), None);
    assert_eq!(cost(["the customer’s own", "39/10", "165/80R13"]), None);
}

#[test]
fn what_stays_is_put_onto_the_sheet_as_it_is() {
    let mut job = car();
    let kept = found(&mut job, &[(WishKind::KeepGearSet, ""), (WishKind::KeepTyre, "")]);
    let taller = kept.results.iter().find(|one| (one.axle.ratio - 3.7).abs() < 1e-9).unwrap();
    let id = onto_sheet::put(&mut job, &shelf(), taller, Into::New).unwrap();
    let (first, added) = (&job.setups[0], job.setup(id).unwrap());
    assert_eq!((&added.gearbox, added.final_drive.as_str(), &added.tyre), (&first.gearbox, "37/10", &first.tyre));
    assert_eq!(added.name, "the customer’s own, 37/10");
}

#[test]
fn a_wish_about_parts_that_are_not_typed_is_left_out_and_says_so() {
    let rows = [WishKind::KeepGearSet, WishKind::KeepAxle, WishKind::FewParts, WishKind::SameCase];
    let rows = rows.map(|kind| Wish::new(kind, System::Metric).between("", "1")).to_vec();
    let asked = Asked::of(&Wishes { rows, ..Wishes::default() }, &Given::default(), None);
    assert_eq!(asked.wishes.len(), 1, "what is rather from stock goes without saying");
    let says: Vec<String> = asked.problems.iter().map(layshaft::job::InputProblem::sentence).collect();
    assert!(says[0].contains("it needs the gears of setup A") && says[1].contains("it needs the axle of setup A"), "{says:?}");
    assert!(says[2].contains("gears, axle and tyre of setup A") && says[3].contains("the gears of setup A"), "{says:?}");
}

#[test]
fn what_is_missed_is_said_in_words() {
    let says = |measure, value| words::shortfall(&layshaft::finder::Wish::must(measure, f64::NEG_INFINITY, 0.0), value, System::Metric);
    assert_eq!(says(Measure::OtherCase, 1.0).as_deref(), Some("not known to go into A’s case"));
    assert_eq!(says(Measure::PartsChanged, 2.0).as_deref(), Some("2 parts changed"));
    assert_eq!(says(Measure::OtherEnd { two_shafts: false }, 1.0).as_deref(), Some("a two-shaft box, as A’s is not"));
    assert_eq!(says(Measure::OtherGearSet, 0.0), None);
}
