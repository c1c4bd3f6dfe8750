//! How fast in each gear, and where does each shift land?

use crate::gearing::teeth::decimal;
use crate::gearing::{GearNumber, Ratio};
use crate::questions::Gears;
use crate::questions::{Conditions, Setup};
use crate::units::common::{rolling_speed, rpm, wheel_speed};
use crate::units::{AngularVelocity, Length, Velocity};

/// Road and engine speeds of a setup.
#[derive(Clone, Debug, PartialEq)]
pub struct Road {
    /// What the tyre rolls at each turn.
    pub circumference: Option<Length>,
    /// One answer a forward gear, lowest first, with every stage that is switched at rest.
    pub gears: Vec<InGear>,
    /// One answer a step, in the order of [`Setup::steps`]; no shift is followed there.
    pub steps: Vec<InGear>,
}

/// Road and engine speeds in one gear; each is there as soon as what it needs is known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct InGear {
    /// Road speed at 1,000 rpm.
    pub per_thousand: Option<Velocity>,
    /// Road speed at the shift speed.
    pub at_shift: Option<Velocity>,
    /// Engine speed after the upshift into the next gear, at the same road speed.
    pub lands_at: Option<AngularVelocity>,
    /// Engine speed at the cruise speed.
    pub at_cruise: Option<AngularVelocity>,
}

impl Road {
    /// The speeds of a setup.
    pub fn of(setup: &Setup, gears: &Gears, conditions: &Conditions) -> Self {
        let circumference = setup.rolling.as_ref().map(|rolling| rolling.circumference);
        let at = |overall: Option<Ratio>| {
            let speed = |engine: AngularVelocity| Some(road_speed(engine, overall?, circumference?));
            InGear {
                per_thousand: speed(rpm(1000.0)),
                at_shift: conditions.shift.and_then(speed),
                lands_at: None,
                at_cruise: conditions.cruise.and_then(|cruise| Some(engine_speed(cruise, overall?, circumference?))),
            }
        };
        let in_gear =
            |(gear, overall): (GearNumber, &Option<Ratio>)| InGear { lands_at: lands_at(gears, gear, conditions.shift), ..at(*overall) };
        Self {
            circumference,
            gears: GearNumber::each(&gears.overall).map(in_gear).collect(),
            steps: setup.steps.iter().map(|step| at(setup.overall(step))).collect(),
        }
    }

    /// Engine speed in top gear at the cruise speed, an overdrive in.
    pub fn cruise_in_top(&self) -> Option<AngularVelocity> {
        self.steps.last()?.at_cruise
    }
}

/// Road speed at an engine speed.
///
/// Model: v = n · C / i, without slip; n engine turns per time, C rolling circumference, i overall ratio.
/// Source: Gillespie, *Fundamentals of Vehicle Dynamics*, ch. 2 (from memory); plain kinematics.
pub fn road_speed(engine: AngularVelocity, overall: Ratio, circumference: Length) -> Velocity {
    rolling_speed(engine / decimal(overall), circumference)
}

/// Engine speed at a road speed; the inverse of [`road_speed`].
pub fn engine_speed(road: Velocity, overall: Ratio, circumference: Length) -> AngularVelocity {
    wheel_speed(road, circumference) * decimal(overall)
}

/// Engine speed after an upshift at constant road speed, n · iₖ₊₁ / iₖ.
fn lands_at(gears: &Gears, gear: GearNumber, shift: Option<AngularVelocity>) -> Option<AngularVelocity> {
    let (this, next) = (gear.of(&gears.ratios).copied().flatten()?, gear.next().of(&gears.ratios).copied().flatten()?);
    Some(shift? * decimal(next / this))
}
