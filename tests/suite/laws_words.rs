//! The trade's words: each row of the table says what it should, whole words only, capitals kept.

use layshaft::job::{Job, demo};
use layshaft::questions::build;
use layshaft::sheet::words::TABLE;
use layshaft::sheet::{Cell, Piece, Sheet, Words};
use layshaft::units::System;

use crate::any_job::rows;
use crate::golden::layouts;

#[test]
fn every_row_is_said() {
    for (ours, us, uk) in TABLE {
        for (words, wanted) in [(Words::Us, us), (Words::Uk, uk)] {
            let capital = layshaft::problem::capital;
            assert_eq!(words.say(ours), **wanted);
            assert_eq!(words.say(&format!("the {ours}, and ({ours})")), format!("the {wanted}, and ({wanted})"));
            assert_eq!(words.say(&format!("{}.", capital(ours))), format!("{}.", capital(wanted)));
            if !ours.contains(' ') {
                let longer = format!("x{ours} {ours}x 7{ours} {ours}ing");
                assert_eq!(words.say(&longer).replace("changing", "shifting"), longer, "inside a longer word");
            }
            assert_eq!(words.say(&format!("“{ours}” is no size")), format!("“{ours}” is no size"), "what was typed");
        }
    }
}

#[test]
fn no_row_hides_behind_another_or_is_said_twice() {
    for (at, (ours, us, uk)) in TABLE.iter().enumerate() {
        assert!(TABLE.iter().skip(at + 1).all(|(later, ..)| later != ours), "{ours} stands twice");
        assert!(TABLE.iter().take(at).all(|(earlier, ..)| !ours.starts_with(&format!("{earlier} "))), "{ours} is never reached");
        assert_eq!((Words::Us.say(us).as_str(), Words::Uk.say(uk).as_str()), (*us, *uk), "said twice it must not change again");
    }
}

#[test]
fn language_chooses_the_words() {
    for (tag, words) in
        [("en-US", Words::Us), ("en-us-x-shop", Words::Us), ("en-GB", Words::Uk), ("en-AU", Words::Uk), ("de", Words::Uk), ("", Words::Uk)]
    {
        assert_eq!(Words::of_language(tag), words, "{tag}");
    }
}

/// Every word that a reader sees on a sheet.
fn said(sheet: &Sheet, words: Words) -> Vec<String> {
    let working = |working: &layshaft::sheet::Working| {
        let said = working.clone().said(words);
        [said.formula.clone(), said.filled(), said.source]
    };
    let piece = |piece: &Piece| match piece {
        Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => vec![text.clone()],
        Piece::Verdict(verdict) => vec![verdict.text.clone()],
        Piece::Figure(figure) => figure.working.iter().flat_map(working).collect(),
    };
    let labels = |cell: &Cell| cell.entries.iter().map(|entry| entry.label.clone()).collect::<Vec<_>>();
    let cells =
        rows(sheet).flat_map(|row| &row.cells).flat_map(|cell| cell.pieces().flat_map(piece).chain(labels(cell)).collect::<Vec<_>>());
    let titles = sheet.sections.iter().flat_map(|section| [section.title.clone(), section.ask.clone()]);
    cells.chain(titles).chain(rows(sheet).map(|row| row.label.clone())).collect()
}

/// Whether a text holds one of the words, as whole words.
fn holds(text: &str, words: &[&str]) -> bool {
    text.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|word| words.contains(&word))
}

#[test]
fn no_american_word_on_a_british_sheet_and_the_other_way_about() {
    const AMERICAN: &[&str] = &[
        "tire",
        "tires",
        "center",
        "driveshaft",
        "synchronizer",
        "color",
        "catalog",
        "aluminum",
        "shift",
        "upshift",
        "shifted",
        "upshifts",
    ];
    const BRITISH: &[&str] =
        &["tyre", "tyres", "centre", "propshaft", "synchroniser", "colour", "catalogue", "aluminium", "laygear", "baulk", "mileometer"];
    let jobs: [fn() -> Job; 4] = [demo::job, layouts, || demo::empty(System::Inch), || Job { units: System::Metric, ..demo::job() }];
    for job in jobs.into_iter().map(|job| job()) {
        for text in said(&build(&job, Words::Uk), Words::Uk) {
            assert!(!holds(&text, AMERICAN), "{text}");
        }
        for text in said(&build(&job, Words::Us), Words::Us) {
            assert!(!holds(&text, BRITISH), "{text}");
        }
    }
}
