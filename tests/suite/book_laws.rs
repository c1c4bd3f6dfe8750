//! The book of jobs: what is written reads back, a restore loses nothing, a list finds and sorts.

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::job::backup::{self, Standing, Take};
use layshaft::job::book::{Head, Progress, Record, RecordId, revision_of};
use layshaft::job::incoming::{self, Incoming};
use layshaft::job::listing::{Line, Order, sort, when};
use layshaft::job::{Job, demo};
use layshaft::units::System;
use proptest::prelude::*;

fn id(number: u32) -> RecordId {
    RecordId::fresh(1_000, number)
}

fn record(number: u32, title: &str, changed: &str) -> Record {
    let job = Job { title: title.into(), ..demo::job() };
    Record::new(Head { changed: changed.into(), revision: 3, ..Head::new(id(number), "2026-01-02T10:00:00") }, job)
}

fn opened(text: &str) -> backup::Backup {
    match incoming::read(text).unwrap() {
        Incoming::Book(backup) => *backup,
        Incoming::Job(_) => backup::Backup::default(),
    }
}

#[test]
fn a_record_reads_back_as_written() {
    let mut record = record(1, "Axle whine", "2026-03-04T05:06:07");
    record.head.progress = Progress::WaitingForParts;
    record.head.archived = true;
    assert_eq!(Record::from_text(&record.to_text()).unwrap(), record);
    assert_eq!(revision_of(&record.to_text()), Some(3));
}

#[test]
fn a_record_is_also_a_file_to_open() {
    let record = record(1, "Axle whine", "");
    assert_eq!(incoming::read(&record.to_text()).unwrap(), Incoming::Job(Box::new(record.job)));
}

#[test]
fn names_of_records_are_plain() {
    for name in ["", "J1", "a b", "../x", &"a".repeat(41)] {
        assert!(RecordId::try_from(name.to_owned()).is_err(), "{name}");
    }
    assert!(RecordId::try_from("j18c2f-00000001".to_owned()).is_ok());
}

#[test]
fn a_backup_of_hundred_jobs_reads_back_and_adds_nothing_to_the_same_book() {
    let book: Vec<Record> = (0..100).map(|at| record(at, &format!("Job {at}"), "2026-03-04T05:06:07")).collect();
    let backup = opened(&backup::to_text(&book, &Catalogue::built_in(), "2026-11-25T10:00:00"));
    assert_eq!((backup.records.len(), backup.saved.as_str()), (100, "2026-11-25T10:00:00"));
    let plan = backup::plan(&book, &Catalogue::built_in(), backup);
    assert_eq!((plan.many(Standing::New), plan.many(Standing::Different), plan.many(Standing::Same)), (0, 0, 100));
    assert!(plan.writes(|| id(999)).is_empty());
}

#[test]
fn a_restore_shows_what_is_new_same_and_different_and_by_default_loses_nothing() {
    let here = [record(1, "Same", ""), record(2, "Here", "2026-05-01T08:00:00")];
    let file = vec![record(1, "Same", "2020-01-01"), record(2, "There", ""), record(3, "New", "")];
    let mut plan = backup::plan(&here, &Catalogue::built_in(), opened(&backup::to_text(&file, &Catalogue::built_in(), "")));
    let seen: Vec<_> = plan.meetings.iter().map(|meeting| (meeting.standing, meeting.theirs.job.title.as_str())).collect();
    assert_eq!(seen, [(Standing::New, "New"), (Standing::Different, "There"), (Standing::Same, "Same")]);

    let writes = plan.writes(|| id(99));
    let titles: Vec<_> = writes.iter().map(|record| (record.head.id.clone(), record.job.title.as_str())).collect();
    assert_eq!(titles, [(id(3), "New"), (id(99), "There, from the file")]);

    plan.meetings[1].take = Take::Theirs;
    let writes = plan.writes(|| id(99));
    assert_eq!((writes[1].head.id.clone(), writes[1].head.revision, writes[1].job.title.as_str()), (id(2), 4, "There"));

    plan.meetings[1].take = Take::Ours;
    assert_eq!(plan.writes(|| id(99)).len(), 1);
}

#[test]
fn one_broken_job_does_not_keep_the_others_from_the_book() {
    let text = backup::to_text(&[record(1, "First", ""), record(2, "Second", "")], &Catalogue::built_in(), "").replacen(
        "\"title\": \"First\"",
        "\"title\": 7",
        1,
    );
    let backup = opened(&text);
    assert_eq!(backup.records.len(), 1);
    assert!(backup.refused[0].starts_with("Job 1 of the file cannot be opened: "), "{:?}", backup.refused);
}

#[test]
fn the_shops_own_catalogue_entries_travel_with_the_book_and_stand_beside_those_here() {
    let set = |name: &&str| {
        let texts = [(Column::Name, *name), (Column::Constant, "30/20"), (Column::Gear(1), "35/15"), (Column::Gear(2), "direct")];
        texts.into_iter().fold(Entry::new(PartKind::GearSet), |set, (column, text)| set.with(column, text))
    };
    let with = |names: &[&str]| Catalogue::built_in().add_all(names.iter().map(set).collect());
    let text = backup::to_text(&[], &with(&["Ours", "Theirs"]), "");
    let plan = backup::plan(&[], &with(&["Ours"]), opened(&text));
    assert!(plan.refused.is_empty(), "{:?}", plan.refused);
    let (theirs, added) = plan.catalogue.unwrap();
    assert_eq!(added, 1);
    let catalogue = with(&["Ours"]).joined(&theirs).0;
    let own: Vec<_> = catalogue.own(PartKind::GearSet).map(Entry::title).collect();
    assert_eq!(own, ["Ours", "Theirs"]);
    assert_eq!(backup::plan(&[], &catalogue, opened(&text)).catalogue, None);
}

#[test]
fn two_jobs_of_one_name_in_a_file_both_arrive() {
    let file = [record(1, "First", ""), record(1, "Second", "")];
    let writes = backup::plan(&[], &Catalogue::built_in(), opened(&backup::to_text(&file, &Catalogue::built_in(), ""))).writes(|| id(50));
    assert_eq!(writes.iter().map(|record| record.head.id.clone()).collect::<Vec<_>>(), [id(1), id(50)]);
}

#[test]
fn a_search_finds_every_word_anywhere_in_the_job() {
    let line = Line::of(&record(1, "Fernhill, hill climb", ""));
    for search in ["", "hill", "CLIMB fern", "invented customer", "redshank 185/70r14", "asked", "43/11"] {
        assert!(line.answers(search), "{search}");
    }
    for search in ["hill road-race", "climbb"] {
        assert!(!line.answers(search), "{search}");
    }
}

#[test]
fn the_list_is_sorted_as_asked() {
    let mut first = record(1, "b", "2026-01-01T00:00:00");
    first.job.customer = String::new();
    let mut second = record(2, "A", "2026-01-02T00:00:00");
    second.job.customer = "Zed".into();
    second.head.progress = Progress::Done;
    let order = |order| {
        let mut lines = vec![Line::of(&first), Line::of(&second)];
        sort(&mut lines, order);
        lines.into_iter().map(|line| line.title).collect::<Vec<_>>()
    };
    assert_eq!(order(Order::Newest), ["A", "b"]);
    assert_eq!(order(Order::Title), ["A", "b"]);
    assert_eq!(order(Order::Customer), ["A", "b"], "without a customer stands last");
    assert_eq!(order(Order::Progress), ["b", "A"]);
    let mut begun = [1, 2].map(|number| Line::of(&record(number, &number.to_string(), "2026-01-01T00:00:00")));
    for _ in 0..2 {
        let mut lines = begun.to_vec();
        sort(&mut lines, Order::Newest);
        assert_eq!(
            lines.iter().map(|line| line.title.as_str()).collect::<Vec<_>>(),
            ["2", "1"],
            "in one second the one begun later is first"
        );
        begun.reverse();
    }
}

#[test]
fn days_are_said_as_a_person_says_them() {
    for (time, said) in [
        ("2026-11-25T09:31:17", "today"),
        ("2026-11-05T23:59:59", "5 Nov 2026"),
        ("2024-02-29", "29 Feb 2024"),
        ("2026-13-01", "2026-13-01"),
        ("yesterday", "yesterday"),
        ("", ""),
    ] {
        assert_eq!(when(time, "2026-11-25T10:00:00"), said);
    }
}

#[test]
fn a_title_becomes_a_file_name_of_any_system() {
    for (title, name) in [
        ("Fernhill coupé, hill climb", "fernhill-coupé-hill-climb.json"),
        ("../../etc/passwd", "etc-passwd.json"),
        ("?", "job.json"),
        ("  ", "job.json"),
    ] {
        assert_eq!(incoming::file_name(title, "json"), name);
    }
}

#[test]
fn an_empty_job_in_either_units_is_a_job() {
    for units in [System::Inch, System::Metric] {
        let record = Record::new(Head::new(id(1), ""), demo::empty(units));
        assert_eq!(Record::from_text(&record.to_text()).unwrap(), record);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_as_a_file_is_answered(text in any::<String>()) {
        let _ = incoming::read(&text);
    }

    #[test]
    fn any_text_for_a_member_of_a_record_is_answered(at in 0_usize..3_000, junk in "[\\{\\}\\[\\],:\"0-9a-z-]{0,6}") {
        let mut text = record(1, "Broken", "").to_text();
        let at = (0..=at.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap();
        text.insert_str(at, &junk);
        let _ = Record::from_text(&text);
        let _ = incoming::read(&text);
    }

    #[test]
    fn any_time_is_said(time in any::<String>(), today in any::<String>()) {
        let _ = when(&time, &today);
    }
}
