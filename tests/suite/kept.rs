//! What is kept on the device: two pages write the same texts and neither loses a change it was told was written; what an older store holds
//! comes among the rest.

use std::collections::BTreeMap;

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind, saved};
use layshaft::job::book::{Head, Record, RecordId};
use layshaft::job::kept::{ASIDE, CATALOGUE, CATALOGUE_ASIDE, GOOD, RECORD, is_kept, take_in};
use layshaft::job::{Job, demo};
use layshaft::ledger::Ledger;
use proptest::prelude::*;

fn record(number: u32, revision: u64, title: &str) -> Record {
    let job = Job { title: title.into(), ..demo::job() };
    Record::new(Head { revision, ..Head::new(RecordId::fresh(1_000, number), "2026-01-02T10:00:00") }, job)
}

fn key(record: &Record) -> String {
    format!("{RECORD}{}", record.head.id.as_str())
}

/// A ledger that has a text written under a key.
fn with(key: &str, text: &str) -> Ledger {
    Ledger::of(BTreeMap::from([(key.to_owned(), text.to_owned())]))
}

fn fresh() -> RecordId {
    RecordId::fresh(2_000, 9)
}

/// Every job of a ledger: its title and revision.
fn jobs(ledger: &Ledger) -> Vec<(String, u64)> {
    let texts = ledger.keys(RECORD).filter_map(|key| ledger.text(key));
    texts.map(|text| Record::from_text(text).unwrap()).map(|record| (record.job.title, record.head.revision)).collect()
}

#[test]
fn what_waits_is_what_differs_from_what_is_written() {
    let mut ledger = with("a", "1");
    ledger.put("a", Some("2"));
    ledger.put("b", Some("new"));
    assert_eq!(ledger.changes().len(), 2);
    ledger.put("a", Some("1"));
    assert!(!ledger.is_behind("a"), "what is put back to what is written does not wait");
    ledger.put("b", Some("newer"));
    let first = ledger.changes();
    ledger.put("b", Some("newest"));
    for change in &first {
        ledger.note_written(change);
    }
    // What was put while it was written waits upon what was.
    assert_eq!(
        ledger.changes().iter().map(|one| (one.was.as_deref(), one.now.as_deref())).collect::<Vec<_>>(),
        [(Some("newer"), Some("newest"))]
    );
    ledger.take_back("b");
    assert_eq!((ledger.text("b"), ledger.changes().len()), (Some("newer"), 0));
    ledger.put("b", None);
    assert_eq!((ledger.text("b"), ledger.changes().len()), (None, 1));
}

/// One act of two pages that share a store.
#[derive(Clone, Debug)]
enum Act {
    Put(bool, u8, Option<u8>),
    Write(bool),
}

fn acts() -> impl Strategy<Value = Vec<Act>> {
    let put = (any::<bool>(), 0..3_u8, proptest::option::of(0..4_u8)).prop_map(|(page, key, text)| Act::Put(page, key, text));
    proptest::collection::vec(prop_oneof![put, any::<bool>().prop_map(Act::Write)], 1..40)
}

/// Writes what a page waits with, as the store does: where another text stands than it was changed from, that one is taken.
fn write(ledger: &mut Ledger, disk: &mut BTreeMap<String, String>) {
    for change in ledger.changes() {
        let there = disk.get(&change.key).cloned();
        if change.fits(there.as_deref()) {
            match &change.now {
                Some(text) => disk.insert(change.key.clone(), text.clone()),
                None => disk.remove(&change.key),
            };
            ledger.note_written(&change);
        } else {
            ledger.note_theirs(&change.key, there);
        }
    }
}

proptest! {
    #[test]
    fn two_pages_never_write_over_what_they_have_not_seen(acts in acts()) {
        let (mut disk, mut pages) = (BTreeMap::new(), [Ledger::default(), Ledger::default()]);
        for act in acts {
            match act {
                Act::Put(page, key, text) => {
                    pages[usize::from(page)].put(&key.to_string(), text.map(|text| format!("{page} {text}")).as_deref());
                }
                Act::Write(page) => {
                    let before = disk.clone();
                    let page = &mut pages[usize::from(page)];
                    let seen: BTreeMap<_, _> = page.changes().into_iter().map(|change| (change.key, change.was)).collect();
                    write(page, &mut disk);
                    for (key, was) in seen {
                        let is_written_over = before.get(&key) != disk.get(&key);
                        prop_assert!(!is_written_over || before.get(&key).cloned() == was, "written over unseen: {key}");
                        prop_assert_eq!(page.text(&key), disk.get(&key).map(String::as_str), "the page shows what is written");
                    }
                    prop_assert!(page.changes().is_empty());
                }
            }
        }
    }
}

#[test]
fn an_older_store_comes_whole_into_an_empty_one() {
    let one = record(1, 3, "One");
    let mut ledger = Ledger::default();
    for key in [key(&one).as_str(), CATALOGUE, &format!("{GOOD}x"), &format!("{ASIDE}x")] {
        assert!(is_kept(key), "{key}");
        take_in(&mut ledger, key, &one.to_text(), fresh());
        assert_eq!(ledger.text(key), Some(one.to_text().as_str()));
    }
    for setting in ["layshaft.letterhead", "layshaft.open", "layshaft.demo-parts", "layshaft.backed-up", "someone.else"] {
        assert!(!is_kept(setting), "{setting} stays where it is");
    }
}

#[test]
fn of_a_job_the_later_revision_stands_and_another_state_is_a_job_of_its_own() {
    let (here, later) = (record(1, 3, "Here"), record(1, 4, "Later"));
    let mut ledger = with(&key(&here), &here.to_text());
    take_in(&mut ledger, &key(&here), &later.to_text(), fresh());
    assert_eq!(jobs(&ledger), [("Later".into(), 4)]);

    for revision in [1, 3] {
        let mut ledger = with(&key(&here), &here.to_text());
        take_in(&mut ledger, &key(&here), &record(1, revision, "Typed last").to_text(), fresh());
        assert_eq!(jobs(&ledger), [("Here".into(), 3), ("Typed last, from before".into(), 1)]);
    }
    // The same said once more adds nothing.
    let mut ledger = with(&key(&here), &here.to_text());
    take_in(&mut ledger, &key(&here), &record(1, 2, "Here").to_text(), fresh());
    assert!(ledger.changes().is_empty());
    // What cannot be read is put aside, whole.
    take_in(&mut ledger, &key(&here), "{", fresh());
    assert_eq!(ledger.text(&format!("{ASIDE}{}", here.head.id.as_str())), Some("{"));
}

#[test]
fn entries_of_an_older_store_join_those_that_are_there() {
    let own = |drive: &str| Catalogue::built_in().with_own(vec![Entry::new(PartKind::RingAndPinion).with(Column::Drive, drive)]);
    let mut ledger = with(CATALOGUE, &saved::to_text(&own("41/11")));
    take_in(&mut ledger, CATALOGUE, &saved::to_text(&own("43/11")), fresh());
    let joined = saved::from_text(ledger.text(CATALOGUE).unwrap()).unwrap();
    let drives: Vec<&str> = joined.own(PartKind::RingAndPinion).map(|entry| entry.text(Column::Drive)).collect();
    assert_eq!(drives, ["41/11", "43/11"]);

    take_in(&mut ledger, CATALOGUE, "not entries", fresh());
    take_in(&mut ledger, CATALOGUE, "nor these", fresh());
    assert_eq!(ledger.text(CATALOGUE_ASIDE), Some("not entries"));
    assert_eq!(ledger.text(&format!("{CATALOGUE_ASIDE}-2")), Some("nor these"));
}
