//! Teeth, worked out by hand beside the program's figures.

use layshaft::gearing::Layout;
use layshaft::gearing::geometry::Hand;
use layshaft::gearing::geometry::pair_cuts::{self, PairAt, PairCutError};
use layshaft::job::{Choice, Field, InsideField, Job, JobField, SetupChoice, SetupField};
use layshaft::questions::build;
use layshaft::sheet::export::cell_text;
use layshaft::sheet::{Section, Words};
use layshaft::units::common::millimetres;
use layshaft::units::{System, unit};

use crate::any_job::{figure, sheet, typed};

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
    assert_eq!((pairs[0].at, pairs[0].hand, pairs[0].face), (PairAt::Gear(0), Some(Hand::Left), Some(millimetres(18.0))));
    assert_eq!((pairs[1].hand, pairs[1].face), (Some(Hand::Right), None));
    assert!(pairs[1].module.is_some_and(|module| (module - millimetres(25.4 / 8.0)).abs() < millimetres(1e-9)));
    assert_eq!((pairs[2].face, pairs[2].helix), (Some(millimetres(15.0)), Some(unit::DEGREE.of(20.0))));
    assert!(pairs[3].face.is_some_and(|face| (face - millimetres(19.05)).abs() < millimetres(1e-9)) && pairs[3].driver_shift == Some(0.2));
    assert_eq!(read("2nd face"), Err(PairCutError::Face { text: String::new() }));
    assert_eq!(read("2nd face 900 mm"), Err(PairCutError::Face { text: "900 mm".into() }));
}
