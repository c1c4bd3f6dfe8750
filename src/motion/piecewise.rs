//! Pieces of cubics: what a torque curve, a thrust and a net force all are, and where they cross a value.
//!
//! A torque curve is cubic between its points; at a fixed gear thrust is the same cubic over road speed, and road load is
//! quadratic. So every crossing asked for in this room is a root of a polynomial, and all of them are found.

use super::road_load::RoadLoad;

/// A polynomial of the fourth power has no more roots.
const MOST_ROOTS: usize = 4;

/// A few values, in order: the roots of one piece, kept without asking for memory.
#[derive(Clone, Debug, Default)]
pub(super) struct Few {
    values: [f64; MOST_ROOTS],
    from: usize,
    to: usize,
}

impl Few {
    fn push(&mut self, value: f64) {
        if let Some(place) = self.values.get_mut(self.to) {
            *place = value;
            self.to += 1;
        }
    }

    fn newest(&self) -> Option<f64> {
        self.values.get(self.from..self.to)?.last().copied()
    }

    /// Every value moved up by the same.
    fn moved(mut self, by: f64) -> Self {
        self.values.iter_mut().for_each(|value| *value += by);
        self
    }
}

impl Iterator for Few {
    type Item = f64;

    fn next(&mut self) -> Option<f64> {
        let value = self.values.get(self.from..self.to)?.first().copied()?;
        self.from += 1;
        Some(value)
    }
}

impl DoubleEndedIterator for Few {
    fn next_back(&mut self) -> Option<f64> {
        let value = self.values.get(self.from..self.to)?.last().copied()?;
        self.to -= 1;
        Some(value)
    }
}

/// A cubic on one interval: c0 + c1·d + c2·d² + c3·d³ with d = x − `from`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cubic {
    /// Where the piece begins.
    pub(super) from: f64,
    /// Where it ends.
    pub(super) to: f64,
    /// Its coefficients about `from`.
    pub(super) c: [f64; 4],
}

impl Cubic {
    /// A piece of one value.
    pub(super) fn constant(from: f64, to: f64, value: f64) -> Self {
        Self { from, to, c: [value, 0.0, 0.0, 0.0] }
    }

    /// The piece through two values with two slopes (Hermite's form).
    pub(super) fn hermite(from: (f64, f64), to: (f64, f64), slopes: (f64, f64)) -> Self {
        let width = to.0 - from.0;
        let secant = (to.1 - from.1) / width;
        let c2 = (3.0 * secant - 2.0 * slopes.0 - slopes.1) / width;
        let c3 = (slopes.0 + slopes.1 - 2.0 * secant) / (width * width);
        Self { from: from.0, to: to.0, c: [from.1, slopes.0, c2, c3] }
    }

    /// The value at `x`; outside the interval the cubic simply goes on.
    pub(super) fn at(&self, x: f64) -> f64 {
        self.at_distance(x - self.from)
    }

    /// The value at a distance from `from`.
    pub(super) fn at_distance(&self, d: f64) -> f64 {
        let [c0, c1, c2, c3] = self.c;
        c0 + d * (c1 + d * (c2 + d * c3))
    }

    /// The same cubic written about one of its roots, with nothing at the root: its small values beside the root lose no digits.
    pub(super) fn about_root(&self, root: f64) -> Self {
        let [_, c1, c2, c3] = self.about(root).c;
        Self { from: root, to: root, c: [0.0, c1, c2, c3] }
    }

    /// The same shape over an axis stretched by `along`, its values multiplied by `up`.
    pub(super) fn stretched(&self, along: f64, up: f64) -> Self {
        let [c0, c1, c2, c3] = self.c;
        let c = [up * c0, up * c1 / along, up * c2 / (along * along), up * c3 / (along * along * along)];
        Self { from: self.from * along, to: self.to * along, c }
    }

    /// The same cubic on the part of its interval between `from` and `to`; `None` where nothing is left.
    pub(super) fn cut(&self, from: f64, to: f64) -> Option<Self> {
        let (from, to) = (from.max(self.from), to.min(self.to));
        (to > from).then(|| Self { to, ..self.about(from) })
    }

    /// The same cubic written about another beginning.
    fn about(&self, from: f64) -> Self {
        let [c0, c1, c2, c3] = self.c;
        let d = from - self.from;
        let c = [c0 + d * (c1 + d * (c2 + d * c3)), c1 + d * (2.0 * c2 + 3.0 * d * c3), c2 + 3.0 * d * c3, c3];
        Self { from, to: self.to, c }
    }

    /// The piece, a thrust over speed, less a road load.
    pub(super) fn less(&self, load: &RoadLoad) -> Self {
        let [c0, c1, c2, c3] = self.c;
        let c = [c0 - load.at(self.from), c1 - load.linear - 2.0 * load.square * self.from, c2 - load.square, c3];
        Self { c, ..*self }
    }

    /// `mine` times this piece less `theirs` times another, on the interval both share.
    pub(super) fn weighed_against(&self, mine: f64, other: &Self, theirs: f64) -> Option<Self> {
        let (here, there) = (self.cut(other.from, other.to)?, other.cut(self.from, self.to)?);
        let mut c = [0.0; 4];
        for (sum, (a, b)) in c.iter_mut().zip(here.c.iter().zip(there.c)) {
            *sum = mine * a - theirs * b;
        }
        Some(Self { c, ..here })
    }

    /// Every place inside the interval where the piece takes `value`, rising.
    pub(super) fn crossings(&self, value: f64) -> Few {
        let [c0, c1, c2, c3] = self.c;
        roots(&[c0 - value, c1, c2, c3], self.to - self.from).moved(self.from)
    }

    /// Every turning point inside the interval.
    pub(super) fn turns(&self) -> Few {
        let [_, c1, c2, c3] = self.c;
        roots(&[c1, 2.0 * c2, 3.0 * c3], self.to - self.from).moved(self.from)
    }

    /// Every turning point of x times the piece (power, where the piece is torque).
    pub(super) fn turns_of_product(&self) -> Few {
        let [_, q1, q2, q3, q4] = self.product();
        roots(&[q1, 2.0 * q2, 3.0 * q3, 4.0 * q4], self.to - self.from).moved(self.from)
    }

    /// Every place where x times the piece takes `value`.
    pub(super) fn crossings_of_product(&self, value: f64) -> Few {
        let [q0, q1, q2, q3, q4] = self.product();
        roots(&[q0 - value, q1, q2, q3, q4], self.to - self.from).moved(self.from)
    }

    /// The coefficients of x times the piece, about `from`.
    fn product(&self) -> [f64; 5] {
        let [c0, c1, c2, c3] = self.c;
        let x = self.from;
        [x * c0, x * c1 + c0, x * c2 + c1, x * c3 + c2, c3]
    }
}

/// The value of a row of pieces at `x`; `None` outside them, rounding at the two ends forgiven.
pub(super) fn value(pieces: &[Cubic], x: f64) -> Option<f64> {
    let (first, last) = (pieces.first()?.from, pieces.last()?.to);
    let slack = 1e-12 * last.abs();
    let x = if x < first && x >= first - slack {
        first
    } else if x > last && x <= last + slack {
        last
    } else {
        x
    };
    let at = pieces.partition_point(|piece| piece.to < x);
    pieces.get(at).filter(|piece| x >= piece.from).map(|piece| piece.at(x))
}

/// All roots of a polynomial (lowest power first, the fourth at most) in 0 ..= `width`, rising.
///
/// Between two turning points a polynomial crosses zero at most once, so the roots of the derivative bracket all of its own.
/// A touch that does not cross may be missed; no question of this room turns on one.
fn roots(c: &[f64], width: f64) -> Few {
    let Some((_, upper)) = c.split_first() else { return Few::default() };
    if upper.iter().all(|c| *c == 0.0) || !width.is_finite() || is_off_zero(c, width) {
        return Few::default();
    }
    let mut slope = [0.0; MOST_ROOTS];
    for (slope, (c, power)) in slope.iter_mut().zip(upper.iter().zip(1_u8..)) {
        *slope = c * f64::from(power);
    }
    let slope = slope.get(..upper.len()).unwrap_or_default();
    let mut found = Few::default();
    let mut low = 0.0;
    for high in roots(slope, width).filter(|edge| *edge > 0.0 && *edge < width).chain([width]) {
        if let Some(root) = solve_between(c, slope, low, high).filter(|root| found.newest().is_none_or(|last| *root > last)) {
            found.push(root);
        }
        low = high;
    }
    found
}

/// Whether a polynomial of the third power at most keeps clear of zero in 0 ..= `width`, by more than any rounding of its values.
///
/// Its graph lies within the hull of its Bézier points (Farin, Curves and Surfaces for CAGD, ch. 4; from memory). Most pieces that are
/// asked for a crossing have none, and need no search then.
fn is_off_zero(c: &[f64], width: f64) -> bool {
    /// Far above what sums of four products can be off by.
    const ROUNDING: f64 = 1e-12;
    let (points, scale) = match *c {
        [a, b] => {
            let b = b * width;
            ([a, a, a + b, a + b], a.abs() + b.abs())
        }
        [a, b, c] => {
            let (b, c) = (b * width, c * width * width);
            ([a, a, a + 0.5 * b, a + b + c], a.abs() + b.abs() + c.abs())
        }
        [a, b, c, d] => {
            let (b, c, d) = (b * width, c * width * width, d * width * width * width);
            ([a, a + b / 3.0, a + (2.0 * b + c) / 3.0, a + b + c + d], a.abs() + b.abs() + c.abs() + d.abs())
        }
        _ => return false,
    };
    let off = ROUNDING * scale;
    points.iter().all(|point| *point > off) || points.iter().all(|point| *point < -off)
}

fn horner(c: &[f64], x: f64) -> f64 {
    c.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

/// The one root between two ends of opposite sign: Newton's steps, halved where they would leave the bracket.
fn solve_between(c: &[f64], slope: &[f64], low: f64, high: f64) -> Option<f64> {
    const MOST_STEPS: usize = 80;
    let (at_low, at_high) = (horner(c, low), horner(c, high));
    if at_low == 0.0 {
        return Some(low);
    }
    if at_high == 0.0 {
        return Some(high);
    }
    if (at_low > 0.0) == (at_high > 0.0) {
        return None;
    }
    let (mut low, mut high) = (low, high);
    let mut x = 0.5 * (low + high);
    for _ in 0..MOST_STEPS {
        let value = horner(c, x);
        if value == 0.0 {
            return Some(x);
        }
        if (value > 0.0) == (at_low > 0.0) {
            low = x;
        } else {
            high = x;
        }
        let newton = x - value / horner(slope, x);
        let next = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
        if (next - x).abs() <= f64::EPSILON * x.abs() || next <= low || next >= high {
            return Some(next);
        }
        x = next;
    }
    Some(x)
}
