//! A picture before it is painted: strokes, fills and texts in CSS pixels, right and down from the top left corner.
//!
//! Charts only make scenes; [`super::paint`] alone knows how a backend draws. So a test can ask a scene where every label stands.
pub use super::rect::Rect;
use super::{face::Face, frame::Axis, palette::Colour};

/// A place in CSS pixels: to the right, down.
pub type Point = (f64, f64);

/// A width and a height in CSS pixels.
pub type Size = (f64, f64);

/// A colour and how much of it covers what lies below, from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ink {
    /// Red, green and blue.
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
    /// The text runs to the right of it.
    Start,
    /// Half of the text on either side.
    Middle,
    /// The text runs up to it from the left.
    End,
}

/// Where a text may stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Which part of it stands there.
    pub anchor: Anchor,
    /// On its baseline.
    pub at: Point,
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

    /// The box of its letters: as wide as the text, from above the capitals to below the descenders.
    pub fn bounds(&self) -> Rect {
        self.bounds_at(Spot { anchor: self.anchor, at: self.at }, self.width())
    }

    /// The box of its letters where it stood somewhere else, its width known.
    pub fn bounds_at(&self, spot: Spot, width: f64) -> Rect {
        let back = match spot.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width / 2.0,
            Anchor::End => width,
        };
        let (left, baseline) = (spot.at.0 - back, spot.at.1);
        Rect::new(left, baseline - ABOVE * self.size_px, left + width, baseline + BELOW * self.size_px)
    }

    /// The same text somewhere else.
    #[must_use]
    pub fn moved(&self, spot: Spot) -> Self {
        Self { at: spot.at, anchor: spot.anchor, ..self.clone() }
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
        /// Corners in order, in CSS pixels.
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
        /// In CSS pixels from the top left corner.
        centre: Point,
        /// Its radius in CSS pixels.
        radius: f64,
        /// Filled with.
        ink: Ink,
    },
    /// A line of words or figures.
    Text(Text),
}

/// Where a pointer may ask for a value: a plot and the axis that runs along it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Where the pointer is heeded, in CSS pixels.
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
