//! The invented parts that come with the program: when they are offered, and that no question proposes one that is hidden.

use layshaft::catalogue::demo::Standing;
use layshaft::catalogue::{Catalogue, Column, DemoParts, Entry, PartKind};
use layshaft::finder::Table;
use layshaft::job::{Job, demo};
use layshaft::questions::{OnShelf, Source, analyse_job, customer, few_words, sheet_of};
use layshaft::sheet::{Reader, Sheet, Words, suggest};
use layshaft::units::System;
use layshaft::wanted::Search;

/// An own speedometer gear, gear set and axle, as a shop might have them.
fn shop() -> Catalogue {
    let gear = |name: &str, role: &str, teeth: &str| {
        let gear = Entry::started(PartKind::SpeedometerGear).with(Column::Name, name).with(Column::Role, role);
        gear.with(Column::Teeth, teeth).with(Column::Housing, "Corner")
    };
    let set = Entry::started(PartKind::GearSet).with(Column::Name, "Corner four").with(Column::Constant, "25/30");
    let set = ["37/18", "32/23", "28/27", "direct"].into_iter().zip(Column::GEARS).fold(set, |set, (pair, gear)| set.with(gear, pair));
    let axle = Entry::started(PartKind::RingAndPinion).with(Column::Drive, "40/11");
    Catalogue::built_in().add_all(vec![gear("Corner 8", "drive", "8"), gear("Corner 28", "driven", "28"), set, axle])
}

/// Everything that a job says beside a catalogue: the sheet, the customer's page and the few words.
fn said(job: &Job, catalogue: &Catalogue) -> (Sheet, String) {
    let shelf = OnShelf::of(catalogue);
    let answers = analyse_job(job, shelf.shelves());
    let source = Source::new(job, &answers, shelf.shelves(), Reader { units: job.units, words: Words::Us });
    let sheet = sheet_of(source);
    let page = customer::page(source, &sheet);
    let all = format!("{sheet:?}{page:?}{}", few_words::text(source));
    (sheet, all)
}

/// A job of the shop: its own car and parts, and counts on the bench that some demo sets fit.
fn job_of_the_shop() -> Job {
    let mut job = demo::job();
    job.car = "A coupé of the shop's".into();
    for setup in &mut job.setups {
        setup.gearbox.name = "Corner four".into();
    }
    job.bench.mix_cluster = "Corner four".into();
    job.bench.first = "37/18".into();
    job.bench.second = "32/23".into();
    job.bench.ladder = "2.47 1.67 1.24 1.00".into();
    job
}

#[test]
fn where_nothing_is_said_they_are_offered_until_the_shop_has_its_own() {
    use DemoParts::{Hidden, Shown, Unsaid};
    let rows = [
        // what is said, has its own, is the demo job, offered
        (Unsaid, false, false, true),
        (Unsaid, false, true, true),
        (Unsaid, true, false, false),
        (Unsaid, true, true, true),
        (Shown, true, false, true),
        (Hidden, false, false, false),
        (Hidden, true, true, false),
    ];
    for (said, has_own, is_demo_job, offered) in rows {
        let standing = Standing { has_own, is_demo_job };
        assert_eq!(said.are_offered(standing), offered, "{said:?} {standing:?}");
        assert_eq!(said.reason(standing).starts_with("On"), offered, "{said:?} {standing:?}");
        assert_eq!(DemoParts::read(said.id()), said);
    }
    assert_eq!(DemoParts::read("what a later version may say"), Unsaid);
}

#[test]
fn the_demo_job_is_the_demos_until_another_car_is_written_over_it() {
    let mut job = demo::job();
    assert!(demo::is_demo(&job) && !demo::is_demo(&demo::empty(System::Inch)));
    job.car.push('!');
    assert!(!demo::is_demo(&job));
}

#[test]
fn a_hidden_part_is_offered_nowhere_and_known_by_name() {
    let hidden = shop().offering(false);
    for kind in PartKind::ALL {
        assert!(hidden.entries(kind).all(|entry| entry.own));
        assert!(hidden.found(kind, "", usize::MAX, None).entries.iter().all(|entry| entry.own));
        assert_eq!(hidden.known(kind).count(), shop().entries(kind).count());
    }
    assert!(hidden.get(PartKind::GearSet, "curlew-four-wide").is_some());
    assert!(hidden.speedometer_gears().iter().all(|gear| gear.own));
    let table = Table::of(&hidden);
    assert_eq!((table.sets.len(), table.axles.len(), table.tyres.len()), (1, 1, 0));
    let listed = |kind| suggest::parts(&hidden, kind, System::Inch).len();
    assert_eq!((listed(PartKind::RingAndPinion), listed(PartKind::Tyre), suggest::speedometer_pairs(&hidden).len()), (1, 0, 1));
    assert_eq!(hidden.whole_file(PartKind::GearSet).lines().count(), 2, "the head and the shop's own");
}

#[test]
fn no_question_proposes_a_hidden_part() {
    let job = job_of_the_shop();
    let names = ["Curlew", "Redshank", "Godwit", "Sanderling", "Wheatear", "Stonechat", "Whimbrel"];
    let (_, with) = said(&job, &shop());
    assert!(names.iter().any(|name| with.contains(name)), "offered, some are named");
    let (sheet, without) = said(&job, &shop().offering(false));
    assert!(sheet.sections.len() > 10);
    for name in names {
        assert!(!without.contains(name), "{name} is proposed: {}", without.split('"').find(|text| text.contains(name)).unwrap_or_default());
    }
    let shelf = OnShelf::of(&shop().offering(false));
    let shelves = shelf.shelves();
    assert!(shelves.axles.iter().all(|axle| axle.entry.own) && shelves.gear_sets.iter().all(|set| set.entry.own));
    assert!(without.contains("Corner, "), "the shop's own speedometer gears are proposed");
}

#[test]
fn a_figure_asked_backwards_answers_with_the_shops_own_alone() {
    let (job, hidden) = (demo::job(), shop().offering(false));
    let mut search = Search::new(&job, job.setups[0].id, Words::Us, &hidden, "cruise_rpm", 3_000.0).unwrap();
    while !search.advance(10) {}
    let best = search.best();
    assert!(!best.is_empty() && best.iter().all(|change| change.part.own), "{best:?}");
}

#[test]
fn a_job_made_from_the_demo_keeps_what_it_uses() {
    let (mut job, hidden) = (demo::job(), Catalogue::built_in().offering(false));
    job.bench.mix_cluster = "Curlew four, wide".into();
    let (sheet, _) = said(&job, &hidden);
    let (before, _) = said(&job, &Catalogue::built_in());
    let row = |sheet: &Sheet, section: &str, key: &str| {
        let section = sheet.sections.iter().find(|each| each.id == section).unwrap();
        section.rows.iter().find(|row| row.key == key).cloned()
    };
    for (section, key) in [("gears", "case"), ("gears", "sums"), ("gears", "overall")] {
        assert!(row(&before, section, key).is_some(), "{section} {key}");
        assert_eq!(row(&sheet, section, key), row(&before, section, key), "{section} {key}");
    }
    let mesh = |sheet: &Sheet| sheet.sections.iter().find(|each| each.id == "mesh").map(|section| section.rows.clone());
    assert_eq!(mesh(&sheet), mesh(&before), "parts of a set that was chosen stay chosen");
}

/// A size of the shop's own that the demo has too is the shop's: it must not go when the demo's parts do.
#[test]
fn a_file_of_sizes_is_taken_whole_beside_the_demos() {
    let file = "designation,in_stock\n185/70R14,yes\n165-13,yes\n";
    for catalogue in [Catalogue::built_in(), Catalogue::built_in().offering(false)] {
        let plan = catalogue.plan(file).unwrap();
        assert_eq!((plan.new.len(), plan.same.len()), (2, 0));
        let after = Catalogue::built_in().apply(&plan, layshaft::catalogue::import::Differing::Replace);
        assert_eq!(after.own(PartKind::Tyre).count(), 2);
        assert_eq!(after.plan(file).unwrap().same.len(), 2, "read twice it adds nothing");
    }
}
