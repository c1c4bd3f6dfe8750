//! What the two bearings of a shaft hold, from the loads of its gears.

use super::forces::newtons;
use crate::units::{Force, Length};

/// The load of one mesh on a shaft, signed in axes fixed to the housing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftLoad {
    /// How far along the shaft from the first bearing; beyond the second bearing for an overhung gear.
    pub at: Length,
    /// Across the plane of the two shafts.
    pub tangential: Force,
    /// In the plane of the two shafts, towards the other one: what pushes a gear out of mesh is below nothing.
    pub radial: Force,
    /// Along the shaft; it tips the shaft in the plane of `radial` by its distance from the middle.
    pub axial: Force,
    /// Where `axial` acts, from the middle of the shaft.
    pub pitch_radius: Length,
}

/// What one bearing holds across the shaft, signed as the loads are.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reaction {
    /// Across the plane of the two shafts.
    pub tangential: Force,
    /// In the plane of the two shafts.
    pub radial: Force,
}

impl Reaction {
    /// The whole radial load of the bearing.
    pub fn whole(&self) -> Force {
        newtons(self.tangential.value.hypot(self.radial.value))
    }
}

/// The load on the first and the second bearing of a shaft, `span` apart; `None` for a span of nothing.
///
/// Model: a rigid shaft on two points, moments about the first: B·span = Σ F·x, with the thrust's moment Fₐ·r taken off in the
/// plane of the radial forces. Both loads are positive in the direction of the forces that cause them.
///
/// ```
/// use layshaft::toothload::reactions::{ShaftLoad, bearing_loads};
/// use layshaft::units::{Force, common::millimetres, show, unit};
/// // A straight gear at a quarter of the span: three quarters of its load on the nearer bearing.
/// let gear = ShaftLoad {
///     at: millimetres(100.0),
///     tangential: unit::NEWTON.of(1_000.0),
///     radial: Force::default(),
///     axial: Force::default(),
///     pitch_radius: millimetres(25.0),
/// };
/// let shown = bearing_loads(millimetres(400.0), &[gear]).map(|loads| loads.map(|load| show(&load.whole(), &unit::NEWTON, 0)));
/// assert_eq!(shown, Some(["750 N".to_owned(), "250 N".to_owned()]));
/// ```
pub fn bearing_loads(span: Length, loads: &[ShaftLoad]) -> Option<[Reaction; 2]> {
    if !(span.value > 0.0 && span.value.is_finite()) {
        return None;
    }
    let sum = |of: &dyn Fn(&ShaftLoad) -> f64| loads.iter().map(of).sum::<f64>();
    let second_tangential = sum(&|load| load.tangential.value * load.at.value) / span.value;
    let second_radial = sum(&|load| load.radial.value * load.at.value - load.axial.value * load.pitch_radius.value) / span.value;
    let first = Reaction {
        tangential: newtons(sum(&|load| load.tangential.value) - second_tangential),
        radial: newtons(sum(&|load| load.radial.value) - second_radial),
    };
    Some([first, Reaction { tangential: newtons(second_tangential), radial: newtons(second_radial) }])
}
