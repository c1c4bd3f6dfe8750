//! The labels of a picture of lines: each on its line where the picture is free.
use super::{At, Band, Guide, Lines, Series};
use crate::chart::{
    face::Face,
    frame::{Frame, Scale},
    palette::{Hue, Theme, leading},
    place::Taken,
    readout::{groups, letters, short_letters},
    scene::{Anchor, Point, Rect, Scene, Spot, Text},
};

/// `pieces` is what of each line lies inside the plot.
pub(super) fn draw(lines: &Lines, pieces: &[Vec<Vec<Point>>], scene: &mut Scene, theme: &Theme, frame: &Frame) {
    let scale = Scale::of(scene.size.0);
    let inside = Rect::new(frame.plot.left + 2.0, 0.0, scene.size.0, frame.plot.bottom - 1.0);
    let mut taken = Taken::new(inside);
    taken.keep(frame.title_box());
    pieces.iter().flatten().for_each(|piece| taken.keep_off(piece));
    for (from, to) in lines.guides.iter().filter_map(|guide| guide.ends(frame)) {
        taken.keep_off(&[from, to]);
    }
    let mut labels: Vec<Text> = Vec::new();
    draw_dots(lines, scene, theme, frame, &mut taken, &mut labels);
    name_all_series(lines, pieces, theme, scale, &mut taken, &mut labels);
    for guide in &lines.guides {
        let name = Text::new(&guide.name, (0.0, 0.0), Face::Text, scale.words_px, theme.hue(guide.hue, lines.focus));
        labels.extend(taken.choose_wording(&[name], &guide_spots(guide, frame, scale)));
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
fn name_all_series(lines: &Lines, pieces: &[Vec<Vec<Point>>], theme: &Theme, scale: Scale, taken: &mut Taken, labels: &mut Vec<Text>) {
    let mut named: Vec<Hue> = Vec::new();
    let mut left: Vec<(Hue, Vec<Text>, Vec<Spot>)> = Vec::new();
    for group in together(lines.series.iter().zip(pieces)) {
        let Some((first, pieces)) = group.first() else { continue };
        let spots: Vec<Spot> = along_line(pieces).iter().flat_map(|at| about(*at, 7.0, scale)).collect();
        let wordings = series_wordings(lines, &group, theme, scale);
        match taken.choose_free_wording(&wordings, &spots) {
            Some(label) => {
                labels.push(label);
                named.extend(group.iter().map(|(series, _)| series.hue));
            }
            None => left.push((first.hue, wordings, spots)),
        }
    }
    for (hue, wordings, spots) in left {
        if !named.contains(&hue) {
            labels.extend(taken.choose_wording(&wordings, &spots));
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
        let name = Text::new(&dot.name, at, Face::Strong, scale.words_px, theme.hue(dot.hue, lines.focus));
        labels.extend(taken.choose_wording(&[name], &about(at, 10.0, scale)));
    }
}

/// A line, and what of it lies inside the plot.
type Placed<'a> = (&'a Series, &'a Vec<Vec<Point>>);

/// Lines of several setups that lie on one another, under the same name.
fn together<'a>(series: impl Iterator<Item = Placed<'a>>) -> Vec<Vec<Placed<'a>>> {
    let close = |a: f64, b: f64| (a - b).abs() <= 1e-4 * a.abs().max(b.abs());
    let alike = |(a, _): Placed<'_>, (b, _): Placed<'_>| {
        let same_points = || a.points.iter().zip(&b.points).all(|(one, other)| close(one.0, other.0) && close(one.1, other.1));
        a.name == b.name && a.hue.slot().is_some() && b.hue.slot().is_some() && a.points.len() == b.points.len() && same_points()
    };
    groups(series, alike)
}

/// The name of a line, the longest wording first.
fn series_wordings(lines: &Lines, group: &[Placed<'_>], theme: &Theme, scale: Scale) -> Vec<Text> {
    let Some((first, _)) = group.first() else { return Vec::new() };
    let slots: Vec<usize> = group.iter().filter_map(|(series, _)| series.hue.slot()).collect();
    let wordings = match (slots.is_empty(), first.name.is_empty()) {
        (true, _) => vec![first.name.clone()],
        (false, true) => vec![letters(&slots), short_letters(&slots)],
        (false, false) => vec![format!("{}, {}", letters(&slots), first.name), format!("{} {}", short_letters(&slots), first.name)],
    };
    let hue = leading(&slots, lines.focus).map_or(first.hue, Hue::Setup);
    let colour = theme.hue(hue, lines.focus);
    wordings.into_iter().map(|words| Text::new(words, (0.0, 0.0), Face::Strong, scale.words_px, colour)).collect()
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
fn about((x, y): Point, off: f64, scale: Scale) -> [Spot; 8] {
    let size = scale.words_px;
    let (above, below, middle) = (y - off, y + off + size * 0.74, y + size * 0.34);
    [
        (Anchor::Start, x + off, middle),
        (Anchor::End, x + 4.0, above),
        (Anchor::Middle, x, above),
        (Anchor::Start, x - 4.0, above),
        (Anchor::End, x - off, middle),
        (Anchor::End, x, below),
        (Anchor::Start, x, below),
        (Anchor::Middle, x, below),
    ]
    .map(|(anchor, x, y)| Spot { anchor, at: (x, y) })
}

fn guide_spots(guide: &Guide, frame: &Frame, scale: Scale) -> Vec<Spot> {
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
    places.into_iter().map(|(anchor, x, y)| Spot { anchor, at: (x, y) }).collect()
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
