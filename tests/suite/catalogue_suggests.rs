//! What the catalogue suggests: parts in stock before the others, each text once, no list without end.

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::sheet::suggest::{MOST, dials, parts, speedometer_pairs};
use layshaft::speedometer::dial::KNOWN;
use layshaft::speedometer::read;
use layshaft::units::System;

#[test]
fn parts_in_stock_come_first_and_no_text_twice() {
    for kind in [PartKind::RingAndPinion, PartKind::Tyre] {
        let found = parts(&Catalogue::built_in(), kind, System::Inch);
        let stocked = found.iter().position(|one| !one.about.ends_with(", in stock")).unwrap();
        assert!(found.iter().skip(stocked).all(|one| !one.about.ends_with(", in stock")));
        let mut texts: Vec<_> = found.iter().map(|one| &one.text).collect();
        texts.sort();
        texts.dedup();
        assert_eq!(texts.len(), found.len());
    }
}

#[test]
fn an_own_axle_is_suggested_with_its_ratio_and_the_list_ends() {
    let own = |at: u16| Entry::started(PartKind::RingAndPinion).with(Column::Drive, format!("{}/{}", 40 + at % 100, 9 + at / 100));
    let catalogue = Catalogue::built_in().with_own((0..1000).map(own).collect());
    let found = parts(&catalogue, PartKind::RingAndPinion, System::Inch);
    assert_eq!(found.len(), MOST);
    // 43/11 = 3.909, by hand.
    assert!(
        parts(&Catalogue::built_in(), PartKind::RingAndPinion, System::Inch)
            .iter()
            .any(|one| one.text == "43/11" && one.about.starts_with("3.909"))
    );
}

#[test]
fn every_suggested_pair_can_be_read() {
    let found = speedometer_pairs(&Catalogue::built_in());
    assert!(!found.is_empty());
    assert!(found.iter().all(|one| read::train(&one.text).is_ok()));
}

#[test]
fn every_suggested_dial_is_read_as_what_it_is() {
    assert_eq!(dials().len(), KNOWN.len());
    for (said, known) in dials().iter().zip(KNOWN) {
        for system in [System::Inch, System::Metric] {
            assert_eq!(read::dial(&said.text, system), Ok(Some(known.dial())), "{}", said.text);
        }
    }
}
