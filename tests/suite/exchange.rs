//! A shelf handed to another shop: what goes, what comes in beside one's own, and what is refused; nothing of either shop is lost.

use layshaft::catalogue::exchange::{Exchange, ExchangeError, Take, to_text};
use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::job::incoming;
use layshaft::problem::Explain;
use layshaft::sheet::silhouette::Silhouette;
use serde_json::{Value, json};

fn set(name: &str, first: &str) -> Entry {
    let texts = [
        (Column::Name, name),
        (Column::Layout, "input-reduced"),
        (Column::Constant, "20/30"),
        (Column::Gear(1), first),
        (Column::Gear(2), "direct"),
    ];
    texts.into_iter().fold(Entry::new(PartKind::GearSet), |set, (column, text)| set.with(column, text))
}

fn with(entries: &[Entry]) -> Catalogue {
    Catalogue::built_in().add_all(entries.to_vec())
}

fn own(catalogue: &Catalogue) -> Vec<(&str, &str, &str)> {
    let told = |set| -> (&str, &str, &str) { (Entry::title(set), set.text(Column::Gear(1)), set.text(Column::Origin)) };
    catalogue.own(PartKind::GearSet).map(told).collect()
}

/// What the shelf of Mill Lane would do here.
fn met(here: &Catalogue, theirs: &[Entry]) -> Exchange {
    here.meet(&to_text(&with(theirs), "Mill Lane", "2026-11-28").0).unwrap()
}

#[test]
fn what_belongs_to_a_shop_stays_with_it() {
    let dear = set("Close", "35/15")
        .with(Column::Price, "480")
        .with(Column::Currency, "EUR")
        .with(Column::Quantity, "2")
        .with(Column::Place, "rack 3");
    let (text, left) = to_text(&with(&[dear.clone(), set("Half counted", "3?/15")]), " Mill Lane ", "");
    assert_eq!(left, 1);
    for kept in ["480", "EUR", "rack 3", "quantity", "Half counted"] {
        assert!(!text.contains(kept), "“{kept}” leaves the shop:\n{text}");
    }
    // Theirs taken: their counts, my price and place.
    let plan = met(&with(std::slice::from_ref(&dear)), &[set("close", "34/15").with(Column::CountedBy, "J.W.")]);
    let after = with(&[dear]).exchanged(&plan, &[Take::Theirs]);
    let taken = after.own(PartKind::GearSet).next().unwrap();
    let texts = [Column::Gear(1), Column::Price, Column::Place, Column::CountedBy, Column::Origin].map(|column| taken.text(column));
    assert_eq!(texts, ["34/15", "480", "rack 3", "J.W.", "Mill Lane"]);
}

#[test]
fn new_parts_come_in_with_their_origin_and_the_same_ones_do_not_come_twice() {
    let here = with(&[set("Close", "35/15")]);
    let theirs = [set("Close", "35/15"), set("Wide", "37/13"), set("Third hand", "36/14").with(Column::Origin, "Harbour Works")];
    let plan = met(&here, &theirs);
    assert_eq!(plan.sentence(), "From Mill Lane: 2 new parts, 1 as they are here, 0 different");
    let after = here.exchanged(&plan, &[]);
    assert_eq!(own(&after), [("Close", "35/15", ""), ("Wide", "37/13", "Mill Lane"), ("Third hand", "36/14", "Harbour Works")]);
    let again = met(&after, &theirs);
    assert_eq!((again.new.len(), again.same, again.meetings.len()), (0, 3, 0));
}

#[test]
fn what_differs_is_left_replaced_or_kept_beside() {
    let here = with(&[set("Close", "35/15"), set("Other name", "37/13").with(Column::PartNumber, "A 101")]);
    let theirs = [set("Close", "34/15"), set("Long", "38/13").with(Column::PartNumber, "a101")];
    let plan = met(&here, &theirs);
    assert_eq!((plan.new.len(), plan.meetings.len()), (0, 2));
    assert_eq!(own(&here.exchanged(&plan, &[Take::Ours, Take::Ours])), own(&here));
    assert_eq!((plan.writes(&[]), plan.writes(&[Take::Ours, Take::Theirs])), (2, 1));
    let replaced = here.exchanged(&plan, &[Take::Theirs, Take::Theirs]);
    assert_eq!(own(&replaced), [("Close", "34/15", "Mill Lane"), ("Long", "38/13", "Mill Lane")]);
    let both = here.exchanged(&plan, &[]);
    let all = [("Close", "35/15", ""), ("Other name", "37/13", ""), ("Close (2)", "34/15", "Mill Lane"), ("Long", "38/13", "Mill Lane")];
    assert_eq!(own(&both), all);
    // Beside each other once, they are not put beside each other again.
    assert_eq!(met(&both, &theirs).same, 2);
    // And back: what the import changed is as it was.
    assert_eq!(own(&both.with_changes(&both, &here)), own(&here));
}

#[test]
fn a_newer_file_a_job_and_broken_rows_are_a_sentence_and_nothing_is_lost() {
    let here = with(&[set("Close", "35/15")]);
    let why = |text: &str| here.meet(text).unwrap_err();
    let newer = json!({"layshaft": "shelf", "schema": 99, "entries": []}).to_string();
    assert_eq!(why(&newer), ExchangeError::Newer(99));
    assert_eq!(why(&newer).what_to_do(), "load the page again to get the newer version, then take the file again");
    assert_eq!(why(r#"{"layshaft": "book", "jobs": []}"#), ExchangeError::Jobs);
    for text in ["{", "{}", r#"{"layshaft": "shelf"}"#, r#"{"layshaft": "shelf", "schema": 2}"#] {
        assert!(matches!(why(text), ExchangeError::NotAShelf(_)), "{text}");
    }
    let mut file: Value = serde_json::from_str(&to_text(&with(&[set("Wide", "37/13"), set("Bad", "36/14")]), "", "").0).unwrap();
    file["entries"][1]["gear_1"] = json!("37/5");
    let rows = file["entries"].as_array_mut().unwrap();
    rows.extend([json!(7), json!({"kind": "flywheel"})]);
    let plan = here.meet(&file.to_string()).unwrap();
    assert_eq!(plan.sentence(), "From another shop: 1 new part, 0 as they are here, 0 different, 3 that cannot be used");
    assert!(plan.refused[0].starts_with("Part 2 of the file, “Bad”: Gears of 8 to 150 teeth only; “5” was typed."), "{}", plan.refused[0]);
    assert_eq!(plan.refused[1..], ["Part 3 of the file is of no kind known here.", "Part 4 of the file is of no kind known here."]);
    // Brought to the jobs by mistake, it says where it goes.
    assert!(incoming::read(&file.to_string()).unwrap_err().what().contains("bring it in under Shelf"));
}

/// By hand, teeth on the countershaft from its front: 30 of the constant pair; 20 of 2nd, 15 of 1st. As high as 24 × count/30.
#[test]
fn a_set_is_drawn_by_its_cluster() {
    let drawn = Silhouette::of(&set("Close", "35/15").with(Column::Gear(2), "30/20").gearbox().unwrap()).unwrap();
    let high: Vec<&str> = drawn.path.split('v').skip(1).filter_map(|part| part.split_once("h6")).map(|(high, _)| high).collect();
    assert_eq!(high, ["24.0", "16.0", "12.0"]);
    assert_eq!(drawn.width, 3 + 3 * 9);
    let printed = set("Printed", "2.5").gearbox();
    assert_eq!(printed.and_then(|gearbox| Silhouette::of(&gearbox)), None);
}
