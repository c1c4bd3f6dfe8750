//! A line cut into dashes for backends that know none, so that every one shows the same pattern.
use super::scene::Point;

/// More rounds of the pattern than this are not cut: the line is drawn full. No screen shows as many.
const MOST: f64 = 5_000.0;

/// The drawn pieces of a line, the pattern running on unbroken round its corners.
///
/// `pattern` gives lengths drawn and left out in turn, in the unit of the points. An empty pattern, one with a length that is not
/// a positive number, and a line too long to be cut give the line itself.
///
/// ```
/// use layshaft::chart::dash::dashes;
/// assert_eq!(dashes(&[(0.0, 0.0), (10.0, 0.0)], &[4.0, 2.0]), [[(0.0, 0.0), (4.0, 0.0)], [(6.0, 0.0), (10.0, 0.0)]]);
/// ```
pub fn dashes(points: &[Point], pattern: &[f64]) -> Vec<Vec<Point>> {
    let pattern = usable(points, pattern);
    if pattern.is_empty() {
        return vec![points.to_vec()];
    }
    let round: f64 = pattern.iter().sum();
    let mut cutter = Cutter { pattern, at: 0, left: pattern.first().copied().unwrap_or(round), done: Vec::new(), open: Vec::new() };
    for pair in points.windows(2) {
        if let [from, to] = pair {
            cutter.run(*from, *to);
        }
    }
    cutter.close();
    cutter.done
}

/// The pattern a line is drawn with; empty where it is drawn full.
pub fn usable<'a>(points: &[Point], pattern: &'a [f64]) -> &'a [f64] {
    let round: f64 = pattern.iter().sum();
    let is_usable = pattern.iter().all(|length| *length > 0.0) && round.is_finite() && round > 0.0;
    if is_usable && length(points) / round <= MOST { pattern } else { &[] }
}

/// How long a line is.
pub fn length(points: &[Point]) -> f64 {
    points.windows(2).map(|pair| if let [from, to] = pair { (to.0 - from.0).hypot(to.1 - from.1) } else { 0.0 }).sum()
}

struct Cutter<'a> {
    pattern: &'a [f64],
    /// Which length of the pattern is running.
    at: usize,
    /// How much of it is left.
    left: f64,
    done: Vec<Vec<Point>>,
    open: Vec<Point>,
}

impl Cutter<'_> {
    fn run(&mut self, from: Point, to: Point) {
        let whole = (to.0 - from.0).hypot(to.1 - from.1);
        if !whole.is_finite() || whole == 0.0 {
            return;
        }
        let place = |along: f64| (from.0 + (to.0 - from.0) * along / whole, from.1 + (to.1 - from.1) * along / whole);
        if self.draws() && self.open.is_empty() {
            self.open.push(from);
        }
        let mut along = 0.0;
        while whole - along > self.left {
            along += self.left;
            self.turn(place(along));
        }
        self.left -= whole - along;
        if self.draws() {
            self.open.push(to);
        }
    }

    /// A pattern of odd length runs through twice before it repeats, as in a style sheet.
    fn draws(&self) -> bool {
        self.at.is_multiple_of(2)
    }

    fn turn(&mut self, here: Point) {
        if self.draws() {
            self.open.push(here);
            self.close();
        } else {
            self.open.push(here);
        }
        self.at = if self.at + 1 >= self.pattern.len() * 2 { 0 } else { self.at + 1 };
        self.left = self.pattern.get(self.at % self.pattern.len().max(1)).copied().unwrap_or(f64::INFINITY);
    }

    fn close(&mut self) {
        if self.open.len() > 1 {
            self.done.push(std::mem::take(&mut self.open));
        }
        self.open.clear();
    }
}
