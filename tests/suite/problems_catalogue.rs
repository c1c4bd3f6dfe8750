//! Files and entries that cannot be used: each is answered with a sentence, and nothing is half taken.

use layshaft::catalogue::import::Differing;
use layshaft::catalogue::{Catalogue, Column, Entry, FileError, ImportPlan, PartKind, file, saved};
use layshaft::problem::Explain;

/// What reading a file into an empty catalogue would do.
#[track_caller]
fn read(text: &str) -> ImportPlan {
    Catalogue::empty().plan(text).unwrap()
}

/// Reads one line under a header and checks the sentence it is refused with.
#[track_caller]
fn check_refused(header: &str, line: &str, field: &str, wanted: &str) {
    let plan = read(&format!("# mine\n{header}\n{line}\n"));
    assert!(plan.new.is_empty(), "{:?}", plan.new);
    let refused = &plan.refused[0];
    assert_eq!((refused.line, refused.text.as_str()), (3, line));
    assert!(refused.problems.iter().any(|problem| problem.field == field && problem.sentence() == wanted), "{:#?}", refused.problems);
}

#[test]
fn a_gear_set_that_cannot_be_is_refused_with_its_cell() {
    let check = |line: &str, field: &str, wanted: &str| {
        check_refused("name,layout,constant,gear_1,gear_2,gear_3,in_stock", line, field, wanted);
    };
    check(",input-reduced,25/30,37/18,direct,,yes", "name", "The name is missing. Fill in the name.");
    check(
        "Box,planetary,25/30,37/18,direct,,yes",
        "layout",
        "“planetary” is not a layout known here. Write input-reduced, output-reduced or two-shaft.",
    );
    check(
        "Box,,,2.47,1.67,,yes",
        "layout",
        "The counts do not tell how the box is laid out. Write input-reduced, output-reduced or two-shaft as the layout.",
    );
    check("Box,input-reduced,25/30,37/5,direct,,yes", "gear_1", "Gears of 8 to 150 teeth only; “5” was typed. Check the count.");
    check("Box,input-reduced,25/30,37/18,,direct,yes", "gear_2", "No tooth counts are given. Type both counts, such as 37/18.");
    check(
        "Box,two-shaft,,37/18,direct,,yes",
        "gear_2",
        "A two-shaft box has no direct gear. Type both counts of the pair, such as 31/30, or a printed ratio of 1.00.",
    );
    check(
        "Box,two-shaft,25/30,37/18,,,yes",
        "layout",
        "A two-shaft box has no constant pair. Leave the constant pair blank, or choose another layout.",
    );
    check(
        "Box,input-reduced,25/30,37/18,direct,,perhaps",
        "in_stock",
        "“perhaps” is neither yes nor no. Write yes, no, or how many are on the shelf.",
    );
    check("Box,input-reduced,25/30,,,,yes", "layout", "No forward gears are given. Type from 1 to 8 gears.");
    check(
        "Box,input-reduced,25/30,37/18,direct,,yes,and,more",
        "line",
        "The line has 9 cells, the header 7. Put quotation marks around a text with the separator in it, or take the extra cells out.",
    );
    check(
        "\"Box,input-reduced,25/30,37/18,direct,,yes",
        "line",
        "A quotation mark is opened and not closed on this line. Close it, or take the line break out of the cell.",
    );
    let long = format!("{},input-reduced,25/30,37/18,direct,,yes", "x".repeat(501));
    check(&long, "name", "A text of 501 characters is too long to keep. Shorten it to 500 characters.");
}

#[test]
fn the_other_kinds_are_refused_in_sentences_too() {
    check_refused(
        "drive,note",
        "steep,",
        "drive",
        "“steep” is neither two tooth counts nor a ratio. Type both counts, such as 43/11, or a ratio from 0.1 to 20, such as 3.909.",
    );
    let plan = read("designation\nround\n");
    assert_eq!((plan.new.len(), plan.refused[0].problems[0].field), (0, "designation"));
    let check = |line: &str, field: &str, wanted: &str| check_refused("name,role,teeth,second,housing,hand", line, field, wanted);
    check("A,worm,7,,H,left", "role", "“worm” is not a role known here. Write drive, driven or adapter.");
    check("A,drive,3,,H,left", "teeth", "“3” is not a tooth count of a speedometer gear. Write a count from 4 to 60.");
    check("A,drive,7,,H,both", "hand", "“both” is not a hand known here. Write left or right, or leave it blank.");
    check("A,drive,7,8,H,", "second", "A drive gear has one tooth count, and two are given. Leave the second count blank.");
    check(
        "A,adapter,7,,H,",
        "second",
        "An adapter has two tooth counts, and the second is missing. Write the teeth of the gear on the cable's side as the second count.",
    );
    check("A,drive,7,,,", "housing", "The housing is missing. Fill in the housing.");
}

#[track_caller]
fn check_file(text: &str, wanted: &str) {
    let why = Catalogue::built_in().plan(text).unwrap_err();
    assert_eq!(format!("{}; {}", why.what(), why.what_to_do()), wanted);
}

#[test]
fn a_file_that_is_none_is_answered_as_a_whole() {
    check_file("", "the file has no line with entries; export the catalogue to see what a file looks like");
    check_file("# nothing\n\n", "the file has no line with entries; export the catalogue to see what a file looks like");
    check_file(
        "colour,weight\nred,3\n",
        "the first line, “colour,weight”, fits no kind of part; begin the file with the column names an exported one has",
    );
    check_file("drive,Drive\n43/11,x\n", "the first line names the column drive twice; rename or take out one of the two");
    check_file(&"x".repeat(file::LARGEST + 1), "the file has 2001 kB; cut it into files of at most 2000 kB");
    let lines = format!("drive\n{}", "43/11\n".repeat(file::MOST_LINES + 1));
    check_file(&lines, "the file has 20001 lines; cut it into files of at most 20000 lines");
}

#[test]
fn bytes_become_text_or_a_sentence() {
    assert_eq!(file::text("drive;43/11".as_bytes()).as_deref(), Ok("drive;43/11"));
    let wide: Vec<u8> = [0xff, 0xfe].into_iter().chain("drive\n43/11".encode_utf16().flat_map(u16::to_le_bytes)).collect();
    assert_eq!(file::text(&wide).as_deref(), Ok("drive\n43/11"));
    assert_eq!(file::text(&[0x43, 0xe9, 0x0a]), Err(FileError::NotText));
    assert_eq!(file::text(&vec![b'x'; file::LARGEST + 1]), Err(FileError::TooLarge(file::LARGEST + 1)));
}

#[test]
fn a_good_line_stands_between_bad_ones() {
    let text = "\u{feff}In Stock;DRIVE;shade\r\nyes;43/11;10\r\n;\r\nno;\"4\r\n3;41/10;x\r\nyes;43/11;9\r\n";
    let plan = read(text);
    assert_eq!(plan.unknown_columns, ["shade"]);
    let new: Vec<_> = plan.new.iter().map(|planned| (planned.line, planned.entry.title(), planned.entry.in_stock())).collect();
    assert_eq!(new, [(2, "43/11", true), (5, "41/10", true)]);
    let refused: Vec<_> = plan.refused.iter().map(|refused| (refused.line, refused.problems[0].what.as_str())).collect();
    assert_eq!(refused, [(4, "a quotation mark is opened and not closed on this line"), (6, "the same entry stands on line 2")]);
    assert_eq!(Catalogue::empty().apply(&plan, Differing::Replace).entries(PartKind::RingAndPinion).count(), 2);
}

#[test]
fn what_is_built_in_stays_and_what_is_own_is_replaced_only_when_wanted() {
    const KIND: PartKind = PartKind::GearSet;
    let catalogue = Catalogue::built_in();
    let own = |catalogue: &Catalogue| catalogue.own(KIND).next().unwrap().clone();
    let text = "name,layout,constant,gear_1,gear_2,gear_3,gear_4\n\"Curlew four, wide\",input-reduced,25/30,38/17,32/23,28/27,direct\n";
    let plan = catalogue.plan(text).unwrap();
    let first = catalogue.apply(&plan, Differing::Replace);
    assert_eq!(first.get(KIND, "curlew-four-wide"), catalogue.get(KIND, "curlew-four-wide"));
    assert_eq!(own(&first).title(), "Curlew four, wide (2)");
    let again = first.plan(text).unwrap();
    assert_eq!((again.new.len(), again.same.as_slice()), (0, [2].as_slice()), "reading a file twice adds nothing");

    let other = text.replace("Curlew four, wide", "curlew four,  WIDE (2)").replace("38/17", "39/16");
    let plan = first.plan(&other).unwrap();
    assert_eq!((plan.new.len(), plan.different.len()), (0, 1));
    assert_eq!(first.apply(&plan, Differing::Leave), first);
    let replaced = own(&first.apply(&plan, Differing::Replace));
    assert_eq!((&replaced.id, replaced.text(Column::Gear(1))), (&own(&first).id, "39/16"));
}

#[test]
fn parts_of_two_sets_are_taken_with_a_doubt() {
    let text = "name,layout,constant,gear_1,gear_2\nMixed,input-reduced,25/30,37/22,direct\n";
    let plan = read(text);
    let (line, doubt) = &plan.doubts[0];
    assert_eq!((*line, plan.new.len()), (2, 1));
    assert!(doubt.what.contains("tooth sums from 55 to 59"), "{}", doubt.what);
}

#[test]
fn a_full_file_and_an_empty_catalogue_are_answered() {
    let lines: String = (0..file::MOST_LINES).fold(String::new(), |lines, at| lines + &format!("43/11,axle {at}\n"));
    let plan = read(&format!("drive,note\n{lines}"));
    let full = Catalogue::empty().apply(&plan, Differing::Replace);
    assert_eq!(full.entries(PartKind::RingAndPinion).count(), file::MOST_LINES);
    assert_eq!(Catalogue::empty().get(PartKind::RingAndPinion, "43-11"), None);
}

fn axle(drive: &str) -> Entry {
    Entry::new(PartKind::RingAndPinion).with(Column::Drive, drive)
}

#[test]
fn a_size_may_be_the_shops_own_and_built_in_without_a_number_behind_it() {
    let (catalogue, id) = Catalogue::built_in().add(axle("43/11"));
    assert_eq!(catalogue.get(PartKind::RingAndPinion, &id).unwrap().text(Column::Note), "");
    let plan = catalogue.plan("drive,in_stock\n43/11,yes\n").unwrap();
    assert_eq!((plan.new.len(), plan.different.len()), (0, 1), "the shop's own is meant before the built-in one");
}

#[test]
fn markup_is_only_text() {
    let text = "drive,note\n43/11,<img src=x onerror=alert(1)>\n44/13,'=1+1\n";
    let plan = read(text);
    let notes: Vec<_> = plan.new.iter().map(|planned| planned.entry.text(Column::Note)).collect();
    assert_eq!(notes, ["<img src=x onerror=alert(1)>", "=1+1"]);
}

#[test]
fn built_in_entries_cannot_be_changed_and_gone_ones_are_missed() {
    const KIND: PartKind = PartKind::RingAndPinion;
    let catalogue = Catalogue::built_in();
    let why = catalogue.without(KIND, "43-11").unwrap_err();
    assert_eq!((why.what().as_str(), why.what_to_do().as_str()), ("a built-in entry cannot be changed", "make a copy and change that"));
    let why = catalogue.put(Some("own-43-11"), &axle("43/11")).unwrap_err();
    assert_eq!((why[0].field, why[0].what.as_str()), ("line", "this entry is no longer in the catalogue"));
    let (copied, id) = catalogue.copied(KIND, "43-11").unwrap();
    assert_eq!(copied.get(KIND, &id).map(|axle| (axle.title(), axle.own)), Some(("43/11", true)));
    let (twice, second) = copied.copied(KIND, "43-11").unwrap();
    let note = |id| twice.get(KIND, id).unwrap().text(Column::Note);
    assert_eq!((note(&id), note(&second)), ("(copy)", "(copy) (2)"));
}

#[test]
fn what_was_kept_by_a_newer_version_or_damaged_is_refused() {
    let newer = saved::from_text(r#"{"schema": 99}"#).unwrap_err();
    assert_eq!(newer.what(), "the shop's own entries were kept by a newer version (shape 99, this one knows 2)");
    assert!(saved::from_text("").is_err() && saved::from_text("[]").is_err() && saved::from_text(r#"{"axles": []}"#).is_err());
    let twice = r#"{"schema":1,"axles":[{"id":"43-11","drive":"43/11","note":"mine"},{"drive":"?"},{"drive":"?"}],"later":3}"#;
    let catalogue = saved::from_text(twice).unwrap();
    let ids: Vec<_> = catalogue.own(PartKind::RingAndPinion).map(|axle| axle.id.as_str()).collect();
    assert_eq!(ids, ["own-43-11-mine", "own-entry", "own-entry-2"], "ids that clash are made anew, nothing is dropped");
}

#[test]
fn the_summary_says_what_would_happen() {
    let plan = Catalogue::built_in().plan("id,drive,in_stock\n43-11,43/11,yes\n,51/7,yes\n,99/20,yes\n").unwrap();
    assert_eq!((plan.kind, plan.refused[0].line), (PartKind::RingAndPinion, 3));
    assert_eq!(plan.sentence(), "1 new ring and pinion pair, 1 as they are here, 0 different, 1 line refused");
}

#[test]
fn a_column_the_file_does_not_have_is_left_as_it_is() {
    let texts = [
        (Column::Name, "Bench special"),
        (Column::Maker, "invented"),
        (Column::Layout, "input-reduced"),
        (Column::Constant, "25/30"),
        (Column::Gear(1), "37/18"),
        (Column::Gear(2), "31/24"),
        (Column::Reverse, "36/17"),
        (Column::Idler, "19"),
        (Column::Note, "counted twice"),
        (Column::InStock, "yes"),
    ];
    let set = texts.into_iter().fold(Entry::new(PartKind::GearSet), |set, (column, text)| set.with(column, text));
    let (catalogue, id) = Catalogue::built_in().add(set);
    let after = |file: &str| {
        let plan = catalogue.plan(file).unwrap();
        assert_eq!(plan.refused, []);
        (plan.same.len(), catalogue.apply(&plan, Differing::Replace).get(PartKind::GearSet, &id).unwrap().clone())
    };
    let before = catalogue.get(PartKind::GearSet, &id).unwrap().clone();
    // By its name; a constant pair that the file does not tell is the known one's too.
    assert_eq!(after("name,layout,gear_1\nBench special,input-reduced,37/18\n"), (1, before.clone()));
    let changed = before.clone().with(Column::Gear(1), "38/17");
    assert_eq!(after("name,layout,gear_1\nBench special,input-reduced,38/17\n"), (0, changed));
    // By its id; a cell that is there and blank says so.
    let renamed = before.with(Column::Name, "Another name").with(Column::Maker, "");
    assert_eq!(after(&format!("id,name,maker,layout,gear_1\n{id},Another name,,input-reduced,37/18\n")), (0, renamed));
}

#[test]
fn price_currency_and_quantity_that_cannot_be_are_refused() {
    let check = |line: &str, field: &str, wanted: &str| check_refused("drive,price,currency,quantity", line, field, wanted);
    let price =
        |text: &str| format!("“{text}” is not a price. Write the number alone, such as 120.00, and the currency in a column of its own.");
    check("43/11,$12,,", "price", &price("$12"));
    check("43/11,12 EUR 14 GBP,,", "price", &price("12 EUR 14 GBP"));
    check("43/11,£12,EUR,", "price", "The price is in GBP, its currency is said to be EUR. Leave one of the two, or make two entries.");
    check("43/11,twelve,,", "price", &price("twelve"));
    check("43/11,-3,,", "price", &price("-3"));
    check("43/11,3,EUR/GBP,", "currency", "“EUR/GBP” is not a currency. Write its three letters, such as EUR, or leave it blank.");
    let quantity = |text: &str| format!("“{text}” is not a quantity. Write how many there are, from 0 to 999,999, or leave it blank.");
    check("43/11,3,eur,some", "quantity", &quantity("some"));
    check("43/11,3,eur,-1", "quantity", &quantity("-1"));
    check("43/11,3,eur,1000000", "quantity", &quantity("1000000"));
}

/// What quantity and stock become when both are read.
#[track_caller]
fn check_stock(quantity: &str, in_stock: &str, expected: (&str, bool)) {
    let entry = axle("43/11").with(Column::Quantity, quantity).with(Column::InStock, in_stock).checked().unwrap();
    assert_eq!((entry.text(Column::Quantity), entry.in_stock()), expected);
}

#[test]
fn quantity_and_stock_agree() {
    check_stock("", "", ("", false));
    check_stock("", "yes", ("", true));
    check_stock("3", "", ("3", true));
    check_stock("3", "no", ("3", false));
    check_stock("0", "yes", ("0", false));
    check_stock("", "4", ("4", true));
    check_stock("02", "yes", ("2", true));
    let (catalogue, id) = Catalogue::empty().add(axle("43/11").with(Column::Quantity, "0"));
    let there = catalogue.stocked(PartKind::RingAndPinion, &id, true).unwrap();
    let there = there.get(PartKind::RingAndPinion, &id).unwrap();
    assert_eq!((there.in_stock(), there.text(Column::Quantity)), (true, ""), "how many there are is not known any longer");
}

#[test]
fn a_stocktaking_file_says_by_the_quantity_whether_there_is_one() {
    let (catalogue, id) = Catalogue::built_in().put(None, &axle("43/11").with(Column::Price, "120").with(Column::InStock, "no")).unwrap();
    let after = |file: &str| {
        let plan = catalogue.plan(file).unwrap();
        let entry = catalogue.apply(&plan, Differing::Replace).get(PartKind::RingAndPinion, &id).unwrap().clone();
        (entry.in_stock(), entry.text(Column::Quantity).to_owned(), entry.text(Column::Price).to_owned())
    };
    assert_eq!(after("drive,quantity\n43/11,5\n"), (true, "5".into(), "120".into()));
    assert_eq!(after("drive,price\n43/11,130\n"), (false, String::new(), "130".into()));
}
