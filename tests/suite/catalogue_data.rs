//! The built-in files: every line is used, and every entry could stand on a shelf.

use std::collections::BTreeSet;

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::gearing::{FinalDrive, Gearbox, Idler, Layout, Ratio, ReverseGears, check, teeth};
use layshaft::job::{Gearbox as Picked, demo};
use layshaft::speedometer::{Dial, Role, Wanted, dial, rank_shelf, shaft_turns};

/// Two gears of reverse on the shafts of a forward pair pass each other when their tips, one module above each pitch circle,
/// clear: z₁ + z₂ + 4 < the sum of a pair in mesh. Worked by hand: on a sum of 55, 33 + 16 + 4 = 53 clears, 34 + 17 + 4 = 55 rubs.
const TIPS: u16 = 4;

#[track_caller]
fn check_file(kind: PartKind, least: usize) {
    let text = kind.demo();
    assert!(text.lines().next().is_some_and(|first| first.starts_with("# ") && first.contains("invented")), "{kind:?} says it is invented");
    let plan = Catalogue::empty().plan(text).unwrap();
    assert_eq!((plan.kind, plan.refused, plan.doubts), (kind, vec![], vec![]), "every line is used, none wants a second look");
    assert!(plan.unknown_columns.is_empty());
    let entries = built_in(kind);
    assert_eq!(plan.new.len(), entries.len());
    assert!(entries.len() >= least, "{} of at least {least}", entries.len());
    let ids: BTreeSet<_> = entries.iter().map(|entry| &entry.id).collect();
    let titles: BTreeSet<_> = entries.iter().map(|entry| (entry.title(), entry.text(Column::Note))).collect();
    assert_eq!((ids.len(), titles.len()), (entries.len(), entries.len()), "ids and names are used once");
    for Entry { id, own, .. } in &entries {
        assert!(!own && !id.is_empty() && !id.starts_with("own-"), "{id}");
        assert!(id.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-'), "{id}");
    }
}

fn built_in(kind: PartKind) -> Vec<Entry> {
    Catalogue::built_in().entries(kind).cloned().collect()
}

#[test]
fn every_line_of_every_file_is_used() {
    for (kind, least) in PartKind::ALL.into_iter().zip([40, 64, 84, 44, 5, 3]) {
        check_file(kind, least);
    }
    assert_eq!(PartKind::ALL.len(), 6, "a new kind gets its number above");
}

fn gearboxes() -> impl Iterator<Item = (Entry, Gearbox)> {
    built_in(PartKind::GearSet).into_iter().map(|set| (set.clone(), set.gearbox().unwrap()))
}

#[test]
fn pairs_share_a_centre_distance_to_one_tooth() {
    for (set, gearbox) in gearboxes() {
        let (least, greatest) = check::ToothSums::of(&gearbox).range().expect("pairs");
        assert!(greatest - least <= 1, "{}: sums {least} to {greatest}", set.title());
        assert_eq!(check::doubts(&gearbox), [], "{}", set.title());
    }
}

#[test]
fn ratios_fall_and_are_those_of_old_cars() {
    for (set, gearbox) in gearboxes() {
        let ratios: Vec<f64> = gearbox.ratios().into_iter().map(|ratio| teeth::decimal(ratio).abs()).collect();
        assert!((2.1..=4.2).contains(&ratios[0]), "{}: first {}", set.title(), ratios[0]);
        assert!((0.7..=1.0).contains(ratios.last().expect("a top gear")) || set.id == "fieldfare-four-close", "{}", set.title());
        assert!(ratios.windows(2).all(|pair| pair[0] > 1.05 * pair[1]), "{}: {ratios:?}", set.title());
        let reverse = teeth::decimal(gearbox.reverse_ratio().expect("reverse"));
        assert_eq!(reverse > 0.0, gearbox.layout() == Layout::TwoShaft, "{}: reverse turns against the forward gears", set.title());
        assert!((0.9..=1.2).contains(&(reverse.abs() / ratios[0])), "{}: reverse {reverse} to first {}", set.title(), ratios[0]);
    }
}

#[test]
fn reverse_leaves_room_for_its_idler_and_the_idler_reaches_both_gears() {
    for (set, gearbox) in gearboxes() {
        let (sum, _) = check::ToothSums::of(&gearbox).range().expect("pairs");
        let ReverseGears { pair, idler } = gearbox.reverse_gears().expect("reverse");
        assert!(pair.sum() + TIPS < sum, "{}: reverse sum {} in a box of {sum}", set.title(), pair.sum());
        let spindle = match idler {
            Idler::Plain(teeth) => 2 * teeth.expect("counted").count(),
            Idler::Compound { entry, exit } => entry.count() + exit.count(),
        };
        // The three shafts make a triangle: the two centre distances over the idler exceed the one of the box.
        assert!(pair.sum() + spindle > sum, "{}: the idler does not reach", set.title());
    }
}

#[test]
fn there_is_something_of_everything() {
    let count = |wanted: &dyn Fn(&Gearbox) -> bool| gearboxes().filter(|(_, gearbox)| wanted(gearbox)).count();
    for layout in [Layout::InputReduced, Layout::OutputReduced, Layout::TwoShaft] {
        assert!(count(&|gearbox| gearbox.layout() == layout) >= 5, "{layout:?}");
    }
    for gears in 3..=6 {
        assert!(count(&|gearbox| gearbox.gears().len() == gears) >= 4, "{gears} speeds");
    }
    let compound = |gearbox: &Gearbox| matches!(gearbox.reverse_gears(), Some(ReverseGears { idler: Idler::Compound { .. }, .. }));
    assert!(count(&compound) >= 5 && count(&|gearbox| !compound(gearbox)) >= 5);
    for word in ["close", "medium", "wide"] {
        assert!(gearboxes().filter(|(set, _)| set.title().ends_with(word)).count() >= 8, "{word}");
    }
    assert!(gearboxes().any(|(set, _)| set.in_stock()) && gearboxes().any(|(set, _)| !set.in_stock()));
}

#[test]
fn final_drives_are_pairs_from_2_2_to_6_and_mostly_hunt() {
    let pairs: Vec<_> = built_in(PartKind::RingAndPinion)
        .iter()
        .map(|axle| match axle.final_drive() {
            Some(FinalDrive::Pair(pair)) => pair,
            other => panic!("{}: {other:?}", axle.title()),
        })
        .collect();
    let (least, greatest) = (Ratio::new(22, 10), Ratio::from_integer(6));
    assert!(pairs.iter().all(|pair| pair.ratio() >= least && pair.ratio() <= greatest));
    let hunting = pairs.iter().filter(|pair| *pair.ratio().numer() == i128::from(pair.driven.count())).count();
    assert!(hunting * 10 >= pairs.len() * 9, "{hunting} of {}", pairs.len());
}

fn stocked(role: Role, teeth: u16) -> bool {
    Catalogue::built_in().speedometer_gears().iter().any(|gear| gear.role == role && gear.teeth == teeth && gear.in_stock)
}

/// What a dial of 1,000 turns per mile reads at a true 60 on the demo car, with a pair of gears from the shelf.
#[track_caller]
fn check_reading(drive: u16, driven: u16, wanted_mph: f64) {
    const TOLERANCE_MPH: f64 = 0.05;
    assert!(stocked(Role::Drive, drive) && stocked(Role::Driven, driven));
    let cable_turns_per_mile = 1609.344 / 1.8788 * (43.0 / 11.0) * f64::from(drive) / f64::from(driven);
    let reading = 60.0 * cable_turns_per_mile / 1000.0;
    assert!((reading - wanted_mph).abs() < TOLERANCE_MPH, "{drive} drive {driven} driven reads {reading}");
}

#[test]
fn the_shelf_holds_what_the_demo_car_needs() {
    // By hand: 1609.344 / 1.8788 = 856.58 turns of the wheel a mile, × 43/11 = 3348.4 of the shaft.
    check_reading(8, 28, 57.4); // × 8/28 = 956.7: 4.3 % low
    check_reading(7, 23, 61.1); // × 7/23 = 1019.1
    check_reading(6, 20, 60.3); // × 6/20 = 1004.5
}

#[test]
fn six_and_twenty_is_the_best_pair_for_the_demo_car() {
    let shelf = Catalogue::built_in().speedometer_gears();
    let shaft = shaft_turns(43.0 / 11.0, dial::per_mile(1609.344 / 1.8788));
    for in_stock in [true, false] {
        let wanted = Wanted { shaft, dial: Dial::default(), drive: None, adapters: false, in_stock, keep: 1 };
        let best = rank_shelf(&shelf, &wanted).best[0];
        assert_eq!((shelf[best.drive].name.as_str(), shelf[best.driven].name.as_str()), ("Curlew drive 6", "Curlew driven 20"));
    }
}

#[test]
fn speedometer_gears_come_in_groups_that_mesh() {
    let gears = Catalogue::built_in().speedometer_gears();
    let gears = || gears.iter();
    let housings: BTreeSet<_> = gears().map(|gear| &gear.housing).collect();
    assert!(housings.len() >= 4);
    for housing in housings {
        let group = || gears().filter(|gear| gear.housing == *housing);
        let has = |role| group().any(|gear| gear.role == role);
        assert!(has(Role::Drive) && has(Role::Driven), "{housing}");
        let hands: BTreeSet<_> = group().filter(|gear| gear.role != Role::Adapter).map(|gear| gear.hand).collect();
        assert!(hands.len() == 1 && !hands.contains(&None), "{housing}: crossed helical gears on shafts at right angles have one hand");
    }
    assert!(gears().filter(|gear| gear.role == Role::Adapter).count() >= 4);
}

#[test]
fn the_demo_job_is_made_of_the_catalogue() {
    let catalogue = Catalogue::built_in();
    for setup in demo::job().setups {
        let set = catalogue.entries(PartKind::GearSet).find(|set| set.title() == setup.gearbox.name).expect("its gear set");
        assert_eq!(Picked::picked(set), setup.gearbox);
        assert!(catalogue.entries(PartKind::RingAndPinion).any(|axle| axle.title() == setup.final_drive));
        assert!(catalogue.entries(PartKind::Tyre).any(|tyre| tyre.title() == setup.tyre.text));
    }
}

/// Nobody checks them when they are read.
#[test]
fn every_built_in_entry_is_written_as_the_catalogue_takes_it() {
    for entry in PartKind::ALL.into_iter().flat_map(built_in) {
        assert_eq!(entry.checked().as_ref(), Ok(&entry), "{}", entry.title());
    }
}
