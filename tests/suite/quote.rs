//! The offer to a customer: lines as typed, totals worked by hand, the shop's own priced parts; and what a link leaves behind.

use layshaft::catalogue::{Catalogue, Column, Entry, PartKind};
use layshaft::job::link::{self, Carries};
use layshaft::job::{Field, Job, JobField, Quote, demo};
use layshaft::questions::quote::{Charge, offer};

fn quote(lines: &str) -> Quote {
    Quote { lines: lines.into(), ..Quote::default() }
}

#[track_caller]
fn check(line: &str, what: &str, hundredths: Option<i64>, currency: &str) {
    let charge = Charge { what: what.into(), hundredths, currency: currency.into() };
    assert_eq!(offer(&quote(line)).charges, [charge], "{line}");
}

#[test]
fn a_line_ends_in_its_price() {
    check("Labour: 450 EUR", "Labour", Some(45_000), "EUR");
    check("Labour, 6 h at 55: 330", "Labour, 6 h at 55", Some(33_000), "");
    check("Bearings 6205 45.00", "Bearings 6205", Some(4_500), "");
    check("Gear set Corner four\t1 250,50", "Gear set Corner four", Some(125_050), "");
    check("Gasket £4.20", "Gasket", Some(420), "GBP");
    check("Oil, 2 l 18.00 GBP", "Oil, 2 l", Some(1_800), "GBP");
    // No price: the line stays as it is.
    check("Freight: to be agreed", "Freight: to be agreed", None, "");
    check("Fit in the old 250 box", "Fit in the old 250 box", None, "");
    check("Labour: about 450", "Labour: about", Some(45_000), "");
    check("450", "450", None, "");
}

/// By hand: 480 + 330 + 12.50 = 822.50.
#[test]
fn what_names_no_currency_is_in_the_only_one_that_is_named() {
    let sum = offer(&quote("Gear set: 480 EUR\n\nLabour: 330\nGasket: 12.50\n"));
    assert_eq!((sum.totals.as_slice(), sum.total().as_str()), ([(82_250, "EUR".to_owned())].as_slice(), "822.50 EUR"));
    assert_eq!(sum.remarks(), ["Total 822.50 EUR."]);
    assert_eq!(offer(&quote("Labour: 330")).total(), "330.00");
}

/// By hand: 480 + 20 = 500 EUR, 45 GBP.
#[test]
fn two_currencies_have_two_totals_and_a_sentence_and_nothing_is_lost() {
    let sum = offer(&quote("Gear set: 480 EUR\nSeal: 45 GBP\nFreight: 20 EUR\nPaint: as agreed"));
    assert_eq!((sum.charges.len(), sum.total().as_str()), (4, "500.00 EUR + 45.00 GBP"));
    let said = sum.remarks().join(" ");
    assert!(said.contains("more than one currency") && said.contains("“Paint: as agreed” ends in no price"), "{said}");
}

#[test]
fn only_the_shops_own_priced_parts_go_into_a_quote() {
    let mut job = demo::job();
    let own = |kind, texts: &[(Column, &str)]| texts.iter().fold(Entry::started(kind), |entry, (column, text)| entry.with(*column, *text));
    let axle = [(Column::Drive, "43/11"), (Column::Price, "310"), (Column::Currency, "EUR"), (Column::PartNumber, "A-7")];
    let tyre = [(Column::Designation, "185/70R14"), (Column::Price, "85"), (Column::Currency, "EUR")];
    let unpriced = [(Column::Name, "Corner 28"), (Column::Role, "driven"), (Column::Teeth, "28"), (Column::Housing, "Corner")];
    let shelf = Catalogue::built_in().add_all(vec![
        own(PartKind::RingAndPinion, &axle),
        own(PartKind::RingAndPinion, &axle),
        own(PartKind::Tyre, &tyre),
        own(PartKind::SpeedometerGear, &unpriced),
    ]);
    let lines = job.quote_lines(shelf.all_own());
    // Four tyres, by hand: 4 × 85 = 340.
    assert_eq!(lines, ["Ring and pinion pair: 43/11, A-7: 310.00 EUR", "Tyre: 185/70R14, 4 at 85.00 EUR: 340.00 EUR"]);
    assert!(job.quote_lines(Catalogue::built_in().all_own()).is_empty());
    // By hand: 310 + 340 = 650.
    job.quote.lines = lines.join("\n");
    assert_eq!(offer(&job.quote).total(), "650.00 EUR");
}

fn private() -> Job {
    let mut job = demo::job();
    job.customer = "Mrs Example".into();
    for (field, text) in [
        (JobField::Notes, "pays late"),
        (JobField::QuoteNote, "ready on Friday"),
        (JobField::QuoteLines, "Labour: 450 EUR"),
        (JobField::QuoteValid, "31 December"),
    ] {
        job.type_text(Field::Job(field), text.into());
    }
    job
}

#[test]
fn a_link_carries_neither_customer_nor_notes_unless_told_to() {
    let job = private();
    let opened = |carries: Carries| link::open(&link::fragment(&carries.of(&job)).unwrap()).unwrap();
    let rows = [(false, false), (true, false), (false, true), (true, true)];
    for (customer, notes) in rows {
        let carries = Carries { customer, notes };
        let sent = opened(carries);
        assert_eq!(sent.customer == job.customer, customer, "{carries:?}");
        assert_eq!((sent.notes == job.notes, sent.quote == job.quote), (notes, notes), "{carries:?}");
        assert_eq!(sent.quote == Quote::default(), !notes);
        assert_eq!((sent.title, sent.car, sent.setups), (job.title.clone(), job.car.clone(), job.setups.clone()));
        let stays = carries.words().contains("stay");
        assert_eq!(stays, !(customer && notes), "{}", carries.words());
    }
    assert_eq!(opened(Carries { customer: true, notes: true }), job);
}
