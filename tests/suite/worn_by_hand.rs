//! Worn or usable, beside readings converted by hand: good, watch, renew, and what cannot be used.

use layshaft::checklist::Amount;
use layshaft::faults::TableError;
use layshaft::faults::wear::{State, Wear};
use layshaft::job::{Bench, Faults, Job, demo};
use layshaft::questions::{Shelves, Source, analyse_job, bench, of_id};
use layshaft::sheet::{Piece, Reader, Section, Words};
use layshaft::units::System;

fn job(worn: &str) -> Job {
    let faults = Faults { worn: worn.into(), ..Faults::default() };
    Job { bench: Bench { faults, ..Bench::default() }, ..demo::empty(System::Metric) }
}

fn section(worn: &str) -> Section {
    let job = job(worn);
    let answers = analyse_job(&job, Shelves::default());
    let reader = Reader { units: job.units, words: Words::Uk };
    of_id("worn").unwrap().section(Source::new(&job, &answers, Shelves::default(), reader))
}

fn line(id: &str, reading: &str) -> String {
    let wear = Wear::built_in().iter().find(|wear| wear.id == id).unwrap();
    format!("[ ] {} | got {reading}", wear.name)
}

fn state(id: &str, reading: &str) -> State {
    let wear = Wear::built_in().iter().find(|wear| wear.id == id).unwrap();
    wear.state(&Amount::read(reading, Some(&wear.good)).unwrap())
}

/// By hand: 0.0005 in = 0.0127 mm, under 0.013; 0.025 in = 0.635 mm, between 0.5 and 0.8; 0.035 in = 0.889 mm, over 0.8; 0.007 in = 0.178 mm,
/// over 0.15.
#[test]
fn readings_stand_where_they_do_by_hand() {
    assert_eq!(state("ridge", "0.0005 in"), State::Watch);
    assert_eq!(state("ridge", "0.0002 in"), State::Watch);
    assert_eq!(state("ridge", "0.0001 in"), State::Good);
    assert_eq!(
        [state("ring-gap", "0.035 in"), state("ring-gap", "0.025 in"), state("ring-gap", "0.4")],
        [State::Good, State::Watch, State::Scrap]
    );
    assert_eq!(state("taper", "0.007 in"), State::Scrap);
    assert_eq!([state("pits", "0 %"), state("pits", "3 %"), state("pits", "5")], [State::Good, State::Watch, State::Scrap]);
}

/// Whatever is more worn never stands better.
#[test]
fn more_wear_is_never_better() {
    for wear in Wear::built_in() {
        let states: Vec<State> =
            (0..400).map(|step| wear.state(&Amount::read(&format!("{}", f64::from(step) * 0.005), Some(&wear.good)).unwrap())).collect();
        let (first, last) = (states[0], states[399]);
        assert_ne!(first, last, "{}", wear.id);
        assert!(states.is_sorted() || states.iter().rev().is_sorted(), "{}", wear.id);
    }
}

#[test]
fn the_worst_is_said_first_with_what_goes_with_it() {
    let said = section(&[line("fork", "0.2 mm"), line("ring-gap", "0.3 mm"), line("ridge", "0.01 mm")].join("\n"));
    assert_eq!(said.answer.plain(), "Past the limit: brass ring’s gap. Watch: countershaft’s ridge.");
    let keys: Vec<&str> = said.rows.iter().map(|row| row.key.as_str()).collect();
    assert_eq!(keys, ["part-ring-gap", "part-ridge", "part-fork"]);
    let words: Vec<String> = said.rows[0].cells[0]
        .pieces()
        .filter_map(|piece| if let Piece::Words(words) = piece { Some(words.clone()) } else { None })
        .collect();
    assert_eq!(words, ["good at least 0.8 mm, usable at least 0.5 mm", "Goes with it: ring, keys and the gear’s cone."]);
    assert_eq!(section(&line("fork", "0.2 mm")).answer.plain(), "All that was measured is good.");
    assert_eq!(section("").answer.plain(), "");
}

#[test]
fn what_cannot_be_used_is_said_and_kept() {
    let problems = |worn: &str| -> Vec<String> { bench::problems(&job(worn)).iter().map(layshaft::problem::Problem::sentence).collect() };
    assert!(problems("[ ] left boot | got 3 mm")[0].contains("“left boot” is no part of this list: it is kept, and not judged"));
    assert!(problems(&line("fork", "2 N·m"))[0].contains("cannot be held against"));
    assert!(problems(&line("fork", "loose"))[0].contains("is not a reading"));
    assert_eq!(Wear::read("").unwrap_err(), TableError::Empty("worn parts"));
}
