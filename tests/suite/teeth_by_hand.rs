//! Teeth, worked out by hand beside the program's figures.

use layshaft::gearing::Layout;
use layshaft::gearing::geometry::Hand;
use layshaft::gearing::geometry::pair_cuts::{self, PairAt, PairCutError};
use layshaft::job::{Choice, Field, InsideField, Job, JobChoice, JobField, PullField, SetupChoice, SetupField};
use layshaft::questions::{Shelves, Source, analyse_job, build};
use layshaft::sheet::export::cell_text;
use layshaft::sheet::{Reader, Section, Words};
use layshaft::toothload::along::{self, AlongError};
use layshaft::toothload::bearing::Rolling;
use layshaft::units::common::millimetres;
use layshaft::units::{System, unit};

use crate::any_job::{figure, sheet, typed};
use crate::nth;

fn put(job: &mut Job, setup: usize, field: InsideField, text: &str) {
    let id = job.setups[setup].id;
    job.type_text(Field::Setup(id, SetupField::Inside(field)), text.into());
}

/// Input pair 25 on 30, 1st 18 on 36, 2nd 25 on 30, 3rd direct; module 2.5, 30°, 20 mm wide, 100 N·m.
fn job() -> Job {
    let mut job = typed(Layout::InputReduced, "25/30", &["36/18", "30/25", "direct"], ["", ""], "43/11", "165R13");
    job.type_text(Field::Job(JobField::InsideTorque), "100 N·m".into());
    put(&mut job, 0, InsideField::Pitch, "2.5 mm");
    put(&mut job, 0, InsideField::Helix, "30");
    put(&mut job, 0, InsideField::Face, "20 mm");
    job
}

#[track_caller]
fn check(job: &Job, column: usize, key: &str, by_hand: f64) {
    let value = figure(&sheet(job), column, key).value;
    assert!((value - by_hand).abs() <= by_hand.abs() * 1e-6, "{key}: {value}, by hand {by_hand}");
}

fn section(job: &Job) -> Section {
    build(job, Words::Us).sections.into_iter().find(|section| section.id == "teeth").unwrap()
}

fn cell(job: &Job, column: usize, key: &str) -> String {
    cell_text(&section(job).rows.iter().find(|row| row.key == key).unwrap().cells[column])
}

/// 2 × 100,000 N·mm × sin 30° ÷ (2.5 × 25) = 1,600 N at the input pair; the cluster holds 120 N·m, and 2 × 120,000 × sin 30° ÷ (2.5 × 18) =
/// 2,666.7 N at 1st. `F_t` = 240,000 × cos 30° ÷ 45 = 4,618.8 N; `F_r` = 240,000 × tan 20° ÷ 45 = 1,941.2 N.
#[test]
fn forces_and_thrust_in_first() {
    let job = job();
    check(&job, 0, "teeth.constant.axial_n", 1_600.0);
    check(&job, 0, "teeth.gear_1.axial_n", 2_666.666_667);
    check(&job, 0, "teeth.gear_1.tangential_n", 4_618.802_154);
    check(&job, 0, "teeth.gear_1.radial_n", 1_941.174_583);
    // One drives and one is driven: 2,666.7 − 1,600 on the cluster.
    check(&job, 0, "teeth.gear_1.thrust_cluster_n", 1_066.666_667);
    check(&job, 0, "teeth.gear_1.thrust_output_n", 2_666.666_667);
    // sin⁻¹ (sin 30° × 18 ÷ 30) = 17.46°.
    assert!(cell(&job, 0, "thrust-1").contains("17.5° on this pair leaves the cluster none"), "{}", cell(&job, 0, "thrust-1"));
    assert!(!cell(&job, 0, "thrust-1").contains("engine"), "the way is not known while the hand is not told");
    assert!(cell(&job, 0, "thrust-3").contains("direct"), "{}", cell(&job, 0, "thrust-3"));
}

/// The cluster turns against the input. Right-hand teeth that drive it backwards push it towards the engine by 2,666.7 N, the input pair away by
/// 1,600 N. Left-hand ones the other way; with only 1st left-hand both push towards the same side: 4,266.7 N.
#[test]
fn a_hand_turns_the_thrust() {
    let mut job = job();
    let hand = Choice::Setup(job.setups[0].id, SetupChoice::ClusterHand);
    job.choose(hand, "right");
    assert!(cell(&job, 0, "thrust-1").contains("cluster 1,067 N towards the engine"), "{}", cell(&job, 0, "thrust-1"));
    assert!(cell(&job, 0, "thrust-1").contains("output 2,667 N away from the engine"), "{}", cell(&job, 0, "thrust-1"));
    job.choose(hand, "left");
    assert!(cell(&job, 0, "thrust-1").contains("cluster 1,067 N away from the engine"), "{}", cell(&job, 0, "thrust-1"));
    put(&mut job, 0, InsideField::PairCuts, "1st right");
    check(&job, 0, "teeth.gear_1.thrust_cluster_n", 4_266.666_667);
}

/// With 16 mm in place of 20 the roots of 1st bear 20 ÷ 16 as much, its flanks √1.25: both overlap more than once, 16 × sin 30° ÷ (2.5 π) = 1.02.
#[test]
fn a_narrow_pair_bears_more() {
    let mut job = job();
    job.setups.truncate(1);
    let id = job.setups[0].id;
    job.copy_setup(id).unwrap();
    put(&mut job, 1, InsideField::PairCuts, "1st face 16 mm");
    check(&job, 1, "teeth.gear_1.bending_against_a_percent", 25.0);
    check(&job, 1, "teeth.gear_1.contact_against_a_percent", 11.803_399);
    check(&job, 1, "teeth.constant.bending_against_a_percent", 0.0);
    let said = section(&job).answer.plain();
    assert_eq!(said, "Weakest in bending: 1st in A and B. Against A: 1st bears 25 % more in B.");
}

/// What is missing is said, and that is all.
#[test]
fn what_teeth_need() {
    let mut job = typed(Layout::InputReduced, "25/30", &["36/18", "direct"], ["", ""], "43/11", "165R13");
    assert!(section(&job).answer.plain().contains("Type module or pitch and the face width to get what its teeth bear."));
    assert!(section(&job).answer.plain().contains("Type the engine’s torque"));
    job.type_text(Field::Job(JobField::InsideTorque), "lots".into());
    let problems = layshaft::questions::Conditions::of(&job).problems;
    assert!(problems.iter().any(|problem| problem.field.path() == "inside-torque"), "{problems:?}");
}

#[test]
fn hands_and_faces_of_pairs_are_read() {
    let read = |text| pair_cuts::read(text, System::Metric, 4);
    let pairs = read("1st left face 18 mm; 2nd 8 DP rh; 3rd face 15 20°; 4th face 0.75 in x 0.2").unwrap();
    assert_eq!((pairs[0].at, pairs[0].hand, pairs[0].face), (PairAt::Gear(nth(1)), Some(Hand::Left), Some(millimetres(18.0))));
    assert_eq!((pairs[1].hand, pairs[1].face), (Some(Hand::Right), None));
    assert!(pairs[1].module.is_some_and(|module| (module - millimetres(25.4 / 8.0)).abs() < millimetres(1e-9)));
    assert_eq!((pairs[2].face, pairs[2].helix), (Some(millimetres(15.0)), Some(unit::DEGREE.of(20.0))));
    assert!(pairs[3].face.is_some_and(|face| (face - millimetres(19.05)).abs() < millimetres(1e-9)) && pairs[3].driver_shift == Some(0.2));
    assert_eq!(read("2nd face"), Err(PairCutError::Face(String::new())));
    assert_eq!(read("2nd face 900 mm"), Err(PairCutError::Face("900 mm".into())));
}

/// Ball in front, roller behind, 200 mm apart; the input pair 20 mm behind the front one.
fn on_bearings(helix: &str) -> Job {
    let mut job = job();
    job.type_text(Field::Job(JobField::Shift), "6000 rpm".into());
    job.choose(Choice::Job(JobChoice::Duty), "hill");
    put(&mut job, 0, InsideField::Helix, helix);
    put(&mut job, 0, InsideField::Bearings, "10 mm 28 kN ball; 210 mm 24 kN roller");
    put(&mut job, 0, InsideField::Places, "input 30 mm; 2nd 100 mm; 1st 160 mm");
    job
}

/// Straight teeth in 1st: the input pair pushes the cluster round with 2 × 120 N·m ÷ 75 mm = 3,200 N and apart with 3,200 × tan 20° = 1,164.7 N,
/// 1st holds it back with 240,000 ÷ 45 = 5,333.3 N and pushes it apart with 1,941.2 N. Rear: (3,200 × 20 − 5,333.3 × 150) ÷ 200 = −3,680 N
/// and (1,164.7 × 20 + 1,941.2 × 150) ÷ 200 = 1,572.4 N, together 4,001.8 N; front 1,546.7 N and 1,533.5 N, together 2,178.0 N.
#[test]
fn bearings_share_the_load_of_both_meshes() {
    let job = on_bearings("0");
    check(&job, 0, "teeth.gear_1.bearing_front_n", 2_178.046_294);
    check(&job, 0, "teeth.gear_1.bearing_rear_n", 4_001.835_699);
    check(&job, 0, "teeth.gear_2.bearing_front_n", 1_972.585_313);
    check(&job, 0, "teeth.gear_2.bearing_rear_n", 1_593.142_058);
    assert!(cell(&job, 0, "bearings-3").contains("direct"));
}

/// Hill climbs in a box of three: 10, 35 and 35 of 80 parts of the time from top down, 0.95 and 0.9 of the torque in 1st and 2nd at
/// 0.85 × 6,000 rpm, the cluster turning 25 ÷ 30 as fast. One hour of 1st is 111,563 of the (28,000 ÷ (0.95 × 2,178))³ million turns
/// of the front bearing, and so on: 13,613 h in front, 4,012 h behind, and (Σ L^−10/9)^−0.9 together.
#[test]
fn bearings_last_by_their_use() {
    let job = on_bearings("0");
    check(&job, 0, "teeth.bearings.together_h", 3_265.066_700);
    let said = cell(&job, 0, "bearing-life");
    assert!(said.contains("front 13,613 h, rear 4,012 h") && said.contains("thrust taken by the front one"), "{said}");
    assert!(section(&job).answer.plain().contains("Bearings last 3,265 h in A"), "{}", section(&job).answer.plain());
}

/// Helical teeth: the thrusts tip the cluster by `F_a` × r, and 1,066.7 N in 1st and 320 N in 2nd go to the ball bearing, P = 0.56 `F_r` + Y `F_a` with Y between the
/// rows of the table at `F_a` ÷ 15.4 kN: worked out beside the program from the same table, 7,485 h in front and 5,953 h behind.
#[test]
fn thrust_shortens_the_life_of_the_bearing_that_takes_it() {
    let job = on_bearings("30");
    check(&job, 0, "teeth.gear_1.bearing_front_n", 2_036.133_889);
    check(&job, 0, "teeth.gear_1.bearing_rear_n", 3_553.742_951);
    check(&job, 0, "teeth.bearings.together_h", 3_551.321_149);
}

/// What the bearings still need is named, the rest stands.
#[test]
fn what_bearings_need() {
    let mut job = on_bearings("0");
    put(&mut job, 0, InsideField::Places, "input 30 mm; 1st 160 mm");
    let said = cell(&job, 0, "bearing-life");
    assert!(said.contains("needs the place of 2nd along the cluster"), "{said}");
    check(&job, 0, "teeth.gear_1.bearing_rear_n", 4_001.835_699);
    put(&mut job, 0, InsideField::Bearings, "");
    assert!(section(&job).rows.iter().all(|row| row.key != "bearing-life"), "nothing is asked for while no bearing is typed");
}

#[test]
fn bearings_and_places_are_read() {
    let [one, two] = along::read_bearings("175mm 24000 N rollers\n0 28 ball", System::Metric).unwrap().unwrap();
    assert_eq!((one.at, one.rolling, two.rolling), (millimetres(0.0), Rolling::Balls, Rolling::Rollers));
    assert!((two.rating - unit::KN.of(24.0)).abs() < unit::NEWTON.of(1e-6) && (two.at - millimetres(175.0)).abs() < millimetres(1e-9));
    let inch = along::read_bearings("0.5 6300 lbf ball; 7 in 5400 lbf needles", System::Inch).unwrap().unwrap();
    assert!((inch[0].at - millimetres(12.7)).abs() < millimetres(1e-9) && inch[1].rolling == Rolling::Rollers);
    assert_eq!(along::read_bearings(" ", System::Metric), Ok(None));
    for (text, why) in [
        ("0 28 kN ball", AlongError::NotTwo(1)),
        ("0 28 kN ball; 0 24 kN ball", AlongError::OnePlace),
        ("0 28 kN; 175 24 kN ball", AlongError::NoBearing("0 28 kN".into())),
        ("ball; 175 24 kN ball", AlongError::NoBearing("ball".into())),
        ("0 28 kN ball; far 24 kN ball", AlongError::Place("far".into())),
    ] {
        assert_eq!(along::read_bearings(text, System::Metric), Err(why), "{text}");
    }
    let places = along::read_places("input 22; 2nd: 110 mm; 1 150", System::Metric, 4).unwrap();
    assert_eq!(places.iter().map(|place| place.0).collect::<Vec<_>>(), [PairAt::Constant, PairAt::Gear(nth(2)), PairAt::Gear(nth(1))]);
    assert_eq!(along::read_places("6th 30", System::Metric, 4), Err(AlongError::NoGear("6th 30".into())));
    assert_eq!(along::read_places("1st", System::Metric, 4), Err(AlongError::Place(String::new())));
}

/// The mainshaft in the input gear at 50 mm and in the case at 210 mm, 1st at 160 mm: driven, it is pushed round by 5,333.3 N and apart by
/// 1,941.2 N. Rear: 5,333.3 × 110 ÷ 160 = 3,666.7 and 1,941.2 × 110 ÷ 160 = 1,334.6, together 3,902.0 N; front 1,666.7 and 606.6: 1,773.6 N. Its
/// front bearing turns by the difference: 1st is 30/25 × 36/18 = 2.4, 1 − 1/2.4. The input shaft on −60 and 10 mm carries that end at 50 mm and the
/// input gear at 30 mm, which 3,200 N hold back and 1,164.7 N push away: behind
/// (1,666.7 × 110 − 3,200 × 90) ÷ 70 = −1,495.2 and −(606.6 × 110 + 1,164.7 × 90) ÷ 70 = −2,450.7, together 2,870.9 N.
#[test]
fn the_mainshaft_runs_in_the_input_shaft() {
    let mut job = on_bearings("0");
    put(&mut job, 0, InsideField::MainBearings, "50 mm 16 kN needle; 210 mm 26 kN ball");
    put(&mut job, 0, InsideField::InputBearings, "-60 mm 9 kN needle; 10 mm 25 kN ball");
    check(&job, 0, "teeth.gear_1.main_bearing_front_n", 1_773.629_621);
    check(&job, 0, "teeth.gear_1.main_bearing_rear_n", 3_901.985_166);
    check(&job, 0, "teeth.gear_1.input_bearing_rear_n", 2_870.858_541);
    assert!(cell(&job, 0, "main-bearings-3").contains("direct"));
    // Hill use as in `bearings_last_by_their_use`: 7,672 h in front, 5,893 h behind, (Σ L^−10/9)^−0.9 together.
    check(&job, 0, "teeth.main_bearings.together_h", 3_568.691_758);
    assert!(cell(&job, 0, "main-bearing-life").contains("thrust taken by the rear one"), "{}", cell(&job, 0, "main-bearing-life"));
}

/// What the tyres hold in 1st: the thrust they pass times the radius, over 2.4 × 43/11 and what the gears lose, as Pull has both.
#[test]
fn the_torque_that_the_tyres_hold() {
    let mut job = job();
    job.type_text(Field::Job(JobField::Shift), "6000 rpm".into());
    for (field, text) in [
        (PullField::PeakTorque, "150 N·m"),
        (PullField::PeakTorqueAt, "4000 rpm"),
        (PullField::PeakPower, "75 kW"),
        (PullField::PeakPowerAt, "5600 rpm"),
        (PullField::Mass, "1000 kg"),
        (PullField::Grip, "1.0"),
    ] {
        job.type_text(Field::Job(JobField::Pull(field)), text.into());
    }
    job.choose(Choice::Job(JobChoice::Drive), "all");
    job.choose(Choice::Job(JobChoice::TorqueFrom), "grip");
    let answers = analyse_job(&job, Shelves::default());
    let (torque, _) = answers.setups[0].teeth().torque.unwrap();
    let pull = answers.setups[0].pull();
    let first = pull.thrust.as_ref().unwrap().gear(nth(1)).unwrap();
    // All wheels driven: 1,000 kg × 9.80665 × 1.0 come down to the road.
    let held = 9_806.65 / first.thrust_per_torque_1_per_m();
    assert!((unit::N_M.number(torque) - held).abs() < 1e-6 * held, "{} {held}", unit::N_M.number(torque));
    // The forces follow: 2 T sin 30° ÷ (2.5 × 25) along the shaft of the input pair, 16 N for each N·m.
    check(&job, 0, "teeth.constant.axial_n", 16.0 * held);
    job.type_text(Field::Job(JobField::Pull(PullField::Mass)), String::new());
    let said = section(&job).answer.plain();
    assert!(said.contains("the car’s weight in Pull"), "{said}");
}

/// Right-hand teeth on the cluster in 1st: as `a_hand_turns_the_thrust`, the cluster towards the engine by 1,067 N, the output away by 2,667 N.
#[test]
fn forces_are_drawn_at_the_gears_that_carry_them() {
    let mut job = job();
    job.type_text(Field::Job(JobField::Shift), "6000 rpm".into());
    job.choose(Choice::Setup(job.setups[0].id, SetupChoice::ClusterHand), "right");
    job.choose(Choice::Job(JobChoice::InsideGear), "1");
    let answers = analyse_job(&job, Shelves::default());
    let reader = Reader { units: job.units, words: Words::Us };
    let source = Source::new(&job, &answers, Shelves::default(), reader);
    let drawn = layshaft::questions::of_id("teeth").unwrap().pictures.iter().find(|picture| picture.id == "teeth-forces").unwrap();
    let said = (drawn.draw)(source, None).unwrap().describe().join("\n");
    for says in [
        "18 teeth on the cluster 120 N·m: 4,619 N along the pitch line, 1,941 apart, 2,667 along the shaft, to the left.",
        "36 teeth on the output 240 N·m: 4,619 N along the pitch line, 1,941 apart, 2,667 along the shaft, to the right.",
        "input 100 N·m: thrust 1,600 N to the left.",
        "cluster 120 N·m: thrust 1,067 N to the left.",
    ] {
        assert!(said.contains(says), "{said}");
    }
}
