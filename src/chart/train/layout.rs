//! Where shafts and gears of a train lie: everything follows from the room there is and the tooth counts.
use super::{Coupling, Line, Shaft, Train, Wheel};
use crate::chart::{
    frame::{Axis, Scale},
    scene::{Rect, Size},
};

/// How a train is laid out at one size.
pub(super) struct Plan {
    pub(super) scale: Scale,
    /// Slots along the picture.
    pub(super) x: Axis,
    /// How wide a gear is.
    pub(super) face: f64,
    lines: [f64; 3],
    /// The radius of each gear, in order.
    radii: Vec<f64>,
}

/// Room above for labels, and below.
const ABOVE_PX: f64 = 40.0;
const BELOW_PX: f64 = 22.0;

impl Plan {
    pub(super) fn of(train: &Train, size: Size) -> Option<Self> {
        let ends = train.shafts.iter().flat_map(|shaft| [shaft.from, shaft.to]).chain(train.wheels.iter().map(|wheel| wheel.slot));
        let known = || ends.clone().filter(|slot| slot.is_finite());
        let (first, last) = (known().reduce(f64::min)?, known().reduce(f64::max)?);
        if last - first < 1e-9 || train.wheels.iter().all(|wheel| wheel.teeth == 0) {
            return None;
        }
        let shares = Shares::of(train);
        let below = if Scale::of(size.0).is_narrow { 2.0 * BELOW_PX } else { BELOW_PX };
        let distance = ((size.1 - ABOVE_PX - below) / (shares.above + shares.below)).max(1.0);
        let upper = ABOVE_PX + shares.above * distance;
        let lines = [upper, upper + distance, upper + distance * (1.0 + shares.idler)];
        let x = Axis::even((first, 10.0), (last, size.0 - 10.0));
        let spacing = x.length() / (last - first);
        let face = (spacing * 0.3).clamp(20.0, 46.0).min(spacing * 0.6);
        Some(Self { scale: Scale::of(size.0), x, face, lines, radii: shares.radii.iter().map(|share| share * distance).collect() })
    }

    pub(super) fn y(&self, line: Line) -> f64 {
        let [upper, lower, idler] = self.lines;
        match line {
            Line::Upper => upper,
            Line::Lower => lower,
            Line::Idler => idler,
        }
    }

    /// The block of the gear in place `at`.
    pub(super) fn block(&self, train: &Train, at: usize, wheel: &Wheel) -> Option<Rect> {
        let (shaft, radius) = (train.shafts.get(wheel.shaft)?, self.radii.get(at)?);
        let (x, y) = (self.x.place(wheel.slot), self.y(shaft.line));
        x.is_finite().then(|| Rect::new(x - self.face / 2.0, y - radius, x + self.face / 2.0, y + radius))
    }

    /// The line of a shaft as a box of its thickness.
    pub(super) fn rod(&self, shaft: &Shaft) -> Rect {
        let (y, half) = (self.y(shaft.line), self.thickness() / 2.0);
        Rect::new(self.x.place(shaft.from.min(shaft.to)), y - half, self.x.place(shaft.from.max(shaft.to)), y + half)
    }

    pub(super) fn thickness(&self) -> f64 {
        if self.scale.is_narrow { 6.0 } else { 9.0 }
    }

    /// The box of a coupling, as wide as its name wants.
    pub(super) fn hub(&self, train: &Train, coupling: &Coupling, name_width: f64) -> Option<Rect> {
        let y = self.y(train.shafts.get(coupling.shaft)?.line);
        let (x, half) =
            (self.x.place(coupling.slot), (name_width / 2.0 + if self.scale.is_narrow { 2.5 } else { 5.0 }).max(self.face * 0.5));
        Some(Rect::new(x - half, y - 20.0, x + half, y + 20.0))
    }
}

/// Everything in parts of the centre distance.
struct Shares {
    radii: Vec<f64>,
    /// From the upper line up to the highest gear.
    above: f64,
    /// From the upper line down to the lowest gear.
    below: f64,
    /// From the lower line down to the idler's.
    idler: f64,
}

impl Shares {
    fn of(train: &Train) -> Self {
        let usual = usual_sum(train);
        let radii: Vec<f64> =
            (0..).zip(&train.wheels).map(|(at, wheel)| f64::from(wheel.teeth) / pair_sum(train, at).unwrap_or(usual)).collect();
        let of_line = |line: Line| {
            let on_line =
                move |(wheel, radius): (&Wheel, &f64)| (train.shaft_of(wheel).map(|shaft| shaft.line) == Some(line)).then_some(*radius);
            train.wheels.iter().zip(&radii).filter_map(on_line).fold(0.0_f64, f64::max)
        };
        let touching = train.pairs().filter_map(|(one, other)| {
            let lines = (train.shaft_of(one)?.line, train.shaft_of(other)?.line);
            let share = (f64::from(one.teeth) + f64::from(other.teeth)) / usual;
            matches!(lines, (Line::Lower, Line::Idler) | (Line::Idler, Line::Lower)).then_some(share)
        });
        let idler = touching.reduce(f64::max).unwrap_or(0.5);
        let has_idler = train.shafts.iter().any(|shaft| shaft.line == Line::Idler);
        let lowest = if has_idler { of_line(Line::Lower).max(idler + of_line(Line::Idler).max(0.1)) } else { of_line(Line::Lower) };
        Self { above: of_line(Line::Upper), below: 1.0 + lowest, idler, radii }
    }
}

/// The tooth sum of the pair across the box that a gear belongs to.
fn pair_sum(train: &Train, at: usize) -> Option<f64> {
    let is_across = |wheel: &Wheel| train.shaft_of(wheel).is_some_and(|shaft| shaft.line != Line::Idler);
    let pair = train.meshes.iter().filter(|(one, other)| *one == at || *other == at);
    let mut sums = pair.filter_map(|(one, other)| {
        let (one, other) = (train.wheels.get(*one)?, train.wheels.get(*other)?);
        (is_across(one) && is_across(other)).then(|| f64::from(one.teeth) + f64::from(other.teeth))
    });
    sums.next().filter(|sum| *sum > 0.0)
}

/// The middle tooth sum of the pairs across the box: the scale of gears that have no such pair.
fn usual_sum(train: &Train) -> f64 {
    let mut sums: Vec<f64> = (0..train.wheels.len()).filter_map(|at| pair_sum(train, at)).collect();
    sums.sort_by(f64::total_cmp);
    let greatest = train.wheels.iter().map(|wheel| wheel.teeth).max().unwrap_or(1);
    sums.get(sums.len() / 2).copied().unwrap_or(2.0 * f64::from(greatest.max(1)))
}
