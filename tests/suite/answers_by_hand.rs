//! The sentences of the demo job against arithmetic done apart from the program, and what they say of one setup or of none.

use layshaft::job::{Job, Setup, SetupId, demo};
use layshaft::questions::{self, Shelves, Source, build};
use layshaft::sheet::{Reader, Words};

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
         [C] has 5 gears, top 0.857, and a 15 % shorter 1st, but a 31 % gap from 3rd to 4th. \
         [B] goes into [A]’s case; [C] does not (made for another case: Redshank long case)."
    );
    assert_eq!(answer(&with(&[0]), "gears"), "[A] drops 32 % from 1st to 2nd, then 25 and 20 %; 1st gear is 9.64 overall.");
    assert_eq!(answer(&copied(with(&[0]), 1), "gears"), "[A] and [B] are geared alike: drops of 32, 25 and 20 %, 1st 9.64 overall.");
    // 1st to top: 2.13 of B, 2.47 of A and its copies, 54/19 ÷ 6/7 = 3.32 of C.
    assert_eq!(
        answer(&copied(demo::job(), 2), "gears"),
        "[B] is closest, 2.13 from 1st to top, [C] is widest, 3.32. 1st is shortest in [C], 11.11 overall, and tallest in [B], 8.33. \
         [B] goes into [A]’s case; [C] does not (made for another case: Redshank long case)."
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

#[test]
fn inside() {
    // Clusters: 6,500 × 25/30 = 5,417, × 27/28 = 6,268, × 22/33 = 4,333 rpm; 5,417 ÷ 4,333 = 1.250, 6,268 ÷ 4,333 = 1.447.
    // 5th of C free with 1st engaged: 4,333.3 × 35/20 − 4,333.3 × 19/36 = 7,583.3 − 2,287.0 = 5,296; 1st of A free in direct:
    // 6,500 − 5,416.7 × 18/37 = 3,865; of B 6,500 − 6,267.9 × 18/37 = 3,451. 1st to 2nd: 6,500 × 275/851 = 2,100; of C
    // 6,500 × (1 − (31/24) ÷ (36/19)) = 2,069, more than 3rd to 4th: 6,500 × (1 − 28/40.5) = 2,006.
    assert_eq!(
        answer(&demo::job(), "inside"),
        "At 6,500 rpm the cluster turns slowest in [C], 4,333 rpm, by its 22/33 input pair; 25 % faster in [A], 45 % in [B]. \
         Fastest on its shaft is 5th in [C]: 5,296 rpm with 1st engaged. \
         Hardest on the synchronizers is 1st to 2nd: the input changes by 2,100 rpm in [A] and [B], 2,069 in [C]."
    );
    assert_eq!(
        answer(&with(&[0]), "inside"),
        "At 6,500 rpm the cluster turns 5,417 rpm in [A]. \
         Fastest on its shaft is 1st in [A]: 3,865 rpm with 4th engaged. \
         Hardest on the synchronizers is 1st to 2nd: the input changes by 2,100 rpm in [A]."
    );
}

#[test]
fn road() {
    // 70 mph = 73,920 in/min ÷ 73.97 in = 999.3 turns a minute × 43/11 = 3,907 rpm, × 6/7 = 3,348; 3,907 − 3,348 = 559.
    // 1st at 6,500 rpm: 47.2, 54.6 and 41.0 mph by 9.6424, 8.3330, 11.1100; 6,500 × 576/851 = 4,400, of C 4,431 rpm.
    assert_eq!(
        answer(&demo::job(), "road"),
        "[C] turns slowest at 70 mph in top, 3,348 rpm, by its 0.857 top gear; [A] and [B] turn 559 rpm more. \
         At 6,500 rpm 1st reaches 54.6 mph in [B], 47.2 in [A], 41.0 in [C]; \
         no shift lands below 4,400 rpm in [A] and [B], 4,431 in [C]."
    );
    // 73.97 in × 6,500 ÷ 3.9091 ÷ 1,056 in/min per mph = 116.5 mph.
    assert_eq!(
        answer(&with(&[0]), "road"),
        "[A] turns 3,907 rpm at 70 mph in top. \
         At 6,500 rpm 1st reaches 47.2 mph and 4th 116.5 mph; no shift lands below 4,400 rpm."
    );
}

#[test]
fn a_tyre_faster_than_its_symbol_is_said_and_an_axle_named_as_the_cause() {
    let mut job = copied(with(&[0]), 1);
    job.setups[0].tyre = layshaft::units::Typed::new("185/70R14 88Q", layshaft::units::System::Inch);
    job.setups[1].final_drive = "39/11".into();
    // Q is 160 km/h = 99 mph; 999.3 × 39/11 = 3,543 rpm, 364 less; the top speed of the car needs engine and mass: none here.
    job.pull = layshaft::job::Pull::default();
    let said = answer(&job, "road");
    assert!(said.starts_with("[B] turns slowest at 70 mph in top, 3,543 rpm, by its 3.545 axle; [A] turns 364 rpm more."), "{said}");
    assert!(said.ends_with("[A] reaches 116 mph on tires made for 99 (Q)."), "{said}");
}

#[test]
fn find() {
    // A meets 1st (9.64 of 9 to 10.5), gears and tyre; B gears and tyre; C speedometer, gears and tyre. A misses rpm by 607, six
    // steps of 100, more than its drop by 2.3 or its speedometer by 4.3 steps of 1 %; C misses 1st by 0.61, two and a half of 0.25.
    assert_eq!(
        answer(&demo::job(), "find"),
        "[A] and [C] meet most wishes, 3 of 6; furthest off is rpm in top at 70 mph, 607 rpm too high in [A]; \
         1st gear, overall, 0.61 too high in [C]. [B] meets 2. Search the catalog for what meets more."
    );
    assert_eq!(
        answer(&with(&[0]), "find"),
        "[A] meets 3 of 6 wishes; furthest off is rpm in top at 70 mph, 607 rpm too high. Search the catalog for what meets more."
    );
    let mut job = demo::job();
    job.wishes.rows.clear();
    assert_eq!(answer(&job, "find"), "Add what the customer wants: rpm at a speed, 1st gear, drops, speedometer, tire.");
}

/// 24 + 29, 36 + 17, 31 + 22 and 27 + 26 are 53 each, as are 26 + 27 and 28 + 25; the pairs of C are 22 + 33 = 55 each.
#[test]
fn what_goes_into_the_case_is_said_of_counts_that_were_typed() {
    let mut job = demo::job();
    for (at, constant, third) in [(0, "24/29", "27/26"), (1, "26/27", "28/25")] {
        let gearbox = &mut job.setups[at].gearbox;
        gearbox.name.clear();
        gearbox.constant = constant.into();
        gearbox.gears = ["36/17", "31/22", third, "direct"].map(String::from).to_vec();
    }
    let said = answer(&job, "gears");
    assert!(said.ends_with("[B] goes into [A]’s case by its tooth sums; [C] does not (tooth sum 55 where the case takes 53)."), "{said}");
}

/// The shelf knows that C's set is made for another case, which its tooth sums do not tell.
#[test]
fn what_stands_there_first_is_never_taken_back() {
    let job = demo::job();
    let reader = Reader { units: job.units, words: Words::Us };
    let before = questions::analyse_first(&job);
    let first = (questions::FIRST.answer)(Source::new(&job, &before, Shelves::default(), reader)).plain();
    let sheet = build(&job, Words::Us);
    let whole = sheet.sections.iter().find(|section| section.id == questions::FIRST.id).unwrap().answer.plain();
    assert!(whole.starts_with(&first), "{first}\n{whole}");
    assert!(whole.ends_with("C does not (made for another case: Redshank long case)."), "{whole}");
    assert!(!first.contains("case"), "{first}");
}
