//! What all pictures share: an axis, its round values, the grid behind a plot and the titles beside it.
use super::{
    face::Face,
    palette::Theme,
    scene::{Anchor, Pen, Point, Rect, Scene, Size, Text},
    ticks,
};
use crate::units::number::show;

/// Values laid out along a stretch of pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// The value at the first end and its pixel.
    pub from: (f64, f64),
    /// The value at the other end and its pixel.
    pub to: (f64, f64),
    /// Whether equal distances are equal ratios rather than equal differences.
    pub is_by_ratio: bool,
}

impl Axis {
    /// Equal distances are equal differences.
    pub fn even(from: (f64, f64), to: (f64, f64)) -> Self {
        Self { from, to, is_by_ratio: false }
    }

    /// Equal distances are equal ratios; both values must be above zero.
    pub fn by_ratio(from: (f64, f64), to: (f64, f64)) -> Self {
        Self { from, to, is_by_ratio: true }
    }

    /// The pixel of a value. An axis without length puts everything at its start.
    pub fn place(&self, value: f64) -> f64 {
        let [start, end, here] = [self.from.0, self.to.0, value].map(|v| if self.is_by_ratio { v.ln() } else { v });
        let share = (here - start) / (end - start);
        if share.is_finite() { self.from.1 + share * (self.to.1 - self.from.1) } else { self.from.1 }
    }

    /// The value at a pixel.
    pub fn value(&self, place: f64) -> f64 {
        let share = (place - self.from.1) / (self.to.1 - self.from.1);
        let share = if share.is_finite() { share } else { 0.0 };
        if self.is_by_ratio { self.from.0 * (self.to.0 / self.from.0).powf(share) } else { self.from.0 + share * (self.to.0 - self.from.0) }
    }

    /// How many pixels it is long.
    pub fn length(&self) -> f64 {
        (self.to.1 - self.from.1).abs()
    }
}

/// Sizes that follow from the width of a picture: a phone's is set a little smaller and more sparely.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// The size of words.
    pub words_px: f64,
    /// The size of numbers.
    pub figures_px: f64,
    /// How far apart values along the bottom stand at least.
    pub gap_px: f64,
    /// The width of a setup's line.
    pub stroke_px: f64,
    /// Whether the picture is as narrow as a phone's.
    pub is_narrow: bool,
}

impl Scale {
    /// The sizes for a picture of this width in CSS pixels.
    pub fn of(width: f64) -> Self {
        if width < 560.0 {
            Self { words_px: 14.0, figures_px: 13.0, gap_px: 40.0, stroke_px: 2.2, is_narrow: true }
        } else {
            Self { words_px: 15.0, figures_px: 14.0, gap_px: 72.0, stroke_px: 2.4, is_narrow: false }
        }
    }

    /// The height of a picture in which up and along matter alike, in CSS pixels.
    pub fn field_height(&self) -> f64 {
        if self.is_narrow { 320.0 } else { 380.0 }
    }
}

/// What an axis says about itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Along {
    /// The least value shown.
    pub least: f64,
    /// The greatest value shown.
    pub greatest: f64,
    /// Its title with its unit, for instance `road speed, mph`.
    pub title: String,
}

impl Along {
    /// Round ends that cover the values, and zero where that costs less than half the picture.
    ///
    /// Values that are not numbers are passed over; without any, the axis runs from 0 to 1.
    pub fn covering(values: impl IntoIterator<Item = f64>, title: impl Into<String>) -> Self {
        let (least, greatest) = ends(values);
        let (least, greatest) = match (least, greatest) {
            (least, greatest) if least > 0.0 && least < 0.5 * greatest => (0.0, greatest),
            (least, greatest) if greatest < 0.0 && greatest > 0.5 * least => (least, 0.0),
            ends => ends,
        };
        Self::rounded(least, greatest, title.into())
    }

    /// Round ends that lie close about the values, zero among them or not.
    pub fn closely(values: impl IntoIterator<Item = f64>, title: impl Into<String>) -> Self {
        let (least, greatest) = ends(values);
        Self::rounded(least, greatest, title.into())
    }

    fn rounded(mut least: f64, mut greatest: f64, title: String) -> Self {
        if greatest - least <= 1e-9 * greatest.abs().max(1e-9) {
            let room = if least == 0.0 { 1.0 } else { least.abs() * 0.1 };
            (least, greatest) = (least - room, greatest + room);
        }
        let step = ticks::round_step(least, greatest, 8.0).unwrap_or(1.0);
        Self { least: (least / step + 1e-9).floor() * step, greatest: (greatest / step - 1e-9).ceil() * step, title }
    }
}

/// Least and greatest of the values that are numbers; 0 and 1 where there are none.
fn ends(values: impl IntoIterator<Item = f64>) -> (f64, f64) {
    let known = values.into_iter().filter(|value| value.is_finite());
    known
        .fold(None, |ends: Option<(f64, f64)>, value| {
            Some(ends.map_or((value, value), |(least, greatest)| (least.min(value), greatest.max(value))))
        })
        .unwrap_or((0.0, 1.0))
}

/// The width of the widest of an axis's numbers.
fn widest(steps: &[f64], figures_px: f64) -> f64 {
    steps.iter().map(|step| Face::Figures.width_px(&label(*step, steps), figures_px)).fold(0.0, f64::max)
}

/// Round values along a level axis of this length, at least `gap` apart and never with their numbers run together.
pub fn level_steps(along: &Along, length: f64, gap: f64, figures_px: f64) -> Vec<f64> {
    let apart = |gap: f64| ticks::round_steps(along.least, along.greatest, (length / gap).max(2.0));
    let steps = apart(gap);
    let wanted = widest(&steps, figures_px) + 12.0;
    if wanted > gap { apart(wanted) } else { steps }
}

/// A plot with an even axis along the bottom and one up the left side.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Where lines may be drawn.
    pub plot: Rect,
    /// The axis along the bottom.
    pub x: Axis,
    /// The axis up the left side.
    pub y: Axis,
    x_steps: Vec<f64>,
    y_steps: Vec<f64>,
    titles: [String; 2],
    scale: Scale,
}

impl Frame {
    /// A plot that fills a picture, `headroom` pixels left free between its upper edge and the title above it.
    pub fn new(size: Size, along: &Along, up: &Along, headroom: f64) -> Self {
        let scale = Scale::of(size.0);
        let top = 14.0 + scale.words_px + headroom;
        let bottom = size.1 - (if scale.is_narrow { 44.0 } else { 48.0 });
        let bottom = bottom.max(top + 1.0);
        let y_steps = ticks::round_steps(up.least, up.greatest, ((bottom - top) / 44.0).max(2.0));
        let left = widest(&y_steps, scale.figures_px) + 10.0;
        let x_steps = level_steps(along, size.0 - 20.0 - left, scale.gap_px, scale.figures_px);
        let overhang = x_steps.last().map_or(0.0, |last| Face::Figures.width_px(&label(*last, &x_steps), scale.figures_px) / 2.0);
        let right = (size.0 - 1.0 - overhang.max(6.0)).max(left + 1.0);
        Self {
            plot: Rect::new(left, top, right, bottom),
            x: Axis::even((along.least, left), (along.greatest, right)),
            y: Axis::even((up.least, bottom), (up.greatest, top)),
            x_steps,
            y_steps,
            titles: [along.title.clone(), up.title.clone()],
            scale,
        }
    }

    /// Where a pair of values stands.
    pub fn place(&self, x: f64, y: f64) -> Point {
        (self.x.place(x), self.y.place(y))
    }

    /// The box of the title above the left axis, which labels must leave free.
    pub fn title_box(&self) -> Rect {
        self.upper_title(super::palette::LIGHT.ink_2).bounds().grown(4.0)
    }

    /// Draws grid, axis, values and titles.
    pub fn draw(&self, scene: &mut Scene, theme: &Theme) {
        self.draw_upright(scene, theme);
        self.draw_level(scene, theme);
        let (left, right, foot) = (self.plot.left, self.plot.right, self.plot.bottom);
        scene.rule((left, foot), (right, foot), Pen::full(theme.ink, 1.0));
        if self.y.from.0 < 0.0 && self.y.to.0 > 0.0 {
            let zero = self.y.place(0.0);
            scene.rule((left, zero), (right, zero), Pen::full(theme.ink_3, 1.0));
        }
        scene.text(self.upper_title(theme.ink_2));
        let at = (right, foot + 24.0 + self.scale.words_px + 3.0);
        scene.text(Text::new(&self.titles[0], at, Face::Text, self.scale.words_px, theme.ink_2).anchored(Anchor::End));
    }

    fn upper_title(&self, colour: super::palette::Colour) -> Text {
        let [_, title] = &self.titles;
        Text::new(title, (2.0, 2.0 + self.scale.words_px * 0.8), Face::Text, self.scale.words_px, colour)
    }

    fn draw_upright(&self, scene: &mut Scene, theme: &Theme) {
        for step in &self.x_steps {
            let x = self.x.place(*step);
            scene.rule((x, self.plot.top), (x, self.plot.bottom), Pen::full(theme.rule_soft, 1.0));
            let words = label(*step, &self.x_steps);
            let at = (x, self.plot.bottom + 7.0 + self.scale.figures_px);
            scene.text(Text::new(words, at, Face::Figures, self.scale.figures_px, theme.ink_2).anchored(Anchor::Middle));
        }
    }

    fn draw_level(&self, scene: &mut Scene, theme: &Theme) {
        for step in &self.y_steps {
            let y = self.y.place(*step);
            scene.rule((self.plot.left, y), (self.plot.right, y), Pen::full(theme.rule_soft, 1.0));
            let at = (self.plot.left - 8.0, y + self.scale.figures_px * 0.34);
            scene.text(Text::new(label(*step, &self.y_steps), at, Face::Figures, self.scale.figures_px, theme.ink_2).anchored(Anchor::End));
        }
    }
}

/// A round value as its axis writes it, all with the same decimals.
pub fn label(value: f64, steps: &[f64]) -> String {
    let step = steps.windows(2).find_map(|two| if let [a, b] = two { Some(b - a) } else { None }).unwrap_or(1.0);
    show(value, ticks::decimals(step))
}

/// Values to stop at when a pointer is moved by keys: rising, none twice.
pub fn stops(values: impl IntoIterator<Item = f64>) -> Vec<f64> {
    let mut stops: Vec<f64> = values.into_iter().filter(|value| value.is_finite()).collect();
    crate::order::by(&mut stops, f64::total_cmp);
    stops.dedup_by(|a, b| (*a - *b).abs() <= 1e-9 * b.abs());
    stops
}

/// A unit as the head of a column writes it: `km/h` becomes `km_per_h`.
pub fn unit_key(unit: &str) -> String {
    unit.replace('/', "_per_").replace([' ', '·'], "_")
}
