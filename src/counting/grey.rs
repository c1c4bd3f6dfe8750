//! A picture as brightness, made ready: cut to what lies around a circle, scaled down, and put on an equal footing with its own surroundings.

use crate::sound::recording::places::{below, real};

/// A picture as rows of brightness, from 0, black, to 255, white.
#[derive(Clone, Debug, PartialEq)]
pub struct Grey {
    width: usize,
    values: Vec<f64>,
}

impl Grey {
    /// A picture of rows of so many values; a last row that is not whole is left out.
    pub fn new(width: usize, mut values: Vec<f64>) -> Self {
        let height = values.len().checked_div(width).unwrap_or(0);
        values.truncate(width * height);
        Self { width, values }
    }

    /// A picture of red, green, blue and opacity for each pixel, one byte each, as a browser's canvas gives it.
    ///
    /// Weights of the luma of Recommendation ITU-R BT.601-7, 2.5.1.
    pub fn of_rgba(width: usize, bytes: &[u8]) -> Self {
        let luma = |pixel: &[u8; 4]| {
            let [red, green, blue, _] = pixel.map(f64::from);
            0.299 * red + 0.587 * green + 0.114 * blue
        };
        Self::new(width, bytes.as_chunks().0.iter().map(luma).collect())
    }

    /// Pixels across.
    pub fn width(&self) -> usize {
        self.width
    }

    /// Pixels down.
    pub fn height(&self) -> usize {
        self.values.len().checked_div(self.width).unwrap_or(0)
    }

    /// The values, row after row.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// The brightness at a pixel; none outside.
    fn at(&self, x: usize, y: usize) -> Option<f64> {
        if x >= self.width { None } else { self.values.get(y * self.width + x).copied() }
    }

    /// What lies in a window, scaled so that `scale` pixels of it become one, each the mean of what it covers.
    pub(super) fn window(&self, left: usize, top: usize, (width, height): (usize, usize), scale: f64) -> Self {
        let cells = |length: usize| below(real(length) / scale).max(1);
        let (columns, rows) = (cells(width), cells(height));
        let across: Vec<Vec<(usize, f64)>> = (0..columns).map(|column| shares(left, column, scale, left + width)).collect();
        let mut values = Vec::with_capacity(columns * rows);
        for row in 0..rows {
            let down = shares(top, row, scale, top + height);
            for across in &across {
                let covered = down.iter().flat_map(|(y, share)| across.iter().map(move |(x, other)| (*x, *y, share * other)));
                let (sum, weights) = covered
                    .fold((0.0, 0.0), |(sum, weights), (x, y, weight)| (sum + weight * self.at(x, y).unwrap_or(0.0), weights + weight));
                values.push(sum / f64::max(weights, 1e-9));
            }
        }
        Self::new(columns, values)
    }

    /// How far the values spread, as a standard deviation.
    pub(super) fn spread(&self) -> f64 {
        let many = real(self.values.len()).max(1.0);
        let mean = self.values.iter().sum::<f64>() / many;
        (self.values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / many).sqrt()
    }

    /// A little softer, one direction after the other.
    fn blurred(&self) -> Self {
        // A Gaussian of 0.8 pixels, cut after two.
        let kernel = [0.021_96, 0.228_53, 0.499_02, 0.228_53, 0.021_96];
        let (width, height) = (self.width, self.height());
        let along = |from: &[f64], (x, y): (usize, usize), (step_x, step_y): (usize, usize)| {
            kernel
                .iter()
                .enumerate()
                .map(|(place, weight)| {
                    let (x, y) = (
                        (x + place * step_x).saturating_sub(2 * step_x).min(width - 1),
                        (y + place * step_y).saturating_sub(2 * step_y).min(height - 1),
                    );
                    weight * from.get(y * width + x).copied().unwrap_or(0.0)
                })
                .sum::<f64>()
        };
        let once: Vec<f64> = places(width, height).map(|place| along(&self.values, place, (1, 0))).collect();
        let twice = places(width, height).map(|place| along(&once, place, (0, 1))).collect();
        Self::new(width, twice)
    }

    /// How steep the brightness is at each pixel, of the picture made a little softer.
    pub(super) fn edges(&self) -> Self {
        let soft = self.blurred();
        let (width, height) = (self.width, self.height());
        let steep = |(x, y): (usize, usize)| {
            let at = |x: usize, y: usize| soft.at(x.min(width.saturating_sub(1)), y.min(height.saturating_sub(1))).unwrap_or(0.0);
            let across = at(x + 1, y) - at(x.saturating_sub(1), y);
            let down = at(x, y + 1) - at(x, y.saturating_sub(1));
            (across * across + down * down).sqrt() / 2.0
        };
        Self::new(width, places(width, height).map(steep).collect())
    }

    /// Each value beside the mean of the square of `side` pixels around it, in standard deviations of that square; `floor` is added to
    /// the deviation, so that nothing much is not made much of.
    pub(super) fn levelled(&self, side: usize, floor: f64) -> Self {
        let (width, height) = (self.width, self.height());
        let sums = Sums::of(width, &self.values);
        let squares = Sums::of(width, &self.values.iter().map(|value| value * value).collect::<Vec<_>>());
        let half = side / 2;
        let level = |((x, y), value): ((usize, usize), &f64)| {
            let (left, right) = (x.saturating_sub(half), (x + half + 1).min(width));
            let (top, bottom) = (y.saturating_sub(half), (y + half + 1).min(height));
            let many = real((right - left) * (bottom - top));
            let mean = sums.within(left, right, top, bottom) / many;
            let variance = (squares.within(left, right, top, bottom) / many - mean * mean).max(0.0);
            ((value - mean) / (variance + floor * floor).sqrt()).clamp(-2.5, 2.5)
        };
        Self::new(width, places(width, height).zip(&self.values).map(level).collect())
    }
}

/// All places of a picture, row after row.
fn places(width: usize, height: usize) -> impl Iterator<Item = (usize, usize)> {
    (0..height).flat_map(move |y| (0..width).map(move |x| (x, y)))
}

/// The pixels from `first` on that a cell covers, with the share of each.
fn shares(first: usize, cell: usize, scale: f64, end: usize) -> Vec<(usize, f64)> {
    let (from, to) = (real(cell) * scale, real(cell + 1) * scale);
    let covered = |pixel: usize| (real(pixel + 1).min(to) - real(pixel).max(from)).max(0.0);
    (below(from)..=below(to)).filter(|pixel| first + pixel < end).map(|pixel| (first + pixel, covered(pixel))).collect()
}

/// Sums of all that lies left of and above each place.
struct Sums {
    width: usize,
    sums: Vec<f64>,
}

impl Sums {
    fn of(width: usize, values: &[f64]) -> Self {
        let mut sums = vec![0.0; width + 1];
        for row in values.chunks(width.max(1)) {
            let mut along = 0.0;
            sums.push(0.0);
            for value in row {
                along += value;
                let above = sums.get(sums.len() - width - 1).copied().unwrap_or(0.0);
                sums.push(above + along);
            }
        }
        Self { width: width + 1, sums }
    }

    fn within(&self, left: usize, right: usize, top: usize, bottom: usize) -> f64 {
        let at = |x: usize, y: usize| self.sums.get(y * self.width + x).copied().unwrap_or(0.0);
        at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top)
    }
}
