//! What a wish needs that the job does not give.

use crate::finder::given::Given;
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
    /// What the dial expects.
    Dial,
}

impl Explain for NotReady {
    fn what(&self) -> String {
        let needs = match self {
            Self::Shift => "the shift rpm",
            Self::Engine => "the engine's torque and the car's mass",
            Self::FittedTyre => "the tyre of setup A",
            Self::Dial => "a road check or the number on the dial",
        };
        format!("this wish is left out of the search: it needs {needs}")
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Shift => "type the shift rpm under road speed".into(),
            Self::Engine => "type both under pull at the wheels".into(),
            Self::FittedTyre => "type the tyre at the head of setup A".into(),
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
    (wish.measure == Measure::OtherTyre && given.fitted.is_none()).then_some(NotReady::FittedTyre)
}
