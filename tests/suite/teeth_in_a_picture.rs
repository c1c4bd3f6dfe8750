//! Teeth counted in a rendered picture with their marks, and pictures that show nothing: one count takes some seconds here. The three hundred
//! pictures by which the limits of sureness are judged are `cargo run --profile bench --package measurements --bin counting`.

use std::f64::consts::TAU;

use layshaft::counting::{Circle, CountError, Counted, Counting, Grey};
use layshaft::problem::Explain;
use layshaft::questions::measure::counted::{refused, says, told};
use layshaft::sliced::Sliced;

use super::any_photograph::{Level, Made, made};

/// Pictures of gears with few teeth are counted soonest.
const FOURTEEN: u64 = 300_006;

fn counting(made: &Made) -> Counting {
    let (x, y, radius) = made.placed;
    Counting::new(&Grey::new(made.width, made.values.clone()), Circle { x, y, radius }).unwrap()
}

/// Counts a step at a time, as a page does, and looks that the progress told ends where it said.
fn counted(made: &Made) -> Result<Counted, CountError> {
    let mut counting = counting(made);
    loop {
        let progress = counting.advance(1);
        assert!(progress.done <= progress.of, "{progress:?}");
        assert_eq!(progress.is_finished, counting.found().is_some());
        if let Some(found) = counting.found() {
            return found;
        }
    }
}

#[test]
fn a_gear_is_counted_and_every_tooth_marked() {
    let made = made(Level::Easy, FOURTEEN);
    let found = counted(&made).unwrap();
    assert_eq!((Some(found.teeth), found.is_sure()), (made.teeth, true), "{}: {:?}", made.what, found.evidence);

    // The marks stand just outside the tips, a tooth's pitch of 360° / 14 from one another.
    let marks = found.marks(found.teeth);
    let (x, y, radius) = made.placed;
    assert_eq!((marks.len(), marks.iter().all(|mark| mark.is_seen)), (14, true));
    let mut turns: Vec<f64> = marks.iter().map(|mark| (mark.y - y).atan2(mark.x - x).rem_euclid(TAU)).collect();
    turns.sort_by(f64::total_cmp);
    for two in turns.windows(2) {
        assert!((two[1] - two[0] - TAU / 14.0).abs() < 0.06, "{turns:?}");
    }
    for mark in &marks {
        let out = (mark.x - x).hypot(mark.y - y) / radius;
        assert!((0.95..1.15).contains(&out), "{out}");
    }

    // The person's number wins, and has marks of its own.
    let told = told(&found, None);
    assert_eq!(says(&told, &marks, None), "14 teeth: every tooth seen.");
    assert_eq!(says(&told, &found.marks(15), Some(15)), "15 teeth, as you say. The picture says 14.");
    assert_eq!(found.marks(15).len(), 15);
}

#[test]
fn a_picture_that_shows_nothing_says_what_to_do() {
    let even = Grey::new(200, vec![90.0; 200 * 200]);
    let circle = Circle { x: 100.0, y: 100.0, radius: 70.0 };
    let cases = [
        (circle, "The picture is too dark or too even to show teeth. Lay the gear on paper"),
        (Circle { radius: 12.0, ..circle }, "The circle is only 24 pixels across. Go nearer"),
        (Circle { x: 10.0, ..circle }, "Much of the circle lies outside the picture. Photograph the whole gear"),
        (Circle { radius: f64::NAN, ..circle }, "The circle is only 0 pixels across."),
    ];
    for (circle, says) in cases {
        let why = Counting::new(&even, circle).unwrap_err();
        assert!(refused(&why).starts_with(says), "{}", refused(&why));
    }
    assert_eq!(CountError::NoTeeth.what(), "no teeth are found around the circle");
    assert!(Counting::new(&Grey::new(0, Vec::new()), circle).is_err());
}

/// By hand, with the weights 0.299, 0.587 and 0.114 of Recommendation ITU-R BT.601-7: red alone is 76.2, green 149.7, blue 29.1.
#[test]
fn colours_are_as_bright_as_the_eye_has_them() {
    let bytes = [[255, 0, 0, 255], [0, 255, 0, 255], [0, 0, 255, 255], [255, 255, 255, 255]].concat();
    let grey = Grey::of_rgba(4, &bytes);
    assert_eq!((grey.width(), grey.height()), (4, 1));
    for (value, by_hand) in grey.values().iter().zip([76.245, 149.685, 29.07, 255.0]) {
        assert!((value - by_hand).abs() < 1e-9, "{value}");
    }
}
