//! A scene put on a plotters drawing area, whatever the backend behind it: SVG, bitmap. The page's canvas is drawn without (`canvas`).
//!
//! Backends count in whole units, so a scene is painted `units` of them to the CSS pixel: 1 on a bitmap of that size, 10 for SVG
//! written to a tenth. They know no dashes: those are cut here.
use super::{
    dash::dashes,
    face::Face,
    scene::{Anchor, Mark, Pen, Point, Scene, Text},
};
use crate::problem::Explain;
use plotters::{
    coord::Shift,
    drawing::DrawingArea,
    element::{Drawable, PointCollection},
};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind, FontFamily, FontStyle,
    text_anchor::{HPos, Pos, VPos},
};

/// Why a picture could not be painted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ChartError {
    /// The surface refused; what it said.
    Surface(String),
}

impl Explain for ChartError {
    fn what(&self) -> String {
        let Self::Surface(said) = self;
        format!("the picture could not be drawn ({said})")
    }

    fn what_to_do(&self) -> String {
        "read its figures in the table below it, and reload the page if it stays away".to_owned()
    }
}

/// Paints a scene, `units` of the backend's units to a CSS pixel.
///
/// # Errors
/// Where the backend refuses to draw.
pub fn paint<DB: DrawingBackend>(scene: &Scene, area: &DrawingArea<DB, Shift>, units: f64) -> Result<(), ChartError> {
    let said = |error: &dyn std::error::Error| ChartError::Surface(error.to_string());
    for mark in &scene.marks {
        for stroke in strokes(mark, units) {
            area.draw(&stroke).map_err(|error| said(&error))?;
        }
    }
    area.present().map_err(|error| said(&error))
}

/// One call of a backend, its places already in whole units.
struct Stroke<'a> {
    places: Vec<BackendCoord>,
    what: What<'a>,
}

enum What<'a> {
    Rule(Style),
    Line(Style),
    Fill(Style),
    Disc(u32, Style),
    Text(Writing<'a>),
}

fn strokes(mark: &Mark, units: f64) -> Vec<Stroke<'_>> {
    match mark {
        Mark::Rule { from, to, pen } => cut(&[*from, *to], pen, units, What::Rule),
        Mark::Line { points, pen } => cut(points, pen, units, What::Line),
        Mark::Fill { outline, ink } => {
            let style = Style { color: BackendColor { alpha: ink.cover, rgb: rgb(ink.colour) }, width: 1 };
            vec![Stroke { places: places(outline, units), what: What::Fill(style) }]
        }
        Mark::Disc { centre, radius, ink } => {
            let style = Style { color: BackendColor { alpha: ink.cover, rgb: rgb(ink.colour) }, width: 1 };
            vec![Stroke { places: places(&[*centre], units), what: What::Disc(whole(radius * units).unsigned_abs(), style) }]
        }
        Mark::Text(text) => {
            let writing = Writing { text, size: text.size_px * units };
            vec![Stroke { places: places(&[writing.corner()], units), what: What::Text(writing) }]
        }
    }
}

fn cut<'a>(points: &[Point], pen: &Pen, units: f64, what: fn(Style) -> What<'a>) -> Vec<Stroke<'a>> {
    let width = whole(pen.width_px * units).unsigned_abs().max(1);
    let style = Style { color: BackendColor { alpha: pen.ink.cover, rgb: rgb(pen.ink.colour) }, width };
    let pieces = if pen.dash.is_empty() { vec![points.to_vec()] } else { dashes(points, pen.dash) };
    let stroke = |piece: Vec<Point>| Stroke { places: places(&piece, units), what: what(style) };
    pieces.into_iter().map(stroke).filter(|stroke| stroke.places.len() > 1).collect()
}

/// Points in whole units, equal neighbours dropped: rasterisers stumble over lines without length.
fn places(points: &[Point], units: f64) -> Vec<BackendCoord> {
    let mut places: Vec<_> = points.iter().map(|(x, y)| (whole(x * units), whole(y * units))).collect();
    places.dedup();
    places
}

/// The nearest whole unit, kept to what a surface can have; not a number becomes 0.
#[expect(clippy::cast_possible_truncation, reason = "the value is clamped to a range that fits")]
fn whole(value: f64) -> i32 {
    value.round().clamp(-1e6, 1e6) as i32
}

pub(super) fn rgb(colour: super::palette::Colour) -> (u8, u8, u8) {
    (colour.0, colour.1, colour.2)
}

#[derive(Clone, Copy)]
struct Style {
    color: BackendColor,
    width: u32,
}

impl BackendStyle for Style {
    fn color(&self) -> BackendColor {
        self.color
    }

    fn stroke_width(&self) -> u32 {
        self.width
    }
}

impl<'a> PointCollection<'a, BackendCoord> for &'a Stroke<'_> {
    type Point = &'a BackendCoord;
    type IntoIter = &'a [BackendCoord];

    fn point_iter(self) -> Self::IntoIter {
        &self.places
    }
}

impl<DB: DrawingBackend> Drawable<DB> for Stroke<'_> {
    fn draw<I: Iterator<Item = BackendCoord>>(
        &self,
        mut at: I,
        backend: &mut DB,
        _: (u32, u32),
    ) -> Result<(), DrawingErrorKind<DB::ErrorType>> {
        match &self.what {
            What::Line(style) => backend.draw_path(at, style),
            What::Fill(style) => backend.fill_polygon(at, style),
            What::Rule(style) => match (at.next(), at.next()) {
                (Some(from), Some(to)) => backend.draw_line(from, to, style),
                _ => Ok(()),
            },
            What::Disc(radius, style) => at.next().map_or(Ok(()), |centre| backend.draw_circle(centre, *radius, style, true)),
            What::Text(writing) => at.next().map_or(Ok(()), |corner| backend.draw_text(&writing.text.words, writing, corner)),
        }
    }
}

/// A text as backends want it: hung from a line above its baseline.
///
/// Backends disagree on what a size means, so each answer here is for one of them: the SVG and canvas backends ask for `size` and
/// hang the baseline 0.76 of the CSS size below; bitmaps ask for `layout_box` and `draw` and are given just that.
struct Writing<'a> {
    text: &'a Text,
    size: f64,
}

/// How far below the top the baseline hangs, for a size of one: what SVG backends of plotters use.
pub(super) const HANG: f64 = 0.76;

/// plotters' sizes are this many times the CSS size.
pub(super) const PLOTTERS_SIZE: f64 = 1.24;

impl Writing<'_> {
    fn corner(&self) -> Point {
        (self.text.at.0, self.text.at.1 - HANG * self.text.size_px)
    }
}

impl BackendTextStyle for Writing<'_> {
    type FontError = plotters::style::FontError;

    fn color(&self) -> BackendColor {
        BackendColor { alpha: 1.0, rgb: rgb(self.text.colour) }
    }

    fn size(&self) -> f64 {
        self.size * PLOTTERS_SIZE
    }

    fn style(&self) -> FontStyle {
        weight(self.text.face)
    }

    fn anchor(&self) -> Pos {
        let across = match self.text.anchor {
            Anchor::Start => HPos::Left,
            Anchor::Middle => HPos::Center,
            Anchor::End => HPos::Right,
        };
        Pos::new(across, VPos::Top)
    }

    fn family(&self) -> FontFamily<'_> {
        FontFamily::Name(self.text.face.family())
    }

    fn layout_box(&self, _: &str) -> Result<((i32, i32), (i32, i32)), Self::FontError> {
        let width = self.text.face.width_px(&self.text.words, self.size);
        Ok(((0, 0), (whole(width), whole(self.size * 1.2))))
    }

    fn draw<E, F: FnMut(i32, i32, BackendColor) -> Result<(), E>>(
        &self,
        words: &str,
        (x, y): BackendCoord,
        mut dot: F,
    ) -> Result<Result<(), E>, Self::FontError> {
        let scale = self.size * self.text.face.line_per_size();
        let font = plotters::style::FontDesc::new(FontFamily::Name(self.text.face.family()), scale, weight(self.text.face));
        // The rasteriser sets the baseline half its scale below the place it is given.
        let down = whole(HANG * self.size - scale / 2.0);
        let color = self.color();
        font.draw(words, (x, y + down), |x, y, cover| dot(x, y, color.mix(f64::from(cover))))
    }
}

fn weight(face: Face) -> FontStyle {
    if face.is_strong() { FontStyle::Bold } else { FontStyle::Normal }
}
