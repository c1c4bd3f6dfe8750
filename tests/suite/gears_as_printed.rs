//! Gears known by their printed ratio: everything that does not need teeth is worked out, what needs them says so.
//!
//! The demo's setup A is 30/25 with 37/18, 32/23, 28/27 and direct: 2.4667, 1.6696, 1.2444, 1.0000 (see `figures_by_hand`); a list
//! prints it as 2.47 1.67 1.24 1.00.

use layshaft::gearing::check::{ToothSums, doubts};
use layshaft::gearing::identify::Candidate;
use layshaft::gearing::identify::counts::{Counted, by_counts};
use layshaft::gearing::identify::printed::{by_printed, figures};
use layshaft::gearing::identify::reading::{Reading, by_eye, turns};
use layshaft::gearing::identify::turns::{Turned, by_turns};
use layshaft::gearing::mix::{Donor, MixError, Mixture, mix};
use layshaft::gearing::part::{Part, Shaft};
use layshaft::gearing::read;
use layshaft::gearing::speeds::meshes::meetings;
use layshaft::gearing::speeds::peaks::{highest_countershaft, highest_slip};
use layshaft::gearing::speeds::{Arrangement, ReverseMesh, Selected, Turning};
use layshaft::gearing::{Gear, GearNumber, Gearbox, Idler, Layout, Mesh, PrintedRatio, Ratio, Teeth};
use layshaft::job::{Job, demo};
use layshaft::problem::{Explain, Severity};
use layshaft::questions::setup::read_all;
use layshaft::sheet::{Piece, Sheet};
use layshaft::units::common::rpm;
use proptest::prelude::*;

use crate::any_gearbox::{built, printed_gearbox};
use crate::any_job::{figure, figures as figures_of, rows, sheet};
use crate::nth;

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
    assert_eq!(from_ratios(Layout::TwoShaft, None, &["3.31"]).ratio(nth(1)), Some(Ratio::new(-331, 100)));
}

fn speeds_of(gearbox: &Gearbox) -> (Turning, Arrangement) {
    let arrangement = Arrangement::usual(gearbox);
    (Turning::new(gearbox, &arrangement, Selected::Gear(nth(1))).unwrap(), arrangement)
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
    let found = by_turns(&[Turned { selected: Some(Selected::Gear(nth(1))), interval }], &candidates);
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
    assert_eq!(why, MixError::NotCounted { set: "listed".into(), gear: nth(1) });
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

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is asked of a box with printed ratios, what hangs on its uncounted gears is not told, and nothing panics.
    #[test]
    fn an_uncounted_box_is_never_told_more_than_is_known(gearbox in printed_gearbox()) {
        let arrangement = Arrangement::usual(&gearbox);
        prop_assert_eq!(gearbox.ratios().len(), gearbox.gears().len());
        prop_assert_eq!(highest_slip(&gearbox, &arrangement, rpm(5_000.0)), None);
        prop_assert_eq!(ToothSums::of(&gearbox).range(), None);
        let selected = gearbox.numbers().map(Selected::Gear).chain([Selected::Neutral, Selected::Reverse]);
        for turning in selected.filter_map(|selected| Turning::new(&gearbox, &arrangement, selected)) {
            for turns in &turning.parts {
                let is_printed = |gear: GearNumber| gear.of(gearbox.gears()).unwrap().printed().is_some();
                prop_assert!(!matches!(turns.part, Part::Driver(gear) | Part::Driven(gear) if is_printed(gear)));
            }
        }
    }
}
