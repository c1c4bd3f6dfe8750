//! Two taper bearings against each other on a shaft: the thrust that each makes of its radial load, and which of them takes what is left over.
//!
//! A taper bearing pushed across its axis pushes its shaft out of its cup, by Fᵣ / (2 Y). The other bearing holds that and the shaft's own thrust;
//! where that does not press it home, it makes thrust of its own and the first holds the difference. P = Fᵣ, or 0.4 Fᵣ + Y Fₐ where Fₐ / Fᵣ is
//! beyond e. Source: ISO 281:2007 for X, Y = 0.4 cot α and e = 1.5 tan α, and common catalogue practice for the pair (from memory). Left out:
//! preload and play, and that the load acts nearer to the point of each cone than the middle of the bearing is.

use super::forces::newtons;
use crate::units::Force;

/// X of a single-row taper bearing whose thrust counts (ISO 281:2007).
const RADIAL_FACTOR: f64 = 0.4;
/// Y where none is typed: a cone of 14°. Common in gearboxes, from memory.
pub const USUAL_AXIAL_FACTOR: f64 = 1.6;
/// e · Y = 1.5 tan α · 0.4 cot α.
const THRESHOLD_TIMES_AXIAL: f64 = 0.6;

/// A single-row taper bearing, as its catalogue has it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taper {
    /// Y.
    pub axial_factor: f64,
    /// e.
    pub threshold: f64,
    /// Whether the pair it belongs to stands back to back (O): then each holds the thrust that pushes the shaft away from its own end. Face to
    /// face (X), as where the cups are let into the ends of a case, each holds what pushes the shaft towards it.
    pub back_to_back: bool,
}

impl Taper {
    /// One with that Y; e follows from it where it is not given.
    pub fn new(axial_factor: f64, threshold: Option<f64>, back_to_back: bool) -> Self {
        Self { axial_factor, threshold: threshold.unwrap_or(THRESHOLD_TIMES_AXIAL / axial_factor), back_to_back }
    }

    /// The thrust it makes of a radial load, Fᵣ / (2 Y).
    pub fn induced(&self, radial: Force) -> Force {
        radial * (0.5 / self.axial_factor)
    }

    /// P of a radial and an axial load; never less than the radial one.
    pub fn equivalent(&self, radial: Force, axial: Force) -> Force {
        let mixed = newtons(RADIAL_FACTOR * radial.value + self.axial_factor * axial.value);
        if axial.value > self.threshold * radial.value { mixed.max(radial) } else { radial }
    }
}

/// The axial load of each of two taper bearings; `thrust` pushes the shaft towards the second one, below nothing towards the first.
///
/// ```
/// use layshaft::toothload::taper::{Taper, axial_loads};
/// use layshaft::units::unit;
/// // 4,000 and 3,200 N across with Y 1.6 push with 1,250 and 1,000 N. 500 N towards the second: it holds 1,750, the first what it makes.
/// let taper = Taper::new(1.6, None, false);
/// let radial = [4_000.0, 3_200.0].map(|newtons| unit::NEWTON.of(newtons));
/// let axial = axial_loads([taper; 2], radial, unit::NEWTON.of(500.0));
/// assert_eq!(axial.map(|load| load.value.round()), [1_250.0, 1_750.0]);
/// ```
pub fn axial_loads(tapers: [Taper; 2], radial: [Force; 2], thrust: Force) -> [Force; 2] {
    let ([one, two], [across_one, across_two]) = (tapers, radial);
    // Back to back a push towards the second is held by the first.
    let towards_second = if one.back_to_back { -thrust } else { thrust };
    let [first, second] = [one.induced(across_one), two.induced(across_two)];
    let pressed = first + towards_second;
    if pressed >= second { [first, pressed] } else { [second - towards_second, second] }
}
