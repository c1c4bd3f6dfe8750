//! Gears known by their printed ratio: everything that does not need teeth is worked out, what needs them says so.
//!
//! The demo's setup A is 30/25 with 37/18, 32/23, 28/27 and direct: 2.4667, 1.6696, 1.2444, 1.0000 (see `figures_by_hand`); a list
//! prints it as 2.47 1.67 1.24 1.00.

use layshaft::catalogue::Catalogue;
use layshaft::gearing::check::{ToothSums, doubts};
use layshaft::gearing::identify::Candidate;
use layshaft::gearing::identify::counts::{Counted, by_counts};
use layshaft::gearing::identify::printed::{by_printed, figures};
use layshaft::gearing::identify::reading::{Reading, by_eye, turns};
use layshaft::gearing::identify::turns::{Turned, by_turns};
use layshaft::gearing::mix::{Donor, MixError, Mixture, mix};
use layshaft::gearing::part::{Part, Shaft};
use layshaft::gearing::read::{self, line};
use layshaft::gearing::speeds::meshes::meetings;
use layshaft::gearing::speeds::peaks::{highest_countershaft, highest_slip};
use layshaft::gearing::speeds::{Arrangement, ReverseMesh, Selected, Turning};
use layshaft::gearing::teeth::decimal;
use layshaft::gearing::{Gear, Gearbox, Idler, Layout, Mesh, PrintedRatio, Ratio, Teeth};
use layshaft::job::{Field, Job, SetupField, demo};
use layshaft::problem::{Explain, Severity};
use layshaft::questions::setup::read_all;
use layshaft::sheet::{Piece, Sheet};
use layshaft::units::System;
use layshaft::units::common::rpm;
use proptest::prelude::*;

use crate::any_gearbox::{built, printed_gearbox};
use crate::any_job::{figure, figures as figures_of, rows, sheet};

fn printed(text: &str) -> PrintedRatio {
    PrintedRatio::read(text).unwrap()
}

fn from_ratios(layout: Layout, constant: Option<(u16, u16)>, ratios: &[&str]) -> Gearbox {
    let constant = constant.and_then(|(driver, driven)| Mesh::new(driver, driven));
    Gearbox::new(layout, constant, ratios.iter().map(|text| read::gear(text, layout).unwrap()).collect(), None).unwrap()
}

#[test]
fn a_gear_is_read_as_teeth_or_as_its_ratio() {
    for layout in [Layout::InputReduced, Layout::OutputReduced, Layout::TwoShaft] {
        for (text, value, decimals) in
            [("2.47", 247, 2), ("2,47", 247, 2), ("2.47:1", 247, 2), (".85", 85, 2), ("3.625", 3_625, 3), ("12.5", 125, 1)]
        {
            let ratio = PrintedRatio { value: Ratio::new(value, 10_i128.pow(decimals)), decimals };
            assert_eq!(read::gear(text, layout), Ok(Gear::Printed(ratio)), "{text}");
        }
        // A whole number tells no ratio, and a figure that can be counts is asked about.
        assert!(read::gear("3", layout).is_err() && read::gear("12.50", layout).is_err() && read::gear("12,50", layout).is_err());
        assert_eq!(read::gear("12.50:1", layout), Ok(Gear::Printed(printed("12.50"))));
    }
    // Exactly one is direct where input and output are in line, and a pair of equal counts where they are not.
    assert_eq!(read::gear("1.000", Layout::InputReduced), Ok(Gear::Direct));
    assert_eq!(read::gear("1.00", Layout::TwoShaft), Ok(Gear::Printed(printed("1.00"))));
    assert_eq!(
        read::gear("abc", Layout::InputReduced).unwrap_err().what_to_do(),
        "type both counts, such as 37/18, or the ratio as printed, such as 2.47"
    );
}

/// By hand: half of the last digit of 2.47 is 0.005, 0.2 % of it; 2.465 is printed so and 2.475 is not.
#[test]
fn what_the_last_digit_leaves_open() {
    let ratio = printed("2.47");
    assert!((ratio.plus_minus() - 0.005 / 2.47).abs() < 1e-12);
    assert!(ratio.prints(Ratio::new(2_465, 1_000)) && !ratio.prints(Ratio::new(2_475, 1_000)));
    assert!(ratio.agrees_with(&printed("2.467")) && ratio.agrees_with(&printed("2.5")) && !ratio.agrees_with(&printed("2.48")));
}

#[test]
fn a_box_of_ratios_needs_no_constant_pair() {
    let gearbox = from_ratios(Layout::InputReduced, None, &["2.47", "1.67", "1.24", "1.00"]);
    assert_eq!(gearbox.ratios(), [(247, 100), (167, 100), (124, 100), (1, 1)].map(|(over, under)| Ratio::new(over, under)));
    assert!(!gearbox.is_counted());
    // One counted gear needs the pair it goes by; two shafts turn the output round.
    let counted = vec![Gear::Mesh(Mesh::new(18, 37).unwrap()), Gear::Printed(printed("1.67"))];
    assert!(Gearbox::new(Layout::InputReduced, None, counted, None).is_err());
    assert_eq!(from_ratios(Layout::TwoShaft, None, &["3.31"]).ratio(0), Some(Ratio::new(-331, 100)));
}

fn speeds_of(gearbox: &Gearbox) -> (Turning, Arrangement) {
    let arrangement = Arrangement::usual(gearbox);
    (Turning::new(gearbox, &arrangement, Selected::Gear(0)).unwrap(), arrangement)
}

#[test]
fn what_hangs_on_teeth_is_not_told_without_them() {
    let gearbox = from_ratios(Layout::InputReduced, None, &["2.47", "1.67", "1.24", "1.00"]);
    let (turning, arrangement) = speeds_of(&gearbox);
    assert_eq!(turning.part(Part::Shaft(Shaft::Countershaft)), None);
    assert_eq!(highest_countershaft(&gearbox, &arrangement, rpm(6_500.0)), None);
    assert_eq!(highest_slip(&gearbox, &arrangement, rpm(6_500.0)), None);
    assert_eq!(meetings(&gearbox, &turning, ReverseMesh::Sliding, turning.at_input(rpm(6_500.0))), []);
    assert_eq!(ToothSums::of(&gearbox).range(), None);
    assert_eq!(doubts(&gearbox), []);
    assert_eq!(Part::gears_of(&gearbox), []);
    // With the constant pair known the countershaft is too: 25 to 30, by hand 6,500 × 25/30 = 5,416.7 rpm, against the input.
    let gearbox = from_ratios(Layout::InputReduced, Some((25, 30)), &["2.47", "1.67", "1.24", "1.00"]);
    let (turning, _) = speeds_of(&gearbox);
    assert_eq!(turning.part(Part::Shaft(Shaft::Countershaft)).unwrap().speed.of_input, Ratio::new(-25, 30));
    assert_eq!(ToothSums::of(&gearbox).range(), None, "one pair of many is no sum of the box");
}

/// A set that is known by its ratios is compared by them, and never by teeth it may have.
#[test]
fn identified_by_ratio_and_not_by_count() {
    let counted = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (23, 32), (27, 28), (0, 0)], None);
    let listed = from_ratios(Layout::InputReduced, None, &["2.47", "1.67", "1.24", "1.00"]);
    let coarse = from_ratios(Layout::InputReduced, None, &["2.5", "1.7", "1.2", "1.0"]);
    let boxes = [("counted", &counted), ("listed", &listed), ("coarse", &coarse)];
    let candidates: Vec<Candidate<'_>> = boxes.iter().map(|(name, gearbox)| Candidate { name, gearbox }).collect();
    let fitting: Vec<usize> = by_printed(&figures("2.467 1.670 1.244 1.000").unwrap(), &candidates)
        .iter()
        .filter(|found| found.fits)
        .map(|found| found.candidate)
        .collect();
    assert_eq!(fitting.len(), 3, "{fitting:?}");
    let found = by_counts(&[Counted { at: Some(Part::ConstantDriver), teeth: Teeth::new(25).unwrap() }], &candidates);
    assert_eq!((found.fitting().collect::<Vec<_>>(), found.ranked.len()), (vec![0], 1));
    // 30 turns of the input gave 12 and a little over: 30/12.2 to 30/12.1 is 2.459 to 2.479.
    let interval = Reading::new(Ratio::from_integer(30), turns("12.15").unwrap(), by_eye()).unwrap().interval();
    let found = by_turns(&[Turned { selected: Some(Selected::Gear(0)), interval }], &candidates);
    assert_eq!(found.fitting().count(), 3);
    assert_eq!(found.next, None, "no turning tells a ratio from the one it was rounded to");
}

#[test]
fn parts_of_a_set_that_is_not_counted_cannot_be_mixed() {
    let counted = built(Layout::InputReduced, Some((25, 30)), &[(18, 37), (0, 0)], None);
    let listed = from_ratios(Layout::InputReduced, Some((25, 30)), &["2.47", "1.00"]);
    let donor = |name, gearbox| Donor { name, gearbox, cut: None };
    let gears = [donor("listed", &listed), donor("counted", &counted)];
    let mixture =
        Mixture { constant: donor("counted", &counted), cluster: donor("counted", &counted), gears: &gears, sum: None, centre: None };
    let why = mix(&mixture).unwrap_err();
    assert_eq!(why, MixError::NotCounted { set: "listed".into(), gear: 0 });
    assert_eq!(why.what(), "1st of listed is known by its ratio, not by its teeth");
}

fn reverse_of(text: &str, layout: Layout) -> Option<Ratio> {
    let gears = vec![Gear::Printed(printed("2.47"))];
    Gearbox::new(layout, None, gears, Some(read::reverse(text, Idler::Plain(None), layout).ok()?)).unwrap().reverse_ratio()
}

/// Reverse turns the output back: 2.79 as printed is −279/100 in line, and forwards over two shafts, whose forward gears turn back.
#[test]
fn reverse_is_read_as_its_ratio_too() {
    assert_eq!(reverse_of("2.79", Layout::InputReduced), Some(Ratio::new(-279, 100)));
    assert_eq!(reverse_of("2.79", Layout::TwoShaft), Some(Ratio::new(279, 100)));
    assert_eq!(reverse_of("33/16", Layout::InputReduced), None, "its gears need the constant pair");
    assert_eq!(reverse_of("direct", Layout::InputReduced), None);
    let mut job = as_listed();
    job.setups[0].gearbox.reverse = "2.79".into();
    assert_eq!(figure(&sheet(&job), 0, "reverse.ratio").text(), "2.79");
}

/// A line in the field of a gear fills the box, from that gear up where there is room.
#[test]
fn a_line_fills_the_fields() {
    let mut job = demo::empty(System::Inch);
    let id = job.setups[0].id;
    let field = |gear| Field::Setup(id, SetupField::Gear(gear));
    let filled = |job: &mut Job, gear, text: &str| {
        job.type_text(field(gear), text.into());
        job.fill_line(field(gear))
    };
    let told = filled(&mut job, 0, "24/29 36/17 31/22 27/26 direct");
    assert_eq!(told.as_deref(), Some("4 gears filled from the line; 24/29 taken as the constant pair"));
    let gearbox = |job: &Job| (job.setups[0].gearbox.constant.clone(), job.setups[0].gearbox.gears.join(" "));
    assert_eq!(gearbox(&job), ("24/29".into(), "36/17 31/22 27/26 direct".into()));
    // By hand: 29/24 × 36/17 = 1044/408 = 2.559.
    assert_eq!(figure(&sheet(&job), 0, "gear_1.ratio").text(), "2.559");
    // The constant pair is there, so a line of as many pairs as gears has none; a short line goes in from its field up.
    assert_eq!(filled(&mut job, 0, "37/18 32/23 28/27 direct").as_deref(), Some("4 gears filled from the line"));
    assert_eq!(filled(&mut job, 2, "27/26 direct").as_deref(), Some("2 gears filled from the line"));
    assert_eq!(gearbox(&job), ("24/29".into(), "37/18 32/23 27/26 direct".into()));
    assert_eq!(filled(&mut job, 0, "2.47 1.67 1.24 1.00 0.86 reverse 2.79").as_deref(), Some("5 gears filled from the line"));
    assert_eq!((gearbox(&job).1.as_str(), job.setups[0].gearbox.reverse.as_str()), ("2.47 1.67 1.24 1.00 0.86", "2.79"));
    // One gear is no line, nor is what cannot be read; both stay as typed.
    for text in ["37/18", "37.18", "2.47", "37/18 32//23", "gear"] {
        assert_eq!(filled(&mut job, 0, text), None, "{text}");
        assert_eq!(job.setups[0].gearbox.gears[0], text);
    }
}

/// A point between two counts that are no ratio is taken for a slash, and what was taken is said; the text stays.
#[test]
fn what_was_taken_for_a_slash_is_said() {
    let mut job = demo::job();
    let id = job.setups[0].id;
    for (field, text, taken) in [
        (SetupField::Gear(0), "37.18", Some("taken as 37/18")),
        (SetupField::Gear(0), "37/18", None),
        (SetupField::Gear(0), "2.47", None),
        (SetupField::Constant, "25.30", Some("taken as 25/30")),
        (SetupField::Reverse, "33.16", Some("taken as 33/16")),
        (SetupField::FinalDrive, "43.11", Some("taken as 43/11")),
        (SetupField::FinalDrive, "3.91", None),
        (SetupField::Name, "37.18", None),
    ] {
        let field = Field::Setup(id, field);
        job.type_text(field, text.into());
        assert_eq!((job.taken(field).as_deref(), job.text(field)), (taken, Some(text)), "{text}");
    }
    assert_eq!(figure(&sheet(&job), 0, "constant.ratio").text(), "1.200");
}

/// A file of ratios is a gear set as one of counts is, and so is a whole line in the column of 1st.
#[test]
fn ratios_in_a_file() {
    let ratios = |text: &str| {
        let plan = Catalogue::empty().plan(text).unwrap();
        assert!(plan.refused.is_empty(), "{:?}", plan.refused);
        plan.new[0]
            .entry
            .gearbox()
            .unwrap()
            .ratios()
            .into_iter()
            .map(|ratio| format!("{:.3}", decimal(ratio)))
            .collect::<Vec<_>>()
            .join(" ")
    };
    assert_eq!(ratios("name,layout,constant,gear_1,gear_2,gear_3\nList,input-reduced,,2.47,1.67,1.00\n"), "2.470 1.670 1.000");
    assert_eq!(ratios("name,layout,constant,gear_1\nList,input-reduced,,2.47 1.67 1.24 1.00\n"), "2.470 1.670 1.240 1.000");
    // 29/24 × 36/17, 31/22 and 27/26: by hand 2.559, 1.703, 1.255.
    assert_eq!(ratios("name,layout,constant,gear_1\nCounted,input-reduced,,24/29 36/17 31/22 27/26 direct\n"), "2.559 1.703 1.255 1.000");
    assert_eq!(ratios("name,layout,constant,gear_1\nCounted,input-reduced,24/29,36/17 31/22 27/26 direct\n"), "2.559 1.703 1.255 1.000");
}

fn as_listed() -> Job {
    let mut job = demo::job();
    let gearbox = &mut job.setups[0].gearbox;
    gearbox.constant = String::new();
    gearbox.gears = ["2.47", "1.67", "1.24", "1.00"].map(str::to_owned).into();
    gearbox.reverse = String::new();
    gearbox.idler = String::new();
    job
}

/// What is absent in a cell of setup A.
fn absent(sheet: &Sheet, row: &str) -> Vec<String> {
    let cell = &rows(sheet).find(|found| found.key == row).unwrap().cells[0];
    cell.pieces().filter_map(|piece| if let Piece::Absent(text) = piece { Some(text.clone()) } else { None }).collect()
}

fn words(sheet: &Sheet, row: &str) -> String {
    let cell = &rows(sheet).find(|found| found.key == row).unwrap().cells[0];
    cell.pieces().filter_map(|piece| if let Piece::Words(text) = piece { Some(text.clone()) } else { None }).collect::<Vec<_>>().join(" | ")
}

/// By hand: 2.47 × 43/11 = 9.6555; 6,500 rpm: 390,000 ÷ 9.6555 ÷ 856.5808 = 47.155 mph; the drop 1 − 1.67/2.47 = 32.4 %;
/// top gear is the axle alone, 116.472 mph.
#[test]
fn a_sheet_from_ratios() {
    let job = as_listed();
    assert_eq!(read_all(&job)[0].problems.iter().filter(|problem| problem.severity == Severity::Stop).count(), 0);
    let sheet = sheet(&job);
    for (key, shown) in [
        ("gear_1.ratio", "2.47"),
        ("gear_1.overall", "9.66"),
        ("gear_1.at_shift_mph", "47.2 mph"),
        ("gear_1.drop_percent", "32 %"),
        ("gear_4.at_shift_mph", "116.5 mph"),
        ("spread", "2.47"),
    ] {
        assert_eq!(figure(&sheet, 0, key).text(), shown, "{key}");
    }
    assert!((figure(&sheet, 0, "gear_1.at_shift_mph").value - 390_000.0 / (9.655_455 * 856.580_8)).abs() < 1e-3);
    // Its ratio and its road speed both say what the last digit leaves open.
    let said = rows(&sheet).filter(|row| row.key == "gear-1" && format!("{:?}", row.cells[0]).contains("±0.2 %")).count();
    assert_eq!(said, 2);
    for row in ["sums", "cluster", "fastest", "idle", "meshes", "hunting", "thrust"] {
        assert_eq!(absent(&sheet, row), ["needs tooth counts"], "{row}");
    }
    assert!(words(&sheet, "cruise-meshes").contains("ring and pinion"));
    let keys: Vec<&str> = figures_of(&sheet, 0).map(|figure| figure.key.as_str()).collect();
    assert!(!keys.iter().any(|key| key.contains("idle") || key.contains("countershaft") || key.contains("tooth_sum")), "{keys:?}");
    // The others stand as before.
    assert_eq!(figure(&sheet, 1, "first_overall").text(), "8.33");
}

#[track_caller]
fn pasted(text: &str, layout: Layout, constant: Option<&str>, gears: &[&str], taken: &[&str]) {
    let found = line::line(text, layout, None).unwrap();
    assert_eq!((found.constant.as_deref(), found.gears), (constant, gears.iter().map(|gear| (*gear).to_owned()).collect()), "{text}");
    assert_eq!(found.taken.iter().map(line::Taken::words).collect::<Vec<_>>(), taken, "{text}");
}

#[test]
fn a_whole_line_of_ratios() {
    let four = ["2.47", "1.67", "1.24", "1.00"];
    for text in [
        "2.47 1.67 1.24 1.00",
        "2.47, 1.67, 1.24, 1.00",
        "2.47,1.67,1.24,1.00",
        "2.47\t1.67\t1.24\t1.00",
        "2.47\n1.67\n1.24\n1.00\n",
        "1st: 2.47\n2nd: 1.67\n3rd: 1.24\n4th: 1.00",
        "1st 2.47; 2nd 1.67; 3rd 1.24; 4th 1.00",
        "1st gear 2.47 | 2nd gear 1.67 | 3rd gear 1.24 | top 1.00",
        "1: 2.47 2: 1.67 3: 1.24 4: 1.00",
        "1) 2.47 2) 1.67 3) 1.24 4) 1.00",
        "1. 2.47 2. 1.67 3. 1.24 4. 1.00",
        "First = 2.47 Second = 1.67 Third = 1.24 Fourth = 1.00",
        "I: 2.47 II: 1.67 III: 1.24 IV: 1.00",
        "1st:2.47,2nd:1.67,3rd:1.24,4th:1.00",
    ] {
        pasted(text, Layout::InputReduced, None, &four, &[]);
        pasted(text, Layout::TwoShaft, None, &four, &[]);
    }
    pasted("2,47 1,67 1,24 1,00", Layout::InputReduced, None, &["2.47", "1.67", "1.24", "1.00"], &[]);
    pasted("2,47; 1,67; 1,24; 1,00", Layout::InputReduced, None, &["2.47", "1.67", "1.24", "1.00"], &[]);
    pasted("2.47:1 1.67:1 1.24:1 1.00:1", Layout::InputReduced, None, &["2.47:1", "1.67:1", "1.24:1", "1.00:1"], &[]);
    pasted("2.47 : 1 1.67 : 1", Layout::InputReduced, None, &["2.47:1", "1.67:1"], &[]);
    pasted("1.00 1.24 1.67 2.47", Layout::InputReduced, None, &four, &["listed from top gear down: turned round"]);
    pasted("2.47 1.67 axle 4.1", Layout::InputReduced, None, &["2.47", "1.67"], &["“axle 4.1” left out"]);
}

/// 24/29 with 36/17, 31/22 and 27/26: by hand 29/24 × 36/17 = 2.559, 1.703, 1.255.
#[test]
fn a_whole_line_of_counts() {
    let (gears, said) = (["36/17", "31/22", "27/26", "direct"], ["24/29 taken as the constant pair"]);
    for text in [
        "24/29 36/17 31/22 27/26 direct",
        "24/29, 36/17, 31/22, 27/26, direct",
        "24/29,36/17,31/22,27/26,direct",
        "24 / 29 36 / 17 31 / 22 27 / 26 direct",
        "24/29\n36/17\n31/22\n27/26\ndirect",
    ] {
        pasted(text, Layout::InputReduced, Some("24/29"), &gears, &said);
    }
    pasted("constant 24/29 1st 36/17 2nd 31/22 3rd 27/26 4th direct", Layout::InputReduced, Some("24/29"), &gears, &[]);
    pasted("24 29 36 17 31 22 27 26 direct", Layout::InputReduced, Some("24/29"), &gears, &["counts taken two by two", said[0]]);
    // A pair that does not reduce is no constant pair, and 36/17 would speed the countershaft up.
    pasted("36/17 31/22 27/26 direct", Layout::InputReduced, None, &gears, &[]);
    pasted("36/17 31/22 27/26 23/30", Layout::TwoShaft, None, &["36/17", "31/22", "27/26", "23/30"], &[]);
    let found = line::line("24/29 36/17 31/22 27/26 direct reverse 33/16", Layout::InputReduced, None).unwrap();
    assert_eq!((found.reverse.as_deref(), found.gears.len()), (Some("33/16"), 4));
    // Where the box has as many gears as the line has items, there is no constant pair among them.
    let found = line::line("36/17 31/22 27/26 direct", Layout::InputReduced, Some(4)).unwrap();
    assert_eq!((found.constant, found.gears.len()), (None, 4));
    let found = line::line("24/29 36/17 31/22 27/26 direct", Layout::InputReduced, Some(4)).unwrap();
    assert_eq!((found.constant.as_deref(), found.gears.len()), (Some("24/29"), 4));
}

#[test]
fn lines_that_are_none() {
    let refused = |text: &str| {
        let why = line::line(text, Layout::InputReduced, None).unwrap_err();
        format!("{}: {}", why.what(), why.what_to_do())
    };
    let example = "paste the gears from the lowest up, such as 2.47 1.67 1.24 1.00 or 24/29 36/17 31/22 27/26 direct";
    assert_eq!(refused(""), format!("no gears are given: {example}"));
    assert_eq!(refused("1st:"), format!("“1st” is no gear: {example}"));
    assert_eq!(
        refused("2.47 36//17"),
        "2nd: “36//17” is neither two tooth counts nor a printed ratio: type both counts, such as 37/18, or the ratio as printed, such as 2.47"
    );
    assert_eq!(
        refused("1.9 1.8 1.7 1.6 1.5 1.4 1.3 1.2 1.1"),
        "9 gears are more than a box can have here: paste the forward gears only, at most 8"
    );
    assert_eq!(refused("36/7 31/22 27/26"), "1st: gears of 8 to 150 teeth only; “7” was typed: check the count");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is asked of a box with printed ratios, what hangs on its uncounted gears is not told, and nothing panics.
    #[test]
    fn an_uncounted_box_is_never_told_more_than_is_known(gearbox in printed_gearbox()) {
        let arrangement = Arrangement::usual(&gearbox);
        prop_assert_eq!(gearbox.ratios().len(), gearbox.gears().len());
        prop_assert_eq!(highest_slip(&gearbox, &arrangement, rpm(5_000.0)), None);
        prop_assert_eq!(ToothSums::of(&gearbox).range(), None);
        let selected = (0..gearbox.gears().len()).map(Selected::Gear).chain([Selected::Neutral, Selected::Reverse]);
        for turning in selected.filter_map(|selected| Turning::new(&gearbox, &arrangement, selected)) {
            for turns in &turning.parts {
                let is_printed = |gear: usize| gearbox.gears()[gear].printed().is_some();
                prop_assert!(!matches!(turns.part, Part::Driver(gear) | Part::Driven(gear) if is_printed(gear)));
            }
        }
    }

    /// A line written from a box fills the fields with that box.
    #[test]
    fn a_written_line_is_read_again(gearbox in printed_gearbox(), mark in "[ \\t\\n;|]") {
        let layout = gearbox.layout();
        let gears: Vec<String> = gearbox.gears().iter().map(|gear| layshaft::gearing::write::gear(*gear, layout)).collect();
        let found = line::line(&gears.join(&mark), layout, Some(gears.len())).unwrap();
        let turned = found.taken.contains(&line::Taken::TurnedRound);
        let expected: Vec<String> = if turned { gears.into_iter().rev().collect() } else { gears };
        prop_assert_eq!((found.constant, found.gears), (None, expected));
    }

    #[test]
    fn any_text_is_a_line_or_a_sentence(text in "([0-9./,:x×-]{0,6}|1st|2nd:|direct|reverse|constant|[a-z]{1,4}|[ \\n\\t;]|\\PC){0,40}") {
        for layout in Layout::ALL {
            match line::line(&text, layout, None) {
                Ok(found) => {
                    prop_assert!((1..=Gearbox::MOST_GEARS).contains(&found.gears.len()));
                    prop_assert!(found.gears.iter().all(|gear| read::gear(gear, layout).is_ok()));
                    prop_assert!(found.taken.iter().all(|taken| !taken.words().is_empty()));
                }
                Err(why) => prop_assert!(!why.what().is_empty() && !why.what_to_do().is_empty()),
            }
        }
    }
}
