//! A whole line of a box as it is pasted: which gears it tells, what was taken, which fields it fills, and what is no line.

use layshaft::catalogue::Catalogue;
use layshaft::gearing::read::{self, line};
use layshaft::gearing::teeth::decimal;
use layshaft::gearing::{Gearbox, Layout};
use layshaft::job::{Field, Job, SetupField, demo};
use layshaft::problem::Explain;
use layshaft::units::System;
use proptest::prelude::*;

use crate::any_gearbox::printed_gearbox;
use crate::any_job::{figure, sheet};

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

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

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
