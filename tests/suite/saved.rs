//! Every file ever written still opens. Files in tests/saved are never edited: a new shape gets a new file.

use layshaft::job::{Job, demo, file, incoming};
use serde_json::{Value, json};

#[track_caller]
fn opens(text: &str) -> Job {
    match incoming::read(text).unwrap() {
        incoming::Incoming::Job(job) => *job,
        incoming::Incoming::Book(_) => demo::empty(layshaft::units::System::Inch),
    }
}

#[test]
fn a_job_of_the_first_shape_opens() {
    let job = opens(include_str!("../saved/job-v1.json"));
    assert_eq!(job.title, "Fernhill coupé, hill climb and the drive home");
    assert_eq!((job.setups.len(), job.next_setup, job.for_customer), (3, 4, None));
    assert_eq!(job.setups[2].gearbox.gears[4], "20/35");
    assert_eq!((job.shift.text.as_str(), job.setups[0].tyre.text.as_str()), ("6,500", "185/70R14"));
}

#[test]
fn a_record_of_the_first_shape_opens() {
    let record = layshaft::job::book::Record::from_text(include_str!("../saved/record-v1.json")).unwrap();
    assert_eq!((record.head.id.as_str(), record.head.revision, record.head.progress.words()), ("j19a-00000007", 12, "waiting for parts"));
    assert_eq!(record.job.setups.len(), 1);
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
