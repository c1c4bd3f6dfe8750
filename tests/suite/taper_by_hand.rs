//! Taper bearings against each other, worked out by hand beside the program's figures. ISO 281's X, Y and e and the usual rules for a pair, from
//! memory: no textbook example with these rules was at hand.

use layshaft::gearing::Layout;
use layshaft::job::{Choice, Field, InsideField, Job, JobChoice, JobField, SetupChoice, SetupField};
use layshaft::questions::build;
use layshaft::sheet::Words;
use layshaft::sheet::export::cell_text;
use layshaft::toothload::along::{self, AlongError};
use layshaft::toothload::taper::{Taper, axial_loads};
use layshaft::units::{System, unit};
use proptest::prelude::*;

use crate::any_job::{figure, sheet, typed};

fn put(job: &mut Job, field: InsideField, text: &str) {
    let id = job.setups[0].id;
    job.type_text(Field::Setup(id, SetupField::Inside(field)), text.into());
}

/// The box of `teeth_by_hand`: 25 on 30, 1st 18 on 36, 2nd 25 on 30, 3rd direct; module 2.5, 100 N·m, 6,000 rpm, hill climbs; bearings 200 mm
/// apart, the input pair 20 mm behind the front one, 2nd 90, 1st 150.
fn on_tapers(helix: &str, bearings: &str) -> Job {
    let mut job = typed(Layout::InputReduced, "25/30", &["36/18", "30/25", "direct"], ["", ""], "43/11", "165R13");
    job.type_text(Field::Job(JobField::InsideTorque), "100 N·m".into());
    job.type_text(Field::Job(JobField::Shift), "6000 rpm".into());
    job.choose(Choice::Job(JobChoice::Duty), "hill");
    for (field, text) in [
        (InsideField::Pitch, "2.5 mm"),
        (InsideField::Helix, helix),
        (InsideField::Face, "20 mm"),
        (InsideField::Bearings, bearings),
        (InsideField::Places, "input 30 mm; 2nd 100 mm; 1st 160 mm"),
    ] {
        put(&mut job, field, text);
    }
    job
}

const FACE_TO_FACE: &str = "10 mm 40 kN taper Y 1.6 e 0.375; 210 mm 45 kN tapered roller";

#[track_caller]
fn check(job: &Job, key: &str, by_hand: f64) {
    let value = figure(&sheet(job), 0, key).value;
    assert!((value - by_hand).abs() <= by_hand.abs() * 1e-6, "{key}: {value}, by hand {by_hand}");
}

fn cell(job: &Job, key: &str) -> String {
    let teeth = build(job, Words::Us).sections.into_iter().find(|section| section.id == "teeth").unwrap();
    cell_text(&teeth.rows.iter().find(|row| row.key == key).unwrap().cells[0])
}

/// Straight teeth in 1st press the front one with 2,178.0 N and the rear one with 4,001.8 N (`teeth_by_hand`): ÷ (2 × 1.6) they make 680.6 and
/// 1,250.6 N of thrust. The rear one's wins: both hold 1,250.6. In front 1,250.6 ÷ 2,178.0 is beyond e: 0.4 × 2,178.0 + 1.6 × 1,250.6 =
/// 2,872.1 N; behind it is not.
#[test]
fn radial_loads_make_thrust() {
    let job = on_tapers("0", FACE_TO_FACE);
    check(&job, "teeth.gear_1.bearing_front_induced_n", 680.639_467);
    check(&job, "teeth.gear_1.bearing_rear_induced_n", 1_250.573_656);
    check(&job, "teeth.gear_1.bearing_front_axial_n", 1_250.573_656);
    check(&job, "teeth.gear_1.bearing_rear_axial_n", 1_250.573_656);
    check(&job, "teeth.gear_1.bearing_front_equivalent_n", 2_872.136_367);
    check(&job, "teeth.gear_1.bearing_rear_equivalent_n", 4_001.835_699);
    assert!(cell(&job, "bearings-1").contains("the net thrust goes to the front one"), "{}", cell(&job, "bearings-1"));
    // 2nd: 1,972.6 and 1,593.1 N, so that the front one's wins: 0.4 × 1,593.1 + 1.6 × 616.4 = 1,623.6 N behind.
    check(&job, "teeth.gear_2.bearing_front_equivalent_n", 1_972.585_313);
    check(&job, "teeth.gear_2.bearing_rear_equivalent_n", 1_623.549_480);
    // Hill climbs as in `bearings_last_by_their_use`: Σ 0.1115625 ÷ (C ÷ (0.95 P₁))^(10/3) and so on, and (Σ L^−9/8)^−8/9 together.
    check(&job, "teeth.bearings.together_h", 22_100.228_816);
    assert!(cell(&job, "bearing-life").contains("taper bearings face to face"), "{}", cell(&job, "bearing-life"));
}

/// Helical teeth, right hand on the cluster: 2,036.1 and 3,553.7 N across, which make 636.3 and 1,110.5, and 1,066.7 N towards the engine. Face
/// to face the front one holds 1,110.5 + 1,066.7 = 2,177.2; back to back the rear one holds 636.3 + 1,066.7 = 1,703.0.
#[test]
fn the_arrangement_decides_which_bearing_holds_the_thrust() {
    let mut face = on_tapers("30", FACE_TO_FACE);
    face.choose(Choice::Setup(face.setups[0].id, SetupChoice::ClusterHand), "right");
    check(&face, "teeth.gear_1.bearing_front_axial_n", 2_177.211_339);
    check(&face, "teeth.gear_1.bearing_rear_axial_n", 1_110.544_672);
    check(&face, "teeth.gear_1.bearing_front_equivalent_n", 4_297.991_698);
    check(&face, "teeth.gear_1.bearing_rear_equivalent_n", 3_553.742_951);
    let mut back = on_tapers("30", &format!("{FACE_TO_FACE}; back to back"));
    back.choose(Choice::Setup(back.setups[0].id, SetupChoice::ClusterHand), "right");
    check(&back, "teeth.gear_1.bearing_front_axial_n", 636.291_840);
    check(&back, "teeth.gear_1.bearing_rear_axial_n", 1_702.958_507);
    check(&back, "teeth.gear_1.bearing_rear_equivalent_n", 4_146.230_792);
    assert!(cell(&back, "bearings-1").contains("the net thrust goes to the rear one"), "{}", cell(&back, "bearings-1"));
    // While the hand is not said each counts as if the thrust pressed it.
    let open = on_tapers("30", FACE_TO_FACE);
    check(&open, "teeth.gear_1.bearing_front_axial_n", 2_177.211_339);
    check(&open, "teeth.gear_1.bearing_rear_axial_n", 1_702.958_507);
    assert!(
        cell(&open, "bearings-1").contains("hand of the teeth not typed: each is taken as if the thrust pressed it"),
        "{}",
        cell(&open, "bearings-1")
    );
}

#[test]
fn tapers_are_read() {
    let read = |text: &str| along::read_bearings(text, System::Metric);
    let [one, two] = read("0 40 kN taper Y 1.5 e=0.42; 175 45 tapers").unwrap().unwrap();
    assert_eq!((one.taper, two.taper), (Some(Taper::new(1.5, Some(0.42), false)), Some(Taper::new(1.6, None, false))));
    assert!((two.taper.unwrap().threshold - 0.375).abs() < 1e-12);
    let [one, two] = read("Back-to-back; 175 45 kN taper; 0 40 kN taper y 1,4").unwrap().unwrap();
    assert!(one.taper.unwrap().back_to_back && two.taper.unwrap().back_to_back && (one.taper.unwrap().axial_factor - 1.4).abs() < 1e-12);
    assert_eq!(read("0 40 kN taper; 175 24 kN roller"), Err(AlongError::OneTaper));
    for wrong in ["0 40 kN taper Y; 175 45 kN taper", "0 40 kN taper Y 9; 175 45 kN taper", "0 40 kN taper B 2; 175 45 kN taper"] {
        let text = wrong.split(';').next().unwrap().to_owned();
        assert_eq!(read(wrong), Err(AlongError::NoBearing(text)), "{wrong}");
    }
    // What stands behind the kind of another bearing is not passed over.
    assert!(matches!(read("0 28 kN ball Y 1.6; 175 24 kN roller"), Err(AlongError::NoBearing(_))));
}

proptest! {
    /// What both hold along the shaft differs by the shaft's thrust, no bearing holds less than it makes, and one of them no more.
    #[test]
    fn a_pair_of_tapers_holds_the_thrust(
        factors in [0.5_f64..3.0, 0.5_f64..3.0],
        across in [0.0_f64..9e3, 0.0_f64..9e3],
        thrust in -6e3_f64..6e3,
        back_to_back in any::<bool>(),
    ) {
        let tapers = factors.map(|factor| Taper::new(factor, None, back_to_back));
        let radial = across.map(|load| unit::NEWTON.of(load));
        let [first, second] = axial_loads(tapers, radial, unit::NEWTON.of(thrust)).map(|load| load.value);
        let made = [tapers[0].induced(radial[0]).value, tapers[1].induced(radial[1]).value];
        let held = if back_to_back { first - second } else { second - first };
        let size = across[0] + across[1] + thrust.abs() + 1.0;
        prop_assert!((held - thrust).abs() <= 1e-12 * size, "{held} {thrust}");
        let more = [first - made[0], second - made[1]];
        prop_assert!(more.iter().all(|more| *more >= -1e-12 * size) && more.iter().any(|more| more.abs() <= 1e-12 * size), "{more:?}");
    }
}
