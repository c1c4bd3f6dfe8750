//! The sentences of the demo job against arithmetic done apart from the program, and what they say of one setup or of none.

use layshaft::job::{Job, Setup, SetupId, demo};
use layshaft::questions::build;
use layshaft::sheet::Words;

/// The answer of a question, setups in brackets.
fn answer(job: &Job, id: &str) -> String {
    build(job, Words::Us).sections.into_iter().find(|section| section.id == id).map(|section| section.answer.marked().to_owned()).unwrap()
}

/// The demo job with some of its setups.
fn with(columns: &[usize]) -> Job {
    let mut job = demo::job();
    job.setups = columns.iter().map(|column| job.setups[*column].clone()).collect();
    job
}

/// As many more copies of the first setup.
fn copied(mut job: Job, times: u32) -> Job {
    for at in 0..times {
        let copy = Setup { id: SetupId(100 + at), ..job.setups[0].clone() };
        job.setups.push(copy);
    }
    job
}

#[test]
fn gears() {
    // A drops 1 − 576/851 = 32.3 %, 1 − 644/864 = 25.5 %, 1 − 675/840 = 19.6 %; B the same, then 1 − (29/26)/(32/23) = 19.8 %
    // and 1 − 702/812 = 13.5 %. 1st: 8.3330 of 9.6424 is 13.6 % less. C: 11.1100 of 9.6424 is 15.2 % more; 3rd to 4th 30.9 %.
    assert_eq!(
        answer(&demo::job(), "gears"),
        "[B] closes up above 2nd (20 and 14 % for 25 and 20) with a 14 % taller 1st. \
         [C] has 5 gears, top 0.857, and a 15 % shorter 1st, but a 31 % gap from 3rd to 4th."
    );
    assert_eq!(answer(&with(&[0]), "gears"), "[A] drops 32 % from 1st to 2nd, then 25 and 20 %; 1st gear is 9.64 overall.");
    assert_eq!(answer(&copied(with(&[0]), 1), "gears"), "[A] and [B] are geared alike: drops of 32, 25 and 20 %, 1st 9.64 overall.");
    // 1st to top: 2.13 of B, 2.47 of A and its copies, 54/19 ÷ 6/7 = 3.32 of C.
    assert_eq!(
        answer(&copied(demo::job(), 2), "gears"),
        "[B] is closest, 2.13 from 1st to top, [C] is widest, 3.32. 1st is shortest in [C], 11.11 overall, and tallest in [B], 8.33."
    );
}

#[test]
fn an_empty_job_says_what_to_do_first() {
    let job = demo::empty(layshaft::units::System::Inch);
    assert_eq!(answer(&job, "gears"), "Choose a gearbox, or type its tooth counts.");
}

#[test]
fn axles_alone_make_every_gear_taller() {
    let mut job = copied(with(&[0]), 1);
    job.setups[1].final_drive = "41/11".into();
    // 41 ÷ 43 = 0.9535.
    assert_eq!(answer(&job, "gears"), "[B] has the same steps, every gear 5 % taller.");
}
