//! The shop's own rows about faults: read beside those built in, ranked with them and marked, what cannot be used said by its line, kept and
//! in the backup.

use layshaft::catalogue::Catalogue;
use layshaft::faults::{OwnRows, Table, TableError, own};
use layshaft::job::backup::{self, Backup};
use layshaft::job::incoming::{self, Incoming};
use layshaft::job::kept::{FAULTS, is_kept, take_in};
use layshaft::job::{Bench, Faults, Job, book::RecordId, demo};
use layshaft::ledger::Ledger;
use layshaft::problem::Explain;
use layshaft::questions::{OnShelf, Source, analyse_job, bench, of_id};
use layshaft::sheet::{Piece, Reader, Section, Words};
use layshaft::units::System;
use proptest::prelude::*;

use crate::any_job::text;

const TESTS: &str = "test;cost;ask;yes;no";
const CAUSES: &str = "cause;name;reach;symptoms;fits;against;shows;together;measure";

/// A cause with a test and a symptom of its own.
fn rows() -> String {
    format!(
        "symptom;under;said;asks;never;branch;implies\nown-hums;noise and shaking;hums in top;load;ticks;noise;\n\
         {TESTS}\nown-level;0;Car level, plug out: does oil run out?;it is filled too high;the level is right\n\n\
         {CAUSES}\nown-plug;level plug too high;1;leak-breather:3 own-hums:1;oil;slowly;own-level=yes;plug and filler;\n"
    )
}

fn job(said: &str, tried: &str) -> Job {
    let faults = Faults { said: said.into(), tried: tried.into(), ..Faults::default() };
    Job { bench: Bench { faults, ..Bench::default() }, ..demo::empty(System::Metric) }
}

fn section(rows: &str, job: &Job) -> Section {
    let shelf = OnShelf::with_own_rows(&Catalogue::empty(), rows);
    let answers = analyse_job(job, shelf.shelves());
    let reader = Reader { units: job.units, words: Words::Uk };
    of_id("faults").unwrap().section(Source::new(job, &answers, shelf.shelves(), reader))
}

/// By hand: the usual cause 3 × 2, since an oil change + 3, bolted on outside − 1, a test that costs nothing 0: 8 points; its test answered
/// as it would have it + 8 makes 16.
#[test]
fn a_row_of_the_shop_ranks_with_the_others_and_is_marked() {
    let own = section(&rows(), &job("leak-breather; oil", ""));
    let row = own.rows.iter().find(|row| row.key == "cause-own-plug").unwrap();
    assert!(row.label.ends_with("Level plug too high (your own)"), "{}", row.label);
    let points = |section: &Section| {
        let cell = &section.rows.iter().find(|row| row.key == "cause-own-plug").unwrap().cells[0];
        cell.pieces().find_map(|piece| if let Piece::Figure(figure) = piece { Some(figure.shown.clone()) } else { None }).unwrap()
    };
    assert_eq!(points(&own), "8");
    let tried = "[x] Car level, plug out: does oil run out? | got yes";
    let shown = section(&rows(), &job("leak-breather; oil", tried));
    assert_eq!(points(&shown), "16");
    assert_eq!(shown.answer.plain(), "Its test shows it: level plug too high (your own). Look at these with it: plug and filler.");
    assert!(own.rests.iter().any(|rest| rest.label == "Rows of the shop’s own beside the table" && rest.value == "3"));
    // Without the rows neither the symptom nor the test is known, and both texts stay.
    let theirs = job("own-hums", tried);
    assert_eq!(bench::problems(&theirs).len(), 2);
    assert!(bench::problems_by(&theirs, &OwnRows::read(&rows()).table).is_empty());
    assert!(section(&rows(), &theirs).answer.plain().contains("level plug too high"));
}

/// What is built in stays where it is, so that a job says the same with rows or without.
#[test]
fn the_built_in_rows_keep_their_places() {
    let own = OwnRows::read(&rows());
    assert_eq!((own.taken, own.problems.len()), (3, 0));
    let built_in = Table::built_in();
    assert_eq!(own.table.causes[..built_in.causes.len()], built_in.causes);
    assert_eq!(own.table.symptoms[..built_in.symptoms.len()], built_in.symptoms);
    assert!(own.table.causes.last().unwrap().is_own && !own.table.causes[0].is_own);
}

#[test]
fn a_broken_row_is_said_by_its_line_and_the_rest_is_kept() {
    let told = |text: &str| -> Vec<String> { OwnRows::read(text).problems.iter().map(TableError::what).collect() };
    for (line, said) in [
        ("own-x;no plug;1;leak-breather:3;oil;;;", "line 3 (causes) has not as many cells as its head"),
        ("own-x;no plug;4;leak-breather:3;oil;;;;", "line 3 (causes): “4” is not known"),
        ("own-x;no plug;1;leak-breather;oil;;;;", "line 3 (causes): “leak-breather” is not known"),
        ("own-x;no plug;1;leak-breather:9;oil;;;;", "line 3 (causes): “leak-breather:9” is not known"),
        ("own-x;no plug;1;;oil;;;;", "line 3 (causes): “symptoms” is blank, or has a bar in it"),
        ("own-x;;1;leak-breather:3;oil;;;;", "line 3 (causes): “name” is blank, or has a bar in it"),
        ("mounts;no plug;1;leak-breather:3;oil;;;;", "line 3 (causes): “mounts” is there already"),
        ("own x;no plug;1;leak-breather:3;oil;;;;", "line 3 (causes): “own x” is no name"),
    ] {
        let text = format!("# ours\n{CAUSES}\n{line}\nown-y;a good one;1;leak-breather:3;oil;;;;");
        assert_eq!(told(&text), [said]);
        assert_eq!(OwnRows::read(&text).taken, 1, "{line}");
    }
    assert_eq!(told("own-x;no plug\nown-y"), ["line 1 stands under no head line"]);
    let other = OwnRows::read("cause;name\nown-x;no plug").problems;
    assert_eq!(other[0].what(), "line 1 names other columns than its table has");
    assert!(other[0].what_to_do().ends_with(CAUSES));
    assert!(told(&format!("{TESTS}\nown-t;0;Is it | so?;a;b"))[0].contains("“ask” is blank, or has a bar in it"));
    // A comma or a tab parts the cells too, as a spreadsheet writes them.
    let commas = rows().replace("Car level, plug", "Car level: plug").replace(';', ",");
    assert_eq!((OwnRows::read(&commas).taken, told(&commas)), (3, Vec::new()));
    let many = format!("{TESTS}\n") + &"x\n".repeat(3_000);
    assert_eq!(OwnRows::read(&many).problems.first(), Some(&TableError::TooMany(2_000)));
}

/// The example as it stands is read and adds nothing; its rows made one's own are good ones.
#[test]
fn the_example_is_one_to_follow() {
    let example = OwnRows::read(own::EXAMPLE);
    assert_eq!((example.taken, example.problems), (0, Vec::new()));
    let own = OwnRows::read(&own::EXAMPLE.replace("# example ", ""));
    assert_eq!((own.taken, own.problems), (3, Vec::new()));
    assert!(of_id(&own.table.symptoms.last().unwrap().branch).is_some());
    // What is built in, taken as one's own, is all there already.
    let built_in = OwnRows::read(&own::built_in());
    assert!(built_in.taken == 0 && built_in.problems.iter().all(|why| matches!(why, TableError::Twice { .. })), "{:?}", built_in.problems);
}

#[test]
fn they_are_kept_and_go_into_the_backup_and_out_of_it() {
    let text = backup::to_text_with(&[], &Catalogue::empty(), &[], &rows(), "2026-11-28T10:00:00");
    let Ok(Incoming::Book(book)) = incoming::read(&text) else { panic!("not a book") };
    assert_eq!(book.faults, rows());
    assert_eq!(backup::plan(&[], &Catalogue::empty(), *book).faults, rows());
    assert_eq!(backup::plan(&[], &Catalogue::empty(), Backup::default()).faults, "");
    assert_eq!((own::new_rows("", &rows()), own::new_rows(&rows(), &rows())), (3, 0));
    // What two pages wrote comes together, each row once.
    let other = format!("{CAUSES}\nown-y;a good one;1;leak-breather:3;oil;;;;");
    let mut ledger = Ledger::default();
    assert!(is_kept(FAULTS));
    for text in [rows(), other.clone(), rows()] {
        take_in(&mut ledger, FAULTS, &text, RecordId::fresh(1, 2));
    }
    let both = OwnRows::read(ledger.text(FAULTS).unwrap());
    assert_eq!((both.taken, both.problems.len()), (4, 0));
    assert_eq!(own::joined(&other, &other), other);
}

proptest! {
    /// Any text is read, and any two come together without losing a row or having one twice.
    #[test]
    fn any_text_is_read_and_joined(ours in text(), theirs in text()) {
        let read = OwnRows::read(&format!("{}\n{ours}", rows()));
        prop_assert!(read.taken >= 2);
        let both = own::joined(&ours, &theirs);
        prop_assert_eq!(own::new_rows(&both, &theirs), 0);
        prop_assert_eq!(own::joined(&both, &theirs), both);
    }
}
