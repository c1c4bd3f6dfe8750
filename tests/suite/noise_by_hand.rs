//! What makes that noise, beside figures worked by hand: the tones of the demo box, who fits, which test tells them apart, what cannot be
//! read.

use layshaft::gearing::StageKind;
use layshaft::job::{BenchField, Choice, Chosen, Field, Job, JobChoice, JobField, NoiseField, Stage, demo};
use layshaft::questions::{bench, build};
use layshaft::sheet::{Section, Sheet, Words};

use crate::any_job::near;

fn text(job: &mut Job, field: NoiseField, text: &str) {
    job.type_text(Field::Job(JobField::Bench(BenchField::Noise(field))), text.into());
}

fn heard(choices: &[(JobChoice, &str)], texts: &[(NoiseField, &str)]) -> Job {
    let mut job = demo::job();
    for (choice, word) in choices {
        job.choose(Choice::Job(*choice), word);
    }
    for (field, typed) in texts {
        text(&mut job, *field, typed);
    }
    job
}

fn section(sheet: &Sheet) -> &Section {
    sheet.sections.iter().find(|section| section.id == "noise").unwrap()
}

fn said(job: &Job) -> String {
    section(&build(job, Words::Us)).answer.plain()
}

fn first_rows(job: &Job) -> Vec<String> {
    let sheet = build(job, Words::Us);
    let section = section(&sheet);
    section.rows[..section.decide].iter().map(|row| row.label.clone()).collect()
}

const THIRD_PULLING: [(JobChoice, &str); 3] =
    [(JobChoice::NoiseKind, "whine"), (JobChoice::NoiseGear, "3"), (JobChoice::NoiseLoad, "pulling")];

/// Input 25/30, third 28/27, axle 43/11, 616 mm × 3.05 = 1,878.8 mm: 40 mph = 17.8816 m/s are 9.5176 turns of the wheel a second,
/// × 43/11 = 37.205 of the shaft, × 28/27 × 30/25 = 46.299 of the engine (2,778 rpm). Third 28 × 37.205 = 1,041.7 Hz, input pair
/// 25 × 46.299 = 1,157.5, ring and pinion 11 × 37.205 = 409.3, joints twice 37.205 = 74.4, firing twice 46.299 = 92.6.
#[test]
fn it_whines_in_third_at_40_only_pulling() {
    let job = heard(&THIRD_PULLING, &[(NoiseField::At, "40")]);
    near(&job, "noise.gear_3_hz", 1_041.7, 0.1);
    near(&job, "noise.constant_hz", 1_157.5, 0.1);
    near(&job, "noise.final_drive_hz", 409.3, 0.1);
    near(&job, "noise.joints_hz", 74.41, 0.01);
    near(&job, "noise.firing_hz", 92.60, 0.01);
    near(&job, "noise.tyres_hz", 9.518, 0.001);
    // 27 × 25/30 = 22.5 of the engine, 28 of the shaft.
    near(&job, "noise.gear_3.per_engine", 22.5, 1e-9);
    near(&job, "noise.gear_3.per_driveshaft", 28.0, 1e-9);
    near(&job, "noise.final_drive.per_driveshaft", 11.0, 1e-9);
    assert_eq!(
        said(&job),
        "The 3rd gear pair (1,042 Hz) or the input pair (1,157 Hz), at 40 mph in 3rd, 2,778 rpm. In 4th at 2,778 rpm neither carries \
         the power: gone there, it is one of these two. Then hold 2,778 rpm in 2nd: gone, it is the 3rd gear pair; still there, the \
         input pair."
    );
    assert_eq!(first_rows(&job)[..3], ["1. 3rd gear pair", "2. Input pair", "3. Ring and pinion"]);
}

/// The same told by rpm: 2,778 rpm are 46.3 turns a second, 1,041.75 Hz of third.
#[test]
fn the_same_by_rpm_and_in_uk_words() {
    let job = heard(&THIRD_PULLING, &[(NoiseField::At, "2778 rpm")]);
    near(&job, "noise.gear_3_hz", 1_041.75, 1e-6);
    let sheet = build(&job, Words::Uk);
    assert!(section(&sheet).answer.plain().contains("the first motion pair"), "{}", section(&sheet).answer.plain());
}

/// Gone in 2nd too, the input pair is out; a pitch of 1,160 Hz would have said the opposite.
#[test]
fn what_else_is_known_settles_it() {
    let gone = heard(&THIRD_PULLING, &[(NoiseField::At, "40"), (NoiseField::Gone, "2 4")]);
    assert!(said(&gone).starts_with("The 3rd gear pair (1,042 Hz), at 40 mph in 3rd"), "{}", said(&gone));
    let pitch = heard(&THIRD_PULLING, &[(NoiseField::At, "40"), (NoiseField::Pitch, "1,160")]);
    assert!(said(&pitch).starts_with("The input pair (1,157 Hz), at 40 mph in 3rd"), "{}", said(&pitch));
    let there = heard(&THIRD_PULLING, &[(NoiseField::At, "40"), (NoiseField::There, "1 2"), (NoiseField::Gone, "4")]);
    assert!(said(&there).starts_with("The input pair (1,157 Hz), at 40 mph in 3rd"), "{}", said(&there));
}

/// A boom and a shake are seldom the box's; driveshaft and joint never part by speed or gear, and the page says so.
#[test]
fn nothing_of_the_box() {
    let floor = heard(&[(JobChoice::NoiseKind, "floor"), (JobChoice::NoiseGear, "4")], &[(NoiseField::At, "60")]);
    let floor_said = said(&floor);
    assert!(floor_said.starts_with("Nothing of the box: the driveshaft, once a turn (55.8 Hz)"), "{floor_said}");
    assert!(floor_said.contains("no speed or gear tells the driveshaft from its joints"), "{floor_said}");
    // 14.2764 turns of the wheel a second at 60 mph.
    near(&floor, "noise.tyres_hz", 14.276, 0.001);
    let wheel = heard(
        &[(JobChoice::NoiseKind, "wheel"), (JobChoice::NoiseGear, "4"), (JobChoice::NoiseGoesWith, "wheel")],
        &[(NoiseField::At, "60")],
    );
    assert!(said(&wheel).starts_with("Nothing of the box: the tires and wheels (14.3 Hz)"), "{}", said(&wheel));
    let nothing = heard(&[(JobChoice::NoiseGear, "4")], &[(NoiseField::At, "60"), (NoiseField::Pitch, "19,000")]);
    assert_eq!(
        said(&nothing),
        "No part of box, shaft, axle or wheels has a tone near 19,000 Hz at 60 mph in 4th, 3,348 rpm. Check pitch and speed; look at \
         what the engine drives by belt."
    );
}

/// Only with the clutch down, standing in neutral: the release bearing. A growl that goes with the clutch down there is the box's.
#[test]
fn the_clutch_tells() {
    let neutral = |clutch| {
        heard(
            &[(JobChoice::NoiseKind, "growl"), (JobChoice::NoiseGear, "n"), (JobChoice::NoiseClutch, clutch)],
            &[(NoiseField::At, "900 rpm")],
        )
    };
    assert!(said(&neutral("comes")).starts_with("Nothing of the box: the release bearing"), "{}", said(&neutral("comes")));
    assert!(said(&neutral("goes")).contains("bearing of the input shaft"), "{}", said(&neutral("goes")));
}

/// Nine balls of 7.94 mm on 38.5 mm strike the outer race 3.5719 times a turn: the cluster turns 46.299 × 25/30 = 38.582 times a second,
/// 137.81 Hz.
#[test]
fn a_bearing_of_known_geometry() {
    let bearings = "cluster front: 9 x 7.94 on 38.5 mm\npinion rear: 14 × 0.437 on 2.44 in, 15°";
    let job = heard(&THIRD_PULLING, &[(NoiseField::At, "40"), (NoiseField::Bearings, bearings)]);
    assert!(bench::problems(&job.clone()).is_empty());
    near(&job, "noise.bearing_1_outer_hz", 137.81, 0.01);
    // 7 × (1 − 0.437 ÷ 2.44 × cos 15°) = 5.789; × 37.205
    near(&job, "noise.bearing_2_outer_hz", 215.38, 0.02);
}

/// An overdrive of 0.78 behind the box: at 40 mph the driveshaft turns 37.205 times a second as before, the engine in direct 4th only
/// 0.78 times as fast, 29.020 (1,741 rpm): firing 58.04 Hz, input pair 25 × 29.020 = 725.5; ring and pinion and joints stay.
#[test]
fn an_overdrive_turns_the_engine_slower() {
    let mut job = heard(&[(JobChoice::NoiseKind, "whine"), (JobChoice::NoiseGear, "4")], &[(NoiseField::At, "40")]);
    let kind = Chosen::of(StageKind::Overdrive);
    job.setups[0].stages = vec![Stage { kind, drive: "0.78".into(), gears: "3 4".into(), ..Stage::default() }];
    near(&job, "noise.firing_hz", 74.41, 0.01);
    job.choose(Choice::Job(JobChoice::NoiseStages), "1");
    near(&job, "noise.firing_hz", 58.04, 0.01);
    near(&job, "noise.constant_hz", 725.5, 0.05);
    near(&job, "noise.final_drive_hz", 409.3, 0.1);
    near(&job, "noise.joints_hz", 74.41, 0.01);
    assert!(said(&job).contains("at 40 mph in 4th overdrive, 1,741 rpm"), "{}", said(&job));
    job.choose(Choice::Job(JobChoice::NoiseGear), "2");
    assert_eq!(said(&job), "The overdrive of A is not switched in 2nd: choose another gear, or leave it at rest.");
    job.choose(Choice::Job(JobChoice::NoiseStages), "2");
    assert_eq!(said(&job), "A has one stage that is switched: choose what is in anew.");
}

/// At the same road speed the box's output turns alike only where the overdrive is in too: where 4th alone has it, another gear is no test.
#[test]
fn a_test_in_another_gear_keeps_the_overdrive_in() {
    let whines = [(JobChoice::NoiseGear, "4"), (JobChoice::NoiseStages, "1")];
    let mut job = heard(&whines, &[(NoiseField::At, "40"), (NoiseField::Pitch, "409")]);
    let kind = Chosen::of(StageKind::Overdrive);
    job.setups[0].stages = vec![Stage { kind, drive: "0.78".into(), gears: "4".into(), ..Stage::default() }];
    let sheet = build(&job, Words::Us);
    let words = format!("{:?}", section(&sheet).rows);
    assert!(!words.contains("hold the same road speed in 3rd") && words.contains("roll in neutral"), "{words}");
}

#[test]
fn what_cannot_be_read_is_said() {
    let problems = |field, text: &str| {
        let job = heard(&THIRD_PULLING, &[(field, text)]);
        bench::problems(&job).iter().map(layshaft::problem::Problem::sentence).collect::<Vec<_>>()
    };
    assert_eq!(problems(NoiseField::At, ""), [""; 0]);
    assert!(problems(NoiseField::At, "4000")[0].contains("outside what the road speed can be"));
    assert!(problems(NoiseField::At, "fast")[0].contains("cannot be read as the road speed"));
    assert!(problems(NoiseField::Pitch, "90 kHz")[0].contains("is no unit for the pitch"));
    assert!(problems(NoiseField::Pitch, "90,000,000")[0].contains("pitch"));
    assert_eq!(
        problems(NoiseField::There, "2 x"),
        ["“x” is no gear: it is left out. Type numbers of gears such as 1 2, n for neutral, r for reverse."]
    );
    assert!(problems(NoiseField::Cylinders, "40")[0].contains("4 cylinders are taken"));
    for (line, says) in [
        ("front 9 x 7.94 on 38.5", "does not say how many balls"),
        ("front: 9 x 7.94 on 38.5", "does not say on which shaft"),
        ("cluster: 9 x 7.94", "does not say how many balls"),
        ("cluster: 9 x 794 on 38.5 mm", "outside what the diameter of a ball can be"),
        ("cluster: 90 x 7.94 on 38.5 mm", "can be no bearing"),
        ("cluster: 9 x 30 mm on 38.5 mm", "can be no bearing"),
    ] {
        let said = problems(NoiseField::Bearings, line);
        assert!(said.len() == 1 && said[0].contains(says), "{line}: {said:?}");
    }
    let both = heard(&THIRD_PULLING, &[(NoiseField::There, "1 2"), (NoiseField::Gone, "2 4")]);
    assert!(
        bench::problems(&both)[0].sentence().starts_with("It is both there and gone in 2nd"),
        "{}",
        bench::problems(&both)[0].sentence()
    );
}

/// What is missing is named, and nothing is guessed.
#[test]
fn what_is_missing_is_said() {
    let mut empty = demo::empty(layshaft::units::System::Inch);
    assert_eq!(said(&empty), "");
    empty.choose(Choice::Job(JobChoice::NoiseGear), "3");
    assert_eq!(said(&empty), "Needs the gearbox, the ring and pinion, and the tire.");
    let mut fifth = heard(&THIRD_PULLING, &[]);
    fifth.choose(Choice::Job(JobChoice::NoiseGear), "5");
    assert_eq!(said(&fifth), "A has no 5th: choose another gear.");
    fifth.choose(Choice::Job(JobChoice::NoiseSetup), "c");
    assert!(said(&fifth).contains("5th gear pair"), "{}", said(&fifth));
}

/// A new job has one setup, the demo three.
#[test]
fn a_noise_is_asked_of_a_setup_that_is_there() {
    let offered = |job: &Job| Choice::Job(JobChoice::NoiseSetup).options_in(job).iter().map(|(_, says)| *says).collect::<String>();
    assert_eq!((offered(&demo::empty(layshaft::units::System::Inch)).as_str(), offered(&demo::job()).as_str()), ("A", "ABC"));
}
