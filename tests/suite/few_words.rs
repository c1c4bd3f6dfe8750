//! A few words to send: what they say of the demo's setups, by hand, and what they leave out.

use layshaft::job::{Job, SetupId, demo};
use layshaft::questions::{Shelves, Source, analyse_job, few_words};
use layshaft::sheet::{Reader, Words};

fn lines(change: impl FnOnce(&mut Job), words: Words) -> Vec<String> {
    let mut job = demo::job();
    change(&mut job);
    let answers = analyse_job(&job, Shelves::default());
    few_words::lines(Source::new(&job, &answers, Shelves::default(), Reader { units: job.units, words }))
}

/// Setup C: 33/22 × 36/19 = 2.842, × 31/24 = 1.938, × 27/28 = 1.446, direct, × 20/35 = 0.857; 43/11 = 3.909; a 185/70R14 rolls 73.97 in;
/// 70 mph in 5th: 3,907 × 0.857 = 3,348 rpm, 3,907 − 3,348 = 559 fewer; 1st at 6,500 rpm: 41.0 mph, 5th: 116.5 ÷ 0.857 = 135.9 mph; 3rd to 4th: 1 − 1 ÷ 1.446 =
/// 31 %, 1st to 2nd 1 − 1.938 ÷ 2.842 = 32 %.
#[test]
fn the_five_speed_in_eight_lines() {
    let said = lines(|job| job.for_customer = Some(SetupId(3)), Words::Us);
    assert!((5..=8).contains(&said.len()), "{said:#?}");
    let all = said.join("\n");
    for words in [
        "Five-speed, overdrive 5th",
        "ratios 2.842 1.938 1.446 1.000 0.857",
        "43/11, 3.909; tire 185/70R14",
        "At 70 mph in top the engine turns 3,348 rpm, 559 fewer than with As it came.",
        "1st does 41.0 mph and 5th 135.9 mph; the biggest drop is 32 %, 1st to 2nd.",
        "The speedometer reads 1.9 % fast at a true 60 mph: keep its gears.",
        "Figures are calculated, not measured on the car.",
    ] {
        assert!(all.contains(words), "{words:?} is missing in\n{all}");
    }
}

/// The first setup is beside nothing; without an engine all lines stand.
#[test]
fn the_first_setup_is_held_against_none_and_needs_no_engine() {
    let said = lines(|job| job.pull = layshaft::job::Pull::default(), Words::Uk).join("\n");
    assert!(said.contains("the engine turns 3,907 rpm.") && said.contains("tyre 185/70R14"), "{said}");
    assert!(!said.contains("than with") && !said.contains("case of"), "{said}");
}

/// Neither the customer nor the notes go out with it; what is not known makes no line.
#[test]
fn no_customer_no_notes_no_empty_line() {
    let said = lines(
        |job| {
            job.customer = "Mrs Example".into();
            job.notes = "pays late".into();
            let id = job.setups[0].id;
            job.type_text(layshaft::job::Field::Setup(id, layshaft::job::SetupField::FinalDrive), String::new());
        },
        Words::Us,
    );
    let all = said.join("\n");
    assert!(!all.contains("Example") && !all.contains("pays"), "{all}");
    assert!(all.contains("Tire 185/70R14.") && !all.contains("ring and pinion") && !all.contains("At 70 mph"), "{all}");
}
