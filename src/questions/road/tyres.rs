//! Are the tyres made for this speed and this load?

use crate::questions::{Conditions, Setup};
use crate::questions::{Pull, Road};
use crate::units::{Mass, Velocity};

/// How many tyres a car stands on.
const FOUR: f64 = 4.0;

/// What is asked of a setup's tyres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tyres {
    /// The fastest the car goes.
    pub fastest: Option<Fastest>,
    /// What four of the tyres carry, where the load index is known.
    pub four_carry: Option<Mass>,
    /// The car with driver and load, where its mass is typed.
    pub car: Option<Mass>,
}

/// The fastest a car goes, and how that is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fastest {
    /// Road speed, at most.
    pub speed: Velocity,
    /// The step it is reached in, by its place among the steps of the setup.
    pub step: usize,
    /// Whether engine and road load allow it; otherwise it is only the speed at the shift rpm.
    pub is_top_speed: bool,
}

impl Tyres {
    /// What is asked of the tyres of a setup.
    ///
    /// Model: the car stands on four tyres and none carries more than its share; a trailer is not counted.
    /// Source: common practice, no published source; the car's plate decides.
    pub fn of(setup: &Setup, road: &Road, pull: &Pull, conditions: &Conditions) -> Self {
        let index = setup.tyre.as_ref().and_then(crate::tyre::Tyre::load_limit);
        Self {
            fastest: top_speed(setup, pull).or_else(|| at_shift(road)),
            four_carry: index.map(|(_, mass)| mass * FOUR),
            car: conditions.pull.car.map(|car| car.mass),
        }
    }

    /// By how much the car is heavier than its tyres may carry.
    pub fn overload(&self) -> Option<Mass> {
        let over = self.car? - self.four_carry?;
        (over > Mass::default()).then_some(over)
    }
}

fn top_speed(setup: &Setup, pull: &Pull) -> Option<Fastest> {
    let top = pull.top?;
    let reached_in = setup.by_number(top.gear)?;
    let step = setup.steps.iter().position(|step| step == reached_in)?;
    Some(Fastest { speed: top.speed, step, is_top_speed: true })
}

fn at_shift(road: &Road) -> Option<Fastest> {
    let speeds = road.steps.iter().enumerate().filter_map(|(step, in_gear)| Some((step, in_gear.at_shift?)));
    let (step, speed) = speeds.max_by(|(_, a), (_, b)| a.value.total_cmp(&b.value))?;
    Some(Fastest { speed, step, is_top_speed: false })
}
