//! How often the same teeth of a pair meet, and how often teeth meet at all.

use num_integer::Integer;

use super::teeth::{Mesh, Teeth};
use crate::units::{AngularVelocity, Frequency};

/// How the teeth of a pair take turns.
///
/// With a common factor of 1 every tooth meets every tooth of the other gear before the same two meet again (a hunting pair),
/// which spreads wear. Source: the common factor as the number of assembly phases, Foiles, "Gear frequencies using the
/// Euclidean algorithm"; the tooth-repeat frequency from memory, and it follows from the least common multiple.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hunting {
    /// The greatest common factor of the two counts, which is also the number of ways the pair can be assembled.
    pub common_factor: u16,
    /// Turns of the driver until the same two teeth meet again.
    pub driver_turns: u32,
    /// Turns of the driven gear until the same two teeth meet again.
    pub driven_turns: u32,
}

impl Hunting {
    /// How the teeth of that pair take turns.
    ///
    /// ```
    /// use layshaft::gearing::{Mesh, hunting::Hunting};
    /// # fn example() -> Option<()> {
    /// let axle = Hunting::of(Mesh::new(11, 43)?);
    /// assert!(axle.is_hunting());
    /// assert_eq!((axle.driver_turns, axle.driven_turns), (43, 11));
    /// // 42 = 7 × 6 and 12 = 2 × 6: the same teeth meet again after 7 turns of the pinion.
    /// let even = Hunting::of(Mesh::new(12, 42)?);
    /// assert_eq!((even.common_factor, even.driver_turns), (6, 7));
    /// # Some(())
    /// # }
    /// # assert!(example().is_some());
    /// ```
    pub fn of(mesh: Mesh) -> Self {
        let (driver, driven) = (mesh.driver.count(), mesh.driven.count());
        let common_factor = driver.gcd(&driven);
        Self { common_factor, driver_turns: u32::from(driven / common_factor), driven_turns: u32::from(driver / common_factor) }
    }

    /// Whether every tooth meets every tooth.
    pub fn is_hunting(self) -> bool {
        self.common_factor == 1
    }

    /// Meshes of teeth until the same two meet again: the least common multiple of the counts.
    pub fn meshes(self, mesh: Mesh) -> u32 {
        self.driver_turns * u32::from(mesh.driver.count())
    }
}

/// The pairs that hunt with one tooth less or more on one of the two gears.
///
/// ```
/// use layshaft::gearing::{Mesh, hunting::hunting_beside};
/// // Of 19/30, 21/30, 20/29 and 20/31 only 21 and 30 have a factor in common.
/// let beside = Mesh::new(20, 30).map(hunting_beside);
/// assert_eq!(beside, Some([Mesh::new(19, 30), Mesh::new(20, 29), Mesh::new(20, 31)].into_iter().flatten().collect()));
/// ```
pub fn hunting_beside(mesh: Mesh) -> Vec<Mesh> {
    let (driver, driven) = (mesh.driver.count(), mesh.driven.count());
    let beside = [(driver - 1, driven), (driver + 1, driven), (driver, driven - 1), (driver, driven + 1)];
    let pairs = beside.into_iter().filter_map(|(driver, driven)| Mesh::new(driver, driven));
    pairs.filter(|pair| Hunting::of(*pair).is_hunting()).collect()
}

/// How often teeth meet, f = z · n, without regard to direction.
///
/// ```
/// use layshaft::gearing::{Teeth, hunting::mesh_frequency};
/// use layshaft::units::{common::rpm, show, unit};
/// // 3,000 rpm are 50 turns a second, each with 25 teeth.
/// let frequency = Teeth::new(25).map(|teeth| mesh_frequency(teeth, rpm(3_000.0)));
/// assert_eq!(frequency.map(|frequency| show(&frequency, &unit::HERTZ, 0)).as_deref(), Some("1,250 Hz"));
/// ```
pub fn mesh_frequency(teeth: Teeth, speed: AngularVelocity) -> Frequency {
    let turns_per_second = speed.get::<uom::si::angular_velocity::revolution_per_second>().abs();
    Frequency::new::<uom::si::frequency::hertz>(f64::from(teeth.count()) * turns_per_second)
}
