//! Rectangles of a picture: what meets what, what lies inside, and lines cut at an edge.
use super::scene::Point;

/// A rectangle in CSS pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Its left edge.
    pub left: f64,
    /// Its upper edge.
    pub top: f64,
    /// Its right edge.
    pub right: f64,
    /// Its lower edge.
    pub bottom: f64,
}

impl Rect {
    /// The rectangle with these edges.
    pub fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self { left, top, right, bottom }
    }

    /// The rectangle about points; one that meets nothing without any.
    pub fn around(points: &[Point]) -> Self {
        let nowhere = Self::new(f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY);
        let wider =
            |around: Self, (x, y): &Point| Self::new(around.left.min(*x), around.top.min(*y), around.right.max(*x), around.bottom.max(*y));
        points.iter().fold(nowhere, wider)
    }

    /// How wide it is.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// How high it is.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    /// Whether the two share some of their inside.
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    /// Whether `other` lies wholly inside, edges allowed.
    pub fn holds(&self, other: &Self) -> bool {
        self.left <= other.left && self.top <= other.top && other.right <= self.right && other.bottom <= self.bottom
    }

    /// The rectangle with every edge moved outwards by `by`.
    #[must_use]
    pub fn grown(&self, by: f64) -> Self {
        Self::new(self.left - by, self.top - by, self.right + by, self.bottom + by)
    }

    /// Its corners in order, ready to be filled.
    pub fn corners(&self) -> Vec<Point> {
        vec![(self.left, self.top), (self.right, self.top), (self.right, self.bottom), (self.left, self.bottom)]
    }

    /// Its edge as a closed line, ready to be stroked.
    pub fn edge(&self) -> Vec<Point> {
        let mut line = self.corners();
        line.push((self.left, self.top));
        line
    }

    /// Whether the straight line between two points passes through the inside.
    pub fn is_crossed_by(&self, from: Point, to: Point) -> bool {
        let holds = |(x, y): Point| self.left < x && x < self.right && self.top < y && y < self.bottom;
        holds(from) || holds(to) || self.clipped(from, to).is_some()
    }

    /// The part of a straight line that lies inside, where any does.
    ///
    /// Method: Liang and Barsky's clipping of a line by four edges.
    ///
    /// ```
    /// use layshaft::chart::rect::Rect;
    /// let frame = Rect::new(0.0, 0.0, 100.0, 50.0);
    /// // Half of the line lies left of the frame.
    /// assert_eq!(frame.clipped((-100.0, 20.0), (100.0, 40.0)), Some(((0.0, 30.0), (100.0, 40.0))));
    /// assert_eq!(frame.clipped((0.0, 60.0), (100.0, 60.0)), None);
    /// ```
    pub fn clipped(&self, from: Point, to: Point) -> Option<(Point, Point)> {
        // Most lines lie to one side of most boxes: those need no division.
        let is_beside = |a: f64, b: f64, least: f64, greatest: f64| (a < least && b < least) || (a > greatest && b > greatest);
        if is_beside(from.0, to.0, self.left, self.right) || is_beside(from.1, to.1, self.top, self.bottom) {
            return None;
        }
        let (along, down) = (to.0 - from.0, to.1 - from.1);
        let sides = [(-along, from.0 - self.left), (along, self.right - from.0), (-down, from.1 - self.top), (down, self.bottom - from.1)];
        let mut inside = (0.0_f64, 1.0_f64);
        for (step, room) in sides {
            if step == 0.0 {
                if room < 0.0 {
                    return None;
                }
            } else if step < 0.0 {
                inside.0 = inside.0.max(room / step);
            } else {
                inside.1 = inside.1.min(room / step);
            }
        }
        let place = |share: f64| (from.0 + along * share, from.1 + down * share);
        (inside.0 < inside.1).then(|| (place(inside.0), place(inside.1)))
    }

    /// The parts of a line through points that lie inside. A point that is not a number breaks the line.
    pub fn clipped_line(&self, points: &[Point]) -> Vec<Vec<Point>> {
        let mut pieces: Vec<Vec<Point>> = Vec::new();
        let ends = points.windows(2).filter_map(|pair| if let [a, b] = pair { Some((*a, *b)) } else { None });
        let known = ends.filter(|(a, b)| [a.0, a.1, b.0, b.1].iter().all(|value| value.is_finite()));
        for (from, to) in known.filter_map(|(from, to)| self.clipped(from, to)) {
            match pieces.last_mut() {
                Some(piece) if piece.last() == Some(&from) => piece.push(to),
                _ => pieces.push(vec![from, to]),
            }
        }
        pieces
    }

    /// The nearest place inside.
    pub fn nearest(&self, (x, y): Point) -> Point {
        (x.max(self.left).min(self.right), y.max(self.top).min(self.bottom))
    }
}
