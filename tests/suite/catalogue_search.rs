//! What is sought on the shelf: words, a tooth sum, a ratio near, what is to be ordered; and entries as a shop types them.

use layshaft::catalogue::search::Query;
use layshaft::catalogue::{Catalogue, Column, Entry, PartKind, money, write_example};
use layshaft::gearing::Layout;
use layshaft::problem::Explain;
use layshaft::sheet::catalogue::{stock, told};
use layshaft::units::System;

fn entry(kind: PartKind, filled: &[(Column, &str)]) -> Entry {
    filled.iter().fold(Entry::new(kind), |entry, (column, text)| entry.with(*column, *text))
}

fn set(name: &str, constant: &str, gears: &[&str]) -> Entry {
    let set = entry(PartKind::GearSet, &[(Column::Name, name), (Column::Constant, constant), (Column::Layout, "input-reduced")]);
    gears.iter().zip(Column::GEARS).fold(set, |set, (gear, column)| set.with(column, *gear))
}

/// Worked by hand: 30/25 × 37/18 = 2.4667; 28/27 × 37/18 = 2.1317; 29/26 × 36/18 = 2.2308. Sums: 55 and 55; 55 and 55; 55 and 54.
fn shop() -> Catalogue {
    let sets = vec![
        set("Wide", "25/30", &["37/18", "direct"]).with(Column::Case, "long case"),
        set("Close", "27/28", &["37/18", "direct"]),
        set("Odd", "26/29", &["36/18", "direct"]),
    ];
    let axle = |drive: &str| entry(PartKind::RingAndPinion, &[(Column::Drive, drive)]);
    Catalogue::empty().add_all(sets).add_all(vec![axle("43/11"), axle("41/11"), axle("37/9"), axle("3.909")])
}

fn names(kind: PartKind, sought: &str) -> Vec<String> {
    shop().found(kind, sought, 10, None).entries.iter().map(|entry| entry.title().to_owned()).collect()
}

#[test]
fn words_a_sum_and_a_ratio_are_sought_together_or_alone() {
    const SET: PartKind = PartKind::GearSet;
    let rows: [(&str, &[&str]); 12] = [
        ("LONG case", &["Wide"]),
        ("sum 55", &["Wide", "Close", "Odd"]),
        ("tooth sum 54", &["Odd"]),
        // 2.4667 is 1.3 % off 2.5, 2.2308 is 10.8 %, 2.1317 is 14.7 %.
        ("first near 2.5", &["Wide"]),
        // 2.2308 is 1.4 % off 2.2, 2.1317 is 3.1 %; 2.4667 is 12.1 %.
        ("1st near 2.2", &["Odd", "Close"]),
        ("1st near 2,2 sum 54", &["Odd"]),
        ("wide near 2.5", &["Wide"]),
        // The top gear of each is direct.
        ("second near 1", &["Wide", "Close", "Odd"]),
        ("2.47", &["Wide"]),
        ("2-speed 2.13", &["Close"]),
        ("near", &[]),
        ("sum", &[]),
    ];
    for (sought, expected) in rows {
        assert_eq!(names(SET, sought), expected, "{sought}");
    }
    // 43/11 = 3.9091 and 3.909 are 0.2 % off 3.9; 41/11 = 3.7273 is 4.4 %; 37/9 = 4.1111 is 5.4 %.
    assert_eq!(names(PartKind::RingAndPinion, "near 3.9"), ["3.909", "43/11", "41/11", "37/9"]);
    assert_eq!(names(PartKind::RingAndPinion, "near 4.6"), [""; 0], "10.6 % off is not near");
}

#[test]
fn what_was_understood_is_said() {
    let said = |sought: &str| Query::read(sought).understood();
    assert_eq!(said("curlew wide"), None);
    assert_eq!(said("case sum 55 first near 2.5"), Some("tooth sum 55, 1st within 10 % of 2.5, nearest first".into()));
    assert_eq!(said("near 4"), Some("a ratio within 10 % of 4, nearest first".into()));
}

#[test]
fn what_is_low_is_seen() {
    let tyres = |there: &str, least: &str| {
        entry(PartKind::Tyre, &[(Column::Designation, "185/70R14"), (Column::Quantity, there), (Column::ReorderAt, least)])
    };
    let rows = [
        ("0", "", false, "none left"),
        ("1", "", false, "1 in stock"),
        ("3", "2", false, "3 in stock"),
        ("2", "2", true, "2 left: reorder at 2"),
        ("", "2", false, "not in stock"),
    ];
    for (there, least, low, words) in rows {
        let entry = tyres(there, least);
        assert_eq!((entry.is_low(), stock(&entry).as_str()), (low, words), "{there} of {least}");
    }
    let shelf = Catalogue::empty().add_all(vec![tyres("2", "2"), tyres("5", "2")]);
    assert_eq!(shelf.many_to_reorder(PartKind::Tyre), 1);
    let query = Query::read("185").only_to_reorder(true);
    assert_eq!(shelf.answering(PartKind::Tyre, &query, 9, None).many, 1);
}

#[test]
fn a_price_may_carry_its_currency() {
    let priced = |price: &str, currency: &str| {
        let tyre = entry(PartKind::Tyre, &[(Column::Designation, "185/70R14"), (Column::Price, price), (Column::Currency, currency)]);
        tyre.checked().map(|entry| (entry.text(Column::Price).to_owned(), entry.text(Column::Currency).to_owned()))
    };
    let rows = [
        ("120 EUR", "", "120", "EUR"),
        ("eur120.50", "EUR", "120.50", "EUR"),
        ("€120", "", "120", "EUR"),
        ("1,250.00", "gbp", "1,250.00", "GBP"),
        ("120", "", "120", ""),
        ("", "USD", "", "USD"),
    ];
    for (price, currency, amount, code) in rows {
        assert_eq!(priced(price, currency), Ok((amount.to_owned(), code.to_owned())), "{price} {currency}");
    }
    for (price, currency, says) in [
        ("120 EUR", "GBP", "the price is in EUR, its currency is said to be GBP"),
        ("about 120", "", "“about 120” is not a price"),
        ("120 EUR or 130 USD", "", "“120 EUR or 130 USD” is not a price"),
        ("-5", "", "“-5” is not a price"),
    ] {
        let problems = priced(price, currency).unwrap_err();
        assert_eq!((problems[0].field, problems[0].what.as_str()), ("price", says), "{price} {currency}");
        assert!(!problems[0].what_to_do.is_empty());
    }
}

#[test]
fn sums_of_money_are_whole_hundredths() {
    let rows = [("120", 12_000), ("1,250.50", 125_050), ("12,50", 1_250), ("0", 0), ("19.999", 2_000)];
    for (text, hundredths) in rows {
        assert_eq!(money::hundredths(text), Some(hundredths), "{text}");
    }
    for text in ["", "x", "1/2", "-1", "99999999999999", "120 EUR"] {
        assert_eq!(money::hundredths(text), None, "{text}");
    }
    assert_eq!((money::shown(125_050, "EUR").as_str(), money::shown(5, "").as_str()), ("1,250.50 EUR", "0.05"));
}

/// Reduction at the input: 30/25 × 37/18 = 2.47. At the output the countershaft's gear drives: 30/25 × 37/18 as 30/25 and 18/37.
#[test]
fn the_layout_may_be_left_out_where_the_counts_tell_it() {
    let laid_out = |constant: &str, gears: &[&str]| {
        let entry = set("Any", constant, gears).with(Column::Layout, "").checked();
        entry.map(|entry| entry.layout()).map_err(|problems| (problems[0].field, problems[0].what.clone()))
    };
    assert_eq!(laid_out("25/30", &["37/18", "direct"]), Ok(Layout::InputReduced));
    assert_eq!(laid_out("30/25", &["18/37", "direct"]), Ok(Layout::OutputReduced));
    assert_eq!(laid_out("", &["38/11", "35/18", "30/23"]), Ok(Layout::TwoShaft));
    let open = ("layout", "the counts do not tell how the box is laid out".to_owned());
    assert_eq!(laid_out("", &["2.47", "1.67"]), Err(open.clone()), "printed ratios may be of any box");
    assert_eq!(laid_out("30/30", &["20/20", "direct"]), Err(open.clone()));
    assert_eq!(laid_out("", &["37/18", "direct"]), Err(open), "a direct gear stands in line, and its constant pair is missing");

    let plan = Catalogue::empty().plan("name,constant,gear_1,gear_2\nWide,25/30,37/18,direct\nOpen,,2.47,1.67\n").unwrap();
    assert_eq!((plan.new.len(), plan.refused.len()), (1, 1));
    assert_eq!(plan.new[0].entry.text(Column::Layout), "input-reduced");
    assert!(plan.refused[0].problems[0].what_to_do.contains("two-shaft"), "{:?}", plan.refused[0].problems);
}

#[test]
fn a_file_to_fill_in_shows_a_line_that_is_not_read() {
    for kind in PartKind::ALL {
        let file = write_example(kind);
        assert_eq!(file.lines().count(), 2, "{file}");
        let plan = Catalogue::empty().plan(&file).unwrap();
        assert_eq!((plan.kind, plan.new.len(), plan.refused.len()), (kind, 0, 0), "{file}");
        let filled = file.replace("# example", "");
        let plan = Catalogue::empty().plan(&filled).unwrap();
        assert_eq!((plan.new.len(), plan.refused.as_slice()), (1, [].as_slice()), "the example is one that could be read");
    }
}

#[test]
fn a_row_says_where_it_lies_what_it_costs_and_who_counted_it() {
    let axle = entry(
        PartKind::RingAndPinion,
        &[
            (Column::Drive, "43/11"),
            (Column::PartNumber, "A-7"),
            (Column::Price, "120"),
            (Column::Currency, "EUR"),
            (Column::Place, "rack 3"),
            (Column::CountedBy, "J.W."),
            (Column::CountedOn, "28 Nov"),
        ],
    );
    assert_eq!(told(&axle, System::Inch).words, ["part number A-7", "120 EUR", "rack 3", "counted by J.W., 28 Nov"]);
    assert!(layshaft::catalogue::LineError::LayoutOpen.what_to_do().contains("as the layout"));
}
