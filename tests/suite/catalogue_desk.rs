//! The catalogue as it is worked on in the page: found, put, stocked, taken out and put back, and parts that go into setups.

use layshaft::catalogue::desk::{problem_at, problems_of};
use layshaft::catalogue::{AnyEntry, Catalogue, Entry, GearSet, Kind, Shelf};
use layshaft::gearing::Layout;
use layshaft::job::demo;
use layshaft::sheet::catalogue::{difference, told};
use layshaft::units::System;

/// The cells of a kind with some of them filled.
fn cells(kind: Kind, filled: &[(&str, &str)]) -> Vec<String> {
    let of = |column: &&str| filled.iter().find(|(name, _)| name == column).map_or_else(String::new, |(_, text)| (*text).to_owned());
    kind.columns().iter().map(of).collect()
}

fn counted() -> Vec<String> {
    let filled = [("name", "Bench special"), ("layout", "input-reduced"), ("constant", "25/30"), ("gear_1", "37/18"), ("gear_2", "direct")];
    cells(Kind::GearSets, &filled)
}

#[test]
fn an_own_entry_is_put_changed_and_stocked_under_one_id() {
    let (with, id) = Catalogue::built_in().put(Kind::GearSets, None, &counted()).unwrap();
    let mut changed = counted();
    changed[1] = "Bench special, renamed".into();
    let (after, same) = with.put(Kind::GearSets, Some(&id), &changed).unwrap();
    assert_eq!(same, id);
    let after = after.stocked(Kind::GearSets, &id, true).unwrap();
    let entry = after.any(Kind::GearSets, &id).unwrap();
    assert!(entry.own() && entry.in_stock());
    assert_eq!(told(&entry, System::Inch).name, "Bench special, renamed");
    assert_eq!(with.any(Kind::GearSets, &id).unwrap().cells()[1], "Bench special", "the catalogue before stays as it was");
}

#[test]
fn what_is_built_in_is_neither_changed_nor_taken_out() {
    let catalogue = Catalogue::built_in();
    for kind in Kind::ALL {
        let id = catalogue.found(kind, "", 1, None).entries[0].id().to_owned();
        assert!(catalogue.without(kind, &id).is_err());
        assert!(catalogue.stocked(kind, &id, true).is_err());
        let (copied, own) = catalogue.copied(kind, &id).unwrap();
        assert!(copied.any(kind, &own).unwrap().own());
    }
}

#[test]
fn an_entry_put_back_is_itself_again_and_later_changes_stay() {
    for kind in Kind::ALL {
        let built_in = Catalogue::built_in();
        let first = built_in.found(kind, "", 1, None).entries[0].id().to_owned();
        let (with, id) = built_in.copied(kind, &first).unwrap();
        let taken = with.any(kind, &id).unwrap();
        let (later, other) = with.without(kind, &id).unwrap().put(Kind::GearSets, None, &counted()).unwrap();
        let back = later.put_back(&taken);
        assert_eq!(back.any(kind, &id).as_ref(), Some(&taken));
        assert!(back.any(Kind::GearSets, &other).is_some(), "what was entered meanwhile is lost");
    }
}

#[test]
fn an_own_set_whose_counts_are_not_complete_comes_back_too() {
    let mut catalogue = Catalogue::built_in();
    let half = GearSet { name: "Half counted".into(), gears: vec!["37/".into(), String::new()], ..GearSet::default() };
    let (shelf, id) = catalogue.gear_sets.add(half);
    catalogue.gear_sets = shelf;
    let taken = catalogue.any(Kind::GearSets, &id).unwrap();
    let back = catalogue.without(Kind::GearSets, &id).unwrap().put_back(&taken);
    assert_eq!(back.any(Kind::GearSets, &id), Some(taken));
}

#[test]
fn every_word_sought_must_stand_in_the_entry_and_own_ones_come_first() {
    let (catalogue, id) = Catalogue::built_in().put(Kind::GearSets, None, &counted()).unwrap();
    let all = catalogue.found(Kind::GearSets, "", 3, None);
    assert_eq!((all.entries.len(), all.many, all.of), (3, catalogue.gear_sets.len(), catalogue.gear_sets.len()));
    assert_eq!(all.entries[0].id(), id);
    let sought = catalogue.found(Kind::GearSets, "SPECIAL 37/18", 60, None);
    assert_eq!((sought.many, sought.entries[0].id()), (1, id.as_str()));
    assert_eq!(catalogue.found(Kind::GearSets, "no such words", 60, None).many, 0);
    assert_eq!(catalogue.found(Kind::GearSets, "no such words", 60, Some(&id)).many, 1, "the entry being changed stays in the list");
}

#[test]
fn ten_thousand_own_entries_give_no_more_rows_than_asked_for() {
    let own =
        |at: usize| GearSet { name: format!("Own {at}"), layout: Layout::TwoShaft, gears: vec!["37/18".into()], ..GearSet::default() };
    let mut catalogue = Catalogue::built_in();
    catalogue.gear_sets = Shelf::<GearSet>::built_in().with_own((0..10_000).map(own).collect());
    let found = catalogue.found(Kind::GearSets, "own", 60, None);
    assert_eq!(found.entries.len(), 60);
    assert_eq!(found.many, 10_000);
    assert_eq!(catalogue.found(Kind::GearSets, "own 9999", 60, None).many, 1);
}

#[test]
fn a_problem_stands_at_its_column() {
    let mut wrong = counted();
    wrong[5] = "37/5".into();
    let problems = problems_of(Kind::GearSets, &wrong);
    let said = problem_at("gear_1", &problems).map(layshaft::problem::Problem::sentence);
    assert_eq!(said.as_deref(), Some("Gears of 8 to 150 teeth only; “5” was typed. Check the count."));
    assert_eq!(problem_at("gear_2", &problems), None);
    assert!(problem_at("name", &problems_of(Kind::GearSets, &cells(Kind::GearSets, &[("in_stock", "yes")]))).is_some());
    assert!(!problems_of(Kind::GearSets, &cells(Kind::GearSets, &[])).is_empty(), "blank cells make no entry");
    assert!(problems_of(Kind::GearSets, &counted()).iter().all(|problem| problem.field == "gears"));
}

#[track_caller]
fn check_told(kind: Kind, filled: &[(&str, &str)], figures: &[&str], words: &[&str]) {
    let (catalogue, id) = Catalogue::built_in().put(kind, None, &cells(kind, filled)).unwrap();
    let told = told(&catalogue.any(kind, &id).unwrap(), System::Inch);
    assert_eq!(told.figures, figures);
    assert_eq!(told.words, words);
}

#[test]
fn each_kind_tells_what_a_rebuilder_asks() {
    // By hand: 30/25 × 37/18 = 2.4667; 43/11 = 3.9091; rim 14 is 356 mm, the sidewall 0.70 × 185 = 129.5, rounded 130 mm:
    // 356 + 2 × 130 = 616 mm = 24.25 in; rolls 3.05 × 616 = 1,878.8 mm = 73.97 in; 1,609,344 / 1,878.8 = 856.6 turns/mile.
    let set =
        [("name", "One"), ("maker", "Own"), ("layout", "input-reduced"), ("constant", "25/30"), ("gear_1", "37/18"), ("gear_2", "direct")];
    check_told(Kind::GearSets, &set, &["2.47  1.00", "25/30 with 37/18  direct"], &["Own", "countershaft, reduced at the input"]);
    check_told(Kind::Axles, &[("drive", "43/11"), ("note", "mine")], &["3.909"], &["mine"]);
    check_told(Kind::Tyres, &[("designation", "185/70R14"), ("note", "x")], &["24.3 in across", "rolls 74.0 in", "857 turns/mile"], &["x"]);
    let gear = [("name", "G"), ("role", "driven"), ("teeth", "20"), ("housing", "Curlew"), ("hand", "left")];
    check_told(Kind::SpeedometerGears, &gear, &["driven, 20 teeth"], &["fits the Curlew housing", "left hand"]);
}

#[test]
fn a_difference_names_the_columns_that_change() {
    let set = |note: &str| AnyEntry::from(GearSet { name: "One".into(), note: note.into(), ..GearSet::default() });
    assert_eq!(difference(&set(""), &set("noisy")), "note blank becomes “noisy”");
    assert_eq!(difference(&set("noisy"), &set("noisy")), "");
}

/// Puts a speedometer gear into the first setup of the demo job, whose gears field holds `before`.
#[track_caller]
fn check_speedometer(before: &str, filled: &[(&str, &str)], after: &str) {
    let mut setup = demo::job().setups[0].clone();
    before.clone_into(&mut setup.speedo.gears);
    let (catalogue, id) = Catalogue::built_in().put(Kind::SpeedometerGears, None, &cells(Kind::SpeedometerGears, filled)).unwrap();
    let gear = catalogue.any(Kind::SpeedometerGears, &id).unwrap();
    setup.take_part(&gear);
    assert_eq!(setup.speedo.gears, after);
    assert!(setup.has_part(&gear));
}

#[test]
fn a_speedometer_gear_takes_the_place_of_the_one_of_its_role() {
    let drive = [("name", "D"), ("role", "drive"), ("teeth", "8"), ("housing", "H"), ("hand", "left")];
    let driven = [("name", "N"), ("role", "driven"), ("teeth", "21"), ("housing", "H")];
    let adapter = [("name", "A"), ("role", "adapter"), ("teeth", "20"), ("second", "21")];
    check_speedometer("7/20", &drive, "8/20");
    check_speedometer("7/20", &driven, "7/21");
    check_speedometer("7/20", &adapter, "7/20 x 20/21");
    check_speedometer("7/20 x 18/19", &driven, "7/21 x 18/19");
    // What is still unknown is no number, so that the field asks for it and never reads an adapter as drive and driven.
    check_speedometer("", &driven, "drive/21");
    check_speedometer("", &adapter, "drive/driven x 20/21");
}

#[test]
fn a_gear_set_an_axle_and_a_tyre_go_into_a_setup() {
    let catalogue = Catalogue::built_in();
    for kind in [Kind::GearSets, Kind::Axles, Kind::Tyres] {
        let mut setup = demo::job().setups[0].clone();
        let part = catalogue.found(kind, "", usize::MAX, None).entries.into_iter().find(|part| !setup.has_part(part)).unwrap();
        setup.take_part(&part);
        assert!(setup.has_part(&part));
    }
    let set = catalogue.gear_sets.all().next().unwrap();
    let mut setup = demo::job().setups[0].clone();
    setup.take_part(&set.clone().into());
    assert_eq!(setup.gearbox.name, set.label());
}

#[test]
fn a_box_laid_out_as_two_shaft_is_kept_as_a_set_that_can_be_used() {
    let mut gearbox = demo::job().setups[0].gearbox.clone();
    gearbox.gears.retain(|gear| gear != "direct");
    gearbox.lay_out(Layout::TwoShaft);
    assert!(!gearbox.constant.is_empty(), "the count typed before is kept in the job");
    assert!(gearbox.as_set().gearbox().is_ok(), "{:?}", gearbox.as_set().gearbox());
}
