//! Extra stages as they are: switched or always in, before the speedometer's drive gear or behind it, and what they cost. Worked by hand.

use std::sync::Arc;

use layshaft::catalogue::Catalogue;
use layshaft::finder::table::{AxleRow, Pairs, SetRow, TyreRow};
use layshaft::finder::{Given, Measure, Table, Wish};
use layshaft::gearing::stage::{MOST_SWITCHED, Stage as Unit, StageKind, Step, Switch, UsedIn, steps};
use layshaft::gearing::{FinalDrive, GearNumber, Layout, Place, Ratio};
use layshaft::job::{Choice, Chosen, InputProblem, Job, SetupChoice, Stage, demo};
use layshaft::questions::find::evaluate;
use layshaft::questions::{OnShelf, analyse_job};
use layshaft::sheet::{Piece, Sheet};
use layshaft::units::common::metres_per_second;
use layshaft::units::{System, Typed};
use proptest::prelude::*;

use crate::any_job::{figure, figures, rows, sheet};
use crate::finder_ground::search;
use crate::nth;

/// A box of 3.20, 2.10, 1.40 and direct, an axle of 4.1, tyres that roll 2 m.
fn car(stage: Stage) -> Job {
    let mut job = demo::empty(System::Metric);
    job.shift = Typed::new("5,000", System::Metric);
    job.cruise = Typed::new("100", System::Metric);
    let setup = &mut job.setups[0];
    setup.gearbox.gears = ["3.20", "2.10", "1.40", "direct"].map(String::from).to_vec();
    setup.final_drive = "4.1".into();
    setup.tyre = Typed::new("rolls 2,000 mm", System::Metric);
    setup.stages = vec![stage];
    job
}

fn overdrive(gears: &str) -> Stage {
    Stage { kind: Chosen::of(StageKind::Overdrive), drive: "0.78".into(), gears: gears.into(), ..Stage::default() }
}

fn said(sheet: &Sheet, row: &str) -> String {
    let cell = &rows(sheet).find(|found| found.key == row).unwrap().cells[0];
    let pieces = cell.pieces().map(|piece| match piece {
        Piece::Figure(figure) => figure.text(),
        Piece::Words(text) | Piece::Open(_, text) | Piece::Absent(text) | Piece::Needed(text) => text.clone(),
        Piece::Verdict(verdict) => format!("! {}", verdict.text),
    });
    pieces.collect::<Vec<_>>().join(" | ")
}

#[track_caller]
fn check(sheet: &Sheet, key: &str, text: &str) {
    assert_eq!(figure(sheet, 0, key).text(), text, "{key}");
}

/// 1.40 × 0.78 = 1.092 and 1 × 0.78; at 5,000 rpm 3rd reaches 5,000 × 2 m × 60 ÷ (1.40 × 4.1) = 104.5 km/h, in overdrive 134.0, and
/// 4th 146.3, in overdrive 187.6. At 100 km/h the wheels turn 833.3 a minute: × 4.1 × 0.78 = 2,665 rpm.
#[test]
fn an_overdrive_in_3rd_and_4th_makes_six_steps() {
    let job = car(overdrive("3 4"));
    let sheet = sheet(&job);
    check(&sheet, "gear_3_overdrive.ratio", "1.092");
    check(&sheet, "gear_4_overdrive.ratio", "0.780");
    check(&sheet, "gear_3_overdrive.at_shift_kmh", "134.0 km/h");
    check(&sheet, "gear_4.at_shift_kmh", "146.3 km/h");
    check(&sheet, "gear_4_overdrive.at_shift_kmh", "187.6 km/h");
    check(&sheet, "gear_4_overdrive.overall", "3.198");
    check(&sheet, "cruise_rpm", "2,665 rpm");
    assert!(figures(&sheet, 0).all(|figure| !figure.key.starts_with("gear_2_")));
    assert!(said(&sheet, "stage-1").contains("switched in 3rd and 4th"), "{}", said(&sheet, "stage-1"));
    let names: Vec<String> = names(&job);
    assert_eq!(names, ["1st", "2nd", "3rd", "3rd overdrive", "4th", "4th overdrive"]);
    // Always in, it is a part of every gear: 4.1 × 0.78 × 833.3 as before, and 1st no longer 3.2 × 4.1 = 13.12 but 10.23.
    let always = super::any_job::sheet(&car(overdrive("always")));
    check(&always, "cruise_rpm", "2,665 rpm");
    check(&always, "first_overall", "10.23");
    check(&sheet, "first_overall", "13.12");
}

/// 1 − 2.10/3.20 = 34 %, 1 − 1.40/2.10 = 33 %, 22 % for 0.78, 1 − 1/1.092 = 8 %, 22 %. The answer of Gears says so.
#[test]
fn the_answer_counts_the_steps() {
    let said = |stage: Stage| {
        let sheet = sheet(&car(stage));
        sheet.sections.iter().find(|section| section.id == "gears").unwrap().answer.plain()
    };
    let with = said(overdrive("3 4"));
    assert!(with.contains("Counting the overdrive, A drops 34, 33, 22, 8 and 22 %: 3rd overdrive lies between 3rd and 4th."), "{with}");
    // What it is called matters less than what it does.
    let unnamed = said(Stage { kind: Chosen::NOTHING, ..overdrive("4") });
    assert!(unnamed.contains("Counting the overdrive, A drops 34, 33, 29 and 22 %."), "{unnamed}");
    assert!(!said(overdrive("always")).contains("Counting"));
}

fn names(job: &Job) -> Vec<String> {
    let shelf = OnShelf::of(&Catalogue::built_in());
    let answers = analyse_job(job, shelf.shelves());
    answers.setups[0].setup.steps.iter().map(Step::name).collect()
}

/// Found from the shelf or standing on the sheet, a box is judged with the overdrive that stays behind it: 100 km/h are 13.889 m a turn of
/// 2 m, 833.3 turns a minute × 4.1 × 0.78 = 2,665 rpm in top; 1st stays 3.2 × 4.1 = 13.12. A top speed out of reach in 4th is reached
/// through the overdrive.
#[test]
fn the_finder_counts_an_overdrive() {
    let with = |stages: Vec<Stage>| {
        let mut job = car(Stage::default());
        job.setups[0].stages = stages;
        job.setups[0].gearbox.layout = Layout::TwoShaft;
        job.setups[0].gearbox.gears = ["32/10", "21/10", "14/10", "10/10"].map(String::from).to_vec();
        (job.pull.mass, job.pull.peak_torque, job.pull.limit) = (typed("900 kg"), typed("150 N·m"), typed("5,000"));
        job
    };
    let speed = metres_per_second(100.0 / 3.6);
    let measures = [Measure::CruiseRpm(speed), Measure::FirstOverall, Measure::TopSpeed, Measure::TimeToSpeed(speed)];
    let wishes = measures.map(|measure| Wish::prefer(measure, 0.0, 1.0, 1.0));
    let set =
        SetRow { place: Some(0), ratios: vec![3.2, 2.1, 1.4, 1.0], meshes: vec![1; 4], layout: Layout::TwoShaft, ..SetRow::default() };
    let axle = AxleRow { place: Some(0), ratio: 4.1, in_stock: true, is_fitted: false };
    let tyre = TyreRow { place: Some(0), circumference_m: 2.0, diameter_m: 2.0 / 3.05, in_stock: true };
    let pairs = vec![Pairs::new("", Vec::new())];
    let table =
        Arc::new(Table { sets: vec![set], axles: vec![axle], tyres: vec![tyre], pairs_in_stock: pairs.clone(), pairs, ..Table::default() });
    let figures = |job: &Job| {
        let shelf = OnShelf::of(&Catalogue::built_in());
        let answers = analyse_job(job, shelf.shelves());
        let given = Given::of(&answers.conditions, &answers.setups);
        let on_sheet = wishes.map(|wish| evaluate::figure(&answers.setups[0], &wish, &given).unwrap());
        let found = search(&table, &wishes, &given).results[0].figures.clone();
        for (found, on_sheet) in found.iter().zip(&on_sheet) {
            near(*found, *on_sheet, 1e-9);
        }
        on_sheet
    };
    let [without, with] = [figures(&with(Vec::new())), figures(&with(vec![overdrive("3 4")]))];
    near(without[0], 2_500.0 / 3.0 * 4.1, 1e-9);
    near(with[0], 2_500.0 / 3.0 * 4.1 * 0.78, 1e-9);
    near(with[1], 13.12, 1e-9);
    // 5,000 rpm in 4th are 2 × 5,000 / 60 / 4.1 = 40.65 m/s, and that is the end without an overdrive.
    near(without[2], 2.0 * 5_000.0 / 60.0 / 4.1, 1e-6);
    assert!(with[2] > without[2] + 1.0, "{with:?} after {without:?}");
    assert!(with[3] < without[3] + 1e-9, "more steps are never slower: {with:?} after {without:?}");
}

#[track_caller]
fn near(is: f64, by_hand: f64, within: f64) {
    assert!((is - by_hand).abs() <= within, "{is} is not {by_hand} ± {within}");
}

fn typed(text: &str) -> Typed {
    Typed::new(text, System::Metric)
}

/// A range box of 2.50, low in every gear: 1st low is 8.00, 2nd low 5.25, 3rd low 3.50, 1st 3.20, 4th low 2.50 …
#[test]
fn a_range_box_doubles_the_gears_in_the_order_of_their_ratios() {
    let range = Stage { kind: Chosen::of(StageKind::RangeBox), drive: "2.5".into(), ..Stage::default() };
    assert_eq!(names(&car(range)), ["1st low", "2nd low", "3rd low", "1st", "4th low", "2nd", "3rd", "4th"]);
    // A two-speed axle of 4.1 and 5.576 as a stage of 1.36 behind it: 2nd low axle 2.856 lies between 1st and 2nd.
    let axle = Stage { kind: Chosen::of(StageKind::TwoSpeedAxle), place: Place::BehindAxle, drive: "1.36".into(), ..Stage::default() };
    let job = car(axle);
    assert_eq!(names(&job), ["1st low axle", "1st", "2nd low axle", "2nd", "3rd low axle", "3rd", "4th low axle", "4th"]);
    // A transfer box of 1.15 and 2.35 counts its high range as rest: 4th is 1.15 × 4.1 = 4.715 overall.
    let transfer = Stage { kind: Chosen::of(StageKind::TransferBox), drive: "2.35".into(), rest: "1.15".into(), ..Stage::default() };
    check(&sheet(&car(transfer)), "gear_4.overall", "4.715");
}

/// The car: a dial that reads 6.5 % fast. An overdrive of 0.78 before which the drive gear sits leaves that as it is while it is
/// out, and makes it 1.0653 × 0.78 = 0.831, 16.9 % slow, when it is in; behind it, nothing changes.
#[test]
fn the_take_off_stands_before_or_behind_a_stage() {
    let mut job = demo::empty(System::Inch);
    let setup = &mut job.setups[0];
    setup.final_drive = "41/11".into();
    setup.tyre = Typed::new("165SR13", System::Inch);
    setup.speedo.gears = "8/21".into();
    setup.stages = vec![overdrive("3 4")];
    job.speedo.dial = Typed::new("1,184", System::Inch);
    let id = job.setups[0].id;
    let behind = sheet(&job);
    check(&behind, "speedometer.error_percent", "6.5 %");
    assert!(figures(&behind, 0).all(|figure| !figure.key.contains("stage_1_percent")));
    job.choose(Choice::Setup(id, SetupChoice::TakeOff), "gearbox");
    let before = sheet(&job);
    check(&before, "speedometer.error_percent", "6.5 %");
    check(&before, "speedometer.error_stage_1_percent", "−16.9 %");
    assert!(said(&before, "reads").contains("! driven from before the overdrive: it cannot read true both in and out"));
    // Always in, and driven from before it: 0.831 at all times; from behind it, as the axle alone has it.
    job.setups[0].stages[0].gears = "always".into();
    check(&sheet(&job), "speedometer.error_percent", "−16.9 %");
    job.choose(Choice::Setup(id, SetupChoice::TakeOff), "stage-1");
    check(&sheet(&job), "speedometer.error_percent", "6.5 %");
    // From a wheel: 888.3 turns a mile × 8 ÷ 21 = 338.4 of 1,184, 71.4 % slow.
    job.choose(Choice::Setup(id, SetupChoice::TakeOff), "wheel");
    check(&sheet(&job), "speedometer.error_percent", "−71.4 %");
}

/// A mesh passes on 98 %, the axle 96 %: direct 0.96; with the overdrive in 0.96 × 0.98 = 0.9408; 3rd through two meshes 0.96 × 0.98².
/// A transfer box's low range, two more meshes, is no step of a run: it is not shifted while the car moves.
#[test]
fn stages_cost_efficiency() {
    let driven = |stage: Stage| {
        let mut job = car(stage);
        job.pull.peak_torque = Typed::new("200", System::Metric);
        job.pull.peak_torque_at = Typed::new("3,000", System::Metric);
        job.pull.peak_power = Typed::new("80", System::Metric);
        job.pull.peak_power_at = Typed::new("5,000", System::Metric);
        let shelf = OnShelf::of(&Catalogue::built_in());
        let answers = analyse_job(&job, shelf.shelves());
        let thrust = answers.setups[0].pull().thrust.clone().unwrap();
        thrust.gears().iter().map(|gear| format!("{:.4}", gear.efficiency)).collect::<Vec<_>>()
    };
    assert_eq!(driven(overdrive("4")), ["0.9220", "0.9220", "0.9220", "0.9600", "0.9408"]);
    let hub = Stage { kind: Chosen::of(StageKind::HubReduction), place: Place::BehindAxle, drive: "2".into(), ..Stage::default() };
    assert_eq!(driven(hub), ["0.9035", "0.9035", "0.9035", "0.9408"]);
    let transfer = Stage { kind: Chosen::of(StageKind::TransferBox), drive: "2.35".into(), ..Stage::default() };
    assert_eq!(driven(transfer), ["0.9220", "0.9220", "0.9220", "0.9600"]);
}

#[test]
fn what_cannot_be_switched_is_said() {
    let problems = |stage: Stage| {
        let job = car(stage);
        let shelf = OnShelf::of(&Catalogue::built_in());
        analyse_job(&job, shelf.shelves()).setups[0].setup.problems.iter().map(InputProblem::sentence).collect::<Vec<_>>()
    };
    assert_eq!(problems(overdrive("3rd, 4th")), Vec::<String>::new());
    assert!(problems(overdrive("3 5"))[0].starts_with("“5” is no gear of this box, which has 4: this stage"));
    let hub = Stage { kind: Chosen::of(StageKind::HubReduction), drive: "2".into(), rest: "1.5".into(), ..Stage::default() };
    assert!(problems(hub)[0].contains("this stage is always in"));
    let newer = Stage { kind: Chosen::read("torque-splitter"), drive: "2".into(), ..Stage::default() };
    assert!(problems(newer)[0].contains("“torque-splitter” is not in the list"));
}

fn unit(switched: bool) -> impl Strategy<Value = Unit> {
    let ratio = || (50_i128..400).prop_map(|hundredths| Ratio::new(hundredths, 100));
    let switch = (ratio(), proptest::collection::vec((1_usize..9).prop_map(nth), 0..6));
    (ratio(), switch).prop_map(move |(drive, (rest, gears))| Unit {
        kind: None,
        place: Place::BeforeAxle,
        drive: FinalDrive::Plain(drive),
        switch: switched.then(|| Switch { rest, used_in: UsedIn::gears(&gears) }),
    })
}

fn ratios() -> impl Strategy<Value = Vec<Option<Ratio>>> {
    proptest::collection::vec((40_i128..500).prop_map(|hundredths| Some(Ratio::new(hundredths, 100))), 1..=8)
}

proptest! {
    /// Stages that are always in make no steps: the gears stay as they are, in their order.
    #[test]
    fn fixed_stages_leave_the_gears(gears in ratios(), stages in proptest::collection::vec(unit(false), 0..4)) {
        let made = steps(&gears, &stages);
        prop_assert_eq!(made.iter().map(|step| step.ratio).collect::<Vec<_>>(), gears);
        prop_assert!(made.iter().all(Step::is_at_rest));
    }

    /// Each gear has 2ⁿ steps for the n stages that can be used in it; every ratio is the gear's times the factor, and they fall.
    #[test]
    fn every_state_of_every_gear_is_a_step(gears in ratios(), stages in proptest::collection::vec(unit(true), 1..=MOST_SWITCHED)) {
        let made = steps(&gears, &stages);
        let usable = |gear: GearNumber| stages.iter().filter(|stage| stage.changes() && stage.switch.unwrap().used_in.contains(gear)).count();
        let many: usize = GearNumber::lowest(gears.len()).map(|gear| 1 << usable(gear)).sum();
        prop_assert_eq!(made.len(), many);
        for step in &made {
            prop_assert_eq!(step.ratio, step.gear.of(&gears).unwrap().map(|ratio| ratio * step.factor));
        }
        // Where none changes anything, the gears keep their order.
        let is_switched = stages.iter().any(layshaft::gearing::Stage::changes);
        prop_assert!(!is_switched || made.windows(2).all(|pair| pair[0].ratio >= pair[1].ratio));
        let keys: std::collections::BTreeSet<(GearNumber, Vec<usize>)> = made.iter().map(|step| (step.gear, step.stages_in.clone())).collect();
        prop_assert_eq!(keys.len(), many);
    }
}
