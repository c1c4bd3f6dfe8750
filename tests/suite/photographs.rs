//! Photographs: named by what they show, in the backup and out of it again, on the right part and the right job.

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::job::backup::{self, Backup, Take};
use layshaft::job::book::{Head, Record, RecordId};
use layshaft::job::incoming::{self, Incoming};
use layshaft::job::photographs::{Photograph, Subject, scaled};
use layshaft::job::{Job, demo};
use proptest::prelude::*;

/// The first bytes of a JPEG file (ISO/IEC 10918-1: SOI, then APP0), and something behind them.
const JPEG: [u8; 6] = [0xff, 0xd8, 0xff, 0xe0, 1, 2];

fn id(number: u32) -> RecordId {
    RecordId::fresh(1_000, number)
}

fn record(number: u32, title: &str) -> Record {
    Record::new(Head { revision: 3, ..Head::new(id(number), "2026-01-02T10:00:00") }, Job { title: title.into(), ..demo::job() })
}

fn step(job: u32, what: &str) -> Subject {
    Subject::Step { job: id(job), what: what.into() }
}

fn taken(subject: &Subject) -> Photograph {
    Photograph { name: subject.photograph(&id(77)), jpeg: JPEG.to_vec() }
}

fn opened(text: &str) -> Backup {
    match incoming::read(text).unwrap() {
        Incoming::Book(backup) => *backup,
        Incoming::Job(_) => Backup::default(),
    }
}

proptest! {
    #[test]
    fn a_name_says_what_the_photograph_shows(what in "\\PC{0,30}", job in any::<u32>(), kind in 0..PartKind::ALL.len()) {
        let part = Subject::Part { kind: PartKind::ALL[kind], id: what.clone() };
        for subject in [step(job, &what), part] {
            prop_assert_eq!(Subject::of(&subject.photograph(&id(5))), Some(subject));
        }
    }

    #[test]
    fn a_picture_is_made_no_larger_than_is_kept_and_keeps_its_shape(width in 1..20_000_u32, height in 1..20_000_u32) {
        let (across, down) = scaled(width, height);
        prop_assert!(across >= 1 && down >= 1 && across.max(down) <= 1_600);
        prop_assert!(width.max(height) > 1_600 || (across, down) == (width, height));
        // The other side is off by less than a pixel.
        let (width, height) = (f64::from(width), f64::from(height));
        let exact = (width * 1_600.0 / width.max(height)).min(width);
        prop_assert!((f64::from(across) - exact).abs() <= 1.0, "{} for {}", across, exact);
    }
}

#[test]
fn photographs_come_back_on_the_same_job() {
    let book = [record(1, "One"), record(2, "Two")];
    let all = [taken(&step(1, "end play, dry")), taken(&step(2, "case"))];
    let text = backup::to_text_with(&book, &Catalogue::built_in(), &all, "", "2026-11-28T10:00:00");
    let backup = opened(&text);
    assert_eq!((backup.photographs.as_slice(), backup.refused.len()), (all.as_slice(), 0));

    // Into an empty book.
    let plan = backup::plan(&[], &Catalogue::built_in(), backup.clone());
    let written = plan.writes_of(|| id(99));
    assert_eq!(plan.photographs_of(&written), all);
    // Into the same book, whose photographs may be gone.
    let plan = backup::plan(&book, &Catalogue::built_in(), backup.clone());
    assert_eq!(plan.photographs_of(&plan.writes_of(|| id(99))), all);
    // Beside a job that says something else: they go with the copy, and not with what is left as it is.
    let mut plan = backup::plan(&[record(1, "Changed")], &Catalogue::built_in(), backup);
    let written = plan.writes_of(|| id(99));
    let names: Vec<String> = plan.photographs_of(&written).into_iter().map(|photograph| photograph.name).collect();
    assert_eq!(names, [step(99, "end play, dry").photograph(&id(77)), step(2, "case").photograph(&id(77))]);
    for meeting in &mut plan.meetings {
        meeting.take = Take::Ours;
    }
    assert_eq!(plan.photographs_of(&plan.writes_of(|| id(99))).len(), 1, "the job that is new is written with its photograph");
}

#[test]
fn a_photograph_of_a_part_stays_with_the_part_that_says_the_same() {
    let shelf = |drives: &[&str]| {
        let axle = |drive: &&str| Entry::new(PartKind::RingAndPinion).with(Column::Drive, *drive);
        Catalogue::built_in().with_own(drives.iter().map(axle).collect())
    };
    let of = |catalogue: &Catalogue, drive: &str| {
        let entry = catalogue.own(PartKind::RingAndPinion).find(|entry| entry.text(Column::Drive) == drive).unwrap();
        Subject::Part { kind: PartKind::RingAndPinion, id: entry.id.clone() }
    };
    let theirs = shelf(&["41/11", "43/11"]);
    let text = backup::to_text_with(&[], &theirs, &[taken(&of(&theirs, "43/11"))], "", "");
    // Here another entry has the id that 43/11 has there.
    let Subject::Part { id: taken_id, .. } = of(&theirs, "43/11") else { return };
    let other = Entry::new(PartKind::RingAndPinion).with(Column::Id, taken_id).with(Column::Drive, "40/11");
    let here = Catalogue::built_in().with_own(vec![other]);
    let plan = backup::plan(&[], &here, opened(&text));
    let after = here.joined(&plan.catalogue.as_ref().unwrap().0).0;
    assert_eq!(plan.photographs_of(&[]), [taken(&of(&after, "43/11"))]);
    assert_ne!(of(&after, "43/11"), of(&theirs, "43/11"), "the id was taken");
}

#[test]
fn what_is_no_photograph_is_said_and_the_rest_is_read() {
    let whole = backup::to_text_with(&[record(1, "One")], &Catalogue::built_in(), &[taken(&step(1, "case"))], "", "");
    for (good, bad) in [("/9j/", "AAAA"), ("step/", "stop/"), ("/9j/", "not base64"), ("\"jpeg\"", "\"png\"")] {
        let backup = opened(&whole.replace(good, bad));
        assert_eq!((backup.records.len(), backup.photographs.len()), (1, 0), "{bad}");
        assert_eq!(backup.refused, ["1 of the 1 photographs in the file cannot be read."], "{bad}");
    }
}
