//! The catalogue as it is worked on in the page: found, put, stocked, taken out and put back, and parts that go into setups.

use layshaft::catalogue::{Catalogue, Column, Entry, Part, PartKind, problem_at};
use layshaft::gearing::Layout;
use layshaft::job::{Setup, Swap, demo};
use layshaft::sheet::catalogue::{difference, told};
use layshaft::swap::BoxSize;
use layshaft::units::common::in_millimetres;
use layshaft::units::{System, Typed, limits};

/// An entry with some of its columns filled.
fn entry(kind: PartKind, filled: &[(Column, &str)]) -> Entry {
    filled.iter().fold(Entry::new(kind), |entry, (column, text)| entry.with(*column, *text))
}

fn counted() -> Entry {
    let filled = [
        (Column::Name, "Bench special"),
        (Column::Layout, "input-reduced"),
        (Column::Constant, "25/30"),
        (Column::Gear(1), "37/18"),
        (Column::Gear(2), "direct"),
    ];
    entry(PartKind::GearSet, &filled)
}

fn first(catalogue: &Catalogue, kind: PartKind) -> String {
    catalogue.found(kind, "", 1, None).entries[0].id.clone()
}

#[test]
fn an_own_entry_is_put_changed_and_stocked_under_one_id() {
    let (with, id) = Catalogue::built_in().put(None, &counted()).unwrap();
    let (after, same) = with.put(Some(&id), &counted().with(Column::Name, "  Bench special, renamed ")).unwrap();
    assert_eq!(same, id);
    let after = after.stocked(PartKind::GearSet, &id, true).unwrap();
    let entry = after.get(PartKind::GearSet, &id).unwrap();
    assert!(entry.own && entry.in_stock());
    assert_eq!(told(entry, System::Inch).name, "Bench special, renamed");
    assert_eq!(with.get(PartKind::GearSet, &id).unwrap().title(), "Bench special", "the catalogue before stays as it was");
}

#[test]
fn what_is_built_in_is_neither_changed_nor_taken_out() {
    let catalogue = Catalogue::built_in();
    for kind in PartKind::ALL {
        let id = first(&catalogue, kind);
        assert!(catalogue.without(kind, &id).is_err());
        assert!(catalogue.stocked(kind, &id, true).is_err());
        let (copied, own) = catalogue.copied(kind, &id).unwrap();
        assert!(copied.get(kind, &own).unwrap().own);
    }
}

#[test]
fn an_entry_put_back_is_itself_again_and_later_changes_stay() {
    for kind in PartKind::ALL {
        let built_in = Catalogue::built_in();
        let (with, id) = built_in.copied(kind, &first(&built_in, kind)).unwrap();
        let taken = with.get(kind, &id).unwrap().clone();
        let (later, other) = with.without(kind, &id).unwrap().put(None, &counted()).unwrap();
        let back = later.add(taken.clone()).0;
        assert_eq!(back.get(kind, &id), Some(&taken));
        assert!(back.get(PartKind::GearSet, &other).is_some(), "what was entered meanwhile is lost");
    }
}

#[test]
fn an_own_set_whose_counts_are_not_complete_comes_back_too() {
    let half = entry(PartKind::GearSet, &[(Column::Name, "Half counted"), (Column::Gear(1), "37/")]);
    let (catalogue, id) = Catalogue::built_in().add(half);
    let taken = catalogue.get(PartKind::GearSet, &id).unwrap().clone();
    let back = catalogue.without(PartKind::GearSet, &id).unwrap().add(taken.clone()).0;
    assert_eq!(back.get(PartKind::GearSet, &id), Some(&taken));
}

#[test]
fn every_word_sought_must_stand_in_the_entry_and_own_ones_come_first() {
    let (catalogue, id) = Catalogue::built_in().put(None, &counted()).unwrap();
    let all = catalogue.found(PartKind::GearSet, "", 3, None);
    let many = catalogue.entries(PartKind::GearSet).count();
    assert_eq!((all.entries.len(), all.many, all.of), (3, many, many));
    assert_eq!(all.entries[0].id, id);
    let sought = catalogue.found(PartKind::GearSet, "SPECIAL 37/18", 60, None);
    assert_eq!((sought.many, &sought.entries[0].id), (1, &id));
    assert_eq!(catalogue.found(PartKind::GearSet, "no such words", 60, None).many, 0);
    assert_eq!(catalogue.found(PartKind::GearSet, "no such words", 60, Some(&id)).many, 1, "the entry being changed stays in the list");
}

#[test]
fn ten_thousand_own_entries_give_no_more_rows_than_asked_for() {
    let own = |at: usize| counted().with(Column::Name, format!("Own {at}"));
    let catalogue = Catalogue::built_in().with_own((0..10_000).map(own).collect());
    let found = catalogue.found(PartKind::GearSet, "own", 60, None);
    assert_eq!(found.entries.len(), 60);
    assert_eq!(found.many, 10_000);
    assert_eq!(catalogue.found(PartKind::GearSet, "own 9999", 60, None).many, 1);
}

#[test]
fn a_problem_stands_at_its_column() {
    let problems = counted().with(Column::Gear(1), "37/5").problems();
    let said = problem_at(Column::Gear(1), &problems).map(layshaft::problem::Problem::sentence);
    assert_eq!(said.as_deref(), Some("Gears of 8 to 150 teeth only; “5” was typed. Check the count."));
    assert_eq!(problem_at(Column::Gear(2), &problems), None);
    assert!(counted().problems().iter().all(|problem| problem.field == "gears"));
    for kind in PartKind::ALL {
        assert!(
            !Entry::new(kind).problems().is_empty() && !Entry::started(kind).problems().is_empty(),
            "{kind:?}: blank cells make no entry"
        );
    }
    assert!(problem_at(Column::Name, &Entry::started(PartKind::GearSet).problems()).is_some());
}

#[track_caller]
fn check_told(kind: PartKind, filled: &[(Column, &str)], figures: &[&str], words: &[&str]) {
    let told = told(&entry(kind, filled), System::Inch);
    assert_eq!(told.figures, figures);
    assert_eq!(told.words, words);
}

#[test]
fn each_kind_tells_what_a_rebuilder_asks() {
    // By hand: 30/25 × 37/18 = 2.4667; 43/11 = 3.9091; rim 14 is 356 mm, the sidewall 0.70 × 185 = 129.5, rounded 130 mm:
    // 356 + 2 × 130 = 616 mm = 24.25 in; rolls 3.05 × 616 = 1,878.8 mm = 73.97 in; 1,609,344 / 1,878.8 = 856.6 turns/mile.
    let set = counted().with(Column::Maker, "Own");
    assert_eq!(told(&set, System::Inch).figures, ["2.47  1.00", "25/30 with 37/18  direct"]);
    assert_eq!(told(&set, System::Inch).words, ["Own", "countershaft, reduced at the input"]);
    check_told(PartKind::RingAndPinion, &[(Column::Drive, "43/11"), (Column::Note, "mine")], &["3.909"], &["mine"]);
    let size = [(Column::Designation, "185/70R14"), (Column::Note, "x")];
    check_told(PartKind::Tyre, &size, &["24.3 in across", "rolls 74.0 in", "857 turns/mile"], &["x"]);
    check_told(PartKind::Tyre, &[(Column::Designation, "round")], &["size not readable"], &[]);
    let shim = [(Column::Name, "Shim"), (Column::Units, "in"), (Column::Thickness, "0.004")];
    check_told(PartKind::SmallPart, &shim, &["0.004 in"], &[]);
    check_told(PartKind::SmallPart, &[(Column::Name, "Shim"), (Column::Thickness, "thin")], &["thickness not readable"], &[]);
    check_told(PartKind::SmallPart, &[(Column::Name, "Front seal")], &[], &[]);
    // A size that names its unit keeps it, whatever the others are in.
    let case = [(Column::Units, "in"), (Column::Size(BoxSize::Length), "600 mm"), (Column::Size(BoxSize::InputSpline), "10 x 1 1/8")];
    check_told(PartKind::CaseFamily, &case, &["face to output flange 600 mm", "input spline 10 x 1 1/8 in"], &[]);
    let gear = [(Column::Role, "driven"), (Column::Teeth, "20"), (Column::Housing, "Curlew"), (Column::Hand, "left")];
    check_told(PartKind::SpeedometerGear, &gear, &["driven, 20 teeth"], &["fits the Curlew housing", "left hand"]);
}

/// A case family is measured once: its sizes go into a setup in one press, in the units they were measured in, and what is typed goes to the
/// shelf the same way. By hand: 23 5/8 in = 600.075 mm.
#[test]
fn the_sizes_of_a_case_family_go_into_a_setup_and_onto_the_shelf() {
    let size = |size: BoxSize| Column::Size(size);
    let family = entry(
        PartKind::CaseFamily,
        &[(Column::Name, "Bench case"), (Column::Units, "in"), (size(BoxSize::Length), "23 5/8"), (size(BoxSize::Oil), "GL-4 80W")],
    );
    let (shelf, id) = Catalogue::empty().put(None, &family).unwrap();
    let mut setup = Setup { swap: Swap { weight: Typed::new("40", System::Metric), ..Swap::default() }, ..Setup::default() };
    let kept = shelf.get(PartKind::CaseFamily, &id).unwrap();
    assert!(!setup.has_part(kept));
    setup.take_part(kept);
    assert!(setup.has_part(kept));
    // The weight was another box's.
    assert_eq!((setup.swap.weight.text.as_str(), setup.swap.oil.as_str()), ("", "GL-4 80W"));
    let length = setup.swap.length.read(&limits::FROM_FACE).unwrap();
    assert!((in_millimetres(length) - 600.075).abs() < 1e-9);
    let typed = setup.swap.as_case_family("Bench case").unwrap();
    assert_eq!(typed.checked().unwrap().text(size(BoxSize::Length)), "23 5/8");
    assert_eq!(typed.text(Column::Units), "in");
    // Inches beside millimetres are no one entry, and nothing measured is none at all.
    setup.swap.mount = Typed::new("420", System::Metric);
    assert_eq!((setup.swap.as_case_family("Bench case"), Swap::default().as_case_family("Bench case")), (None, None));
    // What cannot be read is said at its column.
    let problems = family.with(size(BoxSize::InputSpline), "ten").problems();
    assert!(problem_at(size(BoxSize::InputSpline), &problems).is_some(), "{problems:?}");
}

#[test]
fn a_difference_names_the_columns_that_change() {
    let noisy = counted().with(Column::Note, "noisy");
    assert_eq!(difference(&counted(), &noisy), "note blank becomes “noisy”");
    assert_eq!(difference(&noisy, &noisy), "");
}

/// Puts a speedometer gear into the first setup of the demo job, whose gears field holds `before`.
#[track_caller]
fn check_speedometer(before: &str, filled: &[(Column, &str)], after: &str) {
    let mut setup = demo::job().setups[0].clone();
    before.clone_into(&mut setup.speedo.gears);
    let gear = entry(PartKind::SpeedometerGear, filled);
    assert!(matches!(gear.part(), Ok(Part::SpeedometerGear(_))));
    setup.take_part(&gear);
    assert_eq!(setup.speedo.gears, after);
    assert!(setup.has_part(&gear));
}

#[test]
fn a_speedometer_gear_takes_the_place_of_the_one_of_its_role() {
    let drive = [(Column::Role, "drive"), (Column::Teeth, "8"), (Column::Housing, "H"), (Column::Hand, "left")];
    let driven = [(Column::Role, "driven"), (Column::Teeth, "21"), (Column::Housing, "H")];
    let adapter = [(Column::Role, "adapter"), (Column::Teeth, "20"), (Column::Second, "21")];
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
    for kind in [PartKind::GearSet, PartKind::RingAndPinion, PartKind::Tyre] {
        let mut setup = demo::job().setups[0].clone();
        let part = catalogue.found(kind, "", usize::MAX, None).entries.into_iter().find(|part| !setup.has_part(part)).unwrap();
        setup.take_part(&part);
        assert!(setup.has_part(&part));
    }
    let set = catalogue.entries(PartKind::GearSet).next().unwrap();
    let mut setup = demo::job().setups[0].clone();
    setup.take_part(set);
    assert_eq!(setup.gearbox.name, set.title());
}

#[test]
fn a_box_laid_out_as_two_shaft_is_kept_as_a_set_that_can_be_used() {
    let mut gearbox = demo::job().setups[0].gearbox.clone();
    gearbox.gears.retain(|gear| gear != "direct");
    gearbox.lay_out(Layout::TwoShaft);
    assert!(!gearbox.constant.is_empty(), "the count typed before is kept in the job");
    assert!(gearbox.as_set().gearbox().is_some(), "{:?}", gearbox.as_set().part());
}

#[test]
fn a_top_gear_that_is_not_counted_yet_is_kept_as_a_gear() {
    let mut gearbox = demo::job().setups[0].gearbox.clone();
    gearbox.add_gear();
    assert_eq!(gearbox.as_set().gears(), ["37/18", "32/23", "28/27", "direct", "?"]);
}
