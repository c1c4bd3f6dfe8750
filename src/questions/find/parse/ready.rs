//! What a wish needs that the job does not give.

use crate::finder::inputs::Given;
use crate::finder::wish::{Measure, Wish};
use crate::problem::Explain;

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

impl Explain for NotReady {
    fn what(&self) -> String {
        let needs = match self {
            Self::Shift => "the shift rpm",
            Self::Engine => "the engine's torque and the car's mass",
            Self::FittedTyre => "the tyre of setup A",
            Self::FittedSet => "the gears of setup A",
            Self::FittedAxle => "the axle of setup A",
            Self::FittedParts => "gears, axle and tyre of setup A",
            Self::Dial => "a road check or the number on the dial",
        };
        format!("this wish is left out of the search: it needs {needs}")
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Shift => "type the shift rpm under road speed".into(),
            Self::Engine => "type both under pull at the wheels".into(),
            Self::FittedTyre => "type the tyre at the head of setup A".into(),
            Self::FittedSet => "type or choose them at the head of setup A".into(),
            Self::FittedAxle => "type it at the head of setup A".into(),
            Self::FittedParts => "type what is missing at the head of setup A".into(),
            Self::Dial => "type either under speedometer".into(),
        }
    }
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
