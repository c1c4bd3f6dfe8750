//! What a wish needs that the job does not give.

use crate::finder::inputs::Given;
use crate::finder::wish::{Measure, Wish};

/// What is missing for a wish, which is then left out of the search.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotReady {
    /// The shift rpm.
    Shift,
    /// The engine and the car's mass.
    Engine,
    /// The tyre on the car.
    FittedTyre,
    /// The gear set in the car.
    FittedSet,
    /// The final drive in the car.
    FittedAxle,
    /// One of the three.
    FittedParts,
    /// What the dial expects.
    Dial,
}

explain! { NotReady:
    Self::Shift => needs("the shift rpm"), "type the shift rpm under road speed";
    Self::Engine => needs("the engine's torque and the car's mass"), "type both under pull at the wheels";
    Self::FittedTyre => needs("the tyre of setup A"), "type the tyre at the head of setup A";
    Self::FittedSet => needs("the gears of setup A"), "type or choose them at the head of setup A";
    Self::FittedAxle => needs("the axle of setup A"), "type it at the head of setup A";
    Self::FittedParts => needs("gears, axle and tyre of setup A"), "type what is missing at the head of setup A";
    Self::Dial => needs("a road check or the number on the dial"), "type either under speedometer";
}

fn needs(what: &str) -> String {
    format!("this wish is left out of the search: it needs {what}")
}

/// What a wish needs and the job does not give.
pub(super) fn missing(wish: &Wish, given: &Given) -> Option<NotReady> {
    if wish.measure.needs_engine() && given.engine.is_none() {
        return Some(NotReady::Engine);
    }
    if wish.measure.needs_shift() && given.shift.is_none() {
        return Some(NotReady::Shift);
    }
    if wish.measure == Measure::Speedometer && given.dial.is_none() {
        return Some(NotReady::Dial);
    }
    let (set, axle, tyre) = (given.fitted_set.is_some(), given.fitted_axle.is_some(), given.fitted.is_some());
    let (is_there, missing) = match wish.measure {
        Measure::OtherTyre => (tyre, NotReady::FittedTyre),
        Measure::OtherGearSet => (set, NotReady::FittedSet),
        Measure::OtherCase => (given.case.is_some(), NotReady::FittedSet),
        Measure::OtherAxle => (axle, NotReady::FittedAxle),
        Measure::PartsChanged => (set && axle && tyre, NotReady::FittedParts),
        _ => return None,
    };
    (!is_there).then_some(missing)
}
