//! Texts of gears that cannot be read, or only with a remark, and the sentences they get.

use layshaft::gearing::geometry::Cut;
use layshaft::gearing::read::{self, GearTextError};
use layshaft::gearing::{FinalDrive, Gear, Layout, Mesh, Ratio};
use layshaft::problem::Problem;
use layshaft::units::System;

#[track_caller]
fn check(text: &str, sentence: &str) {
    let why = read::gear(text, Layout::InputReduced).unwrap_err();
    assert_eq!(Problem::stop("gear.1", &why).sentence(), sentence, "{text}");
}

/// A digit lost beside the slash is not another gear.
#[test]
fn a_slip_beside_the_mark_is_no_count() {
    for text in ["24/x9", "24//29", "36/x17", "24/ /29", "24--29", "24x/29", "24..29", "24/29/", "/24/29"] {
        check(
            text,
            &format!(
                "“{text}” is neither two tooth counts nor a printed ratio. Type both counts, such as 37/18, or the ratio as printed, such as 2.47."
            ),
        );
        assert!(read::counts(text).is_err() && read::drive(text).is_err() && read::constant(text, Layout::InputReduced).is_err());
    }
    for text in ["24/29", "24 / 29", "24 x 29", "24X29", "24:29", "24-29", "24 29", "24\t29"] {
        assert_eq!(read::counts(text), read::counts("24/29"), "{text}");
    }
}

#[test]
fn a_number_pad_has_no_slash() {
    let pair = Mesh::new(18, 37).unwrap();
    assert_eq!(read::gear("37.18", Layout::InputReduced), Ok(Gear::Mesh(pair)));
    assert_eq!(read::final_drive("43.11"), Ok(FinalDrive::Pair(Mesh::new(11, 43).unwrap())));
    assert_eq!(read::point_for_slash("37.18").unwrap().to_string(), "taken as 37/18");
    assert_eq!(read::point_for_slash("37/18"), None);
    // Between 8 and 20 it can be a ratio: of a gear it is asked, of an axle a point is a point.
    check("18.37", "“18.37” can be two tooth counts or one ratio. Type 18/37 for teeth or 18.37:1 for a ratio.");
    assert_eq!(read::final_drive("11.43"), Ok(FinalDrive::Plain(Ratio::new(1_143, 100))));
    assert_eq!(read::final_drive("11.43:1"), Ok(FinalDrive::Plain(Ratio::new(1_143, 100))));
    assert!(matches!(read::final_drive("11,43"), Err(GearTextError::PairOrRatio { .. })));
}

#[test]
fn a_count_that_no_gear_has() {
    check("37/7", "Gears of 8 to 150 teeth only; “7” was typed. Check the count.");
    check("37/1", "Gears of 8 to 150 teeth only; “1” was typed. Check the count.");
    check("37/151", "Gears of 8 to 150 teeth only; “151” was typed. Check the count.");
}

/// No sentence shows a dash where a figure should stand.
#[test]
fn no_pitch_is_a_pitch_of_nothing() {
    for (text, system) in [("0", System::Inch), ("0 DP", System::Metric), ("-0 DP", System::Inch)] {
        let why = Cut::read_module(text, system).unwrap_err();
        let said = Problem::stop("pitch", &why).sentence();
        assert!(said.contains("is neither a module nor a diametral pitch") && !said.contains('–'), "{said}");
    }
}
