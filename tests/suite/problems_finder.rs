//! Wishes that cannot be read, contradict each other or find nothing: an answer in a sentence.

use std::sync::Arc;

use layshaft::catalogue::Catalogue;
use layshaft::finder::design::Brief;
use layshaft::finder::inputs::FittedTyre;
use layshaft::finder::{Given, Measure, Search, Table, Wish as Ready};
use layshaft::gearing::Layout;
use layshaft::job::{DesignBrief, Wish, WishKind, Wishes};
use layshaft::questions::find::Asked;
use layshaft::questions::find::words as why;
use layshaft::units::common::{metres, metres_per_second, millimetres, rpm};
use layshaft::units::{System, Typed};

use crate::finder_ground::{axle, catalogue, gear_set, search, tyre};
use crate::nth;

fn given() -> Given {
    let fitted = FittedTyre { circumference: metres(1.88), diameter: millimetres(615.0) };
    Given { shift: Some(rpm(6_500.0)), fitted: Some(fitted), ..Given::default() }
}

fn asked(rows: Vec<Wish>) -> Asked {
    Asked::of(&Wishes { rows, ..Wishes::default() }, &given(), Some(metres_per_second(31.0)))
}

fn wish(kind: WishKind, least: &str, greatest: &str) -> Wish {
    Wish::new(kind, System::Inch).between(least, greatest)
}

#[track_caller]
fn check(rows: Vec<Wish>, field: &str, sentence: &str) {
    let asked = asked(rows);
    let all: Vec<(String, String)> = asked.problems.iter().map(|problem| (problem.field.path(), problem.sentence())).collect();
    assert!(all.iter().any(|(at, says)| at == field && says.contains(sentence)), "{all:?}");
}

#[test]
fn what_cannot_be_read_is_said_where_it_was_typed() {
    check(vec![wish(WishKind::CruiseRpm, "fast", "")], "wish.1.least", "“fast” cannot be read as the engine rpm");
    check(vec![wish(WishKind::CruiseRpm, "", "")], "wish.1.least", "neither a least nor a greatest value");
    check(vec![wish(WishKind::CruiseRpm, "3,000", "2,000")], "wish.1.least", "The least, 3,000, is above the greatest, 2,000");
    check(vec![wish(WishKind::FirstOverall, "1000", "")], "wish.1.least", "Type a number from 0.1 to 500");
    check(vec![wish(WishKind::LargestDrop, "", "three")], "wish.1.greatest", "“three” is not a number from 0 to 90");
    check(vec![wish(WishKind::SpeedAtShift, "40", "")], "wish.1.at", "No number is given");
    check(vec![wish(WishKind::TimeToSpeed, "", "12")], "wish.1.at", "No road speed is given");
    let between = Wish { at: Typed::new("2.5", System::Inch), ..wish(WishKind::SpeedAtShift, "40", "") };
    check(vec![between], "wish.1.at", "“2.5” is not a whole number. Type a whole number");
    check(vec![wish(WishKind::FirstOverall, "9 %", "")], "wish.1.least", "“9 %” is not a number from 0.1 to 500");
    check(vec![wish(WishKind::GearCount, "4 %", "")], "wish.1.least", "“4 %” is not a number from 1 to 8");
    let heavy = Wish { weight: "50".into(), ..wish(WishKind::FirstOverall, "9", "10") };
    check(vec![heavy], "wish.1.weight", "“50” is not a number from 1 to 10");
}

#[test]
fn what_is_missing_leaves_the_wish_out_and_says_so() {
    check(vec![wish(WishKind::StartGrade, "25", "")], "wish.1.least", "it needs the engine's torque and the car's mass");
    let rows = Wishes { rows: vec![wish(WishKind::Landing, "4,000", ""), wish(WishKind::KeepTyre, "", "")], ..Wishes::default() };
    let asked = Asked::of(&rows, &Given::default(), None);
    assert!(asked.rows.is_empty() && asked.wishes.iter().all(|wish| wish.measure == Measure::ToOrder));
    assert_eq!(asked.problems.len(), 2, "{:?}", asked.problems);
}

#[test]
fn contradictions_among_musts_are_told() {
    let must = |wish: Wish| Wish { must: true, ..wish };
    let low = must(wish(WishKind::CruiseRpm, "", "2,500"));
    let high = must(wish(WishKind::CruiseRpm, "3,000", ""));
    check(vec![low.clone(), high.clone()], "wish.2.least", "Wishes 1 and 2 contradict each other: no value lies in both ranges");
    let wide = must(wish(WishKind::TyreDiameter, "26", "28"));
    check(vec![wide, wish(WishKind::KeepTyre, "", "")], "wish.2.least", "the fitted tyre is outside that diameter");
    let layout = |layout| Wish { layout, ..wish(WishKind::Layout, "", "") };
    check(vec![layout(Layout::TwoShaft), layout(Layout::InputReduced)], "wish.2.least", "a box has one layout");

    // Preferences may pull apart, and so may the same figure asked at two speeds.
    assert!(asked(vec![low.clone(), Wish { must: false, ..high.clone() }]).problems.is_empty());
    let slow = Wish { at: Typed::new("30", System::Inch), ..high };
    assert!(asked(vec![low, slow]).problems.is_empty());
}

#[test]
fn typed_ranges_mean_what_they_say() {
    let metric = Wish { at: Typed::new("110 km/h", System::Inch), ..wish(WishKind::CruiseRpm, "2,800", "3,200 rpm") };
    let drop = wish(WishKind::LargestDrop, "", "30 %");
    let gear = Wish { at: Typed::new("2", System::Inch), ..wish(WishKind::SpeedAtShift, "60", "") };
    let quarter = Wish { at: Typed::new("402", System::Inch), ..wish(WishKind::TimeOverDistance, "", "18") };
    let read = asked(vec![metric, drop, gear, quarter]);
    let Measure::CruiseRpm(speed) = read.wishes[0].measure else { panic!("another wish") };
    assert!((speed.value - 110.0 / 3.6).abs() < 1e-9);
    assert!((read.wishes[0].least - 2_800.0).abs() < 1e-9 && (read.wishes[0].greatest - 3_200.0).abs() < 1e-9);
    assert_eq!(read.wishes[1], Ready::prefer(Measure::LargestDrop, f64::NEG_INFINITY, 0.3, 5.0));
    // 60 mph is 26.8224 m/s exactly; the second gear is counted from 0.
    assert_eq!(read.wishes[2].measure, Measure::SpeedAtShift(nth(2)));
    assert!((read.wishes[2].least - 26.8224).abs() < 1e-9);
    assert_eq!(read.problems.len(), 1, "a time needs an engine: {:?}", read.problems);
}

#[test]
fn an_empty_catalogue_is_answered_in_a_sentence() {
    let empty = Arc::new(Table::of(&Catalogue::empty()));
    let found = search(&empty, &[Ready::prefer(Measure::FirstOverall, 9.0, 10.0, 5.0)], &Given::default());
    assert!(found.progress.done && found.results.is_empty());
    assert!(why::summary(&found).starts_with("There is nothing to combine: the catalogue needs at least one gear set"));
}

#[test]
fn broken_rows_are_left_out_and_counted() {
    let sets = vec![gear_set("good", "25/30", &["37/18", "32/23", "28/27", "direct"], true), gear_set("bad", "25", &["x"], true)];
    let axles = vec![axle("43/11", true), axle("forty", true), axle("", true)];
    let table = Arc::new(Table::of(&catalogue([sets, axles, vec![tyre("185/70R14", true), tyre("round", true)]])));
    let found = search(&table, &[], &Given::default());
    assert_eq!(found.progress.total, 1);
    assert_eq!(found.results.len(), 1);
    assert_eq!(found.unread.sentence().unwrap(), "Left out because they cannot be read: 1 gear set, 2 ring and pinion pairs, 1 tyre.");
}

#[test]
fn a_must_that_nothing_meets_names_the_nearest() {
    let table = Arc::new(Table::of(&Catalogue::built_in()));
    let impossible = Ready::must(Measure::FirstOverall, 200.0, 250.0);
    let found = search(&table, &[impossible], &given());
    assert!(!found.meets);
    let nearest = &found.results[0];
    let highest = table.sets.iter().map(|set| set.ratios[0]).fold(0.0, f64::max) * table.axles.last().unwrap().ratio;
    assert!((nearest.figures[0] - highest).abs() < 1e-9, "the nearest to 200 is the lowest first behind the lowest axle");
    assert!(why::reason(nearest, &found, System::Inch).starts_with("misses what must be: 1st gear, overall "));
    assert!(why::summary(&found).contains("nothing meets all that must be; below are the nearest misses"));
}

#[test]
fn ten_thousand_shop_entries_are_gone_through_in_slices() {
    let sets = (0..2_000).map(|at| {
        let (low, high) = (30 + at % 9, 20 + at % 7);
        gear_set(&format!("set {at}"), "25/30", &[&format!("{low}/18"), &format!("{high}/23"), "direct"], at % 2 == 0)
    });
    let axles = (0..3_000).map(|at| axle(&format!("{}/{}", 38 + at % 10, 9 + at % 7), true));
    let tyres = (0..5_000).map(|at| tyre(&format!("{}/{}R{}", 145 + 10 * (at % 9), 50 + 5 * (at % 7), 13 + at % 4), true));
    let table = Arc::new(Table::of(&catalogue([sets.collect(), axles.collect(), tyres.collect()])));
    let wishes = [Ready::prefer(Measure::FirstOverall, 9.0, 9.1, 5.0), Ready::must(Measure::LargestDrop, f64::NEG_INFINITY, 0.4)];
    let mut search = Search::new(Arc::clone(&table), wishes.to_vec(), given());
    let first = search.advance(2_000);
    assert!(!first.done && first.total == 2_000 * 3_000 * 5_001);
    assert!(why::summary(&search.found()).starts_with("So far "));
    assert!(search.advance(2_000).judged >= first.judged);
}

#[test]
fn a_brief_that_cannot_be_is_told() {
    #[track_caller]
    fn check(change: impl Fn(&mut DesignBrief), field: &str, says: &str) {
        let mut brief = DesignBrief::default();
        change(&mut brief);
        let problems = Brief::read(&brief).unwrap_err();
        assert!(problems.iter().any(|problem| problem.field.path() == field && problem.sentence().contains(says)), "{problems:?}");
    }
    assert!(Brief::read(&DesignBrief::default()).is_ok());
    check(|brief| brief.sum = "many".into(), "design.sum", "“many” is not a number from 16 to 300");
    check(|brief| brief.sum = "55.5".into(), "design.sum", "whole number");
    check(|brief| brief.sum = "120".into(), "design.sum", "No two gears of 15 to 40 teeth add up to 120");
    check(|brief| brief.first = "0.9".into(), "design.first", "Type a larger ratio for first");
    check(
        |brief| (brief.gears, brief.first, brief.top, brief.growth) = ("6".into(), "3.6".into(), "0.85".into(), "1.2".into()),
        "design.growth",
        "With a growth of 1.2 a higher gear would be lower than the one below it. Type a growth nearer 1, or fewer gears",
    );
    check(|brief| brief.gears = "9".into(), "design.gears", "Type a number from 1 to 8");
}

/// 1,900 mm rolled are 1,900 / 3.05 = 622.95 mm across, by the factor of a radial tyre; a circle of that way would have 604.8 mm.
#[test]
fn a_tyre_known_by_what_it_rolls_has_one_diameter() {
    let mut job = layshaft::job::demo::job();
    for setup in &mut job.setups {
        setup.tyre = Typed::new("rolls 1,900 mm", System::Metric);
    }
    let layshaft::questions::Answers { conditions, setups: analyses, .. } =
        layshaft::questions::analyse_job(&job, layshaft::questions::Shelves::default());
    let given = Given::of(&conditions, &analyses);
    let across = given.fitted.as_ref().unwrap().diameter.value;
    assert!((across - 1.9 / 3.05).abs() < 1e-9, "{across}");
    let wish = Ready::prefer(Measure::TyreDiameter, 0.6, 0.65, 1.0);
    let met = layshaft::questions::find::evaluate::figure(&analyses[0], &wish, &given).unwrap();
    assert!((met - across).abs() < 1e-12, "{met}");
    let must = |kind, least: &str, greatest: &str| Wish { must: true, ..wish_metric(kind, least, greatest) };
    let rows = vec![must(WishKind::TyreDiameter, "600", "610"), must(WishKind::KeepTyre, "", "")];
    let asked = Asked::of(&Wishes { rows, ..Wishes::default() }, &given, None);
    assert!(
        asked.problems.iter().any(|problem| problem.sentence().contains("the fitted tyre is outside that diameter")),
        "{:?}",
        asked.problems
    );
}

fn wish_metric(kind: WishKind, least: &str, greatest: &str) -> Wish {
    Wish::new(kind, System::Metric).between(least, greatest)
}
