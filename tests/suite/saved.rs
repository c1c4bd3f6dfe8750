//! Every file ever written still opens. Files in tests/saved are never edited: a new shape gets a new file.

use layshaft::catalogue::{PartKind, saved};
use layshaft::driveline::Yokes;
use layshaft::job::{Job, demo, file, incoming, link};
use serde_json::{Value, json};

#[track_caller]
fn opens(text: &str) -> Job {
    let job = match incoming::read(text).unwrap() {
        incoming::Incoming::Job(job) => Some(*job),
        incoming::Incoming::Book(_) => None,
    };
    job.unwrap()
}

#[test]
fn a_job_of_the_first_shape_opens() {
    let job = opens(include_str!("../saved/job-v1.json"));
    assert_eq!(job.title, "Fernhill coupé, hill climb and the drive home");
    assert_eq!((job.setups.len(), job.next_setup, job.for_customer), (3, 4, None));
    // A set that the catalogue calls otherwise today keeps its name and its counts.
    assert_eq!((job.setups[2].gearbox.name.as_str(), job.setups[2].gearbox.gears[4].as_str()), ("Plover five", "20/35"));
    assert_eq!((job.shift.text.as_str(), job.setups[0].tyre.text.as_str()), ("6,500", "185/70R14"));
}

#[test]
fn a_job_of_the_second_shape_opens() {
    let job = opens(include_str!("../saved/job-v2.json"));
    let inside = &job.setups[0].inside;
    let cones = [&inside.cone_angle, &inside.cone_friction, &inside.clutch_diameter].map(|typed| typed.text.as_str());
    assert_eq!((cones, inside.cones.as_str(), inside.pair_cuts.text.as_str()), (["7", "0.09", "7.25"], "2", "1st 8 DP 0°; R 7 DP"));
    let shaft = &job.setups[0].shaft;
    let slopes = [&shaft.gearbox_slope, &shaft.slopes, &shaft.pinion_slope].map(String::as_str);
    assert_eq!((slopes, shaft.yokes.value()), (["3 down", "3 down; 5 down, 1 right", "3 up"], Some(Yokes::LastTurned)));
    let bench = &job.bench;
    assert_eq!((bench.tag.as_str(), bench.cable.text.as_str(), bench.dial.text.as_str()), ("43 1?", "12 1/4 in 52.8 ft", "1,152"));
}

#[test]
fn a_record_of_the_first_shape_opens() {
    let record = layshaft::job::book::Record::from_text(include_str!("../saved/record-v1.json")).unwrap();
    assert_eq!((record.head.id.as_str(), record.head.revision, record.head.progress.words()), ("j19a-00000007", 12, "waiting for parts"));
    assert_eq!(record.job.setups.len(), 1);
}

#[test]
fn a_record_of_the_second_shape_opens() {
    let record = layshaft::job::book::Record::from_text(include_str!("../saved/record-v2.json")).unwrap();
    assert_eq!((record.head.revision, record.head.progress.words()), (12, "asked"));
    assert_eq!((record.job.quote.note.as_str(), record.job.quote.lines.as_str()), ("ready on Friday", "Labour: 450 EUR"));
    // A record of the first shape that names no step was one that had been quoted.
    let first = include_str!("../saved/record-v1.json").replace(r#""progress":"waiting-for-parts","#, "");
    assert_eq!(layshaft::job::book::Record::from_text(&first).unwrap().head.progress.words(), "quoted");
}

#[test]
fn a_backup_of_the_first_shape_opens() {
    let book = match incoming::read(include_str!("../saved/backup-v1.json")).unwrap() {
        incoming::Incoming::Book(book) => *book,
        incoming::Incoming::Job(job) => panic!("the job “{}”", job.title),
    };
    assert_eq!((book.records.len(), book.refused.len(), book.saved.as_str()), (2, 0, "2026-11-25T10:00:00"));
    assert_eq!(book.records[0].job.title, "Fernhill coupé, hill climb and the drive home");
    assert_eq!((book.records[1].head.archived, book.records[1].head.progress.words()), (true, "done"));
    assert_eq!(book.catalogue, Some(saved::from_text(CATALOGUE).unwrap()));
}

const CATALOGUE: &str = include_str!("../saved/catalogue-v1.json");

#[test]
fn the_shops_own_entries_of_the_first_shape_open() {
    let catalogue = saved::from_text(CATALOGUE).unwrap();
    let own = |kind| catalogue.own(kind).cloned().collect::<Vec<_>>();
    let set = &own(PartKind::GearSet)[0];
    assert_eq!(
        (set.title(), set.gears(), set.in_stock()),
        ("Quarry close, half counted", vec!["35/15".into(), "2?/18".into(), "direct".into()], true)
    );
    assert_eq!(own(PartKind::RingAndPinion)[0].title(), "41/10");
    assert_eq!((own(PartKind::Tyre)[0].title(), own(PartKind::Tyre)[0].in_stock()), ("185/70R14", false));
    let gears = catalogue.speedometer_gears();
    let gears: Vec<_> = gears.iter().filter(|gear| gear.housing == "small").map(|gear| (gear.teeth, gear.second)).collect();
    assert_eq!(gears, [(19, None), (20, Some(21))]);
}

#[test]
fn the_shops_own_entries_of_this_version_open_and_are_written_with_its_members() {
    let value = |text: &str| serde_json::from_str::<Value>(text).unwrap();
    let text = include_str!("../saved/catalogue-v2.json");
    let catalogue = saved::from_text(text).unwrap();
    assert_eq!(
        value(&saved::to_text(&catalogue)),
        value(text),
        "a column was added: raise SCHEMA in src/catalogue/saved.rs and add a file of the new version to tests/saved"
    );
    for kind in PartKind::ALL {
        let filled = |column| catalogue.own(kind).any(|entry| !entry.text(column).is_empty());
        assert!(kind.columns().all(filled), "{kind:?}: a column was added: fill it in a file of the new version");
    }
}

#[test]
fn a_link_of_the_first_shape_opens() {
    assert_eq!(link::open(include_str!("../saved/link-v1.txt").trim()), Ok(opens(include_str!("../saved/job-v1.json"))));
}

#[test]
fn a_file_with_the_least_in_it_opens() {
    let text = json!({
        "schema": 1, "title": "Least", "shift": {"text": ""}, "cruise": {"text": ""}, "next_setup": 0,
        "setups": [{"id": 4, "name": "", "gearbox": {"name": "", "layout": layout(), "gears": []}, "final_drive": "", "tyre": {"text": ""}}],
    });
    let job = opens(&text.to_string());
    assert_eq!((job.customer.as_str(), job.next_setup), ("", 5));
}

#[test]
fn setups_of_one_id_are_told_apart() {
    let mut job = demo::job();
    job.setups[1].id = job.setups[0].id;
    let job = opens(&file::to_text(&job));
    let ids: std::collections::BTreeSet<_> = job.setups.iter().map(|setup| setup.id).collect();
    assert_eq!(ids.len(), 3);
}

fn layout() -> Value {
    serde_json::to_value(layshaft::gearing::Layout::TwoShaft).unwrap()
}
