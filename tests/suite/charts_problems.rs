//! Data no one wants to see drawn: nothing, not a number, beyond all measure. Every picture stays a picture.
use crate::charts_demo::{ladder, shift, three};
use crate::charts_demo_more::{dial, errors};
use layshaft::chart::{
    DARK, LIGHT, Picture,
    scene::{Mark, Point},
    svg_text,
};
use proptest::prelude::*;

const ODD: [f64; 9] = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, -3.0, 1e-300, 1e300, f64::MIN_POSITIVE];

fn places(mark: &Mark) -> Vec<Point> {
    match mark {
        Mark::Rule { from, to, .. } => vec![*from, *to],
        Mark::Line { points, .. } => points.clone(),
        Mark::Fill { outline, .. } => outline.clone(),
        Mark::Disc { centre, .. } => vec![*centre],
        Mark::Text(text) => vec![text.at],
    }
}

/// A picture can be drawn, told, read and listed at any size, and no place in it is not a number.
fn survives(what: &str, picture: &dyn Picture) {
    for size in [(0.0, 0.0), (1.0, 1.0), (360.0, 240.0), (1180.0, 400.0)] {
        for mark in &picture.scene(&LIGHT, size).marks {
            assert!(places(mark).iter().all(|(x, y)| x.is_finite() && y.is_finite()), "{what} at {size:?}: {mark:?}");
        }
    }
    for at in ODD {
        let _ = picture.read_out(at);
    }
    let _ = (picture.describe(), picture.table().csv(), picture.title());
    assert!(picture.stops().windows(2).all(|pair| pair[0] < pair[1]), "{what} stops in order");
    assert!(picture.height(360.0).is_finite());
    assert!(svg_text(picture, &DARK, (360, 300)).unwrap().ends_with("</svg>\n"), "{what} is written whole");
}

#[test]
fn pictures_of_nothing() {
    survives("ladder", &ladder(&[], None));
    survives("shift chart", &shift(&[], Some(0)));
    survives("gearless", &shift(&[("Empty", Vec::new(), 3.9)], None));
    let mut lines = dial();
    lines.series.clear();
    lines.bands.clear();
    lines.guides.clear();
    survives("lines", &lines);
    let mut bars = errors();
    bars.bars.clear();
    survives("bars", &bars);
}

#[test]
fn odd_figures_are_left_out() {
    for odd in ODD {
        let mut setups = three();
        setups[0].1[1] = odd;
        setups[2].2 = odd;
        survives("ladder", &ladder(&setups, None));
        survives("shift chart", &shift(&setups, None));
        for cruise in ODD {
            let mut chart = shift(&setups, None);
            chart.cruise_speed = Some(cruise);
            survives("cruise", &chart);
            chart.shift_rpm = cruise;
            survives("shift point", &chart);
        }
        let mut lines = dial();
        lines.series[1].points[3] = (odd, odd);
        lines.bands[0].upper[2] = (2.0, odd);
        lines.dots.push(layshaft::chart::lines::Dot { at: (odd, 4.0), name: "odd".to_owned(), hue: lines.series[0].hue });
        survives("lines", &lines);
        let mut bars = errors();
        bars.bars[0].value = odd;
        survives("bars", &bars);
    }
}

/// Names are people's: whatever they type is written as text, never as markup.
#[test]
fn a_name_cannot_become_markup() {
    let mut picture = errors();
    picture.bars[0].name = "<script>\"&'</script>".to_owned();
    let svg = svg_text(&picture, &LIGHT, (600, 260)).unwrap();
    assert!(svg.contains("&lt;script&gt;&quot;&amp;'&lt;/script&gt;") && !svg.contains("<script"));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    /// Any ladder of any setups at any width: inside the picture, labels apart.
    #[test]
    fn any_setups_make_a_readable_picture(
        boxes in prop::collection::vec((prop::collection::vec(0.4..6.0_f64, 1..9), 2.0..6.0_f64), 1..7),
        width in 320.0..1500.0_f64,
        focus in prop::option::of(0..6_usize),
    ) {
        let setups: Vec<_> = boxes.into_iter().map(|(ratios, axle)| ("Any", ratios, axle)).collect();
        let pictures: [Box<dyn Picture>; 2] = [Box::new(ladder(&setups, focus)), Box::new(shift(&setups, focus))];
        for picture in pictures {
            let scene = picture.scene(&LIGHT, (width, picture.height(width)));
            let texts: Vec<_> = scene.texts().collect();
            for (at, one) in texts.iter().enumerate() {
                let bounds = one.bounds();
                prop_assert!(bounds.left >= 0.0 && bounds.right <= width + 1e-6 && bounds.top >= 0.0, "{} at {:?}", one.words, bounds);
                for other in texts.iter().skip(at + 1) {
                    prop_assert!(!bounds.meets(&other.bounds()), "{:?} over {:?}", one.words, other.words);
                }
            }
        }
    }
}
