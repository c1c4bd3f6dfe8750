//! Which way a shaft points, from what is measured in side and in plan view, and the angle between two of them.

use uom::si::angle::radian;

use crate::units::{Angle, Length};

/// The direction of a shaft, followed towards the rear.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Direction {
    /// How far it falls over each length along the car: the tangent of its angle in side view.
    down: f64,
    /// How far it runs to the right over each length along the car: the tangent of its angle in plan view.
    right: f64,
}

/// How far a shaft leans in one view.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lean {
    /// By an angle, as an inclinometer reads it.
    Angle(Angle),
    /// By how far its rear joint lies below, or right of, its front joint.
    Offset(Length),
}

impl Direction {
    /// A shaft whose angles in side view (falling towards the rear) and in plan view (running to the right) are these.
    ///
    /// Both are angles as a drawing shows them, each in its own view. An inclinometer laid along a shaft that also runs sideways reads
    /// less than its side view by the cosine of the plan angle: 0.02° at 5° in both.
    pub fn new(side: Angle, plan: Angle) -> Self {
        Self { down: side.get::<radian>().tan(), right: plan.get::<radian>().tan() }
    }

    /// A shaft of a length between joint centres that leans so in both views.
    ///
    /// Model: the length is the diagonal of what it runs along the car, down and sideways, x² + down² + right² = L²; an angle gives
    /// its share of x, an offset is as measured. None where the offsets are longer than the shaft.
    pub fn leaning(side: Lean, plan: Lean, length: Length) -> Option<Self> {
        let of = |lean: Lean| match lean {
            Lean::Angle(angle) => (angle.get::<radian>().tan(), 0.0),
            Lean::Offset(offset) => (0.0, (offset / length).value),
        };
        let ((down, below), (right, beside)) = (of(side), of(plan));
        let along = ((1.0 - below * below - beside * beside) / (1.0 + down * down + right * right)).sqrt();
        (along > 0.0 && along.is_finite()).then(|| Self { down: down + below / along, right: right + beside / along })
    }

    /// Its angle in side view, positive where it falls towards the rear.
    pub fn side(self) -> Angle {
        Angle::new::<radian>(self.down.atan())
    }

    /// Its angle in plan view, positive where it runs to the right towards the rear.
    pub fn plan(self) -> Angle {
        Angle::new::<radian>(self.right.atan())
    }

    /// How far a shaft of a length between joint centres runs along the car: L ÷ √(1 + down² + right²).
    pub fn along(self, length: Length) -> Length {
        length / (1.0 + self.down * self.down + self.right * self.right).sqrt()
    }

    /// The length of a shaft that runs so far along the car; the inverse of [`Direction::along`].
    pub fn length_over(self, along: Length) -> Length {
        along * (1.0 + self.down * self.down + self.right * self.right).sqrt()
    }

    /// The direction once the rear joint has gone straight down, of a shaft that runs so far along the car.
    #[must_use]
    pub fn lowered(self, drop: Length, along: Length) -> Self {
        Self { down: self.down + (drop / along).value, ..self }
    }

    /// The angle between two shafts: the working angle of the joint that joins them.
    ///
    /// Model: tan β = |a × b| ÷ (a · b) of the two directions a, b = (1, right, −down). Exact, and from one level shaft to another
    /// with side angle s and plan angle p it is tan² β = tan² s + tan² p. The rule of thumb √(s² + p²) is 0.002° high at 3° and 2°.
    pub fn angle_to(self, other: Self) -> Angle {
        let cross = cross(self.vector(), other.vector());
        Angle::new::<radian>(dot(cross, cross).sqrt().atan2(dot(self.vector(), other.vector())))
    }

    /// How the shaft behind turns off from this one, as a turn in side view and a turn in plan view: the working angle, split in the
    /// ratio of the two differences of slope.
    pub fn bend_to(self, other: Self) -> (Angle, Angle) {
        let (down, right) = (other.down - self.down, other.right - self.right);
        let whole = down.hypot(right);
        let angle = self.angle_to(other);
        if whole > 0.0 { (angle * (down / whole), angle * (right / whole)) } else { (Angle::default(), Angle::default()) }
    }

    /// Along the car to the rear, to the right, up.
    pub(super) fn vector(self) -> [f64; 3] {
        [1.0, self.right, -self.down]
    }
}

/// The product of two vectors that is a number.
pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    let ([a0, a1, a2], [b0, b1, b2]) = (a, b);
    a0 * b0 + a1 * b1 + a2 * b2
}

/// The product of two vectors that is a vector, square to both.
pub(super) fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    let ([a0, a1, a2], [b0, b1, b2]) = (a, b);
    [a1 * b2 - a2 * b1, a2 * b0 - a0 * b2, a0 * b1 - a1 * b0]
}
