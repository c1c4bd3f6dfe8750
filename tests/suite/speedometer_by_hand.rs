//! The commonest question, worked by hand: a dial that reads 6 % fast, and the one gear to fit.
//!
//! The car: 41/11, 165SR13, speedometer gears 8/21, 60 on the dial at a true 56.6 mph. By hand: 60 ÷ 56.6 = 1.06007, so 21 × 1.06007 =
//! 22.26 driven teeth would read true, and 22 reads 1.06007 × 21 ÷ 22 = 1.01189 of the truth. A 13-inch rim is 330 mm (ISO 4000-1, from memory), the tyre 330 + 2 × 132 = 594 mm across
//! and rolls 3.05 × 594 = 1,811.7 mm (radial, common practice), 888.3 turns/mile; × 41 ÷ 11 × 8 ÷ 21 = 1,261.3 turns of the cable a mile;
//! ÷ 1.06007 the dial expects 1,189.8.

use layshaft::gearing::Place;
use layshaft::job::{Chosen, Job, Stage, demo};
use layshaft::questions::build;
use layshaft::sheet::{Piece, Sheet, Words};
use layshaft::speedometer::dial::per_mile;
use layshaft::speedometer::work::Fitted;
use layshaft::speedometer::{Dial, Role, SpeedoGear, Train, Wanted, Work, rank_shelf, read};
use layshaft::units::{System, Typed, unit};

use crate::any_job::{figure, figures, rows, sheet};

fn car(road_check: &str) -> Job {
    let mut job = demo::empty(System::Inch);
    let setup = &mut job.setups[0];
    setup.final_drive = "41/11".into();
    setup.tyre = Typed::new("165SR13", System::Inch);
    setup.speedo.gears = "8/21".into();
    setup.speedo.road_check = Typed::new(road_check, System::Inch);
    job
}

fn answer(sheet: &Sheet) -> String {
    sheet.sections.iter().find(|section| section.id == "speedometer").unwrap().answer.plain()
}

/// Everything a row says of one setup.
fn said(sheet: &Sheet, column: usize, row: &str) -> String {
    let cell = &rows(sheet).find(|found| found.key == row).unwrap().cells[column];
    let pieces = cell.pieces().map(|piece| match piece {
        Piece::Figure(figure) => figure.text(),
        Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => text.clone(),
        Piece::Verdict(verdict) => format!("! {}", verdict.text),
    });
    pieces.collect::<Vec<_>>().join(" | ")
}

#[track_caller]
fn check(sheet: &Sheet, column: usize, shown: &[(&str, &str)]) {
    for (key, text) in shown {
        assert_eq!(figure(sheet, column, key).text(), *text, "{key}");
    }
}

const READS_FAST: [(&str, &str); 6] = [
    ("speedometer.reads_mph", "63.6 mph"),
    ("speedometer.error_percent", "6.0 %"),
    ("road_check.error_percent", "6.0 %"),
    ("speedometer.driven_wanted", "22.26"),
    ("speedometer.fit_reads_mph", "60.7 mph"),
    ("speedometer.fit_error_percent", "1.2 %"),
];

#[test]
fn one_road_check_names_the_driven_gear() {
    let sheet = sheet(&car("60 56.6"));
    assert_eq!(
        answer(&sheet),
        "A reads 6.0 % fast at a true 60 mph: fit the 22-tooth driven gear, keep the 8-tooth drive, and it reads 1.2 % fast. \
         A second reading at another speed would rule out a bent needle."
    );
    check(&sheet, 0, &READS_FAST);
    check(&sheet, 0, &[("speedometer.cable_turnsmile", "1,261 turns/mile"), ("speedometer.cable_wanted_turnsmile", "1,190 turns/mile")]);
    assert!(said(&sheet, 0, "fit").starts_with("fit the 22-tooth driven gear, keep the 8-tooth drive: | 60.7 mph | 1.2 %"));
    assert!(said(&sheet, 0, "fit").contains("ten-minute job"));
}

/// 3,600 ÷ 63.6 = 56.6 mph; a kilometre in 39.52 s is 91.09 km/h, the same.
#[test]
fn a_mile_timed_is_a_true_speed() {
    for text in
        ["60 in 63.6 s to the mile", "60 in 63.6 s", "60 in 63.6 seconds a mile", "60 in 63.6 s/mile", "60: 63.6 sec over a measured mile"]
    {
        check(&sheet(&car(text)), 0, &READS_FAST);
    }
    let timed = read::readings("60 in 39.52 s to the kilometre", System::Inch).unwrap();
    assert!((unit::KM_H.number(timed[0].truth) - 3_600.0 / 39.52).abs() < 1e-9);
    assert!(read::readings("60 in 63.6 s to the moon", System::Inch).is_err());
}

/// The gears alone tell what mends it: neither tyre nor axle is asked.
#[test]
fn without_tyre_and_axle_the_gear_is_the_same() {
    let mut job = car("60 56.6");
    job.setups[0].tyre = Typed::default();
    job.setups[0].final_drive = String::new();
    let sheet = sheet(&job);
    check(&sheet, 0, &READS_FAST);
    assert!(figures(&sheet, 0).all(|figure| !figure.key.starts_with("speedometer.cable")), "turns over a distance need the tyre");
}

/// Nothing is claimed of a dial of which nothing is known.
#[test]
fn without_a_road_check_and_a_dial_nothing_is_claimed() {
    let sheet = sheet(&car(""));
    assert_eq!(answer(&sheet), "Type a road check or the number on the dial to get what the dial reads.");
    let claimed: Vec<&str> = figures(&sheet, 0).map(|figure| figure.key.as_str()).filter(|key| key.contains("speedometer")).collect();
    assert!(claimed.is_empty(), "{claimed:?}");
}

/// The dial goes into every setup: B with 43/11 reads 1.06007 × 43 ÷ 41 = 1.11178 of the truth; 21 × 1.11178 = 23.35, so 23 teeth read
/// 1.11178 × 21 ÷ 23 = 1.01510.
#[test]
fn the_dial_found_in_one_setup_serves_the_others() {
    let mut job = car("60 56.6; 30 28.3");
    job.copy_setup(job.setups[0].id);
    job.setups[1].final_drive = "43/11".into();
    job.setups[1].speedo.road_check = Typed::default();
    let sheet = sheet(&job);
    check(&sheet, 0, &READS_FAST);
    check(
        &sheet,
        1,
        &[("speedometer.error_percent", "11.2 %"), ("speedometer.driven_wanted", "23.35"), ("speedometer.fit_error_percent", "1.5 %")],
    );
    assert_eq!(
        answer(&sheet),
        "A reads 6.0 % fast at a true 60 mph: fit the 22-tooth driven gear, keep the 8-tooth drive, and it reads 1.2 % fast. \
         B reads 11.2 % fast at a true 60 mph: fit the 23-tooth driven gear, keep the 8-tooth drive, and it reads 1.5 % fast."
    );
    assert!(
        sheet
            .sections
            .iter()
            .flat_map(|section| &section.rests)
            .any(|rest| rest.value == "1,190 turns/mile" && rest.source.contains("road check of A"))
    );
}

/// A dial of 1,184 turns/mile reads 1,261.3 ÷ 1,184 = 1.0653 of the truth, and still does with an overdrive of 0.78 between gearbox and
/// axle: the drive gear sits on its output. A hub reduction of 2 behind the axle turns the drive gear twice as fast.
#[test]
fn an_overdrive_carries_the_drive_gear_on_its_output() {
    let mut job = car("");
    job.speedo.dial = Typed::new("1,184", System::Inch);
    check(&sheet(&job), 0, &[("speedometer.error_percent", "6.5 %")]);
    job.setups[0].stages = vec![Stage { name: "Overdrive".into(), place: Place::BeforeAxle, drive: "0.78".into(), ..Stage::default() }];
    check(&sheet(&job), 0, &[("speedometer.error_percent", "6.5 %")]);
    job.setups[0].stages[0] = Stage { name: "Hubs".into(), place: Place::BehindAxle, drive: "2".into(), ..Stage::default() };
    check(&sheet(&job), 0, &[("speedometer.error_percent", "113.1 %")]);
}

/// A constant from the dial's face, 1,000, would have this car read 1,261.3 ÷ 1,000; the road has measured 1.06, 19 % less.
#[test]
fn no_two_figures_of_a_column_contradict_each_other() {
    let mut job = car("");
    job.speedo.dial = Typed::new("1,000", System::Inch);
    check(&sheet(&job), 0, &[("speedometer.error_percent", "26.1 %"), ("speedometer.reads_mph", "75.7 mph")]);
    job.setups[0].speedo.road_check = Typed::new("60 56.6", System::Inch);
    let both = sheet(&job);
    check(&both, 0, &READS_FAST);
    let text = rows(&both).map(|row| format!("{:?}", row.cells[0])).collect::<Vec<_>>().join("\n");
    assert!(!text.contains("26.1") && !text.contains("75.7"), "{text}");
    assert!(said(&both, 0, "road-check").contains("! the dial as typed, with this axle and tire, would show 19 % more"));
    // The number that suits the road is no contradiction.
    job.speedo.dial = Typed::new("1,190", System::Inch);
    assert!(!said(&sheet(&job), 0, "road-check").contains('!'));
}

/// 4 mph too much at 66 and at 26: no share at all, so the gears stay. At a true 60 it shows 64, 6.7 % more.
#[test]
fn a_second_reading_tells_an_amount_from_a_share() {
    let sheet = sheet(&car("70 66; 30 26"));
    assert_eq!(
        answer(&sheet),
        "A reads 6.7 % fast at a true 60 mph: set the needle first, it shows 4.0 mph too much at every speed; then keep its gears."
    );
    check(
        &sheet,
        0,
        &[("speedometer.reads_mph", "64.0 mph"), ("speedometer.driven_wanted", "21.00"), ("road_check.offset_mph", "4.0 mph")],
    );
}

fn gear(role: Role, teeth: u16, housing: &str, own: bool) -> SpeedoGear {
    SpeedoGear {
        name: String::new(),
        role,
        teeth,
        second: None,
        housing: housing.into(),
        hand: None,
        in_stock: true,
        own,
        note: String::new(),
    }
}

/// What is proposed first of a shelf for 8/21 reading 1.06007 of the truth: near enough is 0 to 4 % fast.
#[track_caller]
fn first_of(shelf: &[SpeedoGear]) -> (u16, u16, Work) {
    let train = Train::new(8, 21).unwrap();
    let shaft = per_mile(1_000.0 * (60.0 / 56.6) * 21.0 / 8.0);
    let wanted = Wanted { shaft, dial: Dial::default(), drive: None, adapters: false, in_stock: false, keep: usize::MAX };
    let mut found = rank_shelf(shelf, &wanted).best;
    let fitted = Fitted::new(train, shelf);
    fitted.put_in_order(&mut found);
    (found[0].train.drive(), found[0].train.driven(), fitted.work(&found[0]))
}

/// By hand: 8/22 +1.19 %, 7/19 1.06007 × 21/8 × 7/19 = +2.52 %, 6/16 +4.35 %, 7/20 −2.6 %.
#[test]
fn least_work_first_and_the_shops_own_before_any_other() {
    use Role::{Drive, Driven};
    let mut shelf = vec![
        gear(Drive, 7, "one", false),
        gear(Driven, 19, "one", false),
        gear(Drive, 8, "one", false),
        gear(Driven, 21, "one", false),
        gear(Driven, 20, "one", false),
    ];
    assert_eq!(first_of(&shelf), (7, 19, Work::Drive));
    // A driven gear of another housing spares the drive gear; one of the same housing is less work still.
    shelf.extend([gear(Drive, 8, "two", false), gear(Driven, 22, "two", false)]);
    assert_eq!(first_of(&shelf), (8, 22, Work::OtherDriven));
    shelf.push(gear(Driven, 22, "one", false));
    assert_eq!(first_of(&shelf), (8, 22, Work::Driven));
    // The shop's own 7/19 lies at hand.
    shelf.extend([gear(Drive, 7, "three", true), gear(Driven, 19, "three", true)]);
    assert_eq!(first_of(&shelf), (7, 19, Work::Drive));
    // Its own driven gear needs no drive gear: that one is in the car.
    shelf.push(gear(Driven, 22, "one", true));
    assert_eq!(first_of(&shelf), (8, 22, Work::Driven));
}

#[test]
fn counts_have_one_mark_between_them() {
    for text in ["8/21", "8 21", "8-21", "8:21", "8 / 21", "8x21", "8 to 21"] {
        assert_eq!(read::train(text), Ok(Train::new(8, 21).unwrap()), "{text}");
    }
    for text in ["7//17", "7/ /17", "7/17/", "/7/17", "7/x17/", "7/17//20/18", "drive/22", "7 drive 17"] {
        assert!(read::train(text).is_err(), "{text}");
    }
    for text in ["7/17 x 20/18", "7/17 adapter 20/18", "7/17 with adapter 20/18", "7/17, 20/18", "7 17 20 18"] {
        assert_eq!(read::train(text).unwrap().to_string(), "7/17 x 20/18", "{text}");
    }
}

/// The rule follows words and units: miles and US words SAE J2976, else UN R39; a chosen one stays.
#[test]
fn the_usual_rule_follows_the_reader() {
    let rule = |units, words, law: &str| {
        let mut job = Job { units, ..demo::job() };
        job.speedo.law = Chosen::read(law);
        let sheet = build(&job, words);
        rows(&sheet).find(|row| row.key == "tests").unwrap().label.clone()
    };
    for (units, words, law, name) in [
        (System::Inch, Words::Us, "", "SAE J2976"),
        (System::Metric, Words::Us, "", "UN R39"),
        (System::Inch, Words::Uk, "", "UN R39"),
        (System::Inch, Words::Us, "un-r39", "UN R39"),
    ] {
        assert_eq!(rule(units, words, law), format!("At the test speeds of {name}"));
    }
}

/// Demo setup A turns its cable 956.701 times a mile. A dial of 958.2 shows 59.906 at a true 60, 0.09 mph under: closer than a dial is read.
/// One of 959.5 shows 59.825, 0.2 under UN R39.
#[test]
fn a_tenth_of_a_mile_per_hour_is_no_caution() {
    let reads = |dial: &str| {
        let mut job = demo::job();
        job.speedo.law = Chosen::read("un-r39");
        job.speedo.dial = Typed::new(dial, System::Inch);
        said(&sheet(&job), 0, "reads")
    };
    assert!(reads("958.2").contains("on the edge of UN R39"), "{}", reads("958.2"));
    assert!(reads("959.5").contains("0.2 mph under UN R39: fit "), "{}", reads("959.5"));
}
