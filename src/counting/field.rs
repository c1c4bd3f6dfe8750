//! The two sides of a picture that rings are read from: its brightness and its edges, each beside its surroundings.

use super::Circle;
use super::grey::Grey;
use crate::sound::recording::places::{below, near, real};

/// The tip circle has no larger radius than this, in pixels: more shows no more teeth and takes longer.
const LARGEST: f64 = 180.0;
/// How much is cut out around the centre, in radii.
const AROUND: f64 = 1.42;
/// The side of the square that a pixel is held against, in radii.
const SURROUNDINGS: f64 = 0.26;

/// What is read at a place: brightness and edges.
pub(super) type Texel = [f64; 2];

/// A picture made ready for rings to be read from it.
#[derive(Clone, Debug)]
pub(super) struct Field {
    width: usize,
    /// The place of the last column, from the middle of the first.
    last: f64,
    texels: Vec<Texel>,
    /// The circle as it was placed, in this picture.
    pub(super) placed: Circle,
    /// Where this picture's corner lies in the whole one, and how many of its pixels are one of this.
    corner: (f64, f64),
    scale: f64,
    /// How far brightness spreads, as a standard deviation.
    pub(super) spread: f64,
}

impl Field {
    pub(super) fn around(grey: &Grey, circle: Circle) -> Self {
        let scale = (circle.radius / LARGEST).max(1.0);
        let reach = AROUND * circle.radius;
        let (left, top) = (below(circle.x - reach), below(circle.y - reach));
        let length = |from: usize, to: f64, most: usize| (below(to) + 1).min(most).saturating_sub(from).max(1);
        let size = (length(left, circle.x + reach, grey.width()), length(top, circle.y + reach, grey.height()));
        let cut = grey.window(left, top, size, scale);
        let corner = (real(left), real(top));
        let placed = Circle { x: (circle.x - corner.0) / scale, y: (circle.y - corner.1) / scale, radius: circle.radius / scale };
        let side = near(SURROUNDINGS * placed.radius) | 1;
        let brightness = cut.levelled(side, 4.0);
        let edges = cut.edges().levelled(side, 1.0);
        let texels = brightness.values().iter().zip(edges.values()).map(|(brightness, edge)| [*brightness, *edge]).collect();
        Self { width: cut.width(), last: real(cut.width()) - 1.0, texels, placed, corner, scale, spread: cut.spread() }
    }

    /// What stands at a place, between pixels; nothing outside. A pixel's middle lies half a pixel from its corner.
    #[inline]
    pub(super) fn at(&self, x: f64, y: f64) -> Texel {
        let (x, y) = (x - 0.5, y - 0.5);
        if !(x >= 0.0 && y >= 0.0 && x < self.last) {
            return [0.0; 2];
        }
        let (column, row) = (below(x), below(y));
        let (across, down) = (x - real(column), y - real(row));
        let place = row * self.width + column;
        let pair = |place: usize| self.texels.get(place..).and_then(|rest| rest.first_chunk::<2>());
        let (Some(upper), Some(lower)) = (pair(place), pair(place + self.width)) else { return [0.0; 2] };
        let on_row = |[left, right]: &[Texel; 2]| [left[0] + across * (right[0] - left[0]), left[1] + across * (right[1] - left[1])];
        let (upper, lower) = (on_row(upper), on_row(lower));
        [upper[0] + down * (lower[0] - upper[0]), upper[1] + down * (lower[1] - upper[1])]
    }

    /// The radius of the placed circle in the whole picture, in its pixels.
    pub(super) fn placed_radius(&self) -> f64 {
        self.placed.radius * self.scale
    }

    /// A place of this picture in the whole one.
    pub(super) fn in_whole(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.corner.0 + self.scale * x, self.corner.1 + self.scale * y)
    }
}
