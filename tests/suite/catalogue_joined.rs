//! Two versions of the shop's own entries made one: a backup beside what is here, two pages of one store. Nothing of either is lost.

use layshaft::catalogue::saved::{self, SavedError};
use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::job::backup;
use layshaft::job::incoming::{self, Incoming};

fn set(name: &str, first: &str) -> Entry {
    let texts = [(Column::Name, name), (Column::Constant, "30/20"), (Column::Gear(1), first), (Column::Gear(2), "direct")];
    texts.into_iter().fold(Entry::new(PartKind::GearSet), |set, (column, text)| set.with(column, text))
}

fn with(sets: &[Entry]) -> Catalogue {
    Catalogue::built_in().add_all(sets.to_vec())
}

/// The own gear sets of a catalogue, each by its name and first gear.
fn own(catalogue: &Catalogue) -> Vec<(&str, &str)> {
    catalogue.own(PartKind::GearSet).map(|set| (set.title(), set.text(Column::Gear(1)))).collect()
}

/// The own entries of a kind.
fn all_own(catalogue: &Catalogue, kind: PartKind) -> Vec<Entry> {
    catalogue.own(kind).cloned().collect()
}

/// What stands in the catalogue after a backup of another was restored into it, and how many entries that added.
fn restored(here: &Catalogue, theirs: &Catalogue) -> (Catalogue, usize) {
    let book = match incoming::read(&backup::to_text(&[], theirs, "")).unwrap() {
        Incoming::Book(book) => *book,
        Incoming::Job(_) => backup::Backup::default(),
    };
    let plan = backup::plan(&[], here, book);
    assert_eq!(plan.refused, Vec::<String>::new());
    plan.catalogue.map_or_else(|| (here.clone(), 0), |(theirs, added)| (here.joined(&theirs).0, added))
}

#[test]
fn a_half_counted_set_comes_back_from_a_backup() {
    let half = set("Half counted", "35/15").with(Column::Constant, "30/").with(Column::Gear(2), "2?/18");
    assert!(half.checked().is_err(), "no file of lines would take it");
    let theirs = with(&[half, set("Whole", "35/15")]);
    let (after, added) = restored(&Catalogue::built_in(), &theirs);
    assert_eq!(added, 2);
    assert_eq!(all_own(&after, PartKind::GearSet), all_own(&theirs, PartKind::GearSet));
}

#[test]
fn an_entry_told_differently_here_and_in_the_backup_is_there_twice_and_not_three_times() {
    let (here, theirs) = (with(&[set("Close", "34/15")]), with(&[set("Close", "35/15")]));
    let (after, added) = restored(&here, &theirs);
    assert_eq!((own(&after), added), (vec![("Close", "34/15"), ("Close (2)", "35/15")], 1));
    assert_eq!(restored(&after, &theirs).1, 0);
    assert_eq!(restored(&theirs, &theirs).1, 0);
}

#[test]
fn a_name_that_only_begins_like_another_is_another_entry() {
    let (after, added) = restored(&with(&[set("Close ratio", "35/15")]), &with(&[set("Close", "35/15")]));
    assert_eq!((own(&after), added), (vec![("Close ratio", "35/15"), ("Close", "35/15")], 1));
}

#[test]
fn every_kind_is_joined() {
    for kind in PartKind::ALL {
        let theirs = Catalogue::built_in().add(Entry::new(kind).with(Column::Note, "not yet counted")).0;
        let (after, added) = restored(&Catalogue::built_in(), &theirs);
        assert_eq!((all_own(&after, kind), added), (all_own(&theirs, kind), 1));
    }
}

#[track_caller]
fn check_together(kept: &Catalogue, last: &Catalogue, ours: &Catalogue, expected: &[(&str, &str)]) {
    let together = saved::together(Some(&saved::to_text(kept)), last, ours).unwrap();
    assert_eq!(own(&together), expected);
}

#[test]
fn two_pages_of_one_store_keep_what_either_did() {
    let last = with(&[set("Close", "35/15"), set("Wide", "38/12")]);
    let edited = |first| last.replace_all(vec![set("Close", first).with(Column::Id, "own-close")]);
    let deleted = last.without(PartKind::GearSet, "own-close").unwrap();
    let added = |name| last.add(set(name, "36/14")).0;
    let [close, wide] = [("Close", "35/15"), ("Wide", "38/12")];

    check_together(&last, &last, &added("Ours"), &[close, wide, ("Ours", "36/14")]);
    check_together(&added("Theirs"), &last, &last, &[close, wide, ("Theirs", "36/14")]);
    check_together(&added("Theirs"), &last, &added("Ours"), &[close, wide, ("Theirs", "36/14"), ("Ours", "36/14")]);
    check_together(&added("Both"), &last, &added("Both"), &[close, wide, ("Both", "36/14")]);
    check_together(&added("Theirs"), &last, &edited("34/15"), &[("Close", "34/15"), wide, ("Theirs", "36/14")]);
    check_together(&edited("33/15"), &last, &added("Ours"), &[("Close", "33/15"), wide, ("Ours", "36/14")]);
    check_together(&edited("33/15"), &last, &edited("34/15"), &[("Close", "33/15"), wide, ("Close (2)", "34/15")]);
    check_together(&added("Theirs"), &last, &deleted, &[wide, ("Theirs", "36/14")]);
    check_together(&edited("33/15"), &last, &deleted, &[("Close", "33/15"), wide]);
    check_together(&deleted, &last, &edited("34/15"), &[wide, ("Close", "34/15")]);
    check_together(&deleted, &last, &last, &[wide]);
}

#[test]
fn a_store_that_holds_nothing_takes_ours() {
    let ours = with(&[set("Close", "35/15")]);
    assert_eq!(saved::together(None, &ours, &ours), Ok(ours));
}

#[test]
fn kept_text_that_cannot_be_read_is_not_written_over() {
    let last = Catalogue::built_in();
    let ours = with(&[set("Close", "35/15")]);
    assert_eq!(saved::together(Some("{\"schema\":99}"), &last, &ours), Err(SavedError::Newer(99)));
    assert!(matches!(saved::together(Some("{\"schema\":1,"), &last, &ours), Err(SavedError::NotEntries(_))));
}
