//! What holds of every picture at every width: nothing outside it, no label over another.
use crate::charts_demo::pictures;
use layshaft::chart::{
    DARK, LIGHT, Picture,
    scene::{Mark, Point, Rect, Scene},
    svg_text,
};

const WIDTHS: [u32; 9] = [320, 360, 390, 480, 600, 768, 1024, 1180, 1400];

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "heights of pictures are small and above zero")]
pub(crate) fn height(picture: &dyn Picture, width: u32) -> u32 {
    picture.height(f64::from(width)).ceil() as u32
}

fn scene(picture: &dyn Picture, width: u32) -> Scene {
    picture.scene(&LIGHT, (f64::from(width), f64::from(height(picture, width))))
}

/// Every place a mark touches, thickness aside.
fn reach(mark: &Mark) -> Vec<Point> {
    match mark {
        Mark::Rule { from, to, .. } => vec![*from, *to],
        Mark::Line { points, .. } => points.clone(),
        Mark::Fill { outline, .. } => outline.clone(),
        Mark::Disc { centre: (x, y), radius, .. } => vec![(x - radius, y - radius), (x + radius, y + radius)],
        Mark::Text(text) => text.bounds().corners(),
    }
}

#[test]
fn nothing_lies_outside_a_picture() {
    for (name, picture) in pictures() {
        for width in WIDTHS {
            let scene = scene(picture.as_ref(), width);
            let sheet = Rect::new(0.0, 0.0, scene.size.0, scene.size.1);
            for mark in &scene.marks {
                for (x, y) in reach(mark) {
                    assert!(sheet.holds(&Rect::new(x, y, x, y)), "{name} at {width}: {mark:?} reaches ({x}, {y})");
                }
            }
        }
    }
}

#[test]
fn no_label_lies_over_another() {
    for (name, picture) in pictures() {
        for width in WIDTHS {
            let scene = scene(picture.as_ref(), width);
            let texts: Vec<_> = scene.texts().collect();
            for (at, one) in texts.iter().enumerate() {
                for other in texts.iter().skip(at + 1) {
                    assert!(!one.bounds().meets(&other.bounds()), "{name} at {width}: {:?} lies over {:?}", one.words, other.words);
                }
            }
        }
    }
}

#[test]
fn pictures_can_be_looked_at() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("charts");
    std::fs::create_dir_all(&folder).expect("the target folder can be written");
    for (name, picture) in pictures() {
        for (theme, word) in [(&LIGHT, "light"), (&DARK, "dark")] {
            for width in [360, 1180] {
                let text = svg_text(picture.as_ref(), theme, (width, height(picture.as_ref(), width))).expect("writing a text cannot fail");
                std::fs::write(folder.join(format!("{name}-{width}-{word}.svg")), text).expect("the target folder can be written");
            }
        }
    }
}
