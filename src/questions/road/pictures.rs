//! The picture of Road speed: engine speed over road speed, gear by gear.

use crate::chart::shift::{Climb, ClimbGear, ShiftChart};
use crate::gearing::Step;
use crate::questions::road::answer::InGear;
use crate::questions::{Analysis, Source};
use crate::units::common::in_rpm;
use crate::units::{Measured, Velocity};

/// The shift chart of every setup whose road speeds are known.
pub fn shift_chart(source: Source<'_>, focus: Option<usize>) -> ShiftChart {
    let unit = Velocity::usual(source.reader.units);
    let gear =
        |(step, in_gear): (&Step, &InGear)| Some(ClimbGear { name: step.short_name(), speed_at_shift: (unit.take)(&in_gear.at_shift?) });
    let climb = |(slot, analysis): (usize, &Analysis)| Climb {
        slot,
        name: analysis.setup.name.clone(),
        gears: analysis.setup.steps.iter().zip(&analysis.road().steps).filter_map(gear).collect(),
    };
    ShiftChart {
        setups: source.setups.iter().enumerate().map(climb).collect(),
        shift_rpm: source.conditions.shift.map_or(0.0, in_rpm),
        cruise_speed: source.conditions.cruise.map(|cruise| (unit.take)(&cruise)),
        unit: unit.symbol.into(),
        focus,
    }
}
