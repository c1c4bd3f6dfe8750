//! Any text as a file from outside: it never panics; a job that opens is written and opened again the same, and has a sheet.
#![no_main]

use std::sync::LazyLock;

use layshaft::catalogue::Catalogue;
use layshaft::job::backup;
use layshaft::job::book::{Record, RecordId};
use layshaft::job::incoming::{self, Incoming};
use layshaft::job::listing::{self, Line};
use layshaft::job::{Job, file};
use layshaft::problem::Explain;
use layshaft::sheet::{self, Words, export};
use libfuzzer_sys::fuzz_target;

static SHELF: LazyLock<Catalogue> = LazyLock::new(Catalogue::built_in);

fn use_job(job: &Job) {
    assert_eq!(file::from_text(&file::to_text(job)).as_ref(), Ok(job));
    let sheet = sheet::build(job, Words::Uk);
    assert!(export::csv(job, &sheet).starts_with("\"section\",\"row\""));
}

fn use_record(record: &Record) {
    assert_eq!(Record::from_text(&record.to_text()).as_ref(), Ok(record));
    let line = Line::of(record);
    assert!(line.answers(&line.title));
    let _ = listing::when(&record.head.changed, "2026-11-25");
}

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match incoming::read(text) {
        Ok(Incoming::Job(job)) => use_job(&job),
        Ok(Incoming::Book(found)) => {
            found.records.iter().for_each(use_record);
            let plan = backup::plan(&found.records, &SHELF, *found.clone());
            let _ = plan.writes(|| RecordId::fresh(1, 1));
        }
        Err(error) => assert!(!error.what().is_empty() && !error.what_to_do().is_empty()),
    }
});
