//! The labels of a picture of lines: each on its line where the picture is free.
use super::{At, Band, Guide, Lines, Series};
use crate::chart::{
    face::Face,
    frame::{Frame, Scale},
    palette::{Colour, Hue, Theme, leading},
    place::Taken,
    readout::{groups, letters, short_letters},
    scene::{Anchor, Point, Rect, Scene, Text},
};

pub(super) fn draw(lines: &Lines, scene: &mut Scene, theme: &Theme, frame: &Frame) {
    let scale = Scale::of(scene.size.0);
    let inside = Rect::new(frame.plot.left + 2.0, 0.0, scene.size.0, frame.plot.bottom - 1.0);
    let mut taken = Taken::new(inside);
    taken.keep(frame.title_box());
    for series in &lines.series {
        series.pieces(frame).iter().for_each(|piece| taken.keep_off(piece));
    }
    for (from, to) in lines.guides.iter().filter_map(|guide| guide.ends(frame)) {
        taken.keep_off(&[from, to]);
    }
    let mut labels: Vec<Text> = Vec::new();
    draw_dots(lines, scene, theme, frame, &mut taken, &mut labels);
    name_all_series(lines, theme, frame, scale, &mut taken, &mut labels);
    for guide in &lines.guides {
        let forms = guide_forms(guide, frame, scale, theme.hue(guide.hue, lines.focus));
        labels.extend(taken.choose(forms));
    }
    for name in name_bands(lines, theme, frame, scale, &mut taken) {
        scene.text(name);
    }
    for label in labels {
        // On a shaded band a cover of the sheet's colour would show.
        if lines.bands.is_empty() {
            scene.text_over(label, theme.sheet);
        } else {
            scene.text(label);
        }
    }
}

/// Every series that finds a free place is named; a setup without any name takes one across lines.
fn name_all_series(lines: &Lines, theme: &Theme, frame: &Frame, scale: Scale, taken: &mut Taken, labels: &mut Vec<Text>) {
    let mut named: Vec<Hue> = Vec::new();
    let mut left: Vec<(Hue, Vec<Text>)> = Vec::new();
    for group in together(&lines.series) {
        let Some(first) = group.first() else { continue };
        let forms = series_forms(lines, &group, theme, frame, scale);
        match taken.choose_free(forms.clone()) {
            Some(label) => {
                labels.push(label);
                named.extend(group.iter().map(|series| series.hue));
            }
            None => left.push((first.hue, forms)),
        }
    }
    for (hue, forms) in left {
        if !named.contains(&hue) {
            labels.extend(taken.choose(forms));
            named.push(hue);
        }
    }
}

fn draw_dots(lines: &Lines, scene: &mut Scene, theme: &Theme, frame: &Frame, taken: &mut Taken, labels: &mut Vec<Text>) {
    let scale = Scale::of(scene.size.0);
    let shown = lines.dots.iter().map(|dot| (dot, frame.place(dot.at.0, dot.at.1)));
    let shown: Vec<_> = shown.filter(|(_, (x, y))| frame.plot.holds(&Rect::new(*x, *y, *x, *y))).collect();
    for (dot, at) in &shown {
        let colour = theme.hue(dot.hue, lines.focus);
        scene.disc(*at, 6.0, theme.sheet);
        scene.disc(*at, 4.5, colour);
        taken.keep(Rect::new(at.0, at.1, at.0, at.1).grown(6.0));
    }
    for (dot, at) in shown {
        labels.extend(taken.choose(about(at, &dot.name, 10.0, scale, theme.hue(dot.hue, lines.focus))));
    }
}

/// Lines of several setups that lie on one another, under the same name.
fn together(series: &[Series]) -> Vec<Vec<&Series>> {
    let close = |a: f64, b: f64| (a - b).abs() <= 1e-4 * a.abs().max(b.abs());
    let alike = |a: &Series, b: &Series| {
        let same_points = || a.points.iter().zip(&b.points).all(|(one, other)| close(one.0, other.0) && close(one.1, other.1));
        a.name == b.name && a.hue.slot().is_some() && b.hue.slot().is_some() && a.points.len() == b.points.len() && same_points()
    };
    groups(series, alike)
}

fn series_forms(lines: &Lines, group: &[&Series], theme: &Theme, frame: &Frame, scale: Scale) -> Vec<Text> {
    let Some(first) = group.first() else { return Vec::new() };
    let slots: Vec<usize> = group.iter().filter_map(|series| series.hue.slot()).collect();
    let forms = match (slots.is_empty(), first.name.is_empty()) {
        (true, _) => vec![first.name.clone()],
        (false, true) => vec![letters(&slots), short_letters(&slots)],
        (false, false) => vec![format!("{}, {}", letters(&slots), first.name), format!("{} {}", short_letters(&slots), first.name)],
    };
    let hue = leading(&slots, lines.focus).map_or(first.hue, Hue::Setup);
    let colour = theme.hue(hue, lines.focus);
    let places = along_line(&first.pieces(frame));
    forms.iter().flat_map(|words| places.iter().flat_map(move |at| about(*at, words, 7.0, scale, colour))).collect()
}

/// Places on a line where its label may stand: its end, its highest point, then spread along it.
fn along_line(pieces: &[Vec<Point>]) -> Vec<Point> {
    let points: Vec<Point> = pieces.iter().flatten().copied().collect();
    let ends = points.last().copied().into_iter();
    let highest = points.iter().min_by(|a, b| a.1.total_cmp(&b.1)).copied();
    let spread = (1..8).filter_map(|part| points.get(points.len() * (8 - part) / 8).copied());
    let halfway = points
        .windows(2)
        .filter_map(|pair| if let [a, b] = pair { Some((f64::midpoint(a.0, b.0), f64::midpoint(a.1, b.1))) } else { None });
    let halfway: Vec<Point> = if points.len() < 12 { halfway.collect() } else { Vec::new() };
    ends.chain(highest).chain(spread).chain(halfway).collect()
}

/// A label above, below and either side of a place, by `off` pixels.
fn about((x, y): Point, words: &str, off: f64, scale: Scale, colour: Colour) -> Vec<Text> {
    let size = scale.words_px;
    let (above, below, middle) = (y - off, y + off + size * 0.74, y + size * 0.34);
    let places = [
        (Anchor::Start, x + off, middle),
        (Anchor::End, x + 4.0, above),
        (Anchor::Middle, x, above),
        (Anchor::Start, x - 4.0, above),
        (Anchor::End, x - off, middle),
        (Anchor::End, x, below),
        (Anchor::Start, x, below),
        (Anchor::Middle, x, below),
    ];
    places.into_iter().map(|(anchor, x, y)| Text::new(words, (x, y), Face::Strong, size, colour).anchored(anchor)).collect()
}

fn guide_forms(guide: &Guide, frame: &Frame, scale: Scale, colour: Colour) -> Vec<Text> {
    let Some((from, to)) = guide.ends(frame) else { return Vec::new() };
    let size = scale.words_px;
    let places: Vec<(Anchor, f64, f64)> = match guide.at {
        At::X(_) => [to.1 - 8.0, from.1 + size, f64::midpoint(from.1, to.1), from.1 - 6.0]
            .into_iter()
            .flat_map(|y| [(Anchor::Start, from.0 + 7.0, y), (Anchor::End, from.0 - 7.0, y)])
            .collect(),
        At::Y(_) => [(Anchor::End, to.0 - 4.0), (Anchor::Start, from.0 + 6.0), (Anchor::Middle, f64::midpoint(from.0, to.0))]
            .into_iter()
            .flat_map(|(anchor, x)| [(anchor, x, from.1 - 6.0), (anchor, x, from.1 + size + 1.0)])
            .collect(),
    };
    places.into_iter().map(|(anchor, x, y)| Text::new(&guide.name, (x, y), Face::Text, size, colour).anchored(anchor)).collect()
}

/// A band's name inside it, towards its end, where it is high enough; else above it.
fn name_bands(lines: &Lines, theme: &Theme, frame: &Frame, scale: Scale, taken: &mut Taken) -> Vec<Text> {
    let name_band = |band: &Band| {
        let colour = theme.hue(band.hue, lines.focus);
        let edge = |points: &Vec<(f64, f64)>| Series { hue: band.hue, name: String::new(), points: points.clone() };
        let (lower, upper) = (edge(&band.lower), edge(&band.upper));
        let heights = (1..=8).rev().filter_map(|part| {
            let x = frame.plot.left + frame.plot.width() * f64::from(part) / 9.0;
            let value = frame.x.value(x);
            Some((x, frame.y.place(lower.value_at(value)?), frame.y.place(upper.value_at(value)?)))
        });
        let heights: Vec<(f64, f64, f64)> = heights.collect();
        let is_roomy = |(_, low, high): &&(f64, f64, f64)| low - high > scale.words_px * 1.3;
        let inside = heights.iter().filter(is_roomy).map(|(x, low, high)| (*x, f64::midpoint(*low, *high) + scale.words_px * 0.34));
        let above = heights.iter().map(|(x, _, high)| (*x, high - 10.0));
        let words = |at, anchor| Text::new(&band.name, at, Face::Text, scale.words_px, colour).anchored(anchor);
        let texts = inside.map(|at| words(at, Anchor::Middle)).chain(above.map(|at| words(at, Anchor::End)));
        taken.choose_free(texts)
    };
    lines.bands.iter().filter_map(name_band).collect()
}
