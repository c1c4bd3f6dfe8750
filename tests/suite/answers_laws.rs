//! Laws of every question's answer, whatever is typed: whom a sentence names, how many rows decide, what never stands in a sentence.

use layshaft::job::Job;
use layshaft::questions::{build, of_id};
use layshaft::sheet::said::{Bit, open};
use layshaft::sheet::{Cell, Piece, Place, Section, Words};
use proptest::prelude::*;

use crate::any_job::job;

/// The most rows that decide: gears have a row each and two more.
fn most(section: &Section) -> usize {
    if section.id == "gears" { 10 } else { 8 }
}

proptest! {
    // A whole sheet a case: more than these took a third of the suite's time and found nothing.
    #![proptest_config(ProptestConfig { cases: 32, ..ProptestConfig::default() })]

    #[test]
    fn answers_name_setups_that_are_there(job in job()) {
        for section in build(&job, Words::Uk).sections {
            let (plain, marked) = (section.answer.plain(), section.answer.marked().to_owned());
            let mut opened = marked.clone();
            for bit in section.answer.bits() {
                match bit {
                    Bit::Words(_) => {}
                    Bit::Setup(column) => prop_assert!(column < job.setups.len(), "{marked}"),
                    Bit::Open { question, words } => {
                        prop_assert!(of_id(question).is_some(), "{marked}");
                        opened = opened.replace(&open(question, words), words);
                    }
                }
            }
            let letters = (0..6).fold(opened, |text, column| {
                let letter = Job::letter(column);
                text.replace(&format!("[{letter}]"), &letter.to_string())
            });
            prop_assert_eq!(letters, plain.clone());
            prop_assert!(!["NaN", "inf", "–", "  "].iter().any(|never| plain.contains(never)), "{plain}");
            prop_assert!(plain.is_empty() || plain.ends_with(['.', '?']), "{plain}");
        }
    }

    #[test]
    fn few_rows_decide_and_each_says_something(job in job()) {
        for section in build(&job, Words::Us).sections {
            prop_assert!(section.decide <= most(&section), "{}: {} rows", section.id, section.decide);
            for row in section.rows.iter().take(section.decide).filter(|row| row.key != "missing") {
                // At the bench a row stands for what is typed, and says why where that is of no use.
                let says = |piece: &Piece| if let Piece::Absent(why) = piece { section.place == Place::Bench && !why.is_empty() } else { true };
                let is_said = |cell: &Cell| !cell.entries.is_empty() || cell.pieces().any(says);
                prop_assert!(row.cells.iter().any(is_said), "{} of {} says nothing", row.key, section.id);
            }
            for rest in &section.rests {
                prop_assert!(!rest.value.is_empty() && !rest.source.is_empty(), "{rest:?}");
            }
        }
    }
}
