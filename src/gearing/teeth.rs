//! Tooth counts, meshes and exact ratios.

use std::fmt;

/// An exact ratio: turns of the driving side for one turn of the driven side; negative where the direction reverses.
pub type Ratio = num_rational::Ratio<i128>;

/// A ratio as a plain number, to be shown or to be used in a formula of physics.
///
/// ```
/// use layshaft::gearing::{Ratio, teeth::decimal};
/// assert_eq!(decimal(Ratio::new(37, 16)), 2.3125);
/// ```
#[expect(clippy::cast_precision_loss, reason = "tooth counts and their products are far below 2^53")]
pub fn decimal(ratio: Ratio) -> f64 {
    *ratio.numer() as f64 / *ratio.denom() as f64
}

/// The number of teeth of a gear that a gearbox or axle can hold: 8 to 150.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Teeth(u16);

impl Teeth {
    /// Fewer teeth than this are undercut away.
    pub const LEAST: u16 = 8;
    /// More teeth than this do not fit into a car's gearbox or axle.
    pub const GREATEST: u16 = 150;

    /// A checked tooth count; `None` outside 8 to 150.
    ///
    /// ```
    /// use layshaft::gearing::Teeth;
    /// assert_eq!(Teeth::new(18).map(Teeth::count), Some(18));
    /// assert_eq!((Teeth::new(7), Teeth::new(151)), (None, None));
    /// ```
    pub fn new(count: u16) -> Option<Self> {
        (Self::LEAST..=Self::GREATEST).contains(&count).then_some(Self(count))
    }

    /// How many, 8 to 150.
    pub fn count(self) -> u16 {
        self.0
    }

    pub(crate) fn exact(self) -> i128 {
        i128::from(self.0)
    }
}

impl fmt::Display for Teeth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// Two gears in mesh.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Mesh {
    /// The gear that gives the power when the engine drives.
    pub driver: Teeth,
    /// The gear that takes it.
    pub driven: Teeth,
}

impl Mesh {
    /// A mesh of two counts; `None` where one is outside 8 to 150.
    pub fn new(driver: u16, driven: u16) -> Option<Self> {
        Some(Self { driver: Teeth::new(driver)?, driven: Teeth::new(driven)? })
    }

    /// Turns of the driver for one turn of the driven gear, without regard to direction: z₂ / z₁.
    ///
    /// ```
    /// use layshaft::gearing::{Mesh, Ratio};
    /// assert_eq!(Mesh::new(18, 37).map(Mesh::ratio), Some(Ratio::new(37, 18)));
    /// // A ratio is kept in its lowest terms.
    /// assert_eq!(Mesh::new(12, 42).map(Mesh::ratio), Some(Ratio::new(7, 2)));
    /// ```
    pub fn ratio(self) -> Ratio {
        Ratio::new(self.driven.exact(), self.driver.exact())
    }

    /// The tooth sum, which the centre distance follows at one pitch.
    pub fn sum(self) -> u16 {
        self.driver.0 + self.driven.0
    }
}
