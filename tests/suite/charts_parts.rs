//! The parts pictures are made of: dashes, round values, labels in a row, axes, widths of texts, tables.
use layshaft::chart::{
    dash::{dashes, length},
    face::{FIGURES_FAMILY, Face, TEXT_FAMILY},
    frame::Axis,
    place::{Wish, centres},
    readout::{Table, letters},
    rect::Rect,
    ticks::{decimals, ratio_steps, round_steps},
};
use plotters::style::{FontDesc, FontFamily, FontStyle, register_font};
use proptest::prelude::*;
use std::sync::Once;

/// The faces that travel with the project, for rasterisers.
pub(crate) fn register_faces() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let faces: [(&str, FontStyle, &'static [u8]); 4] = [
            (TEXT_FAMILY, FontStyle::Normal, include_bytes!("../fonts/barlow-semi-condensed-regular.ttf")),
            (TEXT_FAMILY, FontStyle::Bold, include_bytes!("../fonts/barlow-semi-condensed-semibold.ttf")),
            (FIGURES_FAMILY, FontStyle::Normal, include_bytes!("../fonts/red-hat-mono-regular.ttf")),
            (FIGURES_FAMILY, FontStyle::Bold, include_bytes!("../fonts/red-hat-mono-semibold.ttf")),
        ];
        for (family, style, bytes) in faces {
            assert!(register_font(family, style, bytes).is_ok(), "{family} is a font");
        }
    });
}

/// The table of widths is that of the font files: a rasteriser that reads them measures the same, kerning and rounding aside.
#[test]
fn texts_are_as_wide_as_their_faces_make_them() {
    register_faces();
    let faces = [Face::Text, Face::Strong, Face::Figures, Face::StrongFigures];
    let words = ["A and B, 4th, 116.5", "−2,100", "cruise at 70: top gear marked", "road speed, km/h", "0123456789 ~}|{ × ÷ ° · –"];
    for face in faces {
        for text in words {
            let size = 100.0;
            let style = if face.is_strong() { FontStyle::Bold } else { FontStyle::Normal };
            let font = FontDesc::new(FontFamily::Name(face.family()), size * face.line_per_size(), style);
            let (measured, _) = font.box_size(text).unwrap();
            let (ours, theirs) = (face.width_px(text, size), f64::from(measured));
            let kerning = 0.03 * theirs;
            assert!((ours - theirs).abs() <= kerning + 1.0, "{face:?} {text:?}: {ours} here, {theirs} by the font");
        }
    }
}

#[test]
fn a_line_without_a_usable_pattern_stays_whole() {
    let line = [(0.0, 0.0), (10.0, 0.0)];
    for pattern in [&[][..], &[0.0, 4.0], &[-1.0, 2.0], &[f64::NAN, 1.0], &[f64::INFINITY, 1.0]] {
        assert_eq!(dashes(&line, pattern), [line.to_vec()], "{pattern:?}");
    }
}

#[test]
fn dashes_run_on_round_a_corner() {
    // 3 on, 2 off along 4 + 4 pixels: on 0-3, off 3-5 round the corner at 4, on 5-8.
    let line = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0)];
    assert_eq!(dashes(&line, &[3.0, 2.0]), [vec![(0.0, 0.0), (3.0, 0.0)], vec![(4.0, 1.0), (4.0, 4.0)]]);
    // 6 on, 1 off: one dash bends with the line, on 0-6, off 6-7, on 7-8.
    assert_eq!(dashes(&line, &[6.0, 1.0]), [vec![(0.0, 0.0), (4.0, 0.0), (4.0, 2.0)], vec![(4.0, 3.0), (4.0, 4.0)]]);
}

#[test]
fn round_values_are_round() {
    assert_eq!(round_steps(0.0, 140.0, 15.0), (0..=14).map(|at| f64::from(at) * 10.0).collect::<Vec<_>>());
    assert_eq!(round_steps(3000.0, 7000.0, 6.0), [3000.0, 4000.0, 5000.0, 6000.0, 7000.0]);
    assert_eq!(round_steps(-0.3, 0.3, 4.0), [-0.2, 0.0, 0.2]);
    for (least, greatest) in [(1.0, 1.0), (2.0, 1.0), (f64::NAN, 1.0), (0.0, f64::INFINITY)] {
        assert!(round_steps(least, greatest, 5.0).is_empty(), "{least} to {greatest}");
    }
    assert_eq!([1000.0, 1.0, 0.5, 0.25, 0.02].map(decimals), [0, 0, 1, 2, 2]);
}

#[test]
fn letters_are_listed_as_people_do() {
    for (slots, words) in [(&[][..], ""), (&[0], "A"), (&[0, 1], "A and B"), (&[0, 1, 5], "A, B and F"), (&[9], "·")] {
        assert_eq!(letters(slots), words);
    }
}

#[test]
fn a_table_is_written_as_rfc_4180_wants_it() {
    let mut table = Table::new(["name", "ratio"]);
    table.rows.push(vec!["Close, \"quick\"".to_owned(), "2.132".to_owned()]);
    assert_eq!(table.csv(), "name,ratio\r\n\"Close, \"\"quick\"\"\",2.132\r\n");
}

#[test]
fn a_rectangle_cuts_lines_at_its_edges() {
    let square = Rect::new(0.0, 0.0, 10.0, 10.0);
    assert_eq!(square.clipped((-5.0, 5.0), (15.0, 5.0)), Some(((0.0, 5.0), (10.0, 5.0))));
    assert_eq!(square.clipped((-5.0, 11.0), (15.0, 11.0)), None);
    let broken = [(1.0, 1.0), (f64::NAN, 2.0), (3.0, 3.0), (4.0, 3.0)];
    assert_eq!(square.clipped_line(&broken), [vec![(3.0, 3.0), (4.0, 3.0)]]);
    let out_and_in = [(5.0, 5.0), (15.0, 5.0), (15.0, 8.0), (5.0, 8.0)];
    assert_eq!(square.clipped_line(&out_and_in), [vec![(5.0, 5.0), (10.0, 5.0)], vec![(10.0, 8.0), (5.0, 8.0)]]);
}

fn few() -> ProptestConfig {
    ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn dashes_draw_the_pattern_share_of_a_line(
        points in prop::collection::vec((0.0..500.0, 0.0..500.0), 2..12),
        pattern in prop::collection::vec(0.5..20.0, 1..5),
    ) {
        let (whole, drawn) = (length(&points), dashes(&points, &pattern).iter().map(|dash| length(dash)).sum::<f64>());
        // A pattern of odd length draws and leaves out in turn over two rounds.
        let twice: Vec<f64> = pattern.iter().chain(&pattern).copied().collect();
        let round: f64 = twice.iter().sum();
        let on: f64 = twice.iter().step_by(2).sum();
        // More rounds than a screen can show are drawn full.
        if whole / pattern.iter().sum::<f64>() > 5_000.0 {
            prop_assert_eq!(dashes(&points, &pattern), vec![points]);
            return Ok(());
        }
        prop_assert!(drawn <= whole + 1e-6);
        prop_assert!((drawn - whole * on / round).abs() <= round + 1e-6, "{} of {} drawn", drawn, whole);
        for dash in dashes(&points, &pattern) {
            prop_assert!(length(&dash) <= pattern.iter().copied().fold(0.0, f64::max) + 1e-6);
        }
    }

    #[test]
    fn labels_in_a_row_keep_order_and_distance(
        mut wishes in prop::collection::vec((0.0..1000.0_f64, 5.0..80.0_f64), 1..10),
    ) {
        wishes.sort_by(|a, b| a.0.total_cmp(&b.0));
        let wishes: Vec<Wish> = wishes.into_iter().map(|(centre, width)| Wish { centre, width }).collect();
        let total: f64 = wishes.iter().map(|wish| wish.width).sum();
        let Some(places) = centres(&wishes, 0.0, 1000.0) else { prop_assert!(total > 1000.0); return Ok(()) };
        let ends: Vec<(f64, f64)> = wishes.iter().zip(&places).map(|(wish, at)| (at - wish.width / 2.0, at + wish.width / 2.0)).collect();
        prop_assert!(ends.iter().all(|(left, right)| *left >= -1e-6 && *right <= 1000.0 + 1e-6), "{ends:?}");
        prop_assert!(ends.windows(2).all(|pair| pair[0].1 <= pair[1].0 + 1e-6), "{ends:?}");
        // Where nothing crowds, nothing moves.
        let is_free = wishes.windows(2).all(|pair| pair[0].centre + pair[0].width / 2.0 <= pair[1].centre - pair[1].width / 2.0)
            && wishes.first().is_some_and(|first| first.centre >= first.width / 2.0)
            && wishes.last().is_some_and(|last| last.centre + last.width / 2.0 <= 1000.0);
        if is_free {
            prop_assert!(wishes.iter().zip(&places).all(|(wish, at)| (wish.centre - at).abs() < 1e-6));
        }
    }

    #[test]
    fn an_axis_and_its_inverse_agree(least in 0.1..50.0, span in 0.1..900.0, share in 0.0..1.0) {
        for axis in [Axis::even((least, 40.0), (least + span, 700.0)), Axis::by_ratio((least + span, 40.0), (least, 700.0))] {
            let value = least + share * span;
            prop_assert!((axis.value(axis.place(value)) - value).abs() <= 1e-9 * (least + span));
        }
    }

    #[test]
    fn round_values_lie_inside_and_are_few(least in -1e6..1e6, span in 1e-3..1e6, most in 2.0..20.0) {
        let steps = round_steps(least, least + span, most);
        prop_assert!(steps.len() <= 21 && steps.windows(2).all(|pair| pair[0] < pair[1]));
        prop_assert!(steps.iter().all(|step| *step >= least - 1e-6 * span && *step <= least + span * (1.0 + 1e-6)));
    }

    #[test]
    fn round_ratios_stand_apart(least in 0.3..2.0, times in 1.05..12.0, width in 200.0..1400.0) {
        let axis = Axis::by_ratio((least * times, 0.0), (least, width));
        let steps = ratio_steps(least, least * times, 40.0, |ratio| axis.place(ratio));
        prop_assert!(steps.windows(2).all(|pair| (axis.place(pair[0]) - axis.place(pair[1])).abs() >= 40.0));
    }
}
