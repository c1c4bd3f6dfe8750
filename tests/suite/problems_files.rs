//! Job files: one of the first shape with every layout still opens; what cannot be opened says why, what can be mended is.

use layshaft::gearing::{Layout, Place};
use layshaft::job::{SetupId, file};
use layshaft::problem::Explain;
use layshaft::questions::build;
use layshaft::sheet::Words;
use layshaft::units::System;

use crate::any_job::figure;

const FIRST: &str = include_str!("../saved/job-v1-layouts.json");

#[test]
fn the_first_shape_still_opens() {
    let job = file::from_text(FIRST).unwrap();
    assert_eq!((job.title.as_str(), job.units, job.setups.len()), ("Kept in the first shape (invented)", System::Inch, 2));
    assert_eq!((job.shift.text.as_str(), job.cruise.units), ("6,250", System::Metric));
    let [first, second] = job.setups.as_slice() else { panic!("two setups") };
    assert_eq!((first.gearbox.layout, first.gearbox.idler.as_str(), first.gearbox.altered), (Layout::OutputReduced, "20/16", true));
    assert_eq!(
        (second.gearbox.layout, second.stages[0].place, second.stages[0].name.as_str()),
        (Layout::TwoShaft, Place::BehindAxle, "hubs")
    );
    assert_eq!(
        (second.gearbox.gears[3].as_str(), second.tyre.text.as_str()),
        ("not counted yet", "165R13"),
        "what was typed stays as typed"
    );
    // 36/20 × 36/20 = 3.24; × 4.1 = 13.284.
    let sheet = build(&job, Words::Us);
    assert_eq!((figure(&sheet, 0, "gear_1.ratio").shown.as_str(), figure(&sheet, 0, "gear_1.overall").shown.as_str()), ("3.240", "13.284"));
    assert_eq!(file::from_text(&file::to_text(&job)), Ok(job));
}

/// What is wrong with a file, and what to do.
#[track_caller]
fn check(text: &str, what: &str, what_to_do: &str) {
    let why = file::from_text(text).unwrap_err();
    assert_eq!((why.what().as_str(), why.what_to_do().as_str()), (what, what_to_do));
}

#[test]
fn files_that_are_refused() {
    let choose = "choose a file that was saved as a job here";
    check(
        &FIRST.replace("\"schema\": 1", "\"schema\": 99"),
        "the job was kept by a newer version (shape 99)",
        "load the page again to get the newer version; the job stays as it is",
    );
    check("", "the text is not a job (EOF while parsing a value at line 1 column 0)", choose);
    check("[1, 2]", "the text is not a job (it names no schema)", choose);
    check("{\"schema\": \"1\"}", "the text is not a job (it names no schema)", choose);
    check("{\"schema\": 1}", "the text is not a job (missing field `title`)", choose);
    check("{\"schema\": 1,", "the text is not a job (EOF while parsing a value at line 1 column 13)", choose);
    let long = " ".repeat(file::LONGEST + 1);
    check(&long, "the text has 2000001 bytes, more than any job", choose);
}

/// The first file with one change to it.
fn changed(change: impl FnOnce(&mut serde_json::Value)) -> String {
    let mut value = serde_json::from_str(FIRST).unwrap();
    change(&mut value);
    value.to_string()
}

#[test]
fn sizes_that_do_not_fit_a_sheet() {
    check(&changed(|job| job["setups"] = serde_json::json!([])), "the job holds no setup", "choose a job of 1 to 6 setups");
    let seven = changed(|job| {
        let setup = job["setups"][0].clone();
        job["setups"] = serde_json::Value::Array(vec![setup; 7]);
    });
    check(&seven, "the job holds 7 setups", "choose a job of 1 to 6 setups");
    let nine = changed(|job| job["setups"][0]["gearbox"]["gears"] = vec!["25/30"; 9].into());
    check(&nine, "the setup “Output-reduced” has 9 forward gears", "choose a job with at most 8 forward gears a setup");
    let stages = changed(|job| job["setups"][1]["stages"] = vec![serde_json::json!({"place": "before-axle", "drive": "1.1"}); 5].into());
    check(&stages, "the setup “Two-shaft” has 5 extra stages", "choose a job with at most 4 extra stages a setup");
}

#[test]
fn ids_that_clash_or_leave_no_room_are_mended() {
    for (first, second, next) in [(1, 1, 0), (7, 7, 3), (u32::MAX, u32::MAX, u32::MAX), (0, u32::MAX, 1)] {
        let text = changed(|job| {
            job["setups"][0]["id"] = first.into();
            job["setups"][1]["id"] = second.into();
            job["next_setup"] = next.into();
        });
        let mut job = file::from_text(&text).unwrap();
        let added: Vec<Option<SetupId>> = (0..4).map(|_| job.add_setup()).collect();
        assert!(added.iter().all(Option::is_some));
        let mut ids: Vec<_> = job.setups.iter().map(|setup| setup.id).collect();
        ids.sort();
        ids.dedup();
        assert_eq!(ids.len(), 6, "{first}, {second}, {next}: {ids:?}");
    }
}

#[test]
fn a_setup_without_gears_gets_one_to_type_into() {
    let job = file::from_text(&changed(|job| job["setups"][0]["gearbox"]["gears"] = serde_json::json!([]))).unwrap();
    assert_eq!(job.setups[0].gearbox.gears, [""]);
}
