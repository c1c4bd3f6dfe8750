//! The picture of Road speed: engine speed over road speed, gear by gear.

use crate::chart::shift::{Climb, ClimbGear, ShiftChart};
use crate::questions::{Analysis, Source};
use crate::sheet::ordinal;
use crate::units::common::in_rpm;
use crate::units::{Measured, Velocity};

/// The shift chart of every setup whose road speeds are known.
pub fn shift_chart(source: Source<'_>, focus: Option<usize>) -> ShiftChart {
    let unit = Velocity::usual(source.reader.units);
    let gear = |analysis: &Analysis, gear: usize| {
        let speed = analysis.road().gears.get(gear)?.at_shift?;
        Some(ClimbGear { name: ordinal(gear), speed_at_shift: (unit.take)(&speed) })
    };
    let climb = |(slot, analysis): (usize, &Analysis)| Climb {
        slot,
        name: analysis.setup.name.clone(),
        gears: (0..analysis.road().gears.len()).filter_map(|at| gear(analysis, at)).collect(),
    };
    ShiftChart {
        setups: source.setups.iter().enumerate().map(climb).collect(),
        shift_rpm: source.conditions.shift.map_or(0.0, in_rpm),
        cruise_speed: source.conditions.cruise.map(|cruise| (unit.take)(&cruise)),
        unit: unit.symbol.into(),
        focus,
    }
}
