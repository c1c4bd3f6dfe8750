//! A picture before it is painted: strokes, fills and texts in CSS pixels, right and down from the top left corner.
//!
//! Charts only make scenes; [`super::paint`] alone knows how a backend draws. So a test can ask a scene where every label stands.
use super::{face::Face, frame::Axis, palette::Colour};

/// A place in CSS pixels: to the right, down.
pub type Point = (f64, f64);

/// A width and a height in CSS pixels.
pub type Size = (f64, f64);

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
        self.clipped(from, to).is_some()
    }

    /// The part of a straight line that lies inside, where any does.
    ///
    /// Method: Liang and Barsky's clipping of a line by four edges.
    pub fn clipped(&self, from: Point, to: Point) -> Option<(Point, Point)> {
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

/// A colour and how much of it covers what lies below, from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ink {
    /// The colour.
    pub colour: Colour,
    /// How much covers, 1 for all.
    pub cover: f64,
}

impl From<Colour> for Ink {
    fn from(colour: Colour) -> Self {
        Self { colour, cover: 1.0 }
    }
}

/// What a line is drawn with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    /// Its colour.
    pub ink: Ink,
    /// Its width in CSS pixels.
    pub width_px: f64,
    /// Lengths drawn and left out, in CSS pixels; empty is a full line.
    pub dash: &'static [f64],
}

impl Pen {
    /// A full line.
    pub fn full(ink: impl Into<Ink>, width_px: f64) -> Self {
        Self { ink: ink.into(), width_px, dash: &[] }
    }

    /// The same pen with a dash pattern.
    #[must_use]
    pub fn dashed(self, dash: &'static [f64]) -> Self {
        Self { dash, ..self }
    }
}

/// Which part of a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its start.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// A text on one line.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// What it says.
    pub words: String,
    /// Where it stands: on the baseline, at its anchor.
    pub at: Point,
    /// Which part of it stands there.
    pub anchor: Anchor,
    /// What it is set in.
    pub face: Face,
    /// Its size in CSS pixels.
    pub size_px: f64,
    /// Its colour.
    pub colour: Colour,
}

impl Text {
    /// A text whose start stands at `at`.
    pub fn new(words: impl Into<String>, at: Point, face: Face, size_px: f64, colour: Colour) -> Self {
        Self { words: words.into(), at, anchor: Anchor::Start, face, size_px, colour }
    }

    /// The same text, anchored otherwise.
    #[must_use]
    pub fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    /// How wide it is.
    pub fn width(&self) -> f64 {
        self.face.width_px(&self.words, self.size_px)
    }

    /// The start of its baseline.
    pub fn start(&self) -> Point {
        let back = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => self.width() / 2.0,
            Anchor::End => self.width(),
        };
        (self.at.0 - back, self.at.1)
    }

    /// The box of its letters: as wide as the text, from above the capitals to below the descenders.
    pub fn bounds(&self) -> Rect {
        let (left, baseline) = self.start();
        Rect::new(left, baseline - ABOVE * self.size_px, left + self.width(), baseline + BELOW * self.size_px)
    }
}

/// From the baseline to the top of the tallest letter, for a size of one (ascenders of the two faces reach 0.74).
pub const ABOVE: f64 = 0.76;

/// From the baseline to the foot of the lowest letter, for a size of one.
pub const BELOW: f64 = 0.2;

/// One thing to paint.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A straight line along or across; a backend may move it by less than a pixel to make it crisp.
    Rule {
        /// One end.
        from: Point,
        /// The other.
        to: Point,
        /// Drawn with.
        pen: Pen,
    },
    /// A line through points.
    Line {
        /// The points.
        points: Vec<Point>,
        /// Drawn with.
        pen: Pen,
    },
    /// A filled outline.
    Fill {
        /// Its corners.
        outline: Vec<Point>,
        /// Filled with.
        ink: Ink,
    },
    /// A filled round dot.
    Disc {
        /// Its centre.
        centre: Point,
        /// Its radius in CSS pixels.
        radius: f64,
        /// Filled with.
        ink: Ink,
    },
    /// A text.
    Text(Text),
}

/// Where a pointer may ask for a value: a plot and the axis that runs along it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// The plot.
    pub plot: Rect,
    /// The axis along it.
    pub x: Axis,
}

/// A picture ready to be painted.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// Its size in CSS pixels.
    pub size: Size,
    /// What is painted, in order.
    pub marks: Vec<Mark>,
    /// Where a pointer may ask for a value.
    pub window: Option<Window>,
}

impl Scene {
    /// An empty picture.
    pub fn new(size: Size) -> Self {
        Self { size, marks: Vec::new(), window: None }
    }

    /// Adds a straight line along or across.
    pub fn rule(&mut self, from: Point, to: Point, pen: Pen) {
        self.marks.push(Mark::Rule { from, to, pen });
    }

    /// Adds a line through points.
    pub fn line(&mut self, points: Vec<Point>, pen: Pen) {
        self.marks.push(Mark::Line { points, pen });
    }

    /// Adds a filled outline.
    pub fn fill(&mut self, outline: Vec<Point>, ink: impl Into<Ink>) {
        self.marks.push(Mark::Fill { outline, ink: ink.into() });
    }

    /// Adds a round dot.
    pub fn disc(&mut self, centre: Point, radius: f64, ink: impl Into<Ink>) {
        self.marks.push(Mark::Disc { centre, radius, ink: ink.into() });
    }

    /// Adds a text.
    pub fn text(&mut self, text: Text) {
        self.marks.push(Mark::Text(text));
    }

    /// Adds a text with what lies behind it covered, so that no grid line strikes it out.
    pub fn text_over(&mut self, text: Text, cover: Colour) {
        let (bounds, (width, height)) = (text.bounds(), self.size);
        let behind = Rect::new(bounds.left - 2.0, bounds.top, bounds.right + 2.0, bounds.bottom);
        let sheet = Rect::new(0.0, 0.0, width, height);
        self.fill(behind.corners().into_iter().map(|corner| sheet.nearest(corner)).collect(), cover);
        self.text(text);
    }

    /// Every text of the picture.
    pub fn texts(&self) -> impl Iterator<Item = &Text> {
        self.marks.iter().filter_map(|mark| if let Mark::Text(text) = mark { Some(text) } else { None })
    }
}
