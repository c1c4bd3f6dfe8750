//! The demo job's pictures as text: a change of look is seen in a review, line by line.
//!
//! A picture that was changed on purpose is looked at first (in cargo's folder for what tests write), then copied over the one in
//! `tests/suite/goldens`.
use crate::charts_demo::{ladder, shift, three};
use crate::charts_laws::height;
use layshaft::chart::{DARK, LIGHT, Picture, Theme, svg_text};
use layshaft::questions::swap::pictures::side;
use layshaft::questions::{Shelves, Source, analyse_job};
use layshaft::sheet::{Reader, Words};

#[track_caller]
fn check(name: &str, picture: &dyn Picture, theme: &Theme, width: u32, golden: &str) {
    let drawn = svg_text(picture, theme, (width, height(picture, width))).unwrap();
    if drawn == golden {
        return;
    }
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("charts");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join(name), &drawn).unwrap();
    let (line, (new, old)) = drawn.lines().zip(golden.lines()).enumerate().find(|(_, (new, old))| new != old).unwrap_or_default();
    assert_eq!(new, old, "{name} differs from line {}; the new one lies in {}", line + 1, folder.display());
    assert_eq!(drawn.len(), golden.len(), "{name} is longer or shorter; the new one lies in {}", folder.display());
}

#[test]
fn the_ladder_of_the_demo_job() {
    let picture = ladder(&three(), None);
    check("ladder-3-1180-light.svg", &picture, &LIGHT, 1180, include_str!("goldens/ladder-3-1180-light.svg"));
    check("ladder-3-360-dark.svg", &picture, &DARK, 360, include_str!("goldens/ladder-3-360-dark.svg"));
}

#[test]
fn the_shift_chart_of_the_demo_job() {
    let picture = shift(&three(), None);
    check("shift-3-1180-light.svg", &picture, &LIGHT, 1180, include_str!("goldens/shift-3-1180-light.svg"));
    check("shift-3-360-dark.svg", &picture, &DARK, 360, include_str!("goldens/shift-3-360-dark.svg"));
}

#[test]
fn two_boxes_in_side_view() {
    let job = crate::swap_by_hand::five_speed();
    let answers = analyse_job(&job, Shelves::default());
    let source = Source::new(&job, &answers, Shelves::default(), Reader { units: job.units, words: Words::Uk });
    let picture = side(source, Some(1)).unwrap();
    check("swap-side-720-light.svg", &picture, &LIGHT, 720, include_str!("goldens/swap-side-720-light.svg"));
}

/// Figures worked by hand from the tooth counts; the sentences must say the same as the picture.
///
/// A: 1st 30/25 × 37/18 = 2.467; 2nd 30/25 × 32/23 = 1.670; lost at 6,500: 6500 × (1 − 1.6696/2.4667) = 2,100.
/// Speed in 4th at 6,500: 6500/60 × 1.8788 / (43/11) = 52.07 m/s = 116.5 mph. At 70 mph (31.2928 m/s): 31.2928/1.8788 × 60 × 43/11 = 3,906.5 rpm.
#[test]
fn sentences_state_the_pictures_facts() {
    let said = ladder(&three(), None).describe().join("\n");
    for fact in ["A, As it came: 1st 2.467, 2nd 1.670", "1st to 2nd −2,100 rpm", "C, Five-speed, overdrive 5th: 1st 2.842", "5th 0.857"] {
        assert!(said.contains(fact), "{fact:?} is missing in {said}");
    }
    let said = shift(&three(), None).describe().join("\n");
    for fact in ["4th 116.5", "At 70 mph in 4th: 3,907 rpm", "5th 135.9 mph", "At 70 mph in 5th: 3,348 rpm", "2nd at 4,400"] {
        assert!(said.contains(fact), "{fact:?} is missing in {said}");
    }
}

#[test]
fn a_pointer_reads_every_gear() {
    let read = shift(&three(), None).read_out(70.0);
    assert_eq!(read.at, "70.0 mph");
    let of_a: Vec<String> = read.groups[0].readings.iter().map(|reading| format!("{} {}", reading.label, reading.value)).collect();
    // 70 mph in 4th: 3,906.5 rpm; times 1.24444, 1.66957 and 2.46667 in the lower gears.
    assert_eq!(of_a, ["1st 9,636 rpm", "2nd 6,522 rpm", "3rd 4,861 rpm", "4th 3,907 rpm"]);
    assert_eq!(read.groups[0].readings.iter().map(|reading| reading.is_beyond).collect::<Vec<_>>(), [true, true, false, false]);
    assert_eq!(read.groups[0].readings.iter().position(|reading| reading.stands_out), Some(2));
    let read = ladder(&three(), None).read_out(1.7);
    assert_eq!(read.groups[0].readings.iter().position(|reading| reading.stands_out), Some(1));
}
