//! Labels find places without lying on one another: along one line in order, or about a point where the picture is free.
use super::scene::{Point, Rect, Spot, Text};

/// A label that wants to be centred somewhere on a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// Where its centre would best be, in pixels.
    pub centre: f64,
    /// How wide it is, the gap to its neighbour included.
    pub width: f64,
}

/// The centres of labels on one line: in the given order, none over another, all between two ends, moved as little as can be.
///
/// Answers `None` where they do not all fit. Wishes must come in order of their centres.
///
/// Method: pooled neighbours (isotonic least squares): labels that would overlap form a block that stands centred on its wishes.
///
/// ```
/// use layshaft::chart::place::{Wish, centres};
/// let wish = Wish { centre: 50.0, width: 20.0 };
/// // Both want the same place: each gives way by half its width.
/// assert_eq!(centres(&[wish, wish], 0.0, 100.0), Some(vec![40.0, 60.0]));
/// assert_eq!(centres(&[wish, wish], 0.0, 30.0), None);
/// ```
pub fn centres(wishes: &[Wish], least: f64, greatest: f64) -> Option<Vec<f64>> {
    let total: f64 = wishes.iter().map(|wish| wish.width).sum();
    if total > greatest - least {
        return None;
    }
    // Each label's left edge, less what stands before it, must not fall: then none overlaps.
    let mut blocks: Vec<(f64, f64, f64)> = Vec::new();
    let mut before = 0.0;
    for wish in wishes {
        let free = wish.centre - wish.width / 2.0 - before;
        before += wish.width;
        let mut block = (free, 1.0, 1.0);
        while let Some(last) = blocks.pop_if(|last| last.0 >= block.0) {
            let weight = last.1 + block.1;
            block = ((last.0 * last.1 + block.0 * block.1) / weight, weight, last.2 + block.2);
        }
        blocks.push(block);
    }
    let mut frees =
        blocks.into_iter().flat_map(|(free, _, count)| (0..).map(f64::from).take_while(move |at| *at < count).map(move |_| free));
    let mut before = 0.0;
    let place = |wish: &Wish| {
        let free = frees.next()?.clamp(least, (greatest - total).max(least));
        let centre = free + before + wish.width / 2.0;
        before += wish.width;
        Some(centre)
    };
    wishes.iter().map(place).collect()
}

/// Where labels already stand, and what they must keep clear of.
#[derive(Clone, Debug)]
pub struct Taken {
    inside: Rect,
    boxes: Vec<Rect>,
    lines: Vec<Stretch>,
}

/// A few neighbouring pieces of a line, and the box they lie in: most labels meet few boxes.
#[derive(Clone, Debug)]
struct Stretch {
    around: Rect,
    points: Vec<Point>,
}

/// How many points a stretch has at most.
const STRETCH: usize = 9;

impl Stretch {
    fn of(points: &[Point]) -> Self {
        Self { around: Rect::around(points), points: points.to_vec() }
    }

    fn crosses(&self, label: &Rect) -> bool {
        let around = &self.around;
        let is_near = around.left <= label.right && label.left <= around.right && around.top <= label.bottom && label.top <= around.bottom;
        is_near && self.points.windows(2).any(|pair| if let [from, to] = pair { label.is_crossed_by(*from, *to) } else { false })
    }
}

impl Taken {
    /// Nothing stands yet inside these bounds.
    pub fn new(inside: Rect) -> Self {
        Self { inside, boxes: Vec::new(), lines: Vec::new() }
    }

    /// Keeps a box free.
    pub fn keep(&mut self, taken: Rect) {
        self.boxes.push(taken);
    }

    /// Keeps labels off a line.
    pub fn keep_off(&mut self, points: &[Point]) {
        // A stretch begins with the point its neighbour ends with.
        let begins = (0..points.len().saturating_sub(1)).step_by(STRETCH - 1);
        self.lines.extend(begins.filter_map(|from| points.get(from..points.len().min(from + STRETCH))).map(Stretch::of));
    }

    /// Whether a label may stand here without covering another.
    pub fn is_clear(&self, label: &Rect) -> bool {
        self.inside.holds(label) && !self.boxes.iter().any(|taken| taken.meets(label))
    }

    fn is_off_lines(&self, label: &Rect) -> bool {
        !self.lines.iter().any(|stretch| stretch.crosses(label))
    }

    /// Takes the first text that stands clear of labels and lines; failing that, the first that stands clear of labels.
    pub fn choose(&mut self, texts: impl IntoIterator<Item = Text>) -> Option<Text> {
        let boxed = texts.into_iter().map(|text| (text.bounds(), text));
        let (bounds, best) = self.best(boxed)?;
        self.keep(bounds.grown(2.0));
        Some(best)
    }

    /// As [`Self::choose`], of one text in several wordings, each tried at all spots before the next.
    pub fn choose_wording(&mut self, wordings: &[Text], spots: &[Spot]) -> Option<Text> {
        let (bounds, (text, spot)) = self.best(at_spots(wordings, spots))?;
        self.keep(bounds.grown(2.0));
        Some(text.moved(spot))
    }

    /// As [`Self::choose_free`], of one text in several wordings, each tried at all spots before the next.
    pub fn choose_free_wording(&mut self, wordings: &[Text], spots: &[Spot]) -> Option<Text> {
        let (bounds, (text, spot)) = at_spots(wordings, spots).find(|(bounds, _)| self.is_free(bounds))?;
        self.keep(bounds.grown(2.0));
        Some(text.moved(spot))
    }

    /// The first box that stands clear of labels and lines; failing that, the first that stands clear of labels.
    fn best<T>(&self, boxes: impl Iterator<Item = (Rect, T)>) -> Option<(Rect, T)> {
        let mut first = None;
        for (bounds, what) in boxes.filter(|(bounds, _)| self.is_clear(bounds)) {
            if self.is_off_lines(&bounds.grown(1.0)) {
                return Some((bounds, what));
            }
            first.get_or_insert((bounds, what));
        }
        first
    }

    fn is_free(&self, bounds: &Rect) -> bool {
        self.is_clear(bounds) && self.is_off_lines(&bounds.grown(1.0))
    }

    /// Takes the first set of texts that all stand clear of what is taken, or none.
    pub fn choose_set(&mut self, sets: impl IntoIterator<Item = Vec<Text>>) -> Vec<Text> {
        let fits = |set: &Vec<Text>| set.iter().all(|text| self.is_clear(&text.bounds()));
        let set = sets.into_iter().find(fits).unwrap_or_default();
        self.boxes.extend(set.iter().map(|text| text.bounds().grown(2.0)));
        set
    }

    /// Takes the first text that stands clear of labels and lines, or none.
    pub fn choose_free(&mut self, texts: impl IntoIterator<Item = Text>) -> Option<Text> {
        let mut boxed = texts.into_iter().map(|text| (text.bounds(), text));
        let (bounds, free) = boxed.find(|(bounds, _)| self.is_free(bounds))?;
        self.keep(bounds.grown(2.0));
        Some(free)
    }
}

/// Every wording at every spot, with the box it fills there.
fn at_spots<'a>(wordings: &'a [Text], spots: &'a [Spot]) -> impl Iterator<Item = (Rect, (&'a Text, Spot))> {
    wordings.iter().flat_map(move |text| {
        let width = text.width();
        spots.iter().map(move |spot| (text.bounds_at(*spot, width), (text, *spot)))
    })
}
