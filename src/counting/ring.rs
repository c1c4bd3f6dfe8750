//! A ring of teeth as a camera sees it: a tilted circle in perspective, to first order.

use crate::sound::recording::places::real;
use std::f64::consts::TAU;
use std::sync::LazyLock;

/// Places around a ring.
pub(super) const AROUND: usize = 512;

/// Cosine and sine at every place around a ring.
pub(super) static TURNS: LazyLock<Vec<(f64, f64)>> =
    LazyLock::new(|| (0..AROUND).map(|place| (TAU * real(place) / real(AROUND)).sin_cos()).map(|(sin, cos)| (cos, sin)).collect());

/// Where a ring lies. The centre is the image of the true centre, which is not the middle of the ellipse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ring {
    /// The centre, in pixels.
    pub(super) x: f64,
    pub(super) y: f64,
    /// The radius half-way up the teeth, in pixels.
    pub(super) radius: f64,
    /// The perspective: how much nearer one side is than the centre, of 1.
    pub(super) nearer: (f64, f64),
    /// The ellipse: how much longer one way than the other, of 1.
    pub(super) longer: (f64, f64),
}

impl Ring {
    /// A circle seen from straight above.
    pub(super) fn flat(x: f64, y: f64, radius: f64) -> Self {
        Self { x, y, radius, nearer: (0.0, 0.0), longer: (0.0, 0.0) }
    }

    /// The way from the centre to the ring in a direction, in pixels.
    #[inline]
    pub(super) fn towards(&self, (cos, sin): (f64, f64)) -> (f64, f64) {
        let distance = self.radius / (1.0 + self.nearer.0 * cos + self.nearer.1 * sin);
        let (more, skew) = self.longer;
        (distance * ((1.0 + more) * cos + skew * sin), distance * (skew * cos + (1.0 - more) * sin))
    }

    /// A place at an angle in rad and so many radii from the centre.
    pub(super) fn place(&self, angle: f64, radii: f64) -> (f64, f64) {
        let (sin, cos) = angle.sin_cos();
        let (x, y) = self.towards((cos, sin));
        (self.x + radii * x, self.y + radii * y)
    }

    pub(super) fn numbers(&self) -> [f64; 7] {
        [self.x, self.y, self.radius, self.nearer.0, self.nearer.1, self.longer.0, self.longer.1]
    }

    /// A ring of seven numbers.
    pub(super) fn of(numbers: [f64; 7]) -> Self {
        let [x, y, radius, nearer_x, nearer_y, more, skew] = numbers;
        Self { x, y, radius, nearer: (nearer_x, nearer_y), longer: (more, skew) }
    }
}
