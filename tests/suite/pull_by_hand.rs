//! Pull at the wheels worked out apart from the program, and what its words say: the engine as it was taken, the comparison as text.
//!
//! Setup A of the demo job: 1st 1110/450, axle 43/11, rolling radius 1.8788 m ÷ 2π; 200 N·m at every rpm; 2,600 lb.

use layshaft::chart::Picture;
use layshaft::gearing::Layout;
use layshaft::job::{Choice, Field, Job, JobChoice, JobField, PullField, SetupField, demo};
use layshaft::motion::{EngineCurve, MotionError};
use layshaft::questions::pull::rows::text;
use layshaft::questions::pull::{engine_words as engine, pictures};
use layshaft::questions::{self, Shelves};
use layshaft::questions::{Source, build};
use layshaft::sheet::export::cell_text;
use layshaft::sheet::{Reader, Words};
use layshaft::units::System;
use uom::si::{force::newton, torque::newton_meter};

use crate::any_job::{figure, sheet};
use crate::nth;

/// Half of the last digit of the arithmetic below.
const RELATIVE: f64 = 2e-5;

/// The same torque at every rpm, so that no curve has to be worked out by hand.
const FLAT: &str = "rpm;Nm\n1000;200\n6500;200";

fn with(fields: &[(PullField, &str)]) -> Job {
    let mut job = demo::job();
    for (field, text) in fields {
        job.type_text(Field::Job(JobField::Pull(*field)), (*text).into());
    }
    job
}

#[track_caller]
fn check(job: &Job, key: &str, shown: &str, by_hand: f64) {
    let sheet = sheet(job);
    let found = figure(&sheet, 0, key);
    assert_eq!(found.text(), shown, "{key}");
    assert!((found.value / by_hand - 1.0).abs() < RELATIVE, "{key} is {}, not {by_hand}", found.value);
}

/// What stands in a row of the section, for a column counted from 0.
#[track_caller]
fn row(job: &Job, key: &str, column: usize) -> String {
    let sheet = build(job, Words::Us);
    let section = sheet.sections.iter().find(|section| section.id == "pull").unwrap();
    let row = section.rows.iter().find(|row| row.key == key);
    assert!(row.is_some(), "no row {key}");
    cell_text(&row.unwrap().cells[column])
}

/// At 2,000 m the standard atmosphere has 1.006554 of 1.225 kg/m³, so an engine without a blower keeps 1.132 × 0.821677 − 0.132 = 0.798138
/// of its torque; 2,000 m are 6,561.68 ft. What the driveshaft must bear is told of the engine at the sea.
#[test]
fn thin_air_takes_thrust_and_drag() {
    let job = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2"), (PullField::Altitude, "2000 m")]);
    check(&job, "pull.launch_thrust_lbf", "1,067 lbf", 1_336.757_15 * 0.798_138);
    let in_feet = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2"), (PullField::Altitude, "6,562")]);
    check(&in_feet, "pull.launch_thrust_lbf", "1,067 lbf", 1_336.757_15 * 0.798_129);
    let rests = build(&job, Words::Us).sections.into_iter().find(|section| section.id == "pull").unwrap().rests;
    let said: Vec<String> = rests.iter().map(|rest| format!("{}: {}", rest.label, rest.value)).collect();
    for line in ["Height above the sea: 6,562 ft", "The engine at this height: 80 % of its torque", "Density of the air: 1.007 kg/m³"] {
        assert!(said.iter().any(|said| said == line), "{line} is not among {said:#?}");
    }
    assert!(said.iter().any(|said| said.starts_with("Peak torque: 148 lbf·ft")), "{said:#?}");
}

/// Measured at the wheels through an axle of 96 %, the engine gave 200 ÷ 0.96 N·m; a head that says so is believed until another is chosen.
#[test]
fn where_a_curve_was_measured_can_be_chosen() {
    let mut job = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2")]);
    job.choose(Choice::Job(JobChoice::CurveAt), "wheels");
    check(&job, "pull.launch_thrust_lbf", "1,392 lbf", 1_336.757_15 / 0.96);
    let head = "rpm;wheel torque Nm\n1000;200\n6500;200";
    let mut job = with(&[(PullField::Rows, head), (PullField::Grip, "2")]);
    check(&job, "pull.launch_thrust_lbf", "1,392 lbf", 1_336.757_15 / 0.96);
    job.choose(Choice::Job(JobChoice::CurveAt), "engine");
    check(&job, "pull.launch_thrust_lbf", "1,337 lbf", 1_336.757_15);
}

#[test]
fn thrust_grades_and_cruise() {
    // a grip of 2 lets 1st put all of it down: 2 × 0.5 ÷ (1 − 2 × 0.57 ÷ 2.6) = 1.78 of the weight
    let job = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2")]);
    // 200 N·m × 9.642424 × 0.98² × 0.96 ÷ 0.2990203 m = 5,946.192 N = 1,336.757 lbf
    check(&job, "pull.launch_thrust_lbf", "1,337 lbf", 1_336.757_15);
    // weight 2,600 × 0.45359237 × 9.80665 = 11,565.4 N; a tenth of the thrust picks up speed:
    // tan(asin(0.9 × 5,946.192 ÷ (11,565.4 × √1.0001)) − atan 0.01) = 0.5092741
    check(&job, "pull.start_grade_percent", "51 %", 50.927_407);
    check(&job, "pull.gear_1.grade_started_percent", "51 %", 50.927_407);
    // 70 mph = 31.2928 m/s: 0.01 × (1 + 31.2928 ÷ 44.8056) × 11,565.4 + ½ × 1.225 × 0.9 × 31.2928² = 736.233 N
    // of 200 × 43/11 × 0.96 ÷ 0.2990203 = 2,510.015 N
    check(&job, "pull.cruise_load_percent", "29 %", 29.331_836);
    check(&job, "pull.cruise_reserve_lbf", "399 lbf", 398.761_96);
}

#[test]
fn a_trailer_is_counted_and_named() {
    let job = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2"), (PullField::Trailer, "1,000")]);
    // its 453.59237 kg add 4,448.22 N to the weight and nothing to the air: 34.33380 % and 32.34174 %
    check(&job, "pull.start_grade_percent", "34 %", 34.333_797);
    check(&job, "pull.cruise_load_percent", "32 %", 32.341_745);
    for key in ["launch", "gear-1", "cruise", "top"] {
        assert!(row(&job, key, 0).contains("with the trailer of 1,000 lb"), "{}", row(&job, key, 0));
        assert!(!row(&demo::job(), key, 0).contains("trailer"), "{key}");
    }
}

#[test]
fn on_slippery_ground_no_turning_part_is_sped_up_through_the_tyres() {
    let slippery = [(PullField::Rows, FLAT), (PullField::Grip, "0.2"), (PullField::Speeds, "30")];
    // the tyres hold 0.2 × 0.5 ÷ (1 − 0.2 × 0.57 ÷ 2.6) = 0.1045857 of 11,565.4 N, 1,209.573 N, less 115.654 N of rolling at a crawl
    // = 1,093.919 N; less 2.581235 v + 0.55125 v², which is c·(42.26721 − v)·(v + 46.94972), for 1.04 × 1,179.340 kg to 13.4112 m/s:
    // m ÷ (c × 89.21693) × ln((13.4112 + 46.94972) × 42.26721 ÷ ((42.26721 − 13.4112) × 46.94972))
    check(&with(&slippery), "pull.to_speed_1_s", "15.8 s", 15.785_25);
    // a trailer of 453.592 kg rolls along: 1,049.437 N less 3.574017 v + 0.55125 v² for 1,680.106 kg
    let towing = [slippery[0], slippery[1], slippery[2], (PullField::Trailer, "1,000")];
    check(&with(&towing), "pull.to_speed_1_s", "22.7 s", 22.748_12);
}

#[test]
fn reverse_and_the_way_down() {
    let job = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2"), (PullField::Limit, "6,500")]);
    // reverse 33/16 × 30/25 × 43/11 = 9.675: at 1,000 rpm 104.7198 ÷ 9.675 × 0.2990203 m = 3.236530 m/s
    check(&job, "pull.reverse_crawl_mph", "7.2 mph", 7.239_89);
    // three meshes and the axle pass 0.98³ × 0.96 of 200 N·m: 5,847.0 N, 0.9 of it up a hill; backwards the tyres hold 0.9 × 0.6952
    check(&job, "pull.reverse_grade_started_percent", "50 %", 49.837_69);
    // 30 mph in 1st are 4,129.76 rpm: 0.97 + 0.15 × 4.12976 + 0.05 × 4.12976² = 2.442209 bar, 27.13565 % of 9 bar: 54.2713 N·m,
    // × 9.642424 ÷ (0.2990203 × 0.98² × 0.96) = 1,898.158 N and 133.765 N that grow with speed hold 11,565.4 N on tan(asin(0.1756814) + atan 0.01)
    check(&job, "pull.descent_1_percent", "19 %", 18.879_39);
    // 1st at 6,500 rpm: 680.678 ÷ 9.642424 × 0.2990203 m = 21.10844 m/s; 4th turns 6,500 × 3.909091 ÷ 9.642424 there
    check(&job, "pull.down_1_mph", "47.2 mph", 47.218_27);
    assert!(row(&job, "down-1", 0).contains("2,635 rpm in 4th"), "{}", row(&job, "down-1", 0));
    assert!(row(&job, "down-2", 0).contains("rpm in 3rd · ") && !row(&job, "down-2", 0).contains("1st"), "{}", row(&job, "down-2", 0));
}

#[test]
fn without_a_rev_limit_the_end_of_the_curve_is_called_so() {
    let rows = |limit| with(&[(PullField::Rows, "rpm;Nm\n1000;100\n6500;200"), (PullField::Grip, "2.5"), (PullField::Limit, limit)]);
    let (blank, typed) = (rows(""), rows("5,000"));
    assert!(row(&blank, "shift-1", 0).contains("hold to the end of the curve"), "{}", row(&blank, "shift-1", 0));
    assert!(row(&typed, "shift-1", 0).contains("hold to the rev limit"), "{}", row(&typed, "shift-1", 0));
    assert!(row(&blank, "top", 0).contains("at the end of the curve"), "{}", row(&blank, "top", 0));
    // power rises all the way: the band ends where the engine does
    assert!(row(&typed, "in-band", 0).contains("to 5,000 rpm"), "{}", row(&typed, "in-band", 0));
    assert!(row(&blank, "in-band", 0).contains("to 6,500 rpm"), "{}", row(&blank, "in-band", 0));
}

#[test]
fn typed_efficiencies_count_without_a_mass() {
    let job = with(&[(PullField::Mass, ""), (PullField::MeshEfficiency, "90 %"), (PullField::AxleEfficiency, "80 %")]);
    let questions::Answers { setups, .. } = questions::analyse_job(&job, Shelves::default());
    // two meshes in 1st: 0.9² × 0.8
    assert!((setups[0].pull().thrust.as_ref().unwrap().gear(nth(1)).unwrap().efficiency - 0.648).abs() < 1e-12);
}

#[test]
fn a_box_of_two_shafts_drives_the_front_through_helical_gears() {
    let mut job = with(&[(PullField::Rows, FLAT), (PullField::Grip, "2.5")]);
    let a = job.setups[0].id;
    job.setup_mut(a).unwrap().gearbox.layout = Layout::TwoShaft;
    job.type_text(Field::Setup(a, SetupField::Gear(0)), "37/18".into());
    // a box of two shafts has no direct gear
    job.type_text(Field::Setup(a, SetupField::Gear(3)), "30/30".into());
    // one mesh and the final drive: 200 N·m × 37/18 × 43/11 × 0.98 × 0.97 ÷ 0.2990203 m = 5,108.96 N
    check(&job, "pull.launch_thrust_lbf", "1,149 lbf", 1_148.538_9);
    let sheet = build(&job, Words::Us);
    let section = sheet.sections.iter().find(|section| section.id == "pull").unwrap();
    let rest = |label: &str| section.rests.iter().find(|rest| rest.label.starts_with(label) && rest.label.contains('A')).cloned();
    assert_eq!(rest("Driven wheels, ").map(|rest| rest.value).as_deref(), Some("front"));
    assert_eq!(rest("Weight on the driven axle, ").map(|rest| rest.value).as_deref(), Some("60 %"));
    assert_eq!(rest("Efficiency of the axle, ").map(|rest| rest.value).as_deref(), Some("97 %"));
}

#[test]
fn a_shift_above_the_top_speed_says_so() {
    let job = with(&[(PullField::Rows, FLAT), (PullField::DragArea, "5 m²"), (PullField::Limit, "6,500")]);
    // at the limit 3rd would do 6,500 rpm; 5 m² of drag hold it well below
    assert!(row(&job, "shift-3", 0).contains("not reached on the level: 3rd comes to"), "{}", row(&job, "shift-3", 0));
    assert!(!row(&demo::job(), "shift-3", 0).contains("not reached"), "{}", row(&demo::job(), "shift-3", 0));
}

#[test]
fn what_was_done_to_pasted_rows_is_said() {
    let said = |rows: &str| engine_of(&with(&[(PullField::Rows, rows)])).0;
    for (rows, words) in [
        ("rpm;Nm\n6000;120\n4000;150\n2000;130", "The rows went from the highest rpm down and were turned round."),
        ("rpm;Nm\n2000;130\n4000;150\n4000;152\n6000;120", "1 row at a repeated rpm averaged."),
        ("rpm;Nm\n0;0\n2000;130\n4000;150\n6000;120", "1 row at standstill left out."),
        ("rpm;wheel Nm\n2000;130\n4000;150\n6000;120", "divided by 0.96, what comes through the axle"),
    ] {
        assert!(said(rows).contains(words), "{rows}: {}", said(rows));
    }
    // 150 N·m at the wheels ÷ 0.96
    let curve = engine_of(&with(&[(PullField::Rows, "rpm;wheel Nm\n2000;130\n4000;150\n6000;120")])).1;
    assert!((curve.peak_torque().torque.get::<newton_meter>() - 156.25).abs() < 1e-6);
}

#[test]
fn a_goal_just_behind_a_shift_is_reached_without_it() {
    let falling = "rpm;Nm\n1000;200\n5000;200\n6000;120\n6600;60";
    let job = with(&[(PullField::Rows, falling), (PullField::Grip, "3"), (PullField::Limit, "6,500"), (PullField::Speeds, "46")]);
    // 46 mph = 20.56384 m/s ÷ 0.2990203 m × 9.642424 × 9.549297 = 6,332.3 rpm in 1st; the next gear pulls harder well before
    assert!(figure(&sheet(&job), 0, "pull.shift_1_rpm").value < 6_250.0);
    assert!(row(&job, "plan", 0).contains("hold 1st to 6,332 rpm and reach 46 mph without the shift"), "{}", row(&job, "plan", 0));
    let said = build(&job, Words::Us).sections.iter().find(|section| section.id == "pull").unwrap().answer.plain();
    assert!(said.contains("and reach 46 mph without the shift."), "{said}");
    // where the shift takes no time it is made, as the point says
    let mut job = job;
    job.type_text(Field::Job(JobField::Pull(PullField::ShiftTime)), "0".into());
    assert!(!row(&job, "plan", 0).contains("without the shift"), "{}", row(&job, "plan", 0));
    // a rule that is chosen is kept to
    job.choose(Choice::Job(JobChoice::ShiftRule), "chosen");
    job.type_text(Field::Job(JobField::Shift), "4,000".into());
    assert!(row(&job, "plan", 0).starts_with("1st to 4,000 · 2nd to 4,000 rpm, then 3rd"), "{}", row(&job, "plan", 0));
}

#[test]
fn a_rolling_start_is_in_top_gear_unless_another_is_typed() {
    let rolling = [(PullField::Rows, FLAT), (PullField::RollFrom, "50"), (PullField::RollTo, "70")];
    assert!(row(&with(&rolling), "roll", 0).ends_with("in 4th"), "{}", row(&with(&rolling), "roll", 0));
    let third = [rolling[0], rolling[1], rolling[2], (PullField::RollGear, "3")];
    assert!(row(&with(&third), "roll", 0).ends_with("in 3rd"), "{}", row(&with(&third), "roll", 0));
}

#[test]
fn a_launch_is_held_to_the_rev_limit_everywhere() {
    let rising = "rpm;Nm\n1000;100\n6000;200";
    // at 3,000 rpm a straight rise from 100 N·m at 1,000 to 200 at 6,000 gives 140 N·m: 0.7 of the 1,336.757 lbf that 200 give
    let job = with(&[(PullField::Rows, rising), (PullField::Grip, "2"), (PullField::Limit, "3,000"), (PullField::Launch, "5,000")]);
    check(&job, "pull.launch_thrust_lbf", "936 lbf", 0.7 * 1_336.757_15);
    assert!(row(&job, "launch", 0).contains("by the engine at 3,000 rpm"), "{}", row(&job, "launch", 0));
}

fn engine_of(job: &Job) -> (String, EngineCurve) {
    let answers = questions::analyse_job(job, Shelves::default());
    let source = Source::new(job, &answers, Shelves::default(), Reader { units: job.units, words: Words::Us });
    (engine::words(source), answers.conditions.pull.curve.clone().unwrap())
}

#[test]
fn the_engine_says_what_was_taken_for_what() {
    let air = [(PullField::AirPressure, "970 mbar"), (PullField::AirTemperature, "30 °C")];
    let mut job = with(&[(PullField::Rows, "1000 100\n1500 110\n2000 125\n5000 120"), air[0], air[1]]);
    job.choose(Choice::Job(JobChoice::PowerStandard), "sae-j1349");
    let (said, curve) = engine_of(&job);
    for words in [
        "Measured curve, 1,000 to 5,000 rpm; most torque at 2,000 rpm, 4 % more than at peak power; most power at 5,000 rpm.",
        "Columns taken: 1 for rpm, 2 for torque in lbf·ft (unit assumed: no head names it).",
        // 970 mbar dry and 30 °C make 1.034391 by SAE J1349 (the formula from memory)
        "Torque and power are × 1.034 to SAE J1349.",
        "Between 2,000 and 5,000 rpm there is no point: the curve is a guess there; add rows.",
    ] {
        assert!(said.contains(words), "{words} in {said}");
    }
    // 125 lbf·ft × 1.355818 = 169.4772 N·m, × 1.034391
    assert!((curve.peak_torque().torque.get::<newton_meter>() / (169.477_24 * 1.034_391) - 1.0).abs() < 1e-6);

    // a head that names its unit leaves nothing assumed; peaks of a data sheet are not corrected
    job.type_text(Field::Job(JobField::Pull(PullField::Rows)), "kW\trpm\n10\t1000\n30\t3000".into());
    assert!(engine_of(&job).0.contains("Columns taken: 2 for rpm, 1 for power in kW."), "{}", engine_of(&job).0);
    job.type_text(Field::Job(JobField::Pull(PullField::Rows)), String::new());
    let (said, curve) = engine_of(&job);
    assert!(said.contains("Peaks are taken as they are typed: only measured rows are corrected."), "{said}");
    assert!((curve.peak_torque().torque.get::<newton_meter>() / (231.0 * 1.355_817_948) - 1.0).abs() < 1e-9);
}

#[test]
fn blank_speeds_are_round_in_the_units_of_the_job() {
    for (units, last) in [(System::Inch, "0 to 100 mph"), (System::Metric, "0 to 160 km/h")] {
        let sheet = build(&Job { units, ..demo::job() }, Words::Us);
        let section = sheet.sections.iter().find(|section| section.id == "pull").unwrap();
        let label = section.rows.iter().find(|row| row.key == "to-speed-3").map(|row| row.label.clone());
        assert_eq!(label.as_deref(), Some(last));
    }
}

#[test]
fn a_rolling_start_that_cannot_be_says_why() {
    use PullField::{RollFrom, RollGear, RollTo};
    for (fields, said) in [
        (vec![(RollFrom, "70"), (RollTo, "50")], "not above the one to start from: type a higher speed"),
        (vec![(RollFrom, "70"), (RollTo, "70")], "not above the one to start from"),
        (vec![(RollFrom, "160"), (RollTo, "180")], "past its limit even in top gear: start from a lower speed"),
        (vec![(RollFrom, "5"), (RollTo, "50")], "fast enough for its torque curve: start from a higher speed"),
        (vec![(RollFrom, "50"), (RollTo, "70"), (RollGear, "8")], "there is no gear 8: choose one of the gears of this box"),
        (vec![(RollFrom, "60"), (RollTo, "70"), (RollGear, "1")], "in gear 1 the engine would turn 8,"),
    ] {
        let job = with(&fields);
        assert!(row(&job, "roll", 0).contains(said), "{fields:?}: {}", row(&job, "roll", 0));
        let questions::Answers { setups, .. } = questions::analyse_job(&job, Shelves::default());
        assert!(matches!(setups[0].roll(), Some(Err::<_, MotionError>(_))));
    }
}

#[test]
fn gears_out_of_order_have_no_upshift_between_them() {
    let mut job = demo::job();
    let a = job.setups[0].id;
    // 3rd as short as 1st: 2nd shifts past it, and nothing taller than 4th is left
    job.type_text(Field::Setup(a, SetupField::Gear(2)), "37/18".into());
    assert!(row(&job, "shift-2", 0).contains("into 4th: 3rd is no taller than 2nd: put the gears in order"), "{}", row(&job, "shift-2", 0));
    job.type_text(Field::Setup(a, SetupField::Gear(3)), "39/18".into());
    assert_eq!(row(&job, "shift-2", 0), "3rd is no taller than 2nd: put the gears in order");
}

#[test]
fn close_or_wide_is_told_as_text() {
    let mut job = demo::job();
    let told = text::text(&job, &build(&job, Words::Us)).unwrap();
    for line in ["A: As it came", "B: Close", "0 to 60 mph\nA: 6.8 s", "Shift 1st to 2nd\nA: 6,351 rpm", "Against A\nA: reference\nB: "] {
        assert!(told.contains(line), "{line} in {told}");
    }
    assert!(text::text(&job, &build(&job, Words::Uk)).unwrap().contains("Change 1st to 2nd"));
    job.setups.truncate(1);
    assert_eq!(text::text(&job, &build(&job, Words::Us)), None);
}

/// The pictures of the demo job's pull.
pub(crate) fn pictures() -> Vec<(String, Box<dyn Picture>)> {
    let job = demo::job();
    let shelves = Shelves::default();
    let answers = questions::analyse_job(&job, shelves);
    let source = Source::new(&job, &answers, shelves, Reader { units: job.units, words: Words::Us });
    let named = crate::charts_demo_more::named;
    vec![
        named("pull-thrust", pictures::thrust(source, None)),
        named("pull-run", pictures::run(source, None)),
        named("pull-run-distance", pictures::run_over_distance(source, None)),
        named("pull-gap", pictures::gap_to_a(source, None).unwrap()),
        named("pull-band", pictures::band(source, None)),
    ]
}

/// Where the picture ends, a point of the run before a quarter mile, stands what the rows say one by one.
#[test]
fn the_gap_at_a_quarter_mile_is_the_difference_of_the_times() {
    let job = demo::job();
    let answers = questions::analyse_job(&job, Shelves::default());
    let quarter = |slot: usize| answers.setups[slot].over_distances()[0].as_ref().unwrap().reached.time.value;
    let source = Source::new(&job, &answers, Shelves::default(), Reader { units: job.units, words: Words::Us });
    let picture = pictures::gap_to_a(source, None).unwrap();
    assert_eq!(picture.series.len(), job.setups.len() - 1);
    for (slot, series) in (1..).zip(&picture.series) {
        let (way, behind) = *series.points.last().unwrap();
        assert!((way - 1_320.0).abs() < 25.0, "{way} ft");
        assert!(
            (behind - (quarter(slot) - quarter(0))).abs() < 0.01,
            "{behind} s of setup {slot}, by the rows {}",
            quarter(slot) - quarter(0)
        );
    }
}

#[test]
fn speed_over_distance_ends_where_speed_over_time_does() {
    let pictures = pictures();
    let end = |name: &str| {
        let (_, picture) = pictures.iter().find(|(each, _)| each == name).unwrap();
        (picture.title(), picture.table().csv())
    };
    let ((time, by_time), (way, by_way)) = (end("pull-run"), end("pull-run-distance"));
    assert_eq!((time.as_str(), way.as_str()), ("Standing start: speed over time", "Standing start: speed over distance"));
    assert_eq!(by_time.lines().count(), by_way.lines().count(), "one point for each moment of the run");
}

#[test]
fn what_the_tyres_hold_is_in_the_working() {
    let job = with(&[(PullField::Rows, FLAT)]);
    let sheet = sheet(&job);
    let working = figure(&sheet, 0, "pull.launch_thrust_lbf").working.clone().unwrap().said(Words::Us);
    // 200 N·m = 147.5 lbf·ft; 0.2990203 m = 0.981 ft; grip 0.8 × 0.5 ÷ (1 − 0.8 × 0.57 ÷ 2.6) = 0.485075 of 2,600 lbf
    assert_eq!(working.filled(), "147.5 lbf·ft × 9.642 × 0.922 ÷ 0.981 ft; the tires hold 1,261 lbf");
    let questions::Answers { setups, .. } = questions::analyse_job(&job, Shelves::default());
    let held = setups[0].pull().vehicle.as_ref().unwrap().grip_limit().get::<newton>();
    assert!((held / (0.485_074_63 * 2_600.0 * 4.448_221_615) - 1.0).abs() < 1e-6, "{held}");
}
