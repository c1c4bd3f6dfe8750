//! The inside of the box, worked out by hand beside the program's figures.

use layshaft::chart::Picture;
use layshaft::job::{Choice, Field, InsideField, Job, JobChoice, JobField, SetupField, demo};
use layshaft::questions::inside::pictures::turned;
use layshaft::questions::{Shelves, Source, analyse_job, build};
use layshaft::sheet::export::cell_text;
use layshaft::sheet::{Cell, Piece, Reader, Sheet, Tone, Words};
use layshaft::units::{System, Typed};

/// A figure of setup A.
fn figure(sheet: &Sheet, key: &str) -> f64 {
    let rows = sheet.sections.iter().filter(|section| section.id == "inside").flat_map(|section| &section.rows);
    let mut pieces = rows.filter_map(|row| row.cells.first()).flat_map(Cell::pieces);
    pieces.find_map(|piece| if let Piece::Figure(figure) = piece { (figure.key == key).then_some(figure.value) } else { None }).unwrap()
}

#[track_caller]
fn check(sheet: &Sheet, key: &str, by_hand: f64) {
    let value = figure(sheet, key);
    assert!((value - by_hand).abs() <= by_hand.abs() * 1e-9, "{key}: {value}, by hand {by_hand}");
}

/// Curlew four, wide: input pair 25 on 30; 1st 18 on 37, 2nd 23 on 32, 3rd 27 on 28; shift rpm 6,500.
#[test]
fn speeds_in_second_at_the_shift_rpm() {
    let sheet = build(&demo::job(), Words::Us);
    // 6,500 × 25 ÷ 30 = 5,416.7, and 5,416.7 × 23 ÷ 32 = 3,893.2.
    check(&sheet, "inside.countershaft_rpm", 6_500.0 * 25.0 / 30.0);
    check(&sheet, "inside.output_rpm", 6_500.0 * 25.0 / 30.0 * 23.0 / 32.0);
    // 1st turns 5,416.7 × 18 ÷ 37 = 2,635.1, the output 3,893.2: 1,258.1 apart.
    check(&sheet, "inside.idle_gear_1_rpm", 5_416.666_666_666_667 * (23.0 / 32.0 - 18.0 / 37.0));
    // 25 teeth of an input turning 6,500 a minute.
    check(&sheet, "inside.mesh_constant_hz", 25.0 * 6_500.0 / 60.0);
    // From 3rd into 2nd the engine goes by (32/23) ÷ (28/27).
    check(&sheet, "inside.downshift_3_to_2_rpm", 6_500.0 * 32.0 / 23.0 * 27.0 / 28.0);
    // 25 and 30 share the factor 5: after 30 ÷ 5 turns of the driver the same teeth meet.
    check(&sheet, "inside.constant.turns_to_repeat", 6.0);
}

/// In top, direct, the box turns with the driveshaft; the pinion's 11 teeth meet as often as it turns.
#[test]
fn a_road_speed_instead_of_an_input_speed() {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::InsideGear), "4");
    job.type_text(Field::Job(JobField::InsideAt), "70 mph".into());
    let sheet = build(&job, Words::Us);
    let output = figure(&sheet, "inside.output_rpm");
    // 70 mph = 31.2928 m/s; 1.8788 m a turn; 43 ÷ 11: 31.2928 ÷ 1.8788 × 60 × 43 ÷ 11 = 3,906.5 (the tyre's figure has five digits).
    assert!((output - 3_906.5).abs() < 0.2, "{output}");
    check(&sheet, "inside.cruise_mesh_final_hz", output * 11.0 / 60.0);
}

/// What a driver must not do is said in its row and not counted against the setup; limits that cannot be read are said.
#[test]
fn judgements_of_the_inside() {
    let sheet = build(&demo::job(), Words::Us);
    let inside = sheet.sections.iter().find(|section| section.id == "inside").unwrap();
    assert_eq!(inside.cautions().count(), 0);
    let tones = inside.rows.iter().flat_map(|row| &row.cells).flat_map(Cell::pieces);
    assert!(tones.filter(|piece| matches!(piece, Piece::Verdict(verdict) if verdict.tone == Tone::Driving)).count() >= 3);
    let mut job: Job = demo::job();
    job.inside.lining_limits = "5 3".into();
    job.inside.at = Typed::new("900 mph", job.units);
    let problems = layshaft::questions::Conditions::of(&job).problems;
    for field in ["lining-limits", "inside-at"] {
        assert!(problems.iter().any(|problem| problem.field.path() == field), "{field}: {problems:?}");
    }
}

/// A field of setup A.
fn typed(job: &mut Job, field: InsideField, text: &str) {
    let id = job.setups[0].id;
    job.type_text(Field::Setup(id, SetupField::Inside(field)), text.into());
}

/// The row of setup A as text.
fn row(job: &Job, section: &str, key: &str) -> String {
    let sheet = build(job, Words::Us);
    let found = sheet.sections.iter().filter(|each| each.id == section).flat_map(|each| &each.rows).find(|row| row.key == key);
    found.map(|row| cell_text(&row.cells[0])).unwrap()
}

/// Whether any verdict on setup A in the rows that begin with `key` is a tick.
fn is_ticked(job: &Job, key: &str) -> bool {
    let sheet = build(job, Words::Us);
    let rows = sheet.sections.iter().filter(|each| each.id == "inside").flat_map(|each| &each.rows).filter(|row| row.key.starts_with(key));
    rows.flat_map(|row| row.cells[0].pieces()).any(|piece| matches!(piece, Piece::Verdict(verdict) if verdict.tone == Tone::Good))
}

/// A clutch plate of 200 mm is 0.0034 kg·m², a shaft of 25 by 250 mm of steel 7,850 × π × 0.25 × 0.025⁴ ÷ 32 = 0.00007526: together
/// 0.00347526. In a box reduced at the output only reverse's 18 teeth turn with the input in neutral, 45 mm across and 18 wide:
/// 7,850 × π × 0.018 × 0.045⁴ ÷ 32 = 0.00005688, in all 0.00353215.
#[test]
fn the_clutch_plate_is_in_the_estimate_of_every_box() {
    let mut job = crate::golden::layouts();
    job.setups.truncate(1);
    for (field, text) in
        [(InsideField::Pitch, "2.5 mm"), (InsideField::Face, "18"), (InsideField::ConeDiameter, "70"), (InsideField::ConeWidth, "9")]
    {
        typed(&mut job, field, text);
    }
    let sheet = build(&job, Words::Us);
    let inertia = figure_beginning(&sheet, "inside.input_inertia");
    assert!((inertia - 0.003_532_15).abs() < 1e-8, "{inertia}");
    assert!(row(&job, "inside", "inertia").contains("clutch plate"), "{}", row(&job, "inside", "inertia"));
    assert!(!is_ticked(&job, "sync-"), "a tick rests on an estimate");
    // 180 mm: 0.0034 × 0.9⁴ = 0.00223074, with shaft and reverse 0.00236288.
    typed(&mut job, InsideField::ClutchDiameter, "180 mm");
    let inertia = figure_beginning(&build(&job, Words::Us), "inside.input_inertia");
    assert!((inertia - 0.002_362_88).abs() < 1e-8, "{inertia}");
}

/// The value, in its unit, of the figure of setup A whose key begins so.
fn figure_beginning(sheet: &Sheet, key: &str) -> f64 {
    let rows = sheet.sections.iter().filter(|section| section.id == "inside").flat_map(|section| &section.rows);
    let mut pieces = rows.filter_map(|row| row.cells.first()).flat_map(Cell::pieces);
    pieces
        .find_map(|piece| if let Piece::Figure(figure) = piece { figure.key.starts_with(key).then_some(figure.value) } else { None })
        .unwrap()
}

/// From 1st to 2nd the input of A goes from 6,500 rpm down by 6,500 × 275 ÷ 851 = 2,100.47 rpm = 219.961 rad/s; an inertia of 0.004
/// kg·m² gives off ½ × 0.004 × 219.961² = 96.77 J, whatever turns at the cone.
#[test]
fn the_worst_synchroniser_is_named() {
    let mut job = Job { units: System::Metric, ..demo::job() };
    typed(&mut job, InsideField::Inertia, "0.004 kg m²");
    assert!(row(&job, "inside", "sync-worst").starts_with("2nd, from 1st"), "{}", row(&job, "inside", "sync-worst"));
    let work = figure_beginning(&build(&job, Words::Us), "inside.worst_sync_work");
    assert!((work - 96.766).abs() < 0.01, "{work}");
    for (field, text) in [(InsideField::ConeDiameter, "80 mm"), (InsideField::ConeWidth, "12 mm")] {
        typed(&mut job, field, text);
    }
    job.inside.lining_limits = "50 30 9 90".into();
    assert!(!is_ticked(&job, "sync-"), "angle and friction are not typed");
    typed(&mut job, InsideField::ConeAngle, "6.5");
    typed(&mut job, InsideField::ConeFriction, "0.1");
    assert!(is_ticked(&job, "sync-"), "everything is typed, and nothing is passed");
    // Two cones share the work, so they bear half of it each.
    let stress = |cones: &str| {
        let mut job = job.clone();
        typed(&mut job, InsideField::Cones, cones);
        job.inside.lining_limits = "50 30 0.02 90".into();
        row(&job, "inside", "sync-1-2")
    };
    // 96.77 J ÷ (π × 80 × 12 mm²) = 0.0321 J/mm² passes 0.02; half of it is 0.0160 and does not.
    assert!(stress("1").contains("work per lining area"), "{}", stress("1"));
    assert!(!stress("2").contains("work per lining area"), "{}", stress("2"));
}

/// 44 teeth of 8 diametral pitch stand 44 × 3.175 ÷ 2 = 69.85 mm apart, 55 of 10 diametral pitch 55 × 2.54 ÷ 2 = 69.85 mm as well.
#[test]
fn a_coarser_first_gear_shares_the_centre_distance() {
    let mut job = demo::job();
    job.setups.truncate(1);
    job.setups[0].gearbox.gears[0] = "30/14".into();
    assert!(row(&job, "gears", "sums").contains("pairs of one pitch cannot share one center distance"), "{}", row(&job, "gears", "sums"));
    typed(&mut job, InsideField::Pitch, "10 DP");
    typed(&mut job, InsideField::PairCuts, "1st 8 DP");
    assert!(row(&job, "gears", "sums").ends_with("cut for one center distance: 69.8 mm") || row(&job, "gears", "sums").contains("69.9 mm"));
    assert!(!row(&job, "inside", "geometry").contains("cannot"), "{}", row(&job, "inside", "geometry"));
    // 55 teeth of 8 diametral pitch would be 87.3 mm.
    job.setups[0].gearbox.gears[0] = "37/18".into();
    assert!(row(&job, "gears", "sums").contains("cannot share one center distance"));
}

/// A published profile-shift table: module 3, 20°, 30° helix, 12 and 60 teeth on 125 mm; all of the shift, 0.09809, on the driver gives
/// a transverse contact ratio of 1.294.
#[test]
fn the_share_of_profile_shift_can_be_typed() {
    let mut job = Job { units: System::Metric, ..demo::job() };
    job.setups.truncate(1);
    job.setups[0].gearbox.constant = "24/48".into();
    job.setups[0].gearbox.gears = vec!["60/12".into(), "direct".into()];
    for (field, text) in [(InsideField::Pitch, "3 mm"), (InsideField::Helix, "30"), (InsideField::Centre, "125 mm")] {
        typed(&mut job, field, text);
    }
    let contact = |job: &Job| figure(&build(job, Words::Us), "inside.gear_1.transverse_contact_ratio");
    assert!((contact(&job) - 1.293_8).abs() > 1e-3, "half of the shift on each gear gives another figure");
    typed(&mut job, InsideField::PairCuts, "1st x 0.09809");
    assert!((contact(&job) - 1.293_8).abs() < 5e-4, "{}", contact(&job));
}

#[test]
fn what_cannot_be_read_of_cones_and_pairs_is_said() {
    let mut job = demo::job();
    for (field, text) in [(InsideField::Cones, "7"), (InsideField::PairCuts, "9th 8 DP"), (InsideField::ClutchDiameter, "banana")] {
        typed(&mut job, field, text);
    }
    let problems = layshaft::questions::read_all(&job).swap_remove(0).problems;
    for field in ["cones", "pair-cuts", "clutch-diameter"] {
        assert!(problems.iter().any(|problem| problem.field.path() == field), "{field}: {problems:?}");
    }
}

/// The train of the demo's A in 2nd, turned by hand: 25 on 30, then 23 on 32.
#[test]
fn marked_teeth_meet_when_they_do_by_hand() {
    let job = demo::job();
    let answers = analyse_job(&job, Shelves::default());
    let source = Source::new(&job, &answers, Shelves::default(), Reader { units: System::Inch, words: Words::Us });
    let turned = turned(source, None).unwrap();
    // 25 and 30 share 5: the same two teeth meet after 30 ÷ 5 = 6 turns of the input. 23 and 32 share nothing: after 32 turns of the
    // cluster, which are 32 × 30 ÷ 25 = 38.4 of the input.
    let every: Vec<(f64, u32, u32)> = turned.marked.iter().map(|pair| (pair.every, pair.driver_turns, pair.common_factor)).collect();
    assert_eq!(every, [(6.0, 6, 5), (38.4, 32, 1)]);
    // The least number that 6 and 38.4 both go into: 192 = 32 × 6 = 5 × 38.4.
    assert_eq!(turned.all_meet, Some(192.0));
    let said = turned.read_out(12.0).groups;
    let reading = |label: &str| said.iter().flat_map(|group| &group.readings).find(|one| one.label == label).unwrap().value.clone();
    // 12 × 25 ÷ 30 = 10; 10 × 23 ÷ 32 = 7.1875; 38.4 − 12.
    assert_eq!([reading("cluster"), reading("output")], ["10.00", "7.19"]);
    assert_eq!([reading("input pair"), reading("2nd")], ["marked teeth meet", "meet in 26.40 turns"]);
    // Half a turn on, no two marked teeth meet; turned to a whole number of meetings the picture is as at first.
    assert!(turned.turned(12.5).unwrap().read_out(12.5).groups.iter().flat_map(|group| &group.readings).all(|one| !one.stands_out));
    assert!(turned.stops().iter().any(|stop| (stop - 38.4).abs() < 1e-9));
}

/// Direct, only the constant pair turns without load, and no tooth carries power.
#[test]
fn direct_no_pair_is_marked() {
    let mut job = demo::job();
    job.choose(Choice::Job(JobChoice::InsideGear), "4");
    let answers = analyse_job(&job, Shelves::default());
    let source = Source::new(&job, &answers, Shelves::default(), Reader { units: System::Inch, words: Words::Us });
    let turned = turned(source, None).unwrap();
    assert!(turned.marked.is_empty() && !turned.describe().is_empty());
}

/// The demo's C is direct in 4th and has its 5th next to the input pair: the hub of 3rd and 4th stands beside 3rd, on no gear.
#[test]
fn no_hub_lies_on_a_gear() {
    let job = demo::job();
    let answers = analyse_job(&job, Shelves::default());
    let source = Source::new(&job, &answers, Shelves::default(), Reader { units: System::Inch, words: Words::Us });
    for column in 0..job.setups.len() {
        let train = layshaft::questions::inside::pictures::train(source, Some(column));
        assert!(!train.couplings.is_empty());
        for hub in &train.couplings {
            let lies_on = train.wheels.iter().find(|wheel| (wheel.slot - hub.slot).abs() < 0.25);
            assert!(lies_on.is_none(), "setup {column}: hub {} lies on {lies_on:?}", hub.name);
        }
    }
}
